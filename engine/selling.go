package engine

import (
	"fmt"

	"blockfield/engine/cost"
	"blockfield/engine/design"
	"blockfield/engine/length"
	"blockfield/engine/money"
)

// Quote returns the range that a public page shows for a planned design, tax
// included. It needs no private price book: of the result it takes what can be
// seen of the panels, never the price.
func Quote(d design.Design, r Result, book design.SellingBook) (low, high money.Money, err error) {
	return cost.Quote(visible(d, r), book, d.Money)
}

// SellingBook returns what of a private price book may be published. It plans
// the sample jobs with it, which takes some dozens of milliseconds: it is for a
// maker who asks for it, not for every edit.
func SellingBook(b design.Book) (design.SellingBook, error) {
	var samples []cost.Sample
	for _, d := range sampleJobs() {
		r, err := Plan(d, b)
		if err != nil {
			return design.SellingBook{}, fmt.Errorf("sample job: %w", err)
		}
		if !r.Price.Sold {
			return design.SellingBook{}, fmt.Errorf("the price book does not price the sample jobs: %v", r.WatchOuts)
		}
		samples = append(samples, cost.Sample{Visible: visible(d, r), Price: r.Price})
	}
	return cost.Fit(samples)
}

// visible is what a selling book counts.
func visible(d design.Design, r Result) cost.Visible {
	_, blocks := r.Cells()
	v := cost.Visible{
		Panels: int64(r.Bill.Panels), Blocks: int64(blocks),
		RoadM: cost.Steps(r.Bill.RoadKm, cost.MPerKm),
	}
	for _, g := range r.Groups {
		n := float64(len(g.Built.Panels))
		v.FieldCM2 += cost.Steps(n*g.Built.FieldWidth.Metres()*g.Built.FieldHeight.Metres(), cm2PerM2)
		v.FrameMM += cost.Steps(n*g.Built.FrameRunning.Metres(), mmPerM)
	}
	if d.Work.Hung {
		v.HangingHands = int64(r.Bill.Panels * d.Work.Crew)
	}
	for _, lot := range r.Bill.Lots {
		*woodOf(&v, lot.Wood) += cost.Steps(lot.BoughtM3, mlPerM3)
	}
	for _, f := range r.Bill.Frame {
		*woodOf(&v, f.Wood) += cost.Steps(f.BoughtM3, mlPerM3)
	}
	return v
}

const (
	cm2PerM2 = 10_000
	mmPerM   = 1000
	mlPerM3  = 1_000_000
)

// woodOf is the class of wood that a selling book has one price for. Which wood
// is dear and which is not is common knowledge of the trade.
func woodOf(v *cost.Visible, wood string) *int64 {
	switch wood {
	case "pine", "spruce":
		return &v.SoftwoodML
	case "maple", "oak", "cherry", "walnut":
		return &v.FineWoodML
	default:
		return &v.MiddleML
	}
}

// sampleJobs are the jobs that a selling book is fitted to: every wood in each
// of four sizes, with block widths, heights, panels, frames and services taking
// turns so that no two of them always change together. Invented.
func sampleJobs() []design.Design {
	sizes := [][2]int64{{600, 600}, {1000, 700}, {1200, 800}, {1500, 1100}}
	blocks := []int64{36, 44, 28, 40, 58}
	heights := [][]length.Length{
		{length.MM(26), length.MM(42), length.MM(64), length.MM(92)},
		{length.MM(0), length.MM(18), length.MM(36), length.MM(54), length.MM(72)},
		{length.MM(25), length.MM(45), length.MM(65), length.MM(120)},
	}
	roads := []float64{20, 6, 60, 35, 0, 15, 100}
	var jobs []design.Design
	for i, wood := range design.Woods() {
		for k, size := range sizes {
			n := i*len(sizes) + k
			d := design.Default().Design
			g := &d.Walls[0].Groups[0]
			g.Wood, g.Frame.Wood = wood, wood
			g.PanelsWide = 1 + (n+i)%3
			g.Width, g.Height = length.MM(size[0]*int64(g.PanelsWide)), length.MM(size[1])
			g.Heights = heights[(n+k)%len(heights)]
			g.Block.Size = length.MM(blocks[n%len(blocks)])
			if n%7 == 3 {
				g.Frame.Joint = design.NoFrame
			}
			d.Work.Hung = n%4 != 2
			d.Work.Crew = 1 + n/2%3
			d.Work.Survey = n%5 != 1
			d.Work.DistanceKm = roads[n%len(roads)]
			jobs = append(jobs, d)
		}
	}
	return jobs
}
