package session_test

import (
	"encoding/json"
	"go/ast"
	"go/parser"
	"go/token"
	"strconv"
	"strings"
	"testing"

	"blockfield/engine/design"
	"blockfield/engine/scene"
	"blockfield/engine/session"
	"blockfield/engine/words"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

const group = "walls[0].groups[0]"

func fresh() *session.Session { return session.New(design.DefaultBook()) }

func ask(t testing.TB, s *session.Session, req session.Request) session.Response {
	t.Helper()
	data, err := json.Marshal(req)
	require.NoError(t, err)
	var res session.Response
	require.NoError(t, json.Unmarshal(s.Handle(data), &res))
	assert.Equal(t, req.ID, res.ID)
	if res.Record != nil {
		assert.NotEmpty(t, res.Text, "a record is kept with its design: %+v", req)
		assert.NotEmpty(t, res.Revision)
	}
	return res
}

func set(t testing.TB, s *session.Session, path, value string) session.Response {
	t.Helper()
	return ask(t, s, session.Request{ID: 7, Op: "set", Path: path, Value: value})
}

func TestHelloBringsThePageAlive(t *testing.T) {
	res := ask(t, fresh(), session.Request{ID: 1, Op: "hello"})
	assert.True(t, res.OK)
	assert.NotEmpty(t, res.Fragments)
	_, err := scene.Decode(res.Scene)
	assert.NoError(t, err)
	doc, err := design.Decode([]byte(res.Text))
	require.NoError(t, err)
	assert.Equal(t, res.Revision, doc.Design.Revision())
	assert.False(t, res.CanUndo)
}

func TestSetChangesPictureAndRevision(t *testing.T) {
	s := fresh()
	before := ask(t, s, session.Request{Op: "hello"})
	after := set(t, s, group+".width", "1.5 m")
	assert.True(t, after.OK, "%v", after.Faults)
	assert.NotEqual(t, before.Revision, after.Revision)
	assert.NotEqual(t, before.Scene, after.Scene)
	assert.Equal(t, 41, s.Plan().Groups[0].Built.Columns, "1500 / 36.2 = 41.4")
	assert.True(t, after.CanUndo)
}

func TestRefusedValueChangesNothing(t *testing.T) {
	for name, c := range map[string]struct{ path, value, want string }{
		"impossible size":    {group + ".width", "12 mm", "300 mm"},
		"no length":          {group + ".width", "wide", "is not a length"},
		"unknown wood":       {group + ".wood", "unobtainium", "poplar"},
		"order not prime":    {group + ".pattern.order", "24", "prime"},
		"heights not rising": {group + ".heights", "42, 26, 64", "rise"},
	} {
		s := sequenceKind(t, fresh())
		before := s.Plan().Revision
		res := set(t, s, c.path, c.value)
		require.NotEmpty(t, res.Faults, name)
		assert.False(t, res.OK, name)
		assert.Equal(t, c.path, res.Faults[0].Path, name)
		assert.NotEmpty(t, res.Faults[0].Label, "%s: what the page calls the field", name)
		assert.Contains(t, res.Faults[0].Message, c.want, name)
		assert.Equal(t, before, s.Plan().Revision, name)
		ask(t, s, session.Request{Op: "undo"})
		assert.Equal(t, fresh().Plan().Revision, s.Plan().Revision, "%s: the refused edit is no step of the history", name)
	}
}

// sequenceKind chooses a pattern that needs a prime order.
func sequenceKind(t *testing.T, s *session.Session) *session.Session {
	t.Helper()
	require.True(t, set(t, s, group+".pattern.kind", "quadratic residue").OK)
	return s
}

// An edit that is meant for a design that is not shown any more changes nothing.
func TestAnEditIsOfItsOpening(t *testing.T) {
	s := fresh()
	first := ask(t, s, session.Request{Op: "hello"})
	doc, _, err := design.Add(design.Default(), "walls")
	require.NoError(t, err)
	second := ask(t, s, session.Request{Op: "open", Text: string(design.Encode(doc)), From: "file"})
	require.NotEqual(t, first.Opening, second.Opening)
	res := ask(t, s, session.Request{Op: "set", Path: group + ".width", Value: "777 mm", Of: &first.Opening})
	assert.False(t, res.OK)
	assert.True(t, res.Elsewhere)
	assert.Equal(t, second.Revision, s.Plan().Revision)
	for _, req := range []session.Request{
		{Op: "drag", Kind: "reset"}, {Op: "drag", Kind: "orbit", DX: 0.1}, {Op: "drag", Kind: "zoom", Factor: 1.1},
		{Op: "drag", Kind: "view", Name: "three-quarter", Width: 800, Height: 600}, {Op: "drag", Kind: "light", Name: "lamp"},
		{Op: "section", Name: "wall"}, {Op: "act", Name: "keep-look"}, {Op: "save"}, {Op: "link"},
	} {
		assert.Equal(t, second.Opening, ask(t, s, req).Opening, "the next edit is of what %v answers", req)
	}
	res = ask(t, s, session.Request{Op: "set", Path: group + ".width", Value: "777 mm", Of: &second.Opening})
	assert.True(t, res.OK, "%v", res.Faults)
	assert.NotEqual(t, second.Revision, s.Plan().Revision)
}

func TestUndoAndRedo(t *testing.T) {
	s := fresh()
	first := s.Plan().Revision
	second := set(t, s, group+".wood", "walnut").Revision
	third := set(t, s, group+".block.size", "44").Revision
	assert.Equal(t, second, ask(t, s, session.Request{Op: "undo"}).Revision)
	res := ask(t, s, session.Request{Op: "undo"})
	assert.Equal(t, first, res.Revision)
	assert.False(t, res.CanUndo)
	assert.Equal(t, second, ask(t, s, session.Request{Op: "redo"}).Revision)
	assert.Equal(t, third, ask(t, s, session.Request{Op: "redo"}).Revision)
	ask(t, s, session.Request{Op: "undo"})
	set(t, s, group+".wood", "oak")
	assert.False(t, ask(t, s, session.Request{Op: "hello"}).CanRedo, "an edit ends what could be redone")
}

func TestEditsThatGoAlongAreOneStep(t *testing.T) {
	s := fresh()
	first := s.Plan().Revision
	res := ask(t, s, session.Request{Op: "set", Path: group + ".wood", Value: "walnut",
		Also: []session.Value{{Path: group + ".frame.wood", Value: "walnut"}}})
	assert.True(t, res.OK, "%v", res.Faults)
	assert.Contains(t, res.Values, session.Value{Path: group + ".frame.wood", Value: "walnut"})
	assert.Equal(t, first, ask(t, s, session.Request{Op: "undo"}).Revision)
	res = ask(t, s, session.Request{Op: "set", Path: group + ".wood", Value: "walnut",
		Also: []session.Value{{Path: group + ".frame.wood", Value: "glass"}}})
	assert.NotEmpty(t, res.Faults)
	assert.Equal(t, first, s.Plan().Revision, "all or nothing")
}

func TestControlsOutsideTheSectionsFollow(t *testing.T) {
	s := fresh()
	set(t, s, "view.units", "in/16")
	text := ask(t, s, session.Request{Op: "hello"}).Text
	res := ask(t, fresh(), session.Request{Op: "open", Text: text, From: "saved"})
	assert.Contains(t, res.Values, session.Value{Path: "view.units", Value: "in/16"})
	res = ask(t, fresh(), session.Request{Op: "open", Text: text, From: "file"})
	assert.Contains(t, res.Values, session.Value{Path: "view.units", Value: "in/16"}, "a job measured in inches opens in inches")
	assert.Contains(t, res.Values, session.Value{Path: "view.reading", Value: "client"})
}

func TestAWishedSizeGivesUpAFixedCount(t *testing.T) {
	s := fresh()
	set(t, s, group+".columns", "20")
	assert.Equal(t, 20, s.Plan().Groups[0].Built.Columns)
	res := set(t, s, group+".width", "1 m")
	assert.Equal(t, 28, s.Plan().Groups[0].Built.Columns, "1000 / 36.2 = 27.6")
	assert.Contains(t, res.Values, session.Value{Path: group + ".columns", Value: "0"})
	set(t, s, group+".rows", "10")
	set(t, s, group+".block.size", "44 mm")
	assert.Equal(t, 18, s.Plan().Groups[0].Built.Rows, "800 / 44.2 = 18.1")
}

func TestWhoReadsDecidesWhoBuilds(t *testing.T) {
	s := fresh()
	set(t, s, "view.reading", "builder")
	assert.True(t, s.Document().Design.Work.OwnBuild)
	assert.False(t, s.Plan().Price.Sold)
	set(t, s, "view.reading", "maker")
	assert.False(t, s.Document().Design.Work.OwnBuild)
	assert.True(t, s.Plan().Price.Sold)
}

func TestReopeningLeavesNothingToUndo(t *testing.T) {
	s := fresh()
	text := set(t, s, group+".wood", "oak").Text
	other := fresh()
	res := ask(t, other, session.Request{Op: "open", Text: text, From: "saved"})
	assert.False(t, res.CanUndo)
	assert.Equal(t, s.Plan().Revision, res.Revision)
}

func TestLookingIsNotAnEdit(t *testing.T) {
	s := fresh()
	set(t, s, "view.lamp.azimuth", "90")
	set(t, s, "view.units", "in/16")
	res := ask(t, s, session.Request{Op: "drag", Kind: "orbit", DX: 0.2})
	assert.True(t, res.OK, "%v", res.Faults)
	assert.False(t, ask(t, s, session.Request{Op: "hello"}).CanUndo)
	assert.NotZero(t, s.Document().View.Camera.Yaw)
}

func TestSaveAndOpenGiveTheSameRevision(t *testing.T) {
	s := fresh()
	want := set(t, s, group+".wood", "cherry").Revision
	file := ask(t, s, session.Request{Op: "save"}).File
	require.NotNil(t, file)
	assert.Equal(t, "panel-for-a-living-room-"+want+".json", file.Name)
	other := fresh()
	assert.Equal(t, want, ask(t, other, session.Request{Op: "open", Text: file.Text, From: "file"}).Revision)
}

func TestLinkOpensTheSameDesign(t *testing.T) {
	s := fresh()
	want := set(t, s, group+".pattern.kind", "primitive root").Revision
	link := ask(t, s, session.Request{Op: "link"}).Link
	other := fresh()
	assert.Equal(t, want, ask(t, other, session.Request{Op: "open", Link: link, From: "link"}).Revision)
	middle := len(link) / 2
	tampered := link[:middle] + "AAAAAAAA" + link[middle+8:]
	res := ask(t, other, session.Request{Op: "open", Link: tampered, From: "link"})
	assert.NotEmpty(t, res.Faults)
	assert.Equal(t, want, other.Plan().Revision)
}

func TestBadFilesLoseNothing(t *testing.T) {
	whole := string(design.Encode(design.Default()))
	for name, text := range map[string]string{
		"truncated":     whole[:len(whole)/2],
		"foreign":       `{"kind":"shopping list","items":[1,2,3]}`,
		"a list":        "[1, 2]",
		"not JSON":      "PK\x03\x04",
		"empty":         "",
		"newer":         strings.Replace(whole, `"version": 1`, `"version": 9`, 1),
		"unknown field": strings.Replace(whole, `"title"`, `"tite"`, 1),
		"deep":          strings.Repeat(`{"a":`, 5000) + strings.Repeat("}", 5000),
	} {
		s := fresh()
		want := set(t, s, group+".wood", "ash").Revision
		res := ask(t, s, session.Request{Op: "open", Text: text, From: "file"})
		require.NotEmpty(t, res.Faults, name)
		assert.NotContains(t, res.Faults[0].Message, "⟪", name)
		assert.NotContains(t, res.Faults[0].Message, "found .", name)
		assert.Equal(t, want, s.Plan().Revision, name)
	}
}

func TestShuffleAgain(t *testing.T) {
	s := fresh()
	res := ask(t, s, session.Request{Op: "act", Name: "shuffle-again", Path: group})
	assert.True(t, res.OK, "%v", res.Faults)
	assert.EqualValues(t, 2, s.Document().Design.Walls[0].Groups[0].Pattern.Seed)
	assert.Contains(t, res.Values, session.Value{Path: group + ".pattern.seed", Value: "2"})
}

func TestCompanionsComeAsValues(t *testing.T) {
	s := sequenceKind(t, fresh())
	set(t, s, group+".pattern.order", "17")
	res := set(t, s, group+".pattern.kind", "primitive root")
	assert.Equal(t, 1, len(res.Values), "17 cannot be folded: %v", res.Values)
	assert.Equal(t, group+".pattern.order", res.Values[0].Path)
}

func TestNonsenseIsAnswered(t *testing.T) {
	s := fresh()
	for _, request := range []string{"", "{", `{"op":"fly"}`, `{"op":"act","name":"?"}`, `{"op":"set","path":"walls[9].width","value":"1 m"}`} {
		var res session.Response
		require.NoError(t, json.Unmarshal(s.Handle([]byte(request)), &res), request)
		assert.False(t, res.OK, request)
		assert.NotEmpty(t, res.Faults, request)
	}
}

// Every code of a fault in package design has a sentence.
func TestFaultsHaveSentences(t *testing.T) {
	file, err := parser.ParseFile(token.NewFileSet(), "../design/codes.go", nil, 0)
	require.NoError(t, err)
	n := 0
	ast.Inspect(file, func(node ast.Node) bool {
		spec, ok := node.(*ast.ValueSpec)
		if !ok || len(spec.Values) != 1 {
			return true
		}
		if name, ok := spec.Type.(*ast.Ident); !ok || name.Name != "Code" {
			return true
		}
		code, err := strconv.Unquote(spec.Values[0].(*ast.BasicLit).Value)
		require.NoError(t, err)
		assert.True(t, words.English().Has("fault/"+code), code)
		assert.True(t, words.English().Has("error/"+code), code)
		n++
		return true
	})
	assert.Greater(t, n, 20)
}

func FuzzHandle(f *testing.F) {
	for _, seed := range []string{
		`{"op":"hello"}`, `{"op":"set","path":"walls[0].groups[0].width","value":"1 m"}`, `{"op":"undo"}`,
		`{"op":"open","text":"{}"}`, `{"op":"drag","kind":"zoom","factor":1e300}`, `{"op":"act","name":"remove","path":"walls[0]"}`,
	} {
		f.Add(seed)
	}
	f.Fuzz(func(t *testing.T, request string) {
		var res session.Response
		if err := json.Unmarshal(fresh().Handle([]byte(request)), &res); err != nil {
			t.Fatal(err)
		}
		for _, fault := range res.Faults {
			if strings.Contains(fault.Message, "internal error: runtime error") {
				t.Fatalf("%q: %s", request, fault.Message)
			}
		}
	})
}

func BenchmarkSetWidth(b *testing.B) {
	s := fresh()
	data, _ := json.Marshal(session.Request{Op: "set", Path: group + ".width", Value: "1.5 m"})
	back, _ := json.Marshal(session.Request{Op: "set", Path: group + ".width", Value: "1.2 m"})
	for b.Loop() {
		s.Handle(data)
		s.Handle(back)
	}
}

// A panel in the middle of its wall stays there when its width changes, or the
// wall's; one that stands elsewhere, or that is placed by the same edit, keeps
// its left edge. By hand, with a frame of 20 mm and a gap of 3 mm on each side:
// 41 × 36.2 + 46 = 1530.2 wide, (3500 − 1530.2) / 2 = 984.9; 33 × 36.2 + 46 =
// 1240.6, (4000 − 1240.6) / 2 = 1379.7.
func TestAPanelStaysInTheMiddle(t *testing.T) {
	left := func(s *session.Session) string { return s.Document().Design.Walls[0].Groups[0].Place.Left.String() }
	for name, c := range map[string]struct{ first, path, value, want string }{
		"wider panel":        {"", group + ".width", "1.5 m", "985 mm"},
		"wider wall":         {"", "walls[0].width", "4 m", "1380 mm"},
		"other blocks":       {"", group + ".block.size", "44 mm", "1130 mm"}, // 27 × 44.2 + 46 = 1239.4, to 1130.3
		"another wood":       {"", group + ".wood", "oak", "1130 mm"},
		"typed place":        {"", group + ".place.left", "500 mm", "500 mm"},
		"stands to the left": {"500 mm", group + ".width", "1.5 m", "500 mm"},
		"nearly the middle":  {"1139 mm", group + ".width", "1.5 m", "985 mm"},
		"just beside it":     {"1141 mm", group + ".width", "1.5 m", "1141 mm"},
	} {
		t.Run(name, func(t *testing.T) {
			s := fresh()
			if c.first != "" {
				set(t, s, group+".place.left", c.first)
			}
			before := s.Plan().Revision
			res := set(t, s, c.path, c.value)
			require.True(t, res.OK, "%v", res.Faults)
			assert.Equal(t, c.want, left(s))
			if strings.HasPrefix(name, "wider") {
				assert.Contains(t, res.Values, session.Value{Path: group + ".place.left", Value: c.want}, "its field follows")
			}
			ask(t, s, session.Request{Op: "undo"})
			assert.Equal(t, before, s.Plan().Revision, "one step")
		})
	}
}

// The same size in another notation is no other design, and nothing to undo.
func TestAnotherNotationIsNoStep(t *testing.T) {
	s := fresh()
	metres := set(t, s, group+".width", "0.9 m")
	require.True(t, metres.CanUndo)
	mm := set(t, s, group+".width", "900 mm")
	assert.Equal(t, metres.Revision, mm.Revision)
	assert.Contains(t, mm.Text, `"width": "900 mm"`, "what was typed is kept")
	undone := ask(t, s, session.Request{Op: "undo"})
	assert.False(t, undone.CanUndo, "one edit, one step")
	assert.Equal(t, fresh().Plan().Revision, undone.Revision)
}

// An answer says which opening of a design it goes back to, so that whoever keeps
// designs does not write one over another; and a step back to the design before
// brings the units that it was seen in.
func TestStepsLeadOverOpenings(t *testing.T) {
	s := fresh()
	first := ask(t, s, session.Request{Op: "hello"})
	require.True(t, set(t, s, "view.units", "in/16").OK)
	mine := set(t, s, group+".width", "1.5 m")
	assert.Equal(t, first.Opening, mine.Opening)

	same := ask(t, s, session.Request{Op: "open", Text: mine.Text, From: "file"})
	assert.Equal(t, mine.Opening, same.Opening, "the same design is no other one")
	file := ask(t, s, session.Request{Op: "open", Text: first.Text, From: "file"})
	assert.NotEqual(t, mine.Opening, file.Opening)
	assert.Contains(t, file.Values, session.Value{Path: "view.units", Value: "mm"}, "a file opens in its own units")
	set(t, s, group+".height", "1 m")

	ask(t, s, session.Request{Op: "undo"})
	back := ask(t, s, session.Request{Op: "undo"})
	assert.Equal(t, mine.Opening, back.Opening)
	assert.Equal(t, mine.Revision, back.Revision)
	assert.Contains(t, back.Values, session.Value{Path: "view.units", Value: "in/16"})
	again := ask(t, s, session.Request{Op: "redo"})
	assert.Equal(t, file.Opening, again.Opening)
	assert.Contains(t, again.Values, session.Value{Path: "view.units", Value: "mm"})

	saved := ask(t, s, session.Request{Op: "open", Text: mine.Text, From: "saved"})
	assert.NotContains(t, []int{mine.Opening, file.Opening}, saved.Opening)
}

func TestARefusedDesignSaysWhatStays(t *testing.T) {
	for _, req := range []session.Request{
		{Op: "open", Text: "{", From: "file"},
		{Op: "open", Link: "nonsense", From: "link"},
	} {
		assert.Equal(t, "Your design is as it was.", ask(t, fresh(), req).Stays)
	}
}
