package page

import (
	"blockfield/engine/check"
	"blockfield/engine/length"
	"blockfield/engine/money"
)

// stripView is the line of figures under the picture.
type stripView struct {
	*view
	Items []StripItem
}

// StripItem is one figure of the strip.
type StripItem struct {
	Label, Value string
	Lead         *Watch // what it leads to, of watch-outs
}

// Strip is the line of figures under the picture, as its reader may see it.
func (v *view) Strip() stripView {
	s := stripView{view: v}
	switch v.Reading {
	case Maker:
		s.blocks()
		s.hours()
		if v.Ordered() {
			a, _ := v.Job.Agreed()
			s.add(s.asOf("agreed-net"), a.Net.Whole(v.locale()))
		} else if v.HasPrice() {
			s.add("price", v.Plan.Price.Net.Whole(v.locale()))
		}
		s.worst()
	case Builder:
		s.blocks()
		if v.HasBill() {
			s.add("weekends", v.T("strip/weekends-value", "n", v.Weekends()))
		}
		if v.HasShopping() {
			s.add("shopping", v.Shopping().Whole(v.locale()))
		}
	default:
		g := v.First()
		s.add("size", v.T("strip/size-value", "width", v.Words.Number(v.Whole(g.Built.TotalWidth)), "height", v.Whole(g.Built.TotalHeight)))
		s.add("mass", v.T("strip/mass-value", "mass", v.KgOf(v.TotalKg())))
		switch {
		case v.Ordered():
			s.add(s.asOf("agreed"), v.AgreedPrice())
		case v.WasAgreed():
			s.add("agreed", v.OfferedPrice())
		case v.OfferHolds():
			s.add("offered", v.OfferedPrice())
		case v.HasRange():
			s.add("range", v.PriceRange())
		}
	}
	return s
}

func (s *stripView) add(key, value string) {
	s.Items = append(s.Items, StripItem{Label: s.T("strip/" + key), Value: value})
}

// asOf is the key of what was agreed on, which is not for the open design once that has changed.
func (s *stripView) asOf(key string) string {
	if s.Changed() {
		return key + "-before"
	}
	return key
}

func (s *stripView) blocks() {
	_, blocks := s.Plan.Cells()
	s.add("blocks", s.Words.Count(blocks))
}

func (s *stripView) hours() {
	if s.HasBill() {
		s.add("hours", s.T("strip/hours-value", "hours", hours(s.Plan.Bill.Hours.Total.Typical)))
	}
}

// worst is the worst watch-out, in one word and its number, and leads to the first of them.
func (s *stripView) worst() {
	all := s.watchOuts()
	level := check.Worst(all)
	if level == 0 {
		s.add("watch", s.T("strip/nothing"))
		return
	}
	var lead *Watch
	n := 0
	for _, w := range all {
		if w.Level != level {
			continue
		}
		if n++; lead == nil {
			lead = &Watch{view: s.view, Out: w}
		}
	}
	s.add("watch", s.T("strip/watch-value", "n", n, "level", s.T("level/"+level.String())))
	s.Items[len(s.Items)-1].Lead = lead
}

// HasShopping reports whether there is a sum for what is bought.
func (v *view) HasShopping() bool { return v.Shopping().Minor > 0 }

// Shopping is what a home builder buys.
func (v *view) Shopping() money.Money { return v.Plan.Price.Materials }

func (v *view) locale() string { return v.Words.MoneyLocale() }

// Whole rounds a size that nobody saws by.
func (v *view) Whole(l length.Length) length.Length { return v.Words.Units.Whole(l) }
