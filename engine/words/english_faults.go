package words

// englishFaults says what is wrong with a document or with what was typed.
// {value} is what was found.
func englishFaults() map[string]string {
	return map[string]string{
		"fault/allowed":       "{fault} Allowed: {allowed}.",
		"fault/syntax":        "The file cannot be read: {value}.",
		"fault/utf-8":         "The file is not valid UTF-8 text {value}.",
		"fault/too-large":     "That is too large: {value}.",
		"fault/too-deep":      "The file has too many parts within parts {value}.",
		"fault/format":        "This is not a design file: found {value}.",
		"fault/newer-version": "This was written by a newer program: version {value}.",
		"fault/older-version": "There never was a version {value}.",
		"fault/unknown-field": "A design has no field of this name.",
		"fault/twice":         "This is given twice.",
		"fault/missing":       "This is missing.",
		"fault/type":          "{value} is of the wrong kind.",
		"fault/length":        "{value} is not a length. Write it like 38 mm, 1.2 m, 1 1/2 in or 6' 2\".",
		"fault/number":        "{value} is not a number of this kind.",
		"fault/amount":        "{value} is not an amount of money. Write it like 42 or 0.55.",
		"fault/date":          "{value} is not a day of the calendar.",
		"fault/code":          "{value} is not a code of ours.",
		"fault/range":         "{value} is out of range.",
		"fault/choice":        "{value} is not one of the choices.",
		"fault/empty":         "This must be filled in.",
		"fault/long":          "{value} is too long.",
		"fault/control":       "{value} has characters that do not print.",
		"fault/count":         "There are {value}.",
		"fault/rising":        "These must rise, got {value}.",
		"fault/prime":         "{value} is not a prime number.",
		"fault/fold":          "{value} cannot be folded to a field.",
		"fault/panel-order":   "{value} does not fit the panels.",
		"fault/drawn":         "{value} does not fit the field.",
		"fault/cells":         "That makes too many blocks: {value}.",
		"fault/outside":       "That reaches beyond the wall, with {value}.",
		"fault/not-assumable": "{value} is not a value that can be assumed.",
		"fault/not-unique":    "{value} is in the list twice.",
		"fault/sum":           "The parts add up to {value}.",
		"fault/cannot-edit":   "This cannot be edited.",
		"fault/link":          "The link is damaged or was cut off.",
		"fault/more":          "And {value} more.",
	}
}
