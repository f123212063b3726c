package words

import "maps"

// germanShop says what a maker reads of sticks, moisture, lay-up and days.
func germanShop() map[string]string {
	all := germanRows()
	maps.Copy(all, germanSticks())
	maps.Copy(all, germanRecord())
	maps.Copy(all, germanRecordLabels())
	maps.Copy(all, germanDays())
	maps.Copy(all, germanTools())
	return all
}

// germanRows says the screen that shows one row at the bench.
func germanRows() map[string]string {
	return map[string]string{
		"shop/heading":          "An der Werkbank",
		"page/record-opened":    "Die Akte der Arbeit ist übernommen.",
		"message/record-unread": "Zu diesem Auftrag war hier eine Akte der Arbeit gespeichert, die nicht lesbar ist. Sie bleibt gespeichert.",
		"days/late":             "Fertig am {ready}, gewünscht bis {wanted}: {n} {n|Tag|Tage} zu spät. {waiting} {waiting|Tag|Tage} auf dem Weg dahin {waiting|wartet|warten} nur auf Holz, Leim und Anstriche.",
		"days/not-cured":        "Es soll am {hang} verpackt oder aufgehängt werden, und fertig und ausgehärtet ist es frühestens am {cured}. Verpackung klebt an einer weichen Oberfläche.",
		"days/cure-unknown":     "Niemand hier weiß, wie lange diese Oberfläche aushärtet: Lesen Sie ihr Merkblatt, bevor am {hang} etwas verpackt oder aufgehängt wird.",

		"record/bins-not-counted": "{n} von {of} Kisten {n|ist|sind} noch nicht gezählt. Zählen Sie jede Kiste, bevor der Leim geöffnet wird.",
		"record/not-counted":      "Noch hat niemand die Klötze gezählt. Zählen Sie jede Kiste, bevor der Leim geöffnet wird.",
		"record/bin-short":        "In der Kiste {height} liegen {good} von {need} guten Klötzen: {short} {short|fehlt|fehlen}. Schneiden Sie {cut} weitere, bevor Sie den Leim öffnen.",
		"record/other-paper":      "Die Reihenkarten in der Hand sind von Revision {paper}, und der Entwurf ist {now}. Drucken Sie sie neu.",
		"record/other-rows":       "{n} {n|Reihe|Reihen} von Paneel {panel} aus {group} {n|wurde|wurden} nach Karten der Revision {revision} gelegt, und die Karten von {now} weichen ab. Gehen Sie auf jene Revision zurück, oder beginnen Sie das Paneel neu.",

		"rows/open":           "Reihen legen",
		"rows/lead":           "Eine Reihe nach der anderen, in großen Ziffern, für ein Telefon oder ein Tablet an der Werkbank. Haken bleiben in diesem Browser.",
		"rows/none":           "Es ist kein Klotz zu legen.",
		"rows/leave":          "Zurück zur Seite",
		"rows/row":            "Reihe",
		"rows/take":           "Klötze dieser Reihe",
		"rows/cells":          "Höhen von links nach rechts, von vorn gesehen, oben ist oben",
		"rows/bare":           "frei",
		"rows/panel":          "Paneel {n} von {all}",
		"rows/panel-of-group": "{group}, Paneel {n} von {all}",
		"rows/order":          "{n} von {all} von der {edge} aus, Höhen in {unit}",
		"rows/edge-bottom":    "Unterkante",
		"rows/edge-top":       "Oberkante",
		"rows/glue":           "{blocks} {blocks|Klotz|Klötze} leimen, mit {grams} g.",
		"rows/glue-parts":     "{blocks} Klötze in Teilen von {parts} leimen, sonst zieht der Leim Haut: {grams} g insgesamt.",
		"rows/then":           ", dann ",
		"rows/no-glue":        "Diese Reihe bleibt frei: kein Leim.",
		"rows/woods":          "Einfache Kästchen sind {one}, die mit dickem Rand {other}.",
		"rows/bin-of":         "{height} {wood}",
		"rows/set":            "{n} {n|losen Klotz|lose Klötze} aus der Kiste {height} in {n|die freie Zelle|die freien Zellen} setzen, ohne Leim.",
		"rows/set-some":       "{n} {n|losen Klotz|lose Klötze} in {n|die freie Zelle|die freien Zellen} setzen, ohne Leim: {from} aus der Kiste {height} und {lacking} Reststücke desselben Querschnitts.",
		"rows/pull":           "Ist die Reihe gepresst, {n} {n|losen Klotz|lose Klötze} ziehen und {n|ihn|sie} zurücklegen.",
		"rows/measure":        "Sollmaß {distance} von der {edge} bis zur fernen Seite dieser Reihe, auf {tolerance} genau.",
		"rows/stale":          "{n} {n|Reihe|Reihen} dieses Paneels {n|wurde|wurden} nach Karten der Revision {revision} gelegt. Die Karten von {now} weichen ab. Gehen Sie auf jene Revision zurück, oder beginnen Sie das Paneel neu.",
		"rows/held":           "{n} {n|Halt hält|Halte halten} das Leimen auf: Sehen Sie im Abschnitt Werkbank nach, bevor Sie den Leim öffnen.",
		"rows/anew":           "Dieses Paneel neu beginnen",
		"rows/back":           "Zurück",
		"rows/next":           "Gelegt, weiter",
		"rows/finish":         "Gelegt",
		"rows/laid":           "Gelegt ✓",
		"rows/not-laid":       "Nicht gelegt",
		"rows/progress":       "{n} von {all} Reihen gelegt",
		"rows/all-laid":       "Alle Reihen sind gelegt. Lassen Sie den Leim abbinden, bevor ein Paneel aufgestellt oder besäumt wird.",
		"rows/no-wake":        "Dieser Browser hält den Bildschirm nicht wach: Stellen Sie ihn so ein, dass er anbleibt.",
	}
}

// germanRecord says the parts of the record that stand in the section Bench.
func germanRecord() map[string]string {
	return map[string]string{
		"shop/private": "Was hier notiert wird, bleibt in diesem Browser und kommt in keine Datei eines Entwurfs und in keinen Link.",
		"shop/save":    "Akte als Datei sichern",
		"shop/file":    "{title} Akte",
		"shop/sticks":  "Kanteln und Feuchte wie gemessen",
		"shop/meter":   "Feuchte",
		"shop/counts":  "Gezählte Klötze",
		"shop/lay":     "Wie die Reihen gelegt werden",
		"shop/signs":   "Unterschriften",
		"shop/learn":   "Was es wirklich brauchte",
		"shop/drop":    "Herausnehmen",
		"shop/treated": "Gegen Feuer behandelt",

		"fold/cuts":             "{blocks} {blocks|Klotz|Klötze} in {heights} {heights|Höhe|Höhen} aus {n} {n|Kantel|Kanteln}",
		"fold/handling-heading": "Bretter gegen Handgriffe",
		"fold/handling":         "{bought} zu kaufen, {n} {n|Rückgriff|Rückgriffe}",
		"fold/sheets":           "{n} {n|Platte|Platten}",
		"fold/sheets-own":       "{n} {n|Platte|Platten} zu kaufen, {own} aus eigenem Bestand",
		"fold/finish-heading":   "Besäumen und Oberfläche",
		"fold/finish":           "der Leim bindet {h} h ab, dann {litres} Oberflächenmittel",
		"fold/unfinished":       "der Leim bindet {h} h ab; keine Oberfläche",
		"fold/sticks":           "{length} lang, {kerf} je Schnitt, {tail} zum Halten",
		"fold/by-metre":         "nach laufendem Meter",
		"fold/boards":           "Bretter von {length}",
		"fold/boards-trim":      "{boards}; Trägerplatten {more} größer, besäumt: {trim}",
		"fold/shop":             "Kanteln mit {pct}, Leim {min} offen, {warm}",
		"fold/people":           "{n} {n|Person|Personen}",
		"fold/people-road":      "{n} {n|Person|Personen}, {km} km entfernt",
		"fold/several":          "{n} von {what}",
		"fold/stock":            "{width} × {thickness} × {length}",
		"fold/of":               "{what}: {name}",
		"fold/nothing-noted":    "nichts notiert",
		"fold/tools":            "{n} von {of} vorhanden",
		"fold/timed":            "{n} {n|Arbeitsgang|Arbeitsgänge} mit Zeit",
		"fold/not-measured":     "nicht gemessen",
		"fold/mean":             "im Mittel {mean}",
		"fold/short":            "{n} von {of} Kisten unvollständig",
		"fold/counted":          "{n} von {of} Kisten gezählt",
		"fold/lay":              "von der {edge} aus, {n} von {of} Reihen gelegt",
		"fold/days":             "{n} {n|Tag|Tage} insgesamt",
		"fold/ready":            "fertig am {day}",
		"fold/unsigned":         "keine",
		"fold/hours":            "{typical}, oder {low} bis {high}",
		"fold/weekends":         "{hours} in {n} {n|Wochenende|Wochenenden}",
		"fold/signed":           "{n} von {of} abgezeichnet",

		"treated/lead": "Eine Aufzeichnung für den, der für das Gebäude einsteht, und keine Klasse der Oberfläche: Der Hersteller des Mittels sagt, wozu es auf diesem Holz, so aufgetragen, taugt; die Behörde sagt, was sie verlangt, und ob ein tiefes Feld aus Klötzen das sein kann, was geprüft wurde.",
		"treated/need": "Zu erreichen: {end} Hirnholz, {long} Seiten und freie Trägerplatte, {frame} Rahmen.",
		"treated/mass": "Bei {coverage} sind das {mass} auf den Klötzen und {frame} auf dem Rahmen.",

		"label/record.treated.product":  "Mittel und sein Hersteller",
		"label/record.treated.batch":    "Charge oder Chargen",
		"label/record.treated.coverage": "Aufgetragen, nass, alle Anstriche zusammen",
		"label/record.treated.where":    "Auf welchen Flächen",
		"label/record.treated.day":      "Letzter Anstrich am",
		"label/record.treated.by":       "Wer es aufgetragen hat",
		"zero/record.treated.coverage":  "0: nicht gewogen. Wiegen Sie die Dose vorher und nachher",

		"count/lead":          "Zählen Sie jede Kiste in Zehnern. Gut sind die, die geschnitten und nicht ausgesondert wurden; der Leim wartet, bis in jeder Kiste liegt, was das Feld braucht.",
		"count/bin":           "{height}",
		"count/bin-of":        "{height} aus {wood}, {size} im Quadrat",
		"count/ten":           "Zehn mehr",
		"count/one":           "Einer mehr",
		"count/out":           "Einer ausgesondert",
		"count/height":        "Höhe",
		"count/need":          "Bedarf",
		"count/spare":         "Ersatz",
		"count/cut":           "Gesägt",
		"count/rejects":       "Raus",
		"count/good":          "Gut",
		"count/short":         "{n} {n|fehlt|fehlen}",
		"count/recut-heading": "Neu zu schneiden",
		"count/recut":         "{n} zu {height}",

		"sign/lead":     "Ein Halt, der nicht Last, Kippen, Heben oder Sicherheit betrifft, kann mit Namen und Grund abgezeichnet werden. Das gilt für diese Revision des Entwurfs.",
		"sign/do":       "Abzeichnen…",
		"sign/begun":    "Noch nicht abgezeichnet: Name und Grund",
		"sign/withdraw": "Zurückziehen",
		"sign/lapsed":   "Abgezeichnet für Revision {revision}; der Entwurf ist jetzt {now}, also gilt es nicht.",
		"sign/signed":   "Abgezeichnet von {name}: {reason}",

		"learn/lead":                "Tragen Sie die Minuten ein, die die Arbeitsgänge wirklich brauchten, alle zusammen, und was wirklich bezahlt wurde. Ein Preisbuch kann daraus lernen: Ein Auftrag rückt einen Satz um weniger als ein Drittel dessen, was er danebenlag.",
		"learn/times":               "Minuten",
		"learn/spent":               "Einkäufe",
		"learn/reckoned-minutes":    "Gerechnet: {minutes} insgesamt. 0: keine Zeit genommen.",
		"learn/reckoned-amount":     "Gerechnet: {amount}. 0: nicht notiert.",
		"learn/ratio":               "Vielfaches des Gerechneten",
		"learn/factor-heading":      "Neuer Faktor",
		"learn/jobs-heading":        "Beruht auf",
		"learn/factor":              "{was} → {now}",
		"learn/price-factor":        "Preise × {factor}",
		"learn/jobs":                "{n} {n|Auftrag|Aufträgen}, {low} bis {high}",
		"learn/choice-heading":      "Was daraus wird",
		"learn/taught":              "Gelernt.",
		"learn/left-out":            "Daraus wird nichts gelernt.",
		"learn/leave-out":           "Weglassen",
		"learn/far":                 "Mehr als das Anderthalbfache daneben: Sehen Sie die Zahl noch einmal an.",
		"learn/doubtful":            "Mehr als das {times}-Fache daneben: vertippt? Es wird nur gelernt, wenn Sie sagen, dass es stimmt.",
		"learn/sure":                "Es stimmt: daraus lernen",
		"learn/more":                "Seither wurden Zahlen eingetragen oder berichtigt; die Schaltfläche lernt diese, und nichts zweimal.",
		"learn/no-more":             "Er hat nichts weiter zu lehren.",
		"learn/back":                "„Zurücknehmen“ nimmt das gelernte Buch zurück. Ein eigenes Buch, das davor galt, steht unter „Geld“ bei „Weitere Preisbücher, die hier gespeichert sind“.",
		"zero/record.road.minutes":  "0: keine Zeit genommen",
		"zero/record.road.km":       "0: nicht notiert",
		"zero-means/not-timed":      "keine Zeit genommen",
		"zero-means/not-noted":      "nicht notiert",
		"label/record.road.minutes": "Auf der Fahrt, alle Wege und Leute zusammen",
		"label/record.road.km":      "Hin- und Rückweg, alle Fahrten",
		"label/record.times.aside":  "Weglassen",
		"label/record.times.sure":   "Es stimmt",
		"label/record.spent.aside":  "Weglassen",
		"label/record.spent.sure":   "Es stimmt",
		"learn/do":                  "Ein Preisbuch in Kraft setzen, das dies gelernt hat",
		"learn/into":                "Das Preisbuch {code} hat aus diesem Auftrag gelernt.",
	}
}

// germanDays says the work over days.
func germanDays() map[string]string {
	return map[string]string{
		"shop/days": "Tage",

		"days/sort":      "Sortieren, schleifen",
		"days/cut":       "Klötze schneiden",
		"days/sand":      "Schleifen, in Kisten",
		"days/strip":     "Leisten auftrennen",
		"days/backer":    "Trägerplatte sägen",
		"days/lay":       "Reihen legen",
		"days/trim":      "Feld besäumen",
		"days/coat":      "Feld streichen",
		"days/frame":     "Rahmen",
		"days/cleat":     "Leiste anschrauben",
		"days/pack":      "Wiegen und packen",
		"days/pack-home": "Wiegen, durchsehen",
		"days/other":     "Andere Arbeit",
		"days/day":       "Tag {n}",
		"days/picture":   "Die Arbeit über die Tage",
		"days/legend":    "Voll: was entscheidet, wann es fertig ist. Schraffiert: was nur wartet. Umrandet: was Spielraum hat.",

		"days/said-undated":   "Fertig {n} {n|Tag|Tage}, nachdem die Kanteln da sind.",
		"days/said-forwards":  "Sind die Kanteln am {start} da, so ist es am {ready} fertig.",
		"days/said-backwards": "Damit es bis {need} fertig ist, müssen die Kanteln am {start} da sein. Fertig ist es dann am {ready}.",
		"days/said-today":     "Sind die Kanteln heute da, am {start}, so ist es am {ready} fertig.",
		"days/waits":          "{n} {n|Tag|Tage} davon {n|wartet|warten} nur: Kanteln, die ruhen, Leim, der abbindet, Anstriche, die trocknen und aushärten.",
		"days/chain":          "Was entscheidet, wann es fertig ist: {list}.",
		"days/weekends":       "Mit dem, was dazwischen ruht und trocknet, dauert es {n} {n|Wochenende|Wochenenden}.",
		"days/more":           "Mit {people} Personen an der Werkbank ist es {n} {n|Tag|Tage} früher fertig.",
		"days/more-none":      "Mit {people} Personen an der Werkbank ist es am selben Tag fertig: Der Rest wartet.",
		"days/sheet":          "Wie lange die Oberfläche aushärtet, sagt nur ihr Merkblatt; dafür ist keine Zeit gerechnet.",

		"weekday/0": "Mo",
		"weekday/1": "Di",
		"weekday/2": "Mi",
		"weekday/3": "Do",
		"weekday/4": "Fr",
		"weekday/5": "Sa",
		"weekday/6": "So",

		"label/record.days.start":       "Die Kanteln sind da am",
		"label/record.days.needBy":      "Gebraucht bis",
		"label/record.days.hang":        "Zu verpacken oder aufzuhängen am",
		"label/record.days.hoursPerDay": "Stunden an der Werkbank je Arbeitstag",
		"label/record.days.daysPerWeek": "Arbeitstage in der Woche",
		"label/record.days.people":      "Personen an der Werkbank",
		"label/record.days.settle":      "Tage, die die Kanteln ruhen",
		"label/record.days.glueSets":    "Stunden, bis der Leim abbindet",
	}
}

// germanTools says what the tools at hand mean, and the jigs.
func germanTools() map[string]string {
	return map[string]string{
		"shop/tools": "Vorhandenes Werkzeug",
		"shop/jigs":  "Vorrichtungen, die zuerst zu bauen sind",

		"choice/mitre saw":       "Kappsäge",
		"choice/mitre box":       "Gehrungslade und Handsäge",
		"choice/stop block":      "Anschlagklotz",
		"choice/clamped carrier": "Spannlade",
		"choice/bench saw":       "Tischkreissäge",
		"choice/sander":          "Schleifmaschine",
		"choice/second sander":   "zweite Schleifmaschine",
		"choice/extraction":      "Staubabsaugung",
		"choice/calliper":        "Messschieber",
		"choice/moisture meter":  "Holzfeuchtemesser",
		"choice/stud finder":     "Balkenfinder oder Magnet",
		"choice/bathroom scale":  "Personenwaage",
		"choice/drill":           "Bohrmaschine",
		"choice/square":          "Winkel",
		"choice/straight-edges":  "zwei Richtlatten",
		"choice/level":           "Wasserwaage",

		"tools/lead":                   "Haken Sie an, was da ist: Wie kurz ein Klotz geschnitten werden darf und wie lange alles dauert, folgt daraus. Holz, das schon da ist, wird bei den Kanteln notiert.",
		"tools/unknown":                "Noch ist nichts angehakt: Gerechnet wird mit Handwerkzeug, dem {factor}-Fachen der Stunden einer Werkstatt.",
		"tools/cut-carrier":            "Mit der Maschine und der Spannlade lassen sich Klötze bis hinunter zu {least} schneiden. Lassen Sie das Blatt stillstehen, bevor Sie einen herausnehmen.",
		"tools/cut-machine":            "An einer Maschine, mit den Fingern, kein Klotz kürzer als {least}. Bauen Sie für kürzere die Spannlade.",
		"tools/cut-machine-box":        "An einer Maschine kein Klotz kürzer als 25 mm ohne Spannlade; die bis {least} in der Gehrungslade, von Hand.",
		"tools/cut-box":                "In der Gehrungslade, eingespannt und von Hand, lassen sich Klötze bis hinunter zu {least} schneiden.",
		"tools/cut-none":               "Keine Säge ist angehakt: Fragen Sie den Händler, ob er auf Länge schneidet, und geben Sie ihm die Liste der Höhen.",
		"tools/too-short":              "Zu kurz dafür: {heights}. Machen Sie {n|ihn|sie} höher, oder bauen Sie die Spannlade.",
		"tools/factor":                 "Alles zusammen dauert das {factor}-Fache der Stunden einer Werkstatt.",
		"tools/cleat-rip":              "Trennen Sie die schrägen Leisten an der Tischkreissäge aus einem breiten Brett, mit einem Schiebestock.",
		"tools/cleat-buy":              "Ohne Tischkreissäge kaufen Sie eine fertige Aufhängeschiene, oder lassen Sie den Händler die Schräge schneiden.",
		"tools/missing":                "Noch zu finden oder zu leihen: {list}.",
		"tools/instead-stop block":     "Statt eines Anschlagklotzes: ein gerades Reststück, ans Anschlaglineal gespannt.",
		"tools/instead-stud finder":    "Statt eines Balkenfinders: Ein starker Magnet findet die Schrauben der Platte.",
		"tools/instead-bathroom scale": "Statt einer Personenwaage: zwei Küchenwaagen unter einer Bohle, ihre Anzeigen zusammengezählt.",
		"tools/instead-straight-edges": "Statt Richtlatten: zwei Werkskanten der Platte.",

		"tools/jig-caution":  "Eine Vorrichtung hält die Finger nur vom Blatt fern, solange sie festgespannt ist. Schutzhauben bleiben dran, die Anleitung des Herstellers Ihrer Säge geht vor, und wobei Sie unsicher sind, das wird von Hand geschnitten.",
		"tools/jig-stop":     "Anschlag: Spannen Sie ihn ans Anschlaglineal, die längsten Klötze zuerst: {stops} vom Blatt. Halten Sie das Stück zwischen Anschlag und Blatt nieder, oder spannen Sie es ein, bis das Blatt steht: Ein loses wird weggeschleudert. Lassen Sie unter dem Anschlag einen Spalt für den Staub, und messen Sie alle fünfzig Schnitte nach.",
		"tools/jig-carrier":  "Spannlade: ein Brett von {length} × {width} mit einer Ausklinkung für die Kantel, in der eine Zwinge sie hält. Beide Hände bleiben an seinen Enden.",
		"tools/jig-fence":    "Startwinkel: zwei gerade Schenkel von mindestens {width} und {height} auf einem ebenen Brett. Sie stehen im Winkel, wenn ihre Enden {diagonal} auseinander sind.",
		"tools/draw-stop":    "Kantel am Anschlaglineal mit Anschlag und Blatt",
		"tools/draw-carrier": "Die Spannlade von oben",
		"tools/draw-fence":   "Der Startwinkel von oben",
	}
}

// germanRecordLabels are the labels of the fields of the record.
func germanRecordLabels() map[string]string {
	return map[string]string{
		"label/record.cards.widths":      "Breiten",
		"label/record.cards.thicknesses": "Dicken",
		"label/record.meter.day":         "Tag",
		"label/record.meter.percent":     "Das Messgerät sagt",
		"label/record.bins.cut":          "Geschnitten",
		"label/record.bins.rejects":      "Ausgesondert",
		"label/record.lay.start":         "Erste Reihe an der Kante",
		"label/record.lay.paper":         "Revision auf den Reihenkarten in der Hand",
		"zero/record.lay.paper":          "Leer, wenn die Karten auf dem Bildschirm sind.",
		"label/record.signOffs.name":     "Name",
		"label/record.signOffs.reason":   "Grund",
		"label/record.times.minutes":     "Minuten",
		"label/record.spent.amount":      "Bezahlt",
		"label/record.learn.aside":       "Ein ungewöhnlicher Auftrag: nichts daraus lernen",
		"label/record.learn.why":         "Was daran ungewöhnlich war",
	}
}

// germanSticks says what is known of sticks and of moisture.
func germanSticks() map[string]string {
	return map[string]string{
		"measure/lead":    "Messen Sie vor dem ersten Schnitt zehn Kanteln mit dem Messschieber, Breite und Dicke von jeder, in derselben Reihenfolge, mit Strichpunkten dazwischen.",
		"measure/card":    "{wood}, {size} im Quadrat",
		"measure/some":    "{n} von {all} Kanteln haben beide Messwerte.",
		"measure/section": "{n} Kanteln: Mittel {mean}, auf {within} genau bekannt; Streuung {spread}; von {least} bis {most}.",
		"measure/row":     "Eine Reihe von {n} Klötzen endet {from} bis {to} neben dem gezeichneten Ende. {basis} Klötze aus einer Kantel weichen alle gleich ab: Mischen Sie jede Kiste.",
		"measure/field":   "Mit {mean} als Klotzmaß ist das Feld {width} × {height} statt {wasWidth} × {wasHeight}, bei gleich vielen Klötzen.",
		"measure/take":    "{mean} als Klotzmaß nehmen",

		"moisture/said":           "{wood}: In diesem Raum stellt sich Holz auf {low} bis {high} Feuchte ein, und die Kanteln haben {stock}. Über ein Jahr wächst die Seite von {side} um bis zu {growth} und schwindet um bis zu {shrink}. Ihre Fugen fassen {slack}, und jede steht {joint} offen, wenn es am trockensten ist. Der Rahmen braucht {gap} Luft auf jeder Seite.",
		"moisture/said-frameless": "{wood}: In diesem Raum stellt sich Holz auf {low} bis {high} Feuchte ein, und die Kanteln haben {stock}. Über ein Jahr wächst die Seite von {side} um bis zu {growth} und schwindet um bis zu {shrink}. Ihre Fugen fassen {slack}, und jede steht {joint} offen, wenn es am trockensten ist.",
		"moisture/beyond":         "Unter 6 und über 14 % Feuchte hat das Handbuch keine Zahlen: Die Bewegung wird dort geradlinig fortgesetzt.",
		"moisture/settle":         "Lassen Sie die Kanteln mindestens {least} Tage in Luft wie der des Raums ruhen; planen Sie mit {plan}.",
		"moisture/settled":        "Die Kanteln haben sich angepasst: Zwei Messungen im Abstand von einer Woche oder mehr weichen um weniger als einen halben Punkt ab.",
		"moisture/not-settled":    "Die Kanteln haben sich noch nicht angepasst: Keine Messung eine Woche oder mehr vor der letzten liegt innerhalb eines halben Punktes davon.",
		"moisture/add":            "Eine Messung des Feuchtemessers hinzufügen",
		"moisture/take":           "Die letzte Messung als Feuchte der Kanteln nehmen",

		"measure/drift":         "Eine Reihe von {n} Klötzen kann {off} neben dem gezeichneten Ende enden, und der Rahmen hat auf beiden Seiten zusammen {air} Luft. {basis}",
		"measure/basis-assumed": "Gerechnet ist mit der üblichen Streuung gehobelter Kanteln, da niemand zehn gemessen hat.",
		"measure/basis-card":    "Gerechnet ist mit den gemessenen Kanteln.",

		"moisture/stock":         "Die Kanteln haben {stock}, und Holz im Raum stellt sich auf etwa {middle} ein ({low} bis {high}). Lassen Sie sie {days} Tage in Luft wie der des Raums ruhen, bis zwei Messungen im Abstand einer Woche um weniger als einen halben Punkt abweichen, oder lassen Sie breitere Fugen.",
		"moisture/growth":        "Von {stock} auf {high} Feuchte will die Seite von {side} um {growth} wachsen, und ihre Fugen fassen {slack}. Lassen Sie {each} je Klotz.",
		"moisture/growth-beyond": "Von {stock} auf {high} Feuchte will die Seite von {side} um {growth} wachsen, und ihre Fugen fassen {slack}. Kein Spiel nimmt das auf: Lassen Sie die Kanteln zuerst in der Luft des Raums ruhen, machen Sie die Paneele kleiner, oder nehmen Sie ein Holz, das weniger arbeitet.",
		"moisture/frame-gap":     "Das Feld kann seinen Fugen entwachsen: Es wächst um bis zu {growth}, und sie fassen {slack}. Lassen Sie auf jeder Seite {need} Luft zwischen Feld und Rahmen statt {gap}.",
	}
}
