package design_test

import (
	"bytes"
	"os"
	"strings"
	"testing"

	"blockfield/engine/design"
	"blockfield/engine/design/designtest"

	"github.com/santhosh-tekuri/jsonschema/v6"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// compiled compiles a schema as 2020-12, which also checks it against that
// draft's own schema.
func compiled(t *testing.T, schema []byte) *jsonschema.Schema {
	t.Helper()
	doc, err := jsonschema.UnmarshalJSON(bytes.NewReader(schema))
	require.NoError(t, err)
	c := jsonschema.NewCompiler()
	c.DefaultDraft(jsonschema.Draft2020)
	require.NoError(t, c.AddResource("schema.json", doc))
	s, err := c.Compile("schema.json")
	require.NoError(t, err)
	return s
}

func validate(t *testing.T, s *jsonschema.Schema, file []byte) error {
	t.Helper()
	doc, err := jsonschema.UnmarshalJSON(bytes.NewReader(file))
	require.NoError(t, err)
	return s.Validate(doc)
}

func TestSchemaTakesOurFiles(t *testing.T) {
	s := compiled(t, design.Schema())
	files := designtest.Files(t)
	full := design.Default()
	full.Looks = []design.Look{{Name: "kept", Design: full.Design}}
	full.Offer = &design.Offer{Revision: "ZZZZZZ", BookCode: "000000", Currency: "XXX", ValidUntil: "2028-02-29"}
	full.Design.Walls[0].Groups[0].Density = 480
	files["full"] = design.Encode(full)
	files["nearly nothing"] = []byte(in(""))
	for name, data := range files {
		_, err := design.Decode(data)
		require.NoError(t, err, name)
		assert.NoError(t, validate(t, s, data), name)
	}
}

// What the schema refuses, Decode refuses as well; the reverse need not hold.
func TestSchemaRefuses(t *testing.T) {
	s := compiled(t, design.Schema())
	for name, file := range map[string]string{
		"foreign":          `{"format":"other","version":1,"design":{}}`,
		"newer":            `{"format":"blockfield design","version":2,"design":{}}`,
		"no design":        `{"format":"blockfield design","version":1}`,
		"unknown":          in(`"colour":"red"`),
		"unknown, deep":    small(`"block":{"sise":"36 mm"}`),
		"number, not text": small(`"width":1200`),
		"no length":        small(`"width":"wide"`),
		"unknown wood":     small(`"wood":"teak"`),
		"turn":             small(`"pattern":{"turn":45}`),
		"clump":            small(`"pattern":{"clump":5}`),
		"one height":       small(`"heights":["5 mm"]`),
		"light wood":       small(`"density":50`),
		"no wall":          in(`"walls":[]`),
		"title":            in(`"title":"` + strings.Repeat("x", 121) + `"`),
		"empty goal":       in(`"room":{"goals":[""]}`),
		"half an offer":    `{"format":"blockfield design","version":1,"design":{},"offer":{}}`,
		"look":             `{"format":"blockfield design","version":1,"design":{},"looks":[{"design":{"work":{"crew":9}}}]}`,
	} {
		require.Error(t, validate(t, s, []byte(file)), name)
		_, err := design.Decode([]byte(file))
		require.Error(t, err, name)
	}
}

// Every way in which a length may be written in a file passes the pattern.
func TestSchemaTakesLengths(t *testing.T) {
	s := compiled(t, design.Schema())
	for _, text := range []string{
		"1200 mm", "1200mm", "120 cm", "1.2 m", "1,2 m", "47 1/4 in", "47-1/4 in", `47 1/4"`, "48in", "4 ft", `4' 0"`, `3' 11 1/4"`,
		"3 ft 11 in", " 1.2 m ", "4'", "48 inches",
	} {
		file := small(`"width":` + quoted(text))
		_, err := design.Decode([]byte(file))
		require.NoError(t, err, text)
		assert.NoError(t, validate(t, s, []byte(file)), text)
	}
}

func quoted(text string) string { return `"` + strings.ReplaceAll(text, `"`, `\"`) + `"` }

func TestBookSchema(t *testing.T) {
	s := compiled(t, design.BookSchema())
	data, err := os.ReadFile("../../testdata/books/placeholder.json")
	require.NoError(t, err)
	require.NoError(t, validate(t, s, data))
	for _, cut := range []string{`"currency": "XXX",`, `"perKm": "0.55",`, `"shop": "42",`, `"per": "job",`} {
		broken := strings.Replace(string(data), cut, "", 1)
		require.NotEqual(t, string(data), broken)
		assert.Error(t, validate(t, s, []byte(broken)), "without %s", cut)
	}
	assert.Error(t, validate(t, s, []byte(strings.Replace(string(data), `"42"`, `42`, 1))))
	assert.Error(t, validate(t, s, []byte(strings.Replace(string(data), `"42"`, `"4,2"`, 1))))
}

func TestSellingSchema(t *testing.T) {
	s := compiled(t, design.SellingSchema())
	data := design.EncodeSelling(design.SellingBook{Format: design.SellingFormat, Version: 1, Name: "Autumn", Currency: "EUR", Job: design.Units(600), Below: 10, Above: 20})
	require.NoError(t, validate(t, s, data))
	for _, change := range [][2]string{
		{`"currency": "EUR"`, `"currency": "EU"`}, {`"name": "Autumn"`, `"name": ""`}, {`"validUntil": ""`, `"validUntil": "soon"`}, {`  "job": "600",` + "\n", ""}, {`"job": "600"`, `"job": 600`},
		{`"below": 10`, `"below": 91`}, {`"job": "600"`, `"job": "600", "rates": {}`},
	} {
		broken := strings.Replace(string(data), change[0], change[1], 1)
		require.NotEqual(t, string(data), broken)
		assert.Error(t, validate(t, s, []byte(broken)), "%s", change[1])
		_, err := design.DecodeSelling([]byte(broken))
		assert.Error(t, err, "%s", change[1])
	}
}
