package sound

import "blockfield/engine/words"

// Curve is the coefficients of one plane for sound from somewhere, with how far
// each can be off.
type Curve struct {
	Source words.Phrase // where the sound comes from
	Bands  []Spread
	Doubt  func(hz float64) Doubt
}

// From is the curve of one source.
func (l Listening) From(p Polar) Curve {
	c := Curve{Source: words.Phrase{Key: "sound/straight-on"}, Bands: p.Bands}
	if p.IncidenceDeg != 0 {
		c.Source = words.Phrase{Key: "sound/slanted", Args: words.Args{"angle": words.Degrees(p.IncidenceDeg)}}
	}
	c.Doubt = func(hz float64) Doubt { return Trust(hz, l.DepthHz, p.IncidenceDeg) }
	return c
}

// FromEverywhere is the curve of random incidence in the plane of a sweep.
func (l Listening) FromEverywhere(s Sweep) Curve {
	return Curve{
		Source: words.Phrase{Key: "sound/everywhere"}, Bands: s.Random,
		Doubt: func(hz float64) Doubt { return TrustRandom(hz, l.DepthHz) },
	}
}
