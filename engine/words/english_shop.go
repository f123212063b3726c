package words

import "maps"

// englishShop says what a maker reads of sticks, moisture, lay-up and days.
func englishShop() map[string]string {
	all := englishRows()
	maps.Copy(all, englishSticks())
	return all
}

// englishRows says the screen that shows one row at the bench.
func englishRows() map[string]string {
	return map[string]string{
		"shop/heading":          "At the bench",
		"page/record-opened":    "The record of the work is taken up.",
		"message/record-unread": "A record of the work on this job was kept here and cannot be read. It stays kept.",
		"record/not-counted":    "Nobody has counted the blocks yet. Count every bin before the glue is opened.",
		"record/bin-short":      "{good} of {need} good blocks lie in the {height} bin: {short} {short|is|are} short. Cut {cut} more before you open the glue.",
		"record/other-paper":    "The row cards in hand are of revision {paper}, and the design is {now}. Print them anew.",
		"record/other-rows":     "{n} {n|row|rows} of panel {panel} of {group} were laid from cards of revision {revision}, and the cards of {now} differ. Go back to that revision, or begin the panel anew.",

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
		"rows/set":            "Set {n} loose {n|block|blocks} from the {height} bin into the empty {n|cell|cells}, without glue.",
		"rows/set-some":       "Set {n} loose {n|block|blocks} into the empty {n|cell|cells}, without glue: {from} from the {height} bin, and {lacking} off-cuts of the same section.",
		"rows/pull":           "Once the row is pressed, pull {n} loose {n|block|blocks} and put {n|it|them} back.",
		"rows/measure":        "Should measure {distance} from the {edge} edge to the far face of this row, within {tolerance}.",
		"rows/stale":          "{n} {n|row|rows} of this panel were laid from cards of revision {revision}. The cards of {now} differ. Go back to that revision, or begin the panel anew.",
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

// englishSticks says what is known of sticks and of moisture.
func englishSticks() map[string]string {
	return map[string]string{
		"measure/drift":         "A row of {n} blocks may end {off} from where it is drawn, and the frame has {air} of air at both sides together. {basis}",
		"measure/basis-assumed": "This is reckoned with the usual spread of planed sticks, since nobody has measured ten.",
		"measure/basis-card":    "This is reckoned with the sticks that were measured.",

		"moisture/stock":         "The sticks are at {stock}, and wood in the room rests near {middle} ({low} to {high}). Let them settle for {days} days in air like the room's, until two readings a week apart differ by less than half a point, or leave wider joints.",
		"moisture/growth":        "From {stock} to {high} of moisture the side of {side} wants to grow by {growth}, and its joints hold {slack}. Leave {each} a block.",
		"moisture/growth-beyond": "From {stock} to {high} of moisture the side of {side} wants to grow by {growth}, and its joints hold {slack}. No slack takes that up: settle the sticks in the room's air first, make the panels smaller, or take a wood that moves less.",
		"moisture/frame-gap":     "The field may outgrow its joints: it grows by up to {growth} and they hold {slack}. Leave {need} of air between field and frame on each side instead of {gap}.",
	}
}
