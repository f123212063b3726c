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

// englishCuts says how boards and sheets are cut.
func englishCuts() map[string]string {
	return map[string]string{
		"buy/there":     "{n} of your own",
		"buy/board-of":  "{board}, {length} long",
		"buy/strips-of": "dry pine or ply, {width} × {thickness}, {length} long",

		"bench/split":           "One panel weighs {mass}, and {why}. As {across} × {down} panels it could be taken.",
		"split/people":          "two people carry 50 kg (110 lb) at most",
		"split/door":            "its shorter side is higher than the door",
		"split/door-and-people": "two people carry 50 kg (110 lb) at most; its shorter side is higher than the door, too",
		"bench/finished-bases":  "Glue does not hold on a finish. Mask the bases of the blocks before they are finished, or finish the field once it is glued.",
		"bench/saw-reach":       "At the {edge} the saw has to go through {depth}, and yours cuts {saw}. Trim the backer alone, trim before the blocks of that edge are glued, or plane it by hand.",
		"edge/top":              "top edge",
		"edge/left":             "left edge",
		"edge/right":            "right edge",
		"edge/bottom":           "bottom edge",
		"bench/board-too-short": "A piece of {piece} does not come out of a board of {board}. Buy longer boards, or have the piece joined; it is priced by the running metre.",
	}
}
