package page_test

import (
	"slices"
	"strconv"
	"strings"
	"testing"

	"blockfield/engine/design"
	"blockfield/engine/design/designtest"
	"blockfield/engine/length"
	"blockfield/engine/page"
	"blockfield/engine/words"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// wallOf is the section Wall of a worked job, as its reader has it.
func wallOf(t *testing.T, job, reading string) *node {
	t.Helper()
	doc := design.Default()
	if job != "default" {
		doc.Design = designtest.Job(t, job)
	}
	doc.View.Reading = reading
	return parse(t, section(t, doc, design.DefaultBook(), page.Wall))
}

func textOf(n *node) string { return strings.Join(n.visible(), " ") }

// having are the elements of a class.
func (n *node) having(class string) []*node {
	var all []*node
	n.walk(func(one *node) {
		if strings.Contains(" "+one.attrs["class"]+" ", " "+class+" ") {
			all = append(all, one)
		}
	})
	return all
}

// Whatever shows somebody how a panel hangs says what to look for before hanging it.
func TestCautionsStandWhereHangingIsShown(t *testing.T) {
	for _, job := range []string{"default", "s1", "s1-second", "s3", "s4", "s7"} {
		for _, reading := range []string{page.Client, page.Maker, page.Builder} {
			cautions := wallOf(t, job, reading).having("caution-once")
			want := 2 // where the section begins, and with the day of hanging
			if reading == page.Client {
				want = 1
			}
			require.Len(t, cautions, want, "%s, %s", job, reading)
			for _, c := range cautions {
				assert.Contains(t, textOf(c), "cables and pipes", "%s, %s", job, reading)
			}
		}
	}
}

// What nobody has counted says so in large type, and the day of hanging stops there.
func TestFixingsNotCheckedAreSaid(t *testing.T) {
	for job, unchecked := range map[string]bool{"default": false, "s1": false, "s1-second": true, "s3": false, "s5": false} {
		n := wallOf(t, job, page.Builder)
		said := n.having("unchecked")
		steps := textOf(n.having("steps")[0])
		assert.Equal(t, unchecked, len(said) == 1, job)
		assert.Equal(t, unchecked, strings.Contains(steps, "nothing is known that holds it"), job)
		if unchecked {
			assert.Equal(t, "Fixings not checked", textOf(said[0]))
			assert.NotContains(t, steps, "Bore", job)
		}
	}
	// What is counted and does not hold, and what does not go on, is not hung either.
	for _, job := range []string{"s4", "s5"} {
		n := wallOf(t, job, page.Maker)
		steps := textOf(n.having("steps")[0])
		assert.Contains(t, steps, "is not cleared yet", job)
		assert.NotContains(t, steps, "Bore", job)
		assert.NotContains(t, textOf(n), "Holes in the wall", job)
	}
	stand := textOf(wallOf(t, "s3", page.Maker))
	assert.Contains(t, stand, "forwards at 12°")
	assert.NotContains(t, stand, "Screws in the wall")
	assert.NotContains(t, stand, "Holes in the wall")
}

// The first design in words, figure by figure.
func TestWhatHoldsInWords(t *testing.T) {
	text := textOf(wallOf(t, "default", page.Maker))
	for _, want := range []string{
		"12 wood screws No. 12, 100 mm long: 6 one above another in each stud, at 1500, 2100 mm from the left corner",
		"18 mm thick, 337 mm high, 1094.6 mm long, its tip 1588.9 mm above the floor",
		"4.8 mm through the strip, 3.8 mm for the thread",
		"the busiest screw to 90 %", "with 4 times the load",
		"12 wood screws No. 8, 50 mm long, in row 3, each used to 94 %",
		"Not checked: the studs or the wall behind",
		"24 mm needed above the panel, 757.6 mm there",
		"nobody should lift more than 12.3 kg so, and the panel has 38.8 kg",
		"passes (longest 2013 mm)",
		"hang 77.7 kg of weights", "never a person",
		"Draw a level line 1588.9 mm above the floor, from 1203 mm to 2297.6 mm",
		"1500 1549, 1494.1, 1439.2, 1384.4, 1329.5, 1274.6",
		"At the top left of the back is column 33 of the front",
		"At the top right of the back is column 1 of the front",
	} {
		assert.Contains(t, text, want)
	}
	assert.NotContains(t, text, "To be asked in a public room")
	assert.Contains(t, textOf(wallOf(t, "s4", page.Maker)), "Nothing here is a ruling.")
}

// Whoever measures in inches bores with drills in 64ths, and reads places in inches: No.
// 12 in spruce takes 4.8 and 3.8 mm, which are 12.1 and 9.6 of them.
func TestWhatHoldsInInches(t *testing.T) {
	doc := design.Default()
	doc.View.Reading, doc.View.Units = page.Maker, length.Inch16
	text := textOf(parse(t, section(t, doc, design.DefaultBook(), page.Wall)))
	assert.Contains(t, text, "3/16 in through the strip, 5/32 in for the thread")
	assert.Contains(t, text, "at 59 1/16, 82 11/16 in from the left corner")
}

// The rear map is a drawing of its own, left and right changed: it says REAR VIEW, its
// columns run backwards, and as many rings as screws stand where these go.
func TestRearMapIsDrawnFromBehind(t *testing.T) {
	n := wallOf(t, "default", page.Maker)
	maps := n.having("rear-map")
	require.Len(t, maps, 1)
	text := textOf(maps[0])
	assert.Contains(t, text, "REAR VIEW")
	at := map[string]float64{}
	maps[0].walk(func(one *node) {
		if one.tag == "text" && one.attrs["text-anchor"] == "middle" {
			x, err := strconv.ParseFloat(one.attrs["x"], 64)
			require.NoError(t, err)
			at[textOf(one)] = x
		}
	})
	assert.InDelta(t, 36.2/2, at["33"], 0.01)
	assert.InDelta(t, 1194.6-36.2/2, at["1"], 0.01)
	assert.Len(t, maps[0].having("ring"), 12)
	first := maps[0].having("ring")[0]
	x, err := strconv.ParseFloat(first.kids[0].attrs["cx"], 64)
	require.NoError(t, err)
	assert.InDelta(t, 1194.6-36.2*30.5, x, 0.01, "column 31 of the front, from the left edge of the back")
	assert.Len(t, wallOf(t, "s7", page.Maker).having("rear-map"), 2, "A and its counter-panel")
	assert.Empty(t, wallOf(t, "default", page.Client).having("rear-map"))
}

// Zones are drawn where no panel may be, and where care is asked for; strips with their
// screws for whoever builds, not for a client.
func TestTheWallMapShowsZonesAndStrips(t *testing.T) {
	n := wallOf(t, "s4", page.Maker)
	assert.Len(t, n.having("keep-out"), 1, "round the detector")
	assert.Len(t, n.having("care"), 1, "above and below the switch")
	assert.Len(t, n.having("wall-drawing")[0].having("strip"), 3)
	assert.Len(t, n.having("held"), 6, "two studs for each")
	assert.Len(t, n.having("lift-room"), 1)
	assert.Contains(t, textOf(n), "Densely hatched: no panel there. Lightly hatched: with care.")
	assert.NotContains(t, textOf(wallOf(t, "s7", page.Maker)), "Lightly hatched", "a sprinkler alone")
	client := wallOf(t, "s4", page.Client)
	assert.Len(t, client.having("keep-out"), 1)
	assert.Empty(t, client.having("wall-drawing")[0].having("strip"))
	assert.Empty(t, wallOf(t, "s3", page.Maker).having("lift-room"), "nothing is hooked on a stand")
}

// Things on the wall are folded under what and where they are; a new one, which nobody has
// placed yet, is open.
func TestThingsOnTheWallAreFolded(t *testing.T) {
	n := wallOf(t, "s5", page.Maker)
	folded := things(n)
	require.Len(t, folded, 4)
	assert.Contains(t, textOf(folded[1]), "Grille: 2247.9 mm from the left, 1727.2 mm up")
	doc, _, err := design.Add(design.Default(), "walls[0].obstacles")
	require.NoError(t, err)
	doc.View.Reading = page.Maker
	assert.Empty(t, things(parse(t, section(t, doc, design.DefaultBook(), page.Wall))))
}

// things are the folded sets of what is on the wall.
func things(n *node) []*node {
	return slices.DeleteFunc(n.having("folded"), func(one *node) bool { return !strings.HasPrefix(one.attrs["id"], "obstacle-") })
}

// What is asked once and then looked up stands in one line each, and of the mass its sum.
func TestTheWallSaysItsAnswersInALine(t *testing.T) {
	n := wallOf(t, "default", page.Maker)
	seen := strings.Join(n.inSight(), " ")
	for _, want := range []string{
		"Mass, part by part 38.8 kg", "Cleat 18 mm thick, 45°, lock: screw", "Weighing not weighed", "Lifting by hand", "On the day nothing noted",
		"The room no public, ", "The way in door 762 × 1981 mm, corridor 900 mm",
	} {
		assert.Contains(t, seen, want)
	}
	assert.NotContains(t, seen, "Glue and finish")
	assert.Contains(t, textOf(n), "Glue and finish")
	assert.Contains(t, seen, "4 to lift it above the chest", "who lifts it is never folded")
}

// Every wall has its drawing, under its name; a client looks at the first.
func TestEveryWallIsDrawn(t *testing.T) {
	doc, _, err := design.Add(design.Default(), "walls")
	require.NoError(t, err)
	for reading, want := range map[string]int{page.Client: 1, page.Maker: 2} {
		doc.View.Reading = reading
		n := parse(t, section(t, doc, design.DefaultBook(), page.Wall))
		assert.Len(t, n.having("wall-drawing"), want, reading)
		assert.Len(t, n.having("wall-pad"), want, reading)
	}
}

// A wall is asked for what its kind has use for, and for nothing else: studs where there
// are some, the diameter of wood screws in timber, and what a fixing's maker gives in all
// else.
func TestFieldsFollowTheWall(t *testing.T) {
	const studs, screw, rated, bow = "walls[0].studFirst", "walls[0].fixing.diameter", "walls[0].fixing.ratedShear", "walls[0].bow"
	for _, c := range []struct {
		kind, fixing string
		want         []string
	}{
		{"board on timber studs", "automatic", []string{studs, screw, bow}},
		{"board on timber studs", "anchor", []string{studs, rated, bow}},
		{"board on timber studs", "none", []string{studs}},
		{"board on steel studs", "automatic", []string{studs, rated, bow}},
		{"brick", "automatic", []string{rated, bow}},
		{"stone with lime", "anchor", []string{rated, bow}},
		{"unknown", "automatic", nil},
		{"no fixing allowed", "automatic", nil},
	} {
		doc := design.Default()
		doc.Design.Walls[0].Kind, doc.Design.Walls[0].Fixing.Kind = c.kind, c.fixing
		doc.View.Reading = page.Maker
		html := section(t, doc, design.DefaultBook(), page.Wall)
		var got []string
		for _, field := range []string{studs, screw, rated, bow} {
			if strings.Contains(html, `name="`+field+`"`) {
				got = append(got, field)
			}
		}
		assert.Equal(t, c.want, got, "%s, %s", c.kind, c.fixing)

		// They come and go with an edit of the kind, which leaves its own control alone; an
		// edit of one of them leaves them all alone.
		in := input(t, doc, design.DefaultBook(), words.English(), page.Wall)
		for _, f := range page.Fragments(in, "walls[0].kind") {
			assert.NotContains(t, f.HTML, `name="walls[0].kind"`, f.Target)
		}
		for _, f := range page.Fragments(in, studs) {
			assert.NotContains(t, f.HTML, `name="`+studs+`"`, f.Target)
		}
	}
}
