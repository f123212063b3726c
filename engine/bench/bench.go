// Package bench counts what a job takes: sticks and how they are cut, sheets,
// frame boards, glue, finish, screws, and the hours of the people who make it.
//
// Buying, cutting and hours are pooled over all groups of the job. Sticks of
// one wood and one section are one lot, whatever the heights that are cut from
// them. Lengths that enter the saw are whole nanometres; areas, volumes and
// litres are closed forms in m, m², m³; masses kg; times minutes for tasks and
// hours for sums.
//
// Sticks come from the planner of package cut: as cheap as possible, and then
// weighed against visits at the stop block. They are divided by the share that
// has no defects. Frame boards, cleats and backers come from the same planner;
// wood that is there goes from one to the next. Hours are quantity × rate out of
// the time table of the price book, for a low, a typical and a high rate. The factors are
// habit of the trade without a source, unless a line says otherwise; each
// stands as a constant beside its use.
package bench

import (
	"math"
	"slices"

	"blockfield/engine/cut"
	"blockfield/engine/design"
	"blockfield/engine/panel"
)

// Pace is how fast the workshop works and drives, out of its price book.
type Pace struct {
	Tasks    []design.Task
	SpeedKmh float64
	Factors  Factors
	Prices   Prices
	Plans    *cut.Memory                           // of plans that took long; nil: none are kept
	Holds    func(group int, panelKg float64) Held // what holds a group whose heaviest panel has a mass; nil: nobody has said
}

// Estimate returns what a design with its built groups takes. The groups are
// those of all walls, in the order of the design. It returns an error when a
// stick cannot hold a block, when the time table counts by something unknown,
// or for a wood, sheet or finish that design.Validate has refused before.
func Estimate(d design.Design, pace Pace, groups []panel.Group) (Bill, error) {
	jobs, err := pair(d, groups)
	if err != nil {
		return Bill{}, err
	}
	bill := Bill{Groups: make([]GroupBill, len(jobs))}
	bill.pieces(jobs)
	there := &pile{items: slices.Clone(d.Bench.Stock)}
	by := bill.effort(d.Bench, jobs, pace.Plans)
	if bill.Lots, err = lots(d.Bench, jobs, there, pace.Prices, by); err != nil {
		return Bill{}, err
	}
	if err := bill.handle(d, pace, there, by); err != nil {
		return Bill{}, err
	}
	for _, lot := range bill.Lots {
		for _, h := range lot.Heights {
			bill.CutBlocks += h.Cut
		}
	}
	if err := bill.sheets(d.Bench, jobs); err != nil {
		return Bill{}, err
	}
	if err := bill.frames(d.Bench, jobs, there, pace.Prices, by); err != nil {
		return Bill{}, err
	}
	bill.glue(jobs)
	if err := bill.finishes(jobs); err != nil {
		return Bill{}, err
	}
	bill.weigh(jobs)
	bill.hold(jobs, pace.Holds)
	if err := bill.cleats(d.Bench, jobs, there, by); err != nil {
		return Bill{}, err
	}
	bill.splits(d, jobs)
	bill.trims(d.Bench, jobs)
	if err := bill.times(d.Work, pace, jobs); err != nil {
		return Bill{}, err
	}
	return bill, nil
}

// job is a group with its wall and its panels.
type job struct {
	design design.Group
	wall   *design.Wall
	built  *panel.Group
	path   string
}

func (j job) panels() int { return len(j.built.Panels) }

// zero reports whether level k is bare backer.
func (j job) zero(k int) bool { return j.design.Heights[k].IsZero() }

// fieldM2 is the field of one panel.
func (j job) fieldM2() float64 {
	return j.built.FieldWidth.Metres() * j.built.FieldHeight.Metres()
}

// pieces counts panels, frames, cells and blocks.
func (b *Bill) pieces(jobs []job) {
	for _, j := range jobs {
		b.Panels += j.panels()
		if j.built.Framed {
			b.Frames += j.panels()
		}
		for _, p := range j.built.Panels {
			b.Cells += len(p.Grid.Levels)
			b.Blocks += p.Blocks
		}
	}
}

// ppmOf is percent in millionths, so that shares of counts are integer
// arithmetic: 8 sticks with 12 % defects are ⌈8 / 0.88⌉ = 10 everywhere.
func ppmOf(percent float64) int64 { return int64(math.Round(percent * ppmPerPercent)) }

const (
	ppmPerPercent = 10_000
	whole         = 100 * ppmPerPercent
)

// shareUp returns ⌈n × percent⌉.
func shareUp(n int, percent float64) int { return int(ceilDiv(int64(n)*ppmOf(percent), whole)) }

// soundOf returns how many of n are expected to be good.
func soundOf(n int, percent float64) int { return int(int64(n) * (whole - ppmOf(percent)) / whole) }

// grossUp returns ⌈n / (1 − percent)⌉: how many to buy so that n are good.
func grossUp(n int, percent float64) int {
	return int(ceilDiv(int64(n)*whole, whole-ppmOf(percent)))
}

func ceilDiv(n, d int64) int64 { return (n + d - 1) / d }
