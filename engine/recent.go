package engine

import (
	"reflect"
	"slices"
	"sync"

	"blockfield/engine/design"
)

// mostRecent is how many results are kept: the open design, its looks and the levers on it.
const mostRecent = 16

// recent keeps what was reckoned last of designs but for their money, so that an edit of
// the terms prices again and plans nothing anew. It changes no result: a design that is
// not the same to the last notation is planned.
type recent struct {
	mu  sync.Mutex
	all []reckoned // the last one used is last
}

// reckoned is a design without its money with what was reckoned of it.
type reckoned struct {
	design design.Design
	result Result
}

// of returns what was reckoned of a design, or has it made.
func (r *recent) of(d design.Design, reckon func() (Result, error)) (Result, error) {
	d.Money = design.Money{}
	r.mu.Lock()
	i := slices.IndexFunc(r.all, func(one reckoned) bool { return reflect.DeepEqual(one.design, d) })
	if i >= 0 {
		one := r.all[i]
		r.all = append(slices.Delete(r.all, i, i+1), one)
		r.mu.Unlock()
		return one.result, nil
	}
	r.mu.Unlock()
	result, err := reckon()
	if err != nil {
		return Result{}, err
	}
	r.mu.Lock()
	defer r.mu.Unlock()
	r.all = append(r.all, reckoned{d, result})
	r.all = slices.Delete(r.all, 0, max(0, len(r.all)-mostRecent))
	return result, nil
}
