package engine_test

import (
	"math"
	"testing"

	"blockfield/engine"
	"blockfield/engine/design"
	"blockfield/engine/design/designtest"

	"github.com/stretchr/testify/assert"
)

// The cards of a job glue what the bill glues, with the glue that it buys, and take
// from the bins what was planned to be cut.
func TestCardsAndBillAgree(t *testing.T) {
	for _, name := range []string{"s1", "s2", "s3", "s4", "s5", "s6", "s7", "s8", "p1", "p2"} {
		d := designtest.Job(t, name)
		r := plan(t, d)
		cards := r.Layup(d, design.BottomEdge)
		blocks, grams, longest := 0, 0.0, 0
		for _, c := range cards {
			blocks += c.Blocks
			grams += c.Grams
			for _, n := range c.Parts {
				longest = max(longest, n)
			}
		}
		assert.Equal(t, r.Bill.Blocks, blocks, name)
		assert.InDelta(t, r.Bill.GlueKg*1000, grams, 1e-9*math.Max(1, grams), name)
		assert.LessOrEqual(t, longest, r.Bill.BlocksAtATime(d.Bench), name)
		for _, c := range cards {
			assert.Equal(t, c.Set > 0, c.Bin.Wood != "", name)
		}
	}
}

// TestTwoWoodsAreCutAndLaid: of each wood and height as many blocks are needed in its
// sticks as the cards lay, each card says as many as its cells are, and the price rises
// with the finer wood.
func TestTwoWoodsAreCutAndLaid(t *testing.T) {
	for _, mixed := range []string{"", design.MixedEveryOther, design.MixedAtRandom} {
		for _, name := range []string{"s1", "s4", "s7"} { // bare cells, several panels, walnut already
			one := design.Document{Design: designtest.Job(t, name)}
			d := designtest.TwoWoods(one, mixed).Design
			r := plan(t, d)
			type bin struct {
				wood, height string
			}
			needed, laid, spelt := map[bin]int{}, map[bin]int{}, map[bin]int{}
			for _, lot := range r.Bill.Lots {
				assert.Positive(t, lot.Sticks, "%s %s", name, lot.Wood)
				for _, h := range lot.Heights {
					needed[bin{lot.Wood, h.Height.String()}] += h.Need
				}
			}
			for _, c := range r.Layup(d, design.BottomEdge) {
				g := r.Groups[c.Field].Design
				for w, counts := range c.WoodCounts {
					for level, n := range counts {
						if n > 0 && !g.Heights[level].IsZero() {
							laid[bin{g.Woods()[w], g.Heights[level].String()}] += n
						}
					}
				}
				for column, level := range c.Levels {
					if h := g.Heights[level]; !h.IsZero() {
						spelt[bin{g.Woods()[c.WoodOf(column)], h.String()}]++
					}
				}
			}
			assert.Len(t, r.Bill.Lots, 2, "%s %s", name, mixed)
			assert.Equal(t, needed, laid, "%s %s", name, mixed)
			assert.Equal(t, needed, spelt, "%s %s", name, mixed)

			plain := plan(t, one.Design)
			assert.Equal(t, plain.Bill.Blocks, r.Bill.Blocks)
			assert.NotEqual(t, plain.Mass.TotalKg, r.Mass.TotalKg, name)
			if name == "s1" { // pine, with walnut
				assert.Greater(t, r.Price.Gross.Minor, plain.Price.Gross.Minor)
			}
		}
	}
}

// TestCardsOfOtherWoodsAreOthers: rows that were laid from cards of one wood are stale
// once another wood is mixed in, though heights and levels stay.
func TestCardsOfOtherWoodsAreOthers(t *testing.T) {
	doc := design.Document{Design: designtest.Job(t, "s1")}
	follow := func(d design.Design, rec design.Record) engine.Job {
		return engine.Follow(d, plan(t, d), rec, "")
	}
	job := follow(doc.Design, design.NewRecord())
	rec := job.Ticked(job.Cards[0], true)
	again := follow(doc.Design, rec)
	assert.False(t, again.Panel(again.Cards[0]).Stale)
	mixed := follow(designtest.TwoWoods(doc, "").Design, rec)
	assert.True(t, mixed.Panel(mixed.Cards[0]).Stale)
	assert.Len(t, mixed.Sections, 2, "the sticks of both woods are measured")
	assert.Len(t, mixed.Counts, len(mixed.Plan.Bill.Lots[0].Heights)+len(mixed.Plan.Bill.Lots[1].Heights), "a bin for each wood and height")
}

// About 16 g of glue a row of P2, and the café's rows in two parts: 34 blocks at
// 9 s, of which 210 s are safe. Both from a separate model of the job.
func TestCardsOfWorkedJobs(t *testing.T) {
	d := designtest.Job(t, "p2")
	assert.InDelta(t, 16, plan(t, d).Layup(d, design.BottomEdge)[0].Grams, 0.5)
	d = designtest.Job(t, "s5")
	assert.Equal(t, []int{17, 17}, plan(t, d).Layup(d, design.BottomEdge)[0].Parts)
}
