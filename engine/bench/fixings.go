package bench

import "math"

// Least counts, where nobody has said what holds. Common practice, no source.
const (
	leastCleatScrews = 6
	leastFixings     = 4 // a panel
)

// Held is what holds the panels of a group, as the wall has worked it out.
type Held struct {
	CleatScrews int // of a panel, through its half of the cleat
	WallFixings int // for a panel
	Rule        FixingRule
	Cleat, Wall Screw   // kinds of screws; Wall with PublishedRules only
	StripM2     float64 // of strips in the wall that are higher than a strip of the shop, all panels
}

// unsaid is what a group is counted to take where nobody has worked out more.
func unsaid() Held {
	return Held{CleatScrews: leastCleatScrews, WallFixings: leastFixings, Rule: NotChecked}
}

// hold asks what holds each group, now that its mass is known.
func (b *Bill) hold(jobs []job, holds func(group int, panelKg float64) Held) {
	for i, j := range jobs {
		g := &b.Groups[i]
		if g.Held = unsaid(); holds != nil {
			g.Held = holds(i, g.HeaviestKg)
		}
		b.CleatScrews += g.CleatScrews * j.panels()
		b.WallFixings += g.WallFixings * j.panels()
		if j.built.Framed {
			b.Brads += bradsAFrame * j.panels()
		}
	}
}

// roundUp is the whole number not below x. What a float adds to a whole number
// by accident does not make one more.
func roundUp(x float64) int {
	const accident = 1e-9
	return int(math.Ceil(x - accident))
}
