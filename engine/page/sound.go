package page

import (
	"fmt"
	"html/template"
	"slices"
	"strconv"
	"strings"

	"blockfield/engine"
	"blockfield/engine/draw"
	"blockfield/engine/sound"
	"blockfield/engine/words"
)

// The section Sound says what was heard. Sentences are slots like any other and
// follow from the verdicts that came last; the pictures stand in places of their
// own, which SoundPictures fills when a design has been heard.

// Start of the ids of what follows from a hearing.
const soundSlots = "sound-"

// AfterHearing returns what changes when a hearing has come in: the watch-outs,
// and what is said of sound.
func AfterHearing(in Input) []Fragment {
	v := newView(in)
	all := []Fragment{{"strip", v.render("strip", v.Strip())}}
	for _, s := range v.slots() {
		if s.id == "watch-outs" || s.id == "papers-sheets" || strings.HasPrefix(s.id, soundSlots) {
			all = append(all, Fragment{s.id, v.render(s.template, s.data)})
		}
	}
	return append(all, v.watchFragments()...)
}

// SoundPictures are the pictures of a hearing, in the places that the section
// has for them.
func SoundPictures(h engine.Hearing, reader words.Reader) []Fragment {
	v := &view{Input: Input{Words: reader}}
	var all []Fragment
	for _, g := range h.Groups {
		key := groupKey(g.Wall, g.Index)
		all = append(all,
			Fragment{"sound-share-" + key, v.render("sound-share", v.share(g, key))},
			Fragment{"sound-shown-" + key, v.render("sound-shown", v.shown(g, key))},
		)
	}
	return all
}

// picture is a drawing with what is said below it.
type picture struct {
	Drawing template.HTML
	Caption string
	Width   string // wide, half or third of the line
}

func (v *view) share(g engine.HeardGroup, key string) picture {
	caption := v.T("hear/share-caption")
	if hz, ok := trustedFrom(g.Listening); ok {
		caption += " " + v.T("hear/share-hint", "hz", hz)
	}
	return picture{Drawing: template.HTML(sound.ShareChart("share-"+key, v.Words, g.Listening)), Caption: caption}
}

// trustedFrom is the first third octave from which on, straight on, figures are
// more than a hint.
func trustedFrom(l sound.Listening) (words.Hz, bool) {
	for _, s := range l.Dome.Bands {
		if !sound.Trust(s.Band.Hz(), l.DepthHz, 0).Indicative {
			return words.Hz(s.Band.NominalHz()), true
		}
	}
	return 0, false
}

// mapBands are the third octaves whose half space is shown: 1, 2 and 4 kHz.
func mapBands() []sound.Band { return []sound.Band{0, 3, 6} }

func (v *view) shown(g engine.HeardGroup, key string) []picture {
	l := g.Listening
	var all []picture
	for _, plane := range []struct {
		name  string
		sweep sound.Sweep
	}{{"across", l.Across}, {"down", l.Down}} {
		all = append(all, picture{
			Drawing: template.HTML(sound.Polars("polars-"+plane.name+"-"+key, v.Words, l, plane.sweep)),
			Caption: v.T("hear/polars-" + plane.name), Width: "wide",
		})
	}
	for _, c := range shownCurves(l) {
		all = append(all, picture{
			Drawing: template.HTML(sound.DiffusionChart(c.id+"-"+key, v.Words, c.Curve)),
			Caption: v.T("hear/diffusion-caption", "across", words.Key(c.across), "source", c.Source), Width: "half",
		})
	}
	for _, b := range mapBands() {
		id := "map-" + draw.Number(b.NominalHz()) + "-" + key
		all = append(all, picture{
			Drawing: template.HTML(sound.Map(id, v.Words, l.Dome, b)),
			Caption: v.T("hear/map-caption", "hz", words.Hz(b.NominalHz())), Width: "third",
		})
	}
	return all
}

// shownCurve is a curve that is drawn, and how its plane lies.
type shownCurve struct {
	sound.Curve
	id, across string
}

// shownCurves are sound straight on and from 30°, and from everywhere in both
// planes. At 60° nothing may be claimed.
func shownCurves(l sound.Listening) []shownCurve {
	var all []shownCurve
	for _, p := range l.Across.Polars {
		if p.IncidenceDeg == 0 || p.IncidenceDeg == 30 {
			all = append(all, shownCurve{l.From(p), "diffusion-" + strconv.Itoa(int(p.IncidenceDeg)), "hear/left-to-right"})
		}
	}
	return append(all,
		shownCurve{l.FromEverywhere(l.Across), "diffusion-across", "hear/left-to-right"},
		shownCurve{l.FromEverywhere(l.Down), "diffusion-down", "hear/top-to-bottom"},
	)
}

// goalsPath is what is hoped for, which readers are asked in their own words.
const goalsPath = "room.goals"

// soundSets are the five questions about the room: what it is for, how large it
// is, how near the nearest ear is, what is hoped for, and who comes in.
func (v *view) soundSets() []set {
	questions := set{
		id: "questions", heading: "hear/questions",
		fields: []string{"room.use", "walls[0].listenerDistance", goalsPath},
		more:   []string{"room.length", "room.width", "room.height", publicPath},
	}
	if v.Reading != Client {
		questions.fields = []string{
			"room.use", "walls[0].listenerDistance", "room.length", "room.width", "room.height", publicPath, goalsPath,
		}
		questions.more = nil
	}
	if v.Reading == Builder { // nobody asks it of a room at home
		questions.fields = slices.DeleteFunc(questions.fields, func(path string) bool { return path == publicPath })
	}
	if v.Reading == Client {
		return []set{questions}
	}
	all := append([]set{questions}, v.surfaceSets()...)
	last := &all[len(all)-1]
	last.add, last.adding = "room.surfaces", "hear/add-surface"
	return all
}

// surfaceSets are what covers parts of floor, ceiling and walls.
func (v *view) surfaceSets() []set {
	all := []set{{id: "surfaces", heading: "hear/surfaces", slot: "surfaces-lead"}}
	for i := range v.Doc.Design.Room.Surfaces {
		path := fmt.Sprintf("room.surfaces[%d]", i)
		all = append(all, set{
			id: surfaceID(i), name: surfaceID(i) + "-name", part: path, taking: "hear/remove-surface", base: path + ".",
			fields: []string{"lining", "place", "share"},
		})
	}
	return all
}

func surfaceID(i int) string { return fmt.Sprintf("surface-%d", i) }

// surfaceNames are the headings of those sets, which follow from what is there.
func (v *view) surfaceNames() []slot {
	var all []slot
	for i, s := range v.Doc.Design.Room.Surfaces {
		all = append(all, slot{
			id: surfaceID(i) + "-name", template: "part-name", inline: true, data: capital(v.T("choice/" + s.Lining)),
			after: endsIn(fmt.Sprintf("room.surfaces[%d].lining", i)),
		})
	}
	return all
}

func (v *view) soundSlots() []slot {
	all := []slot{{id: soundSlots + "said", template: soundSlots + "said", data: v}}
	if v.Reading == Client {
		return all
	}
	all = append(all, slot{id: soundSlots + "room", template: soundSlots + "room", data: v})
	all = append(all, slot{id: "surfaces-lead", template: "surfaces-lead", data: v, after: never})
	all = append(all, v.surfaceNames()...)
	return append(all, v.atTheEnd()...)
}

// HowLabel is what opens the pictures of a group.
func (g groupView) HowLabel() string {
	if len(g.Plan.Groups) == 1 {
		return g.T("hear/how")
	}
	return g.T("hear/how-group", "n", slices.IndexFunc(g.Groups(), func(other groupView) bool { return other.Key == g.Key })+1)
}

// Sound is what was heard, nil before that.
func (v *view) Sound() *engine.Hearing { return v.Heard }

// Fit is the one answer whether blocks are the right thing.
func (v *view) Fit() string { return v.T("sound/fit-" + v.Heard.Fit.Answer) }

// ClientSound is the sentence for a client.
func (v *view) ClientSound() string {
	first := v.Heard.Groups[0]
	return v.line(first.Verdict.Client(v.Doc.Design.Walls[first.Wall].ListenerDistance))
}

func (v *view) line(l sound.Line) string { return v.Words.Say(l.Code, l.Args) }

// Reasons are those of the fit. What is said in full elsewhere is left out or
// short: a client reads of a seat that is too near in the sentence, the others in
// their watch-outs.
func (v *view) Reasons() []string {
	var all []string
	for _, l := range v.Heard.Fit.Reasons {
		if v.Reading == Client && (l.Code == "sound/too-near" || l.Code == "sound/little-spread") {
			continue
		}
		if v.Reading != Client && v.watched(l.Code) {
			l = sound.Line{Code: "hear/because-" + strings.TrimPrefix(l.Code, "sound/")}
		}
		said := v.line(l)
		if v.Reading != Client && l.Code == "sound/if-it-rings" {
			said += " " + v.T("hear/not-noted")
		}
		all = append(all, said)
	}
	return all
}

func (v *view) watched(code string) bool {
	for _, w := range v.Heard.WatchOuts {
		if w.Code == code {
			return true
		}
	}
	return false
}

// left reports whether a home builder does without a sentence.
func (v *view) left(code string) bool {
	forMakers := []string{"sound/clump", "sound/alike", "sound/dip", "sound/reflection", "sound/flutter"}
	return v.Reading == Builder && slices.Contains(forMakers, code)
}

// Spoken is one group of panels in sentences: what it spreads, what is odd about
// its pattern, and how to live with it.
type Spoken struct {
	Name       string
	Paragraphs []string
}

// Spoken are the sentences of each group.
func (v *view) Spoken() []Spoken {
	var all []Spoken
	for i, g := range v.Heard.Groups {
		var one Spoken
		if len(v.Heard.Groups) > 1 {
			one.Name = v.T("hear/group", "n", i+1)
		}
		var spread, pattern, live []string
		for _, l := range g.Verdict.Maker() {
			switch l.Code {
			case "sound/sit", "sound/not":
				live = append(live, v.line(l))
			case "sound/clump", "sound/flat-board", "sound/dip", "sound/repeats", "sound/alike":
				if !v.left(l.Code) {
					pattern = append(pattern, v.line(l))
				}
			case "sound/calculated": // under why
			default:
				spread = append(spread, v.line(l))
			}
		}
		for _, paragraph := range [][]string{spread, pattern, live} {
			if len(paragraph) > 0 {
				one.Paragraphs = append(one.Paragraphs, strings.Join(paragraph, " "))
			}
		}
		all = append(all, one)
	}
	return all
}

// RoomSaid is what is computed of the room, in sentences: how it rings, and what
// comes back from the walls.
func (v *view) RoomSaid() []string {
	var rings, walls []string
	for _, l := range v.Heard.Room.Lines(v.Doc.Design) {
		switch {
		case v.left(l.Code):
		case strings.HasPrefix(l.Code, "sound/ring"), strings.HasPrefix(l.Code, "sound/soft"), l.Code == "sound/use-unknown":
			rings = append(rings, v.line(l))
		default:
			walls = append(walls, v.line(l))
		}
	}
	return []string{strings.Join(rings, " "), strings.Join(walls, " ")}
}

// part is a coefficient from 0 to 1, as it stands in a table.
func part(x float64) words.Quantity { return words.Quantity{Value: x} }

// WhySound are the sources of it all, and the known error.
func (v *view) WhySound() []string {
	const above, near = 3, 1.2 // of the frequency whose quarter wave is as deep as the field
	good, bad := sound.Trust(above, 1, 0), sound.Trust(near, 1, 0)
	all := []string{
		v.T("sound/calculated"),
		v.T("hear/why-method"),
		v.T("hear/why-error", "mean", part(good.Mean), "worst", part(good.Worst),
			"nearMean", part(bad.Mean), "nearWorst", part(bad.Worst), "least", part(sound.LeastDifference)),
	}
	if v.Reading != Client {
		all = append(all, v.T("hear/why-room"))
	}
	return all
}
