package wall_test

import (
	"fmt"
	"testing"

	"blockfield/engine/check"
	"blockfield/engine/design"
	"blockfield/engine/length"
	"blockfield/engine/wall"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func bow(mm float64, shape string) func(*design.Wall, *design.Group) {
	return func(w *design.Wall, _ *design.Group) {
		w.Bow, w.BowShape = length.Micrometres(int64(mm*1000)), shape
	}
}

// shimsOf are the shims of a hanging, "thick at place".
func shimsOf(h wall.Hanging) []string {
	var all []string
	for _, s := range h.Shims() {
		all = append(all, fmt.Sprintf("%v at %.0f", s.Thick, 1000*s.AlongM))
	}
	return all
}

// By hand: the arc of a chord of 2 m that is 8 mm deep is 8 · (L/2)² deep under a strip of
// L m. The first design's strip runs from 1203.0 to 2297.6 mm: half of it is 547.3, so it is
// 2.396 mm deep in the middle, at 1750.3. The studs at 1500 and 2100 are 0.4573 and 0.6390
// of the half off that: 2.396 · (1 − 0.2091) = 1.895 and 2.396 · (1 − 0.4083) = 1.418 mm
// where it is hollow, 0.501 and 0.978 mm where it has a belly.
func TestShimsByHand(t *testing.T) {
	h := wall.Hang(first(t, bow(8, "")))
	require.Len(t, h.Bays, 1)
	b := h.Bays[0]
	require.InDeltaSlice(t, []float64{1.2030, 2.2976}, []float64{b.FromM, b.ToM}, 1e-9)
	require.Equal(t, []float64{1.5, 2.1}, b.StudsM)
	assert.Equal(t, []string{"2 mm at 1500", "2 mm at 2100"}, shimsOf(h))
	assert.Equal(t, []string{"1 mm at 1500", "1 mm at 2100"}, shimsOf(wall.Hang(first(t, bow(8, design.Belly)))))
	assert.Equal(t, []string{"10 mm at 1500", "8 mm at 2100"}, shimsOf(wall.Hang(first(t, bow(40, "")))), "five times 1.895 and 1.418")
	assert.Equal(t, []string{"3 mm at 1500", "5 mm at 2100"}, shimsOf(wall.Hang(first(t, bow(40, design.Belly)))), "five times 0.501 and 0.978")
	assert.Empty(t, shimsOf(wall.Hang(first(t, bow(0, "")))))

	// Where the maker of a fixing says what it holds, it is packed at every fixing; the
	// outermost of a hollow wall touch it nearly.
	rated := wall.Hang(first(t, func(w *design.Wall, _ *design.Group) { plug(w); w.Bow = length.MM(8) }))
	require.Len(t, rated.Shims(), rated.Rated[0].Count)
	assert.Equal(t, rated.Shims()[0].Thick, rated.Shims()[len(rated.Shims())-1].Thick)
	assert.Less(t, rated.Shims()[0].Thick.Millimetres(), rated.ShimMM)
}

// Shims make the screws longer, count as so much more board, and never make anything
// safer.
func TestShimsAreCounted(t *testing.T) {
	thin := func(mm float64) wall.Hanging { // No. 8 through 9 mm of board
		return wall.Hang(first(t, func(w *design.Wall, g *design.Group) {
			bow(mm, "")(w, g)
			w.Board, w.Fixing.Diameter = length.MM(9), length.Micrometres(4200)
		}))
	}
	flat, _ := thin(0).Worst()
	assert.Equal(t, 70.0, flat.ScrewMM, "18 + 9 and ten times 4.17 are 68.7")
	long, use := flat.ScrewMM, 0.0
	for _, mm := range []float64{1, 4, 8, 16, 32, 60} {
		h := thin(mm)
		s, ok := h.Worst()
		require.True(t, ok)
		assert.GreaterOrEqual(t, s.ScrewMM, long)
		thicker := wall.Hang(first(t, func(w *design.Wall, _ *design.Group) {
			w.Board, w.Fixing.Diameter = length.Micrometres(int64(1000*(9+h.ShimMM))), length.Micrometres(4200)
		}))
		same, _ := thicker.Worst()
		assert.Equal(t, same.Use, s.Use, "as so much more board")
		perScrew := s.HoldsShearN
		assert.LessOrEqual(t, perScrew, flat.HoldsShearN)
		if s.AStud == flat.AStud && s.Gauge == flat.Gauge {
			assert.GreaterOrEqual(t, s.Use, use)
			use = s.Use
		}
		long = s.ScrewMM
	}
	assert.Greater(t, long, flat.ScrewMM)
}

// Beyond 5 mm under 2 m shims alone are not enough said; up to there they are.
func TestTheLimitOfABow(t *testing.T) {
	assert.NotContains(t, said(t, design.Room{}, bow(5, "")), "wall/bowed")
	got := said(t, design.Room{}, bow(5.1, ""))["wall/bowed"]
	assert.Equal(t, check.Caution, got.Level)
	assert.Equal(t, check.Hang, got.Gate)
	assert.Equal(t, "walls[0].bow", got.Field)
}

// Where the ground may shake nothing is hung before a professional has looked at this very
// design; and who has looked opens nothing else.
func TestAProfessionalLooks(t *testing.T) {
	h := first(t, func(*design.Wall, *design.Group) {})
	h.Seismic = true
	asked := design.Asked{Professional: "A. Beam", Licence: "no. 12", LookedOn: "2026-03-02", LookedAt: "all of it", LookedFor: "ABC123"}
	room := design.Room{TemperatureLow: 18}
	codesOf := func(h wall.Hung, asked design.Asked) map[string]check.WatchOut {
		h.Looked = asked.LookedAtThis("ABC123")
		out := map[string]check.WatchOut{}
		for _, w := range wall.Answered(room, design.Work{Hung: true, Crew: 6}, []wall.Hanging{wall.Hang(h)}, asked, "ABC123") {
			out[w.Code] = w
		}
		return out
	}
	got := codesOf(h, design.Asked{})
	require.Contains(t, got, "wall/seismic")
	assert.Equal(t, check.Stop, got["wall/seismic"].Level)
	assert.True(t, got["wall/seismic"].Evidence, "nobody signs it off")
	assert.True(t, wall.Hang(h).Blocked(design.Lifting{}))

	got = codesOf(h, asked)
	assert.NotContains(t, got, "wall/seismic")
	assert.Equal(t, check.Caution, got["wall/professional"].Level)
	for name, part := range map[string]func(*design.Asked){
		"name": func(a *design.Asked) { a.Professional = " " }, "licence": func(a *design.Asked) { a.Licence = "" },
		"day": func(a *design.Asked) { a.LookedOn = "" }, "at what": func(a *design.Asked) { a.LookedAt = "" },
	} {
		less := asked
		part(&less)
		assert.Contains(t, codesOf(h, less), "wall/seismic", name)
		assert.NotContains(t, codesOf(h, less), "wall/professional", name)
	}
	other := asked
	other.LookedFor = "ZZZZZZ"
	assert.Contains(t, codesOf(h, other), "wall/seismic", "another design")
	assert.Contains(t, codesOf(h, other), "wall/professional-old")

	// No name opens what a value has to open.
	for _, kind := range []string{"unknown", "brick", "no fixing allowed", "board on steel studs"} {
		h.Wall.Kind = kind
		with, without := codesOf(h, asked), codesOf(h, design.Asked{})
		for code, w := range without {
			if w.Level == check.Stop && code != "wall/seismic" {
				assert.Equal(t, check.Stop, with[code].Level, "%s: %s", kind, code)
				assert.True(t, with[code].Evidence)
			}
		}
	}
}

// What clears a wall that is not checked is another thing in every one of them.
func TestWhereNotCheckedLeads(t *testing.T) {
	for kind, want := range map[string][2]string{
		"unknown":           {"wall/not-known", "walls[0].kind"},
		"brick":             {"wall/not-checked", "walls[0].fixing.ratedShear"},
		"no fixing allowed": {"wall/no-fixing", "walls[0].groups[0].stand.baseDepth"},
	} {
		got := said(t, design.Room{}, func(w *design.Wall, _ *design.Group) { w.Kind = kind })
		assert.Equal(t, want[1], got[want[0]].Field, kind)
	}
	got := said(t, design.Room{}, func(w *design.Wall, _ *design.Group) { w.Fixing.Kind = "none" })
	assert.Equal(t, "walls[0].fixing.kind", got["wall/not-checked"].Field)
}

// Who hangs what a workshop only delivers are not the workshop's people.
func TestHandsOfOthers(t *testing.T) {
	h := hung(31, length.MM(1000), length.MM(1100))
	for _, c := range []struct {
		name string
		work design.Work
		code string
	}{
		{"the workshop hangs", design.Work{Hung: true, Delivered: true, Crew: 2}, "wall/hands-to-lift"},
		{"it has enough", design.Work{Hung: true, Delivered: true, Crew: 3}, ""},
		{"others hang, however many work there", design.Work{Delivered: true, Crew: 6}, "wall/hands-of-others"},
		{"they collect it", design.Work{Crew: 6}, "wall/hands-of-others"},
		{"a kit", design.Work{Supply: design.SupplyKit, Crew: 6}, "wall/hands-of-others"},
		{"at home", design.Work{OwnBuild: true, Crew: 2}, "wall/hands-to-lift"},
		{"at home with enough", design.Work{OwnBuild: true, Crew: 3}, ""},
	} {
		var got []string
		for _, w := range wall.WatchOuts(design.Room{TemperatureLow: 18}, c.work, []wall.Hanging{h}) {
			if w.Code == "wall/hands-to-lift" || w.Code == "wall/hands-of-others" || w.Code == "wall/hands-to-carry" {
				got = append(got, w.Code)
				assert.Equal(t, 3, w.Args["people"], c.name)
			}
		}
		if c.code == "" {
			assert.Empty(t, got, c.name)
			continue
		}
		assert.Equal(t, []string{c.code}, got, c.name)
	}
	// What the workshop delivers low on a wall is carried by its own people.
	low := hung(51, length.MM(600), length.MM(1100))
	all := wall.WatchOuts(design.Room{TemperatureLow: 18}, design.Work{Delivered: true, Crew: 2}, []wall.Hanging{low})
	require.NotEmpty(t, all)
	assert.Equal(t, "wall/hands-to-carry", all[0].Code)
}
