package design

import (
	"blockfield/engine/length"
	"blockfield/engine/words"
)

// Limits that more than one row or rule needs.
const (
	maxWalls     = 8
	maxGroups    = 8
	maxObstacles = 64
	maxStuds     = 64
	maxLooks     = 3
	maxPanels    = 12 // of one group
	maxTaxParts  = 17 // rates of tax in a price: the usual one, and one for each line
	maxStages    = 6  // of the payments
	maxOfferedKg = 1e6
	maxSide      = 400
	maxHeights   = 9
	maxGang      = 6 // sticks that a clamped carrier holds; common practice
	firstOrder   = 5
	lastOrder    = 1201
	maxCells     = 40_000               // of one panel
	maxJobCells  = maxPanels * maxCells // of all panels of a design
	maxWallMM    = 20_000               // no wall in a room that people talk in is larger; a generous bound of ours
	maxSeed      = 1<<53 - 1            // the largest whole number that every JSON reader keeps exactly

	shortText = 120
	longText  = 4000
)

// Woods returns the names of the shop woods.
func Woods() []string {
	return []string{"pine", "spruce", "cedar", "poplar", "beech", "ash", "maple", "oak", "cherry", "walnut"}
}

// Sheets returns the names of the boards that carry the blocks.
func Sheets() []string { return []string{"birch ply", "softwood ply"} }

// Finishes returns the names of what seals the wood.
func Finishes() []string {
	return []string{"waterborne varnish", "hard-wax oil", "drying oil", "shellac", "fire-retardant varnish", Unfinished}
}

// Unfinished is the finish of bare wood.
const Unfinished = "none"

// Clear is a finish without colour.
const Clear = "clear"

// Colours returns the names of what a finish can have in it: stains let the grain
// show, paints cover it.
func Colours() []string {
	return []string{Clear, "white stain", "grey stain", "brown stain", "black stain",
		"white paint", "grey paint", "green paint", "blue paint", "red paint", "black paint"}
}

// WallPaints returns the names of the colours that a wall can be shown in.
func WallPaints() []string {
	return []string{"warm white", "white", "sand", "grey", "sage", "clay", "blue", "dark grey"}
}

// How a wall is out of flat.
const (
	Hollow = "hollow"
	Belly  = "belly"
)

// The pattern kinds.
const (
	QuadraticResidue        = "quadratic residue"
	QuadraticResidueStripes = "quadratic residue stripes"
	PrimitiveRoot           = "primitive root"
	Shuffled                = "shuffled"
	Drawn                   = "drawn"
)

// designRows is the table of the design document. Ranges are what a file or a
// form takes, not what is wise: that is for the watch-outs. Those without a
// remark are common practice of the trade or a generous bound of ours.
func designRows() []Field {
	rows := []Field{
		choiceRow("format", "Says that the file is a design.", Format).required().fixed(),
		integerRow("version", Version, Version, "The version of the file's form.").required().fixed(),
	}
	rows = append(rows, roomRows()...)
	rows = append(rows, surfaceRows()...)
	rows = append(rows, wallRows()...)
	rows = append(rows, groupRows()...)
	rows = append(rows, benchRows()...)
	rows = append(rows, jobRows()...)
	rows = append(rows, viewRows()...)
	return append(rows, offerRows()...)
}

func roomRows() []Field {
	const at = "design.room."
	return []Field{
		textRow("design.title", shortText, "What the job is called.").filled(),
		textRow("design.note", longText, "Anything that the next reader should know.").lines(),
		lengthRow(at+"length", 1500, 40_000, 100, "Length of the room.").assumed(),
		lengthRow(at+"width", 1500, 40_000, 100, "Width of the room.").assumed(),
		lengthRow(at+"height", 2000, 15_000, 50, "Height of the room.").assumed(),
		textRow(at+"use", shortText, "What the room is used for.").
			among("speech", "listening", "mixing", "practice", "rehearsal", "worship", "teaching"),
		yesNoRow(at+"public", "Whether the public comes in, which opens fire and access questions.").assumed(),
		textRow(at+"fireAnswer", shortText, "What whoever answers for fire safety said; now in the record of the job.").retired(),
		textRow(at+"answers", longText, "What else was asked about the building; now in the record of the job.").lines().retired(),
		textRow(at+"goals", shortText, "What the client hopes for.").filled().list(0, 12).
			among("echo off one wall", "harsh", "dull", "boomy", "neighbours", "look"),
		numberRow(at+"temperatureLow", -5, 40, 1, "°C", "Coldest air of the year in the room.").assumed(),
		numberRow(at+"temperatureHigh", -5, 40, 1, "°C", "Warmest air of the year in the room.").assumed(),
		numberRow(at+"humidityLow", 10, 95, 1, "%", "Lowest relative humidity of the year in the room.").assumed(),
		numberRow(at+"humidityHigh", 10, 95, 1, "%", "Highest relative humidity of the year in the room.").assumed(),
		yesNoRow(at+"seismic", "Whether the rules of the place count earthquakes.").sparse(),
	}
}

func wallRows() []Field {
	const at = "design.walls[]."
	return []Field{
		partsRow("design.walls", 1, maxWalls, "The walls that carry panels."),
		textRow(at+"name", shortText, "What the wall is called."),
		choiceRow(at+"kind", "What the wall is made of, which decides the fixings.",
			"board on timber studs", "board on steel studs", "brick", "block", "concrete", "stone with lime",
			"unknown", "no fixing allowed").assumed(),
		textRow(at+"note", longText, "The wall in the surveyor's own words.").lines(),
		lengthRow(at+"width", 600, maxWallMM, 50, "Width of the wall.").assumed(),
		lengthRow(at+"height", 600, maxWallMM, 50, "Height of the wall.").assumed(),
		lengthRow(at+"studFirst", 0, 1200, 10, "Middle of the first stud, from the left corner.").assumed(),
		lengthRow(at+"studStep", 300, 800, 10, "From the middle of one stud to the next.").zero("no-studs").assumed(),
		lengthRow(at+"studs", 0, maxWallMM, 10, "Middles of the studs that were found, from the left corner; they count instead of first and step.").
			list(0, maxStuds),
		lengthRow(at+"board", 6, 60, 0.5, "Thickness of the board over the studs, all layers.").zero("not-said"),
		yesNoRow(at+"rail", "Whether a rail across the studs carries every cleat."),
		lengthRow(at+"bow", 0.5, 60, 1, "How far the wall is out of flat where the strip goes, under a straightedge of 2 m.").zero("flat").sparse(),
		choiceRow(at+"bowShape", "Whether it is hollow there or has a belly.", Hollow, Belly).usually(Hollow),
		lengthRow(at+"listenerDistance", 300, 15_000, 50, "From the nearest ear to the block tops.").assumed(),
		lengthRow(at+"earHeight", 300, 3000, 50, "Height of the ears above the floor.").assumed(),
		yesNoRow(at+"walkway", "Whether people walk along the wall."),
		yesNoRow(at+"outside", "Whether it is an outside wall without insulation.").sparse(),
		yesNoRow(at+"sun", "Whether the sun stands on it for most of a day.").sparse(),
		choiceRow(at+"fixing.kind", "What goes into the wall.",
			"automatic", "wood screw", "plug and screw", "anchor", "none"),
		lengthRow(at+"fixing.diameter", 4, 12, 0.5, "Diameter of a wood screw that goes into the wall.").zero("not-said"),
		numberRow(at+"fixing.ratedShear", 0, 100, 0.05, "kN",
			"Shear that the fixing's maker allows for one fixing in this very base; 0 where it is not given."),
		numberRow(at+"fixing.ratedPull", 0, 100, 0.05, "kN",
			"Pull that the fixing's maker allows for one fixing in this very base; 0 where it is not given."),
		numberRow(at+"fixing.loadFactor", 2, 10, 0.5, "",
			"The load times this factor must stay within what the fixings hold; below 4 only with a reason."),
		textRow(at+"fixing.reason", shortText, "Why nobody can be below the panels, where the load factor is less than 4."),
		textRow(at+"fixing.what", shortText, "Which fixing in which base the rated values are for."),
		textRow(at+"fixing.source", shortText, "Where the rated values were read, with name and date."),
		partsRow(at+"obstacles", 0, maxObstacles, "What is on the wall and matters for hanging.").assumed(),
		choiceRow(at+"obstacles[].kind", "What kind of thing it is.",
			"socket", "switch", "grille", "duct", "beam", "radiator", "detector", "call point", "exit sign", "sprinkler",
			"door swing", "window", "furniture", "other"),
		textRow(at+"obstacles[].note", shortText, "The thing in the surveyor's own words."),
		lengthRow(at+"obstacles[].x", 0, maxWallMM, 10, "Its left edge, from the left corner of the wall."),
		lengthRow(at+"obstacles[].y", 0, maxWallMM, 10, "Its lower edge, from the floor."),
		lengthRow(at+"obstacles[].width", 1, maxWallMM, 10, "Its width."),
		lengthRow(at+"obstacles[].height", 1, maxWallMM, 10, "Its height.").zero("ceiling"),
	}
}

func groupRows() []Field {
	const at = "design.walls[].groups[]."
	rows := []Field{
		partsRow("design.walls[].groups", 1, maxGroups, "Groups of panels that are alike but for turn and counter-panel."),
		textRow(at+"name", shortText, "What the group is called."),
		integerRow(at+"panelsWide", 1, maxPanels, "Panels side by side."),
		integerRow(at+"panelsHigh", 1, maxPanels, "Panels above one another."),
		textRow(at+"order", maxPanels,
			"One letter a panel: A as designed, B the counter-panel, R turned by 180°; empty where all are A."),
		lengthRow(at+"width", 300, 6000, 10, "Wished width of the field, over all panels and without the gaps."),
		lengthRow(at+"height", 300, 6000, 10, "Wished height of the field, over all panels and without the gaps."),
		integerRow(at+"columns", 0, maxSide, "Columns of one panel; 0 for whole blocks nearest to the wish."),
		integerRow(at+"rows", 0, maxSide, "Rows of one panel; 0 for whole blocks nearest to the wish."),
		lengthRow(at+"panelGap", 0, 3000, 1, "Air between neighbouring panels."),
		lengthRow(at+"place.left", 0, maxWallMM, 10, "Left outer edge, from the left corner of the wall."),
		choiceRow(at+"place.edge", "Which outer edge the height gives.", "bottom", "top"),
		lengthRow(at+"place.height", 0, maxWallMM, 10, "Height of that edge above the floor."),
		lengthRow(at+"block.size", 18, 100, 1, "Side of a block, as measured."),
		lengthRow(at+"block.slack", 0, 1.5, 0.05, "Room that each block leaves to its neighbour."),
		textRow(at+"block.section", shortText, "The stick's section in the words of the yard."),
		yesNoRow(at+"block.measured", "Whether ten sticks have been measured.").assumed(),
		lengthRow(at+"heights", 0, 250, 1, "How far blocks stand off the backer, rising; 0 is bare backer.").list(2, maxHeights),
	}
	rows = append(rows, patternRows(at+"pattern.")...)
	return append(rows,
		choiceRow(at+"wood", "Wood of the blocks.", Woods()...),
		numberRow(at+"density", 100, 1300, 5, "kg/m³", "Density of the wood as weighed.").zero("tables"),
		choiceRow(at+"secondWood", "Wood of some of the blocks.", append([]string{NoSecondWood}, Woods()...)...).usually(NoSecondWood),
		choiceRow(at+"mixed", "Which blocks are of the second wood.",
			MixedTaller, MixedEveryOther, MixedAtRandom).usually(MixedTaller),
		numberRow(at+"secondShare", 5, 95, 5, "%", "Share of blocks of the second wood where they stand at random.").zero("half").sparse(),
		choiceRow(at+"backer.sheet", "The board that carries the blocks.", Sheets()...),
		lengthRow(at+"backer.thickness", 9, 25, 1, "Its thickness."),
		choiceRow(at+"frame.joint", "How the frame's corners meet.", "mitred", "butt", "none"),
		choiceRow(at+"frame.wood", "Wood of the frame.", Woods()...),
		lengthRow(at+"frame.thickness", 6, 60, 1, "Thickness of the frame, seen from the front."),
		lengthRow(at+"frame.board", 20, 400, 5, "Width of the board that is bought for the frame."),
		lengthRow(at+"frame.gap", 0, 30, 0.5, "Air between field and frame on each side."),
		lengthRow(at+"frame.reveal", -20, 40, 1, "How far the frame is wanted to stand proud of the tallest block."),
		choiceRow(at+"finish.kind", "What seals the wood.", Finishes()...),
		integerRow(at+"finish.coats", 0, 5, "Coats on the field."),
		integerRow(at+"finish.frameCoats", 0, 5, "Coats on the frame."),
		choiceRow(at+"finish.colour", "What is in the finish of the field. It is taken to cost and to spread as without.", Colours()...),
		choiceRow(at+"finish.frameColour", "The same of the frame.", Colours()...),
		choiceRow(at+"finish.when", "When the field is finished.", FinishAfter, FinishMasked, FinishBefore),
		lengthRow(at+"cleat.thickness", 9, 45, 1, "Thickness of the bevelled cleat."),
		numberRow(at+"cleat.bevel", 30, 60, 5, "°", "Bevel of the cleat from the horizontal."),
		choiceRow(at+"cleat.lock", "What keeps the panel from being lifted off.", "screw", "clip", "none"),
		lengthRow(at+"stand.baseDepth", 100, 2000, 10, "Depth of the floor stand's foot.").zero("no-stand"),
		lengthRow(at+"stand.toeAhead", 0, 1500, 10, "From the centre of mass forward to the stand's toe."),
		lengthRow(at+"stand.centreHeight", 0, 4000, 10, "Height of the centre of mass on the stand."),
		numberRow(at+"weighed", 0, 1000, 1, "kg", "Mass of the heaviest finished panel as weighed; now in the record of the job.").zero("not-weighed").retired(),
	)
}

func patternRows(at string) []Field {
	return []Field{
		choiceRow(at+"kind", "How the heights are laid over the field.",
			QuadraticResidue, QuadraticResidueStripes, PrimitiveRoot, Shuffled, Drawn),
		integerRow(at+"order", firstOrder, lastOrder, "Length of the sequence, a prime number."),
		integerRow(at+"foldRows", 0, 1200, "Rows that a primitive-root sequence is folded to; 0 for the best fold."),
		integerRow(at+"foldColumns", 0, 1200, "Columns that a primitive-root sequence is folded to; 0 for the best fold."),
		integerRow(at+"seed", 0, maxSeed, "Same number, same shuffle, for ever."),
		integerRow(at+"clump", 1, 4, "Blocks along each side of a patch of like height."),
		integerRow(at+"shiftRows", -1200, 1200, "Rows that the pattern is moved down."),
		integerRow(at+"shiftColumns", -1200, 1200, "Columns that the pattern is moved to the right."),
		integerRow(at+"turn", 0, 270, "Degrees that the pattern is turned clockwise.").among("0", "90", "180", "270"),
		yesNoRow(at+"mirror", "Whether left and right of the pattern are swapped."),
		yesNoRow(at+"counter", "Whether high and low are swapped."),
		textRow(at+"drawn", maxSide, "A drawn field, one string of level digits a row.").filled().list(0, maxSide).sparse(),
	}
}

func benchRows() []Field {
	const at = "design.bench."
	return append(stockRows(at), []Field{
		lengthRow(at+"stickLength", 900, 6000, 100, "Length of the sticks that are bought."),
		lengthRow(at+"kerf", 1, 5, 0.1, "Width of a saw cut."),
		lengthRow(at+"endTrim", 0, 100, 5, "What is cut off a stick, both ends together."),
		lengthRow(at+"holdTail", 40, 300, 10, "Last piece of a stick, too short to hold."),
		yesNoRow(at+"carrier", "Whether a clamped carrier holds short pieces at the saw."),
		numberRow(at+"defects", 0, 40, 1, "%", "Share of the sticks lost to knots, splits and bow."),
		numberRow(at+"spares", 0, 15, 1, "%", "Blocks cut beyond the need."),
		integerRow(at+"sparesLeast", 0, 20, "Spare blocks of each height at least."),
		numberRow(at+"stockMoisture", 4, 30, 0.5, "%", "Moisture of the sticks by the meter.").assumed(),
		numberRow(at+"glueOpenMinutes", 3, 20, 1, "min", "How long the glue stays open."),
		numberRow(at+"temperature", -5, 40, 1, "°C", "Temperature of the shop.").assumed(),
		integerRow(at+"gang", 1, maxGang, "Sticks that are clamped together and cut at once."),
		yesNoRow(at+"woodTimes", "Whether hard woods and large blocks take longer, and small blocks less long."),
		yesNoRow(at+"fatigue", "Whether hands tire: the same work goes on more slowly after three hours."),
	}...)
}

func jobRows() []Field {
	const work, way, money = "design.work.", "design.wayIn.", "design.money."
	return []Field{
		yesNoRow(work+"ownBuild", "Whether a home builder makes it: no workshop, no selling price."),
		integerRow(work+"crew", 1, 6, "People who carry and hang."),
		choiceRow(work+"lifting.method", "How a panel is lifted that is too heavy for hands.",
			ByHand, "panel lifter", "hoist", "scaffold"),
		textRow(work+"lifting.lead", shortText, "Who leads the lift and answers for its method, by name or role."),
		yesNoRow(work+"survey", "Whether the workshop surveys the site."),
		choiceRow(work+"supply", "What the workshop makes: panels, a kit of cut and sanded blocks, or the plan alone.",
			SupplyPanels, SupplyKit, SupplyPlan).usually(SupplyPanels),
		yesNoRow(work+"delivered", "Whether the workshop delivers."),
		yesNoRow(work+"hung", "Whether the workshop hangs the panels."),
		numberRow(work+"distanceKm", 0, 2000, 1, "km", "Way from the workshop to the site.").assumed(),
		numberRow(work+"extraShopMinutes", 0, 10_000, 10, "min", "Shop time that the task table does not know."),
		numberRow(work+"extraSiteMinutes", 0, 10_000, 10, "min", "Site time that the task table does not know."),
		numberRow(work+"speedFactor", 0.5, 2, 0.05, "", "Factor on shop minutes; 1 is as the price book has them."),
		lengthRow(way+"doorWidth", 400, 5000, 10, "Narrowest door on the way in.").assumed(),
		lengthRow(way+"doorHeight", 1200, 6000, 10, "Lowest door on the way in.").assumed(),
		lengthRow(way+"corridor", 400, 10_000, 10, "Narrowest corridor on the way in.").assumed(),
		textRow(way+"stairs", shortText, "The stairs in plain words; empty where there are none.").assumed(),
		lengthRow(way+"stairWidth", 400, 5000, 10, "Narrowest flight, between wall and handrail.").zero("not-measured"),
		lengthRow(way+"landing", 400, 10_000, 10, "Depth of the smallest landing on which the stairs turn.").zero("not-measured"),
		textRow(way+"lift", shortText, "The lift in plain words; empty where there is none.").assumed(),
		lengthRow(way+"liftDoor", 400, 5000, 10, "Clear width of the lift's door.").zero("not-measured"),
		lengthRow(way+"liftWidth", 400, 10_000, 10, "Width of the lift's car.").zero("not-measured"),
		lengthRow(way+"liftDepth", 400, 10_000, 10, "Depth of the lift's car.").zero("not-measured"),
		lengthRow(way+"liftHeight", 1200, 6000, 10, "Height of the lift's door or car, whichever is lower.").zero("not-measured"),
		lengthRow(way+"vehicle", 500, 15_000, 50, "Length of the vehicle's loading floor.").zero("not-measured"),
		amountRow(money+"budget", 0, maxBulk, "What the client wants to spend, tax included; 0 where it was not said."),
		numberRow(money+"discount", 0, 25, 1, "%", "Taken off the price before tax."),
		textRow(money+"discountReason", shortText, "Why there is a discount, and who gives it.").sparse(),
		numberRow(money+"tax", 0, 40, 1, "%", "Tax on the net price."),
		yesNoRow(money+"reverseCharge", "Whether the client owes the tax, so that none is asked for.").sparse(),
		// They are inputs of the design like any other, and enter its file and its link:
		// the range of a client holds them by factors that everybody knows, and so could
		// not keep them secret.
		partsRow(money+"extras", 0, 16, "Lines that the tables do not know; whoever has the design can read them."),
		textRow(money+"extras[].name", shortText, "What it is."),
		amountRow(money+"extras[].amount", 0, maxBulk, "What it costs, or what it is sold for."),
		choiceRow(money+"extras[].role", "Whether the amount is a cost, bought in or of work, or a net price that stands as it is.",
			ExtraBought, ExtraWork, ExtraSold).usually(ExtraBought),
		yesNoRow(money+"extras[].ownTax", "Whether a line that is sold has a tax rate of its own.").sparse(),
		numberRow(money+"extras[].tax", 0, 40, 1, "%", "That rate.").sparse(),
	}
}

func viewRows() []Field {
	const at, offer = "view.", "offer."
	return []Field{
		textRow("assumed", shortText, "Paths below the design that nobody has typed or measured.").
			filled().list(0, 4000).fixed().sparse(),
		partsRow("looks", 0, maxLooks, "Designs that were kept for comparison.").fixed().sparse(),
		textRow("looks[].name", shortText, "What the look is called."),
		choiceRow(at+"units", "How lengths are shown.",
			string(length.Metric), string(length.Inch16), string(length.Inch32)),
		choiceRow(at+"language", "Language of the page and the papers.", words.Tags()...),
		choiceRow(at+"reading", "Who reads.", "client", "maker", "builder"),
		numberRow(at+"lamp.azimuth", 0, 360, 5, "°", "Where the lamp stands, clockwise from above."),
		numberRow(at+"lamp.elevation", 5, 90, 5, "°", "Its angle above the plane of the wall."),
		numberRow(at+"lamp.warmth", 1800, 8000, 100, "K", "Its colour temperature."),
		numberRow(at+"lamp.spread", 0, 20, 0.5, "°", "Radius under which the panel sees it.").zero("picture-lamp"),
		numberRow(at+"camera.yaw", -80, 80, 5, "°", "How far the viewer has walked to the right."),
		numberRow(at+"camera.pitch", -60, 60, 5, "°", "How far the viewer has gone up."),
		numberRow(at+"camera.zoom", 0.3, 24, 0.1, "", "1 has everything in sight."),
		lengthRow(at+"camera.distance", 300, 60_000, 100, "From the middle of the panels to the viewer.").zero("as-fits"),
		choiceRow(at+"wallPaint", "The colour in which the wall is shown.", WallPaints()...),
		yesNoRow(at+"figure", "Whether a person and a sofa stand by, for scale."),
		kindRow(offer+"revision", KindCode, "Revision of the design that was offered.").required().fixed(),
		kindRow(offer+"bookCode", KindCode, "Code of the price book that it was reckoned with.").required().fixed(),
		amountRow(offer+"net", 0, maxBulk, "Price without tax.").required().fixed(),
		amountRow(offer+"tax", 0, maxBulk, "Tax.").required().fixed(),
		amountRow(offer+"gross", 0, maxBulk, "Price with tax.").required().fixed(),
		kindRow(offer+"currency", KindCurrency, "Currency of the three amounts.").required().fixed(),
		kindRow(offer+"validUntil", KindDate, "Last day on which the offer holds.").required().fixed(),
		kindRow(offer+"readyFrom", KindDate, "First day on which it may be ready; may be empty.").optional().sparse().fixed(),
		kindRow(offer+"readyBy", KindDate, "Last day by which it is ready, if it is ordered when it is offered; may be empty.").optional().sparse().fixed(),
		kindRow(offer+"laterFrom", KindDate, "First day on which it may be ready if it is ordered on the last day; may be empty.").optional().sparse().fixed(),
		kindRow(offer+"laterBy", KindDate, "Last day by which it is ready if it is ordered on the last day; may be empty.").optional().sparse().fixed(),
		kindRow(offer+"wished", KindDate, "Last day on which the client would like to have it; may be empty.").optional().sparse().fixed(),
		kindRow(offer+"made", KindDate, "Day on which it was offered; may be empty.").optional().sparse().fixed(),
		kindRow(offer+"agreed", KindDate, "Day on which it was ordered, or the last change of it accepted; empty: it is offered only.").optional().sparse().fixed(),
	}
}

// offerRows are what else is signed with an offer, so that whoever gets it as a file or a
// link has the same paper as whoever made it.
func offerRows() []Field {
	const offer, other = "offer.", "offer.others[]."
	return []Field{
		textRow(offer+"workshop", shortText, "Name of the workshop that offers.").sparse().fixed(),
		textRow(offer+"address", longText, "Its address and how to reach it, a line each.").lines().sparse().fixed(),
		textRow(offer+"taxNumber", shortText, "Its tax number.").sparse().fixed(),
		textRow(offer+"reverseCharge", longText, "What is said where the client owes the tax.").sparse().fixed(),
		textRow(offer+"terms", longText, "Terms of the offer.").lines().sparse().fixed(),
		partsRow(offer+"taxes", 0, maxTaxParts, "Tax in the price, by rate.").sparse().fixed(),
		numberRow(offer+"taxes[].percent", 0, 40, 1, "%", "The rate.").required().fixed(),
		amountRow(offer+"taxes[].base", -maxBulk, maxBulk, "What it is taken on, without tax.").required().fixed(),
		amountRow(offer+"taxes[].tax", -maxBulk, maxBulk, "What it comes to.").required().fixed(),
		partsRow(offer+"stages", 0, maxStages, "Parts of the gross price and when they fall due.").sparse().fixed(),
		textRow(offer+"stages[].name", shortText, "When it falls due.").filled().required().fixed(),
		amountRow(offer+"stages[].amount", 0, maxBulk, "What is to be paid then, with tax.").required().fixed(),
		textRow(offer+"look", shortText, "What the offered look is called.").sparse().fixed(),
		partsRow(offer+"others", 0, maxLooks, "Other looks in the offer.").sparse().fixed(),
		textRow(other+"name", shortText, "What the look is called.").fixed(),
		kindRow(other+"revision", KindCode, "Its revision.").required().fixed(),
		amountRow(other+"gross", 0, maxBulk, "What it costs with tax.").required().fixed(),
		choiceRow(other+"wood", "Its wood.", Woods()...).required().fixed(),
		choiceRow(other+"secondWood", "Its second wood.", append([]string{NoSecondWood}, Woods()...)...).usually(NoSecondWood).fixed(),
		lengthRow(other+"width", 0, maxWallMM*2, 1, "How wide it is, all panels of the first group.").required().fixed(),
		lengthRow(other+"height", 0, maxWallMM*2, 1, "How high.").required().fixed(),
		numberRow(other+"kg", 0, maxOfferedKg, 0.1, "kg", "Mass of all panels.").required().fixed(),
	}
}
