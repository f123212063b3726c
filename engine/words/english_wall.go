package words

import "maps"

// englishWall is what is said of the wall, of what holds a panel and of its way in.
func englishWall() map[string]string {
	all := englishHung()
	maps.Copy(all, englishWallFields())
	return all
}

// englishWallFields names the fields of wall and way in that only a survey fills.
func englishWallFields() map[string]string {
	return map[string]string{
		"choice/call point": "fire alarm call point",
		"choice/exit sign":  "exit sign",

		"label/room.fireAnswer":      "Fire safety: who said what, and when",
		"label/room.answers":         "Other answers, with names and dates",
		"label/walls.studs":          "Studs as found, from the left",
		"label/walls.board":          "Board over the studs, all layers",
		"label/walls.walkway":        "People walk along it",
		"label/walls.fixing.reason":  "Why nobody can be below",
		"label/walls.groups.weighed": "Mass of the heaviest panel as weighed",
		"label/wayIn.stairWidth":     "Narrowest flight",
		"label/wayIn.landing":        "Depth of the smallest landing",
		"label/wayIn.liftDoor":       "Door of the lift",
		"label/wayIn.liftWidth":      "Width of its car",
		"label/wayIn.liftDepth":      "Depth of its car",
		"label/wayIn.liftHeight":     "Height of its door or car",
		"label/wayIn.vehicle":        "Loading floor of the vehicle",

		"zero/walls.studs":             "One after another, as 300, 905, 1490. Empty: by first and step",
		"zero/walls.board":             "0: not said, 25 mm (1 in) count",
		"zero/walls.groups.weighed":    "0: not weighed",
		"zero/walls.fixing.loadFactor": "4, or down to 2 where nobody can be below",
		"zero/wayIn.stairWidth":        "0: not measured",
		"zero/wayIn.landing":           "0: not measured",
		"zero/wayIn.liftDoor":          "0: not measured",
		"zero/wayIn.liftWidth":         "0: not measured",
		"zero/wayIn.liftDepth":         "0: not measured",
		"zero/wayIn.liftHeight":        "0: not measured",
		"zero/wayIn.vehicle":           "0: not measured",

		"zero-means/not-weighed":  "not weighed",
		"zero-means/not-measured": "not measured",
	}
}

// englishHung is what is watched over on a wall.
func englishHung() map[string]string {
	return map[string]string{
		"wall/screws":           "{count} wood screws No. {gauge}, {long} long, hold one strip: {each} above one another in each of {studs} {studs|stud|studs}, the strip {high} high. They are used to {use} with {factor} times the load. Counted for sound, dry studs of spruce or pine, 38 mm (1 1/2 in) wide and 75 mm (3 in) deep at least, that were found by hand, for {board} of wall board, bored holes and plain wood screws; another make needs its maker's value. Where the ground shakes, a professional has to look.",
		"wall/overloaded":       "No strip with wood screws that fits behind the panel holds it: the best, with {count} of No. {gauge} in {studs} {studs|stud|studs}, {high} high, would be used to {use} with {factor} times the load. Make the panel lighter or higher, hit more studs, or take a flatter bevel, a thicker cleat or thicker screws.",
		"wall/rated":            "{count} fixings a panel ({what}) are used to {use} by the value that was typed, with {factor} times the load. That value must be for this very wall, and the load must already be allowed by it. Where the ground shakes, a professional has to look.",
		"wall/rated-overloaded": "{count} fixings a panel ({what}) would still be used to {use} by the value that was typed, with {factor} times the load. Take a stronger fixing or a lighter panel.",
		"wall/not-checked":      "Not checked: nobody has said what a fixing in this wall ({wall}) holds. Type what its maker gives for one fixing in this very base, shear and pull, with fixing and source, or stand the panels on the floor. Nothing is hung before.",
		"wall/board-alone":      "No stud behind the panel, and wall board alone is not assumed to hold it. Move the panel to studs that were found, put a rail across them, stand it on the floor, or type what the anchor's maker gives for this board, with anchor and source.",
		"wall/one-stud":         "Fewer than two studs are behind a panel of {mass}. Put a rail across the studs, or move the panel so that it reaches two.",
		"wall/no-lock":          "Nothing keeps the panel from being lifted off its cleat. Give it a screw or a clip.",
		"wall/stand-tips":       "The stand falls {side} at {angle}; {limit} is the least. Make its foot {more} longer on that side, or tie it back.",
		"wall/forwards":         "forwards",
		"wall/backwards":        "backwards",
		"wall/lift-room":        "Hooking the panel on takes {need} of air above it, and {free} is there. Hang it lower, or take a thinner cleat or a flatter bevel than {bevel}.",
		"wall/grille":           "The air grille is {apart} from the panel. Do not choke it; moving air also dries that edge, and may whistle. Keep 150 mm (6 in) away.",
		"wall/heat":             "A radiator is {apart} from the panel. It dries that edge and opens the joints. Keep 300 mm (12 in) away.",
		"wall/cable":            "A cable may run up or down from the {kind} at {x} from the left corner. Trace it before drilling anywhere near.",
		"wall/safety-device":    "The panel covers or crowds something that keeps people safe ({kind} at {x} from the left corner). Move the panel, and ask whoever answers for safety there.",
		"wall/in-reach":         "The lower edge hangs at {bottom}, within reach in a public room. Fingers and bags will find it below {limit}.",
		"wall/damp-or-cold":     "Up to {humidity} humidity, down to {cold}: a cold or damp wall. Leave 20 mm (3/4 in) of air behind the panel, seal its back, and expect movement.",
		"wall/too-few-cells":    "The cleat needs {need} screws of {long} where they cannot show, and the best rows have {have} places. Take fewer short blocks and voids, thicker ply, or a lighter panel.",
		"wall/way-in":           "A panel of {wide} × {high} does not come in: {step}, and the longest that does is {longest} with its packing. {bare}",
		"way/door":              "from the corridor it does not turn through the door",
		"way/stairs":            "it does not turn on the landing of the stairs",
		"way/lift":              "it does not go into the lift",
		"way/vehicle":           "it does not lie in the vehicle",
		"way/bare":              "Without frame and packing it passes: take the frame off for the way, or split it.",
		"way/not-bare":          "It does not pass without its frame either: split it.",
		"wall/low-factor":       "Counted with {factor} times the load instead of {usual}, because: {reason}. That holds only as long as nobody can be below.",
		"wall/factor-unsaid":    "{typed} times the load was asked for, and {usual} times counts, since nobody has said why nobody can be below.",
		"wall/weighed-off":      "The heaviest panel weighs {measured}, and {computed} was expected: wet wood, other heights or a wrong count. Everything that holds and lifts it is counted for {measured}.",
		"wall/walkway":          "People walk along this wall. The panel stands out {out} and begins {bottom} above the floor: whoever feels the way with a stick meets it with the head. Between {low} and {high} that is much; ask which rule holds here.",
		"wall/fire-answer":      "Fire safety was answered: {answer}. Keep it in writing with the job.",
		"wall/way-in-open":      "Stairs or lift are not checked: measure every landing, turn and car for a packed panel of {wide} × {high} × {deep}.",
	}
}
