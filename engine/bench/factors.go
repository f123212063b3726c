package bench

import "slices"

// Factors are habits that change the rates of single tasks. The zero value
// changes nothing: that is how the time table and the worked jobs are meant.
// All of them are invented, to be replaced by a workshop's own figures.
type Factors struct {
	Wood    bool // hard wood and large blocks take longer, small blocks less long
	Fatigue bool // hands tire at the same work
	Gang    int  // sticks that are cut at once, up to six; 0 and 1: one by one
}

// The factors.
const (
	hardwoodFactor   = 1.15 // to sort, cut and sand
	smallBlockFactor = 0.85 // to sand the end of a block below smallBlockMM
	largeBlockFactor = 1.15 // to sand the end of one above largeBlockMM
	smallBlockMM     = 30
	largeBlockMM     = 50
	tiredAfterMin    = 180 // of one task
	tiredFactor      = 1.10
)

// gangFactors are of the time for a cut, for one stick, two and so on: clamping
// takes up much of what the shared cut saves. Five is between its neighbours.
func gangFactors() []float64 { return []float64{1, 0.65, 0.52, 0.45, 0.425, 0.40} }

// hardwoods are those that saw and sander notice.
func hardwoods() []string { return []string{"ash", "oak", "beech", "maple"} }

// of is the factor of a task over all lots: each block and each stick by its own
// wood and size.
func (f Factors) of(id string, lots []Lot) float64 {
	factor := 1.0
	if id == taskCutBlock {
		gang := gangFactors()
		factor = gang[min(max(f.Gang, 1), len(gang))-1]
	}
	if !f.Wood {
		return factor
	}
	n, sum := 0.0, 0.0
	for _, lot := range lots {
		share := lot.cutBlocks()
		if id == taskLongFaces {
			share = float64(lot.Sticks)
		}
		n += share
		sum += share * lot.woodFactor(id)
	}
	if n == 0 {
		return factor
	}
	return factor * sum / n
}

func (l Lot) cutBlocks() float64 {
	n := 0
	for _, h := range l.Heights {
		n += h.Cut
	}
	return float64(n)
}

// woodFactor is what wood and size do to one task.
func (l Lot) woodFactor(id string) float64 {
	factor := 1.0
	hard := slices.Contains(hardwoods(), l.Wood)
	if hard && (id == taskCutBlock || id == taskShowEnds || id == taskLongFaces) {
		factor *= hardwoodFactor
	}
	if id == taskShowEnds {
		switch mm := l.Size.Millimetres(); {
		case mm < smallBlockMM:
			factor *= smallBlockFactor
		case mm > largeBlockMM:
			factor *= largeBlockFactor
		}
	}
	return factor
}

// tired is the minutes of one task when hands tire of it: what goes on after the
// first hours takes longer. Tasks that are counted by block or stick are such.
func (f Factors) tired(per string, minutes Spread) Spread {
	if !f.Fatigue || per != perCutBlock && per != perGluedBlock && per != perStick {
		return minutes
	}
	longer := func(m float64) float64 { return m + (tiredFactor-1)*max(0, m-tiredAfterMin) }
	return Spread{longer(minutes.Low), longer(minutes.Typical), longer(minutes.High)}
}
