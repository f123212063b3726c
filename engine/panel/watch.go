package panel

import (
	"strings"

	"blockfield/engine/check"
	"blockfield/engine/design"
	"blockfield/engine/length"
	"blockfield/engine/words"
)

// Limits of the checks on pattern and size. Common practice, no source.
const (
	shareLeast, shareMost = 0.6, 1.4 // of an equal share of the cells
	runNoted              = 5        // equal heights in a line, in clumps
	repeatsWarned         = 3        // whole patterns or like panels side by side
	snapNotedMM           = 5        // between the wished and the built size
)

// WatchOuts returns what is to be said of the group's pattern, size and frame. path is
// where the group stands below the design, "walls[0].groups[0]".
func (g Group) WatchOuts(in design.Group, path string) []check.WatchOut {
	var all []check.WatchOut
	all = append(all, g.shares(in, path)...)
	all = append(all, g.run(in, path)...)
	all = append(all, g.repeats(path)...)
	all = append(all, g.alike(in, path)...)
	all = append(all, g.snapped(in, path)...)
	return append(all, g.shallowFrame(in, path)...)
}

func (g Group) shares(in design.Group, path string) []check.WatchOut {
	total := 0
	for _, n := range g.Counts {
		total += n
	}
	equal := float64(total) / float64(len(g.Counts))
	var all []check.WatchOut
	for k, n := range g.Counts {
		share := float64(n) / equal
		if share >= shareLeast && share <= shareMost {
			continue
		}
		all = append(all, check.WatchOut{
			Code: "pattern/uneven-shares", Level: check.Note,
			Args:  words.Args{"height": in.Heights[k], "share": words.Percent(100 * share)},
			Field: path + ".pattern.order", Source: check.CommonPractice,
		})
	}
	return all
}

// NotedRun is from how many equal heights in a line on a pattern draws the eye.
func NotedRun(p design.Pattern) int { return runNoted * max(p.Clump, 1) }

func (g Group) run(in design.Group, path string) []check.WatchOut {
	run := g.Panels[0].Grid.LongestRun()
	if run.Length < NotedRun(in.Pattern) {
		return nil
	}
	place, at := words.Key("pattern/row"), run.Row+1
	if run.Down {
		place, at = words.Key("pattern/column"), run.Column+1
	}
	return []check.WatchOut{{
		Code: "pattern/long-run", Level: check.Note,
		Args:  words.Args{"n": run.Length, "place": place, "at": at},
		Field: path + ".pattern.seed", Source: check.CommonPractice,
	}}
}

func (g Group) repeats(path string) []check.WatchOut {
	n := g.Panels[0].Grid.Repeats()
	if n < repeatsWarned {
		return nil
	}
	return []check.WatchOut{{
		Code: "pattern/repeats", Level: check.Caution,
		Args:  words.Args{"n": n},
		Field: path + ".pattern.order", Source: check.CommonPractice,
	}}
}

// alike warns of like panels side by side, and offers the order that swaps the
// last of them.
func (g Group) alike(in design.Group, path string) []check.WatchOut {
	if in.PanelsWide < repeatsWarned {
		return nil
	}
	letters := make([]byte, len(g.Panels))
	for i, p := range g.Panels {
		letters[i] = p.Letter
	}
	if strings.Count(string(letters), string(letters[0])) < len(letters) {
		return nil
	}
	order := strings.Repeat("A", len(letters)-1) + "B"
	return []check.WatchOut{{
		Code: "panel/alike", Level: check.Caution,
		Args:  words.Args{"n": in.PanelsWide, "order": order},
		Field: path + ".order", Source: check.CommonPractice,
		Fix: &check.Fix{Path: path + ".order", Value: order},
	}}
}

func (g Group) snapped(in design.Group, path string) []check.WatchOut {
	width, height := g.FieldWidth.Times(in.PanelsWide), g.FieldHeight.Times(in.PanelsHigh)
	limit := length.MM(snapNotedMM)
	if apart(width, in.Width).Cmp(limit) <= 0 && apart(height, in.Height).Cmp(limit) <= 0 {
		return nil
	}
	return []check.WatchOut{{
		Code: "field/snapped", Level: check.Note,
		Args: words.Args{
			"askedWidth": in.Width, "askedHeight": in.Height, "width": width, "height": height,
		},
		Field: path + ".width", Source: check.CommonPractice,
	}}
}

func apart(a, b length.Length) length.Length {
	return length.Max(a.Sub(b), b.Sub(a))
}
