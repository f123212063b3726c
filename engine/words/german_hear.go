package words

// germanHearing is what the section Sound says beside the sentences about sound
// themselves.
func germanHearing() map[string]string {
	return map[string]string{
		"hear/listening":      "Der Klang wird berechnet…",
		"hear/deaf":           "Der Klang dieses Entwurfs ließ sich hier nicht berechnen. Alles andere geht weiter wie zuvor.",
		"hear/more":           "Was das Paneel mit dem Schall macht",
		"hear/how":            "Zeigen, wie",
		"hear/how-group":      "Zeigen, wie: Paneel {n}",
		"hear/room":           "Der Raum",
		"hear/group":          "Paneel {n}",
		"hear/hopes":          "Was Sie sich erhoffen",
		"hear/add-surface":    "Teppich, Vorhänge, weiche Platten hinzufügen …",
		"hear/not-noted":      "Was darin weich ist, wurde nicht notiert.",
		"hear/surfaces":       "Boden, Decke und Wände",
		"hear/surfaces-lead":  "Wo nichts notiert ist: ein Holzboden, eine verputzte Decke, Wände wie diese. Was weich ist, zählt vor den Klötzen.",
		"hear/remove-surface": "Weglassen",
		"hear/for-instance":   "Zum Beispiel: {choices}.",
		"hear/questions":      "Fünf Fragen zum Raum",

		"hear/because-too-near":      "Das nächste Ohr ist zu nah an den Klötzen.",
		"hear/because-small-room":    "Der Raum ist klein.",
		"hear/because-no-bass":       "Für den Bass wird etwas erhofft, und Klötze tun dafür nichts.",
		"hear/because-no-insulation": "Erhofft wird Ruhe vor dem, was durch die Wand dringt, und Klötze tun dafür nichts.",

		"hear/share-caption": "Wie viel Schall die Spiegelrichtung verlässt, gerade von vorn, in alle Richtungen. Gestrichelte Umrisse: wie hoch es sein kann, da wirkliche Klötze tiefer einsetzen. Ein flaches Brett gleicher Größe hat keine Balken.",
		"hear/share-hint":    "Unter {hz} sind die Balken nur ein Anhaltspunkt.",

		"hear/polars-across":     "Von links nach rechts: wohin die Reflexion geht, in Oktaven, für Schall gerade von vorn, aus 30° und aus 60°. Dick: das Paneel, dünn, wo es nur ein Anhaltspunkt ist; gestrichelt: ein flaches Brett. Bei 60° ist es nur zum Ansehen, behauptet wird nichts.",
		"hear/polars-down":       "Dasselbe von oben nach unten.",
		"hear/left-to-right":     "von links nach rechts",
		"hear/top-to-bottom":     "von oben nach unten",
		"hear/diffusion-caption": "Wie gleichmäßig verteilt wird {across}, {source}. Gestrichelt: nur ein Anhaltspunkt; schraffiert: der bekannte mittlere Fehler; dünn: ein flaches Brett gleicher Größe.",
		"hear/map-caption":       "Bei {hz}, gerade von vorn: gerade zurück ist in der Mitte, der Wand entlang am Rand. Je voller der Ton, desto lauter; jede Stufe ist 6 dB.",

		"hear/why-method": "Wie: Schall in großer Entfernung, summiert über die Köpfe aller Klötze und die Trägerplatte (Kirchhoff, Fraunhofer), sieben Linien in jeder Terz nach IEC 61260-1, die Schallgeschwindigkeit nach ISO 9613-1 für die Mitte der Raumtemperaturen. Gleichmäßigkeit ist der gerichtete Diffusionskoeffizient nach der Formel der ISO 17497-2; was die Spiegelrichtung verlässt, ist die Korrelationsstreuung nach Mommertz. Die Hälfte und das meiste sind 50 % und 80 % der Energie eines Bandes; ein Quadratmeter Klötze, 1,5 m bis zum Ohr und Räume von 25 und 40 m³ sind Grenzen aus gängiger Praxis, ohne Quelle.",
		"hear/why-error":  "Wie weit es danebenliegt: Gegen acht Schnitte durch Klötze, mit Randelementen gelöst, lag die Gleichmäßigkeit, gerade von vorn, im Mittel um {mean} und schlimmstenfalls um {worst} daneben, wo die Zahlen mehr als ein Anhaltspunkt sind, und um {nearMean} und {nearWorst} um die Frequenz, deren Viertelwelle so tief ist wie die Klötze. Unterschiede unter {least} besagen nichts. Felder, die in beiden Richtungen wechseln, und Messungen wurden nicht verglichen.",
		"hear/why-room":   "Der Raum: Nachhall nach Sabine und Eyring mit Koeffizienten aus üblichen Lehrbuchtafeln; übliche Zeiten wie in DIN 18041 und ITU-R BS.1116 (alles aus dem Gedächtnis). Wo nichts notiert ist, sind Holzboden, verputzte Decke und Wände wie diese eine Annahme, ebenso die Entfernung der Quelle. Anderthalbmal so lang wie üblich heißt zu lang, aus gängiger Praxis, ohne Quelle.",

		"label/room.surfaces":        "Was Boden, Decke und Wände bedeckt",
		"label/room.surfaces.place":  "Wo",
		"label/room.surfaces.lining": "Was dort ist",
		"label/room.surfaces.share":  "Auf wie viel davon",

		"choice/floor":            "Boden",
		"choice/ceiling":          "Decke",
		"choice/walls":            "Wände",
		"choice/carpet":           "Teppich",
		"choice/heavy curtain":    "schwerer Vorhang, in Falten",
		"choice/soft panel 50 mm": "weiche Platten, 50 mm",
		"choice/soft seats":       "weiche Sitze",
		"choice/wooden floor":     "Holzboden",
		"choice/plaster":          "Putz auf Mauerwerk",
		"choice/board on studs":   "Platte auf Ständern",
		"choice/glass":            "Fensterglas",
	}
}
