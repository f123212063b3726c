package words

// englishWall is what is said of the wall, of what holds a panel and of its way in.
func englishWall() map[string]string {
	return map[string]string{
		"wall/screws":           "{count} wood screws No. {gauge}, {long} long, hold one strip: {each} above one another in each stud, the strip {high} high. They are used to {use} with {factor} times the load. Counted for sound, dry studs of spruce or pine, 38 mm (1 1/2 in) wide and 75 mm (3 in) deep at least, that were found by hand, for up to {board} of wall board, bored holes and plain wood screws; another make needs its maker's value. Where the ground shakes, a professional has to look.",
		"wall/overloaded":       "No strip with wood screws that fits behind the panel holds it: the best, with {count} of No. {gauge}, {high} high, would be used to {use} with {factor} times the load. Make the panel lighter or higher, hit more studs, or take a flatter bevel, a thicker cleat or thicker screws.",
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
		"wall/way-in":           "A panel of {wide} × {high} does not come in: the door is {door} × {tall}, the corridor {corridor}, and the longest that turns is {longest} with its packing. Split it, or take the frame off for the way.",
		"wall/way-in-open":      "Stairs or lift are not checked: measure every landing, turn and car for a packed panel of {wide} × {high} × {deep}.",
	}
}
