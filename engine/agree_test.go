package engine_test

import (
	"crypto/sha256"
	"encoding/hex"
	"flag"
	"fmt"
	"math/rand/v2"
	"os"
	"strings"
	"testing"

	"blockfield/engine"
	"blockfield/engine/design"
	"blockfield/engine/length"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

var update = flag.Bool("update", false, "write the golden file of this test anew")

const agreedFile = "testdata/agreed.txt"

// randomDesign changes what enters money: size, section, heights, wood, board,
// finish, saw, habits of the shop, crew and road.
func randomDesign(r *rand.Rand) design.Design {
	d := design.Default().Design
	g := &d.Walls[0].Groups[0]
	pick := func(all []string) string { return all[r.IntN(len(all))] }
	g.Width, g.Height = length.MM(400+r.Int64N(1600)), length.MM(400+r.Int64N(1000))
	g.Block.Size = length.Micrometres(25_000 + 100*r.Int64N(300))
	h := length.MM(10 + r.Int64N(20))
	for i := range g.Heights {
		g.Heights[i] = h
		h = h.Add(length.Micrometres(5_000 + 100*r.Int64N(200)))
	}
	g.Pattern.Seed, g.Pattern.Clump = r.Int64N(1000), 1+r.IntN(4)
	g.Wood, g.Frame.Wood = pick(design.Woods()), pick(design.Woods())
	g.Backer.Sheet = pick(design.Sheets())
	g.Finish.Kind, g.Finish.Coats = pick(design.Finishes()), 1+r.IntN(3)
	d.Bench.Kerf = length.Micrometres(1_500 + 100*r.Int64N(20))
	d.Bench.Defects = float64(r.IntN(20))
	d.Bench.Gang, d.Bench.WoodTimes, d.Bench.Fatigue = 1+r.IntN(6), r.IntN(2) == 0, r.IntN(2) == 0
	d.Work.Crew, d.Work.DistanceKm = 1+r.IntN(3), float64(r.IntN(120))
	d.Money.Discount, d.Money.Tax = float64(r.IntN(10)), 19.6
	return d
}

// Money in words: every line and every sum, to the cent.
func moneyOf(r engine.Result) string {
	var b strings.Builder
	for _, l := range r.Price.Lines {
		fmt.Fprintf(&b, "%s %s;", l.Key, l.Amount.Plain())
	}
	p := r.Price
	fmt.Fprintf(&b, "%s %s %s %s %s %s", p.Cost.Plain(), p.Net.Plain(), p.Tax.Plain(), p.Gross.Plain(), p.Low.Plain(), p.High.Plain())
	for _, s := range p.Stages {
		fmt.Fprintf(&b, " %s", s.Amount.Plain())
	}
	return b.String()
}

// The last bits of floating point differ between processors and WebAssembly.
// This test runs on both (make test-wasm) against one file, so that both agree
// to the cent on a thousand random designs.
func TestProcessorAndBrowserAgreeToTheCent(t *testing.T) {
	r := rand.New(rand.NewPCG(20, 26))
	var b strings.Builder
	for i := range 1000 {
		got := moneyOf(plan(t, randomDesign(r)))
		sum := sha256.Sum256([]byte(got))
		fmt.Fprintf(&b, "%d %s\n", i, hex.EncodeToString(sum[:8]))
	}
	if *update {
		require.NoError(t, os.WriteFile(agreedFile, []byte(b.String()), 0o644))
	}
	want, err := os.ReadFile(agreedFile)
	require.NoError(t, err)
	assert.Equal(t, string(want), b.String())
}
