package room_test

import (
	"testing"

	"blockfield/engine/design"
	"blockfield/engine/length"
	"blockfield/engine/sound"
	"blockfield/engine/sound/room"

	"github.com/stretchr/testify/assert"
)

// A worked room of a textbook: F. A. Everest, Master Handbook of Acoustics, the
// untreated room of 23.3 × 16 × 10 ft with concrete floor and plasterboard on
// studs (from memory; its own arithmetic 0.049·V/A gives the same figures).
func TestSabineOfATextbookRoom(t *testing.T) {
	const foot = 0.3048
	surface := []room.Patch{
		{AreaM2: 373 * foot * foot, Alpha: room.Alpha(design.ConcreteLining)},
		{AreaM2: 1159 * foot * foot, Alpha: room.Alpha(design.BoardLining)},
	}
	sabine, eyring := room.Reverberation(3728*foot*foot*foot, 343.2, surface)
	want := []float64{0.54, 1.53, 2.87, 3.39, 2.06, 1.63}
	assert.InDeltaSlice(t, want, sabine[:], 0.02)
	for i := range want {
		assert.Less(t, eyring[i], sabine[i], "Eyring is always shorter")
	}
}

// A cube of 5 m with 0.2 everywhere, by hand at 343.2 m/s: Sabine
// 55.26·125/(343.2·30) = 0.671 s, Eyring with −150·ln 0.8 = 33.47 m² 0.601 s.
func TestReverberationByHand(t *testing.T) {
	alpha := [6]float64{0.2, 0.2, 0.2, 0.2, 0.2, 0.2}
	sabine, eyring := room.Reverberation(125, 343.2, []room.Patch{{AreaM2: 100, Alpha: alpha}, {AreaM2: 50, Alpha: alpha}})
	assert.InDelta(t, 0.671, room.Middle(sabine), 0.0005)
	assert.InDelta(t, 0.601, room.Middle(eyring), 0.0005)
	assert.Equal(t, []float64{125, 4000}, []float64{room.OctaveHz(0), room.OctaveHz(5)})
}

// Every lining that a design may name has coefficients.
func TestLinings(t *testing.T) {
	for _, name := range design.Linings() {
		for i, a := range room.Alpha(name) {
			assert.True(t, a > 0 && a < 1, "%s at %v Hz", name, room.OctaveHz(i))
		}
	}
}

// A wall 2 m behind answers 11.7 ms later (the trade's own figure); 3 times the
// way is 9.54 dB less.
func TestReflection(t *testing.T) {
	delay, level := room.Reflection(2, 2, 343)
	assert.InDelta(t, 11.66, delay, 0.005)
	assert.InDelta(t, -9.54, level, 0.005)
}

func TestInRoom(t *testing.T) {
	d := design.Default().Design // 4.5 × 3.5 × 2.5 m, the wall is 3.5 m wide
	r := room.Round(d, 0.95, 343)
	assert.InDelta(t, 39.375, r.VolumeM3, 1e-9)
	assert.InDelta(t, 4.5, r.FlutterM, 1e-9, "the wall opposite is a length away")
	assert.InDelta(t, 38.1, r.FlutterS, 0.05)
	assert.InDelta(t, 8.75, r.WallM2, 1e-9)
	assert.InDelta(t, 0.3, r.WantedS, 1e-9, "for listening")
	// By hand, mean of 500 Hz and 1 kHz: 15.75·0.085 + 15.75·0.025 + 40·0.045 =
	// 3.53 m²; 55.26·39.375/343/3.53 = 1.80 s.
	assert.InDelta(t, 1.80, r.Rings.SabineS, 0.05)
	// 55.26·39.375/343/0.3 = 21.15 m² are wanted; (21.15 − 3.53)/(0.925 − 0.045) =
	// 20.0 m² of 40 m² of wall.
	assert.InDelta(t, 50, r.SoftPct, 0.1)

	d.Walls[0].Width = length.MM(4500)
	assert.InDelta(t, 3.5, room.Round(d, 0.95, 343).FlutterM, 1e-9)
	d.Room.Use = "storage"
	assert.Zero(t, room.Round(d, 0.95, 343).SoftPct, "nothing is usual for a use that is not understood")
	// 0.45·lg 39.375 + 0.07 and 0.32·lg 39.375 − 0.17, DIN 18041 (from memory).
	d.Room.Use = "Music practice"
	assert.InDelta(t, 0.788, room.Round(d, 0.95, 343).WantedS, 0.0005)
	d.Room.Use = "teaching"
	assert.InDelta(t, 0.340, room.Round(d, 0.95, 343).WantedS, 0.0005)
}

func TestFit(t *testing.T) {
	good := sound.Verdict{NearM: 1.5, RangeM: 0.066, Most: &sound.Span{Low: 1, High: 3}}
	for name, c := range map[string]struct {
		change func(*design.Design, *sound.Verdict)
		want   string
		reason string
	}{
		"as it is":     {func(*design.Design, *sound.Verdict) {}, room.GoodFit, "sound/smallish-room"},
		"bass only":    {func(d *design.Design, _ *sound.Verdict) { d.Room.Goals = []string{"boomy"} }, room.WrongTool, "sound/no-bass"},
		"quiet only":   {func(d *design.Design, _ *sound.Verdict) { d.Room.Goals = []string{"neighbours"} }, room.WrongTool, "sound/no-insulation"},
		"bass too":     {func(d *design.Design, _ *sound.Verdict) { d.Room.Goals = []string{"boomy", "harsh"} }, room.GoodFit, "sound/no-bass"},
		"too near":     {func(_ *design.Design, v *sound.Verdict) { v.NearM = 2.01 }, room.LooksOnly, "sound/too-near"},
		"a chequer":    {func(_ *design.Design, v *sound.Verdict) { v.Nothing = true }, room.LooksOnly, "sound/little-spread"},
		"treble only":  {func(_ *design.Design, v *sound.Verdict) { v.Most = &sound.Span{Low: 4, High: 6} }, room.LooksOnly, "sound/little-spread"},
		"low heights":  {func(_ *design.Design, v *sound.Verdict) { v.RangeM = 0.039 }, room.LooksOnly, "sound/little-spread"},
		"small room":   {func(d *design.Design, _ *sound.Verdict) { d.Room.Width = length.MM(2200) }, room.SoftFirst, "sound/small-room"},
		"public":       {func(d *design.Design, _ *sound.Verdict) { d.Room.Public = true }, room.GoodFit, "sound/public"},
		"small fields": {func(*design.Design, *sound.Verdict) {}, room.GoodFit, "sound/small-area"},
	} {
		d, v := design.Default().Design, good
		c.change(&d, &v)
		f := room.FitOf(d, room.Round(d, 0.95, 343), v)
		assert.Equal(t, c.want, f.Answer, name)
		var codes []string
		for _, r := range f.Reasons {
			codes = append(codes, r.Code)
		}
		assert.Contains(t, codes, c.reason, name)
	}
}

// Carpet on the whole floor and soft panels on three tenths of the walls, by
// hand: at 500 Hz 15.75·0.14 + 15.75·0.02 + 40·(0.3·0.90 + 0.7·0.05) = 14.72 m²,
// at 1 kHz 15.75·0.37 + 15.75·0.03 + 40·(0.3·0.95 + 0.7·0.04) = 18.82 m²;
// 55.26·39.375/343 = 6.344 makes 0.431 and 0.337 s. For 0.3 s 21.15 m² are
// wanted; (21.15 − 16.77)/(0.925 − 0.045) = 4.98 m² of 40 m² of wall.
func TestSurfacesCount(t *testing.T) {
	d := design.Default().Design
	d.Room.Surfaces = []design.Surface{
		{Place: design.Floor, Lining: design.CarpetLining, Share: 100},
		{Place: design.Walls, Lining: design.SoftPanelLining, Share: 30},
	}
	r := room.Round(d, 0.95, 343)
	assert.True(t, r.Noted)
	assert.InDelta(t, (0.431+0.337)/2, r.Rings.SabineS, 0.001)
	assert.InDelta(t, 12.4, r.SoftPct, 0.1)
	assert.InDelta(t, 70, r.FreePct, 1e-9)
	assert.InDelta(t, 16.77/71.5, r.MeanSoft, 0.0005)
	assert.Equal(t, []string{"sound/ring-noted", "sound/soft-more"}, ringing(d))

	d.Room.Surfaces[1].Share = 50 // 4·0.925 − 0.18 m² more than enough
	assert.Equal(t, []string{"sound/ring-noted", "sound/soft-enough"}, ringing(d))
	d.Room.Surfaces = nil
	assert.Equal(t, []string{"sound/ring", "sound/soft-missing"}, ringing(d))
	d.Room.Surfaces = []design.Surface{{Place: design.Walls, Lining: design.GlassLining, Share: 60}}
	assert.Equal(t, []string{"sound/ring-noted", "sound/soft-much"}, ringing(d), "too little wall is left")
	d.Room.Use = "storage"
	assert.Equal(t, []string{"sound/ring-noted", "sound/use-unknown"}, ringing(d))
}

// ringing are the sentences about how long a room rings.
func ringing(d design.Design) []string {
	var all []string
	for _, l := range room.Round(d, 0.95, 343).Lines(d)[:2] {
		all = append(all, l.Code)
	}
	return all
}

// A small room asks for soft surfaces until there are some; a larger one is told
// by what is noted in it, and by nothing else.
func TestSoftEnough(t *testing.T) {
	const small, large = 2200, 3500 // widths: 24.75 and 39.4 m³
	panels := func(share float64) []design.Surface {
		return []design.Surface{{Place: design.Walls, Lining: design.SoftPanelLining, Share: share}}
	}
	v := sound.Verdict{NearM: 1.5, RangeM: 0.066, Most: &sound.Span{Low: 1, High: 3}}
	for name, c := range map[string]struct {
		widthMM  int64
		use      string
		surfaces []design.Surface
		answer   string
		reason   string // of those about soft surfaces
	}{
		"small, nothing noted":       {small, "listening", nil, room.SoftFirst, "sound/small-room"},
		"small, a little":            {small, "listening", panels(10), room.SoftFirst, "sound/small-room"},
		"small, enough":              {small, "listening", panels(40), room.GoodFit, ""},
		"small, unknown use":         {small, "storage", panels(10), room.SoftFirst, "sound/small-room"},
		"small, unknown use, enough": {small, "storage", panels(40), room.GoodFit, ""},
		"large, nothing noted":       {large, "listening", nil, room.GoodFit, "sound/smallish-room"},
		"large, a little":            {large, "listening", panels(10), room.SoftFirst, "sound/rings-long"},
		"large, enough":              {large, "listening", panels(40), room.GoodFit, ""},
		"large, unknown use":         {large, "storage", panels(10), room.GoodFit, "sound/smallish-room"},
	} {
		d := design.Default().Design
		d.Room.Width, d.Room.Use, d.Room.Surfaces = length.MM(c.widthMM), c.use, c.surfaces
		r := room.Round(d, 2, 343)
		f := room.FitOf(d, r, v)
		assert.Equal(t, c.answer, f.Answer, name)
		var soft, watched []string
		for _, l := range f.Reasons {
			if l.Code != "sound/small-area" {
				soft = append(soft, l.Code)
			}
		}
		for _, w := range r.WatchOuts(d.Room) {
			watched = append(watched, w.Code)
		}
		if c.reason == "" {
			assert.Empty(t, soft, name)
		} else {
			assert.Contains(t, soft, c.reason, name)
		}
		if c.reason == "sound/small-room" {
			assert.Equal(t, []string{c.reason}, watched, name)
		} else {
			assert.Empty(t, watched, name)
		}
	}
}
