package cut

import (
	"fmt"
	"sync"
)

// Memory keeps plans that took a longer search, so that whoever plans a job again,
// with something else changed, has them at once. It changes no plan: the same problem
// with the same steps has the same one. The zero value and nil are ready for use; nil
// keeps nothing.
type Memory struct {
	mu     sync.Mutex
	plans  map[string]Plan
	curves map[string][]Handling
}

// mostKept is how many plans are kept before all are forgotten: a job has a few, and
// one that is edited for hours must not fill a browser.
const mostKept = 256

// Solve is the function Solve.
func (m *Memory) Solve(p Problem, steps int64) (Plan, error) {
	if m == nil || steps <= QuickSteps {
		return Solve(p, steps)
	}
	key := fmt.Sprintf("%d %+v", steps, p)
	m.mu.Lock()
	plan, known := m.plans[key]
	m.mu.Unlock()
	if known {
		return plan, nil
	}
	plan, err := Solve(p, steps)
	if err == nil {
		m.mu.Lock()
		m.plans = kept(m.plans, key, plan)
		m.mu.Unlock()
	}
	return plan, err
}

// FewestVisits is the function FewestVisits.
func (m *Memory) FewestVisits(p Problem, plan Plan, more int, steps int64) ([]Handling, error) {
	if m == nil || steps <= QuickSteps {
		return FewestVisits(p, plan, more, steps)
	}
	key := fmt.Sprintf("%d %d %+v %+v", steps, more, p, plan)
	m.mu.Lock()
	curve, known := m.curves[key]
	m.mu.Unlock()
	if known {
		return curve, nil
	}
	curve, err := FewestVisits(p, plan, more, steps)
	if err == nil {
		m.mu.Lock()
		m.curves = kept(m.curves, key, curve)
		m.mu.Unlock()
	}
	return curve, err
}

func kept[V any](all map[string]V, key string, value V) map[string]V {
	if all == nil || len(all) >= mostKept {
		all = map[string]V{}
	}
	all[key] = value
	return all
}
