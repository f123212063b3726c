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
	Level        string // of a watch-out; else empty
	Target       string // section that tells more
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
			s.add("agreed-net", a.Net.Whole(v.locale()), Money)
		} else if v.HasPrice() {
			s.add("price", v.Plan.Price.Net.Whole(v.locale()), Money)
		}
		s.worst()
	case Builder:
		s.blocks()
		if v.HasBill() {
			s.add("weekends", v.T("strip/weekends-value", "n", v.Weekends()), Bench)
		}
		if v.HasShopping() {
			s.add("shopping", v.Shopping().Whole(v.locale()), Money)
		}
	default:
		g := v.First()
		s.add("size", v.T("strip/size-value", "width", v.Words.Number(v.Whole(g.Built.TotalWidth)), "height", v.Whole(g.Built.TotalHeight)), Look)
		s.add("mass", v.T("strip/mass-value", "mass", v.KgOf(v.TotalKg())), Wall)
		switch {
		case v.Ordered():
			s.add("agreed", v.AgreedPrice(), Money)
		case v.WasAgreed():
			s.add("agreed", v.OfferedPrice(), Money)
		case v.OfferHolds():
			s.add("offered", v.OfferedPrice(), Money)
		case v.HasRange():
			s.add("range", v.PriceRange(), Money)
		}
	}
	return s
}

func (s *stripView) add(key, value, target string) {
	s.Items = append(s.Items, StripItem{Label: s.T("strip/" + key), Value: value, Target: target})
}

func (s *stripView) blocks() {
	_, blocks := s.Plan.Cells()
	s.add("blocks", s.Words.Count(blocks), Look)
}

func (s *stripView) hours() {
	if s.HasBill() {
		s.add("hours", s.T("strip/hours-value", "hours", hours(s.Plan.Bill.Hours.Total.Typical)), Bench)
	}
}

// worst is the worst watch-out, in one word and its number.
func (s *stripView) worst() {
	all := s.watchOuts()
	level := check.Worst(all)
	if level == 0 {
		s.add("watch", s.T("strip/nothing"), s.Open)
		return
	}
	n := 0
	for _, w := range all {
		if w.Level == level {
			n++
		}
	}
	s.add("watch", s.T("strip/watch-value", "n", n, "level", s.T("level/"+level.String())), s.Open)
	s.Items[len(s.Items)-1].Level = level.String()
}

// HasShopping reports whether there is a sum for what is bought.
func (v *view) HasShopping() bool { return v.Shopping().Minor > 0 }

// Shopping is what a home builder buys.
func (v *view) Shopping() money.Money { return v.Plan.Price.Materials }

func (v *view) locale() string { return v.Words.MoneyLocale() }

// Whole rounds a size that nobody saws by.
func (v *view) Whole(l length.Length) length.Length { return v.Words.Units.Whole(l) }
