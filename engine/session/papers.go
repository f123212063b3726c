package session

import (
	"bytes"
	"image"
	"image/jpeg"
	"image/png"
	"slices"

	"blockfield/engine/page"
	"blockfield/engine/papers"
	"blockfield/engine/papers/sheet"
)

// paper is which papers a person looks at, and the picture that goes on them, which
// is one of a revision.
type paper struct {
	set, format string
	picture     papers.Picture
	revision    string // of the picture
}

// Commands about papers, as buttons of the page name them.
const (
	chooseSet    = "papers-set"
	chooseFormat = "papers-format"
)

// choose takes a set or a size of paper.
func (p *paper) choose(what, name string) {
	if what == chooseSet {
		p.set = name
		return
	}
	p.format = name
}

// mostSheets is how many sheets the page shows unasked: those of a large field are
// many, and slow to look at. The others come part by part when they are printed, so
// that edits get in between and whoever waits can stop.
const (
	mostSheets = 80
	partSheets = 20
)

// papersFile names the archive of drawings and tables among what can be saved.
const papersFile = "papers"

// reader is who prints the papers.
func (s *Session) paperReader() papers.Reader {
	switch s.now.doc.View.Reading {
	case page.Maker:
		return papers.Maker
	case page.Builder:
		return papers.Builder
	default:
		return papers.Client
	}
}

// paperSets are the sets of the reader and the chosen one of them: the first where none
// is chosen that this reader has.
func (s *Session) paperSets() (sets []string, chosen string) {
	sets = papers.For(s.paperReader(), s.now.doc.Design.Work.Scope(), s.record().Lock != nil)
	if slices.Contains(sets, s.paper.set) {
		return sets, s.paper.set
	}
	return sets, sets[0]
}

// papers are the sheets of the chosen set for its reader.
func (s *Session) papers(in page.Input) page.PaperView {
	var out page.PaperView
	out.Sets, out.Set = s.paperSets()
	for _, f := range sheet.Formats() {
		out.Formats = append(out.Formats, f.Name)
	}
	from := s.paperInput(in)
	out.Format = from.Format.Name
	out.Picturable, out.Pictured = out.Set == papers.OfferSet, len(from.Picture.Body) > 0
	from.Drawn = sheet.Span{To: mostSheets}
	set, _ := papers.Make(from, out.Set)
	out.Sheets = drawn(set)
	out.Count = len(set.Sheets)
	for at := mostSheets; at < out.Count; at += partSheets {
		out.Parts = append(out.Parts, at)
	}
	return out
}

// drawn are the sheets of a set that were drawn.
func drawn(set papers.Set) []string {
	var all []string
	for _, one := range set.Sheets {
		if one.SVG != "" {
			all = append(all, one.SVG)
		}
	}
	return all
}

// part draws the part of the chosen set that begins with a sheet.
func (s *Session) part(req Request) Response {
	in := s.plain()
	_, name := s.paperSets()
	from := s.paperInput(in)
	from.Drawn = sheet.Span{From: max(req.At, 1), To: max(req.At, 1) + partSheets}
	set, _ := papers.Make(from, name)
	in.Papers = page.PaperView{Format: from.Format.Name, Sheets: drawn(set)}
	return Response{Fragments: []page.Fragment{page.PaperPart(in, req.At)}}
}

// paperInput is what papers are made of.
func (s *Session) paperInput(in page.Input) papers.Input {
	format, ok := sheet.Named(s.paper.format)
	if !ok {
		format = sheet.UsualFor(in.Words.Units)
	}
	out := papers.Input{
		Doc: in.Doc, Plan: in.Plan, Job: in.Job, Book: in.Book, Selling: in.Selling, Heard: in.Heard,
		Client: s.paperReader() == papers.Client, Today: in.Today, Words: in.Words, Format: format, Site: s.site,
		Maker: s.maker, WriteTo: s.workshop,
	}
	switch _, set := s.paperSets(); set {
	case papers.OfferSet:
		out.Looks = s.lookPlans()
	case papers.OrderSet:
		for _, lines := range page.SlipChanges(in) {
			out.Changed = append(out.Changed, papers.Changes(lines))
		}
	}
	if s.paper.revision == s.now.plan.Revision {
		out.Picture = s.paper.picture
	}
	return out
}

// mostPicture is the largest picture that goes on papers, in bytes.
const mostPicture = 8 << 20

// paperPicture takes a picture of the open design onto its papers.
func (s *Session) paperPicture(req Request) Response {
	kind, config, err := "image/jpeg", image.Config{}, error(nil)
	if config, err = jpeg.DecodeConfig(bytes.NewReader(req.Picture)); err != nil {
		kind = "image/png"
		config, err = png.DecodeConfig(bytes.NewReader(req.Picture))
	}
	if err != nil || len(req.Picture) > mostPicture || config.Width == 0 || config.Height == 0 {
		return Response{Faults: []Fault{{Message: s.reader().Say("papers/no-picture")}}}
	}
	s.paper.picture = papers.Picture{Type: kind, Body: req.Picture, Width: config.Width, Height: config.Height}
	s.paper.revision = s.now.plan.Revision
	return s.whole("papers/pictured")
}

// printed notes in the record of the job that papers of its revision are in a hand now,
// so that they are known to be old once the design has changed. Those of a client have no
// code to scan.
func (s *Session) printed() Response {
	if s.section != page.Papers || s.paperReader() == papers.Client {
		return s.common(Response{})
	}
	return s.common(s.recorded(s.record().WithPrinted(s.now.plan.Revision)))
}

// paperFiles are the drawings and tables of the reader's sets in one archive. The
// sheets themselves print from the page, with its font.
func (s *Session) paperFiles() Response {
	in := s.paperInput(s.plain())
	sets, _ := s.paperSets()
	packed, err := papers.Zip(papers.Files(in, sets, papers.Fonts{}))
	if err != nil {
		return s.refuse(err)
	}
	return Response{File: &File{
		Name: nameOf(s.now.doc.Design.Title, s.now.plan.Revision, ".zip"), Type: "application/zip", Bytes: packed,
	}}
}
