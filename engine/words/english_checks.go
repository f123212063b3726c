package words

// englishChecks says the watch-outs. Each stands alone: what is wrong, with the
// numbers, and what to do.
func englishChecks() map[string]string {
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
	}
}
