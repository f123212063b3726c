package words

import "maps"

// englishWall is what is said of the wall, of what holds a panel and of its way in.
func englishWall() map[string]string {
	all := englishHung()
	maps.Copy(all, englishWallFields())
	maps.Copy(all, englishHolding())
	maps.Copy(all, englishRear())
	maps.Copy(all, englishWayIn())
	maps.Copy(all, englishDay())
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
		"label/walls.bow":            "Out of flat under {units|2 m|80 in}",
		"label/walls.bowShape":       "There the wall is",
		"label/room.seismic":         "The rules of the place count earthquakes",
		"choice/hollow":              "hollow",
		"choice/belly":               "bowed outwards",
		"label/walls.outside":        "An outside wall without insulation",
		"label/walls.sun":            "The sun stands on it most of a day",
		"label/walls.fixing.reason":  "Why nobody can be below",
		"label/walls.groups.weighed": "Mass of the heaviest panel as weighed",
		"label/wayIn.stairWidth":     "Narrowest flight",
		"label/wayIn.landing":        "Depth of the smallest landing",
		"label/wayIn.liftDoor":       "Door of the lift",
		"label/wayIn.liftWidth":      "Width of its car",
		"label/wayIn.liftDepth":      "Depth of its car",
		"label/wayIn.liftHeight":     "Height of its door or car",
		"label/wayIn.vehicle":        "Loading floor of the vehicle",

		"zero/walls.studs":             "One after another, as {units|300, 905, 1490|12, 36, 60}. Empty: by first and step",
		"zero/walls.bow":               "Under a straightedge, where the strip goes. 0: flat, or not measured",
		"zero-means/flat":              "flat, or not measured",
		"zero/walls.board":             "0: not said, {units|25 mm|1 in} count",
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
		"wall/screws":           "{count} wood screws No. {gauge}, {long:sold} long, hold one strip: {each} above one another {studs|at|at each of} {studs} {studs|stud|studs}, the strip {high} high. They are used to {use} with {factor} times the load. Counted for sound, dry studs of spruce or pine, {units|38 mm|1 1/2 in} wide and {units|75 mm|3 in} deep at least, that were found by hand, for {board} of wall board, bored holes and plain wood screws; another make needs its maker's value. Where the ground shakes, a professional has to look.",
		"wall/overloaded":       "No strip with wood screws that fits behind the panel holds it: the best, with {count} of No. {gauge} in {studs} {studs|stud|studs}, {high} high, would be used to {use} with {factor} times the load. Make the panel lighter or higher, hit more studs, or take a flatter bevel, a thicker cleat or thicker screws.",
		"wall/rated":            "{count} fixings a panel ({what}) are used to {use} by the value that was typed, with {factor} times the load. That value must be for this very wall, and the load must already be allowed by it. Not checked: they sit {step} apart, and their maker says how close they may, how far from an edge, and whether in stone or joint. A hole that must move is worked out again. Where the ground shakes, a professional has to look.",
		"wall/rated-overloaded": "{count} fixings a panel ({what}) would still be used to {use} by the value that was typed, with {factor} times the load. Take a stronger fixing or a lighter panel.",
		"wall/not-known":        "Not checked: nobody knows what this wall is made of. Find out, then choose its kind, or stand the panels on the floor. Nothing is hung before.",
		"wall/no-fixing":        "Not checked: nothing may be fixed to this wall. Stand the panels on the floor. Nothing is hung.",
		"wall/not-checked":      "Not checked: nobody has said what a fixing in this wall ({wall}) holds. Type what its maker gives for one fixing in this very base, shear and pull, with fixing and source, or stand the panels on the floor. Nothing is hung before.",
		"wall/board-alone":      "No stud behind the panel, and wall board alone is not assumed to hold it. Move the panel to studs that were found, put a rail across them, stand it on the floor, or type what the anchor's maker gives for this board, with anchor and source.",
		"wall/one-stud":         "Fewer than two studs are behind a panel of {mass}. Put a rail across the studs, or move the panel so that it reaches two.",
		"wall/no-lock":          "Nothing keeps the panel from being lifted off its cleat. Give it a screw or a clip.",
		"wall/stand-tips":       "The stand falls {side} at {angle}; {limit} is the least. Make its foot {more} longer on that side, or tie it back.",
		"wall/forwards":         "forwards",
		"wall/backwards":        "backwards",
		"wall/lift-room":        "Hooking the panel on takes {need} of air above it, and {free} is there. Hang it lower, or take a thinner cleat or a flatter bevel than {bevel}.",
		"wall/grille":           "The air grille is {apart} from the panel. Do not choke it; moving air also dries that edge, and may whistle. Keep {units|150 mm|6 in} away.",
		"wall/heat":             "A radiator is {apart} from the panel. It dries that edge and opens the joints. Keep {units|300 mm|12 in} away.",
		"wall/cable":            "A cable may run up or down from the {kind} at {x} from the left corner. Trace it before drilling anywhere near.",
		"wall/safety-device":    "The panel covers or crowds something that keeps people safe ({kind} at {x} from the left corner). Move the panel, and ask whoever answers for safety there.",
		"wall/in-reach":         "The lower edge hangs at {bottom}, within reach in a public room. Fingers and bags will find it below {limit}.",
		"wall/damp-or-cold":     "Up to {humidity} humidity, down to {cold}: a cold or damp wall. Leave {units|20 mm|3/4 in} of air behind the panel, seal its back, and expect movement.",
		"wall/too-few-cells":    "The cleat needs {need} screws of {long:sold} where they cannot show, and the best rows have {have} places. Take fewer short blocks and voids, thicker ply, or a lighter panel. Screws of {short:sold} everywhere, which end in the backer, and glue cannot show either, but what they hold is not checked: the glue's maker or a professional has to say.",
		"wall/way-in":           "A panel of {wide} × {high} does not come in: {step}, and the longest that does is {longest} with its packing. {bare}",
		"way/door":              "from the corridor it does not turn through the door",
		"way/stairs":            "it does not turn on the landing of the stairs",
		"way/lift":              "it does not go into the lift",
		"way/vehicle":           "it does not lie in the vehicle",
		"way/bare":              "Without frame and packing it passes: take the frame off for the way, or split it.",
		"way/not-bare":          "It does not pass without its frame either: split it.",
		"wall/outside":          "An outside wall without insulation is cold and may be damp. Leave {units|20 mm|3/4 in} of air behind the panel, seal its back, and expect movement.",
		"wall/sun":              "Sun for most of a day dries the panel and bleaches it unevenly. Expect open joints, or shade it.",
		"wall/low-factor":       "Counted with {factor} times the load instead of {usual}, because: {reason}. That holds only as long as nobody can be below.",
		"wall/factor-unsaid":    "{typed} times the load was asked for, and {usual} times counts, since nobody has said why nobody can be below.",
		"wall/weighed-off":      "The heaviest panel weighs {measured}, and {computed} was expected: wet wood, other heights or a wrong count. Everything that holds and lifts it is counted for {measured}.",
		"wall/wider-than-room":  "The wall is {wall} wide, and the room is {room} at the most: one of the two is wrong. What the room does to sound goes by the room.",
		"wall/higher-than-room": "The wall is {wall} high, and the room is {room}: one of the two is wrong. What the room does to sound goes by the room.",
		"wall/hands-of-others":  "One panel weighs {mass} and its top hangs at {top}: lifting it takes {people} people of whoever hangs it. Say so before you agree; your own people are not counted.",
		"wall/bowed":            "The wall is {bow} out of flat under a straightedge of {units|2 m|80 in}; more than {limit} is much. The strip is packed with up to {shim} of solid shims at its fixings, and its screws are longer by that. Where the plaster is hollow or loose, or the bow is new, somebody has to look at the wall first.",
		"wall/seismic":          "The ground may shake here, and nobody has looked at how the panels are held who is licensed to. Write down who looked, by which licence, when and at what, for this very design. Nothing is hung before.",
		"wall/professional":     "{name} ({licence}) looked at it on {day}: {looked}. It is recorded, and opens no gate that a value of the fixing's maker, a stud or a lock has to open.",
		"wall/professional-old": "{name} ({licence}) looked at another design, revision {revision}, on {day}. Show this one.",
		"wall/overlap":          "Two groups of panels would hang over one another, by {wide} × {high}. Move one of them.",
		"wall/walkway":          "People walk along this wall. The panel stands out {out} and begins {bottom} above the floor: whoever feels the way with a stick meets it with the head. Between {low} and {high} that is much; ask which rule holds here.",
		"wall/safety-allowed":   "The panel covers or crowds something that keeps people safe ({kind} at {x} from the left corner), and somebody allows this place: {answer}. Keep it in writing with the job.",
		"record/weighed-other":  "It was weighed as another design: {kg}, when {before} was reckoned, and {now} is now. Weigh it again; until then what is reckoned counts.",
		"wall/fire-answer":      "Fire safety was answered: {answer}. Keep it in writing with the job.",
		"wall/way-in-open":      "Stairs or lift are not checked: measure every landing, turn and car for a packed panel of {wide} × {high} × {deep}.",
	}
}

// englishHolding is what the section Wall says of what holds a panel, of its mass and of
// its place.
func englishHolding() map[string]string {
	return map[string]string{
		"wall/add-group":        "Add a group of panels on this wall",
		"wall/add-wall":         "Add another wall",
		"wall/pad":              "Move the panel on the wall",
		"wall/help":             "Drag the panel, or use the arrow keys: {step} at a time, with Shift {fine}. It stops at the studs, in the middle and at the ears.",
		"wall/ears":             "ears",
		"wall/caption-care":     "Lightly hatched: with care.",
		"wall/caption-keep-out": "Densely hatched: no panel there.",
		"wall/said-heavy":       "The panel weighs {mass}: it is lifted on with a hoist or the like, not by hand alone. Say whether the place suits you; studs, cables and what the wall holds are checked before anything is hung.",
		"wall/said":             "The panel weighs {mass}, and {lift} {lift|person lifts|people lift} it on. Say whether the place suits you; studs, cables and what the wall holds are checked before anything is hung.",
		"wall/caution-client":   "Do not hang it by this drawing. Whoever hangs it looks for cables and pipes first, and nothing is hung before wall and fixings are checked.",
		"wall/weighing":         "Weighing",
		"wall/thing":            "{kind}: {x} from the left, {y} up",
		"wall/hung":             "On the day",
		"wall/mass-range":       "By the density of the wood, which differs by about a tenth from tree to tree (Wood Handbook, from memory), and by its moisture, the heaviest panel may weigh {low} to {high}. Its middle of mass lies {out} off the wall.",
		"wall/mass-weighed":     "It was weighed: {mass}, and everything below is counted for that.",
		"wall/niosh-under":      "By the lifting equation of NIOSH, which is for one person, the lift onto the cleat is within its limit of {limit}: hands {away} in front of the ankles, from {from} to {to} above the floor, a poor grip, now and then.",
		"wall/niosh-over":       "By the lifting equation of NIOSH, which is for one person, nobody should lift more than {limit} so, and the panel has {mass}: hands {away} in front of the ankles, from {from} to {to} above the floor, a poor grip, now and then. It says nothing of teams.",
		"wall/niosh-more":       "By the lifting equation of NIOSH, which is for one person, nobody should lift more than {limit} so, and the panel has {mass}: hands {away} in front of the ankles, from {from} to {to} above the floor, a poor grip, now and then. It says nothing of teams. Shared evenly that limit asks for {people} people: take so many, or a panel lifter.",
		"wall/niosh-outside":    "The lifting equation of NIOSH, which is for one person, has no value for this lift: the hands would end {to} above the floor, and it ends at {units|175 cm|69 in}. Take a panel lifter, or stand higher.",

		"buy/cleat-screws-of": "screws for the cleats, through the backer: wood screws No. {gauge}, {long:sold} long",
		"buy/apart":           "apart from these, {what}",
		"buy/wall-strip":      "board for the strip in the wall: {height} × {thickness}, {length} long, its upper edge at {bevel}",

		"spot/middle": "Middle of the wall",
		"spot/studs":  "Balanced on studs",
		"spot/ears":   "Middle at the ears",
		"spot/of":     "{name}: {spot}",

		"hold/heading":            "What holds it",
		"hold/unchecked":          "Fixings not checked",
		"hold/not-counted":        "Not checked: the studs or the wall behind, and what holds them; pipes and cables; anybody who pulls, leans or climbs; earthquakes; and the glue under the blocks, which holds nothing here. Local rules and the fixing's maker come first.",
		"hold/not-counted-stand":  "Not checked: the stand itself and how the panels are held on it; anybody who pushes, leans or climbs; a floor that is not level; earthquakes.",
		"hold/strips":             "Strips in the wall",
		"hold/strips-value":       "{count}, of which this one is used most",
		"hold/screws":             "Screws in the wall",
		"hold/screws-value":       "{count} wood screws No. {gauge}, {long:sold} long: {each} one above another in each stud, at {at} from the left corner",
		"hold/strip":              "Strip in the wall",
		"hold/strip-value":        "{thick} thick, {high} high, {long} long, its tip {tip} above the floor",
		"hold/bored":              "Bored in the strip",
		"hold/bored-value":        "{shank} through the strip, {thread} for the thread",
		"hold/used":               "Used",
		"hold/used-value":         "the busiest screw to {use}, the strip to {bend} of what it bends and {sag} of what it may sag, all with {factor} times the load",
		"hold/shows":              "Longer than the panel",
		"hold/shows-value":        "{out}: it shows, or the frame is notched for it",
		"hold/shims":              "Packed behind the strip",
		"hold/shims-value":        "{at} from the left corner: solid shims as high as the strip, fixed so that they cannot fall out. The screws are as long, and counted, as if the thickest were everywhere.",
		"hold/shim-at":            "{thick} at {along}",
		"hold/rated-shims":        "Packed behind the strip",
		"hold/rated-shims-value":  "{at} from the left corner: solid shims as high as the strip, fixed so that they cannot fall out. The fixings are longer by that, and their maker has to say whether the value holds across them.",
		"hold/rated":              "Fixings in the wall",
		"hold/rated-value":        "{count} a strip, by its maker's value for {what} ({source})",
		"hold/rated-values":       "One of them",
		"hold/rated-values-value": "{shear} sideways, {pull} out, as typed",
		"hold/rated-strip":        "Strip in the wall",
		"hold/rated-strip-value":  "{thick} thick, {high} high, {long} long, its tip {tip} above the floor",
		"hold/rated-used":         "Used",
		"hold/rated-used-value":   "to {use} with {factor} times the load, shear and pull added",
		"hold/half":               "Cleat on the panel",
		"hold/half-value":         "{count} wood screws No. {gauge}, {long:sold} long, in {n|row|rows} {rows}, each used to {use}",
		"hold/half-open":          "Cleat on the panel",
		"hold/half-open-value":    "too few places where its screws cannot show",
		"hold/lock":               "Lift lock",
		"hold/lock-value":         "{lock}",
		"hold/stand":              "Floor stand",
		"hold/stand-value":        "foot {base} deep; {side} its edge is {toe} from the middle of mass",
		"hold/tips":               "Falls",
		"hold/tips-value":         "{side} at {angle}, its middle of mass {centre} above the floor; 10° are the least",

		"hold/toe-needed":       "Least foot",
		"hold/toe-needed-value": "{toe} from the middle of mass to its edge on either side, for {angle}",

		"hold/section":         "The cleat in section",
		"hold/section-title":   "Panel and cleat cut from top to bottom, to scale, wall at the left",
		"hold/section-text":    "The strip on the wall and the cleat on the panel meet in a bevel of {bevel}. The tip of the strip is {below} below the upper edge of the panel; {room} of air above it are needed to hook it on. A spacer at the foot keeps the panel upright.",
		"hold/section-caption": "To scale, the wall at the left; the middle is left out.",
		"hold/section-rule":    "Both halves are ripped from one board at the same angle. The spacer at the foot is as thick as the cleat.",
		"hold/stack":           "Depth",
		"hold/stack-value":     "cleat {cleat}, backer {backer}, tallest block {block}: {stack}",
		"hold/frame":           "Frame",
		"hold/frame-value":     "{depth} deep, out of a board of {board}, which covers blocks up to {tallest}",
		"hold/bevel":           "Bevel",
		"hold/bevel-value":     "{bevel} from the level",
		"hold/tip":             "Tip of the strip",
		"hold/tip-value":       "{below} below the upper edge of the panel: {tip} above the floor",
		"hold/lift-room":       "Lift room",
		"hold/lift-room-value": "{need} needed above the panel, {free} there",
	}
}

// englishRear is what the rear map says.
func englishRear() map[string]string {
	return map[string]string{
		"rear/open":         "The back: where its screws go",
		"rear/title":        "The back of the panel, left and right changed, the top up",
		"rear/text":         "{count} rings mark the screws of the cleat; hatched cells have a block too short for them, filled cells none.",
		"rear/heading":      "REAR VIEW",
		"rear/panels":       "Back {letter}: {n|panel|panels} {numbers} of {of}",
		"rear/one":          "Back of the panel",
		"rear/marks":        "Rings: wood screws No. {gauge}, {long:sold} long, through cleat and backer. Open cells hide their tips (blocks of {least} and more), hatched ones do not, filled ones are bare backer. Columns are numbered as in front, so they run backwards here.",
		"rear/turn":         "Turn the panel over its upright edge, like a page: the triangle stays at the top. Then look at its edge before you drill:",
		"rear/corner-left":  "At the top left of the back is column {column} of the front: from the top {heights}.",
		"rear/corner-right": "At the top right of the back is column {column} of the front: from the top {heights}.",
		"rear/row":          "Row {row}, {down} below the top of the field, from the left edge of the back",
	}
}

// englishWayIn is what is said of the way in, step by step.
func englishWayIn() map[string]string {
	return map[string]string{
		"way/open":         "The way in",
		"way/packed":       "Packed, the largest panel is {wide} × {high} × {deep}.",
		"way/passes":       "passes",
		"way/passes-bare":  "passes without frame and packing only",
		"way/stuck":        "does not pass",
		"way/not-measured": "not measured",
		"way/longest":      "(longest {long})",
		"way/open-points":  "Counted with exact turns; a door counts as a passage as wide. Not checked: handrails, ceilings over stairs, the edge of a lift's door, and what stands about. Try it with a batten of the same length.",
		"way-step/door":    "From the corridor through the door",
		"way-step/stairs":  "Landing of the stairs",
		"way-step/lift":    "Lift",
		"way-step/vehicle": "Vehicle",

		"way-size/door":    "door {door} × {high}, corridor {corridor}",
		"way-size/stairs":  "flight {flight}, landing {landing}",
		"way-size/lift":    "door {door}, car {wide} × {deep}, {high} high",
		"way-size/vehicle": "loading floor {long}",
	}
}

// englishDay is the day of hanging, step by step, and what is asked about a public room.
func englishDay() map[string]string {
	return map[string]string{
		"day/open":        "The day of hanging",
		"day/weigh":       "Weigh the panel and type what it weighs: screws, strip and people are counted for {mass} now.",
		"day/weigh-stand": "Weigh the panel and type what it weighs: people are counted for {mass} now, and a stand is built for it.",
		"day/not-yet":     "Stop here: a Stop about what holds it, its lock, its stand, its lift or the room above it is not cleared yet. Nothing is hung before.",
		"day/unchecked":   "Stop here: nothing is known that holds it. Nothing is hung before.",
		"day/trace":       "Trace cables and pipes with a detector over the whole height of the strip ({at}). Switch the circuit off where you cannot be sure.",
		"day/cable":       "{kind} at {at}",
		"day/no-cable":    "no socket or switch is noted",
		"day/studs":       "Find the studs with a magnet or a fine drill and mark their middles: {at} from the left corner are expected. Type what you find, if it differs.",
		"day/level":       "Draw a level line {tip} above the floor, from {from} to {to}: the tip of the strip.",
		"day/shims":       "Hold the strip to the line and look along it: pack it at every fixing, with up to {most} of solid shims, until it is straight. Pack the spacer at the foot alike, so that the panel hangs plumb.",
		"day/bore":        "Bore the {count} holes of the list below and screw the strip on: its high edge away from the wall, its slope falling towards the wall.",
		"day/strip-lead":  "The strip on the wall must catch:",
		"day/strip":       "its high edge stands away from the wall, and its slope falls towards the wall. The panel's half hangs behind it. The other way round nothing holds.",
		"day/strip-title": "The strip on the wall and the panel's half above it, in section, the wall at the left",
		"day/proof":       "Try each strip: hang {mass} of weights on it, spread over its length and close to the floor, nobody under it, never a person. That is twice what it will carry (common practice, no source). Wait ten minutes, look for gaps, cracks and sinking, and take them off.",
		"day/lift":        "{people} {people|person lifts|people lift} the panel on, one of them says when.",
		"day/lift-one":    "One person lifts the panel on; a second one looks behind it and says when.",
		"day/lift-by":     "{names} lift the panel on, {people} at least; one of them says when.",
		"day/lift-named":  "{lead} leads the lift, {method}.",
		"day/lower-first": "The lower panels first.",
		"day/hook":        "Lift it {room} above its place, put it against the wall and let it down onto the strip along its whole length. Look behind it from both sides.",
		"day/lock":        "Fasten the lift lock ({lock}), and try to lift the panel off.",
		"day/record":      "Write down who hung it, when, what it weighed and what was found. Look at joints, lock and level after three months and after a year.",
		"day/stand":       "Set the stand up where it will be, on a level floor, its toe towards the room, and try it with a push.",
		"day/lift-stand":  "{people} {people|person lifts|people lift} each panel on, the lowest first.",
		"day/holes":       "Holes in the wall",
		"day/along":       "From the left corner, {unit}",
		"day/up":          "Above the floor, {unit}",

		"ask/heading":        "To be asked in a public room",
		"photos/open":        "Pictures of the wall",
		"photos/lead":        "They stay with this job in this browser, smaller and without the place where they were taken. No file, no link and no paper holds them; save one to hand it on.",
		"photos/lead-letter": "All of these go along with your message, six at most, smaller and without the place where they were taken. They stay with this job in this browser until then, and in no link.",
		"photos/wall":        "The wall",
		"photos/studs":       "Stud marks",
		"photos/damage":      "Damage that is there",
		"photos/way":         "The way in",
		"photos/save":        "Save",
		"photos/drop":        "Take out",

		"message/photo-dropped":  "The picture was taken out of this browser.",
		"message/photo-unread":   "This is no picture that the browser can read.",
		"message/photos-full":    "A job holds 40 pictures. Save some, and take them out.",
		"message/photo-not-kept": "The browser did not keep the picture.",

		"ask/private": "To be asked about the building",
		"ask/lead":    "Ask whoever answers for the building, write down who said what and when, and keep to it. Nothing here is a ruling. The answers stay with the record of the job in this browser.",

		"label/record.asked.fire":         "Which fire class must the surface have, and which proof is wanted? A deep field of blocks is not what classes are tested on.",
		"label/record.asked.walkway":      "How far may it stand out where people walk, also those who feel the way with a stick?",
		"label/record.asked.devices":      "Who allows this very place where it crowds a detector, sprinkler, call point, sign, door or way out?",
		"label/record.asked.reach":        "May it hang within reach, and who answers when somebody pulls at it?",
		"label/record.asked.protected":    "Is the wall protected as a monument, what may touch it, and who permits it?",
		"label/record.asked.drill":        "Who may drill here, and who keeps the plans of pipes and cables?",
		"label/record.asked.professional": "Which professional has looked at what holds the panels, by name? It is recorded, and opens nothing that a rated value, a stud or a lock has to open.",
		"label/record.asked.licence":      "Their licence, or their firm",
		"label/record.asked.lookedOn":     "They looked on",
		"label/record.asked.lookedAt":     "What they looked at, and what they said",
		"label/record.asked.lookedFor":    "Revision that they were shown",
		"label/record.asked.other":        "Other answers, with names and dates",
		"label/record.weighed.kg":         "Mass of the heaviest panel as weighed",
		"label/record.hung.people":        "Who lift, by name",
		"label/record.hung.day":           "Hung on",
		"label/record.hung.by":            "Who answers for it",
		"label/record.hung.proofKg":       "The strip was tried with",
		"label/record.hung.found":         "What was found at the trial and afterwards",
		"zero/record.weighed.kg":          "0: not weighed; pounds with lb behind them",
		"zero/record.hung.proofKg":        "0: not tried",
		"zero/record.hung.people":         "One after another, with semicolons",
		"zero-means/not-known":            "not known",
		"zero-means/not-tried":            "not tried",
	}
}
