package bench

import (
	"math"

	"blockfield/engine/cut"
	"blockfield/engine/design"
	"blockfield/engine/length"
)

// Prices are what the planner weighs wood and time by, out of the price book.
type Prices struct {
	Woods  []design.WoodPrice
	Sticks []design.StickPrice
	Hour   design.Amount // of work in the shop; 0: time is not weighed against money
}

// Bar is one kind of bar that a plan cuts, as cut.Board counts them.
type Bar struct {
	Length length.Length
	Owned  bool // it was there already
	Used   int  // that are cut, all of them sound
	Bought int  // with those that knots and splits take; 0 of what was there
	price  int64
}

// pile is the wood beside the usual lengths, from which lots take one after the
// other: what one has cut is not there for the next.
type pile struct {
	items []design.Stock
}

// offer is one kind of bar that a lot may take, with its place in the pile; −1 is
// the usual length, of which there are as many as are wanted.
type offer struct {
	Bar
	item             int
	limited          bool
	available        int
	width, thickness length.Length
}

func (o offer) m3() float64 { return o.Length.Metres() * o.width.Metres() * o.thickness.Metres() }

// offers lists the usual length of a section, and whatever else the pile has that
// fits.
func (p *pile) offers(usual, width, thickness length.Length, fits func(design.Stock) bool) []offer {
	all := []offer{{Bar: Bar{Length: usual}, item: -1, width: width, thickness: thickness}}
	for i, s := range p.items {
		if !fits(s) || s.Owned && s.Count == 0 {
			continue
		}
		all = append(all, offer{
			Bar: Bar{Length: s.Length, Owned: s.Owned}, item: i, limited: s.Owned || s.Count > 0, available: s.Count,
			width: s.Width, thickness: s.Thickness,
		})
	}
	return all[:min(len(all), cut.MaxBars)]
}

// take removes from the pile what a plan uses of it. A line that had a number
// and has none left is gone; it does not become one without end.
func (p *pile) take(offers []offer) {
	for _, o := range offers {
		if o.item < 0 || !o.limited {
			continue
		}
		s := &p.items[o.item]
		if s.Count -= max(o.Used, o.Bought); s.Count <= 0 {
			s.Count, s.Owned = 0, true
		}
	}
}

// shortestKeptMM is an offcut that is worth keeping for the next lot, and the shorter side
// of a rest of a sheet that is. Common practice, no source.
const shortestKeptMM = 300

// add puts the offcuts of boards on the pile, for lots that come after them.
func (p *pile) add(wood string, offers []offer, boards []cut.Board) {
	for _, b := range boards {
		o := offers[b.Bar]
		left := length.Nanometres(b.Offcut, o.Length.Notation())
		if left.Cmp(length.MM(shortestKeptMM)) >= 0 {
			p.items = append(p.items, design.Stock{
				Wood: wood, Width: o.width, Thickness: o.thickness, Length: left, Count: b.Count, Owned: true,
			})
		}
	}
}

// weighed gives every bought bar its price in the steps of an amount. Where the
// book lacks one of them, or one is beyond what the planner takes, all go by
// their length; it reports whether they have prices.
func weighed(offers []offer, price func(offer) int64) bool {
	priced := true
	for i := range offers {
		o := &offers[i]
		if o.Owned {
			continue
		}
		o.price = price(*o)
		priced = priced && o.price > 0 && o.price <= cut.MaxPrice
	}
	for i := range offers {
		if o := &offers[i]; !priced && !o.Owned {
			o.price = o.Length.Nanometres()
		}
	}
	return priced
}

// stick is what one stick costs: by the piece where the book says so, else by its
// volume; 0 where the book has no price.
func (p Prices) stick(wood string, size length.Length) func(offer) int64 {
	return func(o offer) int64 {
		for _, s := range p.Sticks {
			if s.Wood == wood && s.Size.Same(size) && s.Length.Same(o.Length) {
				return s.Price.Steps()
			}
		}
		return p.byVolume(wood, o, func(w design.WoodPrice) design.Amount { return w.SquaresPerM3 })
	}
}

// board is what one frame board costs.
func (p Prices) board(wood string) func(offer) int64 {
	return func(o offer) int64 {
		return p.byVolume(wood, o, func(w design.WoodPrice) design.Amount { return w.BoardsPerM3 })
	}
}

func (p Prices) byVolume(wood string, o offer, perM3 func(design.WoodPrice) design.Amount) int64 {
	for _, w := range p.Woods {
		if w.Wood == wood {
			steps := float64(perM3(w).Steps()) * o.m3()
			return int64(math.Round(min(steps, 2*cut.MaxPrice)))
		}
	}
	return 0
}

// bars are the offers as the planner knows them. Of a limited number to buy only
// the share without defects counts.
func bars(offers []offer, defects float64) []cut.Bar {
	out := make([]cut.Bar, len(offers))
	for i, o := range offers {
		out[i] = cut.Bar{
			Name: string(rune('a' + i)), Length: o.Length.Nanometres(), Price: o.price,
			Limited: o.limited, Available: o.available,
		}
		if o.limited && !o.Owned {
			out[i].Available = soundOf(o.available, defects)
		}
	}
	return out
}

// counted sets how many bars of each offer a plan uses and buys, and returns what
// is bought in all, in the unit of the prices.
func counted(offers []offer, plan cut.Plan, defects float64) (all []offer, cost int64) {
	all = append(all, offers...)
	for i := range all {
		all[i].Used, all[i].Bought = 0, 0
	}
	for _, b := range plan.Boards {
		all[b.Bar].Used += b.Count
	}
	for i := range all {
		if o := &all[i]; !o.Owned {
			o.Bought = grossUp(o.Used, defects)
			cost += int64(o.Bought) * o.price
		}
	}
	return all, cost
}
