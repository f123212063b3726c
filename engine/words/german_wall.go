package words

import "maps"

// germanWall is what is said of the wall, of what holds a panel and of its way in.
func germanWall() map[string]string {
	all := germanHung()
	maps.Copy(all, germanWallFields())
	maps.Copy(all, germanHolding())
	maps.Copy(all, germanRear())
	maps.Copy(all, germanWayIn())
	maps.Copy(all, germanDay())
	return all
}

// germanWallFields names the fields of wall and way in that only a survey fills.
func germanWallFields() map[string]string {
	return map[string]string{
		"choice/call point": "Handfeuermelder",
		"choice/exit sign":  "Fluchtwegschild",

		"label/room.fireAnswer":      "Brandschutz: wer was wann gesagt hat",
		"label/room.answers":         "Weitere Antworten, mit Namen und Tagen",
		"label/walls.studs":          "Ständer wie gefunden, von links",
		"label/walls.board":          "Beplankung über den Ständern, alle Lagen",
		"label/walls.walkway":        "Menschen gehen daran entlang",
		"label/walls.bow":            "Unebenheit auf {units|2 m|80 Zoll}",
		"label/walls.bowShape":       "Dort ist die Wand",
		"label/room.seismic":         "Die örtlichen Regeln rechnen mit Erdbeben",
		"choice/hollow":              "hohl",
		"choice/belly":               "nach außen bauchig",
		"label/walls.outside":        "Eine Außenwand ohne Dämmung",
		"label/walls.sun":            "Die Sonne steht den größten Teil des Tages darauf",
		"label/walls.fixing.reason":  "Warum niemand darunter sein kann",
		"label/walls.groups.weighed": "Masse des schwersten Paneels wie gewogen",
		"label/wayIn.stairWidth":     "Engster Treppenlauf",
		"label/wayIn.landing":        "Tiefe des kleinsten Podests",
		"label/wayIn.liftDoor":       "Tür des Aufzugs",
		"label/wayIn.liftWidth":      "Breite seiner Kabine",
		"label/wayIn.liftDepth":      "Tiefe seiner Kabine",
		"label/wayIn.liftHeight":     "Höhe seiner Tür oder Kabine",
		"label/wayIn.vehicle":        "Ladefläche des Fahrzeugs",

		"zero/walls.studs":             "Nacheinander, wie {units|300; 905; 1490|12; 36; 60}. Leer: nach erstem und Abstand",
		"zero/walls.bow":               "Unter einer Richtlatte, wo die Leiste hinkommt. 0: eben, oder nicht gemessen",
		"zero-means/flat":              "eben, oder nicht gemessen",
		"zero/walls.board":             "0: nicht gesagt, {units|25 mm|1 Zoll} zählen",
		"zero/walls.fixing.loadFactor": "4, oder bis 2, wo niemand darunter sein kann",
		"zero/wayIn.stairWidth":        "0: nicht gemessen",
		"zero/wayIn.landing":           "0: nicht gemessen",
		"zero/wayIn.liftDoor":          "0: nicht gemessen",
		"zero/wayIn.liftWidth":         "0: nicht gemessen",
		"zero/wayIn.liftDepth":         "0: nicht gemessen",
		"zero/wayIn.liftHeight":        "0: nicht gemessen",
		"zero/wayIn.vehicle":           "0: nicht gemessen",

		"zero-means/not-weighed":  "nicht gewogen",
		"zero-means/not-measured": "nicht gemessen",
	}
}

// germanHung is what is watched over on a wall.
func germanHung() map[string]string {
	return map[string]string{
		"wall/screws":           "{count} Holzschrauben Nr. {gauge}, {long:sold} lang, halten eine Leiste: {each} übereinander {studs|an|an jedem der} {studs} {studs|Ständer|Ständer}, die Leiste {high} hoch. Sie sind mit dem {factor}-Fachen der Last zu {use} ausgenutzt. Gezählt für gesunde, trockene Ständer aus Fichte oder Kiefer, mindestens {units|38 mm|1 1/2 Zoll} breit und {units|75 mm|3 Zoll} tief, die von Hand gefunden wurden, für {board} Beplankung, vorgebohrte Löcher und einfache Holzschrauben; ein anderes Fabrikat braucht den Wert seines Herstellers. Wo die Erde bebt, muss ein Fachmann danach sehen.",
		"wall/overloaded":       "Keine Leiste mit Holzschrauben, die hinter das Paneel passt, hält es: Die beste, mit {count} Nr. {gauge} in {studs} {studs|Ständer|Ständern}, {high} hoch, wäre mit dem {factor}-Fachen der Last zu {use} ausgenutzt. Machen Sie das Paneel leichter oder höher, treffen Sie mehr Ständer, oder nehmen Sie eine flachere Schräge, eine dickere Aufhängeleiste oder dickere Schrauben.",
		"wall/rated":            "{count} Befestigungen je Paneel ({what}) sind nach dem eingetragenen Wert mit dem {factor}-Fachen der Last zu {use} ausgenutzt. Dieser Wert muss für genau diese Wand gelten, und die Last muss nach ihm bereits zulässig sein. Nicht geprüft: Sie sitzen {step} auseinander, und ihr Hersteller sagt, wie nah sie sitzen dürfen, wie weit vom Rand, und ob im Stein oder in der Fuge. Ein Loch, das rücken muss, wird neu gerechnet. Wo die Erde bebt, muss ein Fachmann danach sehen.",
		"wall/rated-overloaded": "{count} Befestigungen je Paneel ({what}) wären nach dem eingetragenen Wert mit dem {factor}-Fachen der Last noch immer zu {use} ausgenutzt. Nehmen Sie eine stärkere Befestigung oder ein leichteres Paneel.",
		"wall/not-known":        "Nicht geprüft: Niemand weiß, woraus diese Wand besteht. Finden Sie es heraus und wählen Sie dann ihre Art, oder stellen Sie die Paneele auf den Boden. Vorher wird nichts aufgehängt.",
		"wall/no-fixing":        "Nicht geprüft: An dieser Wand darf nichts befestigt werden. Stellen Sie die Paneele auf den Boden. Es wird nichts aufgehängt.",
		"wall/not-checked":      "Nicht geprüft: Niemand hat gesagt, was eine Befestigung in dieser Wand ({wall}) hält. Tragen Sie ein, was ihr Hersteller für eine Befestigung in genau diesem Untergrund angibt, Abscheren und Auszug, mit Befestigung und Quelle, oder stellen Sie die Paneele auf den Boden. Vorher wird nichts aufgehängt.",
		"wall/board-alone":      "Hinter dem Paneel ist kein Ständer, und dass die Beplankung allein es hält, wird nicht angenommen. Rücken Sie das Paneel zu Ständern, die gefunden wurden, setzen Sie eine Traglatte quer darüber, stellen Sie es auf den Boden, oder tragen Sie ein, was der Hersteller des Ankers für diese Platte angibt, mit Anker und Quelle.",
		"wall/one-stud":         "Hinter einem Paneel von {mass} sind weniger als zwei Ständer. Setzen Sie eine Traglatte quer über die Ständer, oder rücken Sie das Paneel so, dass es zwei erreicht.",
		"wall/no-lock":          "Nichts hindert das Paneel daran, von seiner Aufhängeleiste gehoben zu werden. Geben Sie ihm eine Schraube oder eine Klammer.",
		"wall/stand-tips":       "Der Standfuß kippt {side} bei {angle}; {limit} sind das Mindeste. Machen Sie den Fuß auf dieser Seite {more} länger, oder binden Sie ihn nach hinten fest.",
		"wall/forwards":         "nach vorn",
		"wall/backwards":        "nach hinten",
		"wall/lift-room":        "Das Einhängen des Paneels braucht {need} Luft darüber, und {free} sind da. Hängen Sie es tiefer, oder nehmen Sie eine dünnere Aufhängeleiste oder eine flachere Schräge als {bevel}.",
		"wall/grille":           "Das Lüftungsgitter ist {apart} vom Paneel. Verbauen Sie es nicht; bewegte Luft trocknet auch diese Kante und kann pfeifen. Halten Sie {units|150 mm|6 Zoll} Abstand.",
		"wall/heat":             "Ein Heizkörper ist {apart} vom Paneel. Er trocknet diese Kante und öffnet die Fugen. Halten Sie {units|300 mm|12 Zoll} Abstand.",
		"wall/cable":            "Von hier kann ein Kabel hinauf oder hinunter laufen ({kind} bei {x} von der linken Ecke). Orten Sie es, bevor Sie irgendwo in der Nähe bohren.",
		"wall/safety-device":    "Das Paneel verdeckt oder bedrängt etwas, das Menschen schützt ({kind} bei {x} von der linken Ecke). Rücken Sie das Paneel, und fragen Sie die Stelle, die dort für die Sicherheit zuständig ist.",
		"wall/in-reach":         "Die Unterkante hängt auf {bottom}, in Reichweite in einem öffentlichen Raum. Unter {limit} finden Finger und Taschen sie.",
		"wall/damp-or-cold":     "Bis {humidity} Luftfeuchte, hinunter bis {cold}: eine kalte oder feuchte Wand. Lassen Sie {units|20 mm|3/4 Zoll} Luft hinter dem Paneel, versiegeln Sie seine Rückseite, und rechnen Sie damit, dass es arbeitet.",
		"wall/too-few-cells":    "Die Aufhängeleiste braucht {need} Schrauben von {long:sold}, wo man sie nicht sehen kann, und die besten Reihen haben {have} Plätze. Nehmen Sie weniger kurze Klötze und Lücken, dickeres Sperrholz oder ein leichteres Paneel. Schrauben von {short:sold} überall, die in der Trägerplatte enden, und Leim sieht man auch nicht, aber was sie halten, ist nicht geprüft: Das muss der Hersteller des Leims oder ein Fachmann sagen.",
		"wall/way-in":           "Ein Paneel von {wide} × {high} kommt nicht hinein: {step}, und das längste, das hineinkommt, misst {longest} mit seiner Verpackung. {bare}",
		"way/door":              "vom Flur aus dreht es sich nicht durch die Tür",
		"way/stairs":            "auf dem Treppenpodest dreht es sich nicht",
		"way/lift":              "in den Aufzug geht es nicht",
		"way/vehicle":           "im Fahrzeug liegt es nicht",
		"way/bare":              "Ohne Rahmen und Verpackung kommt es durch: Nehmen Sie für den Weg den Rahmen ab, oder teilen Sie es.",
		"way/not-bare":          "Auch ohne seinen Rahmen kommt es nicht durch: Teilen Sie es.",
		"wall/outside":          "Eine Außenwand ohne Dämmung ist kalt und kann feucht sein. Lassen Sie {units|20 mm|3/4 Zoll} Luft hinter dem Paneel, versiegeln Sie seine Rückseite, und rechnen Sie damit, dass es arbeitet.",
		"wall/sun":              "Sonne über den größten Teil des Tages trocknet das Paneel und bleicht es ungleich. Rechnen Sie mit offenen Fugen, oder beschatten Sie es.",
		"wall/low-factor":       "Gezählt mit dem {factor}-Fachen der Last statt dem {usual}-Fachen, weil: {reason}. Das gilt nur, solange niemand darunter sein kann.",
		"wall/factor-unsaid":    "Verlangt wurde das {typed}-Fache der Last, und das {usual}-Fache zählt, da niemand gesagt hat, warum niemand darunter sein kann.",
		"wall/weighed-off":      "Das schwerste Paneel wiegt {measured}, und erwartet waren {computed}: nasses Holz, andere Höhen oder falsch gezählt. Alles, was es hält und hebt, ist für {measured} gezählt.",
		"wall/wider-than-room":  "Die Wand ist {wall} breit, und der Raum höchstens {room}: Eines von beiden stimmt nicht. Was der Raum mit dem Schall macht, geht nach dem Raum.",
		"wall/higher-than-room": "Die Wand ist {wall} hoch, und der Raum {room}: Eines von beiden stimmt nicht. Was der Raum mit dem Schall macht, geht nach dem Raum.",
		"wall/hands-of-others":  "Ein Paneel wiegt {mass}, und seine Oberkante hängt auf {top}: Zum Heben braucht es {people} Personen bei denen, die es aufhängen. Sagen Sie das, bevor Sie zusagen; Ihre eigenen Leute sind nicht gezählt.",
		"wall/bowed":            "Die Wand ist unter einer Richtlatte von {units|2 m|80 Zoll} um {bow} uneben; mehr als {limit} ist viel. Die Leiste wird an ihren Befestigungen mit bis zu {shim} festen Unterlagen hinterlegt, und ihre Schrauben sind um so viel länger. Wo der Putz hohl oder lose oder der Bauch neu ist, muss zuerst jemand die Wand ansehen.",
		"wall/seismic":          "Hier kann die Erde beben, und niemand, der dafür zugelassen ist, hat angesehen, wie die Paneele gehalten werden. Schreiben Sie auf, wer es angesehen hat, mit welcher Zulassung, wann und was, für genau diesen Entwurf. Vorher wird nichts aufgehängt.",
		"wall/professional":     "{name} ({licence}) hat es am {day} angesehen: {looked}. Das ist festgehalten, gibt aber nichts frei, was ein Wert des Herstellers der Befestigung, ein Ständer oder eine Sicherung freigeben muss.",
		"wall/professional-old": "{name} ({licence}) hat am {day} einen anderen Entwurf angesehen, Revision {revision}. Zeigen Sie diesen.",
		"wall/overlap":          "Zwei Gruppen von Paneelen würden übereinander hängen, um {wide} × {high}. Rücken Sie eine davon.",
		"wall/walkway":          "Menschen gehen an dieser Wand entlang. Das Paneel steht {out} vor und beginnt {bottom} über dem Boden: Wer seinen Weg mit dem Stock ertastet, stößt mit dem Kopf daran. Zwischen {low} und {high} ist das viel; fragen Sie, welche Regel hier gilt.",
		"wall/safety-allowed":   "Das Paneel verdeckt oder bedrängt etwas, das Menschen schützt ({kind} bei {x} von der linken Ecke), und jemand erlaubt diesen Platz: {answer}. Bewahren Sie das schriftlich beim Auftrag.",
		"record/weighed-other":  "Gewogen wurde ein anderer Entwurf: {kg}, als {before} gerechnet waren, und jetzt sind es {now}. Wiegen Sie neu; bis dahin zählt, was gerechnet ist.",
		"wall/fire-answer":      "Zum Brandschutz gibt es eine Antwort: {answer}. Bewahren Sie sie schriftlich beim Auftrag.",
		"wall/way-in-open":      "Treppe oder Aufzug sind nicht geprüft: Messen Sie jedes Podest, jede Drehung und jede Kabine für ein verpacktes Paneel von {wide} × {high} × {deep}.",
	}
}

// germanHolding is what the section Wall says of what holds a panel, of its mass and of
// its place.
func germanHolding() map[string]string {
	return map[string]string{
		"wall/add-group":        "Eine Gruppe Paneele an dieser Wand hinzufügen",
		"wall/add-wall":         "Eine weitere Wand hinzufügen",
		"wall/pad":              "Paneel an der Wand verschieben",
		"wall/help":             "Ziehen Sie das Paneel, oder nehmen Sie die Pfeiltasten: {step} auf einmal, mit Umschalt {fine}. Es rastet an den Ständern, in der Mitte und auf Ohrhöhe ein.",
		"wall/ears":             "Ohren",
		"wall/caption-care":     "Locker schraffiert: mit Vorsicht.",
		"wall/caption-keep-out": "Dicht schraffiert: kein Paneel dort.",
		"wall/said-heavy":       "Das Paneel wiegt {mass}: Es wird mit einem Hebezeug oder Ähnlichem hinaufgehoben, nicht von Hand allein. Sagen Sie, ob Ihnen der Platz gefällt; Ständer, Kabel und was die Wand trägt, werden geprüft, bevor etwas aufgehängt wird.",
		"wall/said":             "Das Paneel wiegt {mass}, und {lift} {lift|Person hebt|Personen heben} es hinauf. Sagen Sie, ob Ihnen der Platz gefällt; Ständer, Kabel und was die Wand trägt, werden geprüft, bevor etwas aufgehängt wird.",
		"wall/caution-client":   "Hängen Sie es nicht nach dieser Zeichnung auf. Wer es aufhängt, sucht zuerst nach Kabeln und Rohren, und nichts wird aufgehängt, bevor Wand und Befestigungen geprüft sind.",
		"wall/weighing":         "Wiegen",
		"wall/thing":            "{kind}: {x} von links, {y} hoch",
		"wall/hung":             "Am Tag selbst",
		"wall/mass-range":       "Nach der Dichte des Holzes, die von Baum zu Baum um etwa ein Zehntel verschieden ist (Wood Handbook, aus dem Gedächtnis), und nach seiner Feuchte kann das schwerste Paneel {low} bis {high} wiegen. Sein Schwerpunkt liegt {out} vor der Wand.",
		"wall/mass-weighed":     "Es wurde gewogen: {mass}, und alles unten ist dafür gezählt.",
		"wall/niosh-under":      "Nach der Hebegleichung von NIOSH, die für eine Person gilt, liegt das Heben auf die Leiste innerhalb ihrer Grenze von {limit}: Hände {away} vor den Knöcheln, von {from} auf {to} über dem Boden, schlechter Griff, ab und zu.",
		"wall/niosh-over":       "Nach der Hebegleichung von NIOSH, die für eine Person gilt, sollte so niemand mehr als {limit} heben, und das Paneel wiegt {mass}: Hände {away} vor den Knöcheln, von {from} auf {to} über dem Boden, schlechter Griff, ab und zu. Über mehrere Personen sagt sie nichts.",
		"wall/niosh-more":       "Nach der Hebegleichung von NIOSH, die für eine Person gilt, sollte so niemand mehr als {limit} heben, und das Paneel wiegt {mass}: Hände {away} vor den Knöcheln, von {from} auf {to} über dem Boden, schlechter Griff, ab und zu. Über mehrere Personen sagt sie nichts. Gleich verteilt verlangt diese Grenze {people} Personen: Nehmen Sie so viele, oder einen Plattenheber.",
		"wall/niosh-outside":    "Die Hebegleichung von NIOSH, die für eine Person gilt, hat keinen Wert für dieses Heben: Die Hände kämen auf {to} über dem Boden, und sie endet bei {units|175 cm|69 Zoll}. Nehmen Sie einen Plattenheber, oder stehen Sie höher.",

		"buy/cleat-screws-of": "Schrauben für die Aufhängeleisten, durch die Trägerplatte: Holzschrauben Nr. {gauge}, {long:sold} lang",
		"buy/apart":           "außerdem: {what}",
		"buy/wall-strip":      "Brett für die Leiste in der Wand: {height} × {thickness}, {length} lang, seine Oberkante unter {bevel}",

		"spot/middle": "Mitte der Wand",
		"spot/studs":  "Auf den Ständern ausgemittelt",
		"spot/ears":   "Mitte auf Ohrhöhe",
		"spot/of":     "{name}: {spot}",

		"hold/heading":            "Was es hält",
		"hold/unchecked":          "Befestigungen nicht geprüft",
		"hold/not-counted":        "Nicht geprüft: die Ständer oder die Wand dahinter, und was sie hält; Rohre und Kabel; jeder, der zieht, sich anlehnt oder klettert; Erdbeben; und der Leim unter den Klötzen, der hier nichts hält. Örtliche Regeln und der Hersteller der Befestigung gehen vor.",
		"hold/not-counted-stand":  "Nicht geprüft: der Standfuß selbst und wie die Paneele darauf gehalten werden; jeder, der stößt, sich anlehnt oder klettert; ein Boden, der nicht waagrecht ist; Erdbeben.",
		"hold/strips":             "Leisten in der Wand",
		"hold/strips-value":       "{count}, von denen diese am meisten ausgenutzt ist",
		"hold/screws":             "Schrauben in der Wand",
		"hold/screws-value":       "{count} Holzschrauben Nr. {gauge}, {long:sold} lang: {each} übereinander in jedem Ständer, bei {at} von der linken Ecke",
		"hold/strip":              "Leiste in der Wand",
		"hold/strip-value":        "{thick} dick, {high} hoch, {long} lang, ihre Spitze {tip} über dem Boden",
		"hold/bored":              "In die Leiste gebohrt",
		"hold/bored-value":        "{shank} durch die Leiste, {thread} für das Gewinde",
		"hold/used":               "Ausgenutzt",
		"hold/used-value":         "die meistbelastete Schraube zu {use}, die Leiste auf Biegung zu {bend} und im Durchhang zu {sag}, alles mit dem {factor}-Fachen der Last",
		"hold/shows":              "Länger als das Paneel",
		"hold/shows-value":        "{out}: Es ist zu sehen, oder der Rahmen wird dafür ausgeklinkt",
		"hold/shims":              "Hinter der Leiste unterlegt",
		"hold/shims-value":        "{at} von der linken Ecke: feste Unterlagen so hoch wie die Leiste, so befestigt, dass sie nicht herausfallen können. Die Schrauben sind so lang, und gezählt, als wäre die dickste überall.",
		"hold/shim-at":            "{thick} bei {along}",
		"hold/rated-shims":        "Hinter der Leiste unterlegt",
		"hold/rated-shims-value":  "{at} von der linken Ecke: feste Unterlagen so hoch wie die Leiste, so befestigt, dass sie nicht herausfallen können. Die Befestigungen sind um so viel länger, und ihr Hersteller muss sagen, ob der Wert auch darüber hinweg gilt.",
		"hold/rated":              "Befestigungen in der Wand",
		"hold/rated-value":        "{count} je Leiste, nach dem Wert ihres Herstellers für {what} ({source})",
		"hold/rated-values":       "Eine davon",
		"hold/rated-values-value": "{shear} seitwärts, {pull} heraus, wie eingetragen",
		"hold/rated-strip":        "Leiste in der Wand",
		"hold/rated-strip-value":  "{thick} dick, {high} hoch, {long} lang, ihre Spitze {tip} über dem Boden",
		"hold/rated-used":         "Ausgenutzt",
		"hold/rated-used-value":   "zu {use} mit dem {factor}-Fachen der Last, Abscheren und Auszug zusammengezählt",
		"hold/half":               "Aufhängeleiste am Paneel",
		"hold/half-value":         "{count} Holzschrauben Nr. {gauge}, {long:sold} lang, in {n|Reihe|den Reihen} {rows}, jede zu {use} ausgenutzt",
		"hold/half-open":          "Aufhängeleiste am Paneel",
		"hold/half-open-value":    "zu wenige Plätze, wo man ihre Schrauben nicht sieht",
		"hold/lock":               "Aushebesicherung",
		"hold/lock-value":         "{lock}",
		"hold/stand":              "Standfuß",
		"hold/stand-value":        "Fuß {base} tief; {side} liegt seine Kante {toe} vom Schwerpunkt",
		"hold/tips":               "Kippt",
		"hold/tips-value":         "{side} bei {angle}, sein Schwerpunkt {centre} über dem Boden; 10° sind das Mindeste",

		"hold/toe-needed":       "Kleinster Fuß",
		"hold/toe-needed-value": "{toe} vom Schwerpunkt bis zu seiner Kante auf jeder Seite, für {angle}",

		"hold/section":         "Die Aufhängeleiste im Schnitt",
		"hold/section-title":   "Paneel und Aufhängeleiste von oben bis unten geschnitten, im Maßstab, die Wand links",
		"hold/section-text":    "Die Leiste an der Wand und die Leiste am Paneel treffen sich in einer Schräge von {bevel}. Die Spitze der Wandleiste liegt {below} unter der Oberkante des Paneels; {room} Luft darüber braucht das Einhängen. Eine Distanzleiste am Fuß hält das Paneel senkrecht.",
		"hold/section-caption": "Im Maßstab, die Wand links; die Mitte ist ausgelassen.",
		"hold/section-rule":    "Beide Hälften werden im selben Winkel aus einem Brett getrennt. Die Distanzleiste am Fuß ist so dick wie die Aufhängeleiste.",
		"hold/stack":           "Tiefe",
		"hold/stack-value":     "Aufhängeleiste {cleat}, Trägerplatte {backer}, höchster Klotz {block}: {stack}",
		"hold/frame":           "Rahmen",
		"hold/frame-value":     "{depth} tief, aus einem Brett von {board}, das Klötze bis {tallest} deckt",
		"hold/bevel":           "Schräge",
		"hold/bevel-value":     "{bevel} gegen die Waagrechte",
		"hold/tip":             "Spitze der Leiste",
		"hold/tip-value":       "{below} unter der Oberkante des Paneels: {tip} über dem Boden",
		"hold/lift-room":       "Einhängeluft",
		"hold/lift-room-value": "{need} über dem Paneel nötig, {free} vorhanden",
	}
}

// germanRear is what the rear map says.
func germanRear() map[string]string {
	return map[string]string{
		"rear/open":         "Die Rückseite: wo ihre Schrauben sitzen",
		"rear/title":        "Die Rückseite des Paneels, links und rechts vertauscht, oben ist oben",
		"rear/text":         "{count} Ringe markieren die Schrauben der Aufhängeleiste; schraffierte Zellen haben einen zu kurzen Klotz dafür, gefüllte keinen.",
		"rear/heading":      "RÜCKANSICHT",
		"rear/panels":       "Rückseite {letter}: {n|Paneel|Paneele} {numbers} von {of}",
		"rear/one":          "Rückseite des Paneels",
		"rear/marks":        "Ringe: Holzschrauben Nr. {gauge}, {long:sold} lang, durch Aufhängeleiste und Trägerplatte. Offene Zellen verbergen ihre Spitzen (Klötze ab {least}), schraffierte nicht, gefüllte sind freie Trägerplatte. Die Spalten sind wie von vorn nummeriert, hier laufen sie also rückwärts.",
		"rear/turn":         "Wenden Sie das Paneel über seine senkrechte Kante, wie eine Buchseite: Das Dreieck bleibt oben. Dann sehen Sie sich seine Kante an, bevor Sie bohren:",
		"rear/corner-left":  "Oben links auf der Rückseite ist Spalte {column} der Vorderseite: von oben {heights}.",
		"rear/corner-right": "Oben rechts auf der Rückseite ist Spalte {column} der Vorderseite: von oben {heights}.",
		"rear/row":          "Reihe {row}, {down} unter der Oberkante des Feldes, von der linken Kante der Rückseite",
	}
}

// germanWayIn is what is said of the way in, step by step.
func germanWayIn() map[string]string {
	return map[string]string{
		"way/open":         "Der Zugang",
		"way/packed":       "Verpackt misst das größte Paneel {wide} × {high} × {deep}.",
		"way/passes":       "kommt durch",
		"way/passes-bare":  "kommt nur ohne Rahmen und Verpackung durch",
		"way/stuck":        "kommt nicht durch",
		"way/not-measured": "nicht gemessen",
		"way/longest":      "(längstes {long})",
		"way/open-points":  "Gerechnet mit genauen Drehungen; eine Tür zählt wie ein gleich breiter Durchgang. Nicht geprüft: Handläufe, Decken über Treppen, die Kante der Aufzugstür, und was herumsteht. Probieren Sie es mit einer gleich langen Leiste.",
		"way-step/door":    "Vom Flur durch die Tür",
		"way-step/stairs":  "Podest der Treppe",
		"way-step/lift":    "Aufzug",
		"way-step/vehicle": "Fahrzeug",

		"way-size/door":    "Tür {door} × {high}, Flur {corridor}",
		"way-size/stairs":  "Lauf {flight}, Podest {landing}",
		"way-size/lift":    "Tür {door}, Kabine {wide} × {deep}, {high} hoch",
		"way-size/vehicle": "Ladefläche {long}",
	}
}

// germanDay is the day of hanging, step by step, and what is asked about a public room.
func germanDay() map[string]string {
	return map[string]string{
		"day/open":        "Der Tag des Aufhängens",
		"day/weigh":       "Wiegen Sie das Paneel, und tragen Sie ein, was es wiegt: Schrauben, Leiste und Personen sind jetzt für {mass} gezählt.",
		"day/weigh-stand": "Wiegen Sie das Paneel, und tragen Sie ein, was es wiegt: Personen sind jetzt für {mass} gezählt, und ein Standfuß wird dafür gebaut.",
		"day/not-yet":     "Halten Sie hier an: Ein Halt zu dem, was es hält, zu Sicherung, Standfuß, Heben oder der Luft darüber ist noch nicht ausgeräumt. Vorher wird nichts aufgehängt.",
		"day/unchecked":   "Halten Sie hier an: Es ist nichts bekannt, was es hält. Vorher wird nichts aufgehängt.",
		"day/trace":       "Suchen Sie mit einem Leitungssucher über die ganze Höhe der Leiste nach Kabeln und Rohren ({at}). Schalten Sie den Stromkreis ab, wo Sie nicht sicher sein können.",
		"day/cable":       "{kind} bei {at}",
		"day/no-cable":    "keine Steckdose und kein Schalter ist notiert",
		"day/studs":       "Suchen Sie die Ständer mit einem Magneten oder einem feinen Bohrer, und reißen Sie ihre Mitten an: Erwartet werden sie bei {at} von der linken Ecke. Tragen Sie ein, was Sie finden, wenn es abweicht.",
		"day/level":       "Reißen Sie eine Waagrechte an, {tip} über dem Boden, von {from} bis {to}: die Spitze der Leiste.",
		"day/shims":       "Halten Sie die Leiste an die Linie, und sehen Sie an ihr entlang: Unterlegen Sie sie an jeder Befestigung mit bis zu {most} festen Unterlagen, bis sie gerade ist. Unterlegen Sie die Distanzleiste am Fuß ebenso, damit das Paneel lotrecht hängt.",
		"day/bore":        "Bohren Sie die {count} Löcher der Liste unten, und schrauben Sie die Leiste an: ihre hohe Kante von der Wand weg, ihre Schräge zur Wand hin abfallend.",
		"day/strip-lead":  "Die Leiste an der Wand muss fassen:",
		"day/strip":       "ihre hohe Kante steht von der Wand weg, ihre Schräge fällt zur Wand hin ab. Die Hälfte am Paneel greift dahinter. Anders herum hält nichts.",
		"day/strip-title": "Die Leiste an der Wand und die Hälfte am Paneel darüber, im Schnitt, die Wand links",
		"day/proof":       "Proben Sie jede Leiste: Hängen Sie {mass} an Gewichten daran, über ihre Länge verteilt und dicht über dem Boden, niemand darunter, nie eine Person. Das ist doppelt so viel, wie sie tragen wird (gängige Praxis, ohne Quelle). Warten Sie zehn Minuten, suchen Sie nach Spalten, Rissen und Absinken, und nehmen Sie sie wieder ab.",
		"day/lift":        "{people} {people|Person hebt|Personen heben} das Paneel hinauf, eine davon gibt das Zeichen.",
		"day/lift-one":    "Eine Person hebt das Paneel hinauf; eine zweite sieht dahinter und gibt das Zeichen.",
		"day/lift-by":     "{names} heben das Paneel hinauf, mindestens {people}; eine Person davon gibt das Zeichen.",
		"day/lift-named":  "{lead} leitet das Heben, {method}.",
		"day/lower-first": "Die unteren Paneele zuerst.",
		"day/hook":        "Heben Sie es {room} über seinen Platz, legen Sie es an die Wand, und lassen Sie es auf ganzer Länge auf die Leiste herab. Sehen Sie von beiden Seiten dahinter.",
		"day/lock":        "Ziehen Sie die Aushebesicherung ({lock}) an, und versuchen Sie, das Paneel abzuheben.",
		"day/record":      "Schreiben Sie auf, wer es aufgehängt hat, wann, was es wog und was gefunden wurde. Prüfen Sie nach drei Monaten und nach einem Jahr Fugen, Sicherung und waagrechten Sitz.",
		"day/stand":       "Stellen Sie den Standfuß auf, wo er hinkommt, auf ebenem Boden, die Vorderkante zum Raum, und proben Sie ihn mit einem Stoß.",
		"day/lift-stand":  "{people} {people|Person hebt|Personen heben} jedes Paneel hinauf, das unterste zuerst.",
		"day/holes":       "Löcher in der Wand",
		"day/along":       "Von der linken Ecke, {unit}",
		"day/up":          "Über dem Boden, {unit}",

		"ask/heading":        "In einem öffentlichen Raum zu klären",
		"photos/open":        "Bilder der Wand",
		"photos/lead":        "Sie bleiben bei diesem Auftrag in diesem Browser, kleiner und ohne den Ort, an dem sie aufgenommen wurden. Keine Datei, kein Link und kein Papier enthält sie; sichern Sie eines, um es weiterzugeben.",
		"photos/lead-letter": "Alle gehen mit Ihrer Nachricht mit, höchstens sechs, kleiner und ohne den Ort, an dem sie aufgenommen wurden. Bis dahin bleiben sie bei diesem Auftrag in diesem Browser; kein Link enthält sie.",
		"photos/wall":        "Die Wand",
		"photos/studs":       "Ständermarken",
		"photos/damage":      "Vorhandene Schäden",
		"photos/way":         "Der Zugang",
		"photos/save":        "Sichern",
		"photos/drop":        "Herausnehmen",

		"message/photo-dropped":  "Das Bild wurde aus diesem Browser genommen.",
		"message/photo-unread":   "Dies ist kein Bild, das der Browser lesen kann.",
		"message/photos-full":    "Ein Auftrag fasst 40 Bilder. Sichern Sie einige, und nehmen Sie sie heraus.",
		"message/photo-not-kept": "Der Browser hat das Bild nicht gespeichert.",

		"ask/private": "Zum Gebäude zu klären",
		"ask/lead":    "Fragen Sie die Stelle, die für das Gebäude zuständig ist, schreiben Sie auf, wer was wann gesagt hat, und halten Sie sich daran. Nichts hier ist ein Bescheid. Die Antworten bleiben bei der Akte des Auftrags in diesem Browser.",

		"label/record.asked.fire":         "Welche Brandklasse muss die Oberfläche haben, und welcher Nachweis wird verlangt? Ein tiefes Feld aus Klötzen ist nicht das, woran Klassen geprüft werden.",
		"label/record.asked.walkway":      "Wie weit darf es vorstehen, wo Menschen gehen, auch solche, die ihren Weg mit dem Stock ertasten?",
		"label/record.asked.devices":      "Wer erlaubt genau diesen Platz, wo es einen Melder, Sprinkler, Handfeuermelder, ein Schild, eine Tür oder einen Fluchtweg bedrängt?",
		"label/record.asked.reach":        "Darf es in Reichweite hängen, und wer steht ein, wenn jemand daran zieht?",
		"label/record.asked.protected":    "Steht die Wand unter Denkmalschutz, was darf sie berühren, und wer erlaubt es?",
		"label/record.asked.drill":        "Wer darf hier bohren, und wer hat die Pläne der Rohre und Kabel?",
		"label/record.asked.professional": "Welcher Fachmann hat angesehen, was die Paneele hält, mit Namen? Das wird festgehalten, gibt aber nichts frei, was ein Tragwert, ein Ständer oder eine Sicherung freigeben muss.",
		"label/record.asked.licence":      "Seine Zulassung oder sein Betrieb",
		"label/record.asked.lookedOn":     "Angesehen am",
		"label/record.asked.lookedAt":     "Was angesehen und was dazu gesagt wurde",
		"label/record.asked.lookedFor":    "Revision, die gezeigt wurde",
		"label/record.asked.other":        "Weitere Antworten, mit Namen und Tagen",
		"label/record.weighed.kg":         "Masse des schwersten Paneels wie gewogen",
		"label/record.hung.people":        "Wer hebt, mit Namen",
		"label/record.hung.day":           "Aufgehängt am",
		"label/record.hung.by":            "Wer dafür einsteht",
		"label/record.hung.proofKg":       "Die Leiste wurde geprobt mit",
		"label/record.hung.found":         "Was bei der Probe und danach gefunden wurde",
		"zero/record.weighed.kg":          "0: nicht gewogen; Pfund mit lb dahinter",
		"zero/record.hung.proofKg":        "0: nicht geprobt",
		"zero/record.hung.people":         "Nacheinander, mit Strichpunkten",
		"zero-means/not-known":            "nicht bekannt",
		"zero-means/not-tried":            "nicht geprobt",
	}
}
