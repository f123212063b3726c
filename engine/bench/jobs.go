package bench

import (
	"fmt"

	"blockfield/engine/design"
	"blockfield/engine/panel"
)

// pair walks the groups of the design beside the built ones.
func pair(d design.Design, groups []panel.Group) ([]job, error) {
	var jobs []job
	for w := range d.Walls {
		wall := &d.Walls[w]
		for i, g := range wall.Groups {
			if len(jobs) == len(groups) {
				return nil, fmt.Errorf("bench: %d built groups are fewer than those of the design", len(groups))
			}
			jobs = append(jobs, job{
				design: g, wall: wall, built: &groups[len(jobs)],
				path: fmt.Sprintf("design.walls[%d].groups[%d]", w, i),
			})
		}
	}
	if len(jobs) < len(groups) {
		return nil, fmt.Errorf("bench: %d built groups are more than the %d of the design", len(groups), len(jobs))
	}
	return jobs, nil
}
