package words

// germanWhy says why a price is what it is, and what a budget buys.
func germanWhy() map[string]string {
	return map[string]string{
		"talk/lead":     "Mit einem Kunden neben Ihnen: Die Taste F8 nimmt alles Vertrauliche von der Seite und bringt es wieder.",
		"talk/hide":     "Zahlen verbergen",
		"why/heading":   "Warum dieser Preis",
		"why/open":      "Schritte, Aussichten und Stunden zeigen",
		"why/close":     "Wegräumen",
		"why/waterfall": "Von den Waren zum Preis",
		"why/tasks":     "Stunden nach Arbeitsgang",
		"why/rest":      "alle übrigen",
		"why/span":      "{low} bis {high}",

		"fall/goods":       "zugekauft",
		"fall/markup":      "Zuschlag darauf",
		"fall/labour":      "Arbeit",
		"fall/overhead":    "Gemeinkosten",
		"fall/road":        "Fahrt",
		"fall/contingency": "Wagnis",
		"fall/cost":        "Selbstkosten",
		"fall/asked":       "verlangte Marge",
		"fall/discount":    "Nachlass",
		"fall/rounded":     "aufgerundet",
		"fall/beside":      "daneben verkauft",
		"fall/net":         "Nettopreis",
		"fall/tax":         "Steuer",
		"fall/gross":       "Mit Steuer",

		"odds/heading":    "Wie es ausgehen kann",
		"odds/below":      "In {share} von 100 solchen Aufträgen bleibt weniger als die Untergrenze von {floor} %.",
		"odds/loss":       "In {share} von 100 verliert der Auftrag Geld.",
		"odds/margin":     "Einer von zehn Aufträgen lässt weniger als {worst} % des Preises übrig, die Hälfte mehr als {middle} %, und einer von zehn mehr als {best} %.",
		"odds/surveyed":   "{tries}-mal gezogen aus den besten, den üblichen und den schlechtesten Zeiten der Zeittafel; ein Viertel der Ungewissheit ist allen Arbeitsgängen gemeinsam (erfunden). Waren kosten, was gerechnet ist.",
		"odds/unsurveyed": "{tries}-mal gezogen aus den besten, den üblichen und den schlechtesten Zeiten der Zeittafel; ein Viertel der Ungewissheit ist allen Arbeitsgängen gemeinsam (erfunden), und niemand hat den Ort bisher gesehen. Waren kosten, was gerechnet ist.",

		"way/ask":     "Was müsste sich ändern?",
		"way/heading": "Was sich ändern müsste",
		"way/ends":    "Zusammen {paid}.",
		"way/do":      "Diese Änderungen machen",
		"way/none":    "Keine drei der üblichen Änderungen genügen für dieses Budget ohne einen neuen Halt.",

		"candidate/heading":      "Mit einem Budget beginnen",
		"candidate/lead-client":  "Sagen Sie, was Sie ausgeben möchten, mit Steuer. Die Wand wird genommen, wie sie ist; heraus kommen drei Paneele, jedes so groß, wie Wand und Budget erlauben. Im Budget liegt, was jedes am ehesten kostet; die Spanne sagt, von wo bis wohin es gehen kann.",
		"candidate/lead-maker":   "Die Wand und das Budget oben gehen hinein; heraus kommen drei Paneele, jedes so groß, wie beide erlauben, ohne neuen Halt.",
		"candidate/lead-builder": "Die Wand und das Budget für Waren gehen hinein; heraus kommen drei Paneele, jedes so groß, wie beide erlauben, ohne neuen Halt.",
		"candidate/ask":          "Zeigen, was es kauft",
		"candidate/take":         "Dieses nehmen",
		"candidate/none":         "Dieses Budget kauft kein Paneel für diese Wand.",
		"candidate/no-budget":    "Noch wurde kein Budget genannt.",
		"candidate/large":        "So groß wie möglich",
		"candidate/as-it-is":     "Im gewählten Holz",
		"candidate/fine":         "Ein feineres Holz",
	}
}
