package engine_test

import (
	"fmt"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"blockfield/engine"
	"blockfield/engine/bench"
	"blockfield/engine/design"
	"blockfield/engine/design/designtest"
)

// TestOriginsFollowTheCuttingPlan: each block comes from a piece that the plan cuts
// to its height, no piece goes to two blocks, and a bare cell has none.
func TestOriginsFollowTheCuttingPlan(t *testing.T) {
	for _, name := range []string{"s1", "s3", "s7", "s8", "two woods"} { // bare cells, several panels
		d := designtest.Job(t, strings.Replace(name, "two woods", "s7", 1))
		if name == "two woods" {
			d = designtest.TwoWoods(design.Document{Design: d}, design.MixedAtRandom).Design
		}
		plan := plan(t, d)
		used := map[string]bool{}
		blocks := 0
		for i, panels := range plan.Origins() {
			g := plan.Groups[i]
			for j, cells := range panels {
				for k, from := range cells {
					height := g.Design.Heights[g.Built.Panels[j].Grid.Levels[k]]
					if height.IsZero() {
						require.Equal(t, engine.Origin{}, from, "%s: bare", name)
						continue
					}
					lot := lotOf(t, plan, g, g.Built.Panels[j].WoodOf(k))
					require.Equal(t, height.Nanometres(), pieceOf(lot, from), "%s: %v", name, from)
					one := fmt.Sprint(lot.Wood, lot.Size, from)
					require.False(t, used[one], "%s: %s goes to two blocks", name, one)
					used[one] = true
					blocks++
				}
			}
		}
		assert.Equal(t, plan.Bill.Blocks, blocks, name)
		assert.Equal(t, plan.Origins(), plan.Origins(), "always in the same way")
	}
}

func lotOf(t *testing.T, plan engine.Result, g engine.Group, wood uint8) bench.Lot {
	t.Helper()
	for _, lot := range plan.Bill.Lots {
		if lot.Wood == g.Design.Woods()[wood] && lot.Size.Same(g.Design.Block.Size) {
			return lot
		}
	}
	t.Fatalf("no lot for %s", g.Path)
	return bench.Lot{}
}

// pieceOf is the length of a piece of a stick by the plan.
func pieceOf(lot bench.Lot, o engine.Origin) int64 {
	stick := o.Stick
	for _, board := range lot.Cuts.Boards {
		if stick > board.Count {
			stick -= board.Count
			continue
		}
		piece := o.Piece
		for _, p := range board.Pieces {
			if piece <= p.Count {
				return p.Length
			}
			piece -= p.Count
		}
	}
	return 0
}
