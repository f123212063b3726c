package session

import (
	"errors"
	"strconv"
	"strings"

	"blockfield/engine"
	"blockfield/engine/design"
	"blockfield/engine/page"
	"blockfield/engine/pricelist"
	"blockfield/engine/words"
)

// answer does what a request asks. Each operation changes the session at most
// once, and only when nothing was wrong.
func (s *Session) answer(req Request) Response {
	if req.Of != nil && *req.Of != s.now.opening {
		return Response{Elsewhere: true}
	}
	switch req.Op {
	case "hello":
		return s.whole("")
	case "new":
		return s.open(design.Default(), "page/new-opened")
	case "open":
		return s.openText(req)
	case "set":
		return s.set(req)
	case "act":
		return s.act(req)
	case "entry": // a refused one is taken back: the page shows what holds
		return s.whole("page/entry-back")
	case "undo":
		return s.throughHistory(&s.undo, &s.redo, "undone", "nothing-to-undo")
	case "redo":
		return s.throughHistory(&s.redo, &s.undo, "redone", "nothing-to-redo")
	case "section":
		s.section = req.Name
		return s.whole("")
	case "save":
		return s.save(req)
	case "link":
		return s.link()
	case "drag":
		return s.drag(req)
	case "place":
		return s.place(req)
	case "stretch":
		return s.stretched(req)
	case "nudge":
		return s.nudge(req)
	case "picture":
		return s.picture(req)
	case "papers-picture":
		return s.paperPicture(req)
	case "sheets":
		return s.part(req)
	case "known":
		return s.known(req)
	case "printed":
		return s.printed()
	case "scan":
		return s.scan(req)
	case "point":
		return s.point(req)
	case "hear":
		return s.hear(req)
	case "heard":
		return s.heard(req)
	case "row":
		return s.row(req)
	case "jobs":
		return s.listJobs(req)
	case "find":
		return Response{Fragments: []page.Fragment{page.Find(s.bare(), req.Value)}}
	default:
		return s.refuse(errors.New("internal error: no such operation: " + strconv.Quote(req.Op)))
	}
}

func (s *Session) openText(req Request) Response {
	switch format := design.FormatOf([]byte(req.Text)); format {
	case design.BookFormat, design.SellingFormat:
		return s.openPrices(req, format)
	case design.RecordFormat:
		return s.openRecord(req)
	case design.LetterFormat:
		return s.openLetter(req)
	case shelfFormat:
		return s.openShelf(req)
	case jobsFormat:
		return s.openJobs(req)
	}
	if req.From == "file" && pricelist.Is([]byte(req.Text)) {
		return s.openList(req)
	}
	res := s.openDesign(req)
	if len(res.Faults) > 0 {
		res.Stays = s.reader().Say("page/stays")
	}
	return res
}

func (s *Session) openDesign(req Request) Response {
	var doc design.Document
	var err error
	if req.Link != "" {
		doc, err = design.DecodeLink(req.Link)
	} else {
		doc, err = design.Decode([]byte(req.Text))
	}
	if err != nil {
		return s.refuse(err)
	}
	switch req.From {
	case "saved":
		return s.reopen(doc)
	case "visit":
		return s.openJob(doc, nil, "page/file-opened")
	case "link":
		return s.open(doc, "page/link-opened")
	default:
		return s.open(doc, "page/file-opened")
	}
}

// open replaces the document as one step of the history, so that opening the
// wrong file loses nothing. The reader's own language and reading stay; the
// units are those that the design was measured in.
func (s *Session) open(doc design.Document, announce string) Response {
	return s.openJob(s.readAsNow(doc), nil, announce)
}

// readAsNow is a document in the language and the reading of the open one.
func (s *Session) readAsNow(doc design.Document) design.Document {
	view := s.now.doc.View
	doc.View.Language, doc.View.Reading = view.Language, view.Reading
	return doc
}

// openJob is open for a design that may have a record of its own, nil: it has none, and
// that is read as its view says.
func (s *Session) openJob(doc design.Document, rec *design.Record, announce string) Response {
	d, earlier, found := design.TakeEarlier(doc.Design)
	doc.Design = d
	next, err := s.planned(doc)
	if err != nil {
		return s.refuse(err)
	}
	if rec != nil || next.plan.Revision != s.now.plan.Revision {
		next.opening = s.nextOpening()
	}
	s.take(next)
	s.ear = ear{}
	if rec == nil {
		return s.asBuilt(s.wholeWith(earlier, found, announce))
	}
	text := s.recorded(*rec).Record
	res := s.asBuilt(s.wholeWith(earlier, found, announce))
	if !found {
		res.Record = text
	}
	return res
}

// asBuilt adds to the answer of an opening that the design is to be built at home, for a
// reader who looks for a price.
func (s *Session) asBuilt(res Response) Response {
	if s.now.doc.Design.Work.OwnBuild && s.now.doc.View.Reading != page.Builder {
		res.Told = s.reader().Say("page/opened-own-build")
	}
	return res
}

// nextOpening numbers the opening of another design.
func (s *Session) nextOpening() int {
	s.openings++
	s.alone = ""
	return s.openings
}

// reopen takes up what was left open on this device: with its view, and with
// nothing before it that could be undone to. Where another was open before, the language
// of the page stays.
func (s *Session) reopen(doc design.Document) Response {
	if s.openings > 0 {
		doc.View.Language = s.now.doc.View.Language
	}
	d, earlier, found := design.TakeEarlier(doc.Design)
	doc.Design = d
	next, err := s.planned(doc)
	if err != nil {
		return s.refuse(err)
	}
	if next.plan.Revision != s.now.plan.Revision {
		s.ear = ear{}
	}
	another, reading := s.openings > 0, s.now.doc.View.Reading
	next.opening = s.nextOpening()
	s.now, s.undo, s.redo = next, nil, nil
	res := s.wholeWith(earlier, found, "")
	if now := doc.View.Reading; another && now != reading {
		res.Told = s.reader().Say("page/reading-of-job", words.Args{"reading": words.Key("choice/" + now)})
	}
	return res
}

// set edits a field. Who reads the page decides who builds: a home builder's
// job has no workshop's survey, road and price.
func (s *Session) set(req Request) Response {
	req.Value = s.typed(req)
	if path, ours := strings.CutPrefix(req.Path, design.RecordPrefix); ours {
		return s.setRecord(path, req)
	}
	if path, ours := strings.CutPrefix(req.Path, design.BookPrefix); ours {
		return s.setBook(path, req)
	}
	if req.Path == page.FindPath {
		s.desk.find = req.Value
		return s.common(Response{Fragments: page.Fragments(s.input(), req.Path)})
	}
	before, doc := s.now, s.now.doc
	if req.Path == "view.reading" {
		req.Also = append(req.Also, Value{"work.ownBuild", yesNo(req.Value == page.Builder)})
	}
	for _, edit := range append([]Value{{req.Path, req.Value}}, req.Also...) {
		var err error
		if doc, err = design.Set(doc, edit.Path, edit.Value, s.units()); err != nil {
			return s.refuseAt(edit.Path, err)
		}
	}
	if err := s.edited(doc); err != nil {
		return s.refuseAt(req.Path, err)
	}
	res := s.changed(before, req)
	res.Told = s.builtBy(before.doc)
	return res
}

// builtBy says who builds the panels now, where that has changed: hours and price follow,
// and the revision. Empty where it has not.
func (s *Session) builtBy(before design.Document) string {
	now := s.now.doc.Design.Work.OwnBuild
	if now == before.Design.Work.OwnBuild {
		return ""
	}
	return s.reader().Say("page/own-build-"+yesNo(now), words.Args{"revision": s.now.plan.Revision})
}

// typed is the value of an edit without the marks of the reader's language.
func (s *Session) typed(req Request) string {
	f, ok := page.Lookup(req.Path)
	if !ok || !req.Typed {
		return req.Value
	}
	return f.Typed(s.reader(), req.Value)
}

// yesNo is what a person would type into a field that is ticked or not.
func yesNo(yes bool) string {
	if yes {
		return "yes"
	}
	return "no"
}

// refuseAt is refuse with the faults of an edit at its control, which also
// shows what is wrong within it.
func (s *Session) refuseAt(path string, err error) Response {
	res := s.refuse(err)
	homes := page.Homes(s.bare())
	for i := range res.Faults {
		if p := res.Faults[i].Path; p == "" || strings.HasPrefix(p, path+"[") {
			res.Faults[i].Path = path
		}
		res.Faults[i].Section = homes[res.Faults[i].Path]
	}
	return res
}

// act does one of the named commands that are more than a field.
func (s *Session) act(req Request) Response {
	if req.Name == "example-book" {
		res, err := s.inForce(examplePrices())
		if err != nil {
			return s.refuse(err)
		}
		return res
	}
	if name, ours := strings.CutPrefix(req.Name, "book-"); ours {
		return s.deskAct(name, req)
	}
	if req.Name == "hide-figures" {
		return s.hideFigures()
	}
	if known, err := s.askPrice(req.Name); known {
		if err != nil {
			return s.refuse(err)
		}
		return s.whole("")
	}
	switch req.Name {
	case "add", "remove", "confirm":
		if strings.HasPrefix(req.Path, design.BookPrefix) {
			return s.alterBook(req)
		}
	case chooseSet, chooseFormat:
		s.paper.choose(req.Name, req.Path)
		return s.whole("")
	}
	if req.Name == "learn" {
		return s.learn()
	}
	if work, ok := works[req.Name]; ok {
		return s.work(work, req)
	}
	before := s.now
	adopt := s.change
	doc, known, err := s.actedBeside(req)
	if !known {
		adopt = s.edited
		doc, err = s.acted(req)
	}
	if err == nil {
		err = adopt(doc)
	}
	if err != nil {
		return s.refuse(err)
	}
	res := s.whole("")
	res.Values = append(res.Values, s.changedValues(before.doc, "")...)
	return res
}

func (s *Session) acted(req Request) (design.Document, error) {
	switch req.Name {
	case "shuffle-again":
		seed, ok := design.Get(s.now.doc, req.Path+".pattern.seed")
		n, isSeed := seed.(int64)
		if !ok || !isSeed {
			return design.Document{}, errors.New("internal error: no pattern at " + strconv.Quote(req.Path))
		}
		return design.Set(s.now.doc, req.Path+".pattern.seed", strconv.FormatInt(n+1, 10), s.units())
	case "add":
		doc, _, err := design.Add(s.now.doc, req.Path)
		return doc, err
	case "remove":
		return design.Remove(s.now.doc, req.Path)
	case "lever":
		doc, ok := engine.Pull(s.now.doc, s.levers(), req.Path)
		if !ok {
			return design.Document{}, errors.New("internal error: no such lever: " + strconv.Quote(req.Path))
		}
		return doc, nil
	case "go-way", "take-candidate":
		return s.answered(req.Name, req.Path)
	case "sample":
		return engine.Sample(s.now.doc, s.prices.book(), s.reader().Say("money/sample-name"))
	case "look-longer":
		return engine.LookLonger(s.now.doc, s.now.plan), nil
	case "take-size", "take-moisture":
		return s.taken(req)
	case "confirm":
		return design.Confirm(s.now.doc, req.Path), nil
	default:
		return design.Document{}, errors.New("internal error: no such command: " + strconv.Quote(req.Name))
	}
}

// save answers with a file: the design, or the prices if they are asked for.
func (s *Session) save(req Request) Response {
	if req.Name == papersFile {
		return s.paperFiles()
	}
	if req.Name == sellingFile || req.Name == listFile || strings.HasPrefix(req.Name, bookFile) {
		return s.priceFile(req.Name)
	}
	if req.Name == letterFile {
		return s.letterFile(req)
	}
	if req.Name == jobsFile {
		return s.saveJobs(req)
	}
	if req.Name == recordFile {
		return Response{File: s.recordFile()}
	}
	return Response{File: s.file()}
}

func (s *Session) file() *File {
	return &File{
		Name: fileName(s.now.doc.Design.Title, s.now.plan.Revision),
		Type: "application/json",
		Text: string(design.Encode(s.job().AsAgreed(s.now.doc))),
	}
}

// fileName makes a name that every file system takes from a title.
func fileName(title, revision string) string { return nameOf(title, revision, ".json") }

// nameOf is fileName with another suffix.
func nameOf(title, revision, suffix string) string {
	plain := strings.Map(func(r rune) rune {
		switch {
		case r >= 'a' && r <= 'z', r >= '0' && r <= '9':
			return r
		case r >= 'A' && r <= 'Z':
			return r + 'a' - 'A'
		default:
			return '-'
		}
	}, title)
	words := strings.FieldsFunc(plain, func(r rune) bool { return r == '-' })
	name := strings.Join(words, "-")
	if len(name) > 60 {
		name = name[:60]
	}
	if name == "" {
		name = "blockfield"
	}
	return name + "-" + revision + suffix
}

func (s *Session) link() Response {
	link, err := design.EncodeLink(s.job().AsAgreed(s.now.doc))
	if err != nil {
		return s.refuse(err)
	}
	return Response{Link: "#" + strings.TrimPrefix(link, "#"), Announce: s.reader().Say("page/link-made")}
}

// refuse turns an error into faults: one for each thing that is wrong.
func (s *Session) refuse(err error) Response {
	var faults design.Faults
	if !errors.As(err, &faults) {
		return Response{Faults: []Fault{{Message: err.Error()}}}
	}
	var res Response
	r := s.reader()
	for _, f := range faults {
		res.Faults = append(res.Faults, Fault{Path: f.Field(), Label: f.Label(r), Message: f.Say(r)})
	}
	return res
}
