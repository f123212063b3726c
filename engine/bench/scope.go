package bench

import (
	"slices"

	"blockfield/engine/design"
)

// inScope reports whether a task belongs to what the workshop supplies: all of them where
// it hangs the panels; none on site where it does not; of a kit what makes, counts and
// packs the blocks; of a plan the office, without buying. A workshop's own tasks go by
// what they are counted by.
func inScope(t design.Task, s design.Scope) bool {
	switch {
	case s == design.HungScope:
		return true
	case t.Role == roleSite:
		return false
	case s == design.PlanScope:
		return t.Role == roleOffice && t.ID != taskOrder
	case s == design.KitScope && t.Role == roleShop:
		return slices.Contains(kitTasks(), t.ID) || slices.Contains(kitMeasures(), t.Per)
	}
	return true
}

// taskOrder is buying the stock.
const taskOrder = "a5"

// kitTasks are those of a kit that are counted by the job or by the panel: setting up saw
// and sanding bench, weighing and labelling, packing.
func kitTasks() []string { return []string{"c1", "d1", "i1", taskWrap} }

// kitMeasures are what the tasks of a kit are counted by.
func kitMeasures() []string {
	return []string{perStick, perCutBlock, perVisit, "height above 0", "50 cuts", perShopDay}
}
