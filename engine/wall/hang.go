package wall

import (
	"math"
	"slices"
	"strings"

	"blockfield/engine/check"
	"blockfield/engine/length"
	"blockfield/engine/panel"
	"blockfield/engine/words"
)

// Words of the design that decide how a wall is held.
const (
	timberStuds  = "board on timber studs"
	noFixingWall = "no fixing allowed"
	unknownWall  = "unknown"
	automatic    = "automatic"
	woodScrew    = "wood screw"
	noFixing     = "none"
	noLock       = "none"
)

// Limits of hanging. Common practice, no source.
const (
	oneStudKg   = 15.0 // that may hang on a lone stud
	leastTipDeg = 10.0 // of a stand
	wantedStuds = 2
	published   = "ANSI/AWC NDS-2018; wall board by AWC TR-12, from memory; load factor: common practice"
	wrapMM      = 20 // of packing round a panel on its way
)

func (h Hung) standing() bool { return !h.Design.Stand.BaseDepth.IsZero() }

// hold is what is to be said of what holds the panels: a stand, or the wall.
func (h Hung) hold() []check.WatchOut {
	if len(h.Built.Panels) == 0 {
		return nil
	}
	if h.standing() {
		return h.tips()
	}
	all := h.lock()
	f := h.Wall.Fixing
	switch {
	case h.Wall.Kind == noFixingWall, h.Wall.Kind == unknownWall, f.Kind == noFixing:
		return append(all, h.notChecked())
	case h.Wall.Kind == timberStuds && (f.Kind == woodScrew || f.Kind == automatic):
		return append(all, h.onStuds()...)
	case f.RatedShear > 0 && f.RatedPull > 0 && filled(f.What) && filled(f.Source):
		return append(all, h.rated())
	case strings.HasPrefix(h.Wall.Kind, "board on"):
		return append(all, h.stop("wall/board-alone", check.Offer, h.wallField("fixing.ratedShear"), check.CommonPractice, nil))
	default:
		return append(all, h.notChecked())
	}
}

func filled(text string) bool { return strings.TrimSpace(text) != "" }

// wallField is the path of a field of the group's wall.
func (h Hung) wallField(name string) string {
	wall, _, _ := strings.Cut(h.Path, ".")
	return wall + "." + name
}

// stop is a Stop that only evidence clears.
func (h Hung) stop(code string, gate check.Gate, field, source string, args words.Args) check.WatchOut {
	return check.WatchOut{
		Code: code, Level: check.Stop, Gate: gate, Evidence: true, Args: args, Field: field, Source: source,
	}
}

func (h Hung) notChecked() check.WatchOut {
	return h.stop("wall/not-checked", check.Hang, h.wallField("fixing.ratedShear"), check.CommonPractice,
		words.Args{"wall": words.Key("choice/" + h.Wall.Kind)})
}

// lock asks for what keeps a hooked panel from being lifted off.
func (h Hung) lock() []check.WatchOut {
	if h.Design.Cleat.Lock != noLock {
		return nil
	}
	w := h.stop("wall/no-lock", check.Hang, h.Path+".cleat.lock", check.CommonPractice, nil)
	w.Fix = &check.Fix{Path: w.Field, Value: "screw"}
	return []check.WatchOut{w}
}

// tips is the angle at which the stand falls over, forwards or backwards, the
// mass at the height that was typed or where the panels have it, whichever is
// higher.
func (h Hung) tips() []check.WatchOut {
	s := h.Design.Stand
	centre := math.Max(s.CentreHeight.Metres(), h.Built.Bottom.Metres()+h.Built.TotalHeight.Metres()/2)
	toe := length.Max(length.MM(0), s.ToeAhead)
	side := words.Key("wall/forwards")
	field := ".stand.toeAhead"
	if back := s.BaseDepth.Sub(s.ToeAhead); back.Cmp(toe) < 0 {
		toe, side, field = back, "wall/backwards", ".stand.baseDepth"
	}
	deg := TipDeg(toe.Metres(), centre)
	if deg >= leastTipDeg {
		return nil
	}
	more := length.Micrometres(int64(math.Ceil((ToeFor(leastTipDeg, centre) - toe.Metres()) * 1e6)))
	return []check.WatchOut{h.stop("wall/stand-tips", check.Offer, h.Path+field, check.CommonPractice,
		words.Args{"angle": words.Degrees(math.Floor(deg)), "limit": words.Degrees(leastTipDeg), "more": more.CeilMM(), "side": side})}
}

// load is one panel as the strip behind it feels it, or with a rail all panels
// beside one another.
func (h Hung) load(p panel.Panel) Load {
	left, right := cleatEnds(p)
	kg := h.PanelKg
	if h.Wall.Rail {
		for _, other := range h.Built.Panels {
			if other.Bottom.Same(p.Bottom) {
				l, r := cleatEnds(other)
				left, right = math.Min(left, l), math.Max(right, r)
			}
		}
		kg *= float64(max(1, h.Design.PanelsWide))
	}
	return Load{
		Kg: kg, CentroidM: p.CentroidM, FieldHeightM: h.Built.FieldHeight.Metres(),
		CleatM: h.Design.Cleat.Thickness.Metres(), BevelRad: h.Design.Cleat.Bevel * math.Pi / 180,
		CentreM: (left + right) / 2, LeftM: left, RightM: right,
	}
}

// hooked is the load with its cleat where the screws have it.
func (h Hung) hooked(p panel.Panel) Load {
	l := h.load(p)
	l.CleatFootM = h.RearOf(p).FootMM(h.CleatScrewsOf(p).Row) / millimetresInM
	return l
}

// cleatEnds is where the cleat of a panel begins and ends along the wall.
func cleatEnds(p panel.Panel) (left, right float64) {
	for _, part := range p.Parts {
		if part.Kind == panel.CleatPart {
			left = p.Left.Metres() + part.X.Metres()
			return left, left + part.Width.Metres()
		}
	}
	return 0, 0
}

// studsBehind lists the studs that a strip between two places hits, from the
// left, far enough from its ends.
func (h Hung) studsBehind(left, right float64) []float64 {
	step := h.Wall.StudStep.Metres()
	var all []float64
	if step <= 0 {
		return nil
	}
	for x := h.Wall.StudFirst.Metres(); x < h.Wall.Width.Metres(); x += step {
		if x >= left+studEndMM/millimetresInM && x <= right-studEndMM/millimetresInM {
			all = append(all, x)
		}
	}
	return all
}

// allStuds lists the studs behind any panel of the group, each once.
func (h Hung) allStuds() []float64 {
	var all []float64
	for _, p := range h.Built.Panels {
		l := h.load(p)
		all = append(all, h.studsBehind(l.LeftM, l.RightM)...)
	}
	slices.Sort(all)
	return slices.Compact(all)
}

// Strip is the strip of the panel that is worst off, chosen and counted.
func (h Hung) Strip() (Strip, bool) {
	var worst Strip
	found := false
	factor := Factor(h.Wall.Fixing.LoadFactor, "")
	for _, p := range h.Built.Panels {
		l := h.hooked(p)
		got, ok := ChooseStrip(l, h.studsBehind(l.LeftM, l.RightM), h.Wall.Fixing.Diameter.Millimetres(), factor)
		if !ok {
			return got, false
		}
		if !found || got.worst() > worst.worst() {
			worst, found = got, true
		}
	}
	return worst, found
}

// onStuds is a wall of board on timber studs, held by wood screws whose strength
// the published rules know.
func (h Hung) onStuds() []check.WatchOut {
	fewest := math.MaxInt
	for _, p := range h.Built.Panels {
		l := h.load(p)
		fewest = min(fewest, len(h.studsBehind(l.LeftM, l.RightM)))
	}
	if h.Wall.StudStep.IsZero() {
		return []check.WatchOut{h.stop("wall/board-alone", check.Offer, h.wallField("studFirst"), check.CommonPractice, nil)}
	}
	var all []check.WatchOut
	if fewest < wantedStuds {
		w := h.stop("wall/one-stud", check.Hang, h.wallField("rail"), check.CommonPractice,
			words.Args{"mass": words.Kg(h.PanelKg)})
		if h.PanelKg <= oneStudKg && fewest > 0 {
			w.Level, w.Evidence = check.Caution, false
		}
		all = append(all, w)
	}
	if fewest == 0 {
		return all
	}
	s, ok := h.Strip()
	if !ok {
		return append(all, h.notChecked())
	}
	return append(all, h.counted(s))
}

// counted says how many screws hold, or that the most that fit do not.
func (h Hung) counted(s Strip) check.WatchOut {
	factor := shown(Factor(h.Wall.Fixing.LoadFactor, ""))
	args := words.Args{
		"count": s.Screws(), "gauge": s.Gauge, "long": length.MM(int64(s.ScrewMM)), "each": s.AStud,
		"use":  words.Percent(math.Ceil(100*math.Max(s.Use, math.Max(s.BendUse, s.SagUse)) - dustOfFloats)),
		"high": tenths(s.HeightM * millimetresInM).CeilMM(), "factor": factor,
		"board": length.MM(boardMM),
	}
	if s.Enough() {
		return check.WatchOut{
			Code: "wall/screws", Level: check.Caution, Gate: check.Hang, Args: args,
			Field: h.wallField("fixing.diameter"), Source: published,
		}
	}
	return h.stop("wall/overloaded", check.Hang, h.wallField("fixing.diameter"), published, args)
}

// rated is any other base, by what the fixing's maker gives for it.
func (h Hung) rated() check.WatchOut {
	f := h.Wall.Fixing
	factor := Factor(f.LoadFactor, "")
	var worst Rated
	for _, p := range h.Built.Panels {
		l := h.hooked(p)
		if r := ChooseRated(l, f.RatedShear, f.RatedPull, factor); r.Needed > worst.Needed {
			worst = r
		}
	}
	args := words.Args{
		"count": worst.Count, "use": words.Percent(math.Ceil(100*worst.Use - dustOfFloats)),
		"what": f.What, "factor": shown(factor),
	}
	if worst.Use > 1 {
		return h.stop("wall/rated-overloaded", check.Hang, h.wallField("fixing.ratedShear"), check.CommonPractice, args)
	}
	return check.WatchOut{
		Code: "wall/rated", Level: check.Caution, Gate: check.Hang, Args: args,
		Field: h.wallField("fixing.ratedShear"), Source: check.CommonPractice,
	}
}

// shown is a factor without a nought behind its point.
func shown(factor float64) any {
	if factor == math.Trunc(factor) {
		return int(factor)
	}
	return factor
}
