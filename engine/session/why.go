package session

import (
	"errors"
	"fmt"
	"strconv"

	"blockfield/engine"
	"blockfield/engine/cost"
	"blockfield/engine/design"
	"blockfield/engine/page"
)

// asked is what somebody has asked of a price: it takes many plans, and stands for the
// design, the prices and the reader that it was asked of.
type asked struct {
	open     bool // the price is explained
	ways     engine.Ways
	waysOf   string
	buys     engine.Buys
	foundOf  string
	odds     cost.Odds
	oddsOf   string
	hasWays  bool
	hasFound bool
}

// question names what an answer is of: the design and its money, of which the code of the
// design says nothing; the prices; and the reader.
func (s *Session) question() string {
	return fmt.Sprintf("%s %s %s %+v", s.now.plan.Revision, s.now.plan.BookCode, s.now.doc.View.Reading, s.now.doc.Design.Money)
}

func (s *Session) paying() engine.Paying {
	by := page.Paying(s.now.doc.View.Reading, s.prices.book(), design.SellingBook{})
	if by.Client {
		by.Selling = s.prices.selling()
	}
	return by
}

// why is what the section of money shows of it.
func (s *Session) why() page.Why {
	q := s.question()
	out := page.Why{Open: s.asked.open}
	if s.asked.open && s.now.doc.View.Reading == page.Maker && s.now.plan.Price.Sold {
		if s.asked.oddsOf != q {
			s.asked.oddsOf, s.asked.odds = q, engine.Odds(s.now.doc.Design, s.now.plan, s.prices.book())
		}
		out.Odds = s.asked.odds
	}
	if s.asked.hasWays && s.asked.waysOf == q {
		out.Asked, out.Ways = true, s.asked.ways
	}
	if s.asked.hasFound && s.asked.foundOf == q {
		out.Begun, out.Buys = true, s.asked.buys
	}
	return out
}

// askPrice does what a person asks of a price; false for other commands.
func (s *Session) askPrice(name string) (known bool, err error) {
	switch name {
	case "why-open", "why-close":
		s.asked.open = name == "why-open"
	case "ways":
		s.asked.ways = engine.WaysToBudget(s.now.doc, s.now.plan, s.paying())
		s.asked.waysOf, s.asked.hasWays = s.question(), true
	case "from-budget":
		s.asked.buys, err = engine.FromBudget(s.now.doc, s.now.plan, s.paying())
		if errors.Is(err, engine.ErrNoBudget) {
			err = nil
		}
		s.asked.foundOf, s.asked.hasFound = s.question(), true
	default:
		return false, nil
	}
	return true, err
}

// answered is the design after one of the answers, by its number.
func (s *Session) answered(name, path string) (design.Document, error) {
	i, err := strconv.Atoi(path)
	why := s.why()
	switch {
	case err != nil || i < 0:
	case name == "go-way" && i < len(why.Ways.Found):
		return engine.GoWay(s.now.doc, why.Ways.Found[i])
	case name == "take-candidate" && i < len(why.Buys.Found):
		doc := s.now.doc
		doc.Design, doc.Assumed = why.Buys.Found[i].Doc.Design, why.Buys.Found[i].Doc.Assumed
		return doc, nil
	}
	return design.Document{}, errors.New("internal error: no such answer: " + strconv.Quote(path))
}
