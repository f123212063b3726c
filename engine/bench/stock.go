package bench

import (
	"errors"
	"fmt"
	"slices"

	"blockfield/engine/cut"
	"blockfield/engine/design"
	"blockfield/engine/length"
	"blockfield/engine/panel"
	"blockfield/engine/wood"
)

// pair walks the groups of the design beside the built ones.
func pair(d design.Design, groups []panel.Group) ([]job, error) {
	var jobs []job
	for w := range d.Walls {
		wall := &d.Walls[w]
		for i, g := range wall.Groups {
			if len(jobs) == len(groups) {
				return nil, fmt.Errorf("bench: %d built groups are fewer than those of the design", len(groups))
			}
			jobs = append(jobs, job{
				design: g, wall: wall, built: &groups[len(jobs)],
				path: fmt.Sprintf("design.walls[%d].groups[%d]", w, i),
			})
		}
	}
	if len(jobs) < len(groups) {
		return nil, fmt.Errorf("bench: %d built groups are more than the %d of the design", len(groups), len(jobs))
	}
	return jobs, nil
}

// square is what one kind of stick is known by.
type square struct {
	wood   string
	sizeNM int64
}

// lots pools the blocks of all groups by wood and section and plans the fewest
// sticks of each lot.
func lots(b design.Bench, jobs []job) ([]Lot, error) {
	var out []Lot
	at := map[square]int{}
	for _, j := range jobs {
		key := square{j.design.Wood, j.design.Block.Size.Nanometres()}
		i, ok := at[key]
		if !ok {
			i = len(out)
			at[key] = i
			out = append(out, Lot{Wood: j.design.Wood, Size: j.design.Block.Size, StickLength: b.StickLength})
		}
		for k, n := range j.built.Counts {
			if n > 0 && !j.zero(k) {
				out[i].need(j.design.Heights[k], n)
			}
		}
	}
	// A field that is all bare backer needs no sticks.
	out = slices.DeleteFunc(out, func(l Lot) bool { return len(l.Heights) == 0 })
	for i := range out {
		out[i].count(b)
		// All lots share the steps of one plan, so that a job of many sections
		// takes no longer than one of few.
		if err := out[i].plan(b, cut.QuickSteps/int64(len(out))); err != nil {
			return nil, err
		}
	}
	return out, nil
}

// need adds n blocks of a height, keeping heights rising.
func (l *Lot) need(h length.Length, n int) {
	i, found := slices.BinarySearchFunc(l.Heights, h, func(c HeightCount, h length.Length) int {
		return c.Height.Cmp(h)
	})
	if !found {
		l.Heights = slices.Insert(l.Heights, i, HeightCount{Height: h})
	}
	l.Heights[i].Need += n
}

// count sets spares and the blocks to cut.
func (l *Lot) count(b design.Bench) {
	for i := range l.Heights {
		h := &l.Heights[i]
		h.Spare = max(b.SparesLeast, shareUp(h.Need, b.Spares))
		h.Cut = h.Need + h.Spare
	}
}

// problem is what the planner is given, in nanometres.
func (l *Lot) problem(b design.Bench) cut.Problem {
	p := cut.Problem{
		Bars:    []cut.Bar{{Length: b.StickLength.Nanometres(), Price: 1}},
		Kerf:    b.Kerf.Nanometres(),
		EndTrim: b.EndTrim.Nanometres(),
		Tail:    b.HoldTail.Nanometres(),
		Goal:    cut.Boards,
	}
	for _, h := range l.Heights {
		p.Pieces = append(p.Pieces, cut.Piece{Length: h.Height.Nanometres(), Count: h.Cut})
	}
	return p
}

// plan finds the fewest sticks, with so many steps.
func (l *Lot) plan(b design.Bench, steps int64) error {
	plan, err := cut.Solve(l.problem(b), steps)
	var tooLong *cut.PieceError
	if errors.As(err, &tooLong) {
		tallest := l.Heights[len(l.Heights)-1].Height
		return fmt.Errorf("design.bench.stickLength: a stick of %v holds no %v block (allowed from %v)",
			b.StickLength, tallest, tallest.Add(b.EndTrim).Add(b.HoldTail))
	}
	if err != nil {
		return fmt.Errorf("design.bench: %w", err)
	}
	l.Cuts = plan
	l.buy(b)
	return nil
}

// handle finds plans of as many sticks with the fewest visits at the stop block.
func (b *Bill) handle(in design.Bench) error {
	for i := range b.Lots {
		l := &b.Lots[i]
		curve, err := cut.FewestVisits(l.problem(in), l.Cuts, 0, cut.QuickSteps/int64(len(b.Lots)))
		if err != nil {
			return fmt.Errorf("design.bench: %w", err)
		}
		l.Cuts, l.LeastVisits = curve[0].Plan, curve[0].Least
	}
	return nil
}

// buy sets what follows from the sound sticks.
func (l *Lot) buy(b design.Bench) {
	var usedM float64
	for _, h := range l.Heights {
		usedM += float64(h.Need) * h.Height.Metres()
	}
	l.SticksBeforeDefects = l.Cuts.BoardCount
	l.Sticks = grossUp(l.Cuts.BoardCount, b.Defects)
	section := l.Size.Metres() * l.Size.Metres()
	boughtM := float64(l.Sticks) * b.StickLength.Metres()
	l.BoughtM3 = boughtM * section
	l.BlocksM3 = usedM * section
	l.UsedPercent = 100 * usedM / boughtM
}

// A backer is cut larger than its field and trimmed after gluing, and a new
// sheet's edges are not square. Common practice, no source.
const (
	backerOversizeMM = 10 // each way, trimmed off after gluing
	backerKerfMM     = 3  // of the saw that cuts sheets
	sheetEdgesMM     = 10 // each way off a sheet, both edges together
)

// CutBacker is the side of a backer as it is cut out of the sheet, for a side of
// its field.
func CutBacker(field length.Length) length.Length { return field.Add(length.MM(backerOversizeMM)) }

// sheets counts whole sheets. A sheet is cut into backers of one size; backers
// of the same size from several groups share sheets.
func (b *Bill) sheets(jobs []job) error {
	type backer struct {
		sheet             string
		thick, wide, high int64
	}
	panels := map[backer]int{}
	var order []backer
	fits := map[backer]int{}
	needs := map[backer]int{} // index into b.Sheets
	pieces := map[backer]int{}
	for i, j := range jobs {
		sheet, ok := wood.FindSheet(j.design.Backer.Sheet)
		if !ok {
			return fmt.Errorf("%s.backer.sheet: unknown sheet %q", j.path, j.design.Backer.Sheet)
		}
		key := backer{
			sheet.Name, j.design.Backer.Thickness.Nanometres(),
			j.built.FieldWidth.Nanometres(), j.built.FieldHeight.Nanometres(),
		}
		if _, ok := panels[key]; !ok {
			order = append(order, key)
			fits[key] = perSheet(sheet, j.built.FieldWidth, j.built.FieldHeight)
			pieces[key] = sheetsEach(sheet, j.built.FieldWidth, j.built.FieldHeight)
			needs[key] = b.sheetNeed(sheet.Name, j.design.Backer.Thickness)
		}
		panels[key] += j.panels()
		b.Groups[i].PerSheet = fits[key]
	}
	for _, key := range order {
		need := &b.Sheets[needs[key]]
		if fits[key] == 0 {
			need.TooLarge = true
			need.Count += panels[key] * pieces[key]
			need.PerSheet = 0
			continue
		}
		need.Count += int(ceilDiv(int64(panels[key]), int64(fits[key])))
		if !need.TooLarge && (need.PerSheet == 0 || fits[key] < need.PerSheet) {
			need.PerSheet = fits[key]
		}
	}
	return nil
}

// sheetNeed returns the index of the line for a board, which it adds where it
// is missing.
func (b *Bill) sheetNeed(sheet string, thickness length.Length) int {
	for i, s := range b.Sheets {
		if s.Sheet == sheet && s.Thickness.Same(thickness) {
			return i
		}
	}
	b.Sheets = append(b.Sheets, SheetNeed{Sheet: sheet, Thickness: thickness})
	return len(b.Sheets) - 1
}

// perSheet returns how many backers come out of a sheet, all turned the same
// way, the better of both ways.
func perSheet(sheet wood.Sheet, width, height length.Length) int {
	kerf := length.MM(backerKerfMM)
	w, h := CutBacker(width).Add(kerf), CutBacker(height).Add(kerf)
	across, along := usable(sheet)
	return max(times(across, w)*times(along, h), times(across, h)*times(along, w))
}

// sheetsEach returns how many sheets one backer takes that is larger than a
// sheet and has to be joined.
func sheetsEach(sheet wood.Sheet, width, height length.Length) int {
	w, h := CutBacker(width), CutBacker(height)
	across, along := usable(sheet)
	return min(timesUp(w, across)*timesUp(h, along), timesUp(h, across)*timesUp(w, along))
}

func usable(sheet wood.Sheet) (across, along length.Length) {
	edges := length.MM(sheetEdgesMM)
	return sheet.Width.Sub(edges), sheet.Length.Sub(edges)
}

// times is how many whole parts a length holds.
func times(l, part length.Length) int { return int(l.Nanometres() / part.Nanometres()) }

// timesUp is how many parts it takes to reach a length.
func timesUp(l, part length.Length) int { return int(ceilDiv(l.Nanometres(), part.Nanometres())) }
