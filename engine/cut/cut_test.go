package cut_test

import (
	"math/rand/v2"
	"slices"
	"testing"

	"blockfield/engine/cut"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func TestFirstFitByHand(t *testing.T) {
	for _, c := range []struct {
		name   string
		stock  cut.Stock
		pieces []cut.Piece
		want   []cut.Pattern
	}{
		{
			// Bars of 100: 60 leaves 40, which takes the 30 and then 10;
			// the second 60 takes the other 30 and 10; the last 10 goes
			// nowhere but into a new bar.
			"no kerf", cut.Stock{Length: 100},
			[]cut.Piece{{10, 3}, {60, 2}, {30, 2}},
			[]cut.Pattern{
				{Bars: 2, Pieces: []cut.Piece{{60, 1}, {30, 1}, {10, 1}}},
				{Bars: 1, Pieces: []cut.Piece{{10, 1}}, Offcut: 90},
			},
		},
		{
			// 30+1+30+1+30 = 92 of 100; the fourth would end at 123. The
			// cut behind the third leaves 7.
			"kerf", cut.Stock{Length: 100, Kerf: 1},
			[]cut.Piece{{30, 4}},
			[]cut.Pattern{
				{Bars: 1, Pieces: []cut.Piece{{30, 3}}, Offcut: 7},
				{Bars: 1, Pieces: []cut.Piece{{30, 1}}, Offcut: 69},
			},
		},
		{
			// Usable 100 − 10 − 28 = 62: 30+2+30 fits to the hair, and its
			// last cut takes 2 of the tail.
			"trim and tail", cut.Stock{Length: 100, Kerf: 2, EndTrim: 10, Tail: 28},
			[]cut.Piece{{30, 5}},
			[]cut.Pattern{
				{Bars: 2, Pieces: []cut.Piece{{30, 2}}, Offcut: 26},
				{Bars: 1, Pieces: []cut.Piece{{30, 1}}, Offcut: 58},
			},
		},
		{
			// The last cut would end 1 beyond the bar: nothing is left, not −1.
			"last cut runs out", cut.Stock{Length: 101, Kerf: 2},
			[]cut.Piece{{100, 1}},
			[]cut.Pattern{{Bars: 1, Pieces: []cut.Piece{{100, 1}}}},
		},
		{
			// A whole bar needs no cut.
			"whole bar", cut.Stock{Length: 100, Kerf: 5},
			[]cut.Piece{{100, 2}},
			[]cut.Pattern{{Bars: 2, Pieces: []cut.Piece{{100, 1}}}},
		},
		{
			"equal lengths pooled, empty lines ignored", cut.Stock{Length: 100},
			[]cut.Piece{{50, 1}, {30, 0}, {50, 2}},
			[]cut.Pattern{
				{Bars: 1, Pieces: []cut.Piece{{50, 2}}},
				{Bars: 1, Pieces: []cut.Piece{{50, 1}}, Offcut: 50},
			},
		},
		{
			// The 40 fills the first bar of 60, the 35 goes into the second.
			"a run of like bars splits", cut.Stock{Length: 100},
			[]cut.Piece{{60, 3}, {40, 1}, {35, 1}},
			[]cut.Pattern{
				{Bars: 1, Pieces: []cut.Piece{{60, 1}, {40, 1}}},
				{Bars: 1, Pieces: []cut.Piece{{60, 1}, {35, 1}}, Offcut: 5},
				{Bars: 1, Pieces: []cut.Piece{{60, 1}}, Offcut: 40},
			},
		},
		{"nothing", cut.Stock{Length: 100}, []cut.Piece{{30, 0}, {500, 0}}, nil},
	} {
		t.Run(c.name, func(t *testing.T) {
			got, err := cut.FirstFit(c.stock, c.pieces)
			require.NoError(t, err)
			assert.Equal(t, c.want, got.Patterns)
			bars := 0
			for _, p := range c.want {
				bars += p.Bars
			}
			assert.Equal(t, bars, got.Bars)
		})
	}
}

func TestShares(t *testing.T) {
	got, err := cut.FirstFit(cut.Stock{Length: 100}, []cut.Piece{{60, 2}, {30, 1}})
	require.NoError(t, err)
	assert.EqualValues(t, 150, got.Used)
	assert.EqualValues(t, 200, got.Bought)
	assert.InDelta(t, 0.75, got.UsedShare(), 1e-15)
	assert.Zero(t, cut.Layout{}.UsedShare())
}

// The kerf identity n = ⌊(L + k)/(l + k)⌋ for pieces of one length. 96 in bars
// and 3 1/2 in pieces give 26 with a full and with a thin kerf, and so do
// 2440 mm and 90 mm with 3.2 mm; closed form, computed apart from this code.
func TestKerfIdentity(t *testing.T) {
	const um = 1000
	const inch = 25_400 * um
	for _, c := range []struct{ length, kerf, piece int64 }{
		{96 * inch, inch / 8, 7 * inch / 2},
		{96 * inch, 3 * inch / 32, 7 * inch / 2},
		{2_440_000 * um, 3200 * um, 90_000 * um},
	} {
		s := cut.Stock{Length: c.length, Kerf: c.kerf}
		assert.Equal(t, 26, s.MostOf(c.piece))
		one, err := cut.FirstFit(s, []cut.Piece{{c.piece, 26}})
		require.NoError(t, err)
		assert.Equal(t, 1, one.Bars)
		two, err := cut.FirstFit(s, []cut.Piece{{c.piece, 27}})
		require.NoError(t, err)
		assert.Equal(t, 2, two.Bars)
	}
	s := cut.Stock{Length: 100, Kerf: 200}
	assert.Equal(t, 0, s.MostOf(101), "longer than the bar, though the kerf is longer still")
	assert.Equal(t, 1, s.MostOf(100))
	assert.Equal(t, 0, s.MostOf(0))
}

// Every placement equals that of the plain method, piece by piece.
func TestEqualsPieceByPiece(t *testing.T) {
	rng := rand.New(rand.NewPCG(11, 12))
	for i := range 3000 {
		s := cut.Stock{Length: 50 + rng.Int64N(400), Kerf: rng.Int64N(8), EndTrim: rng.Int64N(20), Tail: rng.Int64N(25)}
		var pieces []cut.Piece
		for range 1 + rng.IntN(9) {
			pieces = append(pieces, cut.Piece{Length: 1 + rng.Int64N(s.Longest()), Count: rng.IntN(40)})
		}
		got, err := cut.FirstFit(s, pieces)
		require.NoError(t, err)
		require.Equal(t, pieceByPiece(s, pieces), counted(got), "case %d: %+v %v", i, s, pieces)
		checkLaws(t, s, pieces, got)
	}
}

// pieceByPiece is first fit, longest first, as it is defined: one loop over
// pieces and one over bars. It returns how many bars hold which pieces.
func pieceByPiece(s cut.Stock, pieces []cut.Piece) map[string]int {
	var lengths []int64
	for _, p := range pieces {
		lengths = append(lengths, slices.Repeat([]int64{p.Length}, p.Count)...)
	}
	slices.Sort(lengths)
	slices.Reverse(lengths)
	var bars [][]int64
	var rooms []int64
	for _, l := range lengths {
		i := slices.IndexFunc(rooms, func(r int64) bool { return r >= l+s.Kerf })
		if i < 0 {
			i = len(bars)
			bars, rooms = append(bars, nil), append(rooms, s.Length-s.EndTrim-s.Tail+s.Kerf)
		}
		bars[i], rooms[i] = append(bars[i], l), rooms[i]-l-s.Kerf
	}
	out := map[string]int{}
	for _, b := range bars {
		out[key(b)]++
	}
	return out
}

func counted(l cut.Layout) map[string]int {
	out := map[string]int{}
	for _, p := range l.Patterns {
		out[key(expand(p))] += p.Bars
	}
	return out
}

func expand(p cut.Pattern) []int64 {
	var out []int64
	for _, q := range p.Pieces {
		out = append(out, slices.Repeat([]int64{q.Length}, q.Count)...)
	}
	return out
}

func key(lengths []int64) string {
	b := make([]byte, 0, 4*len(lengths))
	for _, l := range lengths {
		b = append(b, byte(l>>8), byte(l), ' ')
	}
	return string(b)
}

// checkLaws holds what is true of any right plan.
func checkLaws(t *testing.T, s cut.Stock, pieces []cut.Piece, l cut.Layout) {
	t.Helper()
	demand, made := map[int64]int{}, map[int64]int{}
	var used int64
	for _, p := range pieces {
		if p.Count > 0 {
			demand[p.Length] += p.Count
		}
		used += int64(p.Count) * p.Length
	}
	bars := 0
	for _, p := range l.Patterns {
		bars += p.Bars
		var sum, n int64
		for _, q := range p.Pieces {
			made[q.Length] += q.Count * p.Bars
			sum += int64(q.Count) * q.Length
			n += int64(q.Count)
		}
		require.LessOrEqual(t, sum+(n-1)*s.Kerf, s.Length-s.EndTrim-s.Tail, "bar overfull: %+v %+v", s, p)
		require.Equal(t, max(0, s.Length-s.EndTrim-sum-n*s.Kerf), p.Offcut, "%+v %+v", s, p)
	}
	require.Equal(t, demand, made)
	require.Equal(t, used, l.Used)
	require.Equal(t, bars, l.Bars)
	require.Equal(t, int64(bars)*s.Length, l.Bought)
	low, err := cut.LowerBound(s, pieces)
	require.NoError(t, err)
	require.LessOrEqual(t, low, l.Bars)
}

func TestOrderOfDemandDoesNotMatter(t *testing.T) {
	s := cut.Stock{Length: 2400, Kerf: 3, EndTrim: 20, Tail: 150}
	pieces := []cut.Piece{{84, 310}, {55, 318}, {32, 320}, {15, 320}}
	want, err := cut.FirstFit(s, pieces)
	require.NoError(t, err)
	rng := rand.New(rand.NewPCG(7, 7))
	for range 20 {
		rng.Shuffle(len(pieces), func(i, j int) { pieces[i], pieces[j] = pieces[j], pieces[i] })
		before := slices.Clone(pieces)
		got, err := cut.FirstFit(s, pieces)
		require.NoError(t, err)
		require.Equal(t, want, got)
		require.Equal(t, before, pieces, "the caller's pieces stay as they were")
	}
}

func TestRefuses(t *testing.T) {
	ok := cut.Stock{Length: 1000, Kerf: 3, EndTrim: 20, Tail: 150}
	for _, c := range []struct {
		name   string
		stock  cut.Stock
		pieces []cut.Piece
		want   []string
	}{
		{"too long", ok, []cut.Piece{{100, 1}, {831, 1}}, []string{"pieces[1]: length 831 does not fit any bar (allowed up to 830)"}},
		{"all faults at once", ok, []cut.Piece{{900, 1}, {-1, 1}, {100, -2}},
			[]string{"pieces[0]: length 900", "pieces[1]: length -1", "pieces[2]: count -2"}},
		{"too many", ok, []cut.Piece{{100, cut.MaxPieces}, {200, 1}}, []string{"pieces: more than"}},
		{"far too many", ok, slices.Repeat([]cut.Piece{{100, cut.MaxPieces}}, 5), []string{"pieces: more than"}},
		{"no bar", cut.Stock{}, []cut.Piece{{1, 1}}, []string{"stock.length: 0 out of range", "pieces[0]: length 1 does not fit"}},
		{"negative kerf", cut.Stock{Length: 9, Kerf: -1}, nil, []string{"stock.kerf: -1 out of range"}},
		{"nothing but tail", cut.Stock{Length: 100, Kerf: 3, Tail: 100}, []cut.Piece{{1, 1}}, []string{"allowed up to 0"}},
		{"huge", cut.Stock{Length: cut.MaxLength + 1}, nil, []string{"stock.length"}},
	} {
		_, err := cut.FirstFit(c.stock, c.pieces)
		_, lowErr := cut.LowerBound(c.stock, c.pieces)
		for _, want := range c.want {
			assert.ErrorContains(t, err, want, c.name)
			assert.ErrorContains(t, lowErr, want, c.name)
		}
	}
	_, err := cut.FirstFit(ok, []cut.Piece{{100, 1}, {831, 1}})
	var p *cut.PieceError
	require.ErrorAs(t, err, &p)
	assert.Equal(t, cut.PieceError{Index: 1, Length: 831, Longest: 830}, *p)
}

func TestLowerBoundByHand(t *testing.T) {
	low := func(s cut.Stock, p ...cut.Piece) int {
		n, err := cut.LowerBound(s, p)
		require.NoError(t, err)
		return n
	}
	assert.Equal(t, 0, low(cut.Stock{Length: 10, Tail: 10}))
	assert.Equal(t, 1, low(cut.Stock{Length: 100}, cut.Piece{Length: 50, Count: 2}))
	assert.Equal(t, 2, low(cut.Stock{Length: 100}, cut.Piece{Length: 50, Count: 2}, cut.Piece{Length: 1, Count: 1}))
	// 3·(30 + 5) = 105 = 100 + 5 fills a bar to the hair.
	assert.Equal(t, 1, low(cut.Stock{Length: 100, Kerf: 5}, cut.Piece{Length: 30, Count: 3}))
	assert.Equal(t, 2, low(cut.Stock{Length: 100, Kerf: 5}, cut.Piece{Length: 30, Count: 4}))
}

// The largest problem that is accepted stays inside an int64.
func TestLimits(t *testing.T) {
	s := cut.Stock{Length: cut.MaxLength, Kerf: cut.MaxLength}
	got, err := cut.FirstFit(s, []cut.Piece{{cut.MaxLength, cut.MaxPieces}})
	require.NoError(t, err)
	assert.Equal(t, cut.MaxPieces, got.Bars)
	assert.InDelta(t, 1, got.UsedShare(), 0)
	low, err := cut.LowerBound(s, []cut.Piece{{cut.MaxLength, cut.MaxPieces}})
	require.NoError(t, err)
	assert.Equal(t, cut.MaxPieces, low)
}
