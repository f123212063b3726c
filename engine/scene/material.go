package scene

import "math"

// Material is the look of a wooden part: the linear albedo of its long grain
// (Face) and of its end grain (End, darker), and its gloss from 0 (raw) to 1.
type Material struct {
	Face, End RGB
	Gloss     float64
}

func (m Material) validate(f *faults, path string) {
	f.colour(path+".face", m.Face)
	f.colour(path+".end", m.End)
	f.between(path+".gloss", m.Gloss, 0, 1)
}

// endGrain is how much darker cut fibres look than planed ones: they swallow
// light and take up more finish. Chosen by eye.
const endGrain = 0.74

// WoodMaterial returns the look of a wood under a finish; false when either is
// unknown. The tones are ours, chosen by eye for dry, sanded heartwood.
func WoodMaterial(wood, finish string) (Material, bool) {
	face, ok := woodTone(wood)
	if !ok {
		return Material{}, false
	}
	f, ok := finishLook(finish)
	if !ok {
		return Material{}, false
	}
	face = f.on(face, 1)
	end := f.on(face, f.endDeepens)
	return Material{Face: face, End: scale(end, endGrain), Gloss: f.gloss}, true
}

// BackerMaterial returns the look of a bare backer sheet; false when it is
// unknown. Tones chosen by eye.
func BackerMaterial(sheet string) (Material, bool) {
	switch sheet {
	case "birch ply":
		return Material{Face: srgb(222, 196, 156), End: srgb(168, 132, 92), Gloss: 0.08}, true
	case "softwood ply":
		return Material{Face: srgb(212, 170, 112), End: srgb(152, 112, 70), Gloss: 0.05}, true
	}
	return Material{}, false
}

// woodTone is the sanded, unfinished long grain of a wood.
func woodTone(wood string) (RGB, bool) {
	switch wood {
	case "pine":
		return srgb(232, 200, 148), true
	case "spruce":
		return srgb(236, 212, 170), true
	case "cedar":
		return srgb(192, 130, 92), true
	case "poplar":
		return srgb(233, 207, 167), true
	case "beech":
		return srgb(220, 180, 142), true
	case "ash":
		return srgb(228, 206, 172), true
	case "maple":
		return srgb(236, 216, 184), true
	case "oak":
		return srgb(204, 168, 122), true
	case "cherry":
		return srgb(196, 136, 96), true
	case "walnut":
		return srgb(132, 105, 84), true
	}
	return RGB{}, false
}

// finishLook says what a finish does to the tone of a wood.
func finishLook(finish string) (coat, bool) {
	switch finish {
	case "none":
		return coat{tint: RGB{1, 1, 1}, endDeepens: 0, gloss: 0.03}, true
	case "waterborne varnish":
		return coat{tint: RGB{0.97, 0.96, 0.94}, endDeepens: 0.6, gloss: 0.35}, true
	case "hard-wax oil":
		return coat{tint: RGB{0.94, 0.89, 0.81}, endDeepens: 1, gloss: 0.25}, true
	case "drying oil":
		return coat{tint: RGB{0.92, 0.84, 0.70}, endDeepens: 1.2, gloss: 0.15}, true
	case "shellac":
		return coat{tint: RGB{0.95, 0.85, 0.68}, endDeepens: 0.8, gloss: 0.6}, true
	case "fire-retardant varnish":
		return coat{tint: RGB{0.94, 0.92, 0.87}, endDeepens: 0.6, gloss: 0.2}, true
	}
	return coat{}, false
}

// coat is one finish: tint multiplies the wood's tone, endDeepens says how many
// times more it does so on thirsty end grain.
type coat struct {
	tint       RGB
	endDeepens float64
	gloss      float64
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
func PlainWall() RGB { return srgb(226, 221, 211) }
