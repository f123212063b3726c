package design

import (
	"fmt"
	"slices"
	"strconv"

	"blockfield/engine/words"
)

// record holds the rules that compare entries of a job record: each thing stands
// once, and rows are listed as they lie.
func (c *checker) record(r *Record) {
	root := (*at)(nil)
	c.code(r.Lay.Paper, root.field("lay").field("paper"))
	c.code(r.Learn.From, root.field("learn").field("from"))
	c.code(r.Learn.Into, root.field("learn").field("into"))
	unique(c, root.field("bins"), "height", r.Bins, func(b Bin) string {
		return fmt.Sprintf("%s %d %d", b.Wood, b.Size.Nanometres(), b.Height.Nanometres())
	})
	unique(c, root.field("rows"), "panel", r.Rows, func(p Rows) string {
		return fmt.Sprintf("%d.%d.%d", p.Wall, p.Group, p.Panel)
	})
	unique(c, root.field("times"), "task", r.Times, func(t Time) string { return t.Task })
	unique(c, root.field("spent"), "line", r.Spent, func(s Spent) string { return s.Line })
	unique(c, root.field("signOffs"), "check", r.SignOffs, func(s SignOff) string { return s.Check + " " + s.Field })
	c.code(r.Asked.DevicesFor, root.field("asked").field("devicesFor"))
	unique(c, root.field("weighed"), "group", r.Weighed, func(w Weighed) string { return fmt.Sprintf("%d.%d", w.Wall, w.Group) })
	unique(c, root.field("slips"), "number", r.Slips, func(s Slip) string { return strconv.Itoa(s.Number) })
	c.agreed(r, root)
	for i, tool := range r.Tools {
		if slices.Contains(r.Tools[:i], tool) {
			c.add(root.field("tools").item(i), NotUnique, tool, words.Phrase{})
		}
	}
	for i, p := range r.Rows {
		c.downwards(p.Laid, root.field("rows").item(i).field("laid"))
	}
}

// code reports a text that is neither empty nor a code.
func (c *checker) code(text string, p *at) {
	if text != "" && c.clean(p) && !isCode(text) {
		c.add(p, BadCode, text, words.Phrase{Key: "allowed/code"})
	}
}

// downwards reports the first row of a list that does not lie below the one before
// it: rows count from the top.
func (c *checker) downwards(list []int, p *at) {
	for i := 1; i < len(list); i++ {
		if list[i] <= list[i-1] {
			c.add(p.item(i), NotRising, strconv.Itoa(list[i]),
				words.Phrase{Key: "allowed/more-than", Args: words.Args{"low": list[i-1]}})
			return
		}
	}
}
