package engine

import (
	_ "embed"
	"fmt"
	"slices"
	"sync"

	"blockfield/engine/cost"
	"blockfield/engine/design"
	"blockfield/engine/length"
	"blockfield/engine/money"
)

//go:embed example-selling.json
var exampleSelling []byte

// ExampleSelling is the selling book of the example figures, as SellingBook
// makes it of design.DefaultBook: kept as a file, so that the first page need
// not plan the sample jobs.
func ExampleSelling() design.SellingBook {
	s, err := design.DecodeSelling(exampleSelling)
	if err != nil {
		panic("engine: internal error: example-selling.json: " + err.Error())
	}
	return s
}

// Quote returns the range that a public page shows for a planned design, tax
// included. It needs no private price book: of the result it takes what can be
// seen of the panels, never the price.
func Quote(d design.Design, r Result, book design.SellingBook) (low, high money.Money, err error) {
	if !quoted(d) {
		return low, high, ErrNotQuoted
	}
	return cost.Quote(visible(d, r), book, d.Money)
}

// SellingBook returns what of a private price book may be published. It plans
// the sample jobs with it, which takes some dozens of milliseconds: it is for a
// maker who asks for it, not for every edit.
func SellingBook(b design.Book) (design.SellingBook, error) {
	var samples []cost.Sample
	for _, d := range sampleJobs(b) {
		r, err := Plan(d, b)
		if err != nil {
			return design.SellingBook{}, fmt.Errorf("sample job: %w", err)
		}
		if !r.Price.Sold {
			return design.SellingBook{}, fmt.Errorf("the price book does not price the sample jobs: %v", r.WatchOuts)
		}
		samples = append(samples, cost.Sample{Visible: visible(d, r), Price: r.Price})
	}
	s, err := cost.Fit(samples)
	if err != nil {
		return design.SellingBook{}, err
	}
	s.Name, s.ValidUntil = b.Name, b.ValidUntil
	return s, design.ValidateSelling(s)
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
		// Boards against handling is weighed by private rates: not here.
		addWood(&v, lot.Wood, lot.FewestM3)
	}
	for _, f := range r.Bill.Frame {
		addWood(&v, f.Wood, f.BoughtM3)
	}
	return v
}

const (
	cm2PerM2 = 10_000
	mmPerM   = 1000
	mlPerM3  = 1_000_000
)

// addWood counts timber in the class of wood that a selling book has one price for, as
// much of the wood that the class is named by as costs the same. Which wood is dear and
// which is not is common knowledge of the trade; by how much is taken from the example
// figures, which everybody knows, and never from a private book.
func addWood(v *cost.Visible, wood string, m3 float64) {
	like, amount := "beech", &v.MiddleML
	switch wood {
	case "pine", "spruce":
		like, amount = "pine", &v.SoftwoodML
	case "maple", "oak", "cherry", "walnut":
		like, amount = "oak", &v.FineWoodML
	}
	*amount += cost.Steps(m3*usualPrice(wood)/usualPrice(like), mlPerM3)
}

// usualPrice is what a cubic metre of squares costs by the example figures.
func usualPrice(wood string) float64 { return usualPrices()[wood] }

var usualPrices = sync.OnceValue(func() map[string]float64 {
	all := map[string]float64{}
	for _, w := range design.DefaultBook().Woods {
		all[w.Wood] = float64(w.SquaresPerM3)
	}
	return all
})

// sampleRounds times the sizes is how many sample jobs there are: each wood of
// the example figures comes once in each size.
const sampleRounds = 10

// sampleJobs are the jobs that a selling book is fitted to: the woods of the
// price book in four sizes, with block widths, heights, panels, frames and
// services taking turns so that no two of them always change together. Sheet
// and finish are those of the first design, or else the first that the book
// has a price for. Invented.
func sampleJobs(b design.Book) []design.Design {
	sizes := [][2]int64{{600, 600}, {1000, 700}, {1200, 800}, {1500, 1100}}
	blocks := []int64{36, 44, 28, 40, 58}
	heights := [][]length.Length{
		{length.MM(26), length.MM(42), length.MM(64), length.MM(92)},
		{length.MM(0), length.MM(18), length.MM(36), length.MM(54), length.MM(72)},
		{length.MM(25), length.MM(45), length.MM(65), length.MM(120)},
	}
	roads := []float64{20, 6, 60, 35, 0, 15, 100}
	woods := pricedWoods(b)
	if len(woods) == 0 {
		return nil
	}
	var jobs []design.Design
	for i := range sampleRounds {
		for k, size := range sizes {
			n := i*len(sizes) + k
			d := design.Default().Design
			d.Bench.Handling = design.FewestBoards
			g := &d.Walls[0].Groups[0]
			g.Wood = woods[i%len(woods)]
			g.Frame.Wood = g.Wood
			usePriced(g, b)
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

// pricedWoods are the woods that a price book has, in the order of the
// catalogue.
func pricedWoods(b design.Book) []string {
	return slices.DeleteFunc(design.Woods(), func(wood string) bool {
		return !slices.ContainsFunc(b.Woods, func(w design.WoodPrice) bool { return w.Wood == wood })
	})
}

// usePriced gives a group a sheet and a finish that the price book has.
func usePriced(g *design.Group, b design.Book) {
	has := slices.ContainsFunc(b.Sheets, func(s design.SheetPrice) bool {
		return s.Sheet == g.Backer.Sheet && s.Thickness.Same(g.Backer.Thickness)
	})
	if !has && len(b.Sheets) > 0 {
		g.Backer = design.Backer{Sheet: b.Sheets[0].Sheet, Thickness: b.Sheets[0].Thickness}
	}
	has = slices.ContainsFunc(b.Finishes, func(f design.FinishPrice) bool { return f.Finish == g.Finish.Kind })
	if !has && len(b.Finishes) > 0 {
		g.Finish.Kind = b.Finishes[0].Finish
	}
}

// AtWorkshop is the range that a workshop would ask for what somebody plans to build at
// home: the same design, made by a workshop and quoted by its selling book.
func AtWorkshop(d design.Design, p Planner, book design.SellingBook) (low, high money.Money, err error) {
	d.Work.OwnBuild = false
	r, err := p.Plan(d)
	if err != nil {
		return low, high, err
	}
	return Quote(d, r, book)
}
