package bench

import (
	"slices"
	"strconv"
	"strings"

	"blockfield/engine/check"
	"blockfield/engine/design"
	"blockfield/engine/length"
	"blockfield/engine/wood"
	"blockfield/engine/words"
)

// notMeasured reminds that every size rests on a label. Only a calliper clears
// it, so there is no edit to offer.
func notMeasured(j job, at string) []check.WatchOut {
	if j.design.Block.Measured {
		return nil
	}
	return []check.WatchOut{{
		Code: "bench/not-measured", Level: check.Caution, Gate: check.Cut, Pending: check.SignOff,
		Args:  words.Args{"size": j.design.Block.Size},
		Field: at + ".block.measured", Source: check.CommonPractice,
	}}
}

// shortBlock looks at the shortest block that is cut.
func shortBlock(j job, at string) []check.WatchOut {
	warned := length.MM(shortWarnedMM)
	for k, h := range j.design.Heights {
		if h.IsZero() || j.built.Counts[k] == 0 {
			continue
		}
		if h.Cmp(warned) >= 0 {
			return nil
		}
		w := check.WatchOut{
			Code: "bench/short-block", Level: check.Caution, Gate: check.Cut,
			Args:  words.Args{"height": h},
			Field: at + ".heights", Source: check.CommonPractice,
			Fix: raised(j.design.Heights, k, at+".heights"),
		}
		if h.Cmp(length.MM(shortRefusedMM)) < 0 {
			w.Code, w.Level = "bench/tiny-block", check.Stop
		}
		return []check.WatchOut{w}
	}
	return nil
}

// raised makes height k just tall enough to hold, where the next one stays
// taller.
func raised(heights []length.Length, k int, path string) *check.Fix {
	texts := make([]string, len(heights))
	for i, h := range heights {
		texts[i] = h.String()
	}
	tall := length.MM(shortWarnedMM).CeilAs(heights[k].Notation())
	if k+1 < len(heights) && tall.Cmp(heights[k+1]) >= 0 {
		return nil
	}
	texts[k] = tall.String()
	return &check.Fix{Path: path, Value: strings.Join(texts, ", ")}
}

// shortTail is about the last piece of a stick with nothing to hold it.
func shortTail(b design.Bench) []check.WatchOut {
	least := length.MM(tailLeastMM)
	if b.Carrier || b.HoldTail.Cmp(least) >= 0 {
		return nil
	}
	return []check.WatchOut{{
		Code: "bench/short-tail", Level: check.Stop, Gate: check.Cut,
		Args:  words.Args{"tail": b.HoldTail, "least": least.CeilAs(b.HoldTail.Notation())},
		Field: "bench.holdTail", Source: check.CommonPractice,
		Fix: &check.Fix{Path: "bench.holdTail", Value: typed(least, b.HoldTail)},
	}}
}

// waste looks at each lot of sticks, and for a stick length that wastes less.
func (b Bill) waste(in design.Bench, jobs []job) []check.WatchOut {
	var all []check.WatchOut
	for _, lot := range b.Lots {
		if !lot.wasteful() {
			continue
		}
		all = append(all, check.WatchOut{
			Code: "bench/waste", Level: check.Note,
			Args: words.Args{
				"wood": words.Key("choice/" + lot.Wood), "size": lot.Size,
				"share": words.Percent(100 - lot.FewestUsedPercent), "length": lot.StickLength,
			},
			Field: "bench.stickLength", Source: check.CommonPractice,
		})
	}
	if len(all) > 0 {
		fix := otherSticks(in, jobs)
		for i := range all {
			all[i].Fix = fix
		}
	}
	return all
}

// wasteful looks at the plan with the fewest boards: a board more that saves
// handling is no waste.
func (l Lot) wasteful() bool { return 100-l.FewestUsedPercent > wasteNotedPct }

// stickLengths are those in which squares are usually sold. Common practice, no
// source.
func stickLengths(like length.Length) []length.Length {
	if n := like.Notation(); n == length.InInch || n == length.InFeet {
		const foot = 12 * 64
		return []length.Length{
			length.Sixtyfourths(6 * foot), length.Sixtyfourths(8 * foot),
			length.Sixtyfourths(10 * foot), length.Sixtyfourths(12 * foot),
		}
	}
	return []length.Length{
		length.MM(1800), length.MM(2000), length.MM(2400), length.MM(2500),
		length.MM(2700), length.MM(3000), length.MM(3600), length.MM(4000),
	}
}

// otherSticks is the usual stick length nearest to the present one with which
// no lot is wasteful; nil where there is none.
func otherSticks(in design.Bench, jobs []job) *check.Fix {
	sizes := stickLengths(in.StickLength)
	away := func(l length.Length) int64 {
		d := l.Sub(in.StickLength).Nanometres()
		return max(d, -d)
	}
	slices.SortStableFunc(sizes, func(a, b length.Length) int {
		return length.Nanometres(away(a), length.InMM).Cmp(length.Nanometres(away(b), length.InMM))
	})
	for _, size := range sizes {
		other := in
		other.StickLength = size
		found, err := lots(other, jobs, &pile{items: slices.Clone(in.Stock)}, Prices{}, usualEffort(nil))
		if err == nil && !slices.ContainsFunc(found, Lot.wasteful) {
			return &check.Fix{Path: "bench.stickLength", Value: size.String()}
		}
	}
	return nil
}

// tooLarge is about a panel that a sheet, a door or two people cannot take. What
// does not come out of a sheet is a Stop; for door and people there is a Stop or a
// Caution of the wall, and this proposes what to do.
func tooLarge(g GroupBill, j job, at string) []check.WatchOut {
	if !g.Split.Needed() || !g.Split.Sheet && g.Split.Wide == 0 {
		return nil
	}
	sheet, _ := wood.FindSheet(j.design.Backer.Sheet)
	w := check.WatchOut{
		Code: "bench/sheet-too-small", Level: check.Stop, Gate: check.Buy,
		Args: words.Args{
			"width": j.built.FieldWidth, "height": j.built.FieldHeight,
			"sheetWidth": sheet.Width, "sheetLength": sheet.Length,
			"across": g.Split.Wide, "down": g.Split.High,
			"mass": words.Kg(g.HeaviestKg), "why": g.Split.why(),
		},
		Field: at + ".panelsWide", Source: check.Computed,
	}
	switch {
	case !g.Split.Sheet:
		w.Code, w.Level, w.Source = "bench/split", check.Note, check.CommonPractice
	case g.Split.Wide == 0:
		w.Code = "bench/sheets-too-small"
	}
	switch wide, high := j.design.PanelsWide, j.design.PanelsHigh; {
	case g.Split.Wide == 0:
	case j.design.Columns == 0 && g.Split.High == high && g.Split.Wide != wide:
		w.Fix = &check.Fix{Path: at + ".panelsWide", Value: strconv.Itoa(g.Split.Wide)}
	case j.design.Rows == 0 && g.Split.Wide == wide && g.Split.High != high:
		w.Fix = &check.Fix{Path: at + ".panelsHigh", Value: strconv.Itoa(g.Split.High)}
	}
	return []check.WatchOut{w}
}

// why is what cannot take the panel, but for a sheet.
func (s Split) why() words.Key {
	switch {
	case s.Door && s.People:
		return "split/door-and-people"
	case s.Door:
		return "split/door"
	default:
		return "split/people"
	}
}

// oneASheet notes that most of every sheet is left over. One panel takes one
// sheet anyway, so it is said from the second panel on.
func oneASheet(in design.Bench, g GroupBill, j job, at string) []check.WatchOut {
	if g.PerSheet != 1 || j.panels() < 2 {
		return nil
	}
	sheet, _ := wood.FindSheet(j.design.Backer.Sheet)
	return []check.WatchOut{{
		Code: "bench/one-a-sheet", Level: check.Note,
		Args: words.Args{
			"n": j.panels(), "width": j.built.FieldWidth, "height": j.built.FieldHeight,
			"sheetWidth": sheet.Width, "sheetLength": sheet.Length,
		},
		Field: at + ".columns", Source: check.Computed,
		Fix: narrower(in, sheet, j, at),
	}}
}

// narrower is the fewest columns or rows given up with which two backers come
// out of a sheet; nil where that would be another panel.
func narrower(in design.Bench, sheet wood.Sheet, j job, at string) *check.Fix {
	columns, rows := j.built.Columns, j.built.Rows
	twice := func(columns, rows int) bool {
		return perSheet(sheet, Backer{
			Width: CutBacker(j.built.Pitch.Times(columns), in), Height: CutBacker(j.built.Pitch.Times(rows), in),
		}, in.BackerGrain) > 1
	}
	for less := 1; less <= max(columns, rows); less++ {
		if fewer := columns - less; givesUpLittle(less, columns) && twice(fewer, rows) {
			return &check.Fix{Path: at + ".columns", Value: strconv.Itoa(fewer)}
		}
		if fewer := rows - less; givesUpLittle(less, rows) && twice(columns, fewer) {
			return &check.Fix{Path: at + ".rows", Value: strconv.Itoa(fewer)}
		}
	}
	return nil
}

func givesUpLittle(less, of int) bool { return float64(less) <= narrowerAtMost*float64(of) }

// shortBoards is about pieces of frames, cleats and spacers that no board is long
// enough for, the longest of them.
func (b Bill) shortBoards(in design.Bench) []check.WatchOut {
	longest := length.Length{}
	for _, f := range b.Frame {
		if f.Cuts != nil {
			longest = length.Max(longest, f.Cuts.TooLong)
		}
	}
	for _, s := range b.Cleat.Strips {
		if s.Cuts != nil {
			longest = length.Max(longest, s.Cuts.TooLong)
		}
	}
	if longest.IsZero() {
		return nil
	}
	w := check.WatchOut{
		Code: "bench/board-too-short", Level: check.Caution,
		Args:  words.Args{"piece": longest, "board": in.BoardLength},
		Field: "bench.boardLength", Source: check.Computed,
	}
	for _, size := range stickLengths(in.BoardLength) {
		if size.Cmp(longest.Add(in.EndTrim)) >= 0 {
			w.Fix = &check.Fix{Path: "bench.boardLength", Value: size.String()}
			break
		}
	}
	return []check.WatchOut{w}
}
