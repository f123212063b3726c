package design

// Longest lists of a price book.
const (
	maxPrices = 60
	maxTasks  = 120
	maxTaxes  = 8
	// maxFigures is more than a book has that is full.
	maxFigures = 1000
)

// Most that an amount of a book may be, in currency units. They hold whatever the
// currency: an hour or a sheet is a few tens of the largest units and some tens of
// millions of the smallest, a job some thousands or some thousands of millions.
// Rough exchange rates of the 2020s from memory; a hundred times as much is
// allowed, and no more so that a slip of the keyboard is seen. What a price can
// hold is checked where it is reckoned.
const (
	maxEach = 1_000_000_000     // an hour, a kilometre, a litre, a sheet, a screw
	maxBulk = 1_000_000_000_000 // a cubic metre, a job
)

// bookRows is the table of the price book. A book is complete: a missing price
// is refused, never filled in from the placeholder. Bounds are generous and of
// our own making.
func bookRows() []Field {
	rows := []Field{
		choiceRow("format", "Says that the file is a price book.", BookFormat),
		integerRow("version", BookVersion, BookVersion, "The version of the file's form."),
		textRow("name", shortText, "What the book is called.").filled(),
		yesNoRow("placeholder", "Whether the figures are invented examples."),
		kindRow("currency", KindCurrency, "Currency of all amounts."),
		kindRow("validFrom", KindDate, "First day on which the book holds; may be empty.").optional(),
		kindRow("validUntil", KindDate, "Last day on which the book holds; may be empty.").optional(),
		amountRow("rates.shop", 0, maxEach, "An hour in the shop."),
		amountRow("rates.office", 0, maxEach, "An hour in the office."),
		amountRow("rates.site", 0, maxEach, "An hour on site or on the road."),
		amountRow("rates.overhead", 0, maxEach, "Overhead on each shop hour."),
		numberRow("policy.materialMarkup", 0, 100, 1, "%", "Added to what is bought in."),
		numberRow("policy.contingency", 0, 100, 1, "%", "Added to the direct cost."),
		numberRow("policy.margin", 0, 90, 1, "%", "Share of the price that is wanted to be left."),
		numberRow("policy.marginFloor", 0, 90, 1, "%", "Share of the price that must be left."),
		amountRow("policy.minimumCharge", 0, maxBulk, "Lowest net price of a job."),
		amountRow("policy.roundTo", 0.01, maxEach, "Step that the net price is rounded up to."),
		integerRow("policy.validDays", 7, 120, "Days for which an offer holds."),
		amountRow("travel.perKm", 0, maxEach, "A kilometre on the road."),
		numberRow("travel.speedKmh", 10, 130, 5, "km/h", "Mean speed on the road."),
		amountRow("goods.gluePerKg", 0, maxEach, "A kilogram of wood glue."),
		numberRow("goods.glueBottleKg", 0.05, 25, 0.05, "kg", "Glue in one bottle."),
		amountRow("goods.cleatPerM3", 0, maxBulk, "A cubic metre of cleat stock."),
		amountRow("goods.woodScrew", 0, maxEach, "One cleat screw."),
		amountRow("goods.wallFixing", 0, maxEach, "One wall fixing."),
		amountRow("goods.brad", 0, maxEach, "One brad."),
		amountRow("goods.abrasivesPer100", 0, maxEach, "Abrasives for a hundred cut blocks."),
		amountRow("goods.bladesPer1000", 0, maxEach, "Wear of the blade for a thousand cut blocks."),
		amountRow("goods.packingPerPanel", 0, maxEach, "Wrapping and corner guards of one panel."),
		partsRow("woods", 1, maxPrices, "Prices of the shop woods."),
		choiceRow("woods[].wood", "Which wood.", Woods()...),
		amountRow("woods[].squaresPerM3", 0, maxBulk, "A cubic metre of planed squares."),
		amountRow("woods[].boardsPerM3", 0, maxBulk, "A cubic metre of frame boards."),
		partsRow("sheets", 1, maxPrices, "Prices of whole sheets."),
		choiceRow("sheets[].sheet", "Which sheet.", Sheets()...),
		lengthRow("sheets[].thickness", 9, 25, 1, "Its thickness."),
		amountRow("sheets[].price", 0, maxEach, "One whole sheet."),
		partsRow("finishes", 1, maxPrices, "Prices of the finishes."),
		choiceRow("finishes[].finish", "Which finish.", Finishes()...),
		amountRow("finishes[].perLitre", 0, maxEach, "A litre of it."),
		partsRow("stages", 1, 6, "Parts of the gross price and when they fall due."),
		textRow("stages[].name", shortText, "When it falls due.").filled(),
		numberRow("stages[].percent", 0, 100, 5, "%", "Part of the gross price."),
		partsRow("tasks", 1, maxTasks, "The time table: minutes are quantity times rate."),
		textRow("tasks[].id", 16, "Short name of the task.").filled(),
		textRow("tasks[].name", shortText, "What is done.").filled(),
		choiceRow("tasks[].role", "Whose time it is.", "shop", "office", "site"),
		textRow("tasks[].per", shortText, "What it is counted by.").filled(),
		choiceRow("tasks[].unit", "Unit of the three rates.", "min", "s"),
		numberRow("tasks[].low", 0, 10_000, 0, "", "Rate of a practised maker."),
		numberRow("tasks[].typical", 0, 10_000, 0, "", "Rate of a usual job."),
		numberRow("tasks[].high", 0, 10_000, 0, "", "Rate of a first job."),
	}
	for i := range rows {
		rows[i].Required = true
	}
	rows = append(rows, stickRows()...)
	return append(rows,
		partsRow("learned", 0, maxTasks, "What jobs have taught of the tasks; the time table holds it already.").sparse(),
		textRow("learned[].task", taskIDLength, "Short name of the task.").filled().required(),
		numberRow("learned[].factor", 0.5, 2, 0, "", "Factor on the rates that the book began with.").required(),
		integerRow("learned[].jobs", 1, 10_000, "Jobs that it rests on.").required(),
		numberRow("learned[].low", 0, 1000, 0, "", "Least minutes over reckoned minutes.").required(),
		numberRow("learned[].high", 0, 1000, 0, "", "Most minutes over reckoned minutes.").required(),
		numberRow("learned[].beganLow", 0, 10_000, 0, "", "Rate of a practised maker that the book began with.").sparse(),
		numberRow("learned[].beganTypical", 0, 10_000, 0, "", "Rate of a usual job that it began with.").sparse(),
		numberRow("learned[].beganHigh", 0, 10_000, 0, "", "Rate of a first job that it began with.").sparse(),
		numberRow("policy.discountLimit", 0, 100, 1, "%", "Largest discount that may be given without the owner; 0 or missing: none is set.").sparse(),
		amountRow("policy.changeFee", 0, maxBulk, "Net price of a change after the look is locked, beside the difference.").sparse(),
		amountRow("policy.sample", 0, maxBulk, "Net price of a sample of wood and finish; 0 or missing: it is not sold.").sparse(),
		partsRow("taxes", 0, maxTaxes, "Tax rates that are used beside the usual one.").sparse(),
		textRow("taxes[].name", shortText, "What it is called.").filled().required(),
		numberRow("taxes[].percent", 0, 100, 1, "%", "The rate.").required(),
		textRow("reverseCharge", longText, "What stands on papers where the client owes the tax.").lines().sparse(),
		textRow("terms", longText, "Terms that stand on an offer.").lines().sparse(),
		textRow("workshop", shortText, "Name of the workshop, at the head of papers that go to a client.").sparse(),
		textRow("address", longText, "Its address and how to reach it, a line each.").lines().sparse(),
		textRow("taxNumber", shortText, "Its tax number, as an invoice has to show it.").sparse(),
		textRow("own", shortText, "Paths of the figures that the workshop has set, where others are invented examples.").
			filled().list(0, maxFigures).fixed().sparse(),
	)
}
