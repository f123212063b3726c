package page

import (
	"html/template"
	"strings"

	"blockfield/engine"
	"blockfield/engine/words"
)

// exampleView is an example as the gallery shows it.
type exampleView struct {
	Address, Title, Line string
	Titles, Lines        []InLanguage // the same in each language
	Picture              template.HTML
}

// Part of a field that a gallery shows.
const (
	exampleColumns = 20
	exampleRows    = 12
)

// InLanguage is a text of the frame in one of the languages.
type InLanguage struct{ Tag, Text string }

// inEach says something in each of the languages.
func (v *view) inEach(say func(*view) string) []InLanguage {
	var all []InLanguage
	for _, tag := range words.Tags() {
		other := *v
		other.Words.Language = words.In(tag)
		all = append(all, InLanguage{tag, say(&other)})
	}
	return all
}

type indexData struct {
	*view
	Assets  Assets
	Gallery []exampleView
}

// examples plans every example: what the gallery says of it is what its page
// will say.
func (v *view) examples(all []Example) ([]exampleView, error) {
	var views []exampleView
	for _, e := range all {
		plan, err := engine.Plan(e.Doc.Design, v.Book)
		if err != nil {
			return nil, err
		}
		g := plan.Groups[0]
		panels := len(g.Built.Panels)
		title := func(v *view) string { return v.Words.Given(e.Doc.Design.Title) }
		line := func(v *view) string {
			return together(v.T("example/line", "wood", g.Design.WoodName(), "n", panels,
				"width", v.Words.Number(v.Whole(g.Built.TotalWidth)), "height", v.Whole(g.Built.TotalHeight)))
		}
		views = append(views, exampleView{
			Address: e.Address, Title: title(v), Titles: v.inEach(title), Line: line(v), Lines: v.inEach(line),
			Picture: template.HTML(fieldPicture("", corner(g.Built.Panels[0].Grid, exampleColumns, exampleRows), 1, 0)),
		})
	}
	return views, nil
}

// BrandName is the name that the site has.
func (d indexData) BrandName() string {
	if d.Assets.Brand.Name != "" {
		return d.Assets.Brand.Name
	}
	return d.T("page/brand")
}

// PageTitle is what the window is called, PageTitles the same in each language.
func (d indexData) PageTitle() string { return d.titled(d.view) }

// PageTitles are the titles of the window.
func (d indexData) PageTitles() []InLanguage { return d.inEach(d.titled) }

func (d indexData) titled(v *view) string { return v.T("page/title", "name", d.BrandName()) }

// PosterLarge is the poster for a desk, PosterSmall the one for a phone.
func (d indexData) PosterLarge() Picture { return d.Assets.Posters[len(d.Assets.Posters)-1] }

// PosterSmall is the poster for a phone.
func (d indexData) PosterSmall() Picture { return d.Assets.Posters[0] }

// Message is a sentence that the page's scripts show when its time comes: they
// make none themselves.
type Message struct{ Key, Text string }

// Messages are the sentences of the page's scripts: all that words has for them.
func (v *view) Messages() []Message { return v.family("message/") }

// Late are the sentences for when a part of the page does not come.
func (v *view) Late() []Message { return v.family("late/") }

func (v *view) family(start string) []Message {
	var all []Message
	for _, key := range v.Words.Language.Keys() {
		if name, ours := strings.CutPrefix(key, start); ours {
			all = append(all, Message{name, v.T(key)})
		}
	}
	return all
}

// Units is the choice of the reader's units.
func (v *view) Units() Control {
	c, _ := v.control("view.units")
	return c
}

// LanguageChoice is the choice of the language. Each is called by its own name.
func (v *view) LanguageChoice() Control {
	c, _ := v.control("view.language")
	return c
}

// ReadingChoice is the choice of the reading.
func (v *view) ReadingChoice() Control {
	c, _ := v.control("view.reading")
	return c
}

// Modules are the scripts that main.js needs, so that a browser can ask for all
// of them at once.
func (d indexData) Modules() []string {
	return []string{
		"engine.js", "files.js", "form.js", "hear.js", "helper.js", "joblist.js", "jobs.js", "keeping.js", "letters.js", "pointer.js", "preview.js", "pulse.js", "records.js", "rows.js", "stage.js", "status.js", "stills.js", "store.js", "trusted.js", "versions.js",
	}
}
