package words

import "maps"

// germanChecks says the watch-outs. Each stands alone: what is wrong, with the
// numbers, and what to do.
func germanChecks() map[string]string {
	all := germanPrices()
	maps.Copy(all, germanGates())
	maps.Copy(all, germanWaterfall())
	maps.Copy(all, germanWatchOuts())
	return all
}

func germanWatchOuts() map[string]string {
	return map[string]string{
		"level/stop":    "Halt",
		"level/caution": "Vorsicht",
		"level/note":    "Hinweis",

		"pattern/uneven-shares": "Die Klötze von {height} machen {share} eines gleichen Anteils aus. Das Feld wird in seinen Höhen unausgewogen wirken.",
		"pattern/long-run":      "Ein Balken von {n} gleichen Klötzen in {place} {at}: Er fällt auf und wirft den Schall wie eine einzige Leiste zurück.",
		"pattern/row":           "Reihe",
		"pattern/column":        "Spalte",
		"pattern/repeats":       "Dasselbe Muster {n}-mal nebeneinander lenkt den Schall in wenige Richtungen. Nehmen Sie ein längeres Muster.",
		"panel/alike":           "{n} gleiche Paneele nebeneinander lenken den Schall in wenige Richtungen. Machen Sie eines zum Gegenpaneel: Reihenfolge {order}.",
		"field/snapped":         "Sie wollten {askedWidth} × {askedHeight}; ganze Klötze ergeben {width} × {height}. Nehmen Sie dieses Maß, oder lassen Sie den Rahmen den Rest ausgleichen.",

		"frame/too-shallow": "Aufhängeleiste, Trägerplatte und höchster Klotz sind zusammen {stack} tief, das Rahmenbrett misst {board}: Die Klötze stehen {proud} zu weit vor, oder der Rahmen erreicht die Wand nicht. Nehmen Sie ein Brett von {need} oder Klötze bis {tallest}.",
		"frame/less-reveal": "Aufhängeleiste, Trägerplatte und höchster Klotz sind zusammen {stack} tief, das Rahmenbrett misst {board}: Es steht {reveal} über die Klötze vor, gewünscht waren {wanted}. Nehmen Sie ein Brett von {need}.",

		"wall/hands-to-lift":   "Ein Paneel wiegt {mass}, und seine Oberkante hängt auf {top}: Wenn jeder höchstens {units|15 kg|33 lb} hebt, braucht es {people} Personen, und {crew} {crew|ist|sind} da. Holen Sie mehr Hände dazu, nehmen Sie einen Plattenheber, oder teilen Sie es.",
		"wall/hands-to-carry":  "Ein Paneel wiegt {mass}: Zum Tragen braucht es {people} Personen, und {crew} {crew|ist|sind} da. Holen Sie mehr Hände dazu, oder teilen Sie es.",
		"wall/lifting-method":  "Ein Paneel wiegt {mass}. Über {limit} wird es nicht von Hand gehoben: Wer das Heben leitet, nennt ein Verfahren, etwa mit einem Plattenheber oder einem Hebezeug. Oder teilen Sie es in kleinere Paneele.",
		"wall/lift-named":      "Ein Paneel wiegt {mass}. {lead} leitet das Heben und steht dafür ein: {method}. Wiegen Sie das Paneel, bevor es gehoben wird.",
		"wall/above-ears":      "Die Mitte des Paneels liegt {off} über den Ohren auf {ears}. Am meisten bewirkt es für Zuhörer auf der Höhe seiner Mitte.",
		"wall/below-ears":      "Die Mitte des Paneels liegt {off} unter den Ohren auf {ears}. Am meisten bewirkt es für Zuhörer auf der Höhe seiner Mitte.",
		"wall/below-floor":     "Die Unterkante läge {below} unter dem Boden. Hängen Sie es höher, oder machen Sie es niedriger.",
		"wall/above-top":       "Die Oberkante stünde {over} über die Wand hinaus, die {wall} hoch ist. Hängen Sie es tiefer, oder machen Sie es niedriger.",
		"wall/beyond-side":     "Die rechte Kante stünde {over} über die Wand hinaus, die {wall} breit ist. Rücken Sie es nach links, oder machen Sie es schmaler.",
		"wall/fire-question":   "In diesen Raum kommt Publikum. Fragen Sie die Stelle, die dort für den Brandschutz zuständig ist, welche Klasse die Oberfläche haben muss, und lassen Sie es sich schriftlich geben, bevor etwas gekauft wird. Holz und Oberfläche, die nicht geprüft wurden, haben keine Klasse.",
		"price/too-large":      "Mit diesen Preisen und Stunden wird der Auftrag größer, als sich rechnen lässt; er hat darum keinen Preis. Suchen Sie im Preisbuch nach einem Schreibfehler.",
		"price/indication":     "Niemand hat vor Ort Maß genommen, darum ist dieser Preis ein Richtpreis und kein Angebot.",
		"price/own-indication": "Niemand hat vor Ort Maß genommen, darum sind Liste und Stunden Richtwerte. Messen Sie Wand und Zugang, bevor Sie kaufen.",

		"price/book-lapsed":            "Das Preisbuch „{name}“ galt bis {date}. Bringen Sie es auf den neuesten Stand, bevor Sie diesen Preis anbieten.",
		"price/book-early":             "Das Preisbuch „{name}“ gilt erst ab {date}. Öffnen Sie das von heute, bevor Sie diesen Preis anbieten.",
		"price/offer-lapsed":           "Das Angebot galt bis {date}. Was darin steht, ist jetzt ein Richtpreis.",
		"price/order-changed":          "Der Entwurf hat sich seit der Vereinbarung geändert: Bestellt ist Revision {offered}, dies ist {now}. Eine Änderung geht über einen Nachtrag der Werkstatt.",
		"price/offer-changed":          "Der Entwurf hat sich seit dem Angebot geändert: Angeboten wurde Revision {offered}, dies ist {now}.",
		"price/discount-limit":         "Ein Nachlass von {discount} ist mehr als die {limit}, die ohne den Inhaber gegeben werden dürfen. Der Inhaber zeichnet ihn mit Namen und Grund ab, oder er wird kleiner.",
		"price/discount-reason":        "Niemand hat gesagt, warum es einen Nachlass von {discount} gibt und wer ihn gewährt.",
		"supply/by-others":             "Andere hängen dies auf: {mass} je Paneel, an seiner Aufhängeleiste, mit Luft darüber zum Einhängen und mit einer Aushebesicherung. Aufhängeblatt und Wiegezettel gehen mit. Wer es aufhängt, steht nach den örtlichen Regeln für das ein, was es hält.",
		"supply/kit":                   "Der Kunde leimt und behandelt dies selbst und hängt es auf: Das Bauheft mit seinen Warnungen geht mit. Die Klötze sind geschnitten; Trägerplatte, Rahmen und Aufhängeleiste werden noch gesägt. Für Lasten und Befestigungen, bis {mass} je Paneel, steht ein, wer es aufhängt.",
		"supply/plan":                  "Der Kunde baut nach dem Plan: Das Bauheft mit seinen Warnungen geht mit. Für Sägen, Staub, Oberfläche, Lasten und Befestigungen, bis {mass} je Paneel, steht nach den örtlichen Regeln ein, wer baut.",
		"price/below-floor":            "Von diesem Preis bleiben dem Auftrag {left}. Die Untergrenze ist {floor}.",
		"price/below-minimum":          "Nach dem Nachlass ist der Preis {net} und liegt unter dem Mindestpreis von {minimum}.",
		"price/deposit":                "Die erste Zahlung, {deposit}, deckt nicht, was für den Auftrag gekauft wird, {boughtIn}. Verlangen Sie {share} bei der Bestellung.",
		"price/over-budget":            "Der Preis mit Steuer ist {price}, {over} über dem Budget von {budget}.",
		"price/goods-over-budget":      "Was gekauft wird, kostet {price}, {over} über dem Budget von {budget}.",
		"note/price/over-budget":       "Hinweis: {over} über dem Budget",
		"note/price/goods-over-budget": "Hinweis: {over} über dem Budget",
	}
}

// germanWaterfall says the way from cost to price; each line is added to those
// above it.
func germanWaterfall() map[string]string {
	return map[string]string{
		"waterfall/markup":      "Zuschlag: {share} % auf alles Zugekaufte",
		"waterfall/direct":      "Direkte Kosten: Zugekauftes mit Zuschlag, Arbeit, Gemeinkosten, Fahrt",
		"waterfall/contingency": "Wagnis: {share} % der direkten Kosten",
		"waterfall/cost":        "Selbstkosten",
		"waterfall/asked":       "Verlangte Marge: {share} % des Preises",
		"waterfall/minimum":     "Auf den Mindestpreis angehoben",
		"waterfall/discount":    "Nachlass: {share} % davon",
		"waterfall/rounded-up":  "Aufgerundet auf die nächsten {step}",
		"waterfall/net":         "Nettopreis",
		"waterfall/margin":      "Bleibt nach den Kosten: {share} % vom Netto",
		"waterfall/tax":         "Steuer: {share} % vom Netto",
		"waterfall/gross":       "Mit Steuer",
	}
}

// germanGates says what keeps the gates of a job shut.
func germanGates() map[string]string {
	return map[string]string{
		"gate/offer":         "das Angebot",
		"gate/offer-home":    "die Arbeit",
		"gate/buy":           "das Einkaufen",
		"gate/cut":           "das Zuschneiden",
		"gate/glue":          "das Verleimen",
		"gate/hang":          "das Aufhängen",
		"gate/shuts":         "Bis es gelöst ist, hält es {gate} auf.",
		"gate/will-shut":     "Sobald es an {gate} geht, ist dies ein Halt.",
		"gate/by-evidence":   "Nur ein Nachweis räumt es aus, keine Unterschrift.",
		"gate/by-sign-off":   "Oder jemand zeichnet es mit Namen und Grund ab.",
		"gate/heading":       "Was den Auftrag aufhält",
		"gate/open":          "nichts bekannt",
		"gate/shut":          "{n} {n|Punkt|Punkte} zu klären",
		"gate/shut-evidence": "{n} {n|Punkt|Punkte} zu klären, mit Nachweis",
		"gate/waits":         "wartet auf {gate}",
		"gate/not-checked":   "Offen heißt, dass die Seite von nichts weiß: Niemand hier hat Werkbank, Wand oder Zugang gesehen. Wer etwas freigibt, sieht zuerst dort nach.",
		"wall/lifting":       "Heben",
	}
}

// germanPrices says which prices are in force, and what can be done with them.
func germanPrices() map[string]string {
	return map[string]string{
		"page/book-opened":    "Das Preisbuch ist in Kraft: {name}.",
		"page/selling-opened": "Das Verkaufsbuch ist in Kraft: Kunden sehen die Spanne, die es ergibt.",
		"page/book-example":   "Die Beispielzahlen sind wieder in Kraft.",
		"page/book-stays":     "Die Preise bleiben, wie sie waren: {name}.",

		"money/budget": "Was es kosten darf",

		"lever/heading":            "Was den Preis senkt",
		"lever/lead":               "Über dem Budget von {budget}. Diese Änderungen, neu durchgerechnet, sparen am meisten:",
		"lever/lead-client-below":  "Der Preis liegt über dem Budget von {budget}. Diese Änderungen senken ihn am meisten:",
		"lever/lead-client":        "Ein Budget von {budget} reicht vielleicht nicht. Diese Änderungen senken den Preis am meisten:",
		"lever/larger-blocks":      "Klötze von {size}: {fewer} weniger.",
		"lever/fewer-heights":      "{n} {n|Höhe|Höhen}: {heights}.",
		"lever/fewer-coats":        "Ein Anstrich weniger.",
		"lever/no-frame":           "Kein Rahmen: Die Kanten des Feldes bleiben sichtbar.",
		"lever/smaller":            "In jeder Richtung ein Zehntel kleiner: {width} × {height}.",
		"lever/another-wood":       "{wood} statt {was}.",
		"lever/dents":              "Es ist weicher und bekommt Druckstellen, wo Leute vorbeigehen oder Stühle stehen.",
		"lever/no-hanging":         "Der Kunde holt es ab und hängt es auf.",
		"lever/no-hanging-client":  "Sie holen es ab und hängen es selbst auf.",
		"lever/saves":              "Spart {money}.",
		"lever/saves-enough":       "Spart {money}, das genügt.",
		"lever/saves-about":        "Spart etwa {money}.",
		"lever/saves-enough-about": "Spart etwa {money}, das könnte genügen.",
		"lever/hours":              "{hours} weniger Arbeit.",
		"lever/reckoned-client":    "Gerechnet mit den gerundeten Zahlen, aus denen Spannen entstehen: Die eigenen der Werkstatt können eine andere Reihenfolge ergeben.",
		"lever/reckoned-maker":     "Gerechnet mit dem geltenden Preisbuch. Für einen Kunden wird mit dem Verkaufsbuch gerechnet, und das kann anderes ergeben.",
		"lever/reckoned-builder":   "Gerechnet mit den Waren allein.",
		"lever/do":                 "So machen",

		"offer/heading":             "Angebot",
		"offer/lead":                "Ein Angebot hält diesen Preis fest, solange es gilt. Es geht in der Datei und im Link mit, und eine Änderung des Entwurfs ist davon zu unterscheiden.",
		"offer/indication":          "Niemand hat vor Ort Maß genommen: Es ist ein Richtpreis.",
		"offer/for-days":            "Für {n} {n|Tag|Tage} anbieten",
		"offer/in-links":            "Die Datei und der Link, die Sie jetzt senden, tragen es mit.",
		"offer/withdraw":            "Angebot zurückziehen",
		"offer/is-agreed":           "Was angeboten wurde, ist vereinbart: siehe „Die Bestellung“. Eine Änderung geht über einen Nachtrag, und neu angeboten wird nur, wenn die Festschreibung zurückgenommen ist.",
		"offer/no-price":            "Es gibt keinen Preis zum Anbieten.",
		"offer/no-book":             "Beispielzahlen ergeben kein Angebot. Öffnen Sie zuerst Ihr eigenes Preisbuch.",
		"offer/no-currency":         "Das Preisbuch nennt keine Währung: Das Angebot lautet auf ¤, also auf keine.",
		"offer/no-workshop":         "Das Preisbuch nennt keine Werkstatt: Niemand ist genannt, der anbietet.",
		"offer/no-day":              "Ein Angebot braucht das heutige Datum, das hier nicht bekannt ist.",
		"offer/book-of-another-day": "Das Preisbuch „{name}“ gilt heute nicht, also lässt sich damit nichts anbieten.",
		"offer/gate-shut":           "{n} {n|Halt hält|Halte halten} das Angebot zurück.",
		"offer/wrong-days":          "Ein Angebot kann nicht {days} Tage gelten: {low} bis {high} Tage sind möglich.",

		"look-card/heading": "Varianten nebeneinander",
		"look-card/woods":   "Hölzer unterscheiden sich hier nach dem, was sie üblicherweise kosten, nicht nach der Liste der Werkstatt: Ein Unterschied zwischen zwei Varianten ist so ungewiss wie die Spannen selbst.",
		"look-card/lead":    "Merken Sie diese Variante vor, ändern Sie, was Sie möchten, und sehen Sie beide mit ihren Preisen.",
		"look-card/keep":    "Diese Variante vormerken",
		"look-card/open":    "Was jetzt offen ist",
		"look-card/same":    "Diese ist offen.",
		"look-card/line":    "{wood}, Klötze von {size}, {width} × {height}, {mass}",
		"look-card/against": "Gegenüber der offenen: {difference}",
		"look-card/heavier": "{mass} schwerer",
		"look-card/lighter": "{mass} leichter",
		"look-card/show":    "Zeigen",
		"look-card/drop":    "Herausnehmen",

		"label/looks.name": "Name der Variante",

		"offer/ready":              "Fertig zwischen {from} und {by}, wenn bis {date} bestellt wird.",
		"offer/ready-first":        "Am {day} bestellt: fertig zwischen {from} und {by}.",
		"offer/ready-last":         "Am letzten Tag bestellt, {date}: fertig zwischen {from} und {by}.",
		"offer/wish-kept":          "Gewünscht war es bis {wished}, und bis dahin ist es fertig, wann immer es bestellt wird, solange das Angebot gilt.",
		"offer/wish-kept-first":    "Gewünscht war es bis {wished}: Am {day} bestellt ist es bis dahin fertig; am letzten Tag bestellt kann es bis {by} dauern.",
		"offer/wish-may-be-missed": "Gewünscht war es bis {wished}, und dieser Tag kann verfehlt werden: Braucht jede Arbeit ihre längste Zeit, ist es am {by} fertig.",
		"offer/wish-missed":        "Gewünscht war es bis {wished}, und dieser Tag wird verfehlt: Vor {from} ist es nicht fertig.",
		"offer/line":               "Angeboten zu {gross} mit Steuer, bis {date}.",
		"offer/line-agreed":        "Vereinbart zu {gross} mit Steuer, am {date}.",

		"prices/the-examples":   "die Beispielzahlen",
		"prices/a-selling-book": "ein Verkaufsbuch",
		"prices/selling-file":   "Verkaufsbuch",
		"prices/no-selling":     "Aus diesem Preisbuch lässt sich kein Verkaufsbuch machen: Es hat keinen Preis für die Waren üblicher Aufträge.",

		"prices/heading":         "Geltende Preise",
		"prices/example":         "Dies sind Beispielzahlen, erfunden. Tragen Sie Ihre eigenen ins Preisbuch ein, oder öffnen Sie es aus einer Datei, um Ihre Preise zu sehen.",
		"prices/own":             "{name}, Kennung {code}, in {currency}.",
		"prices/no-currency":     "keiner Währung, geschrieben ¤",
		"prices/until":           "Es gilt bis {date}.",
		"prices/from-until":      "Es gilt von {date} bis {until}.",
		"prices/from":            "Es gilt ab {date}.",
		"prices/invented":        "Es nennt seine eigenen Zahlen erfunden.",
		"prices/selling-only":    "Kunden sehen die Spanne eines Verkaufsbuchs, in {currency}. Sätze, Zeiten und Kosten unten sind Beispielzahlen, bis ein Preisbuch offen ist.",
		"prices/private":         "Ein Preisbuch bleibt in diesem Browser und kommt in keine Datei eines Entwurfs und in keinen Link. Ein Verkaufsbuch enthält seinen Namen, seinen letzten Tag, zehn gerundete Preise und keine Sätze: das, wonach Kunden ein Preis genannt wird.",
		"prices/open":            "Preisbuch oder Verkaufsbuch öffnen…",
		"prices/save":            "Preisbuch sichern",
		"prices/save-example":    "Beispielbuch zum Ausfüllen sichern",
		"prices/save-selling":    "Verkaufsbuch sichern",
		"prices/back":            "Zurück zu den Beispielzahlen",
		"prices/client-selling":  "Die Spanne kommt aus dem Verkaufsbuch, das hier geöffnet wurde.",
		"prices/client-by":       "Nach den Preisen von „{name}“.",
		"prices/client-by-until": "Nach den Preisen von „{name}“, bis {date}.",
		"prices/client-lapsed":   "Diese Preise galten bis {date}. Fragen Sie nach neuen, bevor Sie mit dieser Spanne rechnen.",
		"prices/client-none":     "Der Kunde sieht keine Spanne: Aus diesem Preisbuch lässt sich kein Verkaufsbuch machen.",
	}
}

// germanBenchChecks says the watch-outs of stock, saw, glue and finish.
func germanBenchChecks() map[string]string {
	return map[string]string{
		"bench/not-measured":     "Alle Maße beruhen auf dem Etikett: {size} sollte der Querschnitt haben. Messen Sie zehn Kanteln vor dem ersten Schnitt.",
		"bench/sheet-too-small":  "Eine Trägerplatte von {width} × {height} samt Besäumzugabe kommt nicht aus einer Platte von {sheetWidth} × {sheetLength}. Machen Sie aus der Gruppe {across} × {down} Paneele.",
		"bench/sheets-too-small": "Eine Trägerplatte von {width} × {height} samt Besäumzugabe kommt nicht aus einer Platte von {sheetWidth} × {sheetLength}, und eine Gruppe fasst nicht genug Paneele, um sie zu teilen. Machen Sie das Feld kleiner.",
		"bench/waste":            "{share} der Kanteln aus {wood}, {size} im Quadrat und {length} lang, landen in keinem Paneel. Eine andere Länge der Kanteln lässt vielleicht weniger Verschnitt.",
		"bench/one-a-sheet":      "Jede der {n} Trägerplatten, {width} × {height}, braucht eine eigene Platte von {sheetWidth} × {sheetLength}. Ein etwas schmaleres Paneel kommt vielleicht zweimal aus einer.",
		"bench/short-block":      "Ein Klotz von {height} lässt sich an der Säge nicht von Hand halten. Halten Sie ihn in einer Spannlade, lassen Sie das Blatt stillstehen, bevor Sie ihn herausnehmen, und halten Sie die Hände {units|150 mm|6 Zoll} vom Blatt fern.",
		"bench/tiny-block":       "Ein Klotz von {height} ist selbst für eine übliche Spannlade zu kurz. Machen Sie ihn höher, oder sagen Sie, wie er geschnitten wird und wer dafür einsteht.",
		"bench/short-tail":       "Wird es nur von Hand gehalten, so bringt das letzte Stück einer Kantel, {tail}, die Finger ans Blatt. Lassen Sie {least} stehen, oder schneiden Sie in einer Spannlade.",
		"bench/sanding-time":     "Das Schleifen dauert {hours} mit der Maschine in der Hand. Ab {limit} am Tag verlangen ihre Schwingungen Schutzmaßnahmen: Verteilen Sie es auf {days} Tage oder Personen.",
		"bench/glue-skins":       "Eine volle Reihe zu leimen dauert {row} s, und {safe} der {open} s, die dieser Leim offen bleibt, sind sicher. Leimen Sie höchstens {blocks} {blocks|Klotz|Klötze} auf einmal, oder nehmen Sie einen langsameren Leim.",
		"bench/cold-shop":        "Die Werkstatt hat {now}. Unter {least} werden die meisten Holzleime kreidig und schwach.",
		"bench/oily-rags":        "Lappen, an denen {finish} haftet, können sich innerhalb von Stunden selbst entzünden. Legen Sie sie flach im Freien aus, oder unter Wasser in einen Metallbehälter mit Deckel.",
	}
}
