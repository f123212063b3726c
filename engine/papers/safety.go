package papers

import (
	"slices"

	"blockfield/engine/papers/sheet"
)

// irritating are the woods of the shop whose dust is known to trouble skin and
// breath. Common practice, no source; the makers of masks and the local rules say
// more.
func irritating() []string { return []string{"cedar", "walnut", "oak", "beech"} }

// safety is the page of cautions for saw, dust, glue, finish, lifting and wall.
func (m *maker) safety() sheet.Paper {
	blocks := []sheet.Block{sheet.Say(m.T("safety/lead"))}
	column := func(parts ...string) []sheet.Block {
		var all []sheet.Block
		for _, part := range parts {
			all = append(all, sheet.Heading(m.T("safety/"+part)), sheet.List{Mark: sheet.Ticks, Size: m.either(3.8, 3.3), Items: m.safetyItems(part)})
		}
		return all
	}
	blocks = append(blocks, sheet.Beside{Shares: []float64{1, 1}, Columns: [][]sheet.Block{
		column("saw", "vibration", "lift"), column("dust", "glue", "wall"),
	}})
	blocks = append(blocks, m.cautions("bench/short", "bench/tiny", "bench/sanding-time", "bench/oily-rags")...)
	blocks = append(blocks, sheet.Notice{Lead: m.T("safety/briefed"), Text: m.T("safety/briefed-text"), Blanks: m.signature()})
	return m.paper("safety", sheet.NoView, blocks...)
}

func (m *maker) safetyItems(part string) []string {
	say := func(keys ...string) []string {
		all := make([]string, len(keys))
		for i, k := range keys {
			all[i] = m.T("safety/" + k)
		}
		return all
	}
	switch part {
	case "saw":
		return say("saw-hands", "saw-carrier", "saw-offcut", "saw-gang")
	case "dust":
		items := say("dust-draw", "dust-mask")
		for _, lot := range m.Plan.Bill.Lots {
			if slices.Contains(irritating(), lot.Wood) {
				items = append(items, m.T("safety/dust-wood", "wood", m.wood(lot.Wood)))
			}
		}
		if len(items) == 2 {
			items = append(items, m.T("safety/dust-woods"))
		}
		return items
	case "vibration":
		return say("vibration-hours", "vibration-pause")
	case "glue":
		return say("glue-skin", "glue-air", "glue-rags")
	case "lift":
		return say("lift-people", "lift-path", "lift-ladder")
	default:
		return say("wall-trace", "wall-under", "wall-lock")
	}
}
