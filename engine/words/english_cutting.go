package words

import "maps"

// englishCutting is what is said of stock, cuts, sheets and trimming.
func englishCutting() map[string]string {
	all := englishStockFields()
	maps.Copy(all, englishCuts())
	return all
}

// englishStockFields names the fields of how wood and sheets are bought and cut.
func englishStockFields() map[string]string {
	return map[string]string{
		"label/bench.boardLength":        "Length of the boards",
		"label/bench.stock":              "Other wood",
		"label/bench.stock.wood":         "Wood",
		"label/bench.stock.width":        "Width",
		"label/bench.stock.thickness":    "Thickness",
		"label/bench.stock.length":       "Length",
		"label/bench.stock.count":        "How many",
		"label/bench.stock.owned":        "It is there already",
		"label/bench.handling":           "Boards against handling",
		"label/bench.backerOversize":     "Backers cut larger by",
		"label/bench.backerGrain":        "Face grain of the backers",
		"label/bench.trim":               "Trimmed after gluing",
		"label/bench.sawDepth":           "Depth that your saw cuts",
		"label/walls.groups.finish.when": "The field is finished",

		"zero/bench.boardLength": "0: bought by the running metre, with 15 % for mitres and faults",
		"zero/bench.stock.count": "0: as many as are wanted",

		"zero-means/by-the-metre": "by the running metre",

		"choice/what costs less":             "what costs less, boards or minutes",
		"choice/fewest boards":               "fewest boards",
		"choice/fewest visits":               "least handling",
		"choice/either way":                  "either way",
		"choice/across":                      "across the panel",
		"choice/up":                          "up the panel",
		"choice/backer only":                 "the backer only",
		"choice/through the blocks":          "through the blocks",
		"choice/after gluing":                "after gluing",
		"choice/before gluing, bases masked": "before gluing, bases masked",
		"choice/before gluing":               "before gluing",
	}
}

// englishCuts says how boards are cut.
func englishCuts() map[string]string { return map[string]string{} }
