package words

// englishHearing is what the section Sound says beside the sentences about sound
// themselves.
func englishHearing() map[string]string {
	return map[string]string{
		"hear/listening":      "Listening…",
		"hear/deaf":           "The sound of this design could not be worked out here. Everything else goes on as before.",
		"hear/more":           "What it does to sound",
		"hear/how":            "Show how",
		"hear/how-group":      "Show how, panel {n}",
		"hear/room":           "The room",
		"hear/group":          "Panel {n}",
		"hear/hopes":          "What you hope for",
		"hear/add-surface":    "Add carpet, curtains, soft panels …",
		"hear/not-noted":      "What is soft in it has not been noted.",
		"hear/surfaces":       "Floor, ceiling and walls",
		"hear/surfaces-lead":  "Where nothing is noted: a wooden floor, a plastered ceiling, walls like this one. What is soft counts before blocks do.",
		"hear/remove-surface": "Leave it out",
		"hear/for-instance":   "For instance: {choices}.",
		"hear/questions":      "Five questions about the room",

		"hear/because-too-near":      "The nearest ear is too near the blocks.",
		"hear/because-small-room":    "The room is small.",
		"hear/because-no-bass":       "Bass is hoped for, and blocks do nothing for it.",
		"hear/because-no-insulation": "Quiet through the wall is hoped for, and blocks do nothing for it.",

		"hear/share-caption": "How much sound leaves the mirror direction, straight on, in all directions. Broken outlines: how high it can be, since real blocks begin lower. A flat board of the same size has no bars.",
		"hear/share-hint":    "Below {hz} the bars are indicative, a hint only.",

		"hear/polars-across":     "From left to right: where the reflection goes, in octaves, for sound straight on, at 30° and at 60°. Thick: the panel, thin where it is indicative, a hint only; broken: a flat board. At 60° it is to look at only, nothing is claimed.",
		"hear/polars-down":       "The same from top to bottom.",
		"hear/left-to-right":     "from left to right",
		"hear/top-to-bottom":     "from top to bottom",
		"hear/diffusion-caption": "How evenly it is spread {across}, {source}. Broken: indicative; hatched: the known mean error; thin: a flat board of the same size.",
		"hear/map-caption":       "At {hz}, straight on: straight back is in the middle, along the wall at the rim. The fuller the tone, the louder; each is 6 dB.",

		"hear/why-method": "How: sound far away, summed over the tops of all blocks and the backer (Kirchhoff, Fraunhofer), seven lines in each third octave of IEC 61260-1, the speed of sound by ISO 9613-1 for the middle of the room's temperatures. Evenness is the directional diffusion coefficient by the formula of ISO 17497-2, what leaves the mirror direction the correlation scattering after Mommertz. Half and most are 50 % and 80 % of a band's energy; one square metre of blocks, 1.5 m to the ear and rooms of 25 and 40 m³ are limits of common practice, no source.",
		"hear/why-error":  "How far off: against eight sections of blocks solved with boundary elements the evenness, straight on, was off by {mean} in the mean and {worst} at worst where the figures count as more than a hint, and by {nearMean} and {nearWorst} round the frequency whose quarter wave is as deep as the blocks. Differences below {least} say nothing. Fields that vary both ways, and measurements, were not compared.",
		"hear/why-room":   "The room: reverberation by Sabine and Eyring with coefficients of common textbook tables; usual times as in DIN 18041 and ITU-R BS.1116 (all from memory). Where nothing is noted, floor of wood, ceiling of plaster and walls like this one are a guess, and so is the distance of the source. Half as long again as usual is called too long, by common practice, no source.",

		"label/room.surfaces":        "What covers floor, ceiling and walls",
		"label/room.surfaces.place":  "Where",
		"label/room.surfaces.lining": "What is there",
		"label/room.surfaces.share":  "On how much of it",

		"choice/floor":            "floor",
		"choice/ceiling":          "ceiling",
		"choice/walls":            "walls",
		"choice/carpet":           "carpet",
		"choice/heavy curtain":    "heavy curtain, in folds",
		"choice/soft panel 50 mm": "soft panels, 50 mm",
		"choice/soft seats":       "soft seats",
		"choice/wooden floor":     "wooden floor",
		"choice/plaster":          "plaster on masonry",
		"choice/board on studs":   "board on studs",
		"choice/glass":            "window glass",
	}
}
