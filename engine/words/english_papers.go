package words

// englishPapers says what is printed.
func englishPapers() map[string]string {
	return map[string]string{
		"papers/set-cut":         "Papers to cut by",
		"section/papers/client":  "Papers",
		"section/papers/maker":   "Papers",
		"section/papers/builder": "Papers",

		"papers/choose-set":    "What to print",
		"papers/choose-format": "Size of the paper",
		"papers/format-A4":     "A4",
		"papers/format-Letter": "Letter",
		"papers/print":         "Print",
		"papers/print-help":    "The browser's dialogue prints these sheets, or keeps them as a PDF. Take the same size of paper there, a scale of 100 %, and no margins or headers of the browser's own; the bar of 100 mm at the foot of each sheet tells whether the print is true.",
		"papers/sheets":        "{n} {n|sheet|sheets}",
		"papers/none":          "There is nothing to print yet.",
		"papers/revision":      "Revision",
		"papers/units-mm":      "All sizes in mm",
		"papers/units-in":      "All sizes in inches",
		"papers/bar":           "100 mm: lay a rule on it. If it is not true, print at 100 %.",
		"papers/front":         "FRONT VIEW · TOP ↑",
		"papers/rear":          "REAR VIEW · left and right swapped · TOP ↑",
		"papers/number":        "sheet {n} of {of}",

		"csv/wood":    "Wood",
		"csv/section": "Section ({unit})",
		"csv/height":  "Height ({unit})",
		"csv/need":    "Need",
		"csv/spare":   "Spare",
		"csv/cut":     "To cut",

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
