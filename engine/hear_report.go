package engine

import (
	"slices"

	"blockfield/engine/check"
	"blockfield/engine/design"
	"blockfield/engine/sound"
	"blockfield/engine/words"
)

// HearingReport is a Hearing for other programs, as JSON: coefficients are
// numbers from 0 to 1, frequencies the nominal ones of third octaves in Hz.
type HearingReport struct {
	SpeedMS float64       `json:"speedMS"`
	Fit     FitReport     `json:"fit"`
	Client  string        `json:"client"` // the one sentence
	Room    []string      `json:"room"`
	Groups  []HeardReport `json:"groups"`
}

// FitReport is whether blocks are the right thing, and why.
type FitReport struct {
	Answer   string   `json:"answer"`
	Sentence string   `json:"sentence"`
	Reasons  []string `json:"reasons"`
}

// HeardReport is one group of panels.
type HeardReport struct {
	Path      string        `json:"path"`
	Sentences []string      `json:"sentences"`
	DepthHz   float64       `json:"depthHz"` // its quarter wave is as deep as the field; 0 for a level one
	HalfSpace []BandReport  `json:"halfSpace"`
	Planes    []PlaneReport `json:"planes"`
}

// PlaneReport is one plane and one source.
type PlaneReport struct {
	Plane        string       `json:"plane"`        // "across" or "down"
	IncidenceDeg any          `json:"incidenceDeg"` // a number, or "random"
	Bands        []BandReport `json:"bands"`
}

// BandReport is one third octave. The errors are those of the model where it was
// compared; what is indicative is a hint, and where there is no claim nothing
// may be said by it.
type BandReport struct {
	Hz         float64 `json:"hz"`
	Diffusion  float64 `json:"diffusion"`
	Flat       float64 `json:"flat"`
	Normalised float64 `json:"normalised"`
	Scattering float64 `json:"scattering"`
	MeanError  float64 `json:"meanError"`
	Indicative bool    `json:"indicative"`
	NoClaim    bool    `json:"noClaim"`
}

// With returns the Result with the watch-outs that only a Hearing knows.
func (r Result) With(h Hearing) Result {
	r.WatchOuts = slices.Concat(r.WatchOuts, h.WatchOuts)
	check.Sort(r.WatchOuts)
	return r
}

// Report returns what a Hearing says to other programs. The design is the one
// that was heard.
func (h Hearing) Report(d design.Design, reader words.Reader) HearingReport {
	first := h.Groups[0]
	out := HearingReport{
		SpeedMS: round(h.SpeedMS, 2),
		Fit: FitReport{
			Answer: h.Fit.Answer, Sentence: reader.Say("sound/fit-" + h.Fit.Answer), Reasons: said(reader, h.Fit.Reasons),
		},
		Client: said(reader, []sound.Line{first.Verdict.Client(d.Walls[first.Wall].ListenerDistance)})[0],
		Room:   said(reader, h.Room.Lines(d)),
	}
	for _, g := range h.Groups {
		out.Groups = append(out.Groups, g.report(reader))
	}
	return out
}

func said(reader words.Reader, lines []sound.Line) []string {
	out := []string{}
	for _, l := range lines {
		out = append(out, reader.Say(l.Code, l.Args))
	}
	return out
}

func (g HeardGroup) report(reader words.Reader) HeardReport {
	l := g.Listening
	out := HeardReport{Path: g.Path, Sentences: said(reader, g.Verdict.Maker())}
	if g.Arrangement.DeepestM() > 0 {
		out.DepthHz = round(l.DepthHz, 0)
	}
	out.HalfSpace = bandReports(sound.Curve{
		Bands: l.Dome.Bands, Doubt: func(hz float64) sound.Doubt { return sound.Trust(hz, l.DepthHz, 0) },
	})
	for _, plane := range []struct {
		name  string
		sweep sound.Sweep
	}{{"across", l.Across}, {"down", l.Down}} {
		for _, p := range plane.sweep.Polars {
			out.Planes = append(out.Planes, PlaneReport{plane.name, p.IncidenceDeg, bandReports(l.From(p))})
		}
		out.Planes = append(out.Planes, PlaneReport{plane.name, "random", bandReports(l.FromEverywhere(plane.sweep))})
	}
	return out
}

func bandReports(c sound.Curve) []BandReport {
	const digits = 3 // more would be false precision
	out := make([]BandReport, len(c.Bands))
	for i, s := range c.Bands {
		d := c.Doubt(s.Band.Hz())
		out[i] = BandReport{
			Hz: s.Band.NominalHz(), Diffusion: round(s.Diffusion, digits), Flat: round(s.Flat, digits),
			Normalised: round(s.Normalised, digits), Scattering: round(s.Scattering, digits),
			MeanError: d.Mean, Indicative: d.Indicative, NoClaim: d.NoClaim,
		}
	}
	return out
}
