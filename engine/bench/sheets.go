package bench

import (
	"cmp"
	"fmt"
	"slices"

	"blockfield/engine/cut"
	"blockfield/engine/design"
	"blockfield/engine/length"
	"blockfield/engine/wood"
)

// What a saw and the crooked edges of a new sheet take. Common practice, no source.
const (
	sheetKerfMM  = 3  // of the saw that cuts sheets
	sheetEdgesMM = 10 // each way off a sheet, at the edges that no backer starts from; kerf included
)

// CutBacker is the side of a backer as it is cut out of the sheet, for a side of
// its field.
func CutBacker(field length.Length, in design.Bench) length.Length {
	return field.Add(in.BackerOversize)
}

// Backer is the backers of one size, with what they are cut larger.
type Backer struct {
	Width, Height length.Length // as the panel hangs
	Count         int
}

// part is a backer as the planner of sheets knows it: the grain runs along its
// length.
func (k Backer) part(grain string) cut.Part {
	w, h := k.Width.Nanometres(), k.Height.Nanometres()
	if grain == design.GrainAcross {
		w, h = h, w
	}
	return cut.Part{Width: w, Length: h, Count: k.Count, Turn: grain == design.AnyGrain}
}

// sheets plans whole sheets: the backers of all groups that are of one board share
// them. A backer that is larger than a sheet has to be joined out of several.
func (b *Bill) sheets(in design.Bench, jobs []job) error {
	for i, j := range jobs {
		sheet, ok := wood.FindSheet(j.design.Backer.Sheet)
		if !ok {
			return fmt.Errorf("%s.backer.sheet: unknown sheet %q", j.path, j.design.Backer.Sheet)
		}
		need := &b.Sheets[b.sheetNeed(sheet.Name, j.design.Backer.Thickness)]
		backer := Backer{
			Width: CutBacker(j.built.FieldWidth, in), Height: CutBacker(j.built.FieldHeight, in), Count: j.panels(),
		}
		g := &b.Groups[i]
		if g.PerSheet = perSheet(sheet, backer, in.BackerGrain); g.PerSheet == 0 {
			need.TooLarge = true
			need.Count += j.panels() * sheetsEach(sheet, backer, in.BackerGrain)
			continue
		}
		need.add(backer)
		if need.PerSheet == 0 || g.PerSheet < need.PerSheet {
			need.PerSheet = g.PerSheet
		}
	}
	for i := range b.Sheets {
		if err := b.Sheets[i].plan(in); err != nil {
			return err
		}
	}
	return nil
}

// add pools backers of one size.
func (s *SheetNeed) add(k Backer) {
	i := slices.IndexFunc(s.Backers, func(o Backer) bool { return o.Width.Same(k.Width) && o.Height.Same(k.Height) })
	if i < 0 {
		s.Backers = append(s.Backers, k)
		return
	}
	s.Backers[i].Count += k.Count
}

// plan cuts the backers out of as few sheets as possible.
func (s *SheetNeed) plan(in design.Bench) error {
	if s.TooLarge {
		s.PerSheet = 0
	}
	if len(s.Backers) == 0 {
		return nil
	}
	sheet, _ := wood.FindSheet(s.Sheet)
	p := cut.SheetProblem{
		Width: sheet.Width.Nanometres(), Length: sheet.Length.Nanometres(),
		Kerf: length.MM(sheetKerfMM).Nanometres(), Trim: length.MM(sheetEdgesMM).Nanometres(),
	}
	// More sizes than the planner takes are those of many walls: the rest is
	// counted size by size.
	for _, k := range s.Backers[min(len(s.Backers), cut.MaxSizes):] {
		s.Count += int(ceilDiv(int64(k.Count), int64(perSheet(sheet, k, in.BackerGrain))))
	}
	for _, k := range s.Backers[:min(len(s.Backers), cut.MaxSizes)] {
		p.Parts = append(p.Parts, k.part(in.BackerGrain))
	}
	for _, there := range in.Sheets {
		if there.Sheet == s.Sheet && there.Thickness.Same(s.Thickness) {
			s.There = append(s.There, there)
			p.There = append(p.There, cut.There{Width: there.Width.Nanometres(), Length: there.Length.Nanometres(), Count: there.Count})
		}
	}
	plan, err := cut.SolveSheets(p)
	if err != nil {
		return fmt.Errorf("design.bench: %w", err)
	}
	s.Count += plan.Sheets
	s.Plan = plan
	s.rests()
	return nil
}

// Size is the size of the sheets of a layout, across and along the grain.
func (s SheetNeed) Size(l cut.SheetLayout) (width, long length.Length) {
	if l.There > 0 {
		t := s.There[l.There-1]
		return t.Width, t.Length
	}
	whole, _ := wood.FindSheet(s.Sheet)
	return whole.Width, whole.Length
}

// WorthKeeping reports whether a rest of a sheet is kept for another job.
func WorthKeeping(r cut.Rest) bool {
	return min(r.Width, r.Length) >= length.MM(shortestKeptMM).Nanometres()
}

// rests counts what is left over and worth keeping.
func (s *SheetNeed) rests() {
	for _, l := range s.Plan.Layouts {
		for _, r := range l.Rests {
			if !WorthKeeping(r) {
				continue
			}
			const mm = 1_000_000 // whole ones will do
			w, long := length.MM(r.Width/mm), length.MM(r.Length/mm)
			i := slices.IndexFunc(s.Rests, func(o SheetRest) bool { return o.Width.Same(w) && o.Length.Same(long) })
			if i < 0 {
				i = len(s.Rests)
				s.Rests = append(s.Rests, SheetRest{Width: w, Length: long})
			}
			s.Rests[i].Count += l.Count
		}
	}
	slices.SortStableFunc(s.Rests, func(a, b SheetRest) int { // by area
		return cmp.Compare(b.Width.Metres()*b.Length.Metres(), a.Width.Metres()*a.Length.Metres())
	})
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

// perSheet returns how many backers of one size come out of a sheet, all turned
// the same way, the better of the ways that the grain allows. Between n of them
// there are n − 1 cuts; the last one is among what the edges take.
func perSheet(sheet wood.Sheet, k Backer, grain string) int {
	kerf := length.MM(sheetKerfMM)
	across, along := usable(sheet)
	part := k.part(grain)
	w, l := length.Nanometres(part.Width, length.InMM).Add(kerf), length.Nanometres(part.Length, length.InMM).Add(kerf)
	n := times(across.Add(kerf), w) * times(along.Add(kerf), l)
	if part.Turn {
		n = max(n, times(across.Add(kerf), l)*times(along.Add(kerf), w))
	}
	return n
}

// sheetsEach returns how many sheets one backer takes that is larger than a
// sheet and has to be joined.
func sheetsEach(sheet wood.Sheet, k Backer, grain string) int {
	across, along := usable(sheet)
	part := k.part(grain)
	w, l := length.Nanometres(part.Width, length.InMM), length.Nanometres(part.Length, length.InMM)
	n := timesUp(w, across) * timesUp(l, along)
	if part.Turn {
		n = min(n, timesUp(l, across)*timesUp(w, along))
	}
	return n
}

func usable(sheet wood.Sheet) (across, along length.Length) {
	edges := length.MM(sheetEdgesMM)
	return sheet.Width.Sub(edges), sheet.Length.Sub(edges)
}

// times is how many whole parts a length holds.
func times(l, part length.Length) int { return int(l.Nanometres() / part.Nanometres()) }

// timesUp is how many parts it takes to reach a length.
func timesUp(l, part length.Length) int { return int(ceilDiv(l.Nanometres(), part.Nanometres())) }
