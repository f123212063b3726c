package sound

import (
	"math"

	"blockfield/engine/length"
)

// What half and most of the energy are, as shares of a band's energy that leave
// the mirror direction: limits in words, common practice without a source. The
// share is that of the band's energy, not the mean over its lines: at a single
// frequency where a chequer's mirror reflection vanishes, all of nothing is
// spread.
const (
	halfShare = 0.5
	mostShare = 0.8
)

// earlier is by how many third octaves real blocks begin to scatter below what
// the model says: one or two in the comparison that Trust stands on.
const earlier = 2

// Limits of the verdict. Common practice, no source.
const (
	leastEarM     = 1.5 // nearer, single blocks are heard
	earWaves      = 3   // wavelengths at the lowest frequency that is spread
	nothingShare  = 0.1 // a panel that never spreads more is as good as flat
	likeNeighbour = 1.5 // times as many equal neighbours as chance gives are worth a word
	highestFlatHz = 10_000
)

// Span is where a limit is reached: somewhere from Low to High.
type Span struct{ Low, High Band }

// Facts are what a verdict needs to know of the pattern beside the sound.
type Facts struct {
	Heights     []length.Length // exact, of the height set
	Clump       int             // blocks along each side of a patch of like height
	Repeats     int             // how often the pattern stands whole in the field, side by side
	RepeatCells int             // after how many cells it repeats
}

// Verdict is what a panel does to sound, in a few numbers.
type Verdict struct {
	Half, Most *Span   // nil: not reached up to 10 kHz
	Largest    float64 // greatest share that leaves the mirror direction up to the band where a block is half a wave
	Nothing    bool    // as good as flat up to there
	Between    Band    // the band of that block
	BlockHz    float64 // one block is half a wave
	ClumpHz    float64 // one clump is half a wave; 0 without clumps
	Step       length.Length
	FlatHz     float64 // all heights are whole steps of half a wave; 0: not below 10 kHz
	Dip        *Band   // first band above Most that falls back below half, where FlatHz explains none
	Alike      float64 // share of neighbours of equal height
	Chance     float64 // what a shuffle without clumps would have
	Repeats    int
	RepeatM    float64 // after which the pattern repeats; 0 when it does not
	NearM      float64 // a listener should sit no nearer
	RangeM     float64 // tallest less lowest
}

// Judge draws the conclusions of a Listening.
func Judge(a Arrangement, l Listening, f Facts) Verdict {
	v := Verdict{
		BlockHz: l.SpeedMS / (2 * a.PitchM), RangeM: a.DeepestM(),
		Repeats: f.Repeats, Alike: a.equalNeighbours(), Chance: a.chance(),
	}
	v.Half, v.Most = reached(l.Dome.Bands, halfShare), reached(l.Dome.Bands, mostShare)
	v.Between = BandOf(v.BlockHz)
	for _, s := range l.Dome.Bands {
		if s.Band <= v.Between {
			v.Largest = math.Max(v.Largest, s.ByEnergy)
		}
	}
	v.Nothing = v.Largest < nothingShare
	if f.Clump > 1 {
		v.ClumpHz = v.BlockHz / float64(f.Clump)
	}
	if f.Repeats > 1 {
		v.RepeatM = float64(f.RepeatCells) * a.PitchM
	}
	v.Step = equalStep(f.Heights)
	if hz := flatBoardHz(v.Step, l.SpeedMS); hz <= highestFlatHz {
		v.FlatHz = hz
	} else {
		v.Dip = v.dip(l.Dome.Bands)
	}
	v.NearM = leastEarM
	if v.Half != nil {
		v.NearM = math.Max(v.NearM, earWaves*l.SpeedMS/v.Half.Low.Hz())
	}
	return v
}

// reached returns where the share that leaves the mirror direction first comes
// to a limit. The model is late, never early, so the span lies below its band.
func reached(bands []Spread, share float64) *Span {
	for _, s := range bands {
		if s.ByEnergy >= share {
			return &Span{Low: s.Band - earlier, High: s.Band}
		}
	}
	return nil
}

// dip returns the first band above Most in which the share falls below half.
func (v Verdict) dip(bands []Spread) *Band {
	if v.Most == nil {
		return nil
	}
	for _, s := range bands {
		if s.Band > v.Most.High && s.ByEnergy < halfShare {
			return &s.Band
		}
	}
	return nil
}

// equalStep returns the largest step of which all differences of the heights
// are whole multiples; zero for fewer than two heights.
func equalStep(heights []length.Length) length.Length {
	var step int64
	for i := 1; i < len(heights); i++ {
		step = gcd(step, heights[i].Sub(heights[i-1]).Nanometres())
	}
	if step == 0 {
		return length.Length{}
	}
	return length.Nanometres(step, heights[0].Notation())
}

func gcd(a, b int64) int64 {
	for b != 0 {
		a, b = b, a%b
	}
	return max(a, -a)
}

// flatBoardHz returns the lowest frequency at which every height is a whole
// number of half waves above another, c/(2·step), so that the field answers
// like a flat board; infinite without a step.
func flatBoardHz(step length.Length, speedMS float64) float64 {
	if step.IsZero() {
		return math.Inf(1)
	}
	return speedMS / (2 * step.Metres())
}

// equalNeighbours returns the share of neighbouring cells of one height.
func (s Surface) equalNeighbours() float64 {
	var equal, all int
	for i := range s.Rows {
		for j := range s.Columns {
			here := i*s.Columns + j
			if j+1 < s.Columns {
				all++
				equal += same(s.Levels[here], s.Levels[here+1])
			}
			if i+1 < s.Rows {
				all++
				equal += same(s.Levels[here], s.Levels[here+s.Columns])
			}
		}
	}
	if all == 0 {
		return 0
	}
	return float64(equal) / float64(all)
}

func same(a, b uint16) int {
	if a == b {
		return 1
	}
	return 0
}

// chance returns how likely two cells of the field, drawn by lot, are of one
// height.
func (s Surface) chance() float64 {
	counts := make([]float64, len(s.HeightsM))
	for _, l := range s.Levels {
		counts[l]++
	}
	var sum float64
	for _, n := range counts {
		share := n / float64(len(s.Levels))
		sum += share * share
	}
	return sum
}
