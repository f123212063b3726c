package words

// englishShop says what a maker reads of sticks, moisture, lay-up and days.
func englishShop() map[string]string {
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
