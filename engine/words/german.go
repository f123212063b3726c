package words

// german lists the parts of the German catalogue, one for each room that has
// something to say.
func german() []map[string]string {
	return []map[string]string{
		germanBench(),
		germanBenchChecks(),
		germanBook(),
		germanChecks(),
		germanCutting(),
		germanErrors(),
		germanFaults(),
		germanGiven(),
		germanHearing(),
		germanHome(),
		germanLetters(),
		germanLimits(),
		germanPage(),
		germanOrder(),
		germanPapers(),
		germanShop(),
		germanSound(),
		germanWall(),
		germanWhy(),
	}
}
