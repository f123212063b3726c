package web

import (
	"fmt"
	"io"
	"io/fs"
	"path"
	"strconv"

	"blockfield/engine"
	"blockfield/engine/design"
	"blockfield/engine/page"
	"blockfield/engine/words"
	"blockfield/site"
	"blockfield/testdata"
)

// exampleJobs is how many of the example designs are whole jobs, s1 to s8, that
// the page offers to open.
const exampleJobs = 8

// Carried are the ingredients that the program carries with it, around modules
// that may have been built elsewhere, for the site of settings.
func Carried(modules fs.FS, settings Settings) (Ingredients, error) {
	language := words.In(settings.Language)
	doc, book := design.Default(), design.DefaultBook()
	doc.View.Language = language.Tag
	plan, err := engine.Plan(doc.Design, book)
	if err != nil {
		return Ingredients{}, err
	}
	picture, err := engine.Scene(doc.Design, plan, doc.View)
	if err != nil {
		return Ingredients{}, err
	}
	examples, err := examples(testdata.Designs())
	if err != nil {
		return Ingredients{}, err
	}
	heard, err := engine.Hear(doc.Design)
	if err != nil {
		return Ingredients{}, err
	}
	first := page.Input{
		Doc: doc, Book: book, Plan: plan.With(heard), Section: page.Look, Heard: &heard,
		Words: words.Reader{Language: language, Units: doc.View.Units}, Workshop: settings.WriteTo,
		Selling: settings.Selling, SellingOnly: settings.Selling != nil, SellingGiven: settings.Selling != nil,
	}
	return Ingredients{
		Assets:  site.Assets(),
		Fonts:   site.Fonts(),
		Modules: modules,
		Designs: testdata.Designs(),
		Schemas: map[string][]byte{
			"design.schema.json":  design.Schema(),
			"book.schema.json":    design.BookSchema(),
			"selling.schema.json": design.SellingSchema(),
			"record.schema.json":  design.RecordSchema(),
			"letter.schema.json":  design.LetterSchema(),
		},
		Poster:   drawPoster(picture),
		Settings: settings, About: first.Words.Say("page/description"),
		Examples: examples,
		Index:    func(w io.Writer, a page.Assets) error { return page.Index(w, a, first) },
	}, nil
}

func examples(designs fs.FS) ([]page.Example, error) {
	var all []page.Example
	for i := range exampleJobs {
		name := "s" + strconv.Itoa(i+1) + ".json"
		body, err := fs.ReadFile(designs, name)
		if err != nil {
			return nil, err
		}
		doc, err := design.Decode(body)
		if err != nil {
			return nil, fmt.Errorf("%s: %w", name, err)
		}
		all = append(all, page.Example{Address: path.Join("designs", name), Doc: doc})
	}
	return all, nil
}
