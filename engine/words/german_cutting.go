package words

import "maps"

// germanCutting is what is said of stock, cuts, sheets and trimming.
func germanCutting() map[string]string {
	all := germanStockFields()
	maps.Copy(all, germanCuts())
	return all
}

// germanStockFields names the fields of how wood and sheets are bought and cut.
func germanStockFields() map[string]string {
	return map[string]string{
		"label/bench.boardLength":        "Länge der Bretter",
		"label/bench.stock":              "Anderes Holz",
		"label/bench.stock.wood":         "Holz",
		"label/bench.stock.width":        "Breite",
		"label/bench.stock.thickness":    "Dicke",
		"label/bench.stock.length":       "Länge",
		"label/bench.stock.count":        "Wie viele",
		"label/bench.stock.owned":        "Ist schon da",
		"label/bench.longerFor":          "Längere Suche für",
		"label/bench.sheets":             "Platten, die da sind",
		"label/bench.sheets.sheet":       "Platte",
		"label/bench.sheets.thickness":   "Dicke",
		"label/bench.sheets.width":       "Quer zur Faser",
		"label/bench.sheets.length":      "Längs der Faser",
		"label/bench.sheets.count":       "Wie viele",
		"label/bench.handling":           "Bretter oder Handgriffe sparen",
		"label/bench.backerOversize":     "Trägerplatten größer zugeschnitten um",
		"label/bench.backerGrain":        "Deckfurnier der Trägerplatten läuft",
		"label/bench.trim":               "Nach dem Leimen besäumt",
		"label/bench.sawDepth":           "Schnitthöhe Ihrer Säge",
		"label/walls.groups.finish.when": "Oberfläche des Feldes",

		"zero/bench.boardLength": "0: nach laufendem Meter gekauft, mit 15 % für Gehrungen und Fehler",
		"zero/bench.stock.count": "0: so viele wie nötig",

		"zero-means/by-the-metre": "nach laufendem Meter",

		"choice/what costs less":             "was weniger kostet",
		"choice/fewest boards":               "möglichst wenige Bretter",
		"choice/fewest visits":               "möglichst wenige Handgriffe",
		"choice/either way":                  "in beliebiger Richtung",
		"choice/across":                      "quer über das Paneel",
		"choice/up":                          "das Paneel hinauf",
		"choice/backer only":                 "nur die Trägerplatte",
		"choice/through the blocks":          "durch die Klötze",
		"choice/after gluing":                "nach dem Leimen",
		"choice/before gluing, bases masked": "vor dem Leimen, Fußflächen abgeklebt",
		"choice/before gluing":               "vor dem Leimen",
	}
}

// germanCuts says how boards and sheets are cut.
func germanCuts() map[string]string {
	return map[string]string{
		"buy/there":     "{n} aus eigenem Bestand",
		"buy/board-of":  "{board}, {length:sold} lang",
		"buy/strips-of": "trockene Kiefer oder Sperrholz, {width} × {thickness:sold}, {length:sold} lang",

		"bench/boards":    "Bretter, Trägerplatten und Besäumen",
		"bench/add-stock": "Anderes Holz oder vorhandenes Holz hinzufügen",
		"stock/yard":      "Anderes beim Händler: {wood}",
		"stock/there":     "Vorhanden: {wood}",
		"bench/add-sheet": "Vorhandene Platte oder Plattenrest hinzufügen",
		"stock/sheet":     "Vorhanden: {sheet}, {thickness}",

		"cuts/lot":           "{wood}, {size} im Quadrat",
		"cuts/lead":          "{n} {n|Kantel wird|Kanteln werden} geschnitten. {bought} {bought|wird|werden} gekauft, mit dem, was Äste und Risse kosten können.",
		"cuts/own":           "{n} {n|ist|sind} schon da.",
		"cuts/used":          "{share} der Länge aller Kanteln kommen in Paneele.",
		"cuts/proven-sticks": "Kein Plan kommt mit weniger als {n} {n|Kantel|Kanteln} aus.",
		"cuts/proven-cost":   "Kein Plan mit fehlerfreien Kanteln kostet weniger.",
		"cuts/gap":           "Der bestmögliche Plan kostet höchstens {share} weniger.",
		"cuts/longer":        "Länger suchen",
		"cuts/longer-why":    "Eine längere Suche findet vielleicht einen Plan mit weniger Holz oder weniger Rückgriffen, oder beweist, dass es keinen gibt. Sie dauert ein bis zwei Sekunden.",
		"cuts/looked-best":   "Länger gesucht und bewiesen: Kein Plan kostet weniger Holz, und keiner mit diesen Kanteln hat weniger Rückgriffe. Das gilt, bis sich Klötze oder Kanteln ändern.",
		"cuts/looked-visits": "Länger gesucht: Kein Plan kostet weniger Holz, und mit diesen Kanteln hat keiner mehr als {n} {n|Rückgriff|Rückgriffe} weniger. Dieser Plan gilt, bis sich Klötze oder Kanteln ändern.",
		"cuts/looked-gap":    "Länger gesucht: Der bestmögliche Plan kostet höchstens {share} weniger Holz oder hat mit diesen Kanteln {n} {n|Rückgriff|Rückgriffe} weniger. Dieser Plan gilt, bis sich Klötze oder Kanteln ändern.",
		"cuts/tail":          "Jede Kantel behält {tail} zum Festhalten, abzüglich dessen, was der letzte Sägeschnitt davon nimmt.",
		"cuts/group":         "Gruppe",
		"cuts/sticks":        "Kanteln",
		"cuts/length":        "Länge",
		"cuts/each":          "Aus jeder Kantel",
		"cuts/rest":          "Rest",
		"cuts/pieces":        "{n} × {height}",
		"cuts/stop":          "Anschlag auf",
		"cuts/take":          "Klötze aus jeder Kantel",
		"cuts/from":          "{group} {n}",
		"cuts/own-stick":     "{length}, vorhanden",
		"cuts/letter":        "{letter}",
		"cuts/order":         "Stellen Sie den Anschlag einmal für jede Höhe, die längste zuerst, und nehmen Sie so viele Klötze aus jeder Kantel der genannten Gruppen. Eine Gruppe mit weiteren Höhen wird beiseitegelegt und wieder geholt.",

		"cuts/handling":      "Bretter gegen Handgriffe: {stick}",
		"cuts/bought":        "Zu kaufen",
		"cuts/visits":        "Rückgriffe",
		"cuts/time":          "Handgriffe",
		"cuts/cost":          "Holz und Zeit",
		"cuts/minutes":       "{n} min",
		"cuts/chosen":        "gewählt",
		"cuts/visit":         "Ein Rückgriff ist eine Kantel, die bei einer Höhe beiseitegelegt und für eine andere wieder geholt wird.",
		"cuts/visit-time":    "Gerechnet wird mit {s} s, einer erfundenen Zahl, bis Ihre Vorgabezeiten eine Zeile haben, die nach „stop visit“ gezählt wird.",
		"cuts/visit-home":    "Gerechnet wird mit {s} s, einer erfundenen Zahl.",
		"cuts/chosen-wish":   "Gewählt, wie Sie es wollten: {wish}.",
		"cuts/chosen-fewest": "Gewählt: möglichst wenige Bretter, da Zeit hier keinen Preis hat.",
		"cuts/chosen-cost":   "Gewählt: was weniger kostet, bei {rate} je Werkstattstunde.",

		"cuts/sheets":       "Zuschnitt der Trägerplatten",
		"cuts/board":        "{sheet}, {thickness:sold}",
		"cuts/backer":       "{width} × {height}",
		"cuts/sheet-title":  "Eine Platte, aus der {n} {n|Trägerplatte|Trägerplatten} zu schneiden {n|ist|sind}",
		"cuts/sheet-alike":  "{n} {n|Platte|Platten} wie diese; die Faser läuft von links nach rechts.",
		"cuts/sheet-own":    "{n} aus eigenem Bestand, {width} × {length}; die Faser läuft von links nach rechts. Hobeln Sie zuerst zwei Kanten: Keine ist eine Werkskante.",
		"cuts/rests":        "Reste, die das Aufheben lohnen (gestrichelt), quer und längs der Faser: {rests}.",
		"cuts/rest-of":      "{n} von {width} × {length}",
		"cuts/sheet-proven": "Kein Plan kommt mit weniger als {n} {n|Platte|Platten} aus.",
		"cuts/sheet-bound":  "{n} {n|Platte|Platten}; kein Plan kommt mit weniger als {bound} aus.",
		"cuts/sheet-joined": "Eine der Trägerplatten ist größer als eine Platte: Sie muss gestoßen oder das Paneel geteilt werden.",
		"cuts/sheet-edges":  "Jeder Schnitt geht ganz durch. Die dicken Kanten sind Werkskanten: Eine Trägerplatte, die an beide stößt, beginnt dort ihre Reihen; für die anderen hobeln Sie zuerst zwei Kanten.",

		"trim/heading":  "Abbinden und besäumen",
		"trim/set":      "Das geleimte Feld liegt in dieser Werkstatt {h} h, bevor es aufgestellt und besäumt wird. Die Reihen beginnen oben links, wo die Trägerplatte gerade ist.",
		"trim/set-from": "Das geleimte Feld liegt in dieser Werkstatt {h} h, bevor es aufgestellt und besäumt wird. Die Reihen beginnen an der {edge} und links, wo die Trägerplatte gerade ist.",
		"trim/factory":  "bleibt, wie sie ist",
		"trim/nothing":  "es kommt nichts weg",
		"trim/off":      "{off} kommen weg",
		"trim/depth":    "durch {depth}",
		"trim/too-deep": "durch {depth}: tiefer, als Ihre Säge schneidet",
		"trim/bare":     "(keine Klötze an dieser Kante)",

		"finish/heading":     "Oberfläche",
		"finish/after":       "Feld und Rahmen werden behandelt, sobald der Leim abgebunden hat, {h} h nach der letzten Reihe; der Rahmen kann inzwischen behandelt werden, bevor er angesetzt wird.",
		"finish/first":       "Einige Klötze werden vor dem Leimen behandelt: Proben Sie Ihren Leim an einem behandelten Reststück, und halten Sie jede Fußfläche frei.",
		"finish/coat":        "Anstrich",
		"finish/tops":        "Klotzköpfe",
		"finish/long":        "Seiten, freie Trägerplatte",
		"finish/on-frame":    "Rahmen",
		"finish/field":       "{finish} auf das Feld, {n} von {of}",
		"finish/frame":       "{finish} auf den Rahmen, {n} von {of}",
		"finish/next":        "nächster Anstrich nach {span}",
		"finish/dry":         "durchgetrocknet nach {span}",
		"finish/by-label":    "Wartezeit nach Etikett",
		"finish/hours":       "{low} bis {high} h",
		"finish/days":        "{low} bis {high} Tagen",
		"finish/hours-about": "{high} h",
		"finish/days-about":  "{high} Tagen",
		"finish/habit":       "Mengen und Wartezeiten sind Erfahrungswerte aus dem Handwerk: Das Etikett auf der Dose geht vor. Nichts wird in Folie gewickelt, bevor es halb trocken ist.",

		"bench/split":           "Ein Paneel wiegt {mass}, und {why}. Als {across} × {down} Paneele ließe es sich befördern.",
		"split/people":          "zwei Personen tragen höchstens {units|50 kg|110 lb}",
		"split/door":            "seine kürzere Seite ist höher als die Tür",
		"split/door-and-people": "zwei Personen tragen höchstens {units|50 kg|110 lb}; auch ist seine kürzere Seite höher als die Tür",
		"bench/finished-bases":  "Leim hält nicht auf einer behandelten Fläche. Kleben Sie die Fußflächen der Klötze ab, bevor sie behandelt werden, oder behandeln Sie das Feld, wenn es geleimt ist.",
		"bench/saw-reach":       "Hier muss die Säge durch {depth}, und Ihre schneidet {saw} ({edge}). Besäumen Sie nur die Trägerplatte, besäumen Sie, bevor die Klötze dieser Kante geleimt sind, oder hobeln Sie die Kante von Hand.",
		"edge/top":              "Oberkante",
		"edge/left":             "linke Kante",
		"edge/right":            "rechte Kante",
		"edge/bottom":           "Unterkante",
		"bench/board-too-short": "Ein Stück von {piece} kommt nicht aus einem Brett von {board}. Kaufen Sie längere Bretter, oder lassen Sie das Stück stoßen; es wird nach laufendem Meter gerechnet.",
	}
}
