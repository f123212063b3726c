package cut_test

import (
	"math/rand/v2"
	"slices"
	"testing"

	"blockfield/engine/cut"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// checkPlan holds what is true of any right plan, computed from the problem
// alone.
func checkPlan(t *testing.T, p cut.Problem, plan cut.Plan) {
	t.Helper()
	demand, made := map[int64]int{}, map[int64]int{}
	for _, piece := range p.Pieces {
		if piece.Count > 0 {
			demand[piece.Length] += piece.Count
		}
	}
	taken := map[int]int{}
	var cost, bought, used int64
	boards, visits := 0, 0
	for _, b := range plan.Boards {
		require.Positive(t, b.Count)
		bar := p.Bars[b.Bar]
		taken[b.Bar] += b.Count
		boards += b.Count
		cost += int64(b.Count) * bar.Price
		bought += int64(b.Count) * bar.Length
		visits += b.Count * (len(b.Pieces) - 1)
		var sum, n int64
		for i, piece := range b.Pieces {
			require.Positive(t, piece.Count)
			require.True(t, i == 0 || piece.Length < b.Pieces[i-1].Length, "longest first, each length once")
			made[piece.Length] += piece.Count * b.Count
			sum += int64(piece.Count) * piece.Length
			n += int64(piece.Count)
		}
		used += sum * int64(b.Count)
		require.Positive(t, n)
		require.LessOrEqual(t, sum+(n-1)*p.Kerf, bar.Length-p.EndTrim-p.Tail, "bar overfull: %+v %+v", p, b)
		require.Equal(t, max(0, bar.Length-p.EndTrim-sum-n*p.Kerf), b.Offcut)
	}
	require.Equal(t, demand, made, "demand is met exactly")
	for i, n := range taken {
		if p.Bars[i].Limited {
			require.LessOrEqual(t, n, p.Bars[i].Available)
		}
	}
	require.Equal(t, boards, plan.BoardCount)
	require.Equal(t, cost, plan.Cost)
	require.Equal(t, bought, plan.Bought)
	require.Equal(t, used, plan.Used)
	require.Equal(t, visits, plan.Visits)
	got := cost
	if p.Goal == cut.Boards {
		got = int64(boards)
	}
	require.LessOrEqual(t, plan.Bound, got)
	require.Equal(t, plan.Proven, plan.Bound == got)
}

// randomProblem is small enough for exhaustive search.
func randomProblem(rng *rand.Rand) cut.Problem {
	p := cut.Problem{Kerf: rng.Int64N(4), EndTrim: rng.Int64N(4), Tail: rng.Int64N(6), Goal: cut.Goal(rng.IntN(2))}
	for range 1 + rng.IntN(3) {
		b := cut.Bar{Length: 25 + rng.Int64N(60), Price: 1 + rng.Int64N(30)}
		if rng.IntN(3) == 0 {
			b.Limited, b.Available = true, rng.IntN(4)
		}
		p.Bars = append(p.Bars, b)
	}
	for range 1 + rng.IntN(4) {
		p.Pieces = append(p.Pieces, cut.Piece{Length: 3 + rng.Int64N(30), Count: rng.IntN(3)})
	}
	return p
}

// exhaustive tries every way to put the pieces into bars, one piece after the
// other; it shares nothing with the planner. It returns −1 where there is none.
func exhaustive(p cut.Problem) int64 {
	var lengths []int64
	for _, piece := range p.Pieces {
		lengths = append(lengths, slices.Repeat([]int64{piece.Length}, piece.Count)...)
	}
	best := int64(-1)
	taken := make([]int, len(p.Bars))
	var left []int64
	var visit func(i int, cost int64)
	visit = func(i int, cost int64) {
		if best >= 0 && cost >= best {
			return
		}
		if i == len(lengths) {
			best = cost
			return
		}
		for j := range left {
			if room := left[j]; room >= p.Kerf+lengths[i] {
				left[j] -= p.Kerf + lengths[i]
				visit(i+1, cost)
				left[j] = room
			}
		}
		for k, b := range p.Bars {
			if b.Limited && taken[k] == b.Available || b.Length-p.EndTrim-p.Tail < lengths[i] {
				continue
			}
			price := b.Price
			if p.Goal == cut.Boards {
				price = 1
			}
			taken[k]++
			left = append(left, b.Length-p.EndTrim-p.Tail-lengths[i])
			visit(i+1, cost+price)
			left = left[:len(left)-1]
			taken[k]--
		}
	}
	visit(0, 0)
	return best
}

func goalOf(p cut.Problem, plan cut.Plan) int64 {
	if p.Goal == cut.Boards {
		return int64(plan.BoardCount)
	}
	return plan.Cost
}

func TestSolveEqualsExhaustiveSearch(t *testing.T) {
	rng := rand.New(rand.NewPCG(21, 22))
	proven, short := 0, 0
	const cases = 1500
	for i := range cases {
		p := randomProblem(rng)
		plan, err := cut.Solve(p, cut.QuickSteps*20)
		want := exhaustive(p)
		if want < 0 {
			require.Error(t, err, "case %d: %+v", i, p)
			short++
			continue
		}
		require.NoError(t, err, "case %d: %+v", i, p)
		checkPlan(t, p, plan)
		require.LessOrEqual(t, plan.Bound, want, "case %d: %+v", i, p)
		require.Equal(t, want, goalOf(p, plan), "case %d: %+v", i, p)
		if plan.Proven {
			proven++
		}
	}
	assert.Greater(t, proven, (cases-short)*95/100, "proven")
	assert.Greater(t, short, 50, "problems without a plan")
}

func TestSolveOrderDoesNotMatter(t *testing.T) {
	p := threeLengths()
	want, err := cut.Solve(p, cut.ThoroughSteps)
	require.NoError(t, err)
	rng := rand.New(rand.NewPCG(3, 4))
	for range 10 {
		rng.Shuffle(len(p.Pieces), func(i, j int) { p.Pieces[i], p.Pieces[j] = p.Pieces[j], p.Pieces[i] })
		rng.Shuffle(len(p.Bars), func(i, j int) { p.Bars[i], p.Bars[j] = p.Bars[j], p.Bars[i] })
		got, err := cut.Solve(p, cut.ThoroughSteps)
		require.NoError(t, err)
		checkPlan(t, p, got)
		for i := range got.Boards {
			assert.Equal(t, p.Bars[got.Boards[i].Bar].Length, threeLengths().Bars[want.Boards[i].Bar].Length)
			assert.Equal(t, want.Boards[i].Pieces, got.Boards[i].Pieces)
			assert.Equal(t, want.Boards[i].Count, got.Boards[i].Count)
		}
	}
}

// threeLengths is a job in blocks of six heights from three lengths of bar.
func threeLengths() cut.Problem {
	return cut.Problem{
		Bars: []cut.Bar{
			{Name: "1.8 m", Length: 18000, Price: 415}, {Name: "2.4 m", Length: 24000, Price: 560}, {Name: "3 m", Length: 30000, Price: 690},
		},
		Kerf: 32, EndTrim: 200, Tail: 1500,
		Pieces: []cut.Piece{{150, 330}, {260, 340}, {420, 350}, {640, 320}, {780, 340}, {920, 320}},
	}
}

// More bars at hand never make the best plan dearer, and neither does a
// shorter tail or a thinner saw.
func TestSolveMoreNeverCostsMore(t *testing.T) {
	rng := rand.New(rand.NewPCG(31, 32))
	for i := range 400 {
		p := randomProblem(rng)
		one, err := cut.Solve(p, cut.QuickSteps*20)
		if err != nil {
			continue
		}
		more := p
		more.Bars = slices.Clone(p.Bars)
		switch j := rng.IntN(len(p.Bars)); rng.IntN(4) {
		case 0:
			more.Bars[j].Available += 2
		case 1:
			more.Bars = append(more.Bars, cut.Bar{Length: 20 + rng.Int64N(40), Price: 1 + rng.Int64N(20)})
		case 2:
			more.Tail = max(0, p.Tail-2)
		default:
			more.Kerf = max(0, p.Kerf-1)
		}
		two, err := cut.Solve(more, cut.QuickSteps*20)
		require.NoError(t, err)
		require.LessOrEqual(t, goalOf(more, two), goalOf(p, one), "case %d: %+v %+v", i, p, more)
	}
}

// First fit needs a third bar for these: 5+4, 4+3+2, 2. Only 5+3+2 and 4+4+2
// make do with the two bars at hand.
func TestSolveWhereFirstFitRunsOut(t *testing.T) {
	p := cut.Problem{
		Bars: []cut.Bar{
			{Name: "a", Length: 10, Price: 100, Limited: true, Available: 1}, {Name: "b", Length: 10, Price: 200, Limited: true, Available: 1},
		},
		Pieces: []cut.Piece{{5, 1}, {4, 2}, {3, 1}, {2, 2}},
	}
	plan, err := cut.Solve(p, cut.QuickSteps)
	require.NoError(t, err)
	checkPlan(t, p, plan)
	assert.EqualValues(t, 300, plan.Cost)
	assert.True(t, plan.Proven)
	p.Pieces = append(p.Pieces, cut.Piece{Length: 1, Count: 1})
	_, err = cut.Solve(p, cut.QuickSteps)
	assert.ErrorIs(t, err, cut.ErrSupply)
}

// With hardly any steps there is still a plan, no worse than first fit from any
// one kind of bar, and its bound still holds.
func TestSolveNeverWorseThanFirstFit(t *testing.T) {
	rng := rand.New(rand.NewPCG(41, 42))
	for _, steps := range []int64{0, 1, 1000, 20_000, 100_000, cut.QuickSteps} {
		for range 40 {
			p := threeLengths()
			p.Goal = cut.Goal(rng.IntN(2))
			for i := range p.Pieces {
				p.Pieces[i] = cut.Piece{Length: 100 + rng.Int64N(2000), Count: rng.IntN(60)}
			}
			plan, err := cut.Solve(p, steps)
			require.NoError(t, err)
			checkPlan(t, p, plan)
			for _, b := range p.Bars {
				fit, err := cut.FirstFit(cut.Stock{Length: b.Length, Kerf: p.Kerf, EndTrim: p.EndTrim, Tail: p.Tail}, p.Pieces)
				require.NoError(t, err)
				want := int64(fit.Bars)
				if p.Goal == cut.Cost {
					want *= b.Price
				}
				require.LessOrEqual(t, goalOf(p, plan), want)
			}
		}
	}
}
