package engine

import (
	"blockfield/engine/cost"
	"blockfield/engine/design"
)

// Odds draws how a planned job may end that is sold at its price: what the hours may come
// to, and before a survey the rest as well. The code of the design is the seed, so that a
// job has the same odds everywhere and whenever it is asked for.
func Odds(d design.Design, r Result, b design.Book) cost.Odds {
	seed := uint64(0)
	for _, c := range r.Revision {
		seed = seed*131 + uint64(c)
	}
	return cost.Simulate(quantities(d, r.Bill), b, r.Price, seed)
}
