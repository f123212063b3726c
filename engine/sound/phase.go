package sound

// Phase is the variant of the phase and of the obliquity of a face.
type Phase uint8

// The variants. Kirchhoff is the better field and the default; the other two
// are simpler and serve closed forms and comparisons.
const (
	Kirchhoff      Phase = iota // path d·(cos θ0 + cos θ), obliquity (cos θ0 + cos θ)/2
	Grating                     // path 2·d, no obliquity: the phase grating of M. R. Schroeder
	GratingOblique              // path 2·d, obliquity (cos θ0 + cos θ)/2
)

// path returns the factors of the path, as the part of the source and that of
// the receiver, and the obliquity.
func (p Phase) path(cosSource, cosReceiver float64) (source, receiver, obliquity float64) {
	switch p {
	case Grating:
		return 1, 1, 1
	case GratingOblique:
		return 1, 1, (cosSource + cosReceiver) / 2
	default:
		return cosSource, cosReceiver, (cosSource + cosReceiver) / 2
	}
}

// Options say how an arrangement is listened to.
type Options struct {
	SpeedMS float64 // of sound; 0: at 20 °C
	Phase   Phase
	Bands   []Band // nil: 100 Hz to 10 kHz
	Lines   int    // frequencies a band; 0: linesPerBand
}

func (o Options) whole() Options {
	if o.SpeedMS == 0 {
		o.SpeedMS = referenceMS
	}
	if o.Bands == nil {
		o.Bands = Bands(firstBand, lastBand)
	}
	if o.Lines == 0 {
		o.Lines = linesPerBand
	}
	return o
}
