package session

import (
	"errors"
	"strconv"
	"strings"

	"blockfield/engine"
	"blockfield/engine/design"
)

// actedBeside does the commands that change what is kept beside the design: the
// looks and the offer. False for other commands.
func (s *Session) actedBeside(req Request) (doc design.Document, known bool, err error) {
	switch req.Name {
	case "keep-look":
		doc, err = design.KeepLook(s.now.doc, s.lookName())
	case "open-look":
		doc, err = s.atLook(req.Path, design.OpenLook)
	case "drop-look":
		doc, err = s.atLook(req.Path, design.DropLook)
	case "make-offer", "withdraw-offer":
		if locked := s.job().NoNewOffer(); locked.Key != "" {
			return s.now.doc, true, errors.New(s.reader().Say(locked.Key, locked.Args))
		}
		doc = s.now.doc
		doc.Offer = nil
		if req.Name == "make-offer" {
			doc, err = s.offer(req.Value)
		}
	default:
		return doc, false, nil
	}
	return doc, true, err
}

// lookName is the first letter that no kept look is called by.
func (s *Session) lookName() string {
	taken := make(map[string]bool)
	for _, look := range s.now.doc.Looks {
		taken[look.Name] = true
	}
	letter := 'A'
	for taken[string(letter)] {
		letter++
	}
	return string(letter)
}

// atLook does something to the look at a path, "looks[1]".
func (s *Session) atLook(path string, do func(design.Document, int) (design.Document, error)) (design.Document, error) {
	index, ok := strings.CutPrefix(strings.TrimSuffix(path, "]"), "looks[")
	n, err := strconv.Atoi(index)
	if !ok || err != nil {
		return design.Document{}, errors.New("internal error: no look at " + strconv.Quote(path))
	}
	return do(s.now.doc, n)
}

// offer holds the price of the open design open for a number of days.
func (s *Session) offer(days string) (design.Document, error) {
	n, err := strconv.Atoi(days)
	if err != nil {
		return design.Document{}, errors.New("internal error: no number of days: " + strconv.Quote(days))
	}
	plan := s.now.plan.On(s.today, s.now.doc, s.prices.book()).During(s.job()) // with what was signed off
	offer, hindrance := engine.MakeOffer(plan, s.prices.book(), s.today, n)
	if hindrance.Key != "" {
		return design.Document{}, errors.New(s.reader().Say(hindrance.Key, hindrance.Args))
	}
	doc := s.now.doc
	offer = engine.Beside(s.job().Promising(offer), doc, s.lookPlans())
	doc.Offer = &offer
	return doc, nil
}

// lookPlans plans the kept looks with the prices in force. A look that cannot be
// planned has the zero result.
func (s *Session) lookPlans() []engine.Result {
	known := s.looks
	s.looks = make(map[string]engine.Result, len(s.now.doc.Looks))
	var all []engine.Result
	for _, look := range s.now.doc.Looks {
		revision := look.Design.Revision()
		plan, ok := known[revision]
		if !ok {
			plan, _ = s.prices.planner.Plan(look.Design)
		}
		s.looks[revision] = plan
		all = append(all, plan)
	}
	return all
}
