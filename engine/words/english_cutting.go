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
		"label/bench.longerFor":          "Longer search for",
		"label/bench.sheets":             "Sheets that are there",
		"label/bench.sheets.sheet":       "Board",
		"label/bench.sheets.thickness":   "Thickness",
		"label/bench.sheets.width":       "Across the grain",
		"label/bench.sheets.length":      "Along the grain",
		"label/bench.sheets.count":       "How many",
		"label/bench.handling":           "Boards against handling",
		"label/bench.backerOversize":     "Backers cut larger by",
		"label/bench.backerGrain":        "Face grain of the backers",
		"label/bench.trim":               "Trimmed after gluing",
		"label/bench.sawDepth":           "Depth that your saw cuts",
		"label/walls.groups.finish.when": "The field is finished",

		"zero/bench.boardLength": "0: bought by the running metre, with 15 % for mitres and faults",
		"zero/bench.stock.count": "0: as many as are wanted",

		"zero-means/by-the-metre": "by the running metre",

		"choice/what costs less":             "what costs less",
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
		"buy/board-of":  "{board}, {length:sold} long",
		"buy/strips-of": "dry pine or ply, {width} × {thickness:sold}, {length:sold} long",

		"bench/boards":    "Boards, backers and trimming",
		"bench/add-stock": "Add other wood, or wood that is there",
		"stock/yard":      "Other {wood} at the yard",
		"stock/there":     "{wood} that is there",
		"bench/add-sheet": "Add a sheet, or a rest of one, that is there",
		"stock/sheet":     "{sheet} that is there, {thickness}",

		"cuts/lot":           "{wood}, {size} square",
		"cuts/lead":          "{n} {n|stick is|sticks are} cut. {bought} {bought|is|are} bought, with what knots and splits may take.",
		"cuts/own":           "{n} {n|is|are} there already.",
		"cuts/used":          "{share} of the length of all sticks ends up in panels.",
		"cuts/proven-sticks": "No plan takes fewer than {n} {n|stick|sticks}.",
		"cuts/proven-cost":   "No plan of sound sticks costs less.",
		"cuts/gap":           "The best possible plan costs at most {share} less.",
		"cuts/longer":        "Look longer",
		"cuts/longer-why":    "A longer search may find a plan with less wood or fewer visits, or prove that there is none. It takes a second or two.",
		"cuts/looked-best":   "Looked longer, and proven: no plan costs less wood, and none with these sticks has fewer visits. This holds until blocks or sticks change.",
		"cuts/looked-visits": "Looked longer: no plan costs less wood, and with these sticks none has more than {n} {n|visit|visits} fewer. This plan holds until blocks or sticks change.",
		"cuts/looked-gap":    "Looked longer: the best possible plan costs at most {share} less wood, or has with these sticks {n} {n|visit|visits} fewer. This plan holds until blocks or sticks change.",
		"cuts/tail":          "Every stick keeps {tail} to hold, but for what the last saw cut takes of it.",
		"cuts/group":         "Group",
		"cuts/sticks":        "Sticks",
		"cuts/length":        "Length",
		"cuts/each":          "From each stick",
		"cuts/rest":          "Left over",
		"cuts/pieces":        "{n} × {height}",
		"cuts/stop":          "Stop at",
		"cuts/take":          "Blocks from each stick",
		"cuts/from":          "{group} {n}",
		"cuts/own-stick":     "{length}, there",
		"cuts/letter":        "{letter}",
		"cuts/order":         "Set the stop once for each height, longest first, and take so many blocks from each stick of the groups named. A group with further heights is set aside and fetched again.",

		"cuts/handling":      "Boards against handling: {stick}",
		"cuts/bought":        "To buy",
		"cuts/visits":        "Visits",
		"cuts/time":          "Handling",
		"cuts/cost":          "Wood and time",
		"cuts/minutes":       "{n} min",
		"cuts/chosen":        "chosen",
		"cuts/visit":         "A visit is a stick that is set aside at one height and fetched again for another.",
		"cuts/visit-time":    "It is reckoned with {s} s, an invented figure until your time table has a row counted by “stop visit”.",
		"cuts/visit-home":    "It is reckoned with {s} s, an invented figure.",
		"cuts/chosen-wish":   "Chosen as you asked: {wish}.",
		"cuts/chosen-fewest": "Chosen: the fewest boards, since time has no price here.",
		"cuts/chosen-cost":   "Chosen: what costs less, with an hour in the shop at {rate}.",

		"cuts/sheets":       "Backers out of sheets",
		"cuts/board":        "{sheet}, {thickness:sold}",
		"cuts/backer":       "{width} × {height}",
		"cuts/sheet-title":  "A sheet with {n} {n|backer|backers} to cut out of it",
		"cuts/sheet-alike":  "{n} {n|sheet|sheets} like this; the grain runs from left to right.",
		"cuts/sheet-own":    "{n} of your own, {width} × {length}; the grain runs from left to right. Plane two edges first: none comes from the factory.",
		"cuts/rests":        "Left over and worth keeping (broken lines), across and along the grain: {rests}.",
		"cuts/rest-of":      "{n} of {width} × {length}",
		"cuts/sheet-proven": "No plan takes fewer than {n} {n|sheet|sheets}.",
		"cuts/sheet-bound":  "{n} {n|sheet|sheets}; no plan takes fewer than {bound}.",
		"cuts/sheet-joined": "One of the backers is larger than a sheet: it has to be joined, or the panel split.",
		"cuts/sheet-edges":  "Each cut goes right through. The thick edges come straight from the factory: a backer that touches both starts the rows there; for the others plane two edges first.",

		"trim/heading":  "Set and trim",
		"trim/set":      "The glued field lies for {h} h in this shop before it is stood up and trimmed. The rows start at the top left, where the backer is straight.",
		"trim/set-from": "The glued field lies for {h} h in this shop before it is stood up and trimmed. The rows start at the {edge} and at the left, where the backer is straight.",
		"trim/factory":  "stays as it is",
		"trim/nothing":  "nothing comes off",
		"trim/off":      "{off} comes off",
		"trim/depth":    "through {depth}",
		"trim/too-deep": "through {depth}: deeper than your saw cuts",
		"trim/bare":     "(no blocks along this edge)",

		"finish/heading":     "Finish",
		"finish/after":       "Field and frame are finished once the glue has set, {h} h after the last row; the frame can be finished meanwhile, before it is fitted.",
		"finish/first":       "Some blocks are finished before they are glued: try your glue on a finished offcut, and keep every base bare.",
		"finish/coat":        "Coat",
		"finish/tops":        "Block tops",
		"finish/long":        "Sides, bare backer",
		"finish/on-frame":    "Frame",
		"finish/field":       "{finish} on the field, {n} of {of}",
		"finish/frame":       "{finish} on the frame, {n} of {of}",
		"finish/next":        "next coat after {span}",
		"finish/dry":         "fully dry after {span}",
		"finish/by-label":    "waits as the label says",
		"finish/hours":       "{low} to {high} h",
		"finish/days":        "{low} to {high} days",
		"finish/hours-about": "{high} h",
		"finish/days-about":  "{high} days",
		"finish/habit":       "Litres and waits are habits of the trade: the label on the tin goes before them. Nothing is wrapped in film before it is half dry.",

		"bench/split":           "One panel weighs {mass}, and {why}. As {across} × {down} panels it could be taken.",
		"split/people":          "two people carry {units|50 kg|110 lb} at most",
		"split/door":            "its shorter side is higher than the door",
		"split/door-and-people": "two people carry {units|50 kg|110 lb} at most; its shorter side is higher than the door, too",
		"bench/finished-bases":  "Glue does not hold on a finish. Mask the bases of the blocks before they are finished, or finish the field once it is glued.",
		"bench/saw-reach":       "At the {edge} the saw has to go through {depth}, and yours cuts {saw}. Trim the backer alone, trim before the blocks of that edge are glued, or plane it by hand.",
		"edge/top":              "top edge",
		"edge/left":             "left edge",
		"edge/right":            "right edge",
		"edge/bottom":           "bottom edge",
		"bench/board-too-short": "A piece of {piece} does not come out of a board of {board}. Buy longer boards, or have the piece joined; it is priced by the running metre.",
	}
}
