package session

import (
	"slices"

	"blockfield/engine"
	"blockfield/engine/design"
	"blockfield/engine/money"
	"blockfield/engine/page"
	"blockfield/engine/words"
)

// input is what the page is made of, with the sheets of the papers where they are open.
func (s *Session) input() page.Input {
	in := s.plain()
	if s.section == page.Papers {
		in.Papers = s.papers(in)
	}
	return in
}

// bare is that of the design and its plan alone.
func (s *Session) bare() page.Input {
	job := s.job()
	return page.Input{
		Doc: s.now.doc, Words: s.reader(), Section: s.section,
		Today: s.today, Job: job, Plan: s.now.plan.On(s.today, s.now.doc, s.prices.book()).During(job),
		Book: s.prices.book(), SellingOnly: s.prices.sellingOnly, SellingGiven: s.prices.given, Desk: s.desked(),
		Workshop: s.workshop, Talk: s.talking(), CanUndo: len(s.undo) > 0, CanRedo: len(s.redo) > 0, Alone: s.alone,
	}
}

// plain is that without sheets.
func (s *Session) plain() page.Input {
	in := s.bare()
	if in.Desk == nil || !in.Desk.Open || s.prices.sold.made {
		selling := s.prices.selling()
		in.Selling = &selling
	} else {
		in.SellingWaits = true
	}
	if s.section == page.Money { // the only one that shows them, and they take many plans
		in.Levers = s.levers()
		in.Looks = s.lookPlans()
		in.Why = s.why()
		if s.now.doc.View.Reading == page.Builder {
			in.AtWorkshop = s.atWorkshop()
		}
	}
	return s.listen(in)
}

// levers are what brings the open design down to its budget, for its reader: a
// client's are reckoned with the selling book, a home builder's with the goods. What was
// agreed on changes by a slip alone.
func (s *Session) levers() []engine.Lever {
	switch reading := s.now.doc.View.Reading; {
	case reading != page.Builder && s.record().Lock != nil:
		return nil
	case reading == page.Client:
		return engine.QuoteLevers(s.now.doc, s.now.plan, s.prices.planner, s.prices.selling())
	case reading == page.Builder:
		return engine.GoodsLevers(s.now.doc, s.now.plan, s.prices.planner)
	default:
		return engine.Levers(s.now.doc, s.now.plan, s.prices.planner)
	}
}

// atWorkshop is what a workshop would ask for the open design; nothing where no selling
// book has a range for it.
func (s *Session) atWorkshop() []money.Money {
	low, high, err := engine.AtWorkshop(s.now.doc.Design, s.prices.planner, s.prices.selling())
	if err != nil || high.Minor <= 0 {
		return nil
	}
	return []money.Money{low, high}
}

// common fills what every answer about the open document carries.
func (s *Session) common(res Response) Response {
	res.Text = string(design.Encode(s.now.doc))
	res.Revision, res.Title = s.now.plan.Revision, s.reader().Given(s.now.doc.Design.Title)
	res.Section, res.Reading, res.Editing = s.section, s.now.doc.View.Reading, s.desk.open
	res.Talk, res.CanUndo, res.CanRedo = s.talk, len(s.undo) > 0, len(s.redo) > 0
	return res
}

// whole answers with the open section as a whole, for when its controls are not
// being edited.
func (s *Session) whole(announce string) Response {
	in := s.input()
	res := Response{Fragments: page.Whole(in), Scene: s.scene(), Values: s.viewValues()}
	if announce != "" {
		res.Announce = s.reader().Say(announce, words.Args{"title": s.now.doc.Design.Title})
	}
	return s.common(res)
}

// viewValues are the controls outside the sections, which no fragment renders.
func (s *Session) viewValues() []Value {
	var all []Value
	for _, path := range []string{"view.units", "view.language", "view.reading", "view.lamp.elevation"} {
		text, _ := design.Text(s.now.doc, path, s.units())
		all = append(all, Value{path, text})
	}
	return all
}

// changed answers an edit of one control, and of those that went along, with
// what follows from it.
func (s *Session) changed(before state, req Request) Response {
	if redraws(req.Path) {
		return s.whole("")
	}
	res := Response{
		Fragments: s.fragments(req),
		Values:    s.changedValues(before.doc, req.Path),
	}
	if !req.Quiet {
		res.Scene = s.scene()
	}
	return s.common(res)
}

func (s *Session) fragments(req Request) []page.Fragment {
	in := s.input()
	all := page.Fragments(in, req.Path)
	for _, edit := range req.Also {
		for _, f := range page.Fragments(in, edit.Path) {
			if !slices.ContainsFunc(all, func(had page.Fragment) bool { return had.Target == f.Target }) {
				all = append(all, f)
			}
		}
	}
	return all
}

// redraws reports whether a field changes how every control is shown.
func redraws(path string) bool {
	return path == "view.units" || path == "view.language" || path == "view.reading"
}

// changedValues lists the form fields whose text differs from that of a document before,
// but for the one that is being edited.
func (s *Session) changedValues(before design.Document, edited string) []Value {
	var all []Value
	for path, text := range design.Differences(before, s.now.doc, s.units()) {
		if path != edited {
			all = append(all, Value{Path: path, Value: page.FieldText(s.reader(), path, text)})
		}
	}
	return all
}
