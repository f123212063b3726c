package words

// english lists the parts of the English catalogue, one for each room that has
// something to say.
func english() []map[string]string {
	return []map[string]string{
		englishBench(),
		englishBenchChecks(),
		englishBook(),
		englishChecks(),
		englishCutting(),
		englishErrors(),
		englishFaults(),
		englishGiven(),
		englishHearing(),
		englishHome(),
		englishLetters(),
		englishLimits(),
		englishPage(),
		englishOrder(),
		englishPapers(),
		englishShop(),
		englishSound(),
		englishWall(),
		englishWhy(),
	}
}
