package design_test

import (
	"strings"
	"testing"

	"blockfield/engine/design"
	"blockfield/engine/design/designtest"
	"blockfield/engine/length"
	"blockfield/engine/words"
)

// concrete turns a path of the table into one that leads to the first entry of
// every list of parts, and to all of a list of values.
func concrete(pattern string) string {
	return strings.TrimPrefix(strings.ReplaceAll(pattern, "[]", "[0]"), "design.")
}

// pseudo reads every sentence in the language of the tests.
var pseudo = words.Reader{Language: words.Pseudo(), Units: length.Inch32}

func FuzzDecode(f *testing.F) {
	for _, data := range designtest.Files(f) {
		f.Add(data)
	}
	f.Add(design.Encode(design.Default()))
	f.Add(append([]byte("\uFEFF"), design.Encode(design.Default())...))
	f.Add([]byte(small(`"panelsWide":12,"columns":44,"panelGap":"3 m","place":{"edge":"top"}`)))
	for _, s := range []string{"", "{}", in(""), in(`"title":"\ud800"`), small(`"heights":["1 mm","1 in"]`), strings.Repeat("[", 100)} {
		f.Add([]byte(s))
	}
	f.Fuzz(func(t *testing.T, data []byte) {
		doc, err := design.Decode(data)
		if err != nil {
			checkFaults(t, err)
			return
		}
		if err := design.Validate(doc); err != nil {
			t.Fatalf("read, but not valid: %v", err)
		}
		file := design.Encode(doc)
		again, err := design.Decode(file)
		if err != nil {
			t.Fatalf("written, but not read: %v\n%s", err, file)
		}
		if string(design.Encode(again)) != string(file) {
			t.Fatalf("no fixed point:\n%s", file)
		}
		if again.Design.Revision() != doc.Design.Revision() {
			t.Fatal("another revision after writing and reading")
		}
	})
}

// checkFaults holds what every refusal promises: to be found by code, to be
// said in full to everybody, and to keep what it was given short and plain.
func checkFaults(t *testing.T, err error) {
	faults, ok := err.(design.Faults)
	if !ok || len(faults) == 0 || len(faults) > 51 {
		t.Fatalf("%d faults of type %T", len(faults), err)
	}
	for _, f := range faults {
		for _, text := range []string{f.Error(), f.Say(pseudo)} {
			if f.Code == "" || len(text) > 2000 || strings.Contains(text, "⟪") || words.Printable(text) != text {
				t.Fatalf("fault %+v is said as %q", f, text)
			}
		}
	}
}

func FuzzSet(f *testing.F) {
	for i := range design.Fields() {
		f.Add(uint16(i), "1 1/2 in", uint16(0), "yes")
		f.Add(uint16(i), "-1", uint16(i/2), "26, 42; 64")
	}
	rows := design.Fields()
	units := []length.Units{length.Metric, length.Inch16, length.Inch32}
	f.Fuzz(func(t *testing.T, one uint16, text string, other uint16, text2 string) {
		doc := design.Default()
		for i, edit := range []struct {
			row  uint16
			text string
		}{{one, text}, {other, text2}, {one, text}} {
			path := concrete(rows[int(edit.row)%len(rows)].Path)
			before := string(design.Encode(doc))
			next, err := design.Set(doc, path, edit.text, units[i])
			if string(design.Encode(doc)) != before {
				t.Fatalf("setting %s changed its document", path)
			}
			if err != nil {
				checkFaults(t, err)
				if string(design.Encode(next)) != before {
					t.Fatalf("a refused edit of %s changed something", path)
				}
				continue
			}
			if err := design.Validate(next); err != nil {
				t.Fatalf("%s = %q gives %v", path, edit.text, err)
			}
			file := design.Encode(next)
			again, err := design.Decode(file)
			if err != nil || string(design.Encode(again)) != string(file) {
				t.Fatalf("%s = %q: not read back: %v", path, edit.text, err)
			}
			doc = next
		}
	})
}

func FuzzPath(f *testing.F) {
	for _, s := range []string{"walls[0].width", "walls[0", "a.b[", "]", "[[0]]", "walls[1].groups[2].heights[3]", "view..lamp"} {
		f.Add(s)
	}
	f.Fuzz(func(t *testing.T, path string) {
		doc := design.Default()
		design.Lookup(path)
		_, got := design.Get(doc, path)
		if _, ok := design.Text(doc, path, length.Metric); ok && !got {
			t.Fatalf("%q has a text and no value", path)
		}
		if _, err := design.Set(doc, path, "1", length.Metric); err == nil && !got {
			t.Fatalf("%q was set and cannot be got", path)
		}
		if next, _, err := design.Add(doc, path); err == nil && design.Validate(next) != nil {
			t.Fatalf("adding to %q breaks the design", path)
		}
		if next, err := design.Remove(doc, path); err == nil && design.Validate(next) != nil {
			t.Fatalf("removing %q breaks the design", path)
		}
	})
}

func FuzzLink(f *testing.F) {
	link, err := design.EncodeLink(design.Default())
	if err != nil {
		f.Fatal(err)
	}
	f.Add(link, []byte(in("")))
	f.Add("#"+link[:40], []byte("{}"))
	f.Fuzz(func(t *testing.T, text string, plain []byte) {
		if len(plain) > 2<<20 {
			return
		}
		for _, fragment := range []string{text, packed(t, plain)} {
			doc, err := design.DecodeLink(fragment)
			if err != nil {
				checkFaults(t, err)
				continue
			}
			doc.Looks = nil
			again, err := design.EncodeLink(doc)
			if err != nil {
				checkFaults(t, err) // a drawing may be too much for a link
				continue
			}
			back, err := design.DecodeLink(again)
			if err != nil || string(design.Encode(back)) != string(design.Encode(doc)) {
				t.Fatalf("a link is not read back: %v", err)
			}
		}
	})
}

func FuzzBook(f *testing.F) {
	f.Add([]byte(placeholder(f)))
	f.Add(design.EncodeSelling(design.SellingBook{Format: design.SellingFormat, Version: 1, Name: "Autumn", Currency: "EUR", Below: 1}))
	f.Add([]byte(`{"format":"blockfield price book","version":1,"stages":[{}]}`))
	f.Fuzz(func(t *testing.T, data []byte) {
		if book, err := design.DecodeBook(data); err != nil {
			checkFaults(t, err)
		} else {
			fixedPoint(t, design.EncodeBook(book), func(file []byte) ([]byte, error) {
				again, err := design.DecodeBook(file)
				return design.EncodeBook(again), err
			})
		}
		if selling, err := design.DecodeSelling(data); err != nil {
			checkFaults(t, err)
		} else {
			fixedPoint(t, design.EncodeSelling(selling), func(file []byte) ([]byte, error) {
				again, err := design.DecodeSelling(file)
				return design.EncodeSelling(again), err
			})
		}
	})
}

// fixedPoint holds that what was written is read and written again as it is.
func fixedPoint(t *testing.T, file []byte, again func([]byte) ([]byte, error)) {
	t.Helper()
	if back, err := again(file); err != nil || string(back) != string(file) {
		t.Fatalf("no fixed point: %v\n%s", err, file)
	}
}
