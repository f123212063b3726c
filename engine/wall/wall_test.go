package wall_test

import (
	"slices"
	"strings"
	"testing"

	"blockfield/engine/check"
	"blockfield/engine/design"
	"blockfield/engine/length"
	"blockfield/engine/panel"
	"blockfield/engine/wall"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// hung is a group 800 mm high on a wall of 2500 mm, its lower edge at bottom.
func hung(kg float64, bottom, ears length.Length) wall.Hanging {
	return wall.Hang(wall.Hung{
		Path:   "walls[0].groups[0]",
		Wall:   design.Wall{Height: length.MM(2500), EarHeight: ears},
		Design: design.Group{Place: design.Place{Edge: design.BottomEdge, Height: bottom}},
		Built:  panel.Group{Bottom: bottom, TotalHeight: length.MM(800), OuterHeight: length.MM(800)}, PanelKg: kg, WeighedField: weighedField,
	})
}

const weighedField = "record.weighed[0].kg"

func one(t *testing.T, room design.Room, crew int, h wall.Hanging) (check.WatchOut, bool) {
	t.Helper()
	work := design.Work{Hung: true, Crew: crew, Lifting: design.Lifting{Method: design.ByHand}}
	room.TemperatureLow = 18
	all := wall.WatchOuts(room, work, []wall.Hanging{h})
	all = slices.DeleteFunc(all, func(w check.WatchOut) bool { return w.Code == "wall/lift-room" || w.Code == "wall/in-reach" })
	if len(all) == 0 {
		return check.WatchOut{}, false
	}
	require.Len(t, all, 1)
	return all[0], true
}

// 15 kg each above the chest, 25 kg each to carry, and 60 kg for hands alone.
// Common practice, no source.
func TestHands(t *testing.T) {
	low, high, ears := length.MM(700), length.Micrometres(700_001), length.MM(1100)
	for _, c := range []struct {
		name   string
		kg     float64
		bottom length.Length
		crew   int
		code   string
		people int
	}{
		{"up to 1500 mm it is carried: 25 kg each", 50, low, 2, "", 0},
		{"a gram more", 50.001, low, 2, "wall/hands-to-carry", 3},
		{"above it is lifted: 15 kg each", 30, high, 2, "", 0},
		{"a gram more, lifted", 30.001, high, 2, "wall/hands-to-lift", 3},
		{"alone", 15, high, 1, "", 0},
		{"60 kg by four", 60, high, 4, "", 0},
		{"60 kg by three", 60, high, 3, "wall/hands-to-lift", 4},
		{"a gram more, whatever the crew", 60.001, high, 6, "wall/lifting-method", 0},
		{"low down too", 60.001, low, 6, "wall/lifting-method", 0},
	} {
		t.Run(c.name, func(t *testing.T) {
			got, fires := one(t, design.Room{}, c.crew, hung(c.kg, c.bottom, ears))
			require.Equal(t, c.code != "", fires, "%v", got)
			if !fires {
				return
			}
			assert.Equal(t, c.code, got.Code)
			assert.Equal(t, check.Offer, got.Gate)
			if c.code == "wall/lifting-method" {
				assert.Equal(t, check.Stop, got.Level)
				assert.True(t, got.Evidence, "nobody signs this off")
				assert.Nil(t, got.Fix, "nobody but a person can name who answers for the lift")
				return
			}
			assert.Equal(t, c.people, got.Args["people"])
			assert.Equal(t, check.Caution, got.Level)
			assert.False(t, got.Evidence)
			require.NotNil(t, got.Fix)
			assert.Equal(t, "work.crew", got.Fix.Path)
			assert.Equal(t, string(rune('0'+c.people)), got.Fix.Value)
		})
	}
}

// The Stop of a heavy panel is cleared by a method and by whoever answers for
// it, both of them; a signature does not do.
func TestALiftIsNamed(t *testing.T) {
	heavy := hung(77, length.MM(700), length.MM(1100))
	for _, c := range []struct{ method, lead, code, field string }{
		{"hands", "", "wall/lifting-method", "work.lifting.method"},
		{"hands", "A. Fitter", "wall/lifting-method", "work.lifting.method"},
		{"hoist", "", "wall/lifting-method", "work.lifting.lead"},
		{"hoist", " \t", "wall/lifting-method", "work.lifting.lead"},
		{"hoist", "A. Fitter", "wall/lift-named", weighedField},
	} {
		work := design.Work{Hung: true, Crew: 2, Lifting: design.Lifting{Method: c.method, Lead: c.lead}}
		all := wall.WatchOuts(design.Room{TemperatureLow: 18}, work, []wall.Hanging{heavy})
		require.Len(t, all, 1)
		assert.Equal(t, []string{c.code, c.field}, []string{all[0].Code, all[0].Field}, "%+v", c)
		if c.code == "wall/lift-named" {
			assert.Equal(t, []any{check.Caution, check.Hang, "A. Fitter"}, []any{all[0].Level, all[0].Gate, all[0].Args["lead"]})
			assert.Equal(t, check.ByEvidence, all[0].Pending, "nobody has weighed it yet")
		}
	}
}

// The weighed mass counts instead of the computed one, at the hands and at the
// wall; 10 % between them are a watch-out. Common practice, no source.
func TestWeighed(t *testing.T) {
	for _, c := range []struct {
		weighed float64
		off     bool
	}{{0, false}, {44, false}, {44.001, true}, {36, false}, {35.999, true}} {
		h := hung(40, length.MM(700), length.MM(1100)).Hung
		h.WeighedKg, h.WeighedField = c.weighed, weighedField
		got := map[string]check.WatchOut{}
		for _, w := range wall.WatchOuts(design.Room{TemperatureLow: 18}, design.Work{Hung: true, Crew: 6}, []wall.Hanging{wall.Hang(h)}) {
			got[w.Code] = w
		}
		w, fires := got["wall/weighed-off"]
		assert.Equal(t, c.off, fires, "%g kg", c.weighed)
		if fires {
			assert.Equal(t, []any{check.Caution, check.Hang, weighedField}, []any{w.Level, w.Gate, w.Field})
		}
	}
	heavy := hung(61, length.MM(700), length.MM(1100)).Hung
	heavy.WeighedKg = 60
	all := wall.WatchOuts(design.Room{TemperatureLow: 18}, design.Work{Hung: true, Crew: 3}, []wall.Hanging{wall.Hang(heavy)})
	assert.Empty(t, all, "60 kg by three at 1500 mm")
	heavy.PanelKg, heavy.WeighedKg = 60, 62
	all = wall.WatchOuts(design.Room{TemperatureLow: 18}, design.Work{Hung: true, Crew: 3}, []wall.Hanging{wall.Hang(heavy)})
	require.Len(t, all, 1)
	assert.Equal(t, "wall/lifting-method", all[0].Code)
	named := design.Work{Hung: true, Crew: 3, Lifting: design.Lifting{Method: "hoist", Lead: "A. Fitter"}}
	all = wall.WatchOuts(design.Room{TemperatureLow: 18}, named, []wall.Hanging{wall.Hang(heavy)})
	require.Len(t, all, 1)
	assert.Equal(t, []any{"wall/lift-named", check.NotPending}, []any{all[0].Code, all[0].Pending}, "named and weighed")
}

// On a walking route: more than 100 mm out, with the lower edge between 680 and 2030
// mm. Open rules for accessible rooms have 4 in, 27 and 80 in; from memory.
func TestWalkway(t *testing.T) {
	fires := func(bottom, out length.Length, walkway, stand bool) bool {
		h := hung(1, bottom, length.MM(1100)).Hung
		h.Wall.Walkway, h.Wall.Height, h.Built.Stack = walkway, length.MM(4000), out
		if stand {
			h.Design.Stand = design.Stand{BaseDepth: length.MM(2000), ToeAhead: length.MM(1000)}
		}
		for _, w := range wall.WatchOuts(design.Room{TemperatureLow: 18}, design.Work{Hung: true, Crew: 1}, []wall.Hanging{wall.Hang(h)}) {
			if w.Code == "wall/walkway" {
				return assert.Equal(t, []any{check.Caution, check.NoGate}, []any{w.Level, w.Gate})
			}
		}
		return false
	}
	um, mm := length.Micrometres, length.MM
	assert.False(t, fires(mm(1000), mm(100), true, false))
	assert.True(t, fires(mm(1000), um(100_001), true, false))
	assert.False(t, fires(mm(1000), um(100_001), false, false), "nobody walks there")
	assert.False(t, fires(mm(1000), um(100_001), true, true), "a stick finds the foot of a stand")
	assert.False(t, fires(um(679_999), mm(120), true, false))
	assert.True(t, fires(mm(680), mm(120), true, false))
	assert.True(t, fires(mm(2030), mm(120), true, false))
	assert.False(t, fires(um(2_030_001), mm(120), true, false))
}

// 500 mm between the middle of the panels and the ears. Common practice, no
// source. The middle is 400 mm above the lower edge.
func TestEars(t *testing.T) {
	mm, um := length.MM, length.Micrometres
	for _, c := range []struct {
		name         string
		bottom, ears length.Length
		code, fix    string
	}{
		{"500 mm above", mm(1300), mm(1200), "", ""},
		{"a hair more", um(1_300_001), mm(1200), "wall/above-ears", "1299.001 mm"},
		{"500 mm below", mm(300), mm(1200), "", ""},
		{"a hair more below", um(299_999), mm(1200), "wall/below-ears", "300.999 mm"},
		{"above, in inches", length.Sixtyfourths(52 * 64), mm(1200), "wall/above-ears", "51 1/8 in"}, // 1320.8 + 400 − 1700 = 20.8: 7/8 in
		{"no room to go down", mm(0), mm(-200), "wall/above-ears", ""},
		{"no room to go up", mm(1700), mm(2700), "wall/below-ears", ""},
	} {
		t.Run(c.name, func(t *testing.T) {
			got, fires := one(t, design.Room{}, 1, hung(1, c.bottom, c.ears))
			require.Equal(t, c.code != "", fires, "%v", got)
			if !fires {
				return
			}
			assert.Equal(t, []any{c.code, check.Note}, []any{got.Code, got.Level})
			if c.fix == "" {
				assert.Nil(t, got.Fix)
				return
			}
			require.NotNil(t, got.Fix)
			assert.Equal(t, check.Fix{Path: "walls[0].groups[0].place.height", Value: c.fix}, *got.Fix)
		})
	}
}

func TestFireQuestion(t *testing.T) {
	h := hung(1, length.MM(1000), length.MM(1200))
	_, fires := one(t, design.Room{}, 1, h)
	assert.False(t, fires)
	got, fires := one(t, design.Room{Public: true}, 1, h)
	require.True(t, fires)
	assert.Equal(t, []any{"wall/fire-question", check.Caution, check.Buy}, []any{got.Code, got.Level, got.Gate})
	assert.Nil(t, got.Fix, "an answer in writing, not an edit")
	assert.Equal(t, check.SignOff, got.Pending)
	all := wall.Answered(design.Room{Public: true, TemperatureLow: 18}, design.Work{Hung: true, Crew: 1}, []wall.Hanging{h}, design.Asked{Fire: "B. Warden, 3 May: class C is enough"}, "")
	got = all[len(all)-1]
	assert.Equal(t, []any{"wall/fire-answer", check.Caution, check.NotPending}, []any{got.Code, got.Level, got.Pending})
}

// A place that crowds a safety device is a Stop that nobody signs; whoever answers for the
// building may allow it, for the very design that was shown.
func TestAllowedPlace(t *testing.T) {
	h := hung(1, length.MM(1000), length.MM(1200))
	h.Wall.Obstacles = []design.Obstacle{{Kind: "detector", Y: length.MM(1000)}}
	for _, c := range []struct {
		asked    design.Asked
		code     string
		level    check.Level
		evidence bool
	}{
		{design.Asked{}, "wall/safety-device", check.Stop, true},
		{design.Asked{Devices: " ", DevicesFor: "ABC123"}, "wall/safety-device", check.Stop, true},
		{design.Asked{Devices: "B. Warden, 3 May", DevicesFor: "ABC124"}, "wall/safety-device", check.Stop, true},
		{design.Asked{Devices: "B. Warden, 3 May", DevicesFor: "ABC123"}, "wall/safety-allowed", check.Caution, false},
	} {
		var got []any
		for _, w := range wall.Answered(design.Room{TemperatureLow: 18}, design.Work{Hung: true, Crew: 1}, []wall.Hanging{h}, c.asked, "ABC123") {
			if strings.HasPrefix(w.Code, "wall/safety") {
				got = append(got, w.Code, w.Level, w.Evidence, w.Gate, w.Field)
			}
		}
		assert.Equal(t, []any{c.code, c.level, c.evidence, check.Offer, "record.asked.devices"}, got, "%+v", c.asked)
	}
}

// 25 kg each to carry and 15 kg each above the chest; the sentence about the
// mass says both.
func TestCarriersAndLifters(t *testing.T) {
	for _, c := range []struct {
		kg          float64
		carry, lift int
	}{{15, 1, 1}, {15.1, 1, 2}, {25, 1, 2}, {25.1, 2, 2}, {77.3, 4, 6}} {
		assert.Equal(t, []int{c.carry, c.lift}, []int{wall.Carriers(c.kg), wall.Lifters(c.kg)}, "%v kg", c.kg)
	}
}
