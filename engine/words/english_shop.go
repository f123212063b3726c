package words

import "maps"

// englishShop says what a maker reads of sticks, moisture, lay-up and days.
func englishShop() map[string]string {
	all := englishRows()
	maps.Copy(all, englishSticks())
	maps.Copy(all, englishRecord())
	maps.Copy(all, englishRecordLabels())
	maps.Copy(all, englishDays())
	maps.Copy(all, englishTools())
	return all
}

// englishRows says the screen that shows one row at the bench.
func englishRows() map[string]string {
	return map[string]string{
		"shop/heading":          "At the bench",
		"page/record-opened":    "The record of the work is taken up.",
		"message/record-unread": "A record of the work on this job was kept here and cannot be read. It stays kept.",
		"days/late":             "Ready on {ready}, wanted by {wanted}: {n} {n|day|days} short. {waiting} {waiting|day|days} of the way there only wait for wood, glue and coats.",
		"days/not-cured":        "It is to be packed or hung on {hang}, and it is done and cured on {cured} at the earliest. Wrapping sticks to a soft finish.",
		"days/cure-unknown":     "Nobody here knows how long this finish cures: read its sheet before anything is packed or hung on {hang}.",

		"record/bins-not-counted": "{n} of {of} bins {n|is|are} not counted yet. Count every bin before the glue is opened.",
		"record/not-counted":      "Nobody has counted the blocks yet. Count every bin before the glue is opened.",
		"record/bin-short":        "{good} of {need} good blocks lie in the {height} bin: {short} {short|is|are} short. Cut {cut} more before you open the glue.",
		"record/other-paper":      "The row cards in hand are of revision {paper}, and the design is {now}. Print them anew.",
		"record/other-rows":       "{n} {n|row|rows} of panel {panel} of {group} were laid from cards of revision {revision}, and the cards of {now} differ. Go back to that revision, or begin the panel anew.",

		"rows/open":           "Lay the rows",
		"rows/lead":           "One row at a time, in large numerals, for a phone or a tablet at the bench. Ticks are kept in this browser.",
		"rows/none":           "There is no block to lay.",
		"rows/leave":          "Back to the page",
		"rows/row":            "Row",
		"rows/take":           "Blocks of this row",
		"rows/cells":          "Heights from left to right, seen from the front, top up",
		"rows/bare":           "empty",
		"rows/panel":          "Panel {n} of {all}",
		"rows/panel-of-group": "{group}, panel {n} of {all}",
		"rows/order":          "{n} of {all} from the {edge} edge, heights in {unit}",
		"rows/edge-bottom":    "bottom",
		"rows/edge-top":       "top",
		"rows/glue":           "Glue {blocks} {blocks|block|blocks} with {grams} g.",
		"rows/glue-parts":     "Glue {blocks} blocks in parts of {parts}, or the glue skins: {grams} g in all.",
		"rows/then":           ", then ",
		"rows/no-glue":        "This row stays bare: no glue.",
		"rows/woods":          "Plain boxes are {one}, those with a thick edge {other}.",
		"rows/bin-of":         "{height} {wood}",
		"rows/set":            "Set {n} loose {n|block|blocks} from the {height} bin into the empty {n|cell|cells}, without glue.",
		"rows/set-some":       "Set {n} loose {n|block|blocks} into the empty {n|cell|cells}, without glue: {from} from the {height} bin, and {lacking} off-cuts of the same section.",
		"rows/pull":           "Once the row is pressed, pull {n} loose {n|block|blocks} and put {n|it|them} back.",
		"rows/measure":        "Should measure {distance} from the {edge} edge to the far face of this row, within {tolerance}.",
		"rows/stale":          "{n} {n|row|rows} of this panel were laid from cards of revision {revision}. The cards of {now} differ. Go back to that revision, or begin the panel anew.",
		"rows/held":           "{n} {n|Stop holds|Stops hold} up gluing: see the section Bench before you open the glue.",
		"rows/anew":           "Begin this panel anew",
		"rows/back":           "Back",
		"rows/next":           "Laid, next",
		"rows/finish":         "Laid",
		"rows/laid":           "Laid ✓",
		"rows/not-laid":       "Not laid",
		"rows/progress":       "{n} of {all} rows laid",
		"rows/all-laid":       "All rows are laid. Let the glue set before a panel is stood up or trimmed.",
		"rows/no-wake":        "This browser does not keep the screen awake: set it so that it stays on.",
	}
}

// englishRecord says the parts of the record that stand in the section Bench.
func englishRecord() map[string]string {
	return map[string]string{
		"shop/private": "What is noted here stays in this browser and enters no file of a design and no link.",
		"shop/save":    "Save the record as a file",
		"shop/file":    "{title} record",
		"shop/sticks":  "Sticks and moisture as measured",
		"shop/meter":   "Moisture",
		"shop/counts":  "Blocks counted",
		"shop/lay":     "How the rows are laid",
		"shop/signs":   "Signatures",
		"shop/learn":   "What it really took",
		"shop/drop":    "Take it out",
		"shop/treated": "Treated against fire",

		"fold/cuts":             "{blocks} blocks of {heights} {heights|height|heights} out of {n} {n|stick|sticks}",
		"fold/handling-heading": "Boards against handling",
		"fold/handling":         "{bought} to buy, {n} {n|visit|visits}",
		"fold/sheets":           "{n} {n|sheet|sheets}",
		"fold/sheets-own":       "{n} {n|sheet|sheets} to buy, {own} of your own",
		"fold/finish-heading":   "Trimming and finishing",
		"fold/finish":           "the glue sets for {h} h, then {litres} of finish",
		"fold/unfinished":       "the glue sets for {h} h; no finish",
		"fold/sticks":           "{length} long, {kerf} a cut, {tail} to hold",
		"fold/by-metre":         "by the running metre",
		"fold/boards":           "boards of {length}",
		"fold/boards-trim":      "{boards}; backers {more} larger, trimmed: {trim}",
		"fold/shop":             "sticks at {pct}, glue open for {min}, {warm}",
		"fold/people":           "{n} {n|person|people}",
		"fold/people-road":      "{n} {n|person|people}, {km} km away",
		"fold/several":          "{n} of {what}",
		"fold/stock":            "{width} × {thickness} × {length}",
		"fold/of":               "{what}: {name}",
		"fold/nothing-noted":    "nothing noted",
		"fold/tools":            "{n} of {of} there",
		"fold/timed":            "{n} {n|task|tasks} timed",
		"fold/not-measured":     "not measured",
		"fold/mean":             "{mean} on average",
		"fold/short":            "{n} of {of} bins short",
		"fold/counted":          "{n} of {of} bins counted",
		"fold/lay":              "from the {edge}, {n} of {of} rows laid",
		"fold/days":             "{n} {n|day|days} in all",
		"fold/ready":            "ready on {day}",
		"fold/unsigned":         "none",
		"fold/hours":            "{typical}, or {low} to {high}",
		"fold/weekends":         "{hours} in {n} {n|weekend|weekends}",
		"fold/signed":           "{n} of {of} signed",

		"treated/lead": "A record for whoever answers for the building, and no class of the surface: the product's maker says what it is good for on this wood, put on so; the authority says what it asks for, and whether a deep field of blocks can be what was tested.",
		"treated/need": "To be reached: {end} of end grain, {long} of sides and bare backer, {frame} of frame.",
		"treated/mass": "At {coverage} that is {mass} on the blocks and {frame} on the frame.",

		"label/record.treated.product":  "Product, and its maker",
		"label/record.treated.batch":    "Batch, or batches",
		"label/record.treated.coverage": "Put on, wet, all coats together",
		"label/record.treated.where":    "On which faces",
		"label/record.treated.day":      "Last coat on",
		"label/record.treated.by":       "Who put it on",
		"zero/record.treated.coverage":  "0: not weighed. Weigh the tin before and after",

		"count/lead":          "Count each bin in tens. Good are those that were cut and not thrown out; the glue waits until every bin has what the field needs.",
		"count/bin":           "{height}",
		"count/bin-of":        "{height} of {wood}, {size} square",
		"count/ten":           "Ten more",
		"count/one":           "One more",
		"count/out":           "One thrown out",
		"count/height":        "Height",
		"count/need":          "Need",
		"count/spare":         "Spare",
		"count/cut":           "Cut",
		"count/rejects":       "Out",
		"count/good":          "Good",
		"count/short":         "{n} short",
		"count/recut-heading": "To cut anew",
		"count/recut":         "{n} of {height}",

		"sign/lead":     "A Stop that is not about load, tipping, lifting or safety can be signed off with a name and a reason. It holds for this revision of the design.",
		"sign/do":       "Sign off…",
		"sign/begun":    "Not signed off yet: name and reason",
		"sign/withdraw": "Withdraw",
		"sign/lapsed":   "Signed for revision {revision}; the design is {now} now, so it does not hold.",
		"sign/signed":   "Signed off by {name}: {reason}",

		"learn/lead":                "Type the minutes that tasks really took, all together, and what was really paid. A price book can learn from it: one job moves a rate by less than a third of what it was off.",
		"learn/times":               "Minutes",
		"learn/spent":               "Purchases",
		"learn/reckoned-minutes":    "Reckoned: {minutes} in all. 0: not timed.",
		"learn/reckoned-amount":     "Reckoned: {amount}. 0: not noted.",
		"learn/ratio":               "Times what was reckoned",
		"learn/factor-heading":      "New factor",
		"learn/jobs-heading":        "Rests on",
		"learn/factor":              "{was} → {now}",
		"learn/price-factor":        "prices × {factor}",
		"learn/jobs":                "{n} {n|job|jobs}, {low} to {high}",
		"learn/choice-heading":      "What becomes of it",
		"learn/taught":              "Learned.",
		"learn/left-out":            "Nothing is learned from it.",
		"learn/leave-out":           "Leave it out",
		"learn/far":                 "More than one and a half times off: look at the figure again.",
		"learn/doubtful":            "More than {times} times off: a slip? It is learned only if you say that it holds.",
		"learn/sure":                "It holds: learn from it",
		"learn/more":                "Figures were typed or corrected since; the button learns those, and nothing twice.",
		"learn/no-more":             "It has nothing further to teach.",
		"learn/back":                "Undo takes the learned book back. A book of your own that was in force before is kept in Money, under “Other price books kept here”.",
		"zero/record.road.minutes":  "0: not timed",
		"zero/record.road.km":       "0: not noted",
		"zero-means/not-timed":      "not timed",
		"zero-means/not-noted":      "not noted",
		"label/record.road.minutes": "On the road, all trips and people together",
		"label/record.road.km":      "Way there and back, all trips",
		"label/record.times.aside":  "Leave it out",
		"label/record.times.sure":   "It holds",
		"label/record.spent.aside":  "Leave it out",
		"label/record.spent.sure":   "It holds",
		"learn/do":                  "Put a price book in force that has learned this",
		"learn/into":                "The price book {code} has learned from this job.",
	}
}

// englishDays says the work over days.
func englishDays() map[string]string {
	return map[string]string{
		"shop/days": "Days",

		"days/sort":      "Sort, sand faces",
		"days/cut":       "Cut blocks",
		"days/sand":      "Sand and bin",
		"days/strip":     "Cleats, spacers",
		"days/backer":    "Cut the backer",
		"days/lay":       "Lay the rows",
		"days/trim":      "Trim the field",
		"days/coat":      "Coat the field",
		"days/frame":     "Frame",
		"days/cleat":     "Fix the cleat",
		"days/pack":      "Weigh and pack",
		"days/pack-home": "Weigh, look over",
		"days/other":     "Other work",
		"days/day":       "day {n}",
		"days/picture":   "The work over days",
		"days/legend":    "Full: what decides when it is ready. Hatched: what only waits. Outlined: what has room.",

		"days/said-undated":   "Ready {n} {n|day|days} after the sticks are there.",
		"days/said-forwards":  "With the sticks there on {start} it is ready on {ready}.",
		"days/said-backwards": "To be ready by {need} the sticks have to be there on {start}. It is ready on {ready} then.",
		"days/said-today":     "With the sticks there today, {start}, it is ready on {ready}.",
		"days/waits":          "{n} {n|day|days} of that only wait: sticks that settle, glue that sets, coats that dry and cure.",
		"days/chain":          "What decides when it is ready: {list}.",
		"days/weekends":       "With what settles and dries between them it takes {n} {n|weekend|weekends}.",
		"days/more":           "With {people} people at the bench it is ready {n} {n|day|days} earlier.",
		"days/more-none":      "With {people} people at the bench it is ready on the same day: the rest waits.",
		"days/sheet":          "How long the finish cures only its sheet says; no time is reckoned for it.",

		"weekday/0": "Mon",
		"weekday/1": "Tue",
		"weekday/2": "Wed",
		"weekday/3": "Thu",
		"weekday/4": "Fri",
		"weekday/5": "Sat",
		"weekday/6": "Sun",

		"label/record.days.start":       "The sticks are there on",
		"label/record.days.needBy":      "Needed by",
		"label/record.days.hang":        "To be packed or hung on",
		"label/record.days.hoursPerDay": "Hours at the bench on a working day",
		"label/record.days.daysPerWeek": "Working days in a week",
		"label/record.days.people":      "People at the bench",
		"label/record.days.settle":      "Days for the sticks to settle",
		"label/record.days.glueSets":    "Hours for the glue to set",
	}
}

// englishTools says what the tools at hand mean, and the jigs.
func englishTools() map[string]string {
	return map[string]string{
		"shop/tools": "Tools at hand",
		"shop/jigs":  "Jigs to make first",

		"choice/mitre saw":       "mitre saw",
		"choice/mitre box":       "mitre box and hand saw",
		"choice/stop block":      "stop block",
		"choice/clamped carrier": "clamped carrier",
		"choice/bench saw":       "bench saw",
		"choice/sander":          "sander",
		"choice/second sander":   "second sander",
		"choice/extraction":      "dust extraction",
		"choice/calliper":        "calliper",
		"choice/moisture meter":  "moisture meter",
		"choice/stud finder":     "stud finder or magnet",
		"choice/bathroom scale":  "bathroom scale",
		"choice/drill":           "drill",
		"choice/square":          "square",
		"choice/straight-edges":  "two straight-edges",
		"choice/level":           "level",

		"tools/lead":                   "Tick what is there: how short a block may be cut, and how long all of it takes, follow from it. Wood that is there already is noted under the sticks.",
		"tools/unknown":                "Nothing is ticked yet: the work is reckoned with hand tools, {factor} times a workshop's hours.",
		"tools/cut-carrier":            "With the machine and the clamped carrier blocks down to {least} can be cut. Let the blade stop before you lift one out.",
		"tools/cut-machine":            "At a machine, with fingers, no block shorter than {least}. Make the clamped carrier for shorter ones.",
		"tools/cut-machine-box":        "At a machine no block shorter than 25 mm without a clamped carrier; those down to {least} in the mitre box, by hand.",
		"tools/cut-box":                "In the mitre box, clamped and by hand, blocks down to {least} can be cut.",
		"tools/cut-none":               "No saw is ticked: ask the yard whether it cuts to length, and give it the list of heights.",
		"tools/too-short":              "Too short for that: {heights}. Make {n|it|them} taller, or make the carrier.",
		"tools/factor":                 "All of it takes {factor} times a workshop's hours.",
		"tools/cleat-rip":              "Rip the bevelled strips on the bench saw, out of a wide board, with a push stick.",
		"tools/cleat-buy":              "Without a bench saw buy a ready-made hanging strip, or ask the yard to rip the bevel.",
		"tools/missing":                "Still to be found or borrowed: {list}.",
		"tools/instead-stop block":     "Instead of a stop block: a straight off-cut, clamped to the fence.",
		"tools/instead-stud finder":    "Instead of a stud finder: a strong magnet finds the screws of the board.",
		"tools/instead-bathroom scale": "Instead of a bathroom scale: two kitchen scales under a plank, their readings added.",
		"tools/instead-straight-edges": "Instead of straight-edges: two factory edges of the sheet.",

		"tools/jig-caution":  "A jig keeps fingers from the blade only while it is clamped. Guards stay on, the maker's instructions of your saw come first, and what you are unsure of is cut by hand.",
		"tools/jig-stop":     "Stop: clamp it to the fence, the longest blocks first: {stops} from the blade. Hold the piece between stop and blade down, or clamp it, until the blade stands: a loose one is thrown. Leave a gap under the stop for dust, and measure again every fifty cuts.",
		"tools/jig-carrier":  "Clamped carrier: a board of {length} × {width} with a notch for the stick, which a clamp holds in it. Both hands stay at its ends.",
		"tools/jig-fence":    "Start fence: two straight arms of at least {width} and {height} on a flat board. They are square when their ends are {diagonal} apart.",
		"tools/draw-stop":    "Stick against the fence with the stop and the blade",
		"tools/draw-carrier": "The clamped carrier from above",
		"tools/draw-fence":   "The start fence from above",
	}
}

// englishRecordLabels are the labels of the fields of the record.
func englishRecordLabels() map[string]string {
	return map[string]string{
		"label/record.cards.widths":      "Widths",
		"label/record.cards.thicknesses": "Thicknesses",
		"label/record.meter.day":         "Day",
		"label/record.meter.percent":     "The meter says",
		"label/record.bins.cut":          "Cut",
		"label/record.bins.rejects":      "Thrown out",
		"label/record.lay.start":         "First row at the edge",
		"label/record.lay.paper":         "Revision on the row cards in hand",
		"zero/record.lay.paper":          "Empty where the cards are on the screen.",
		"label/record.signOffs.name":     "Name",
		"label/record.signOffs.reason":   "Reason",
		"label/record.times.minutes":     "Minutes",
		"label/record.spent.amount":      "Paid",
		"label/record.learn.aside":       "An odd job: learn nothing from it",
		"label/record.learn.why":         "What was odd about it",
	}
}

// englishSticks says what is known of sticks and of moisture.
func englishSticks() map[string]string {
	return map[string]string{
		"measure/lead":    "Measure ten sticks with a calliper before the first cut, width and thickness of each, in the same order, with commas between them.",
		"measure/card":    "{wood}, {size} square",
		"measure/some":    "{n} of {all} sticks have both readings.",
		"measure/section": "{n} sticks: mean {mean}, known to within {within}; spread {spread}; from {least} to {most}.",
		"measure/row":     "A row of {n} blocks ends {from} to {to} from where it is drawn. {basis} Blocks of one stick are all off alike: mix each bin.",
		"measure/field":   "With {mean} as the size of the blocks the field is {width} × {height} instead of {wasWidth} × {wasHeight}, with as many blocks.",
		"measure/take":    "Take {mean} as the size of the blocks",

		"moisture/said":           "{wood}: in this room wood rests between {low} and {high}, and the sticks are at {stock}. Over a year the side of {side} grows by up to {growth} and shrinks by up to {shrink}. Its joints hold {slack}, and each stands {joint} open when it is driest. The frame wants {gap} of air on each side.",
		"moisture/said-frameless": "{wood}: in this room wood rests between {low} and {high}, and the sticks are at {stock}. Over a year the side of {side} grows by up to {growth} and shrinks by up to {shrink}. Its joints hold {slack}, and each stands {joint} open when it is driest.",
		"moisture/beyond":         "Below 6 and above 14 % of moisture the handbook has no figures: the movement is carried on in a straight line there.",
		"moisture/settle":         "Let the sticks settle in air like the room's for {least} days at least; plan with {plan}.",
		"moisture/settled":        "The sticks have settled: two readings a week or more apart differ by less than half a point.",
		"moisture/not-settled":    "The sticks have not settled yet: no reading a week or more before the last one is within half a point of it.",
		"moisture/add":            "Add a reading of the meter",
		"moisture/take":           "Take the last reading as the moisture of the sticks",

		"measure/drift":         "A row of {n} blocks may end {off} from where it is drawn, and the frame has {air} of air at both sides together. {basis}",
		"measure/basis-assumed": "This is reckoned with the usual spread of planed sticks, since nobody has measured ten.",
		"measure/basis-card":    "This is reckoned with the sticks that were measured.",

		"moisture/stock":         "The sticks are at {stock}, and wood in the room rests near {middle} ({low} to {high}). Let them settle for {days} days in air like the room's, until two readings a week apart differ by less than half a point, or leave wider joints.",
		"moisture/growth":        "From {stock} to {high} of moisture the side of {side} wants to grow by {growth}, and its joints hold {slack}. Leave {each} a block.",
		"moisture/growth-beyond": "From {stock} to {high} of moisture the side of {side} wants to grow by {growth}, and its joints hold {slack}. No slack takes that up: settle the sticks in the room's air first, make the panels smaller, or take a wood that moves less.",
		"moisture/frame-gap":     "The field may outgrow its joints: it grows by up to {growth} and they hold {slack}. Leave {need} of air between field and frame on each side instead of {gap}.",
	}
}
