package sound

import (
	"math"
	"strconv"
	"strings"

	"blockfield/engine/draw"
	"blockfield/engine/words"
)

// Sizes of the map of the half space.
const (
	mapRadius = 100.0
	mapMargin = 12.0
	mapSteps  = 5   // classes of level
	mapStepDb = 6.0 // each
)

// mapTones are the fills of the classes, the loudest first; a style sheet may
// have its own.
func mapTones() [mapSteps]string {
	return [mapSteps]string{"#5b3413", "#8a5a2b", "#b98a58", "#dcbf9a", "#f3e6d2"}
}

// Map draws the half space as it is seen from in front, the normal in the
// middle and the wall's directions at the rim: the darker, the louder, in steps
// of 6 dB below the loudest direction. Directions are drawn at the sine of their
// angle, right at the right and up at the top.
func Map(id string, r words.Reader, d Dome, band Band) string {
	size := 2 * (mapRadius + mapMargin)
	c := draw.New(id, draw.Box{X: -size / 2, Y: -size / 2, Width: size, Height: size})
	c.Class("drawing sound-map")
	label := words.Args{"hz": words.Hz(band.NominalHz())}
	c.Title(r.Say("sound/map-title", label))
	c.Desc(r.Say("sound/map-desc", label))
	for _, s := range d.Bands {
		if s.Band != band {
			continue
		}
		for class, path := range mapPaths(s.Energy) {
			if path != "" {
				c.Path(path, draw.Class("level-"+strconv.Itoa(class)), draw.Fill(mapTones()[class]))
			}
		}
	}
	c.Circle(0, 0, mapRadius, draw.Class("rim"), draw.Fill("none"), draw.Stroke("currentColor"), draw.StrokeWidth(thinLine))
	return c.String()
}

// mapPaths returns one path for each class of level. Two rings of receivers
// make one ring of the map, the louder of both, and like neighbours along a ring
// one piece.
func mapPaths(energy []float64) [mapSteps]string {
	var loudest float64
	for _, e := range energy {
		loudest = math.Max(loudest, e)
	}
	var out [mapSteps]strings.Builder
	for ring := 0; ring < rings; ring += 2 {
		classes := ringClasses(energy, ring, loudest)
		for first := 0; first < azimuths; {
			end := first + 1
			for end < azimuths && classes[end] == classes[first] {
				end++
			}
			if classes[first] < mapSteps {
				out[classes[first]].WriteString(sector(ring, first, end))
			}
			first = end
		}
	}
	var paths [mapSteps]string
	for i := range out {
		paths[i] = out[i].String()
	}
	return paths
}

// ringClasses returns the class of each azimuth of a ring; mapSteps is below
// them all.
func ringClasses(energy []float64, ring int, loudest float64) [azimuths]int {
	var out [azimuths]int
	for a := range out {
		e := energy[receiverOf(ring, a)]
		if ring+1 < rings {
			e = math.Max(e, energy[receiverOf(ring+1, a)])
		}
		out[a] = mapSteps
		if e > 0 && loudest > 0 {
			out[a] = min(int(-10*math.Log10(e/loudest)/mapStepDb), mapSteps)
		}
	}
	return out
}

// sector is a piece of a ring of the map, from one azimuth up to another.
func sector(ring, first, end int) string {
	inner := mapRadius * math.Sin(math.Max(float64(ring)-0.5, 0)*ringStepDeg*math.Pi/180)
	outer := mapRadius * math.Sin(math.Min((float64(ring)+1.5)*ringStepDeg, 90)*math.Pi/180)
	var xy []float64
	add := func(radius float64, azimuth int) {
		phi := (float64(azimuth) - 0.5) * azimuthStep * math.Pi / 180
		xy = append(xy, radius*math.Cos(phi), -radius*math.Sin(phi)) // up is up
	}
	for a := first; a <= end; a++ {
		add(outer, a)
	}
	if inner > 0 {
		for a := end; a >= first; a-- {
			add(inner, a)
		}
	}
	return draw.Polygon(xy...)
}
