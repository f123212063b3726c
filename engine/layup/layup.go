// Package layup makes the row cards of a job: what a maker needs at hand while the
// blocks of one row after another are glued to the backer.
//
// A panel is laid face up, and a card shows it from the front, top up: columns from
// left to right. Rows carry the numbers of the field, from 1 at the top; the cards of
// a panel begin at the start edge, where the straight-edge is fixed, and go on to the
// other end. Panels follow one another in the order of the design.
//
// A row is glued in parts where the glue would skin before it is full: as few parts
// as that takes, as even as they come, the longer ones first. Cells of bare backer
// are held open by loose blocks of the same section while the glue grabs. Those of a
// row are pulled when the next row is pressed, so that they hold that one too; the
// last two rows of a panel are pulled together. The bins lend them; where a bin has
// none to lend, off-cuts of the same section do.
package layup

import (
	"math"

	"blockfield/engine/design"
	"blockfield/engine/field"
	"blockfield/engine/length"
	"blockfield/engine/measure"
)

// Field is one group of panels as it is laid.
type Field struct {
	Group         design.Group
	Panels        []field.Grid
	Woods         [][]uint8 // of each panel's cells, which of the group's woods; nil where there is one alone
	GramsPerBlock float64   // of glue
}

// Bin is where the blocks of one height lie, for all groups that take blocks of the
// same wood and section.
type Bin struct {
	Wood         string
	Size, Height length.Length
}

// key tells bins apart, however their lengths are written.
type key struct {
	wood           string
	sizeNM, highNM int64
}

func (b Bin) key() key { return key{b.Wood, b.Size.Nanometres(), b.Height.Nanometres()} }

// Way is how a job is laid.
type Way struct {
	Start  string        // design.TopEdge or design.BottomEdge
	AtOnce int           // blocks that may be glued before the first ones skin; 0: a whole row, however long
	Good   func(Bin) int // blocks in a bin when lay-up begins
}

// Card is one row.
type Card struct {
	Field, Panel int     // from 0: which of the fields, and which of its panels
	Row          int     // of the field, from 0 at the top
	Order        int     // of the cards of its panel, from 1 at the start edge
	Rows         int     // of its panel
	Levels       []uint8 // of the cells, from the left
	Woods        []uint8 // of the cells, which of the group's woods; nil where there is one alone
	Counts       []int   // cells of each level, bare ones with level 0 if that has no height
	WoodCounts   [][]int // the same by wood, in the order of design.Group.Woods
	Blocks       int     // to glue
	Grams        float64 // of glue
	Parts        []int   // blocks that are glued at a time
	Ends         []int   // columns after which the parts end; the last is the last column
	Set          int     // loose blocks to set in this row
	Bin          Bin     // that they come out of; empty where none is set
	Lacking      int     // of them: the bin has no more to lend
	Pull         int     // loose blocks to pull once the row is pressed
	Measure      bool    // the distance is to be measured now
	// Distance is from the start edge to the far face of the row.
	Distance length.Length
}

// Lay makes the cards of a job, in the order of work.
func Lay(fields []Field, way Way) []Card {
	var cards []Card
	for f, work := range fields {
		for p := range work.Panels {
			cards = append(cards, panelCards(work, way, f, p)...)
		}
	}
	lend(fields, cards, way.Good)
	return cards
}

// panelCards are the cards of one panel.
func panelCards(work Field, way Way, f, p int) []Card {
	grid := work.Panels[p]
	cards := make([]Card, grid.Rows)
	for i := range cards {
		row := i
		if way.Start != design.TopEdge {
			row = grid.Rows - 1 - i
		}
		c := card(work, p, row, way.AtOnce)
		c.Field, c.Panel, c.Order = f, p, i+1
		c.Distance = measure.Reach(c.Order, work.Group.Block.Size, work.Group.Block.Slack)
		c.Measure = c.Order%measure.Every == 0 || c.Order == c.Rows
		if i > 0 {
			c.Pull = cards[i-1].Set
		}
		cards[i] = c
	}
	if last := len(cards) - 1; last >= 0 {
		cards[last].Pull += cards[last].Set
	}
	return cards
}

// card is one row by itself.
func card(work Field, p, row, atOnce int) Card {
	grid := work.Panels[p]
	from, to := row*grid.Columns, (row+1)*grid.Columns
	c := Card{
		Row: row, Rows: grid.Rows, Counts: make([]int, len(work.Group.Heights)),
		Levels: grid.Levels[from:to],
	}
	if len(work.Woods) > 0 && work.Woods[p] != nil {
		c.Woods = work.Woods[p][from:to]
	}
	for range work.Group.Woods() {
		c.WoodCounts = append(c.WoodCounts, make([]int, len(work.Group.Heights)))
	}
	for column, level := range c.Levels {
		c.Counts[level]++
		c.WoodCounts[c.WoodOf(column)][level]++
		if work.bare(level) {
			c.Set++
		}
	}
	c.Blocks = len(c.Levels) - c.Set
	c.Grams = float64(c.Blocks) * work.GramsPerBlock
	c.Parts = parts(c.Blocks, atOnce)
	c.Ends = c.ends(work)
	return c
}

// WoodOf is which of the group's woods the block of a column is of.
func (c Card) WoodOf(column int) uint8 {
	if c.Woods == nil {
		return 0
	}
	return c.Woods[column]
}

// bare reports whether cells of a level stay empty.
func (f Field) bare(level uint8) bool { return f.Group.Heights[level].IsZero() }

// parts splits n into the fewest parts of at most so many, the longer ones first.
func parts(n, most int) []int {
	if most == 0 {
		most = max(n, 1)
	}
	count := (n + most - 1) / most
	all := make([]int, count)
	for i := range all {
		all[i] = n / count
		if i < n%count {
			all[i]++
		}
	}
	return all
}

// ends are the columns after which the parts of a row end.
func (c Card) ends(work Field) []int {
	var all []int
	glued, upTo := 0, 0
	for column, level := range c.Levels {
		if work.bare(level) {
			continue
		}
		glued++
		if part := len(all); part < len(c.Parts) && glued == upTo+c.Parts[part] {
			upTo = glued
			all = append(all, column+1)
		}
	}
	if len(all) > 0 {
		all[len(all)-1] = len(c.Levels) // bare cells behind the last block
	}
	return all
}

// WholeGrams is the glue of a card in whole grams, enough of it.
func (c Card) WholeGrams() int { return int(math.Ceil(c.Grams)) }
