package words

// englishWhy says why a price is what it is, and what a budget buys.
func englishWhy() map[string]string {
	return map[string]string{
		"talk/lead":     "With a client beside you: the key F8 takes everything private off the page, and brings it back.",
		"talk/hide":     "Hide the figures",
		"why/heading":   "Why this price",
		"why/open":      "Show the steps, the odds and the hours",
		"why/close":     "Put it away",
		"why/waterfall": "From the goods to the price",
		"why/tasks":     "Hours by task",
		"why/rest":      "all others",
		"why/span":      "{low} to {high}",

		"fall/goods":       "bought in",
		"fall/markup":      "mark-up on it",
		"fall/labour":      "work",
		"fall/overhead":    "overhead",
		"fall/road":        "road",
		"fall/contingency": "contingency",
		"fall/cost":        "Cost",
		"fall/asked":       "margin asked for",
		"fall/discount":    "discount",
		"fall/rounded":     "rounded up",
		"fall/beside":      "sold beside it",
		"fall/net":         "Net price",
		"fall/tax":         "tax",
		"fall/gross":       "With tax",

		"odds/heading":    "How it may end",
		"odds/below":      "In {share} of 100 such jobs less than the floor of {floor} % is left.",
		"odds/loss":       "In {share} of 100 the job loses money.",
		"odds/margin":     "One job in ten leaves less than {worst} % of the price, half of them more than {middle} %, and one in ten more than {best} %.",
		"odds/surveyed":   "Drawn {tries} times from the best, the usual and the worst times of the time table; a quarter of what is uncertain is common to all tasks (invented). Goods cost what is reckoned.",
		"odds/unsurveyed": "Drawn {tries} times from the best, the usual and the worst times of the time table; a quarter of what is uncertain is common to all tasks (invented), and nobody has seen the site yet. Goods cost what is reckoned.",

		"way/ask":     "What would have to change?",
		"way/heading": "What would have to change",
		"way/ends":    "Together {paid}.",
		"way/do":      "Make these changes",
		"way/none":    "No three of the usual changes are enough for this budget without a new Stop.",

		"candidate/heading":      "Begin with a budget",
		"candidate/lead-client":  "Say what you want to spend, with tax. The wall is taken as it is; three panels come out, each as large as wall and budget allow. What each most likely costs is within it; its range says from where to where that may go.",
		"candidate/lead-maker":   "The wall and the budget above go in; three panels come out, each as large as both allow, with no new Stop.",
		"candidate/lead-builder": "The wall and the budget for goods go in; three panels come out, each as large as both allow, with no new Stop.",
		"candidate/ask":          "Show what it buys",
		"candidate/take":         "Take this one",
		"candidate/none":         "This budget buys no panel for this wall.",
		"candidate/no-budget":    "No budget was said yet.",
		"candidate/large":        "As large as can be",
		"candidate/as-it-is":     "In the wood chosen",
		"candidate/fine":         "A finer wood",
	}
}
