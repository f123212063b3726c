package cli

import (
	"context"
	"errors"
	"flag"
	"fmt"
	"math"
	"strconv"
	"strings"

	"blockfield/engine/length"
	"blockfield/engine/sound"
)

// scatterReport is what scatter prints. Levels are in dB, 0 for a flat panel's
// mirror reflection straight on.
type scatterReport struct {
	Pitch        length.Length  `json:"pitch"`
	Gap          length.Length  `json:"gap"`
	Columns      int            `json:"columns"`
	Rows         int            `json:"rows"`
	SpeedMS      float64        `json:"speedMS"`
	Plane        string         `json:"plane"`
	Phase        string         `json:"phase"`
	IncidenceDeg any            `json:"incidenceDeg"` // a number, or "random"
	Bands        []scatterBand  `json:"bands"`
	Polar        []scatterPolar `json:"polar,omitempty"`
}

// scatterBand is one third octave; meanError is the model's known error of the
// diffusion coefficient there.
type scatterBand struct {
	Hz         float64 `json:"hz"`
	Diffusion  float64 `json:"diffusion"`
	Flat       float64 `json:"flat"`
	Normalised float64 `json:"normalised"`
	Scattering float64 `json:"scattering"`
	MeanError  float64 `json:"meanError"`
	WorstError float64 `json:"worstError"`
	Indicative bool    `json:"indicative"`
	NoClaim    bool    `json:"noClaim"`
}

// scatterPolar is what the receivers hear in one band.
type scatterPolar struct {
	Hz         float64   `json:"hz"`
	AngleDeg   []float64 `json:"angleDeg"`
	AzimuthDeg []float64 `json:"azimuthDeg,omitempty"` // of the half space, from the right, upwards
	LevelDb    []float64 `json:"levelDb"`
}

// The names of planes, phases and the incidence from everywhere.
const (
	hemisphere = "hemisphere"
	random     = "random"
)

// lowestDb stands for silence, which has no level.
const lowestDb = -200

// scatterFlags are the options of scatter as they were typed.
type scatterFlags struct {
	pitch, gap, incidence, temperature, c, bands, plane, phase *string
}

// scatter prints what any grid of heights does to sound.
func scatter(_ context.Context, args []string, s Streams) (int, error) {
	flags := flag.NewFlagSet("scatter", flag.ContinueOnError)
	f := scatterFlags{
		pitch: flags.String("pitch", "", ""), gap: flags.String("gap", "0 mm", ""),
		incidence:   flags.String("incidence", "0", ""),
		temperature: flags.String("temperature", "", ""), c: flags.String("c", "", ""),
		bands: flags.String("bands", "100:10000", ""),
		plane: flags.String("plane", "across", ""), phase: flags.String("phase", "kirchhoff", ""),
	}
	names, err := parse(flags, args)
	if err != nil {
		return badInput, err
	}
	if len(names) != 1 || *f.pitch == "" {
		return badInput, errUsage
	}
	r, o, err := f.read()
	if err != nil {
		return badInput, err
	}
	body, err := readInput(names[0], s)
	if err != nil {
		return badInput, err
	}
	surface, err := sound.ParseHeights(string(body))
	if err != nil {
		return badInput, located(names[0], err)
	}
	surface.PitchM, surface.GapM = r.Pitch.Metres(), r.Gap.Metres()
	a := sound.Arrangement{Surface: surface}
	if err := a.Validate(); err != nil {
		return badInput, located(names[0], err)
	}
	r.Columns, r.Rows = surface.Columns, surface.Rows
	r.listen(a, o)
	return done, writeJSON(s, r)
}

// read checks the options, all of them.
func (f scatterFlags) read() (scatterReport, sound.Options, error) {
	r := scatterReport{Plane: *f.plane, Phase: *f.phase}
	var o sound.Options
	var faults []error
	refuse := func(format string, args ...any) { faults = append(faults, fmt.Errorf(format, args...)) }
	var err error
	if r.Pitch, err = length.Parse(*f.pitch, length.InMM); err != nil || r.Pitch.Metres() <= 0 || r.Pitch.Metres() > 1 {
		refuse("-pitch: %q is not a pitch (allowed above 0 mm to 1000 mm)", *f.pitch)
	}
	if r.Gap, err = length.Parse(*f.gap, length.InMM); err != nil || r.Gap.Metres() < 0 || r.Gap.Cmp(r.Pitch) >= 0 && len(faults) == 0 {
		refuse("-gap: %q is not a gap (allowed 0 mm to less than the pitch)", *f.gap)
	}
	deg, err := strconv.ParseFloat(*f.incidence, 64)
	r.IncidenceDeg = deg
	switch {
	case *f.incidence == random && *f.plane != hemisphere:
		r.IncidenceDeg = random
	case err != nil || math.Abs(deg) > 85 || math.IsNaN(deg):
		refuse("-incidence: %q is not an angle (allowed -85 to 85, or random in a plane)", *f.incidence)
	}
	r.SpeedMS = f.speed(refuse)
	o.SpeedMS = r.SpeedMS
	if o.Bands, err = bandRange(*f.bands); err != nil {
		faults = append(faults, err)
	}
	if *f.plane != "across" && *f.plane != "down" && *f.plane != hemisphere {
		refuse("-plane: %q is not a plane (allowed across, down, hemisphere)", *f.plane)
	}
	switch *f.phase {
	case "kirchhoff":
	case "grating":
		o.Phase = sound.Grating
	case "grating-oblique":
		o.Phase = sound.GratingOblique
	default:
		refuse("-phase: %q is not a phase (allowed kirchhoff, grating, grating-oblique)", *f.phase)
	}
	return r, o, errors.Join(faults...)
}

// usualCelsius is the air where nothing is said of it.
const usualCelsius = 20

// speed returns the speed of sound as it was given, or that of a temperature.
func (f scatterFlags) speed(refuse func(string, ...any)) float64 {
	switch {
	case *f.c != "" && *f.temperature != "":
		refuse("-c: %q beside -temperature, from which the speed of sound follows (allowed one of the two)", *f.c)
		return 0
	case *f.c == "" && *f.temperature == "":
		return sound.SpeedMS(usualCelsius)
	case *f.c != "":
		c, err := strconv.ParseFloat(*f.c, 64)
		if err != nil || !(c >= 200 && c <= 2000) {
			refuse("-c: %q is not a speed of sound (allowed 200 to 2000 m/s)", *f.c)
		}
		return c
	}
	celsius, err := strconv.ParseFloat(*f.temperature, 64)
	if err != nil || !(celsius >= -40 && celsius <= 60) {
		refuse("-temperature: %q is not a temperature (allowed -40 to 60 °C)", *f.temperature)
	}
	return sound.SpeedMS(celsius)
}

// bandRange reads "250:8000", the nominal frequencies of the first and the last
// third octave.
func bandRange(text string) ([]sound.Band, error) {
	low, high, ok := strings.Cut(text, ":")
	from, err1 := strconv.ParseFloat(low, 64)
	to, err2 := strconv.ParseFloat(high, 64)
	const least, most = 20, 20_000 // of hearing
	if !ok || err1 != nil || err2 != nil || !(from >= least && from <= to && to <= most) {
		return nil, fmt.Errorf("-bands: %q is not a range (allowed LOW:HIGH from %d to %d Hz)", text, least, most)
	}
	return sound.Bands(sound.BandOf(from), sound.BandOf(to)), nil
}

// listen fills in bands and polars.
func (r *scatterReport) listen(a sound.Arrangement, o sound.Options) {
	axis := sound.Across
	if r.Plane == "down" {
		axis = sound.Down
	}
	depth := sound.DepthHz(a.DeepestM(), o.SpeedMS)
	deg, single := r.IncidenceDeg.(float64)
	switch {
	case !single:
		for _, b := range sound.RandomIncidence(a, axis, o) {
			r.band(b, sound.TrustRandom(b.Band.Hz(), depth))
		}
	case r.Plane == hemisphere:
		var angles, azimuths []float64
		for _, d := range sound.DomeReceivers() {
			angles, azimuths = append(angles, d.AngleDeg), append(azimuths, d.AzimuthDeg)
		}
		for _, b := range sound.HalfSpace(a, deg, o).Bands {
			r.band(b, sound.Trust(b.Band.Hz(), depth, deg))
			r.Polar = append(r.Polar, scatterPolar{b.Band.NominalHz(), angles, azimuths, levels(b.Energy)})
		}
	default:
		p := sound.Plane(a, axis, []float64{deg}, o)[0]
		for _, b := range p.Bands {
			r.band(b, sound.Trust(b.Band.Hz(), depth, deg))
			r.Polar = append(r.Polar, scatterPolar{Hz: b.Band.NominalHz(), AngleDeg: p.AnglesDeg, LevelDb: levels(b.Energy)})
		}
	}
}

func (r *scatterReport) band(s sound.Spread, d sound.Doubt) {
	round := func(v float64) float64 { return math.Round(v*1e4) / 1e4 }
	r.Bands = append(r.Bands, scatterBand{
		Hz: s.Band.NominalHz(), Diffusion: round(s.Diffusion), Flat: round(s.Flat),
		Normalised: round(s.Normalised), Scattering: round(s.Scattering),
		MeanError: d.Mean, WorstError: d.Worst, Indicative: d.Indicative, NoClaim: d.NoClaim,
	})
}

// levels are in dB to a hundredth.
func levels(energy []float64) []float64 {
	out := make([]float64, len(energy))
	for i, e := range energy {
		out[i] = math.Max(math.Round(1000*math.Log10(e))/100, lowestDb)
	}
	return out
}
