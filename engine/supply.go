package engine

import (
	"errors"

	"blockfield/engine/check"
	"blockfield/engine/design"
	"blockfield/engine/money"
	"blockfield/engine/words"
)

// ErrNotQuoted says that a selling book, which is fitted to panels, has no range for a
// kit or a plan: the workshop names their price.
var ErrNotQuoted = errors.New("only panels are quoted by a selling book")

// quoted reports whether a selling book has a range for a job.
func quoted(d design.Design) bool {
	s := d.Work.Scope()
	return s != design.KitScope && s != design.PlanScope
}

// Included is what the price of a job holds, each a phrase for whoever reads it.
func Included(d design.Design, r Result) []words.Phrase {
	var all []words.Phrase
	add := func(key string, args words.Args) {
		all = append(all, words.Phrase{Key: "includes/" + key, Args: args})
	}
	g, scope := r.Groups[0], d.Work.Scope()
	_, blocks := r.Cells()
	wood := words.Args{"n": blocks, "wood": g.Design.WoodName()}
	switch scope {
	case design.PlanScope:
		add("plan", nil)
	case design.KitScope:
		add("kit", wood)
		add("kit-papers", nil)
	default:
		add("blocks", wood)
		if g.Built.Framed {
			add("frame", words.Args{"wood": words.Key("choice/" + g.Design.Frame.Wood)})
		}
		add("making", nil)
	}
	for _, part := range []struct {
		done bool
		key  string
	}{{d.Work.Survey, "survey"}, {d.Work.Delivered, "delivered"}, {d.Work.Hung, "hung"}} {
		if part.done {
			add(part.key, nil)
		}
	}
	var bought, sold []string
	for _, x := range d.Money.Extras {
		switch {
		case x.Name == "":
		case x.Role == design.ExtraSold:
			sold = append(sold, x.Name)
		default:
			bought = append(bought, x.Name)
		}
	}
	if len(bought) > 0 {
		add("extras", words.Args{"names": bought})
	}
	if len(sold) > 0 {
		add("beside", words.Args{"names": sold})
	}
	return all
}

// Excluded is what the price does not hold.
func Excluded(d design.Design) []words.Phrase {
	var all []words.Phrase
	for _, key := range []string{"not-electrics", "not-wall", "not-approvals"} {
		all = append(all, words.Phrase{Key: "offering/" + key})
	}
	switch d.Work.Scope() {
	case design.HungScope:
		return all
	case design.PlanScope:
		return append(all, words.Phrase{Key: "offering/not-goods"})
	case design.KitScope:
		all = append(all, words.Phrase{Key: "offering/not-laying"})
	}
	if !d.Work.Delivered {
		all = append(all, words.Phrase{Key: "offering/not-delivery"})
	}
	return append(all, words.Phrase{Key: "offering/not-hanging"})
}

// supply says what passes to others where the workshop does not go the whole way: who
// lays, finishes or hangs has to know what this design asks of them.
func supply(d design.Design, mass Mass) []check.WatchOut {
	w := check.WatchOut{Level: check.Caution, Field: "work.supply", Source: check.CommonPractice}
	scope := d.Work.Scope()
	switch {
	case d.Work.OwnBuild, scope == design.HungScope:
		return nil
	case scope == design.PlanScope:
		w.Code = "supply/plan"
	case scope == design.KitScope:
		w.Code = "supply/kit"
	default:
		w.Code = "supply/by-others"
	}
	w.Args = words.Args{"mass": words.Kg(mass.HeaviestPanelKg)}
	return []check.WatchOut{w}
}

// Sample adds a sample of wood and finish to a design, at the price of the book, as a line
// that is sold as it stands. name is what the line is called.
func Sample(doc design.Document, b design.Book, name string) (design.Document, error) {
	if b.Policy.Sample <= 0 {
		return doc, errors.New("internal error: samples are not sold")
	}
	next, path, err := design.Add(doc, "money.extras")
	if err != nil {
		return doc, err
	}
	for _, e := range []edit{{".name", name}, {".amount", sampleOf(b).Plain()}, {".role", design.ExtraSold}} {
		if next, err = design.Set(next, path+e.path, e.value, doc.View.Units); err != nil {
			return doc, err
		}
	}
	return next, nil
}

func sampleOf(b design.Book) money.Money {
	return b.Policy.Sample.In(b.Currency)
}
