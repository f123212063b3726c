package cli_test

import (
	"bytes"
	"encoding/json"
	"image/png"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"blockfield/cmd/blockfield/cli"
	"blockfield/engine/design"
)

const jobs = "../../../testdata/scenarios/"

// result is what a run leaves behind.
type result struct {
	code     int
	out, err string
}

func run(t *testing.T, in string, args ...string) result {
	t.Helper()
	var out, errs bytes.Buffer
	code := cli.Run(t.Context(), args, cli.Streams{In: strings.NewReader(in), Out: &out, Err: &errs})
	return result{code, out.String(), errs.String()}
}

func TestUsage(t *testing.T) {
	t.Parallel()
	all := run(t, "")
	assert.Equal(t, 2, all.code)
	for _, name := range []string{"serve", "build", "report", "papers", "picture", "cut", "scatter", "check"} {
		assert.Contains(t, all.err, "blockfield "+name+" ")
		help := run(t, "", name, "-h")
		assert.Equal(t, 0, help.code, name)
		assert.Contains(t, help.out, "blockfield "+name+" ")
	}
	assert.Equal(t, 0, run(t, "", "help").code)
	assert.Equal(t, result{2, "", "blockfield: \"fly\" is not a command (allowed serve, build, report, papers, picture, cut, scatter, check)\n"}, run(t, "", "fly"))
	for _, args := range [][]string{
		{"check"}, {"report"}, {"report", "a", "b"}, {"picture", "a"}, {"picture", "-o", "x.png"},
		{"papers", "a"}, {"papers", "-o", "x"}, {"papers", "a", "-o", "-"},
		{"build"}, {"build", "-o", "-"}, {"build", "-o", "x", "y"}, {"serve", "x"},
	} {
		got := run(t, "", args...)
		assert.Equal(t, 2, got.code, args)
		assert.True(t, strings.HasPrefix(got.err, "usage: blockfield "+args[0]), "%v: %s", args, got.err)
	}
	assert.Equal(t, result{2, "", "flag provided but not defined: -nope\n"}, run(t, "", "report", "-nope", "x"))
}

func TestCheck(t *testing.T) {
	t.Parallel()
	got := run(t, "", "check", jobs+"s1.json", "../../../testdata/books/placeholder.json")
	assert.Equal(t, 0, got.code, got.err)
	assert.Regexp(t, `s1\.json: good design file, revision [0-9A-Z]{6}\n.*placeholder\.json: good price book, code [0-9A-Z]{6}\n`, got.out)
}

func TestCheckSaysWhatIsWrong(t *testing.T) {
	t.Parallel()
	good, err := os.ReadFile(jobs + "s1.json")
	require.NoError(t, err)
	cases := []struct{ name, file, want string }{
		{"nothing", "", `cannot be read as JSON`},
		{"cut off", string(good[:len(good)/2]), `cannot be read as JSON`},
		{"foreign", `{"format":"cake","version":1}`, `is not a file of this kind`},
		{"newer", `{"format":"blockfield design","version":99}`, `newer program`},
		{"unknown field", `{"format":"blockfield design","version":1,"design":{"colour":"red"}}`, `design.colour: is not a field of the document`},
		{"out of range", `{"format":"blockfield design","version":1,"design":{"room":{"length":"1 mm"}}}`, `design.room.length: `},
		{"bad book", `{"format":"blockfield price book","version":1,"curency":"EUR"}`, `curency: is not a field of the document`},
		{"bad selling book", `{"format":"blockfield selling book","version":1,"rates":{}}`, `rates: is not a field of the document`},
		{"escapes", "{\"format\":\"blockfield design\",\"version\":1,\"design\":{\"\\u001b]0;x\\u0007\\u202e\":1}}", `design.\x1b]0;x\a\u202e: is not a field of the document`},
	}
	for _, c := range cases {
		got := run(t, c.file, "check", "-")
		assert.Equal(t, 2, got.code, c.name)
		assert.Empty(t, got.out, c.name)
		assert.Contains(t, got.err, c.want, c.name)
		for line := range strings.Lines(got.err) {
			assert.True(t, strings.HasPrefix(line, "standard input: "), "%s: %s", c.name, line)
		}
	}
	named := run(t, "", "check", "no\u202esuch\x1bfile")
	assert.Equal(t, "no\\u202esuch\\x1bfile: no such file or directory\n", named.err)
	flag := run(t, "", "report", "-no\u202esuch\x1bflag")
	assert.Equal(t, "flag provided but not defined: -no\\u202esuch\\x1bflag\n", flag.err)
	both := run(t, "", "check", jobs+"s1.json", "no-such-file", jobs+"s2.json")
	assert.Equal(t, 2, both.code)
	assert.Equal(t, "no-such-file: no such file or directory\n", both.err)
	assert.Equal(t, 2, strings.Count(both.out, "good design file"), "the others are still checked")
}

func TestPicture(t *testing.T) {
	t.Parallel()
	name := filepath.Join(t.TempDir(), "s1.png")
	got := run(t, "", "picture", jobs+"s1.json", "-o", name, "-size", "64x48")
	require.Equal(t, 0, got.code, got.err)
	file, err := os.ReadFile(name)
	require.NoError(t, err)
	straight, err := png.Decode(bytes.NewReader(file))
	require.NoError(t, err)
	assert.Equal(t, 64, straight.Bounds().Dx())
	assert.Equal(t, 48, straight.Bounds().Dy())

	design, err := os.ReadFile(jobs + "s1.json")
	require.NoError(t, err)
	piped := run(t, string(design), "picture", "-o", "-", "-size", "64x48", "-")
	assert.Equal(t, string(file), piped.out, "from standard input to standard output")
	for _, flags := range [][]string{
		{"-lamp", "90,20"}, {"-camera", "-30,10,1.5"}, {"-view", "three-quarter"}, {"-view", "seated"}, {"-view", "close-up"},
		{"-view", "whole wall"}, {"-view", "rear"}, {"-view", "pulled apart"}, {"-light", "window"}, {"-light", "raking"},
	} {
		other := run(t, string(design), append([]string{"picture", "-o", "-", "-size", "64x48", "-"}, flags...)...)
		require.Equal(t, 0, other.code, other.err)
		assert.NotEqual(t, piped.out, other.out, flags)
	}
}

func TestPictureRefuses(t *testing.T) {
	t.Parallel()
	cases := []struct {
		flags []string
		want  string
	}{
		{[]string{"-size", "800"}, `-size: "800" is not the size of a picture in pixels (allowed WIDTHxHEIGHT, 16 to 4096 each)`},
		{[]string{"-size", "8x8"}, `-size: "8x8"`},
		{[]string{"-size", "99999x10"}, `-size: "99999x10"`},
		{[]string{"-lamp", "10"}, `-lamp: "10" cannot be used (allowed AZIMUTH,ELEVATION: 0 to 360, 5 to 90 degrees)`},
		{[]string{"-lamp", "NaN,20"}, `-lamp: "NaN,20"`},
		{[]string{"-view", "moon"}, `-view: "moon" is no view (allowed "front", "three-quarter", "seated", "close-up", "whole wall", "rear", "pulled apart")`},
		{[]string{"-light", "moon"}, `-light: "moon" is no light (allowed "lamp", "window", "raking")`},
		{[]string{"-camera", "0,0,99"}, `-camera: "0,0,99" cannot be used (allowed YAW,PITCH,ZOOM: -80 to 80, -60 to 60 degrees, 0.3 to 24)`},
	}
	for _, c := range cases {
		name := filepath.Join(t.TempDir(), "x.png")
		got := run(t, "", append([]string{"picture", jobs + "s1.json", "-o", name}, c.flags...)...)
		assert.Equal(t, 2, got.code, c.flags)
		assert.Contains(t, got.err, c.want)
		assert.NoFileExists(t, name)
	}
	bad := run(t, "", "picture", jobs+"s1.json", "-o", filepath.Join(t.TempDir(), "no", "x.png"), "-size", "16x16")
	assert.Equal(t, 2, bad.code)
	assert.Contains(t, bad.err, "x.png: no such file or directory")
}

func TestServeSaysWhatIsWrong(t *testing.T) {
	t.Parallel()
	for addr, want := range map[string]string{
		"nowhere:-1": "-addr: ",
		"":           `-addr: "" names no host (allowed HOST:PORT`,
		":8080":      `-addr: ":8080" names no host`,
	} {
		got := run(t, "", "serve", "-addr", addr)
		assert.Equal(t, 2, got.code, addr)
		assert.Contains(t, got.err, want, addr)
	}
}

// A price book holds from its first day to its last one; a day on which it does
// not hold is one to say, with the day.
func TestCheckHoldsABookAgainstADay(t *testing.T) {
	t.Parallel()
	book := design.DefaultBook()
	book.ValidFrom, book.ValidUntil = "2026-02-01", "2026-06-30"
	file := string(design.EncodeBook(book))
	for day, want := range map[string]string{
		"2026-01-31": "standard input: validFrom: does not hold yet, but from 2026-02-01 on (allowed not after 2026-01-31)\n",
		"2026-02-01": "", "2026-06-30": "",
		"2026-07-01": "standard input: validUntil: has run out: its last day was 2026-06-30 (allowed not before 2026-07-01)\n",
	} {
		got := run(t, file, "check", "-today", day, "-")
		assert.Equal(t, want, got.err, day)
		assert.Equal(t, want != "", got.code == 2, day)
	}
	bad := run(t, file, "check", "-today", "1.7.2026", "-")
	assert.Equal(t, 2, bad.code)
	assert.Contains(t, bad.err, "not a day (allowed such as 2026-03-31)")

	lapsed := filepath.Join(t.TempDir(), "lapsed.json")
	require.NoError(t, os.WriteFile(lapsed, []byte(file), 0o644))
	told := run(t, "", "report", jobs+"s1.json", "-prices", lapsed, "-today", "2026-07-01")
	assert.Equal(t, 0, told.code, told.err)
	assert.Contains(t, told.out, "held until 2026-06-30")
	assert.Equal(t, lapsed+": validUntil: has run out: its last day was 2026-06-30 (allowed not before 2026-07-01)\n", told.err)
	in := run(t, "", "report", jobs+"s1.json", "-prices", lapsed, "-today", "2026-06-30")
	assert.NotContains(t, in.out, "held until")
	assert.Empty(t, in.err)
}

// Where no day is given it is today: a book of the past does not pass in
// silence, and one without days holds.
func TestDatesAreHeldAgainstToday(t *testing.T) {
	t.Parallel()
	book := design.DefaultBook()
	book.ValidUntil = "2000-12-31"
	lapsed := filepath.Join(t.TempDir(), "lapsed.json")
	require.NoError(t, os.WriteFile(lapsed, design.EncodeBook(book), 0o644))

	checked := run(t, "", "check", lapsed)
	assert.Equal(t, 2, checked.code)
	assert.Contains(t, checked.err, "its last day was 2000-12-31")
	told := run(t, "", "report", jobs+"s1.json", "-prices", lapsed)
	assert.Equal(t, 0, told.code)
	assert.Equal(t, checked.err, told.err)
	assert.Contains(t, told.out, `"code": "price/book-lapsed"`)

	plain := run(t, "", "report", jobs+"s1.json", "-prices", "../../../testdata/books/placeholder.json")
	assert.Equal(t, 0, plain.code)
	assert.Empty(t, plain.err)
	assert.NotContains(t, plain.out, "price/book-lapsed")
}

// An empty name is what a shell makes of an unset variable: it is no file, and
// no wish for the example figures either.
func TestEmptyNamesOfFiles(t *testing.T) {
	t.Parallel()
	const want = "\"\" is not the name of a file (allowed a file, or - for standard input)\n"
	for _, args := range [][]string{
		{"check", ""}, {"report", ""}, {"report", jobs + "s1.json", "-prices", ""}, {"picture", "", "-o", "x.png"},
		{"cut", ""}, {"scatter", "", "-pitch", "40mm"},
	} {
		assert.Equal(t, result{2, "", want}, run(t, "", args...), args)
	}
	assert.Equal(t, "missing.json: no such file or directory\n", run(t, "", "report", jobs+"s1.json", "-prices", "missing.json").err)
}

// What no job can count a task by is a fault of the book, before any job is
// planned with it; with everything else that is wrong.
func TestCheckFindsTasksThatNothingCounts(t *testing.T) {
	t.Parallel()
	book := design.DefaultBook()
	book.ValidUntil = "2026-06-30"
	book.Tasks[1].Per, book.Tasks[4].Per = "full moon", "log"
	got := run(t, string(design.EncodeBook(book)), "check", "-today", "2026-07-01", "-")
	assert.Equal(t, 2, got.code)
	assert.Empty(t, got.out)
	lines := strings.Split(strings.TrimSpace(got.err), "\n")
	require.Len(t, lines, 3)
	assert.Contains(t, lines[0], "standard input: tasks[1].per: full moon is not one of the choices (allowed one of 50 cuts, ")
	assert.Contains(t, lines[1], `tasks[4].per: log is not one of the choices`)
	assert.Contains(t, lines[2], "validUntil: has run out")
}

// A selling book holds until its last day, as a price book does.
func TestCheckHoldsASellingBookAgainstADay(t *testing.T) {
	t.Parallel()
	file := string(design.EncodeSelling(design.SellingBook{
		Format: design.SellingFormat, Version: 1, Name: "Autumn", Currency: "EUR", ValidUntil: "2026-06-30",
	}))
	good := run(t, file, "check", "-today", "2026-06-30", "-")
	assert.Equal(t, "-: good selling book\n", good.out)
	late := run(t, file, "check", "-today", "2026-07-01", "-")
	assert.Equal(t, 2, late.code)
	assert.Equal(t, "standard input: validUntil: has run out: its last day was 2026-06-30 (allowed not before 2026-07-01)\n", late.err)
}

// A byte-order mark before a file is no part of it, in the command as on the
// page.
func TestByteOrderMark(t *testing.T) {
	t.Parallel()
	for _, name := range []string{jobs + "s1.json", "../../../testdata/books/placeholder.json"} {
		file, err := os.ReadFile(name)
		require.NoError(t, err)
		plain, marked := run(t, string(file), "check", "-"), run(t, "\uFEFF"+string(file), "check", "-")
		assert.Equal(t, plain, marked)
		assert.Equal(t, 0, marked.code, marked.err)
	}
	selling := design.EncodeSelling(design.SellingBook{Format: design.SellingFormat, Version: 1, Name: "Autumn", Currency: "EUR"})
	assert.Equal(t, "-: good selling book\n", run(t, "\uFEFF"+string(selling), "check", "-").out)
}

// What a title may hold and a terminal may not show, such as a joiner or a
// character of somebody's own, reaches the terminal as a number and other programs
// as it is; one that turns the writing round is refused.
func TestReportDoesNotSteerTheTerminal(t *testing.T) {
	t.Parallel()
	doc := design.Default()
	doc.Design.Title = "Größe a\u200db \U000f0041 木"
	got := run(t, string(design.Encode(doc)), "report", "-")
	require.Equal(t, 0, got.code, got.err)
	assert.Contains(t, got.out, `"Größe a\u200db \udb80\udc41 木"`)
	var v struct{ Title string }
	require.NoError(t, json.Unmarshal([]byte(got.out), &v))
	assert.Equal(t, doc.Design.Title, v.Title)

	doc.Design.Title = "Oak\u202egnp"
	assert.Equal(t, result{2, "", "standard input: design.title: Oak\\u202egnp has the character U+202E at place 4, " +
		"which is not seen and can turn or hide what is written\n"}, run(t, string(design.Encode(doc)), "report", "-"))
}

// What the report of a job says is checked in the engine; here it is enough
// that the design and the book of the command line went into it.
func TestReport(t *testing.T) {
	t.Parallel()
	type told struct {
		Revision, BookCode, Title string
		Field                     struct{ Columns, Rows, Cells, Blocks int }
		Panel                     struct{ OuterWidth, Stack string }
		Mass                      struct{ TotalKg float64 }
		Hours                     struct {
			Total struct{ Low, Typical, High float64 }
		}
		Money     struct{ Currency, Net, Gross string }
		WatchOuts []struct{ Code, Level, Sentence string }
	}
	tell := func(in string, args ...string) told {
		got := run(t, in, append([]string{"report"}, args...)...)
		require.Equal(t, 0, got.code, got.err)
		var v told
		require.NoError(t, json.Unmarshal([]byte(got.out), &v))
		return v
	}
	file, err := os.ReadFile(jobs + "s1.json")
	require.NoError(t, err)
	doc, err := design.Decode(file)
	require.NoError(t, err)
	s1 := tell("", jobs+"s1.json")
	assert.Equal(t, doc.Design.Revision(), s1.Revision)
	assert.Equal(t, doc.Design.Title, s1.Title)
	assert.Positive(t, s1.Field.Columns*s1.Field.Rows)
	assert.Positive(t, s1.Mass.TotalKg)
	assert.Less(t, s1.Hours.Total.Low, s1.Hours.Total.High)
	assert.Regexp(t, `^\d+(\.\d+)? mm$`, s1.Panel.OuterWidth)
	assert.Regexp(t, `^\d+\.\d\d$`, s1.Money.Net)
	assert.Equal(t, s1, tell(string(file), "-"), "from standard input")

	dear := design.DefaultBook()
	dear.Rates.Shop *= 2
	name := filepath.Join(t.TempDir(), "dear.json")
	require.NoError(t, os.WriteFile(name, design.EncodeBook(dear), 0o644))
	with := tell("", jobs+"s1.json", "-prices", name)
	assert.Equal(t, dear.Code(), with.BookCode)
	assert.NotEqual(t, s1.Money.Net, with.Money.Net)
	assert.Equal(t, s1.Mass, with.Mass)
}

func TestReportRefusesUnknownGates(t *testing.T) {
	t.Parallel()
	assert.Equal(t, result{2, "", "-gate: \"door\" is not a gate (allowed offer, share, buy, cut, glue, hang)\n"},
		run(t, "", "report", jobs+"s1.json", "-gate", "door"))
}

// The panel of the sixth job is too heavy for the hands that lift it, which
// stops its offer, and so every gate that comes after it; the report is printed
// all the same. Once somebody answers for the lift it may be offered.
func TestReportEndsWithOneAtAShutGate(t *testing.T) {
	t.Parallel()
	plain := run(t, "", "report", jobs+"s6.json")
	require.Equal(t, 0, plain.code, plain.err)
	assert.Contains(t, plain.out, `"level": "stop"`)
	assert.Equal(t, result{1, plain.out, ""}, run(t, "", "report", jobs+"s6.json", "-gate", "offer"))
	assert.Equal(t, result{1, plain.out, ""}, run(t, "", "report", jobs+"s6.json", "-gate", "hang"))

	file, err := os.ReadFile(jobs + "s6.json")
	require.NoError(t, err)
	named := strings.Replace(string(file), `"method": "hands",
        "lead": ""`, `"method": "hoist",
        "lead": "The rigger"`, 1)
	require.NotEqual(t, string(file), named)
	open := run(t, named, "report", "-", "-gate", "offer")
	assert.Equal(t, 0, open.code, open.err)
	assert.Contains(t, open.out, "The rigger leads the lift")
}

func TestReportInGerman(t *testing.T) {
	got := run(t, "", "report", filepath.Join("..", "..", "..", "testdata", "scenarios", "s1.json"), "-language", "de")
	assert.Contains(t, got.out, "Messen Sie zehn Kanteln vor dem ersten Schnitt.")
	assert.NotContains(t, got.out, "⟪")
	got = run(t, "", "report", filepath.Join("..", "..", "..", "testdata", "scenarios", "s1.json"), "-language", "tlh")
	assert.Equal(t, 2, got.code)
	assert.Contains(t, got.err, `"tlh" is no language of ours (allowed en, de)`)
}
