package page

import (
	"slices"
	"strings"
	"sync"
)

// Frame is what stands around the sections and the strip, which no other answer draws
// anew, in the language of a reader.
type Frame struct {
	Says      map[string]string // what elements say whose data-say, or data-say-title and so on, names the key
	Fragments []Fragment
}

// FrameOf returns the frame for the reader of in.
func FrameOf(in Input) Frame {
	v := newView(in)
	f := Frame{Says: map[string]string{}, Fragments: []Fragment{{"paints", v.render("paints", v)}}}
	for _, c := range []Control{v.Units(), v.ReadingChoice()} {
		f.Fragments = append(f.Fragments, Fragment{c.ID, v.render("entries", c)})
	}
	for _, key := range frameKeys() {
		f.Says[key] = v.T(key)
	}
	for _, family := range []string{"message/", "late/"} {
		for _, m := range v.family(family) {
			f.Says[family+m.Key] = m.Text
		}
	}
	return f
}

// frameKeys are the keys that the template of the page names, but for those of families.
var frameKeys = sync.OnceValue(func() []string {
	text, err := templateFiles.ReadFile("templates/index.tmpl")
	must(err)
	var all []string
	for _, after := range strings.Split(string(text), " data-say")[1:] {
		_, rest, _ := strings.Cut(after, `"`)
		if key, _, _ := strings.Cut(rest, `"`); !strings.Contains(key, "{{") {
			all = append(all, key)
		}
	}
	slices.Sort(all)
	return slices.Compact(all)
})
