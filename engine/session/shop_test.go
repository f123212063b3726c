package session_test

import (
	"strconv"
	"strings"
	"testing"

	"blockfield/engine/design"
	"blockfield/engine/session"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func work(t testing.TB, s *session.Session, name, path string) session.Response {
	t.Helper()
	res := ask(t, s, session.Request{Op: "act", Name: name, Path: path, Today: "2026-03-09"})
	require.True(t, res.OK, "%s %s: %v", name, path, res.Faults)
	return res
}

const tenOf = "44.3, 44.2, 44.4, 44.3, 44.2, 44.4, 44.3, 44.3, 44.2, 44.4 mm"

// Ten sticks that are typed in are said at once, and their mean becomes the size of the
// blocks with one tap: the field is another one then, and nothing is unmeasured.
func TestSticksAreMeasured(t *testing.T) {
	s := atTheBench(t, "s8")
	ask(t, s, session.Request{Op: "section", Name: "bench"})
	set(t, s, "record.cards[0].widths", tenOf)
	res := set(t, s, "record.cards[0].thicknesses", tenOf)
	require.True(t, res.OK, "%v", res.Faults)
	assert.Len(t, kept(t, res).Cards[0].Widths, 10)
	said := fragment(res, "shop-sticks-said")
	assert.Contains(t, said, "10 sticks: mean 44.3 mm, known to within 0.04 mm; spread 0.08 mm; from 44.2 mm to 44.4 mm.")
	assert.Contains(t, said, "A row of 14 blocks ends &#43;3.6 mm to &#43;4.8 mm", "14·0.3 ± 2·0.08·√14")
	assert.Contains(t, said, "the field is 623 × 623 mm instead of 618.8 × 618.8 mm", "14 · 44.5")
	assert.NotContains(t, fragment(res, "watch-outs"), "Measure ten sticks before the first cut")
	assert.Empty(t, fragment(res, "shop-sticks"), "the field that is typed in stays")

	before := s.Plan().Revision
	work(t, s, "take-size", "0")
	g := s.Document().Design.Walls[0].Groups[0]
	assert.Equal(t, "44.3 mm", g.Block.Size.String())
	assert.True(t, g.Block.Measured)
	assert.NotEqual(t, before, s.Plan().Revision)
	assert.True(t, ask(t, s, session.Request{Op: "undo"}).OK)
	assert.Equal(t, before, s.Plan().Revision, "an edit of the design like any other")
}

// Readings of the meter: two a week apart say whether the sticks have settled, and the
// last one becomes the moisture of the stock.
func TestMeter(t *testing.T) {
	s := atTheBench(t, "s8")
	ask(t, s, session.Request{Op: "section", Name: "bench"})
	work(t, s, "meter", "")
	rec := kept(t, work(t, s, "meter", ""))
	assert.Equal(t, []design.Reading{{Day: "2026-03-09", Percent: 12}, {Day: "2026-03-09", Percent: 12}}, rec.Meter)
	set(t, s, "record.meter[0].day", "2026-03-02")
	set(t, s, "record.meter[0].percent", "10.4")
	assert.Contains(t, fragment(set(t, s, "record.meter[1].percent", "9.8"), "shop-meter-said"), "have not settled")
	said := fragment(set(t, s, "record.meter[1].percent", "10"), "shop-meter-said")
	assert.Contains(t, said, "have settled")
	assert.Contains(t, said, "Take the last reading")
	work(t, s, "take-moisture", "")
	assert.Equal(t, 10.0, s.Document().Design.Bench.StockMoisture)
	assert.Len(t, kept(t, work(t, s, "drop", "record.meter[0]")).Meter, 1)
}

// Counting by tens, by one and by hand; what is short is listed to be cut anew.
func TestCounting(t *testing.T) {
	s := atTheBench(t, "s8")
	ask(t, s, session.Request{Op: "section", Name: "bench"})
	for range 3 {
		work(t, s, "count", "0 10 0")
	}
	rec := kept(t, work(t, s, "count", "0 1 0"))
	assert.Equal(t, 31, rec.Bins[0].Cut)
	assert.Equal(t, s.Plan().Revision, rec.Bins[0].Revision)
	work(t, s, "count", "0 0 1")
	res := set(t, s, "record.bins[0].cut", "37")
	assert.Contains(t, fragment(res, "shop-counts-said"), "<td>36</td>", "37 cut, one out")
	assert.NotContains(t, fragment(res, "shop-counts-said"), "of 14 mm</li>")
	res = set(t, s, "record.bins[0].rejects", "2")
	assert.Contains(t, fragment(res, "shop-counts-said"), "<li>3 of 14 mm</li>", "one short and two more")
	assert.Contains(t, fragment(res, "watch-outs"), "35 of 36 good blocks")

	bad := set(t, s, "record.bins[0].cut", "-4")
	assert.False(t, bad.OK)
	assert.Equal(t, "record.bins[0].cut", bad.Faults[0].Path)
	assert.Equal(t, "Cut", bad.Faults[0].Label)
	assert.False(t, ask(t, s, session.Request{Op: "act", Name: "count", Path: "many"}).OK)
	assert.True(t, ask(t, s, session.Request{Op: "act", Name: "count", Path: "99 1 0"}).OK, "a bin that is gone")
}

// A Stop is signed off where it stands, and says so; withdrawn, it is a Stop again.
func TestSigning(t *testing.T) {
	s := atTheBench(t, "s8")
	html := read(t, s, "maker", "bench")
	const path = "bench/not-measured walls[0].groups[0].block.measured"
	look := read(t, s, "maker", "look")
	assert.Contains(t, look+html, `data-path="`+path+`"`)
	assert.NotContains(t, read(t, s, "builder", "look"), `data-act="sign"`)
	require.True(t, set(t, s, "view.reading", "maker").OK)
	ask(t, s, session.Request{Op: "section", Name: "bench"})
	assert.Equal(t, "record.signOffs[0].name", work(t, s, "sign", path).Next, "the name is typed next")
	begun := read(t, s, "maker", "look")
	assert.Contains(t, begun, `data-field="record.signOffs[0].name"`, "and the Stop leads there meanwhile")
	assert.Contains(t, begun, "Not signed off yet")
	require.True(t, ask(t, s, session.Request{Op: "section", Name: "bench"}).OK)
	set(t, s, "record.signOffs[0].name", "A. Maker")
	assert.Contains(t, fragment(set(t, s, "record.signOffs[0].reason", "Measured at the mill"), "gates"), "<th scope=\"row\">Cutting</th><td>nothing known</td>")
	look = read(t, s, "maker", "look")
	assert.Contains(t, look, "Signed off by A. Maker: Measured at the mill")
	assert.NotContains(t, look, "Not signed off yet")
	work(t, s, "drop", "record.signOffs[0]")
	assert.NotContains(t, read(t, s, "maker", "look"), "Signed off by")
}

// The record goes to another device as a file, which opens over the same design.
func TestTheRecordAsAFile(t *testing.T) {
	s := atTheBench(t, "s8")
	row(t, s, "next")
	file := ask(t, s, session.Request{Op: "save", Name: "record"}).File
	require.NotNil(t, file)
	assert.Contains(t, file.Name, "record-"+s.Plan().Revision)
	other := atTheBench(t, "s8")
	res := ask(t, other, session.Request{Op: "open", Text: file.Text, From: "file"})
	require.True(t, res.OK)
	assert.Equal(t, file.Text, *res.Record)
	assert.NotEmpty(t, res.Announce)
	assert.NotContains(t, ask(t, s, session.Request{Op: "save"}).File.Text, "laid", "the file of the design holds nothing of it")
}

// What a job took makes a price book, once, and never one that was set aside.
func TestLearning(t *testing.T) {
	s := atTheBench(t, "s7")
	ask(t, s, session.Request{Op: "section", Name: "bench"})
	rec := kept(t, work(t, s, "count", "0 1 0"))
	at := -1
	for i, time := range rec.Times {
		if time.Task == "c3" {
			at = i
		}
	}
	require.GreaterOrEqual(t, at, 0)
	reckoned := 0.0
	for _, task := range s.Plan().Bill.Tasks {
		if task.ID == "c3" {
			reckoned = task.Minutes.Typical
		}
	}
	path := "record.times[" + string(rune('0'+at%10)) + "].minutes"
	if at > 9 {
		path = "record.times[1" + string(rune('0'+at%10)) + "].minutes"
	}
	slip := set(t, s, path, "20000")
	require.True(t, slip.OK, "%v", slip.Faults)
	assert.Contains(t, fragment(slip, "shop-learn-said"), "a slip?")
	assert.Contains(t, fragment(slip, "shop-learn-said"), strings.TrimSuffix(path, "minutes")+"sure")
	assert.NotContains(t, fragment(slip, "shop-learn-said"), `data-act="learn"`)
	assert.False(t, ask(t, s, session.Request{Op: "act", Name: "learn"}).OK, "a slip of the pen")
	res := set(t, s, path, strconv.Itoa(int(1.4*reckoned)))
	require.True(t, res.OK, "%v", res.Faults)
	assert.InDelta(t, reckoned, kept(t, res).Times[at].Reckoned, 1e-9, "what was reckoned is written down with it")
	assert.Contains(t, fragment(res, "shop-learn-said"), "Cut the blocks, in all")
	assert.Contains(t, fragment(res, "shop-learn-said"), `data-act="learn"`)

	set(t, s, "record.learn.aside", "yes")
	assert.False(t, ask(t, s, session.Request{Op: "act", Name: "learn"}).OK, "set aside")
	set(t, s, "record.learn.aside", "no")
	before := s.Plan().Bill.Hours.Shop.Typical
	learned := work(t, s, "learn", "")
	require.NotNil(t, learned.Book)
	book, err := design.DecodeBook([]byte(*learned.Book))
	require.NoError(t, err)
	assert.Len(t, book.Learned, 1)
	assert.Equal(t, book.Code(), kept(t, learned).Learn.Into)
	assert.NotEqual(t, before, s.Plan().Bill.Hours.Shop.Typical, "the plan is one of the new book")
	assert.False(t, ask(t, s, session.Request{Op: "act", Name: "learn"}).OK, "a second time")
	assert.NotContains(t, fragment(learned, "section"), `data-act="learn"`)
	assert.Contains(t, fragment(learned, "section"), "It has nothing further to teach.")
	assert.NotContains(t, fragment(learned, "section"), "1.00 → ")
	assert.NotEmpty(t, learned.Text, "the job is kept with it")
	assert.True(t, learned.CanUndo)

	undone := ask(t, s, session.Request{Op: "undo"})
	require.True(t, undone.OK)
	assert.InDelta(t, before, s.Plan().Bill.Hours.Shop.Typical, 1e-9)
	assert.Empty(t, kept(t, undone).Learn.Into)
	assert.Positive(t, kept(t, undone).Times[at].Minutes, "what was typed stays")
	assert.Contains(t, fragment(undone, "section"), `data-act="learn"`)
	assert.NotEmpty(t, undone.Text)
	assert.Contains(t, undone.Announce, "learned from this job")
	redone := ask(t, s, session.Request{Op: "redo"})
	assert.Equal(t, *learned.Book, *redone.Book)
	assert.Equal(t, *learned.Record, *redone.Record)

	// Corrected afterwards, it teaches what is right.
	res = set(t, s, path, strconv.Itoa(int(1.2*reckoned)))
	assert.Contains(t, fragment(res, "shop-learn-said"), `data-act="learn"`)
	again, err := design.DecodeBook([]byte(*work(t, s, "learn", "").Book))
	require.NoError(t, err)
	assert.Equal(t, 1, again.Learned[0].Jobs)
	assert.InDelta(t, 1.06, again.Learned[0].Factor, 0.01, "0.7 + 0.3 · 1.2")
}

// A book of the workshop that gives way to one that has learned stands on the shelf, and
// undo takes it from there again.
func TestLearningKeepsTheBookBefore(t *testing.T) {
	s := atTheBench(t, "s7")
	own := design.DefaultBook()
	own.Name, own.Placeholder = "Elm Yard", false
	require.True(t, ask(t, s, session.Request{Op: "open", Text: string(design.EncodeBook(own)), From: "file"}).OK)
	ask(t, s, session.Request{Op: "section", Name: "bench"})
	set(t, s, "record.spent[0].amount", "300")
	set(t, s, "record.spent[0].sure", "yes")
	learned := work(t, s, "learn", "")
	assert.Contains(t, *learned.Shelf, "Elm Yard")
	undone := ask(t, s, session.Request{Op: "undo"})
	assert.Equal(t, own.Code(), bookOf(t, undone).Code())
	assert.NotContains(t, *undone.Shelf, "Elm Yard")
	redone := ask(t, s, session.Request{Op: "redo"})
	assert.Equal(t, *learned.Shelf, *redone.Shelf)
}

func bookOf(t *testing.T, res session.Response) design.Book {
	t.Helper()
	b, err := design.DecodeBook([]byte(*res.Book))
	require.NoError(t, err)
	return b
}

// A longer search is asked for by a button, is a step of the history, and holds until
// blocks or sticks change: papers and the stock order go by it until then.
func TestLookLonger(t *testing.T) {
	s := atTheBench(t, "s2")
	first := ask(t, s, session.Request{Op: "section", Name: "bench"})
	assert.Contains(t, fragment(first, "section"), `data-act="look-longer"`)
	before := s.Plan()
	res := work(t, s, "look-longer", "")
	assert.NotContains(t, fragment(res, "section"), `data-act="look-longer"`)
	assert.Contains(t, fragment(res, "section"), "Looked longer: no plan costs less wood, and with these sticks none has more than 2 visits fewer.")
	after := s.Plan()
	assert.Less(t, after.Bill.Visits, before.Bill.Visits, "15 instead of 16")
	assert.NotEqual(t, before.Revision, after.Revision, "the stop list is another one")

	set(t, s, "walls[0].groups[0].place.left", "700")
	assert.True(t, s.Plan().Bill.Longer, "the panel hangs elsewhere, its blocks are the same")
	set(t, s, "bench.spares", "9")
	assert.False(t, s.Plan().Bill.Longer)
	assert.Empty(t, s.Document().Design.Bench.LongerFor, "nothing of it stays in the design")
	for range 3 {
		require.True(t, ask(t, s, session.Request{Op: "undo"}).OK)
	}
	assert.Equal(t, before.Revision, s.Plan().Revision)
}

// What is there already is left out again by a button that says so.
func TestWhatIsThereIsLeftOut(t *testing.T) {
	s := atTheBench(t, "s8")
	ask(t, s, session.Request{Op: "section", Name: "bench"})
	for _, list := range []string{"bench.stock", "bench.sheets"} {
		html := fragment(work(t, s, "add", list), "section")
		assert.Contains(t, html, `data-path="`+list+`[0]">Leave it out</button>`)
		assert.NotContains(t, html, "⟪")
	}
	set(t, s, "bench.sheets[0].width", "1000")
	set(t, s, "bench.sheets[0].length", "1000")
	assert.Equal(t, 0, s.Plan().Bill.Sheets[0].Count, "the backer of 629 mm comes out of it")
	work(t, s, "remove", "bench.sheets[0]")
	assert.Equal(t, 1, s.Plan().Bill.Sheets[0].Count)
}

// Who has looked where earthquakes count is written down for this very design, and opens
// nothing but what asks for them: an unknown wall stays not checked.
func TestProfessionalIsRecorded(t *testing.T) {
	s := atTheBench(t, "s8")
	ask(t, s, session.Request{Op: "section", Name: "wall"})
	require.True(t, set(t, s, "room.seismic", "yes").OK)
	const asks = "nobody has looked at how the panels are held who is licensed to"
	said := func() string { return fragment(ask(t, s, session.Request{Op: "section", Name: "wall"}), "section") }
	assert.Contains(t, said(), asks)
	for _, line := range [][2]string{{"professional", "A. Beam"}, {"licence", "no. 12"}, {"lookedOn", "2026-03-02"}} {
		require.True(t, set(t, s, "record.asked."+line[0], line[1]).OK)
		assert.Contains(t, said(), asks)
	}
	rec := kept(t, set(t, s, "record.asked.lookedAt", "studs and screws"))
	assert.Equal(t, s.Plan().Revision, rec.Asked.LookedFor)
	assert.NotContains(t, said(), asks)
	assert.Contains(t, said(), "A. Beam (no. 12) looked at it on 2026-03-02: studs and screws.")

	require.True(t, set(t, s, "walls[0].kind", "unknown").OK)
	assert.Contains(t, said(), asks, "another design")
	set(t, s, "record.asked.lookedAt", "the unknown wall")
	assert.NotContains(t, said(), asks)
	assert.Contains(t, said(), "nobody knows what this wall is made of")
}
