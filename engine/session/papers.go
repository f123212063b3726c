package session

import (
	"slices"

	"blockfield/engine/page"
	"blockfield/engine/papers"
	"blockfield/engine/papers/sheet"
)

// paper is which papers a person looks at.
type paper struct{ set, format string }

// choose takes a set or a size of paper.
func (p *paper) choose(what, name string) {
	if what == "papers-set" {
		p.set = name
		return
	}
	p.format = name
}

// papers are the sheets of the chosen set for its reader, of the first set where
// none is chosen that this reader has.
func (s *Session) papers(in page.Input) page.PaperView {
	reader := map[string]papers.Reader{page.Maker: papers.Maker, page.Builder: papers.Builder}[s.now.doc.View.Reading]
	sets := papers.For(reader)
	out := page.PaperView{Sets: sets, Set: s.paper.set}
	for _, f := range sheet.Formats() {
		out.Formats = append(out.Formats, f.Name)
	}
	if !slices.Contains(sets, out.Set) {
		out.Set = sets[0]
	}
	format, ok := sheet.Named(s.paper.format)
	if !ok {
		format = sheet.A4()
	}
	out.Format = format.Name
	set, _ := papers.Make(papers.Input{
		Doc: in.Doc, Plan: in.Plan, Job: in.Job, Book: in.Book, Selling: in.Selling, Heard: in.Heard,
		Client: reader == papers.Client, Today: in.Today, Words: in.Words, Format: format,
	}, out.Set)
	for _, one := range set.Sheets {
		out.Sheets = append(out.Sheets, one.SVG)
	}
	return out
}
