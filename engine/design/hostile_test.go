package design_test

import (
	"fmt"
	"runtime"
	"strings"
	"testing"

	"blockfield/engine/design"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// mostAlloc is what reading any file may allocate in all: sixteen times the
// largest file, and far below what a browser gives a page.
const mostAlloc = 64 << 20

// A hostile file of full size neither hangs nor makes large allocations.
func TestHostileFiles(t *testing.T) {
	const size = 4<<20 - 200
	fill := func(piece string) string { return strings.Repeat(piece, size/len(piece)) }
	var names strings.Builder
	for i := 0; names.Len() < size-20; i++ {
		fmt.Fprintf(&names, `"n%d":0,`, i)
	}
	for name, c := range map[string]struct{ file, want string }{
		"walls":         {in(`"walls":[` + fill("{},") + `{}]`), "entries (allowed 1 to 8 entries)"},
		"heights":       {small(`"heights":[` + fill(`"1 mm",`) + `"1 mm"]`), "entries (allowed 2 to 9 entries)"},
		"drawn":         {small(`"pattern":{"drawn":[` + fill(`"0",`) + `"0"]}`), "entries (allowed 0 to 400 entries)"},
		"wide drawing":  {small(`"pattern":{"kind":"drawn","drawn":["` + fill("0") + `"]}`), "is too long"},
		"looks":         {`{"format":"blockfield design","version":1,"design":{},"looks":[` + fill(`{"design":{}},`) + `{}]}`, "allowed 0 to 3"},
		"assumed":       {`{"format":"blockfield design","version":1,"design":{},"assumed":[` + fill(`"a",`) + `"a"]}`, "allowed 0 to 4000"},
		"names":         {in(names.String() + `"title":""`), "more"},
		"same name":     {in(fill(`"title":"",`) + `"title":""`), "is given twice"},
		"unknown list":  {in(`"x":[` + fill("0,") + "0]"), "is not a field of the document"},
		"long name":     {in(`"` + fill("x") + `":0`), "is not a field of the document"},
		"long text":     {in(`"title":"` + fill("x") + `"`), "is too long"},
		"long length":   {small(`"width":"` + fill("1") + `"`), "is out of range"},
		"long number":   {small(`"density":` + fill("1")), "is out of range"},
		"brackets":      {in(`"x":` + fill("[")), "parts within parts"},
		"wrong kind":    {in(`"title":[` + fill("[],") + "[]]"), "is of the wrong kind"},
		"nested groups": {in(`"walls":[` + strings.Repeat(`{"groups":[`+strings.Repeat("{},", 999)+"{}]},", 999) + "{}]"), "allowed 1 to 8"},
	} {
		t.Run(name, func(t *testing.T) {
			require.LessOrEqual(t, len(c.file), 4<<20)
			data := []byte(c.file)
			var before, after runtime.MemStats
			runtime.ReadMemStats(&before)
			_, err := design.Decode(data)
			runtime.ReadMemStats(&after)
			assert.ErrorContains(t, err, c.want)
			assert.Less(t, after.TotalAlloc-before.TotalAlloc, uint64(mostAlloc))
			assert.Less(t, len(err.Error()), 20_000, "the message stays readable")
		})
	}
}
