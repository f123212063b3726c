package words

import "maps"

// englishChecks says the watch-outs. Each stands alone: what is wrong, with the
// numbers, and what to do.
func englishChecks() map[string]string {
	all := englishPrices()
	maps.Copy(all, englishGates())
	maps.Copy(all, englishWaterfall())
	maps.Copy(all, englishWatchOuts())
	return all
}

func englishWatchOuts() map[string]string {
	return map[string]string{
		"level/stop":    "Stop",
		"level/caution": "Caution",
		"level/note":    "Note",

		"pattern/uneven-shares": "The {height} blocks are {share} of an equal share. The field will look lopsided in its heights.",
		"pattern/long-run":      "A bar of {n} equal blocks at {place} {at}: it shows, and it reflects as one strip.",
		"pattern/row":           "row",
		"pattern/column":        "column",
		"pattern/repeats":       "The same pattern {n} times side by side steers sound into a few directions. Use a longer pattern.",
		"panel/alike":           "{n} like panels side by side steer sound into a few directions. Make one a counter-panel: order {order}.",
		"field/snapped":         "You asked {askedWidth} × {askedHeight}; whole blocks give {width} × {height}. Take it, or let the frame make up the rest.",

		"frame/too-shallow": "Cleat, backer and tallest block are {stack} deep, the frame board is {board}: the blocks stand {proud} too far out, or the frame misses the wall. Take a board of {need}, or blocks up to {tallest}.",
		"frame/less-reveal": "Cleat, backer and tallest block are {stack} deep, the frame board is {board}: it stands {reveal} proud of the blocks, and {wanted} was wanted. Take a board of {need}.",

		"wall/hands-to-lift":   "One panel weighs {mass} and its top hangs at {top}: lifting it takes {people} people at {units|15 kg|33 lb} each, and {crew} {crew|is|are} there. Bring more hands, use a panel lifter, or split it.",
		"wall/hands-to-carry":  "One panel weighs {mass}: carrying it takes {people} people, and {crew} {crew|is|are} there. Bring more hands or split it.",
		"wall/lifting-method":  "One panel weighs {mass}. Above {limit} it is not lifted by hand: whoever leads the lift names a method, such as a panel lifter or a hoist. Or split it into smaller panels.",
		"wall/lift-named":      "One panel weighs {mass}. {lead} leads the lift and answers for it: {method}. Weigh the panel before it is lifted.",
		"wall/above-ears":      "The middle of the panel is {off} above the ears at {ears}. It does most for listeners at the height of its middle.",
		"wall/below-ears":      "The middle of the panel is {off} below the ears at {ears}. It does most for listeners at the height of its middle.",
		"wall/below-floor":     "The lower edge would hang {below} under the floor. Hang it higher, or make it less tall.",
		"wall/above-top":       "The upper edge would stand {over} above the wall, which is {wall} high. Hang it lower, or make it less tall.",
		"wall/beyond-side":     "The right edge would stand {over} beyond the wall, which is {wall} wide. Move it to the left, or make it less wide.",
		"wall/fire-question":   "The public comes into this room. Ask whoever answers for fire safety there which class the surface must have, and get it in writing before anything is bought. Wood and finish that were not tested have no class.",
		"price/too-large":      "With these prices and hours the job comes to more than can be reckoned, so it has no price. Look for a slip in the price book.",
		"price/indication":     "Nobody has surveyed the site, so this price is an indication and no offer.",
		"price/own-indication": "Nobody has surveyed the site, so list and hours are an indication. Measure wall and way in before you buy.",

		"price/book-lapsed":            "The price book “{name}” held until {date}. Bring it up to date before you offer this price.",
		"price/book-early":             "The price book “{name}” holds from {date} on only. Open the one of today before you offer this price.",
		"price/offer-lapsed":           "The offer held until {date}. What it says is an indication now.",
		"price/order-changed":          "The design has changed since it was agreed on: revision {offered} is ordered, this is {now}. A change goes by a slip of the workshop.",
		"price/offer-changed":          "The design has changed since it was offered: the offer is for revision {offered}, this is {now}.",
		"price/discount-limit":         "A discount of {discount} is more than the {limit} that may be given without the owner. The owner signs it off with name and reason, or it is less.",
		"price/discount-reason":        "Nobody has said why there is a discount of {discount}, and who gives it.",
		"supply/by-others":             "Others hang this: {mass} a panel, on its cleat, with room above to lift it on and a lock. The hang sheet and the weigh slip go with it. Whoever hangs it answers for what holds it, by the rules of the place.",
		"supply/kit":                   "The client glues, finishes and hangs this: the build book with its cautions goes with it. The blocks are cut; backer, frame and cleat are still sawn. Loads and fixings, up to {mass} a panel, are answered for by whoever hangs it.",
		"supply/plan":                  "The client builds from the plan: the build book with its cautions goes with it. Saws, dust, finish, loads and fixings, up to {mass} a panel, are answered for by whoever builds, by the rules of the place.",
		"price/below-floor":            "At this price the job leaves {left} of it. The floor is {floor}.",
		"price/below-minimum":          "After the discount the price is {net}, below the minimum charge of {minimum}.",
		"price/deposit":                "The first payment, {deposit}, does not cover what is bought for the job, {boughtIn}. Ask for {share} at the order.",
		"price/over-budget":            "The price with tax is {price}, {over} over the budget of {budget}.",
		"price/goods-over-budget":      "What is bought comes to {price}, {over} over the budget of {budget}.",
		"note/price/over-budget":       "Note: {over} over the budget",
		"note/price/goods-over-budget": "Note: {over} over the budget",
	}
}

// englishWaterfall says the way from cost to price; each line is added to those
// above it.
func englishWaterfall() map[string]string {
	return map[string]string{
		"waterfall/markup":      "Mark-up: {share} % of what is bought in",
		"waterfall/direct":      "Direct cost: bought in with its mark-up, work, overhead, road",
		"waterfall/contingency": "Contingency: {share} % of the direct cost",
		"waterfall/cost":        "Cost",
		"waterfall/asked":       "Margin asked for: {share} % of the price",
		"waterfall/minimum":     "Lifted to the minimum charge",
		"waterfall/discount":    "Discount: {share} % of that",
		"waterfall/rounded-up":  "Rounded up to the next {step}",
		"waterfall/net":         "Net price",
		"waterfall/margin":      "Left of it after cost: {share} % of net",
		"waterfall/tax":         "Tax: {share} % of net",
		"waterfall/gross":       "With tax",
	}
}

// englishGates says what keeps the gates of a job shut.
func englishGates() map[string]string {
	return map[string]string{
		"gate/offer":         "the offer",
		"gate/offer-home":    "the start of work",
		"gate/buy":           "buying",
		"gate/cut":           "cutting",
		"gate/glue":          "gluing",
		"gate/hang":          "hanging",
		"gate/shuts":         "Until it is solved it holds up {gate}.",
		"gate/will-shut":     "Once it comes to {gate}, this is a Stop.",
		"gate/by-evidence":   "Only evidence clears it, no signature.",
		"gate/by-sign-off":   "Or somebody signs it off, with name and reason.",
		"gate/heading":       "What holds the job up",
		"gate/open":          "nothing known",
		"gate/shut":          "{n} {n|thing|things} to settle",
		"gate/shut-evidence": "{n} {n|thing|things} to settle, with evidence",
		"gate/waits":         "waits for {gate}",
		"gate/not-checked":   "Open means that the page knows of nothing: nobody here has seen the bench, the wall or the way in. Whoever opens a gate looks there first.",
		"wall/lifting":       "Lifting",
	}
}

// englishPrices says which prices are in force, and what can be done with them.
func englishPrices() map[string]string {
	return map[string]string{
		"page/book-opened":    "The price book is in force: {name}.",
		"page/selling-opened": "The selling book is in force: clients see the range that it gives.",
		"page/book-example":   "The example figures are in force again.",
		"page/book-stays":     "The prices stay as they were: {name}.",

		"money/budget": "What it may cost",

		"lever/heading":            "What brings the price down",
		"lever/lead":               "Over the budget of {budget}. These changes, planned anew, save most:",
		"lever/lead-client-below":  "The price is above the budget of {budget}. These changes bring it down most:",
		"lever/lead-client":        "A budget of {budget} may not be enough. These changes bring the price down most:",
		"lever/larger-blocks":      "Blocks of {size}: {fewer} fewer of them.",
		"lever/fewer-heights":      "{n} heights: {heights}.",
		"lever/fewer-coats":        "One coat of finish less.",
		"lever/no-frame":           "No frame: the edges of the field stay in sight.",
		"lever/smaller":            "A tenth smaller each way: {width} × {height}.",
		"lever/another-wood":       "{wood} instead of {was}.",
		"lever/dents":              "It is softer and takes dents where people pass or chairs stand.",
		"lever/no-hanging":         "The client fetches it and hangs it.",
		"lever/no-hanging-client":  "You fetch it and hang it yourself.",
		"lever/saves":              "Saves {money}.",
		"lever/saves-enough":       "Saves {money}, which is enough.",
		"lever/saves-about":        "Saves about {money}.",
		"lever/saves-enough-about": "Saves about {money}, which may be enough.",
		"lever/hours":              "{hours} less work.",
		"lever/reckoned-client":    "Reckoned with the rounded figures that ranges are made of: the workshop's own may put them in another order.",
		"lever/reckoned-maker":     "Reckoned with the price book in force. A client's are reckoned with the selling book, and may be others.",
		"lever/reckoned-builder":   "Reckoned with the goods alone.",
		"lever/do":                 "Do it",

		"offer/heading":             "Offer",
		"offer/lead":                "An offer holds this price open. It goes along in the file and in the link, and an edit of the design is told from it.",
		"offer/indication":          "Nobody has surveyed the site: it is an indication.",
		"offer/for-days":            "Offer it for {n} days",
		"offer/in-links":            "The file and the link that you send now carry it.",
		"offer/withdraw":            "Withdraw the offer",
		"offer/is-agreed":           "What was offered is agreed on: see “The order”. A change goes by a slip, and nothing is offered anew unless the lock is undone.",
		"offer/no-price":            "There is no price to offer.",
		"offer/no-book":             "Example figures make no offer. Open your own price book first.",
		"offer/no-currency":         "The price book names no currency: the offer is made in ¤, which is none.",
		"offer/no-workshop":         "The price book names no workshop: nobody is named who offers.",
		"offer/no-day":              "An offer needs today’s date, which is not known here.",
		"offer/book-of-another-day": "The price book “{name}” does not hold today, so nothing can be offered by it.",
		"offer/gate-shut":           "{n} {n|Stop keeps|Stops keep} the offer back.",
		"offer/wrong-days":          "An offer of {days} days is none: {low} to {high} days.",

		"look-card/heading": "Looks side by side",
		"look-card/woods":   "Woods are told apart by what they commonly cost, not by the workshop's own list: a difference between two looks is as uncertain as the ranges themselves.",
		"look-card/lead":    "Keep this look, change what you like, and see both with their prices.",
		"look-card/keep":    "Keep this look",
		"look-card/open":    "What is open now",
		"look-card/same":    "This one is open.",
		"look-card/line":    "{wood}, blocks of {size}, {width} × {height}, {mass}",
		"look-card/against": "Against the open one: {difference}",
		"look-card/heavier": "{mass} heavier",
		"look-card/lighter": "{mass} lighter",
		"look-card/show":    "Show it",
		"look-card/drop":    "Take it out",

		"label/looks.name": "Name of the look",

		"offer/ready":              "Ready between {from} and {by}, if it is ordered by {date}.",
		"offer/ready-first":        "Ordered on {day}: ready between {from} and {by}.",
		"offer/ready-last":         "Ordered on the last day, {date}: ready between {from} and {by}.",
		"offer/wish-kept":          "It was wished for by {wished}, and is ready by then whenever it is ordered while the offer holds.",
		"offer/wish-kept-first":    "It was wished for by {wished}: it is ready by then if it is ordered on {day}; ordered on the last day it may take until {by}.",
		"offer/wish-may-be-missed": "It was wished for by {wished}, and that day may be missed: where all work takes its longest, it is ready on {by}.",
		"offer/wish-missed":        "It was wished for by {wished}, and that day is missed: it is not ready before {from}.",
		"offer/line":               "Offered at {gross} with tax, until {date}.",
		"offer/line-agreed":        "Agreed at {gross} with tax, on {date}.",

		"prices/the-examples":   "the example figures",
		"prices/a-selling-book": "a selling book",
		"prices/selling-file":   "selling book",
		"prices/no-selling":     "No selling book can be made of this price book: it has no price for the goods of usual jobs.",

		"prices/heading":         "Prices in force",
		"prices/example":         "These are example figures, made up. Type your own into the price book, or open it from a file, to see your prices.",
		"prices/own":             "{name}, code {code}, in {currency}.",
		"prices/no-currency":     "no currency, written ¤",
		"prices/until":           "It holds until {date}.",
		"prices/from-until":      "It holds from {date} until {until}.",
		"prices/from":            "It holds from {date}.",
		"prices/invented":        "It calls its own figures invented.",
		"prices/selling-only":    "Clients see the range of a selling book, in {currency}. Rates, times and costs below are example figures until a price book is open.",
		"prices/private":         "A price book stays in this browser and enters no file of a design and no link. A selling book holds its name, its last day, ten rounded prices and no rates: what clients are quoted by.",
		"prices/open":            "Open a price book or a selling book…",
		"prices/save":            "Save the price book",
		"prices/save-example":    "Save the example book to fill in",
		"prices/save-selling":    "Save the selling book",
		"prices/back":            "Back to the example figures",
		"prices/client-selling":  "The range comes from the selling book that was opened here.",
		"prices/client-by":       "By the prices of “{name}”.",
		"prices/client-by-until": "By the prices of “{name}”, until {date}.",
		"prices/client-lapsed":   "These prices held until {date}. Ask for new ones before you count on this range.",
		"prices/client-none":     "The client sees no range: no selling book can be made of this price book.",
	}
}

// englishBenchChecks says the watch-outs of stock, saw, glue and finish.
func englishBenchChecks() map[string]string {
	return map[string]string{
		"bench/not-measured":     "All sizes rest on the label: {size} is what the section should have. Measure ten sticks before the first cut.",
		"bench/sheet-too-small":  "A backer of {width} × {height} with its trimming does not come out of a sheet of {sheetWidth} × {sheetLength}. Make the group {across} × {down} panels.",
		"bench/sheets-too-small": "A backer of {width} × {height} with its trimming does not come out of a sheet of {sheetWidth} × {sheetLength}, and a group does not take enough panels to split it. Make the field smaller.",
		"bench/waste":            "{share} of the {wood} sticks, {size} square and {length} long, ends up in no panel. Another stick length may waste less.",
		"bench/one-a-sheet":      "Each of the {n} backers, {width} × {height}, takes a sheet of {sheetWidth} × {sheetLength} of its own. A slightly narrower panel may come twice out of one.",
		"bench/short-block":      "A block of {height} cannot be held by hand at the saw. Hold it in a clamped carrier, let the blade stop before you lift it out, and keep hands {units|150 mm|6 in} from the blade.",
		"bench/tiny-block":       "A block of {height} is too short even for a usual carrier. Make it taller, or say how it is cut and who answers for it.",
		"bench/short-tail":       "With nothing but a hand to hold it, the last {tail} of a stick brings fingers to the blade. Leave {least}, or cut in a clamped carrier.",
		"bench/sanding-time":     "Sanding takes {hours} with the machine in the hand. From {limit} a day on its vibration calls for measures: spread it over {days} days or people.",
		"bench/glue-skins":       "Gluing a full row takes {row} s, and {safe} of the {open} s that this glue stays open are safe. Glue at most {blocks} {blocks|block|blocks} at a time, or take a slower glue.",
		"bench/cold-shop":        "The shop has {now}. Most wood glue turns chalky and weak below {least}.",
		"bench/oily-rags":        "Rags with {finish} on them can catch fire by themselves within hours. Lay them flat outdoors, or under water in a lidded metal tin.",
	}
}
