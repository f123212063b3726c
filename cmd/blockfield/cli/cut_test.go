package cli_test

import (
	"encoding/json"
	"os"
	"path/filepath"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// cutOut is what the command promises to print.
type cutOut struct {
	Boards []struct {
		Stock  string
		Count  int
		Pieces []struct {
			Length any
			Count  int
		}
		Offcut any
	}
	BoardCount  int
	Minimised   string
	Cost, Bound json.Number
	Proven      bool
	Visits      int
	LeastVisits int
	UsedPercent float64
	Curve       []struct {
		BoardCount, Visits, LeastVisits int
		Cost                            json.Number
	}
}

func runCut(t *testing.T, problem string, args ...string) cutOut {
	t.Helper()
	got := run(t, problem, append([]string{"cut", "-"}, args...)...)
	require.Equal(t, 0, got.code, got.err)
	require.Empty(t, got.err)
	var out cutOut
	d := json.NewDecoder(strings.NewReader(got.out))
	d.DisallowUnknownFields()
	require.NoError(t, d.Decode(&out))
	return out
}

// Worked by hand. A bar of 100 mm holds 60 + 30, 3·30, or 60 + 30; five 30 and
// two 60 take 2 + 1 bars: 60+30, 60+30, 30+30+30. At 2 mm a cut, three 30 take
// 94 of 100.
func TestCutByHand(t *testing.T) {
	t.Parallel()
	out := runCut(t, `{"kerf":"2 mm","stock":[{"name":"short","length":"100 mm","price":"1.25"}],
		"pieces":[{"length":"30 mm","count":5},{"length":"6 cm","count":2}],"minimise":"boards"}`)
	assert.Equal(t, 3, out.BoardCount)
	assert.EqualValues(t, "3.75", out.Cost)
	assert.EqualValues(t, "3", out.Bound)
	assert.Equal(t, "boards", out.Minimised)
	assert.True(t, out.Proven)
	assert.Equal(t, 2, out.Visits)
	assert.Equal(t, 2, out.LeastVisits)
	assert.Equal(t, 90.0, out.UsedPercent)
	require.Len(t, out.Boards, 2)
	assert.Equal(t, "short", out.Boards[0].Stock)
	assert.Equal(t, 2, out.Boards[0].Count)
	assert.Equal(t, "6 cm", out.Boards[0].Pieces[0].Length, "as it was written")
	assert.Equal(t, "6 mm", out.Boards[0].Offcut)
	assert.Equal(t, "4 mm", out.Boards[1].Offcut)
}

// Trim and tail leave 830 mm of 1 m; a kerf of 10 then lets 8·93 + 7·10 = 814
// through and not nine.
func TestCutTrimAndTail(t *testing.T) {
	t.Parallel()
	const problem = `{"kerf":10,"trim":20,"tail":150,"stock":[{"length":1000}],"pieces":[{"length":93,"count":17}]}`
	out := runCut(t, problem)
	assert.Equal(t, 3, out.BoardCount)
	assert.EqualValues(t, "3000", out.Cost, "without prices the cost is the length")
	assert.EqualValues(t, "3000", out.Bound)
	assert.Equal(t, "length", out.Minimised, "and the answer says so")
	assert.Equal(t, "1000", out.Boards[0].Stock, "without a name the length is the name")
	assert.EqualValues(t, 93, out.Boards[0].Pieces[0].Length)
	assert.Equal(t, 2, runCut(t, strings.ReplaceAll(problem, `"tail":150`, `"tail":50`)).BoardCount)
	sixteen := strings.ReplaceAll(problem, `"count":17`, `"count":16`)
	assert.Equal(t, 2, runCut(t, sixteen).BoardCount)
	assert.Equal(t, 3, runCut(t, strings.ReplaceAll(sixteen, `"kerf":10`, `"kerf":20`)).BoardCount)
}

func TestCutSeveralStocks(t *testing.T) {
	t.Parallel()
	const problem = `{"kerf":"0 mm","stock":[{"name":"a","length":"2 m","price":3},{"name":"left over","length":"1 m","price":"0","available":1},
		{"name":"b","length":"1 m","price":"1.6"}],"pieces":[{"length":"900 mm","count":4}],"minimise":"cost"}`
	out := runCut(t, problem)
	// One of the free leftover, then 1.60 + 3.00 against 2 × 3.00 or 3 × 1.60.
	assert.EqualValues(t, "4.6", out.Cost)
	assert.EqualValues(t, "4.6", out.Bound)
	assert.Equal(t, "cost", out.Minimised)
	unpriced := runCut(t, `{"kerf":"0 mm","stock":[{"length":"1/2 in"}],"pieces":[{"length":"1/2 in","count":3}]}`)
	assert.EqualValues(t, "38.1", unpriced.Cost, "in millimetres")
	whole := runCut(t, `{"kerf":0,"stock":[{"length":5,"price":"2.50"}],"pieces":[{"length":5,"count":4}]}`)
	assert.EqualValues(t, "10", whole.Cost)
	none := runCut(t, `{"kerf":0,"stock":[{"length":5,"price":"0.00"}],"pieces":[{"length":5,"count":4}]}`)
	assert.EqualValues(t, "0", none.Cost)
	assert.True(t, out.Proven)
	none = runCut(t, `{"kerf":0,"stock":[{"length":5}],"pieces":[]}`)
	assert.Empty(t, none.Boards)
	assert.True(t, none.Proven)
}

func TestCutCurve(t *testing.T) {
	t.Parallel()
	out := runCut(t, `{"kerf":0,"stock":[{"length":100}],"pieces":[{"length":50,"count":1},{"length":30,"count":1},{"length":20,"count":1}]}`, "-more", "5")
	require.Len(t, out.Curve, 3)
	for i, want := range []int{2, 1, 0} {
		assert.Equal(t, want, out.Curve[i].Visits)
		assert.Equal(t, 1+i, out.Curve[i].BoardCount)
	}
}

// The contract over problems with a proven optimum: the files of the planner's
// own tests, with their keys translated.
func TestCutOwnProblems(t *testing.T) {
	t.Parallel()
	files, err := filepath.Glob("../../../engine/cut/testdata/shop_m*.json")
	require.NoError(t, err)
	require.Len(t, files, 7)
	for _, name := range files {
		text, err := os.ReadFile(name)
		require.NoError(t, err)
		var in struct {
			Kerf, Trim, Optimum int
			Stocks, Items       []map[string]int
		}
		require.NoError(t, json.Unmarshal(text, &in), name)
		problem, err := json.Marshal(map[string]any{
			"kerf": in.Kerf, "trim": in.Trim, "stock": in.Stocks, "pieces": in.Items, "minimise": "cost",
		})
		require.NoError(t, err)
		out := runCut(t, string(problem), "-steps", "30000000")
		assert.True(t, out.Proven, name)
		assert.Equal(t, out.Cost, out.Bound, name)
		assert.Equal(t, strconv.Itoa(in.Optimum), out.Cost.String(), name)
	}
}

func TestCutSaysWhatIsWrong(t *testing.T) {
	t.Parallel()
	const rest = `"stock":[{"length":"1 m"}],"pieces":[{"length":"84 mm","count":4}]`
	for _, c := range []struct{ name, problem, want string }{
		{"nothing", ``, `standard input: nothing came (allowed a cutting problem as JSON)`},
		{"blanks", " \n\t", `standard input: nothing came (allowed a cutting problem as JSON)`},
		{"cut off", `{"kerf":`, `cannot be read as JSON`},
		{"twice", `{"kerf":1,"kerf":2}`, `kerf: is there twice`},
		{"unknown", `{"kerfs":1}`, `kerfs: is not a field of a cutting problem`},
		{"unknown inside", `{"stock":[{"lenght":1}]}`, `stock[0].lenght: is not a field of a cutting problem`},
		{"wrong type", `{"stock":7}`, `stock: `},
		{"deep", strings.Repeat(`[`, 100_000), `is of the wrong type`},
		{"not text", "{\"kerf\":\"\xff\"}", `cannot be read as JSON`},
		{"no kerf", `{` + rest + `}`, `kerf: is missing`},
		{"no unit", `{"kerf":"3",` + rest + `}`, `kerf: "3" has no unit: add mm`},
		{"mixed", `{"kerf":3,` + rest + `}`, `lengths: 2 have a unit and 1 have none`},
		{"negative", `{"kerf":"-3 mm",` + rest + `}`, `kerf: "-3 mm" is out of range (allowed 0 mm to 100 m)`},
		{"fraction", `{"kerf":0.5,"stock":[{"length":5}],"pieces":[]}`, `kerf: 0.5 is not a length`},
		{"exponent", `{"kerf":1e3,"stock":[{"length":5}],"pieces":[]}`, `kerf: 1e3 is not a length`},
		{"null", `{"kerf":null,"stock":[{"length":5}],"pieces":[]}`, `kerf: `},
		{"no stock", `{"kerf":0,"pieces":[]}`, `stock: 0 kinds (allowed 1 to 64)`},
		{"some prices", `{"kerf":0,"stock":[{"length":5,"price":1},{"length":6}],"pieces":[]}`, `stock: 1 of 2 have a price (allowed: all or none)`},
		{"bad price", `{"kerf":0,"stock":[{"length":5,"price":"-1"}],"pieces":[]}`, `stock[0].price: "-1" is not a price`},
		{"price too fine", `{"kerf":0,"stock":[{"length":5,"price":"1.00001"}],"pieces":[]}`, `stock[0].price: "1.00001" is not a price`},
		{"price too high", `{"kerf":0,"stock":[{"length":5,"price":"99999999999.0000"}],"pieces":[]}`, `stock[0].price: 99999999999.0000 is too high (allowed up to 10000000)`},
		{"count", `{"kerf":0,"stock":[{"length":5}],"pieces":[{"length":1,"count":-1}]}`, `pieces[0].count: -1 is not a number of pieces (allowed 0 to 10000000)`},
		{"no count", `{"kerf":0,"stock":[{"length":5}],"pieces":[{"length":1}]}`, `pieces[0].count: nothing is not a number`},
		{"too many", `{"kerf":0,"stock":[{"length":5}],"pieces":[{"length":1,"count":9999999},{"length":2,"count":9}]}`, `pieces: 10000008 in all (allowed up to 10000000)`},
		{"too long", `{"kerf":"0 mm","tail":"150 mm","stock":[{"length":"1 m"}],"pieces":[{"length":"86 cm","count":1}]}`, `pieces[0].length: 86 cm does not fit any stock (allowed up to 0.85 m)`},
		{"tail longer than the bar", `{"kerf":"3 mm","tail":"3 m","trim":"20 mm","stock":[{"length":"2.4 m"},{"length":"900 mm"}],"pieces":[{"length":"84 mm","count":1}]}`, `tail: 3 m leaves nothing of the longest stock, 2.4 m (allowed less than 2.38 m)`},
		{"trim longer than the bar", `{"kerf":3,"trim":5000,"stock":[{"length":2400}],"pieces":[{"length":84,"count":1}]}`, `trim: 5000 leaves nothing of the longest stock, 2400 (allowed less than 2400)`},
		{"nothing long", `{"kerf":0,"stock":[{"length":"0 mm"}],"pieces":[]}`, `stock[0].length: "0 mm" is out of range (allowed more than 0 mm to 100 m)`},
		{"two readings", `{"kerf":"0 mm","stock":[{"length":"2,400 mm"}],"pieces":[]}`, `stock[0].length: "2,400 mm" may be 2400 or 2.4: write no mark for thousands`},
		{"no plain price", `{"kerf":0,"stock":[{"length":5,"price":1e308}],"pieces":[]}`, `stock[0].price: 1e308 is not a price (allowed like "7.50", 0 to 10000000 with up to 4 decimals)`},
		{"turned name", "{\"kerf\":0,\"stock\":[{\"length\":5,\"name\":\"oak\u202egnp\"}],\"pieces\":[]}", `stock[0].name: oak\u202egnp has the character U+202E at place 4, which is not seen`},
		{"turned value", "{\"kerf\":[\"oak\u202egnp\"],\"stock\":[{\"length\":5}],\"pieces\":[]}", `kerf: ["oak\u202egnp"] is not a length`},
		{"long name", `{"kerf":0,"stock":[{"length":5,"name":"` + strings.Repeat("x", 81) + `"}],"pieces":[]}`, `stock[0].name: has 81 characters (allowed at most 80)`},
		{"minimise", `{"kerf":0,"minimise":"time","stock":[{"length":5}],"pieces":[]}`, `minimise: "time" is unknown (allowed "cost", "boards")`},
		{"supply", `{"kerf":0,"stock":[{"length":5,"available":1}],"pieces":[{"length":3,"count":2}]}`, `stock: no plan was found with the bars available`},
		{"lines", `{"kerf":0,"stock":[{"length":5}],"pieces":[` + strings.Repeat(`{"length":1,"count":1},`, 2000) + `{"length":1,"count":1}]}`, `pieces: 2001 lines (allowed up to 2000)`},
	} {
		got := run(t, c.problem, "cut", "-")
		assert.Equal(t, 2, got.code, c.name)
		assert.Empty(t, got.out, c.name)
		assert.Contains(t, got.err, c.want, c.name)
		assert.True(t, strings.HasPrefix(got.err, "standard input: "), "%s: %s", c.name, got.err)
		assert.Less(t, len(got.err), 600, c.name)
	}
	all := run(t, `{"kerf":"x","tail":"1","stock":[{"length":"0 mm"}],"pieces":[{"length":"1 mm","count":"2"}]}`, "cut", "-").err
	for _, path := range []string{"kerf:", "tail:", "stock[0].length:", "pieces[0].count:"} {
		assert.Contains(t, all, path, "all faults at once")
	}
	assert.Equal(t, 2, run(t, "", "cut").code)
	assert.Contains(t, run(t, "", "cut", "-", "-more", "99").err, "-more: 99 out of range (allowed 0 to 20)")
	assert.Contains(t, run(t, "", "cut", "-", "-steps", "-1").err, "-steps: -1 out of range")
	assert.Contains(t, run(t, "", "cut", "no-such-file.json").err, "no-such-file.json: ")
}

// The numbers of a hostile file are the largest that are accepted.
func TestCutLargest(t *testing.T) {
	t.Parallel()
	out := runCut(t, `{"kerf":100000000000,"stock":[{"length":100000000000}],"pieces":[{"length":99999999999,"count":9999999},{"length":1,"count":1}]}`)
	assert.Equal(t, 10_000_000, out.BoardCount)
	odd := runCut(t, `{"kerf":7,"stock":[{"length":99999999977,"price":"3.33"},{"length":77777777777,"price":"2.59"}],"pieces":[{"length":1234567891,"count":777},{"length":3141592653,"count":555},{"length":2718281829,"count":333}]}`, "-steps", "50000000")
	assert.NotZero(t, odd.BoardCount)
}

// Whatever a file holds, the command ends with a plan or with a message.
func FuzzCut(f *testing.F) {
	f.Add(`{"kerf":"3.2 mm","trim":"0 mm","tail":"0 mm","stock":[{"name":"3 m","length":"3000 mm","price":"7.50","available":40}],"pieces":[{"length":"84 mm","count":400}],"minimise":"cost"}`)
	f.Add(`{"kerf":1,"stock":[{"length":99},{"length":50,"available":3}],"pieces":[{"length":7,"count":9},{"length":11,"count":5}],"minimise":"boards"}`)
	f.Fuzz(func(t *testing.T, problem string) {
		got := run(t, problem, "cut", "-", "-steps", "300000", "-more", "1")
		switch got.code {
		case 0:
			require.True(t, json.Valid([]byte(got.out)))
			require.Empty(t, got.err)
		case 2:
			require.Empty(t, got.out)
			require.NotEmpty(t, got.err)
		default:
			t.Fatalf("exit %d", got.code)
		}
	})
}
