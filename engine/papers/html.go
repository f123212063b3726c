package papers

import (
	_ "embed"
	"encoding/base64"
	"html/template"
	"strings"

	"blockfield/engine/papers/sheet"
)

// Fonts are the two faces that sheets are set in, as TrueType. They are given by
// whoever writes a file, so that the engine's module need not hold them.
type Fonts struct{ Regular, Bold []byte }

//go:embed set.tmpl
var setText string

var setTemplate = template.Must(template.New("set").Parse(setText))

// HTML is a set as one document that needs nothing else: it prints as it stands
// from any browser, at the size of its paper.
func (s Set) HTML(lang string, fonts Fonts) []byte {
	svg := make([]template.HTML, len(s.Sheets))
	for i, one := range s.Sheets {
		svg[i] = template.HTML(one.SVG) // written by package draw, which escapes
	}
	var b strings.Builder
	err := setTemplate.Execute(&b, map[string]any{
		"Lang": lang, "Title": s.Title, "Size": template.CSS(s.Format.Name), "Family": template.CSS(sheet.Family),
		"Regular": dataFont(fonts.Regular), "Bold": dataFont(fonts.Bold), "Sheets": svg,
	})
	if err != nil {
		panic("papers: internal error: " + err.Error())
	}
	return []byte(b.String())
}

func dataFont(ttf []byte) template.CSS {
	return template.CSS("url(data:font/ttf;base64," + base64.StdEncoding.EncodeToString(ttf) + `) format("truetype")`)
}
