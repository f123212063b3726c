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
			Args:  words.Args{"height": h, "away": length.MM(tailLeastMM)},
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
		Args:  words.Args{"tail": b.HoldTail, "least": least},
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
		found, err := lots(other, jobs, &pile{items: slices.Clone(in.Stock)}, Prices{})
		if err == nil && !slices.ContainsFunc(found, Lot.wasteful) {
			return &check.Fix{Path: "bench.stickLength", Value: size.String()}
		}
	}
	return nil
}

// sheetTooSmall is about a backer that does not come out of one sheet.
func sheetTooSmall(g GroupBill, j job, at string) []check.WatchOut {
	if g.PerSheet > 0 {
		return nil
	}
	sheet, _ := wood.FindSheet(j.design.Backer.Sheet)
	across, down := split(sheet, j)
	w := check.WatchOut{
		Code: "bench/sheet-too-small", Level: check.Stop, Gate: check.Buy,
		Args: words.Args{
			"width": j.built.FieldWidth, "height": j.built.FieldHeight,
			"sheetWidth": sheet.Width, "sheetLength": sheet.Length,
			"across": across, "down": down,
		},
		Field: at + ".panelsWide", Source: check.Computed,
	}
	switch wide, high := j.design.PanelsWide, j.design.PanelsHigh; {
	case across == 0:
		w.Code = "bench/sheets-too-small"
	case j.design.Columns == 0 && down == high:
		w.Fix = &check.Fix{Path: at + ".panelsWide", Value: strconv.Itoa(across)}
	case j.design.Rows == 0 && across == wide:
		w.Fix = &check.Fix{Path: at + ".panelsHigh", Value: strconv.Itoa(down)}
	}
	return []check.WatchOut{w}
}

// split returns the least number of panels, across and down, whose backers
// come out of whole sheets; of equal numbers the one with fewest across. Both
// are 0 where a group may not have so many.
func split(sheet wood.Sheet, j job) (across, down int) {
	g := j.design
	least := mostPanelsSplit + 1
	for w := g.PanelsWide; w <= mostPanelsSplit; w++ {
		for h := g.PanelsHigh; w*h < least && w*h <= mostPanelsSplit; h++ {
			columns := (j.built.Columns*g.PanelsWide + w - 1) / w
			rows := (j.built.Rows*g.PanelsHigh + h - 1) / h
			if perSheet(sheet, j.built.Pitch.Times(columns), j.built.Pitch.Times(rows)) > 0 {
				across, down, least = w, h, w*h
			}
		}
	}
	return across, down
}

// oneASheet notes that most of every sheet is left over. One panel takes one
// sheet anyway, so it is said from the second panel on.
func oneASheet(g GroupBill, j job, at string) []check.WatchOut {
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
		Fix: narrower(sheet, j, at),
	}}
}

// narrower is the fewest columns or rows given up with which two backers come
// out of a sheet; nil where that would be another panel.
func narrower(sheet wood.Sheet, j job, at string) *check.Fix {
	pitch := j.built.Pitch
	columns, rows := j.built.Columns, j.built.Rows
	for less := 1; less <= max(columns, rows); less++ {
		if fewer := columns - less; givesUpLittle(less, columns) &&
			perSheet(sheet, pitch.Times(fewer), pitch.Times(rows)) > 1 {
			return &check.Fix{Path: at + ".columns", Value: strconv.Itoa(fewer)}
		}
		if fewer := rows - less; givesUpLittle(less, rows) &&
			perSheet(sheet, pitch.Times(columns), pitch.Times(fewer)) > 1 {
			return &check.Fix{Path: at + ".rows", Value: strconv.Itoa(fewer)}
		}
	}
	return nil
}

func givesUpLittle(less, of int) bool { return float64(less) <= narrowerAtMost*float64(of) }
