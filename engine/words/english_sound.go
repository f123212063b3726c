package words

// englishSound says what a panel does to sound. Figures are calculated to
// compare designs and are rounded to what they are worth.
func englishSound() map[string]string {
	return map[string]string{
		"sound/client-fits":    "From somewhere between {low} and {high} on this panel sends most of what hits it in other directions, so the single hard echo from this wall becomes a soft spread. It does not dull the room, and it does nothing for bass or for noise through the wall.",
		"sound/client-looks":   "We suggest you choose this for its looks: it spreads little but the highest treble, and does nothing for bass or for noise through the wall.",
		"sound/client-near":    "Where you sit, {ear} from the blocks, you are too near for a spread to form: it wants {near} or more. A soft panel there, and blocks further away.",
		"sound/client-nothing": "We suggest you choose this for its looks: to the ear it answers like a flat board.",

		"sound/half":          "Half of the energy leaves the mirror direction from somewhere between {low} and {high} on; below, the wall behaves as before.",
		"sound/most":          "Most of it does from somewhere between {low} and {high} on.",
		"sound/half-and-most": "Half of the energy leaves the mirror direction from somewhere between {low} and {high} on, and most of it from the same band; below, the wall behaves as before.",
		"sound/never-half":    "Nowhere up to {to} does half of the energy leave the mirror direction; {share} is the most.",
		"sound/nothing":       "Up to {to} this panel answers like a flat board: {share} of the energy at most leaves the mirror direction. Lively to the eye, flat to the ear.",
		"sound/block":         "One block is half a wave at about {hz}; above, it still scatters, but less predictably.",
		"sound/clump":         "One clump is half a wave at about {hz}.",
		"sound/flat-board":    "All heights are whole steps of {step}: near {hz} and its multiples the panel acts like a flat board.",
		"sound/dip":           "Round {hz} it falls back: less than half of the energy leaves the mirror direction there.",
		"sound/repeats":       "The pattern comes again every {repeat}, {n} times side by side: it steers sound into a few directions instead of many.",
		"sound/alike":         "{share} of neighbouring blocks are of one height. Together they act as wider blocks: the spread begins lower, and beams appear higher up.",
		"sound/sit":           "Sit no nearer than {near}: closer, you hear single blocks rather than a spread.",
		"sound/not":           "It does not soak up bass, does not keep sound in or out, and hardly changes how long the room rings.",
		"sound/calculated":    "Calculated, to compare designs: a far-field sum that leaves out what neighbouring blocks do to one another. Real blocks begin a third to two thirds of an octave lower. Only a laboratory can rate a panel.",
		"sound/no-difference": "The two differ by less than the calculation can tell.",

		"sound/too-near":        "The nearest listener sits {ear} from the blocks. Closer than {near} you hear single blocks rather than a spread. Use soft material here, or move the seat or the panel.",
		"sound/no-bass":         "A block panel does not soak up bass. Say so now.",
		"sound/no-insulation":   "A block panel does not keep sound in or out. Say so now.",
		"sound/small-room":      "In a room of {length} × {width} × {height} the first money is better spent on absorbing panels. Add blocks afterwards.",
		"sound/spreads-nothing": "Up to {to} this pattern answers like a flat board: {share} of the energy at most leaves the mirror direction. Do not sell it as acoustic treatment.",
		"sound/small-range":     "The heights differ by {range}; below {least} only a little sparkle is controlled. A handsome wall: do not sell it as acoustic treatment.",
		"sound/treble-only":     "Most of the energy is spread only from somewhere between {low} and {high} on. A handsome wall with a little sparkle control: do not sell it as acoustic treatment.",
		"sound/never-most":      "Nowhere in the range of hearing that matters does most of the energy leave the mirror direction. A handsome wall: do not sell it as acoustic treatment.",
		"sound/flat-board-high": "All heights are whole steps of {step}. Near {hz} the panel acts as a flat board. A smaller step or more heights would move that up.",
		"sound/flat-board-low":  "All heights are whole steps of {step}. Near {hz}, below the {block} where a block is half a wave, the panel acts as a flat board. Use a smaller step or more heights.",

		"sound/fit-good":       "Good fit: blocks are the right thing for this wall.",
		"sound/fit-soft-first": "Soft surfaces first: then blocks on what is left.",
		"sound/fit-looks":      "For its looks: enjoy it, and do not expect it to change what you hear.",
		"sound/fit-wrong-tool": "Wrong tool: what is hoped for here is nothing that blocks can do.",
		"sound/little-spread":  "This field spreads little that matters.",
		"sound/smallish-room":  "In a room of {length} × {width} × {height} blocks want soft surfaces beside them: corners and first reflections first.",
		"sound/small-area":     "{area} of blocks is decoration with some benefit; two to four square metres are heard.",
		"sound/public":         "The public comes in: ask about fire, and about hands and heads.",

		"sound/ring":         "Empty, with hard walls and a wooden floor, such a room rings for about {sabine} s by Sabine, {eyring} s by Eyring.",
		"sound/soft-missing": "About {wanted} s is usual for its use. Soft panels of 50 mm on about {share} of its walls would bring it there; furniture, books and carpets count too. Blocks do not.",
		"sound/soft-much":    "About {wanted} s is usual for its use. Soft panels on all of its walls would not bring it there; furniture, books, carpets and the ceiling have to help. Blocks do not.",
		"sound/reflection":   "At the seat, {ear} from the wall, its reflection comes {delay} ms after the sound that passes by, {level} dB below it for a source {source} further out. Blocks lower that in the mirror direction; they do not delete it.",
		"sound/flutter":      "This wall and the one opposite stand {distance} apart: if both are hard, a clap comes back {n} times a second.",
		"sound/area":         "{area} of blocks on a wall of {wall}.",
		"sound/out-of-scope": "Ceilings, wet rooms and outdoors are beyond what is reckoned here.",

		"lining/plaster":          "plaster on masonry",
		"lining/brick":            "bare brick or stone",
		"lining/concrete":         "concrete or painted block",
		"lining/board on studs":   "board on studs",
		"lining/glass":            "window glass",
		"lining/wooden floor":     "wooden floor",
		"lining/carpet":           "carpet",
		"lining/heavy curtain":    "heavy curtain",
		"lining/soft panel 50 mm": "soft panel, 50 mm",
		"lining/soft seats":       "soft seats",
		"lining/blocks":           "block panel",
	}
}
