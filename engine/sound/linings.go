package sound

// Lining is what a surface of a room is made of, with its absorption
// coefficients in octaves from 125 Hz to 4 kHz.
type Lining struct {
	Name  string // key of its words: "lining/" + Name
	Alpha [octaves]float64
}

// octaves are the bands of room acoustics, 125 Hz to 4 kHz.
const octaves = 6

// OctaveHz returns the middle of an octave, counted from 0.
func OctaveHz(i int) float64 { return 125 * float64(int(1)<<i) }

// Linings returns a short list of surfaces. The coefficients are rounded ones
// of common textbook tables, from memory; those of blocks are the middle of what
// is expected of sealed wood with closed joints (common practice, no source), and
// count as good as nothing.
func Linings() []Lining {
	return []Lining{
		{"plaster", [octaves]float64{0.01, 0.02, 0.02, 0.03, 0.04, 0.05}},
		{"brick", [octaves]float64{0.01, 0.01, 0.02, 0.02, 0.02, 0.03}},
		{"concrete", [octaves]float64{0.01, 0.01, 0.015, 0.02, 0.02, 0.02}},
		{"board on studs", [octaves]float64{0.29, 0.10, 0.05, 0.04, 0.07, 0.09}},
		{"glass", [octaves]float64{0.35, 0.25, 0.18, 0.12, 0.07, 0.04}},
		{"wooden floor", [octaves]float64{0.15, 0.11, 0.10, 0.07, 0.06, 0.07}},
		{"carpet", [octaves]float64{0.02, 0.06, 0.14, 0.37, 0.60, 0.65}},
		{"heavy curtain", [octaves]float64{0.14, 0.35, 0.55, 0.72, 0.70, 0.65}},
		{"soft panel 50 mm", [octaves]float64{0.20, 0.55, 0.90, 0.95, 0.95, 0.95}},
		{"soft seats", [octaves]float64{0.20, 0.35, 0.55, 0.65, 0.60, 0.60}},
		{"blocks", [octaves]float64{0.05, 0.05, 0.08, 0.10, 0.10, 0.12}},
	}
}

// FindLining returns the lining of a name.
func FindLining(name string) (Lining, bool) {
	for _, l := range Linings() {
		if l.Name == name {
			return l, true
		}
	}
	return Lining{}, false
}
