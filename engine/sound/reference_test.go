package sound_test

import (
	"math"
	"math/cmplx"
	"math/rand/v2"

	"blockfield/engine/sound"
)

// The slow reference: the far field as a plain sum over all cells of all
// panels, written from the formula and sharing nothing with the package but its
// types.

type vec struct{ x, y, z float64 }

// toward is the direction at an angle from the normal and an azimuth from x.
func toward(angleDeg, azimuthDeg float64) vec {
	t, p := angleDeg*math.Pi/180, azimuthDeg*math.Pi/180
	return vec{math.Sin(t) * math.Cos(p), math.Sin(t) * math.Sin(p), math.Cos(t)}
}

func sinc(x float64) float64 {
	if x == 0 {
		return 1
	}
	return math.Sin(x) / x
}

// pressure is that of the arrangement and of a flat one of the same outline.
func pressure(a sound.Arrangement, phase sound.Phase, k float64, source, receiver vec) (p, flat complex128) {
	u, v := source.x+receiver.x, source.y+receiver.y
	g, o := source.z+receiver.z, (source.z+receiver.z)/2
	switch phase {
	case sound.Grating:
		g, o = 2, 1
	case sound.GratingOblique:
		g = 2
	}
	modules := a.Modules
	if len(modules) == 0 {
		modules = []sound.Module{{}}
	}
	top := 0.0
	for _, m := range modules {
		for i := range a.Levels {
			top = math.Max(top, height(a, m.Turn, i))
		}
	}
	w, side := a.PitchM, a.PitchM-a.GapM
	if a.GapM < 0.001 {
		side = w
	}
	share := side * side / (w * w)
	cell := sinc(k*w*u/2) * sinc(k*w*v/2)
	face := share * sinc(k*side*u/2) * sinc(k*side*v/2)
	for _, m := range modules {
		for i := range a.Rows {
			for j := range a.Columns {
				x := m.XM + (float64(j)-float64(a.Columns-1)/2)*w
				y := m.YM + (float64(a.Rows-1)/2-float64(i))*w
				at := cmplx.Exp(complex(0, k*(u*x+v*y)))
				d := top - height(a, m.Turn, i*a.Columns+j)
				p += at * (complex(face, 0)*cmplx.Exp(complex(0, -k*d*g)) +
					complex(cell-face, 0)*cmplx.Exp(complex(0, -k*top*g)))
				flat += at * complex(cell, 0)
			}
		}
	}
	scale := complex(o/float64(len(modules)*a.Columns*a.Rows), 0)
	return p * scale, flat * scale
}

// height is that of the block at a place of a panel.
func height(a sound.Arrangement, t sound.Turn, place int) float64 {
	level := int(a.Levels[place])
	switch t {
	case sound.Counter:
		level = len(a.HeightsM) - 1 - level
	case sound.HalfTurn:
		level = int(a.Levels[len(a.Levels)-1-place])
	}
	return a.HeightsM[level]
}

// random is a field of random heights.
func random(r *rand.Rand, columns, rows, heights int) sound.Arrangement {
	s := sound.Surface{Columns: columns, Rows: rows, PitchM: 0.02 + 0.04*r.Float64(), Levels: make([]uint16, columns*rows)}
	h := 0.03 * r.Float64()
	for range heights {
		s.HeightsM = append(s.HeightsM, h)
		h += 0.005 + 0.03*r.Float64()
	}
	for i := range s.Levels {
		s.Levels[i] = uint16(r.IntN(heights))
	}
	return sound.Arrangement{Surface: s}
}
