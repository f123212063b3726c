package wall_test

import (
	"strings"
	"testing"

	"blockfield/engine/check"
	"blockfield/engine/design"
	"blockfield/engine/design/designtest"
	"blockfield/engine/length"
	"blockfield/engine/panel"
	"blockfield/engine/wall"
	"blockfield/engine/words"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// first is the first design as its wall sees it, 38.8 kg, after a change.
func first(t *testing.T, change func(*design.Wall, *design.Group)) wall.Hung {
	t.Helper()
	w := design.Default().Design.Walls[0]
	g := w.Groups[0]
	change(&w, &g)
	built, err := panel.Build(g)
	require.NoError(t, err)
	return wall.Hung{Path: "walls[0].groups[0]", Wall: w, Design: g, Built: built, PanelKg: 38.8, WayIn: design.Default().Design.WayIn}
}

// said lists the codes that a change brings, but for hands and ears.
func said(t *testing.T, room design.Room, change func(*design.Wall, *design.Group)) map[string]check.WatchOut {
	t.Helper()
	work := design.Work{Hung: true, Crew: 6, Lifting: design.Lifting{Method: design.ByHand}}
	if room.TemperatureLow == 0 {
		room.TemperatureLow = 18
	}
	out := map[string]check.WatchOut{}
	for _, w := range wall.WatchOuts(room, work, []wall.Hanging{wall.Hang(first(t, change))}) {
		if !strings.Contains(w.Code, "-ears") {
			out[w.Code] = w
		}
	}
	return out
}

func codes(all map[string]check.WatchOut) []string {
	var out []string
	for code := range all {
		out = append(out, code)
	}
	return out
}

func plug(w *design.Wall) {
	w.Kind, w.Fixing.Kind = "brick", "plug and screw"
	w.Fixing.RatedShear, w.Fixing.RatedPull = 1.2, 0.8
	w.Fixing.What, w.Fixing.Source = "Plug in solid brick", "Invented"
}

// Every wall is either counted or not checked: nothing passes in silence, and no
// Stop of what holds is one that a signature clears.
func TestEveryWallIsCountedOrStopped(t *testing.T) {
	counted := map[string]bool{"wall/screws": true, "wall/rated": true}
	stops := map[string]bool{
		"wall/overloaded": true, "wall/rated-overloaded": true, "wall/not-checked": true, "wall/not-known": true, "wall/no-fixing": true, "wall/board-alone": true, "wall/one-stud": true,
	}
	for _, kind := range []string{
		"board on timber studs", "board on steel studs", "brick", "block", "concrete", "stone with lime", "unknown", "no fixing allowed",
	} {
		for _, fixing := range []string{"automatic", "wood screw", "plug and screw", "anchor", "none"} {
			for _, ratedKN := range []float64{0, 1} {
				for _, step := range []int64{0, 600} {
					got := said(t, design.Room{}, func(w *design.Wall, _ *design.Group) {
						w.Kind, w.Fixing.Kind, w.StudStep = kind, fixing, length.MM(step)
						w.Fixing.RatedShear, w.Fixing.RatedPull = ratedKN, ratedKN
						w.Fixing.What, w.Fixing.Source = "Some fixing", "Some source"
					})
					n := 0
					for code, w := range got {
						if counted[code] {
							n++
							assert.Equal(t, []any{check.Caution, check.Hang}, []any{w.Level, w.Gate})
						}
						if stops[code] {
							n++
							assert.True(t, w.Level == check.Stop && w.Evidence, "%s on %s", code, kind)
							assert.NotEmpty(t, w.Gate)
						}
					}
					assert.Equal(t, 1, n, "%s, %s, %g kN, studs every %d: %v", kind, fixing, ratedKN, step, codes(got))
					if ratedKN == 0 && (kind != "board on timber studs" || step == 0) {
						assert.NotContains(t, got, "wall/screws")
						assert.NotContains(t, got, "wall/rated")
					}
				}
			}
		}
	}
}

// A rated value counts with its fixing and its source, and both values only.
func TestRatedValueIsWhole(t *testing.T) {
	good := said(t, design.Room{}, func(w *design.Wall, _ *design.Group) { plug(w) })
	assert.Contains(t, good, "wall/rated")
	for name, spoil := range map[string]func(*design.Wall){
		"no shear":  func(w *design.Wall) { w.Fixing.RatedShear = 0 },
		"no pull":   func(w *design.Wall) { w.Fixing.RatedPull = 0 },
		"no name":   func(w *design.Wall) { w.Fixing.What = " " },
		"no source": func(w *design.Wall) { w.Fixing.Source = "" },
	} {
		got := said(t, design.Room{}, func(w *design.Wall, _ *design.Group) { plug(w); spoil(w) })
		assert.Contains(t, got, "wall/not-checked", name)
		assert.Equal(t, "walls[0].fixing.ratedShear", got["wall/not-checked"].Field)
	}
}

// Two studs are wanted; above 15 kg one is a Stop, none always; a rail helps
// where it reaches two.
func TestStuds(t *testing.T) {
	at := func(left int64, kg float64, rail bool) check.WatchOut {
		h := first(t, func(w *design.Wall, g *design.Group) { g.Place.Left, w.Rail = length.MM(left), rail })
		h.PanelKg = kg
		for _, w := range wall.WatchOuts(design.Room{TemperatureLow: 18}, design.Work{Hung: true, Crew: 6}, []wall.Hanging{wall.Hang(h)}) {
			if w.Code == "wall/one-stud" {
				return w
			}
		}
		return check.WatchOut{}
	}
	// The cleat begins 73 mm from the panel's left edge and is 1095 mm long; a
	// stud counts from 62 mm inside. Studs at 900, 1500, 2100, …
	assert.Zero(t, at(1130, 38, false).Level, "1500 and 2100")
	assert.Equal(t, check.Stop, at(1370, 15.01, false).Level, "2100 alone")
	assert.Equal(t, check.Caution, at(1370, 15, false).Level)
	assert.Equal(t, "walls[0].rail", at(1370, 15, false).Field)
}

// The change that is offered goes the shortest way to two studs, but not off the wall:
// with its left edge at 1370 mm the panel meets 2100 alone, 6 mm to the left it meets
// 1500 too; near the right end of the studs there is no way to the right. A panel too
// narrow for two is offered a rail.
func TestTheWayToTwoStuds(t *testing.T) {
	fix := func(change func(*design.Wall, *design.Group)) *check.Fix {
		return said(t, design.Room{}, change)["wall/one-stud"].Fix
	}
	light := func(g *design.Group) { g.Wood = "cedar" }
	assert.Equal(t, &check.Fix{Path: "walls[0].groups[0].place.left", Value: "1364 mm"}, fix(func(_ *design.Wall, g *design.Group) {
		light(g)
		g.Place.Left = length.MM(1370)
	}))
	studs := []length.Length{length.MM(900), length.MM(2470), length.MM(3030)}
	free := fix(func(w *design.Wall, g *design.Group) { w.Studs, g.Place.Left = studs, length.MM(1850) })
	assert.Equal(t, &check.Fix{Path: "walls[0].groups[0].place.left", Value: "1925 mm"}, free)
	tight := fix(func(w *design.Wall, g *design.Group) {
		w.Studs, g.Place.Left, w.Width = studs, length.MM(1850), length.MM(3091)
	})
	assert.Equal(t, &check.Fix{Path: "walls[0].rail", Value: "yes"}, tight, "1925 mm would end 74.6 mm beyond the wall")
	assert.Equal(t, &check.Fix{Path: "walls[0].rail", Value: "yes"}, fix(func(_ *design.Wall, g *design.Group) {
		g.Width, g.Place.Left = length.MM(600), length.MM(1200)
	}))
}

// A panel between two studs hits none: that is a Stop however light it is, and no
// count of screws stands beside it.
func TestNoStudIsNeverLight(t *testing.T) {
	h := first(t, func(_ *design.Wall, g *design.Group) { g.Place.Left, g.Width = length.MM(960), length.MM(450) })
	h.PanelKg = 5
	got := map[string]check.Level{}
	for _, w := range wall.WatchOuts(design.Room{TemperatureLow: 18}, design.Work{Hung: true, Crew: 6}, []wall.Hanging{wall.Hang(h)}) {
		got[w.Code] = w.Level
	}
	assert.Equal(t, check.Stop, got["wall/one-stud"])
	assert.NotContains(t, got, "wall/screws")
}

// A rail carries all panels beside one another on all studs behind them: two of 38.8
// kg on one strip, which runs from the first cleat to the last.
func TestRail(t *testing.T) {
	hang := func(rail bool) wall.Hanging {
		return wall.Hang(first(t, func(w *design.Wall, g *design.Group) {
			w.Rail, w.Width, w.StudStep = rail, length.MM(6000), length.MM(400)
			g.PanelsWide, g.Columns, g.Width = 2, 33, length.MM(2400)
		}))
	}
	apart, one := hang(false), hang(true)
	require.Len(t, apart.Bays, 2)
	require.Len(t, one.Bays, 1)
	assert.InDelta(t, 77.6, one.Bays[0].Kg, 1e-9)
	assert.Equal(t, []int{0, 1}, one.Bays[0].Panels)
	assert.Equal(t, []float64{apart.Bays[0].LeftM, apart.Bays[1].RightM}, []float64{one.Strips[0].LeftM, one.Strips[0].RightM})
	assert.InDelta(t, (apart.Bays[0].CentreM+apart.Bays[1].CentreM)/2, one.Bays[0].CentreM, 1e-9)
	assert.GreaterOrEqual(t, len(one.Bays[0].StudsM), len(apart.Bays[0].StudsM)+len(apart.Bays[1].StudsM))
}

// A rail behind a panel that meets one stud is made longer, to the nearest stud that
// it misses; it ends 62 mm beyond that, and stays on the wall.
func TestARailReachesTwoStuds(t *testing.T) {
	at := func(left, wide int64) wall.Bay {
		return wall.Hang(first(t, func(w *design.Wall, g *design.Group) {
			w.Rail, g.Place.Left, w.Width = true, length.MM(left), length.MM(wide)
		})).Bays[0]
	}
	both := at(1130, 3500) // studs at 900, 1500, 2100; the cleat from 1203 to 2297.6
	assert.Equal(t, []float64{both.LeftM, both.RightM}, []float64{both.FromM, both.ToM}, "two behind it already")
	right := at(1370, 3500) // the cleat from 1443 to 2537.6: 1500 is 5 mm too near its end, 2700 is 224 off
	assert.Equal(t, []float64{1.5, 2.1}, right.StudsM)
	assert.InDelta(t, 1.5-0.062, right.FromM, 1e-6)
	assert.Equal(t, right.RightM, right.ToM)
	corner := at(2250, 3500) // the cleat from 2323 to 3417.6: 2700 and 3300
	assert.Len(t, corner.StudsM, 2)
}

// Studs that were found count instead of first and step, in whatever order they were
// typed and each once.
func TestFoundStuds(t *testing.T) {
	h := first(t, func(w *design.Wall, _ *design.Group) {
		w.Studs = []length.Length{length.MM(2120), length.MM(1490), length.MM(1490), length.MM(9000)}
	})
	assert.Equal(t, []length.Length{length.MM(1490), length.MM(2120)}, h.StudPlaces())
	assert.Equal(t, []float64{1.49, 2.12}, wall.Hang(h).Bays[0].StudsM)
	h.Wall.Kind = "board on steel studs"
	assert.Len(t, h.StudPlaces(), 2)
	assert.Empty(t, wall.Hang(h).Bays[0].StudsM, "no wood screw holds in steel")
	h.Wall.Kind = "brick"
	assert.Empty(t, h.StudPlaces())
}

// Four times the load, unless somebody has said why less will do: then what was typed,
// and that is said.
func TestLoadFactor(t *testing.T) {
	for _, c := range []struct {
		typed  float64
		reason string
		code   string
		counts float64
	}{
		{4, "", "", 4}, {6, "", "", 6}, {3.9, "", "wall/factor-unsaid", 4}, {3.9, " ", "wall/factor-unsaid", 4},
		{3.9, "locked plant room", "wall/low-factor", 3.9}, {2, "locked plant room", "wall/low-factor", 2},
		{4, "locked plant room", "", 4},
	} {
		change := func(w *design.Wall, _ *design.Group) { w.Fixing.LoadFactor, w.Fixing.Reason = c.typed, c.reason }
		got := said(t, design.Room{}, change)
		for _, code := range []string{"wall/factor-unsaid", "wall/low-factor"} {
			_, fires := got[code]
			assert.Equal(t, code == c.code, fires, "%+v: %s", c, code)
		}
		assert.Equal(t, c.counts, wall.Hang(first(t, change)).Factor)
	}
	assert.Equal(t, []any{check.Note, check.Hang}, func() []any {
		w := said(t, design.Room{}, func(w *design.Wall, _ *design.Group) { w.Fixing.LoadFactor = 2 })["wall/factor-unsaid"]
		return []any{w.Level, w.Gate}
	}())
}

func TestLockAndStand(t *testing.T) {
	got := said(t, design.Room{}, func(_ *design.Wall, g *design.Group) { g.Cleat.Lock = "none" })
	w := got["wall/no-lock"]
	assert.True(t, w.Level == check.Stop && w.Evidence && w.Gate == check.Hang)
	// The worked stand, centre 1150 mm up: 260 mm ahead of 520 hold, 180 of 400 do
	// not; nor do 340 of 520, which leave 180 behind.
	for _, c := range []struct {
		base, toe int64
		field     string
	}{{520, 260, ""}, {400, 180, "toeAhead"}, {520, 340, "baseDepth"}} {
		got := said(t, design.Room{}, func(w *design.Wall, g *design.Group) {
			w.Kind, g.Place.Height = "no fixing allowed", length.MM(400)
			g.Stand = design.Stand{BaseDepth: length.MM(c.base), ToeAhead: length.MM(c.toe), CentreHeight: length.MM(1150)}
		})
		w, fires := got["wall/stand-tips"]
		assert.Equal(t, c.field != "", fires, "%+v", c)
		assert.NotContains(t, got, "wall/not-checked", "a stand needs no fixing")
		if fires {
			assert.True(t, strings.HasSuffix(w.Field, c.field), w.Field)
			assert.True(t, w.Evidence && w.Gate == check.Offer)
			assert.True(t, w.Args["more"].(length.Length).Same(length.MM(23)), "1150 tan 10° − 180 = 22.8")
		}
	}
	high := said(t, design.Room{}, func(_ *design.Wall, g *design.Group) {
		g.Stand = design.Stand{BaseDepth: length.MM(400), ToeAhead: length.MM(200)}
	})
	assert.Contains(t, high, "wall/stand-tips", "nobody said how high: the panel hangs at 1.3 m, 200 mm are 8.7°")
}

// t tan(bevel) + 6 mm: 18 mm at 45° take 24, 38 take 44 (worked figures of the
// trade); 3/4 in take 25.05; at 30° 18 mm take 16.4.
func TestLiftRoomNeeded(t *testing.T) {
	for _, c := range []struct {
		cleat length.Length
		bevel float64
		want  length.Length
	}{
		{length.MM(18), 45, length.MM(24)}, {length.MM(38), 45, length.MM(44)},
		{length.Sixtyfourths(48), 45, length.Micrometres(25_050)},
		{length.MM(18), 30, length.Micrometres(16_393)},
	} {
		got := wall.LiftRoom(c.cleat, c.bevel)
		assert.True(t, got.Same(c.want), "%s at %g°: %s", c.cleat, c.bevel, got)
	}
}

// 24 mm to the ceiling are enough and a hair less is not; so to a beam, but not
// to a window; the change that is offered is a whole millimetre here.
func TestLiftRoom(t *testing.T) {
	top := first(t, func(*design.Wall, *design.Group) {}).Built.TotalHeight
	under := func(air length.Length, obstacles ...design.Obstacle) (check.WatchOut, bool) {
		got := said(t, design.Room{}, func(w *design.Wall, g *design.Group) {
			w.Obstacles = obstacles
			g.Place.Height = w.Height.Sub(air).Sub(top)
		})
		w, fires := got["wall/lift-room"]
		return w, fires
	}
	_, fires := under(length.MM(24))
	assert.False(t, fires)
	w, fires := under(length.Micrometres(23_999))
	require.True(t, fires)
	assert.True(t, w.Evidence && w.Level == check.Stop && w.Gate == check.Offer)
	require.NotNil(t, w.Fix)
	beam := design.Obstacle{Kind: "beam", Y: length.MM(2300), Width: length.MM(3500)}
	_, fires = under(length.MM(224), beam)
	assert.False(t, fires)
	w, fires = under(length.Micrometres(223_999), beam)
	require.True(t, fires)
	assert.Equal(t, check.Fix{Path: "walls[0].groups[0].place.height", Value: "1432.601 mm"}, *w.Fix)
	beam.Kind = "window"
	_, fires = under(length.MM(100), beam)
	assert.False(t, fires)
	beam.Kind, beam.X, beam.Width = "beam", length.MM(0), length.MM(1130)
	_, fires = under(length.MM(100), beam)
	assert.False(t, fires, "beside the panel")
}

// The first panel spans 1130 to 2370.6 mm and 900 to 1742.4 mm; studs at 1500
// and 2100.
func TestWhatIsNear(t *testing.T) {
	for _, c := range []struct {
		kind       string
		x, y, w, h int64
		code       string
	}{
		{"grille", 2520, 1000, 100, 100, "wall/grille"}, {"grille", 2521, 1000, 100, 100, ""},
		{"radiator", 1500, 200, 600, 401, "wall/heat"}, {"radiator", 1500, 200, 600, 400, ""},
		{"socket", 1270, 300, 80, 80, "wall/cable"}, {"socket", 1269, 300, 80, 80, ""},
		{"switch", 2250, 300, 80, 80, "wall/cable"}, {"switch", 2251, 300, 80, 80, ""},
		{"detector", 1500, 2242, 100, 100, "wall/safety-device"}, {"detector", 1500, 2243, 100, 100, ""},
		{"call point", 1500, 300, 100, 101, "wall/safety-device"}, {"call point", 1500, 300, 100, 100, ""},
		{"exit sign", 531, 1000, 100, 100, "wall/safety-device"}, {"exit sign", 530, 1000, 100, 100, ""},
		{"sprinkler", 100, 2192, 100, 100, "wall/safety-device"}, {"sprinkler", 100, 2193, 100, 100, ""},
		{"door swing", 300, 0, 831, 2000, "wall/safety-device"}, {"door swing", 300, 0, 830, 2000, ""},
		{"furniture", 300, 0, 900, 850, ""},
	} {
		got := said(t, design.Room{}, func(w *design.Wall, _ *design.Group) {
			w.Obstacles = []design.Obstacle{{
				Kind: c.kind, X: length.MM(c.x), Y: length.MM(c.y), Width: length.MM(c.w), Height: length.MM(c.h),
			}}
		})
		want := []string{"wall/screws"}
		if c.code != "" {
			want = append(want, c.code)
		}
		assert.ElementsMatch(t, want, codes(got), "%+v", c)
		if c.code == "wall/safety-device" {
			assert.True(t, got[c.code].Level == check.Stop && got[c.code].Evidence)
		}
	}
	// In brick a fixing may go in anywhere behind the panel.
	got := said(t, design.Room{}, func(w *design.Wall, _ *design.Group) {
		plug(w)
		w.Obstacles = []design.Obstacle{{Kind: "socket", X: length.MM(1700), Width: length.MM(80), Height: length.MM(80)}}
	})
	assert.Contains(t, got, "wall/cable")
}

func TestRoomOfTheWall(t *testing.T) {
	none := func(*design.Wall, *design.Group) {}
	dry := design.Room{HumidityHigh: 70, TemperatureLow: 12, Public: true}
	assert.NotContains(t, said(t, dry, none), "wall/damp-or-cold")
	assert.Contains(t, said(t, dry, none), "wall/in-reach", "900 mm from the floor")
	assert.NotContains(t, said(t, dry, func(_ *design.Wall, g *design.Group) { g.Place.Height = length.MM(1200) }), "wall/in-reach")
	damp, cold := dry, dry
	damp.HumidityHigh, cold.TemperatureLow = 70.1, 11.9
	assert.Contains(t, said(t, damp, none), "wall/damp-or-cold")
	assert.Contains(t, said(t, cold, none), "wall/damp-or-cold")
	for code, change := range map[string]func(*design.Wall){
		"wall/outside": func(w *design.Wall) { w.Outside = true }, "wall/sun": func(w *design.Wall) { w.Sun = true },
	} {
		assert.NotContains(t, said(t, dry, none), code)
		assert.Contains(t, said(t, dry, func(w *design.Wall, _ *design.Group) { change(w) }), code)
	}
}

// wayIn is the first design on its way in, 1240.6 × 842.4 × 127 mm and 40 mm more
// each way with its packing, after a change.
func wayIn(t *testing.T, change func(*design.WayIn)) (map[string]wall.Step, map[string]check.WatchOut) {
	t.Helper()
	h := first(t, func(*design.Wall, *design.Group) {})
	change(&h.WayIn)
	steps := map[string]wall.Step{}
	for _, s := range h.WaySteps() {
		steps[s.Name] = s
	}
	out := map[string]check.WatchOut{}
	for _, w := range wall.WatchOuts(design.Room{TemperatureLow: 18}, design.Work{Hung: true, Crew: 6}, []wall.Hanging{wall.Hang(h)}) {
		out[w.Code] = w
	}
	return steps, out
}

// A step fires just beyond its limit: 882.4 mm stand under the door, or lie in the
// vehicle, 1280.6 turn on the landing or lie in the lift's car.
func TestWayIn(t *testing.T) {
	mm, um := length.MM, length.Micrometres
	stairs := func(in *design.WayIn) { in.StairWidth, in.Landing = mm(850), mm(850) }
	lift := func(depth length.Length) func(in *design.WayIn) {
		return func(in *design.WayIn) {
			in.Lift, in.LiftDoor, in.LiftWidth, in.LiftDepth, in.LiftHeight = "one", mm(800), mm(167), depth, mm(1280)
		}
	}
	for _, c := range []struct {
		name   string
		change func(*design.WayIn)
		step   string
		passes bool
		code   string
	}{
		{"as it is", func(*design.WayIn) {}, "way/door", true, ""},
		{"a low door that the panel turns through on its long edge", func(in *design.WayIn) { in.DoorHeight = um(882_400) }, "way/door", true, ""},
		{"a hair lower", func(in *design.WayIn) { in.DoorHeight = um(882_399) }, "way/door", false, "wall/way-in"},
		{"landings of 850 mm", stairs, "way/stairs", true, ""},
		{"stairs in words", func(in *design.WayIn) { in.Stairs = "three flights" }, "way/stairs", false, "wall/way-in-open"},
		{"a car as deep as the panel is long", lift(um(1_280_600)), "way/lift", true, ""},
		{"a hair less deep", lift(um(1_280_500)), "way/lift", false, "wall/way-in"},
		{"a lift's door as wide as the panel is deep", func(in *design.WayIn) { lift(mm(1300))(in); in.LiftDoor = mm(167) }, "way/lift", true, ""},
		{"a hair narrower", func(in *design.WayIn) { lift(mm(1300))(in); in.LiftDoor = um(166_999) }, "way/lift", false, "wall/way-in"},
		{"stairs beside a lift that is too small", func(in *design.WayIn) { stairs(in); lift(mm(1200))(in) }, "way/stairs", true, ""},
		{"stairs that nobody measured beside a lift that does", func(in *design.WayIn) {
			in.Stairs = "narrow"
			lift(mm(1300))(in)
		}, "way/lift", true, ""},
		{"a vehicle as long as the panel", func(in *design.WayIn) { in.Vehicle = um(1_280_600) }, "way/vehicle", true, ""},
		{"a hair shorter", func(in *design.WayIn) { in.Vehicle = um(1_280_599) }, "way/vehicle", false, "wall/way-in"},
	} {
		t.Run(c.name, func(t *testing.T) {
			steps, out := wayIn(t, c.change)
			assert.Equal(t, c.passes, steps[c.step].Passes)
			for _, code := range []string{"wall/way-in", "wall/way-in-open"} {
				_, fires := out[code]
				assert.Equal(t, code == c.code, fires, code)
			}
			if w, fires := out["wall/way-in"]; fires {
				assert.Equal(t, []any{check.Stop, check.Offer, false}, []any{w.Level, w.Gate, w.Evidence})
			}
		})
	}
}

// Without frame and packing the panel is 1194.6 × 796.4 × 122 mm: a door of 880 mm
// in height lets it in, one of 796 does not.
func TestFrameOffForTheWay(t *testing.T) {
	for height, want := range map[int64]bool{880: true, 796: false} {
		steps, out := wayIn(t, func(in *design.WayIn) { in.DoorHeight = length.MM(height) })
		assert.Equal(t, want, steps["way/door"].Bare)
		assert.Equal(t, want, out["wall/way-in"].Args["bare"] == words.Key("way/bare"))
	}
}

// Too many short blocks and voids leave no place for the screws of the cleat.
func TestTooFewCells(t *testing.T) {
	got := said(t, design.Room{}, func(_ *design.Wall, g *design.Group) {
		g.Heights = []length.Length{length.MM(0), length.MM(10), length.MM(20), length.MM(25)}
	})
	w := got["wall/too-few-cells"]
	assert.True(t, w.Level == check.Stop && w.Evidence && w.Gate == check.Hang)
	assert.Equal(t, 0, w.Args["have"])
}

// One mass on either side of what the screws hold: the heaviest panel that hangs, found
// by halving, uses them to the limit, and a gram more is a Stop that only evidence
// clears.
func TestTheLimitOfTheScrews(t *testing.T) {
	at := func(kg float64) wall.Hanging {
		h := first(t, func(*design.Wall, *design.Group) {})
		h.PanelKg = kg
		return wall.Hang(h)
	}
	level := func(kg float64) map[string]check.Level {
		out := map[string]check.Level{}
		for _, w := range wall.WatchOuts(design.Room{TemperatureLow: 18}, design.Work{Hung: true, Crew: 6}, []wall.Hanging{at(kg)}) {
			out[w.Code] = w.Level
		}
		return out
	}
	low, high := 10.0, 200.0
	for high-low > 0.001 {
		if s, _ := at((low + high) / 2).Worst(); s.Enough() {
			low = (low + high) / 2
		} else {
			high = (low + high) / 2
		}
	}
	s, _ := at(low).Worst()
	assert.InDelta(t, 1, s.MostUse(), 0.001)
	assert.Equal(t, check.Caution, level(low)["wall/screws"])
	assert.Equal(t, check.Stop, level(high)["wall/overloaded"])
	assert.NotContains(t, level(high), "wall/screws")
}

// And one count on either side of what is sensible with rated values: a thousand.
func TestTheLimitOfRatedValues(t *testing.T) {
	at := func(kN float64) map[string]check.WatchOut {
		return said(t, design.Room{}, func(w *design.Wall, _ *design.Group) {
			plug(w)
			w.Fixing.RatedShear, w.Fixing.RatedPull = kN, kN
		})
	}
	weight := 38.8 * 9.81 / 1000
	just := 4 * weight * (1 + 2*7.0/13) / 1000 // kN each, with the wedge felt twice
	assert.Contains(t, at(just*1.000001), "wall/rated")
	assert.Contains(t, at(just*0.999999), "wall/rated-overloaded")
}

// 1150 tan 10° = 202.776 mm: a toe a hair shorter tips too soon.
func TestTheLimitOfAStand(t *testing.T) {
	at := func(toe int64) map[string]check.WatchOut {
		return said(t, design.Room{}, func(_ *design.Wall, g *design.Group) {
			g.Place.Height = length.MM(400)
			g.Stand = design.Stand{BaseDepth: length.MM(600), ToeAhead: length.Micrometres(toe), CentreHeight: length.MM(1150)}
		})
	}
	assert.NotContains(t, at(202_777), "wall/stand-tips")
	assert.Contains(t, at(202_776), "wall/stand-tips")
}

// As many places as screws are wanted are enough, and one less is not: tall blocks,
// two apart, in one row of a bare backer.
func TestTheLimitOfCells(t *testing.T) {
	at := func(places int) map[string]check.WatchOut {
		return said(t, design.Room{}, func(_ *design.Wall, g *design.Group) {
			row := []byte(strings.Repeat("0", 33))
			for i := range places {
				row[2+2*i] = '1'
			}
			short := strings.Repeat("0", 33)
			g.Heights = []length.Length{length.MM(0), length.MM(60)}
			g.Pattern.Kind, g.Pattern.Drawn = "drawn", nil
			for i := range 22 {
				if i == 2 {
					g.Pattern.Drawn = append(g.Pattern.Drawn, string(row))
				} else {
					g.Pattern.Drawn = append(g.Pattern.Drawn, short)
				}
			}
		})
	}
	places := 1
	for at(places)["wall/too-few-cells"].Code != "" {
		places++
	}
	w := at(places - 1)["wall/too-few-cells"]
	assert.Equal(t, []any{check.Stop, true, check.Hang}, []any{w.Level, w.Evidence, w.Gate})
	assert.Equal(t, []any{places, places - 1}, []any{w.Args["need"], w.Args["have"]})
	assert.Greater(t, places, 5)
}

// What the worked jobs of damp stone, narrow modules and a stand are held by: the
// modules stay shut until a rail carries them all.
func TestGatesOfWorkedJobs(t *testing.T) {
	studs := func(name string) bool {
		d := designtest.Job(t, name)
		g := d.Walls[0].Groups[0]
		built, err := panel.Build(g)
		require.NoError(t, err)
		h := wall.Hung{Path: "walls[0].groups[0]", Wall: d.Walls[0], Design: g, Built: built, PanelKg: 50}
		for _, w := range wall.WatchOuts(d.Room, d.Work, []wall.Hanging{wall.Hang(h)}) {
			if w.Code == "wall/one-stud" && w.Level == check.Stop {
				return true
			}
		}
		return false
	}
	assert.True(t, studs("s7"))
	assert.False(t, studs("s7-second"))
}

// Hands alone are no method above 60 kg: until somebody is named who leads the lift, and
// how, there is no day of hanging, and no number of people is given.
func TestNoDayOfHangingWithoutALift(t *testing.T) {
	hang := func(kg float64, l design.Lifting) (wall.Hanging, []string) {
		r := first(t, func(*design.Wall, *design.Group) {})
		r.WeighedKg = kg
		h := wall.Hang(r)
		var keys []string
		for _, step := range h.Day(l, nil) {
			keys = append(keys, step.Key)
		}
		return h, keys
	}
	named := design.Lifting{Method: "hoist", Lead: "A. Maker"}
	light, day := hang(30, design.Lifting{})
	assert.Contains(t, day, "day/lift")
	assert.Less(t, light.LiftOn().LimitKg(), 15.0)
	assert.Equal(t, words.Phrase{Key: "wall/hands", Args: words.Args{"n": 3}}, light.HandsSaid(), "no two, though that is 15 kg each")
	heavy, day := hang(61, design.Lifting{})
	assert.Contains(t, day, "day/not-yet")
	assert.NotContains(t, day, "day/bore")
	assert.Equal(t, "wall/no-hands", heavy.HandsSaid().Key)
	_, day = hang(61, named)
	assert.Contains(t, day, "day/lift-named")
	one, day := hang(14.5, design.Lifting{})
	assert.Less(t, one.LiftOn().LimitKg(), 14.5)
	assert.Equal(t, 2, one.Lifters(), "more than one should lift")
	assert.NotContains(t, day, "day/lift-one")
}
