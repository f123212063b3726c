package design_test

import (
	"encoding/json"
	"fmt"
	"reflect"
	"runtime"
	"strings"
	"testing"

	"blockfield/engine/design"
	"blockfield/engine/length"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// fullRecord is a record with something in every list. Its figures are invented.
func fullRecord() design.Record {
	mm, um := length.MM, length.Micrometres
	rec := design.NewRecord()
	rec.Days.Start, rec.Days.NeedBy, rec.Days.Hang = "2026-03-02", "2026-04-10", "2026-04-10"
	rec.Lay.Paper, rec.Lay.At = "3F7K2M", 7
	rec.Cards = []design.Card{{
		Wood: "oak", Size: mm(36), Widths: []length.Length{um(36_100), um(35_900)},
		Thicknesses: []length.Length{length.Sixtyfourths(91)},
	}}
	rec.Meter = []design.Reading{{Day: "2026-03-02", Percent: 10.5}, {Day: "2026-03-09", Percent: 10.2}}
	rec.Bins = []design.Bin{
		{Wood: "oak", Size: mm(36), Height: mm(26), Cut: 120, Rejects: 3, Revision: "3F7K2M"},
		{Wood: "oak", Size: mm(36), Height: mm(42), Revision: "3F7K2M"},
	}
	rec.Rows = []design.Rows{{Wall: 1, Group: 1, Panel: 2, Laid: []int{20, 21, 22}, Revision: "3F7K2M", Field: "ABCDEF"}}
	rec.Times = []design.Time{{Task: "c3", Reckoned: 169, Minutes: 201, Taught: 200, Before: 1.1}, {Task: "d2", Reckoned: 100, Minutes: 900, Sure: true}}
	rec.Spent = []design.Spent{{Line: "line/block-stock", Reckoned: design.Units(441), Amount: design.Units(470), Aside: true, Taught: design.Units(460)}}
	rec.Road = design.Road{Minutes: 150, Km: 84.5}
	rec.Held = &design.Held{
		Revision: "3F7K2M", Book: "ABCDEF", Currency: "EUR", Net: design.Units(2000), Cost: design.Units(1500), Reserve: design.Units(120),
		Beside: design.Units(20), Asked: 18, Floor: 12, Km: 80, PerKm: design.Units(1),
		Tasks: []design.HeldTask{{Task: "c3", Minutes: 169, PerHour: design.Units(48)}},
		Lines: []design.HeldLine{{Line: "line/block-stock", Amount: design.Units(441)}},
	}
	rec.SignOffs = []design.SignOff{{
		Check: "bench/not-measured", Name: "A. Maker", Reason: "Measured at the mill \" & checked", Day: "2026-03-02", Revision: "3F7K2M",
	}}
	rec.Learn = design.Learn{Aside: true, Why: "Flooded shop", From: "ABCDEF"}
	rec.Tools = []string{"mitre saw", "level"}
	rec.Printed = []string{"ABCDEF", "3F7K2M"}
	return rec
}

func TestRecordAndBack(t *testing.T) {
	for _, rec := range []design.Record{design.NewRecord(), fullRecord()} {
		require.NoError(t, design.ValidateRecord(rec))
		data := design.EncodeRecord(rec)
		again, err := design.DecodeRecord(data)
		require.NoError(t, err)
		assert.Equal(t, rec, again)
		assert.Equal(t, string(data), string(design.EncodeRecord(again)))
		assert.Equal(t, design.RecordFormat, design.FormatOf(data))
	}
}

// What was printed last stands last, once, and the oldest gives way.
func TestPrintedRevisions(t *testing.T) {
	rec := fullRecord()
	again := rec.WithPrinted("ABCDEF")
	assert.Equal(t, []string{"3F7K2M", "ABCDEF"}, again.Printed)
	assert.Equal(t, []string{"ABCDEF", "3F7K2M"}, rec.Printed, "as it was")
	for n := range 80 {
		again = again.WithPrinted(fmt.Sprintf("%06d", n))
	}
	require.NoError(t, design.ValidateRecord(again))
	assert.Equal(t, "000079", again.Printed[len(again.Printed)-1])
	assert.NotContains(t, again.Revisions(), "000000")
	assert.Contains(t, again.Revisions(), "000079")
}

// The standard library's encoder agrees on names, order, indentation and texts.
func TestRecordIsCanonical(t *testing.T) {
	var b strings.Builder
	e := json.NewEncoder(&b)
	e.SetEscapeHTML(false)
	e.SetIndent("", "  ")
	require.NoError(t, e.Encode(fullRecord()))
	assert.Equal(t, b.String(), string(design.EncodeRecord(fullRecord())))
}

func TestRecordSchema(t *testing.T) {
	s := compiled(t, design.RecordSchema())
	assert.NoError(t, validate(t, s, design.EncodeRecord(design.NewRecord())))
	assert.NoError(t, validate(t, s, design.EncodeRecord(fullRecord())))
	bad := strings.Replace(string(design.EncodeRecord(fullRecord())), `"cut": 120`, `"cut": -1`, 1)
	assert.Error(t, validate(t, s, []byte(bad)))
}

// What a file leaves out is as in a record that has not begun.
func TestShortRecord(t *testing.T) {
	rec, err := design.DecodeRecord([]byte(`{"format":"blockfield job record","version":1}`))
	require.NoError(t, err)
	assert.Equal(t, design.NewRecord(), rec)
	rec, err = design.DecodeRecord([]byte(`{"format":"blockfield job record","version":1,"bins":[{"cut":4}]}`))
	require.NoError(t, err)
	assert.Equal(t, 4, rec.Bins[0].Good())
}

func TestCloneOfARecordSharesNothing(t *testing.T) {
	rec := fullRecord()
	before := string(design.EncodeRecord(rec))
	c := design.CloneRecord(rec)
	c.Rows[0].Laid[0], c.Bins[0].Cut, c.Cards[0].Widths[0], c.Tools[0] = 1, 1, length.MM(1), "drill"
	assert.Equal(t, before, string(design.EncodeRecord(rec)))
}

// Wrong records are refused with path, value and range.
func TestRefusedRecords(t *testing.T) {
	good := string(design.EncodeRecord(fullRecord()))
	for _, c := range []struct{ old, now, want string }{
		{`"version": 1`, `"version": 2`, "version: "},
		{`"version": 1`, `"version": 0`, "version: "},
		{design.RecordFormat, design.Format, "format: "},
		{`"percent": 10.5`, `"percent": 3.9`, "meter[0].percent: 3.9 is out of range (allowed 4 % to 30 %)"},
		{`"percent": 10.5`, `"percent": 30.1`, "allowed 4 % to 30 %"},
		{`"day": "2026-03-09"`, `"day": "2026-02-29"`, "meter[1].day: 2026-02-29 is not a day"},
		{`"rejects": 3`, `"rejects": -1`, "bins[0].rejects: -1 is out of range"},
		{`"height": "42 mm"`, `"height": "2.6 cm"`, "bins[1].height: "},
		{`"wood": "oak"`, `"wood": "ebony"`, "cards[0].wood: "},
		{`"35.9 mm"`, `"9.9 mm"`, "cards[0].widths[1]: 9.9 mm is out of range (allowed 10 mm to 120 mm)"},
		{"21,\n        22", "22,\n        21", "rows[0].laid[2]: "},
		{"20,\n        21", "20,\n        20", "rows[0].laid[1]: "},
		{`"paper": "3F7K2M"`, `"paper": "3F7K2I"`, "lay.paper: 3F7K2I is not a code"},
		{`"start": "bottom"`, `"start": "left"`, "lay.start: left is not one of the choices"},
		{`"people": 1`, `"people": 5`, "days.people: 5 is out of range"},
		{`"check": "bench/not-measured"`, `"check": " "`, "signOffs[0].check: "},
		{`"mitre saw"`, `"level"`, "tools[1]: "},
		{`"learn":`, `"more": 1, "learn":`, "more: is not a field"},
	} {
		require.Contains(t, good, c.old)
		_, err := design.DecodeRecord([]byte(strings.Replace(good, c.old, c.now, 1)))
		if assert.ErrorContains(t, err, c.want, c.now) {
			checkFaults(t, err)
		}
	}
	for n := range good {
		if _, err := design.DecodeRecord([]byte(good[:n])); n < len(good)-1 {
			require.Error(t, err, "cut off at %d", n)
		}
	}
}

// A hostile record of full size neither hangs nor makes large allocations.
func TestHostileRecords(t *testing.T) {
	const size = 4<<20 - 200
	fill := func(piece string) string { return strings.Repeat(piece, size/len(piece)) }
	record := func(inner string) string {
		return `{"format":"blockfield job record","version":1,` + inner + `}`
	}
	for name, c := range map[string]struct{ file, want string }{
		"bins":     {record(`"bins":[` + fill("{},") + `{}]`), "entries (allowed 0 to 1152 entries)"},
		"rows":     {record(`"rows":[` + fill("{},") + `{}]`), "entries (allowed 0 to 768 entries)"},
		"laid":     {record(`"rows":[{"laid":[` + fill("1,") + `1]}]`), "entries (allowed 0 to 400 entries)"},
		"widths":   {record(`"cards":[{"widths":[` + fill(`"36 mm",`) + `"36 mm"]}]`), "entries (allowed 0 to 40 entries)"},
		"tools":    {record(`"tools":[` + fill(`"level",`) + `"level"]`), "entries"},
		"brackets": {record(`"x":` + fill("[")), "parts within parts"},
		"reason":   {record(`"signOffs":[{"reason":"` + fill("x") + `"}]`), "is too long"},
	} {
		t.Run(name, func(t *testing.T) {
			data := []byte(c.file)
			var before, after runtime.MemStats
			runtime.ReadMemStats(&before)
			_, err := design.DecodeRecord(data)
			runtime.ReadMemStats(&after)
			assert.ErrorContains(t, err, c.want)
			assert.Less(t, after.TotalAlloc-before.TotalAlloc, uint64(mostAlloc))
			assert.Less(t, len(err.Error()), 20_000)
		})
	}
}

// What is typed is read as in a design, and a refused value changes nothing.
func TestSetRecord(t *testing.T) {
	rec := fullRecord()
	set := func(path, text string, u length.Units) design.Record {
		t.Helper()
		next, err := design.SetRecord(rec, path, text, u)
		require.NoError(t, err)
		return next
	}
	assert.Equal(t, 125, set("bins[0].cut", "125", length.Metric).Bins[0].Cut)
	widths := set("cards[0].widths", "36.1, 36, 35.9 mm", length.Metric).Cards[0].Widths
	assert.Equal(t, "[36.1 mm 36 mm 35.9 mm]", fmt.Sprint(widths))
	assert.Equal(t, "1 1/2 in", set("cards[0].thicknesses", "1-1/2", length.Inch16).Cards[0].Thicknesses[0].String())
	assert.Equal(t, "2026-04-01", set("days.needBy", "2026-04-01", length.Metric).Days.NeedBy)
	assert.Empty(t, set("days.needBy", "", length.Metric).Days.NeedBy)
	assert.Equal(t, design.TopEdge, set("lay.start", "top", length.Metric).Lay.Start)
	assert.Equal(t, []string{"drill", "square"}, set("tools", "drill, square", length.Metric).Tools)
	assert.Equal(t, 10.5, set("meter[0].percent", "10.5 %", length.Metric).Meter[0].Percent)

	for path, text := range map[string]string{
		"bins[0].cut": "many", "bins[9].cut": "1", "bins": "1", "format": "x", "days.needBy": "tomorrow",
		"tools": "drill, drill", "rows[0].laid": "3, 2", "nothing": "1", "cards[0].size": "",
	} {
		next, err := design.SetRecord(rec, path, text, length.Metric)
		var faults design.Faults
		require.ErrorAs(t, err, &faults, path)
		assert.Equal(t, design.RecordPrefix+path, faults[0].Path)
		assert.Equal(t, rec, next)
	}
}

func TestEntriesOfARecord(t *testing.T) {
	rec := fullRecord()
	next, err := design.AddReading(rec, design.Reading{Day: "2026-03-16", Percent: 10.1})
	require.NoError(t, err)
	require.Len(t, next.Meter, 3)
	_, err = design.AddReading(rec, design.Reading{Day: "soon", Percent: 10.1})
	require.Error(t, err)
	back, err := design.RemoveEntry(next, "meter[0]")
	require.NoError(t, err)
	assert.Equal(t, []float64{10.2, 10.1}, []float64{back.Meter[0].Percent, back.Meter[1].Percent})
	assert.Len(t, next.Meter, 3, "the one before is not changed")
	for _, path := range []string{"meter[3]", "meter", "meter[0].day", "tools[0]", "nothing[0]", "meter[-1]"} {
		_, err := design.RemoveEntry(rec, path)
		assert.Error(t, err, path)
	}
}

// Each field of the table has a value that its form shows and takes back.
func TestEveryFieldOfARecordGoesThroughAForm(t *testing.T) {
	rec := fullRecord()
	for _, path := range []string{
		"days.start", "days.hoursPerDay", "lay.paper", "cards[0].widths", "cards[0].thicknesses", "meter[1].percent",
		"bins[1].height", "rows[0].laid", "spent[0].amount", "signOffs[0].reason", "learn.aside", "tools",
	} {
		f, ok := design.LookupRecord(path)
		require.True(t, ok, path)
		assert.NotEmpty(t, f.Doc)
		for _, u := range []length.Units{length.Metric, length.Inch32} {
			text, ok := design.RecordText(rec, path, u)
			require.True(t, ok, path)
			next, err := design.SetRecord(rec, path, text, u)
			require.NoError(t, err, path)
			assert.True(t, reflect.DeepEqual(rec, next), "%s as %q", path, text)
		}
	}
	_, ok := design.LookupRecord("bins[0].mass")
	assert.False(t, ok)
	_, ok = design.RecordText(rec, "bins", length.Metric)
	assert.False(t, ok)
}

func FuzzRecord(f *testing.F) {
	f.Add(design.EncodeRecord(design.NewRecord()), uint16(0), "1")
	f.Add(design.EncodeRecord(fullRecord()), uint16(9), "36, 36.2 mm")
	f.Add([]byte(`{"format":"blockfield job record","version":1,"rows":[{"laid":[1,2]},{}],"tools":["drill"]}`), uint16(20), "2026-01-01")
	paths := []string{
		"days.start", "days.hoursPerDay", "days.people", "lay.start", "lay.paper", "lay.at", "cards[0].widths", "meter[0].percent",
		"bins[0].cut", "bins[0].height", "rows[0].laid", "times[0].minutes", "spent[0].amount", "signOffs[0].reason", "tools",
	}
	f.Fuzz(func(t *testing.T, data []byte, at uint16, text string) {
		rec, err := design.DecodeRecord(data)
		if err != nil {
			checkFaults(t, err)
			rec = fullRecord()
		}
		check := func(rec design.Record) {
			if err := design.ValidateRecord(rec); err != nil {
				t.Fatalf("not valid: %v", err)
			}
			fixedPoint(t, design.EncodeRecord(rec), func(file []byte) ([]byte, error) {
				again, err := design.DecodeRecord(file)
				return design.EncodeRecord(again), err
			})
		}
		check(rec)
		before := string(design.EncodeRecord(rec))
		next, err := design.SetRecord(rec, paths[int(at)%len(paths)], text, length.Metric)
		if err != nil {
			checkFaults(t, err)
		}
		check(next)
		if string(design.EncodeRecord(rec)) != before {
			t.Fatal("setting a field changed the record before")
		}
	})
}
