package cli

import (
	"bytes"
	"context"
	"errors"
	"flag"
	"fmt"

	"github.com/go-json-experiment/json"
	"github.com/go-json-experiment/json/jsontext"

	"blockfield/engine/cut"
)

// visitSteps is what the second stage, fewer stop visits, may use.
const visitSteps = 50_000_000

// maxMore is how many boards more than the fewest a curve may go.
const maxMore = 20

// errNoProblem is said of an empty file, and of a standard input on which nothing
// comes.
var errNoProblem = errors.New("nothing came (allowed a cutting problem as JSON)")

// cutBars plans how to cut pieces from bars.
func cutBars(_ context.Context, args []string, s Streams) (int, error) {
	flags := flag.NewFlagSet("cut", flag.ContinueOnError)
	more := flags.Int("more", 0, "")
	steps := flags.Int64("steps", cut.ThoroughSteps, "")
	names, err := parse(flags, args)
	if err != nil {
		return badInput, err
	}
	if len(names) != 1 {
		return badInput, errUsage
	}
	if *more < 0 || *more > maxMore {
		return badInput, fmt.Errorf("-more: %d out of range (allowed 0 to %d)", *more, maxMore)
	}
	if *steps < 0 || *steps > cut.ThoroughSteps {
		return badInput, fmt.Errorf("-steps: %d out of range (allowed 0 to %d)", *steps, int64(cut.ThoroughSteps))
	}
	body, err := readInput(names[0], s)
	if err != nil {
		return badInput, err
	}
	if len(bytes.TrimSpace(body)) == 0 {
		return badInput, located(names[0], errNoProblem)
	}
	order, err := readOrder(body)
	if err != nil {
		return badInput, located(names[0], err)
	}
	out, err := order.solve(*steps, *more)
	if err != nil {
		return badInput, located(names[0], err)
	}
	text, err := json.Marshal(out, jsontext.WithIndent("  "))
	if err != nil {
		return badInput, err
	}
	return done, writeOutput(streamName, escaped(append(text, '\n')), s)
}

// cutPlan is what the command prints. Lengths are written as they were read; cost
// and bound are numbers.
type cutPlan struct {
	Boards     []cutBoard `json:"boards"`
	BoardCount int        `json:"boardCount"`
	// Minimised is what the plan has as little of as possible, and what Bound is
	// in: "cost", "boards" or, where cost is wanted and no bar has a price,
	// "length".
	Minimised string `json:"minimised"`
	// Cost is a number in the unit of the prices; without prices it is the length
	// of all bars, in millimetres or in the unit of lengths that are whole numbers.
	Cost jsontext.Value `json:"cost"`
	// Bound is a number that no plan is below: of boards, or in the unit of Cost.
	Bound       jsontext.Value `json:"bound"`
	Proven      bool           `json:"proven"` // this plan has no more than the bound
	Visits      int            `json:"visits"`
	LeastVisits int            `json:"leastVisits"`
	UsedPercent float64        `json:"usedPercent"`
	Curve       []cutHandling  `json:"curve,omitempty"`
}

type cutBoard struct {
	Stock  string     `json:"stock"`
	Count  int        `json:"count"`
	Pieces []cutPiece `json:"pieces"`
	Offcut any        `json:"offcut"`
}

type cutPiece struct {
	Length any `json:"length"`
	Count  int `json:"count"`
}

// cutHandling is what a board more saves in visits.
type cutHandling struct {
	BoardCount  int            `json:"boardCount"`
	Cost        jsontext.Value `json:"cost"`
	Visits      int            `json:"visits"`
	LeastVisits int            `json:"leastVisits"`
}

// solve plans the cuts, then the fewest visits with the same boards.
func (o *order) solve(steps int64, more int) (cutPlan, error) {
	plan, err := cut.Solve(o.problem, steps)
	if err != nil {
		return cutPlan{}, o.explain(err)
	}
	curve, err := cut.FewestVisits(o.problem, plan, more, min(steps, visitSteps))
	if err != nil {
		return cutPlan{}, err
	}
	out := cutPlan{Boards: []cutBoard{}, Minimised: o.minimised(), Proven: plan.Proven, UsedPercent: percent(plan.UsedShare())}
	if out.Bound = decimal(plan.Bound, 0); o.problem.Goal == cut.Cost {
		out.Bound = o.money(plan.Bound)
	}
	if len(curve) > 0 {
		plan, out.LeastVisits = curve[0].Plan, curve[0].Least
	}
	out.BoardCount, out.Cost, out.Visits = plan.BoardCount, o.money(plan.Cost), plan.Visits
	for _, b := range plan.Boards {
		board := cutBoard{Stock: o.problem.Bars[b.Bar].Name, Count: b.Count, Offcut: o.text(b.Offcut, o.notations[b.Bar])}
		for _, p := range b.Pieces {
			board.Pieces = append(board.Pieces, cutPiece{o.written[p.Length], p.Count})
		}
		out.Boards = append(out.Boards, board)
	}
	if more > 0 {
		for _, h := range curve {
			out.Curve = append(out.Curve, cutHandling{h.Plan.BoardCount, o.money(h.Plan.Cost), h.Plan.Visits, h.Least})
		}
	}
	return out, nil
}

// explain says in the words of the file what the planner found wrong.
func (o *order) explain(err error) error {
	if p, ok := errors.AsType[*cut.PieceError](err); ok {
		longest := o.text(p.Longest, o.notations[0])
		return fmt.Errorf("pieces[%d].length: %v does not fit any stock (allowed up to %v)", p.Index, o.written[p.Length], longest)
	}
	if errors.Is(err, cut.ErrSupply) {
		return errors.New("stock: no plan was found with the bars available (allowed: more of them, or longer ones)")
	}
	return err
}

// percent is a share in percent to one digit.
func percent(share float64) float64 { return float64(int(share*1000+0.5)) / 10 }
