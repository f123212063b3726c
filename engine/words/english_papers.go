package words

// englishPapers says what is printed.
func englishPapers() map[string]string {
	return map[string]string{
		"papers/set-cut":  "Papers to cut by",
		"papers/revision": "Revision",
		"papers/units-mm": "All sizes in mm",
		"papers/units-in": "All sizes in inches",
		"papers/bar":      "100 mm: lay a rule on it. If it is not true, print at 100 %.",
		"papers/front":    "FRONT VIEW · TOP ↑",
		"papers/rear":     "REAR VIEW · left and right swapped · TOP ↑",
		"papers/number":   "sheet {n} of {of}",

		"paper/stop-list":   "Stop list",
		"stop/lot":          "{wood}, {size} square",
		"stop/sticks":       "{n} sound sticks of {length} out of {bought} bought. Longest blocks first: the stop is set once for each height, and the sticks lie in groups.",
		"stop/group":        "Group",
		"stop/group-sticks": "Sticks",
		"stop/group-pieces": "From each stick",
		"stop/group-rest":   "Left over",
		"stop/pieces":       "{n} × {height}",
		"stop/from-group":   "{n} from each of {group}",
		"stop/from":         "Take {groups}.",
		"stop/counts":       "Cut {cut}: {need} and {spare} spare",
		"stop/legend":       "Cross a box for each ten. At each ring, after {every} cuts, measure a block again: {tolerance} either way, or set the stop anew. The black bar is as long as the block: hold one against it.",
		"stop/true-size":    "true size",
		"stop/too-long":     "No bar of true size: this block is longer than the sheet is wide.",
		"stop/step":         "One box is {n} blocks.",
	}
}
