package scene

import "math"

// Material is the look of a wooden part: the linear albedo of its long grain
// (Face) and of its end grain (End, darker), its gloss from 0 (raw) to 1, and
// its grain.
type Material struct {
	Face, End RGB
	Gloss     float64
	Grain     Grain
}

// Grain is what tells woods apart besides their colour. The zero Grain is
// plain: no rings, no pores, one tone.
type Grain struct {
	RingM float64 // mean width of a year's ring; 0: no pattern
	Late  float64 // how dark latewood is, 0 to 1
	Early float64 // how dark the pores of earlywood make its band, 0 to 1
	Pores float64 // how dark single pores are, 0 to 1
	Rays  float64 // how bright the rays are, 0 to 1
	// Spread is how far the lightest and darkest sticks lie from the mean.
	Spread  float64
	Sap     float64 // how much of the sticks' wood is sapwood, about 0 to 1
	SapTint RGB     // its colour, as a part of the heartwood's; up to 2
}

// Limits of a grain.
const (
	maxRingM   = 0.05
	maxSapTint = 3
)

func (m Material) validate(f *faults, path string) {
	f.colour(path+".face", m.Face)
	f.colour(path+".end", m.End)
	f.between(path+".gloss", m.Gloss, 0, 1)
	g := m.Grain
	f.between(path+".grain.ring", g.RingM, 0, maxRingM)
	f.between(path+".grain.late", g.Late, 0, 1)
	f.between(path+".grain.early", g.Early, 0, 1)
	f.between(path+".grain.pores", g.Pores, 0, 1)
	f.between(path+".grain.rays", g.Rays, 0, 1)
	f.between(path+".grain.spread", g.Spread, 0, 0.5)
	f.between(path+".grain.sap", g.Sap, 0, 1)
	f.between(path+".grain.sapTint.r", g.SapTint.R, 0, maxSapTint)
	f.between(path+".grain.sapTint.g", g.SapTint.G, 0, maxSapTint)
	f.between(path+".grain.sapTint.b", g.SapTint.B, 0, maxSapTint)
}

// ready is the material with a grain that can be drawn.
func (m Material) ready() Material {
	if m.Grain.RingM == 0 {
		m.Grain = Grain{SapTint: RGB{1, 1, 1}}
	}
	return m
}

// endGrain is how much darker cut fibres look than planed ones: they swallow
// light and take up more finish. Chosen by eye.
const endGrain = 0.80

// paintedEnd is how much of that difference shows through a paint.
const paintedEnd = 0.3

// WoodMaterial returns the look of a wood under a finish; false when either is
// unknown. Tones and grain are ours, chosen by eye for dry, sanded boards; what
// is said of rings, pores and rays follows common descriptions of the woods
// (from memory).
func WoodMaterial(wood, finish string) (Material, bool) {
	tone, grain, ok := woodLook(wood)
	if !ok {
		return Material{}, false
	}
	f, ok := finishLook(finish)
	if !ok {
		return Material{}, false
	}
	face := f.on(tone, 1)
	end := scale(f.on(face, f.endDeepens), endGrain*f.endDrinks)
	// A finish shows the grain, most where the fibres drink it.
	grain.Late = min(grain.Late*f.contrast, 1)
	grain.Early = min(grain.Early*f.contrast, 1)
	return Material{Face: face, End: end, Gloss: f.gloss, Grain: grain}, true
}

// pigment is what is in a finish: its colour, and how much of the wood's it covers.
type pigment struct {
	colour RGB
	cover  float64
}

// pigments by the names of a design. Colours chosen by eye; a stain lets the grain
// show, a paint leaves a trace of it.
func pigments(name string) (pigment, bool) {
	const paint = 0.97
	switch name {
	case "clear":
		return pigment{}, true
	case "white stain":
		return pigment{srgb(238, 234, 224), 0.55}, true
	case "grey stain":
		return pigment{srgb(140, 140, 137), 0.6}, true
	case "brown stain":
		return pigment{srgb(84, 54, 34), 0.7}, true
	case "black stain":
		return pigment{srgb(36, 33, 31), 0.85}, true
	case "white paint":
		return pigment{srgb(236, 233, 226), paint}, true
	case "grey paint":
		return pigment{srgb(138, 140, 141), paint}, true
	case "green paint":
		return pigment{srgb(88, 108, 84), paint}, true
	case "blue paint":
		return pigment{srgb(62, 84, 108), paint}, true
	case "red paint":
		return pigment{srgb(142, 62, 48), paint}, true
	case "black paint":
		return pigment{srgb(42, 41, 40), paint}, true
	}
	return pigment{}, false
}

// Coloured returns the material with a colour in its finish; false when that is
// unknown.
func (m Material) Coloured(name string) (Material, bool) {
	p, ok := pigments(name)
	m.Face = m.Face.mix(p.colour, p.cover)
	m.End = m.End.mix(scale(p.colour, 1-(1-endGrain)*paintedEnd), p.cover)
	left := 1 - p.cover*p.cover // stains gather in the grain and keep it
	g := &m.Grain
	g.Late, g.Early, g.Pores, g.Rays = g.Late*left, g.Early*left, g.Pores*left, g.Rays*left
	g.Spread *= 1 - p.cover
	g.SapTint = g.SapTint.mix(RGB{1, 1, 1}, p.cover)
	return m, ok
}

// WallPaint returns the paint of a wall by the name that a design has for it; false
// when that is unknown. Colours chosen by eye.
func WallPaint(name string) (RGB, bool) {
	switch name {
	case "warm white":
		return PlainWall(), true
	case "white":
		return srgb(235, 235, 233), true
	case "sand":
		return srgb(208, 192, 166), true
	case "grey":
		return srgb(172, 173, 172), true
	case "sage":
		return srgb(158, 168, 146), true
	case "clay":
		return srgb(186, 134, 108), true
	case "blue":
		return srgb(112, 134, 152), true
	case "dark grey":
		return srgb(88, 90, 92), true
	}
	return RGB{}, false
}

// BackerMaterial returns the look of a raw backer sheet; false when it is unknown.
// Tones chosen by eye.
func BackerMaterial(sheet string) (Material, bool) {
	switch sheet {
	case "birch ply":
		return Material{Face: srgb(222, 202, 168), End: srgb(168, 138, 100)}, true
	case "softwood ply":
		return Material{Face: srgb(212, 176, 124), End: srgb(152, 116, 78)}, true
	}
	return Material{}, false
}

// Finished returns a raw sheet under a finish, as bare cells get it along with the
// blocks; false when that is unknown.
func (m Material) Finished(finish string) (Material, bool) {
	f, ok := finishLook(finish)
	m.Face, m.End, m.Gloss = f.on(m.Face, 1), f.on(m.End, 1), f.gloss
	return m, ok
}

// woodLook is the sanded, unfinished long grain of a wood and its grain.
func woodLook(wood string) (RGB, Grain, bool) {
	mm := func(v float64) float64 { return v / 1000 }
	switch wood {
	case "pine": // yellowish, broad strong latewood, pale sap
		return srgb(228, 194, 145), Grain{RingM: mm(2.8), Late: 0.44, Spread: 0.11, Sap: 0.5, SapTint: RGB{1.10, 1.13, 1.20}}, true
	case "spruce": // almost white, narrow even rings
		return srgb(236, 219, 188), Grain{RingM: mm(1.9), Late: 0.36, Spread: 0.09, Sap: 0.3, SapTint: RGB{1.03, 1.03, 1.03}}, true
	case "cedar": // red brown to pinkish, fine rings, nearly white sap
		return srgb(154, 107, 86), Grain{RingM: mm(1.3), Late: 0.34, Spread: 0.20, Sap: 0.12, SapTint: RGB{1.45, 1.65, 1.75}}, true
	case "poplar": // cream sap, olive heart, faint rings
		return srgb(208, 187, 151), Grain{RingM: mm(4.0), Late: 0.20, Pores: 0.10, Spread: 0.13, Sap: 0.62, SapTint: RGB{1.24, 1.20, 1.22}}, true
	case "beech": // pinkish tan, plain, flecks of rays
		return srgb(213, 176, 150), Grain{RingM: mm(2.4), Late: 0.22, Pores: 0.14, Rays: 0.22, Spread: 0.11, SapTint: RGB{1, 1, 1}}, true
	case "ash": // creamy, wide bands of pores
		return srgb(222, 206, 178), Grain{RingM: mm(3.2), Late: 0.08, Early: 0.42, Pores: 0.35, Spread: 0.09, Sap: 0.5, SapTint: RGB{1.06, 1.07, 1.10}}, true
	case "maple": // near white, fine and plain
		return srgb(238, 224, 202), Grain{RingM: mm(2.9), Late: 0.20, Pores: 0.05, Rays: 0.08, Spread: 0.08, Sap: 0.7, SapTint: RGB{1.02, 1.02, 1.03}}, true
	case "oak": // brownish tan, bands of pores, broad bright rays
		return srgb(186, 154, 114), Grain{RingM: mm(2.1), Late: 0.10, Early: 0.45, Pores: 0.45, Rays: 0.34, Spread: 0.12, Sap: 0.1, SapTint: RGB{1.16, 1.2, 1.26}}, true
	case "cherry": // reddish brown, fine dark lines
		return srgb(188, 137, 107), Grain{RingM: mm(2.7), Late: 0.26, Pores: 0.10, Rays: 0.08, Spread: 0.10, Sap: 0.14, SapTint: RGB{1.34, 1.5, 1.65}}, true
	case "walnut": // chocolate, broad soft bands, tan sap
		return srgb(112, 87, 70), Grain{RingM: mm(3.6), Late: 0.38, Early: 0.16, Pores: 0.30, Spread: 0.16, Sap: 0.03, SapTint: RGB{1.45, 1.5, 1.5}}, true
	}
	return RGB{}, Grain{}, false
}

// finishLook says what a finish does to the tone of a wood.
func finishLook(finish string) (coat, bool) {
	switch finish {
	case "none":
		return coat{tint: RGB{1, 1, 1}, endDrinks: 1, contrast: 1, gloss: 0.03}, true
	case "waterborne varnish":
		return coat{tint: RGB{0.97, 0.96, 0.94}, endDeepens: 0.4, endDrinks: 0.95, contrast: 1.15, gloss: 0.35}, true
	case "hard-wax oil":
		return coat{tint: RGB{0.92, 0.875, 0.81}, endDeepens: 0.4, endDrinks: 0.88, contrast: 1.35, gloss: 0.25}, true
	case "drying oil":
		return coat{tint: RGB{0.90, 0.83, 0.72}, endDeepens: 0.5, endDrinks: 0.85, contrast: 1.4, gloss: 0.15}, true
	case "shellac":
		return coat{tint: RGB{0.93, 0.84, 0.70}, endDeepens: 0.4, endDrinks: 0.92, contrast: 1.25, gloss: 0.6}, true
	case "fire-retardant varnish":
		return coat{tint: RGB{0.95, 0.93, 0.89}, endDeepens: 0.4, endDrinks: 0.95, contrast: 1.1, gloss: 0.2}, true
	}
	return coat{}, false
}

// coat is one finish: tint multiplies the wood's tone, endDeepens says how many
// times more it does so on thirsty end grain and endDrinks what is left of the light
// there, contrast multiplies that of the grain.
type coat struct {
	tint                                   RGB
	endDeepens, endDrinks, contrast, gloss float64
}

func (c coat) on(tone RGB, times float64) RGB {
	return RGB{
		tone.R * math.Pow(c.tint.R, times),
		tone.G * math.Pow(c.tint.G, times),
		tone.B * math.Pow(c.tint.B, times),
	}
}

// srgb decodes a display colour into a linear one (IEC 61966-2-1).
func srgb(r, g, b uint8) RGB { return RGB{decode(r), decode(g), decode(b)} }

func decode(v uint8) float64 {
	c := float64(v) / 255
	if c <= 0.04045 {
		return c / 12.92
	}
	return math.Pow((c+0.055)/1.055, 2.4)
}

// encode is the inverse of decode, without rounding: 0 to 1 in, 0 to 1 out.
func encode(c float64) float64 {
	if c <= 0.0031308 {
		return c * 12.92
	}
	return 1.055*math.Pow(c, 1/2.4) - 0.055
}

func scale(c RGB, k float64) RGB { return RGB{c.R * k, c.G * k, c.B * k} }

// PlainWall is the paint of a wall that nobody chose: a warm off-white.
func PlainWall() RGB { return srgb(226, 222, 214) }
