package page_test

import (
	"encoding/xml"
	"errors"
	"io"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
)

// node is an element of a page, or a text when its tag is empty.
type node struct {
	tag, text string
	attrs     map[string]string
	parent    *node
	kids      []*node
}

// parse reads a page or a part of one. The templates close what they open, so
// that the forgiving reader of XML is enough.
func parse(t testing.TB, text string) *node {
	t.Helper()
	d := xml.NewDecoder(strings.NewReader(text))
	d.Strict, d.AutoClose, d.Entity = false, xml.HTMLAutoClose, xml.HTMLEntity
	root := &node{tag: "root"}
	at := root
	for {
		token, err := d.Token()
		if errors.Is(err, io.EOF) {
			require.Equal(t, root, at, "an element is not closed")
			return root
		}
		require.NoError(t, err)
		switch token := token.(type) {
		case xml.StartElement:
			n := &node{tag: token.Name.Local, attrs: map[string]string{}, parent: at}
			for _, a := range token.Attr {
				require.NotContains(t, n.attrs, a.Name.Local, "twice in %s", n.tag)
				n.attrs[a.Name.Local] = a.Value
			}
			at.kids = append(at.kids, n)
			at = n
		case xml.EndElement:
			require.Equal(t, at.tag, token.Name.Local)
			at = at.parent
		case xml.CharData:
			at.kids = append(at.kids, &node{text: string(token), parent: at})
		}
	}
}

// walk calls visit for every element.
func (n *node) walk(visit func(*node)) {
	if n.tag == "" {
		return
	}
	visit(n)
	for _, k := range n.kids {
		k.walk(visit)
	}
}

// path is the field that a control edits, empty elsewhere.
func (n *node) path() string {
	switch n.tag {
	case "input", "select", "textarea":
		return n.attrs["name"]
	default:
		return ""
	}
}

// visible are the texts that a person sees or hears. Left out are the values of
// fields, the suggestions for them, and the revision, a code in every language.
func (n *node) visible() []string {
	if n.tag == "" {
		// Where lines do not end is tested for itself.
		if s := strings.ReplaceAll(strings.TrimSpace(n.text), "\u00a0", " "); s != "" {
			return []string{s}
		}
		return nil
	}
	var all []string
	for _, key := range []string{"title", "alt", "aria-label", "placeholder"} {
		if s := n.attrs[key]; s != "" {
			all = append(all, s)
		}
	}
	if n.tag == "textarea" || n.tag == "datalist" || n.tag == "script" || n.attrs["id"] == "revision" {
		return all
	}
	for _, k := range n.kids {
		all = append(all, k.visible()...)
	}
	return all
}
