package design

// Longest lists of a job record.
const (
	maxCards     = 2 * maxWalls * maxGroups // those of now, and as many of before
	maxReadings  = 40                       // of one card
	maxMeter     = 60
	maxBins      = maxCards * maxHeights
	maxLaid      = maxWalls * maxGroups * maxPanels
	maxSpent     = 64
	maxSignOffs  = 200
	maxCounted   = maxJobCells
	maxMinutes   = 100_000
	maxRoadKm    = 100_000
	taskIDLength = 16
	longAnswer   = 400
	maxWeighedKg = 1000
	maxLifters   = 12
	maxPrinted   = 60
)

// Tools returns the names of what a home builder may have at hand.
func Tools() []string {
	return []string{
		"mitre saw", "mitre box", "stop block", "clamped carrier", "bench saw", "sander", "second sander", "extraction",
		"calliper", "moisture meter", "stud finder", "bathroom scale", "drill", "square", "straight-edges", "level",
	}
}

// recordRows is the table of the job record. Bounds are generous and of our own
// making.
func recordRows() []Field {
	rows := []Field{
		choiceRow("format", "Says that the file is a job record.", RecordFormat).required().fixed(),
		integerRow("version", RecordVersion, RecordVersion, "The version of the file's form.").required().fixed(),
		kindRow("days.start", KindDate, "First day on which the sticks are there; may be empty.").optional(),
		kindRow("days.needBy", KindDate, "Last day on which the panels may be ready; may be empty.").optional(),
		kindRow("days.hang", KindDate, "Day on which the panels are to be packed or hung; may be empty.").optional(),
		numberRow("days.hoursPerDay", 1, 12, 0.5, "h", "Hours of one person at the bench on a working day."),
		integerRow("days.daysPerWeek", 1, 7, "Working days in a week, from Monday on."),
		integerRow("days.people", 1, 4, "People at the bench."),
		integerRow("days.settle", 0, 60, "Days that the sticks lie in air like the room's before they are cut."),
		numberRow("days.glueSets", 4, 72, 1, "h", "Hours until a glued field may be stood up and trimmed."),
		choiceRow("lay.start", "Edge at which the first row is laid.", BottomEdge, TopEdge),
		textRow("lay.paper", codeLetters, "Revision on the row cards in hand; empty where they are on the screen."),
		integerRow("lay.at", 1, maxLaid*maxSide, "Card that is on the screen, in the order of work."),
	}
	rows = append(rows, kindRow("printed", KindCode, "Revisions that papers were printed of.").list(0, maxPrinted).fixed().sparse())
	rows = append(rows, agreementRows()...)
	rows = append(rows, measuredRows()...)
	rows = append(rows, countRows()...)
	rows = append(rows, laterRows()...)
	rows = append(rows, hangingRows()...)
	rows = append(rows, treatedRows()...)
	rows = append(rows, heldRows()...)
	return append(rows, clientRows()...)
}

// treatedRows are what was put on the panels against fire.
func treatedRows() []Field {
	return []Field{
		textRow("treated.product", shortText, "Product that the panels were treated with against fire, and its maker.").sparse(),
		textRow("treated.batch", shortText, "Its batch, or batches.").sparse(),
		numberRow("treated.coverage", 1, 5000, 10, "g/m²", "How much of it was put on, wet, all coats together.").zero("not-weighed").sparse(),
		textRow("treated.where", shortText, "On which faces.").sparse(),
		kindRow("treated.day", KindDate, "Day of the last coat; may be empty.").optional().sparse(),
		textRow("treated.by", shortText, "Who put it on.").sparse(),
	}
}

// heldRows are what the job is held against.
func heldRows() []Field {
	amount := func(path, doc string) Field { return amountRow(path, -maxBulk, maxBulk, doc).required().fixed() }
	percent := func(path, doc string) Field { return numberRow(path, 0, 100, 1, "%", doc).required().fixed() }
	return []Field{
		kindRow("held.revision", KindCode, "Revision that it was reckoned for.").required().fixed(),
		kindRow("held.book", KindCode, "Price book that it was reckoned with.").required().fixed(),
		kindRow("held.currency", KindCurrency, "Currency of all amounts.").required().fixed(),
		amount("held.net", "Price without tax."),
		amount("held.beside", "What of it is sold as it stands."),
		amount("held.cost", "Goods, hours, overhead and road."),
		amount("held.reserve", "Mark-up on goods and contingency."),
		percent("held.asked", "Margin that the price book asks for."),
		percent("held.floor", "Least margin that it allows."),
		numberRow("held.km", 0, maxRoadKm, 1, "km", "Way there and back.").required().fixed(),
		amount("held.perKm", "Price of a kilometre."),
		partsRow("held.tasks", 0, 2*maxTasks, "Tasks as reckoned.").required().fixed(),
		textRow("held.tasks[].task", taskIDLength, "Short name of the task.").filled().required().fixed(),
		numberRow("held.tasks[].minutes", 0, maxMinutes, 1, "min", "What was reckoned for it.").required().fixed(),
		amount("held.tasks[].perHour", "What an hour of it costs."),
		partsRow("held.lines", 0, maxSpent, "Lines of the bill as reckoned.").required().fixed(),
		textRow("held.lines[].line", shortText, "Which line.").filled().required().fixed(),
		amount("held.lines[].amount", "What was reckoned for it."),
	}
}

// clientRows are who the job is for, and the letters to and fro.
func clientRows() []Field {
	return []Field{
		textRow("client.name", shortText, "Name of the client.").sparse(),
		textRow("client.reach", shortText, "Mail address or telephone number of the client.").sparse(),
		textRow("client.message", longText, "What the client writes.").lines().sparse(),
		kindRow("client.wrote", KindDate, "On which day; may be empty.").optional().sparse().fixed(),
		textRow("client.asked", maxCopyChars, "Client copy that came with it, in the letters of a link.").sparse().fixed(),
		textRow("client.answer", longText, "What the workshop answers.").lines().sparse(),
		kindRow("client.answered", KindDate, "Day on which the answer came; may be empty.").optional().sparse().fixed(),
		textRow("client.returned", maxCopyChars, "Client copy that came with the answer, in the letters of a link.").sparse().fixed(),
	}
}

func measuredRows() []Field {
	return []Field{
		partsRow("cards", 0, maxCards, "Sticks as measured, one card for each wood and section."),
		choiceRow("cards[].wood", "Which wood.", Woods()...),
		lengthRow("cards[].size", 18, 100, 1, "Side of a block in the design when they were measured."),
		lengthRow("cards[].widths", 10, 120, 0, "Widths of the sticks by the calliper, one after another.").list(0, maxReadings),
		lengthRow("cards[].thicknesses", 10, 120, 0, "Their thicknesses, in the same order.").list(0, maxReadings),
		partsRow("meter", 0, maxMeter, "What the moisture meter said."),
		kindRow("meter[].day", KindDate, "On which day.").optional(),
		numberRow("meter[].percent", 4, 30, 0.1, "%", "Moisture of the sticks."),
	}
}

func countRows() []Field {
	return []Field{
		partsRow("bins", 0, maxBins, "Blocks that were cut and thrown out, one bin for each wood, section and height."),
		choiceRow("bins[].wood", "Which wood.", Woods()...),
		lengthRow("bins[].size", 18, 100, 1, "Side of the blocks."),
		lengthRow("bins[].height", 0, 250, 1, "Their height."),
		integerRow("bins[].cut", 0, maxCounted, "How many were cut."),
		integerRow("bins[].rejects", 0, maxCounted, "How many of them were thrown out."),
		kindRow("bins[].revision", KindCode, "Revision for which they were counted last."),
		partsRow("rows", 0, maxLaid, "Rows that are laid, for each panel."),
		integerRow("rows[].wall", 1, maxWalls, "Which wall."),
		integerRow("rows[].group", 1, maxGroups, "Which of its groups."),
		integerRow("rows[].panel", 1, maxPanels, "Which of its panels."),
		integerRow("rows[].laid", 1, maxSide, "Rows that are laid, counted from the top.").list(0, maxSide),
		kindRow("rows[].revision", KindCode, "Revision from whose cards they were laid."),
		kindRow("rows[].field", KindCode, "Code of the panel's own cards."),
	}
}

func laterRows() []Field {
	return []Field{
		partsRow("times", 0, 2*maxTasks, "How long the tasks really took."),
		textRow("times[].task", taskIDLength, "Short name of the task.").filled(),
		numberRow("times[].reckonedMinutes", 0, maxMinutes, 1, "min", "What was reckoned for it."),
		numberRow("times[].minutes", 0, maxMinutes, 1, "min", "What it took.").zero("not-timed"),
		yesNoRow("times[].aside", "Whether nothing is learned from it.").sparse(),
		yesNoRow("times[].sure", "Whether it holds, however far it is off.").sparse(),
		numberRow("times[].taught", 0, maxMinutes, 1, "min", "Minutes that a price book has learned from.").sparse().fixed(),
		numberRow("times[].before", 0, 2, 0, "", "Factor of the task before that.").sparse().fixed(),
		partsRow("spent", 0, maxSpent, "What the lines of the bill really cost."),
		textRow("spent[].line", shortText, "Which line.").filled(),
		amountRow("spent[].reckoned", 0, 100_000_000, "What was reckoned for it."),
		amountRow("spent[].amount", 0, 100_000_000, "What it cost.").zero("not-noted"),
		yesNoRow("spent[].aside", "Whether nothing is learned from it.").sparse(),
		yesNoRow("spent[].sure", "Whether it holds, however far it is off.").sparse(),
		amountRow("spent[].taught", 0, 100_000_000, "What a price book has learned from.").sparse().fixed(),
		numberRow("road.minutes", 0, maxMinutes, 1, "min", "What the way there and back took, all trips and all people together.").zero("not-timed").sparse(),
		numberRow("road.km", 0, maxRoadKm, 1, "km", "How far that was.").zero("not-noted").sparse(),
		partsRow("signOffs", 0, maxSignOffs, "Stops that were signed off."),
		textRow("signOffs[].check", shortText, "Which check.").filled(),
		textRow("signOffs[].field", shortText, "Field that it stood at; may be empty."),
		textRow("signOffs[].name", shortText, "Who signs."),
		textRow("signOffs[].reason", shortText, "Why."),
		kindRow("signOffs[].day", KindDate, "On which day.").optional(),
		kindRow("signOffs[].revision", KindCode, "Revision for which it holds."),
		yesNoRow("learn.aside", "Whether nothing is learned from this job, because it was an odd one."),
		textRow("learn.why", shortText, "What was odd about it."),
		textRow("learn.from", codeLetters, "Code of the price book that was in force before.").sparse().fixed(),
		textRow("learn.into", codeLetters, "Code of the price book that learned from it; empty: none has."),
		choiceRow("tools", "Tools at hand.", Tools()...).list(0, len(Tools())),
	}
}

// hangingRows are what was asked about the building, what the scales said, and the day
// of hanging.
func hangingRows() []Field {
	return []Field{
		textRow("asked.fire", longAnswer, "Which fire class the surface must have, and which proof is wanted: who said so, and when."),
		textRow("asked.walkway", longAnswer, "How far it may stand out where people walk: who said so, and when."),
		textRow("asked.devices", longAnswer, "Who allows a place that crowds a safety device or a way out, and when."),
		textRow("asked.devicesFor", codeLetters, "Revision for which that was allowed; empty: for none."),
		textRow("asked.reach", longAnswer, "Whether it may hang within reach: who said so, and when."),
		textRow("asked.protected", longAnswer, "Whether the wall is protected, and what may touch it: who said so, and when."),
		textRow("asked.drill", longAnswer, "Who may drill, and where the plans of pipes and cables are: who said so, and when."),
		textRow("asked.other", longText, "What else was asked about the building, who said what, and when.").lines(),
		textRow("asked.professional", shortText, "Professional who looked at what holds the panels, by name.").sparse(),
		textRow("asked.licence", shortText, "Their licence, or their firm.").sparse(),
		kindRow("asked.lookedOn", KindDate, "Day on which they looked; may be empty.").optional().sparse(),
		textRow("asked.lookedAt", longAnswer, "What they looked at.").sparse(),
		textRow("asked.lookedFor", codeLetters, "Revision of the design that they were shown.").fixed().sparse(),
		partsRow("weighed", 0, maxWalls*maxGroups, "What the scales said of the heaviest panel of each group."),
		integerRow("weighed[].wall", 1, maxWalls, "Which wall."),
		integerRow("weighed[].group", 1, maxGroups, "Which of its groups."),
		numberRow("weighed[].kg", 0, maxWeighedKg, 1, "kg", "What they said.").zero("not-weighed"),
		numberRow("weighed[].reckonedKg", 0, maxWeighedKg, 0, "kg", "What was reckoned when that was typed.").zero("not-known"),
		textRow("hung.people", shortText, "Who lift, by name.").filled().list(0, maxLifters),
		numberRow("hung.proofKg", 0, 2*maxWeighedKg, 5, "kg", "Weights that the strip was tried with.").zero("not-tried"),
		textRow("hung.by", shortText, "Who answers for the hanging."),
		kindRow("hung.day", KindDate, "Day on which it was hung; may be empty.").optional(),
		textRow("hung.found", longText, "What was found at the trial and afterwards.").lines(),
	}
}
