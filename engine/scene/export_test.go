package scene

// What the black-box tests need of the inside: formulas that are checked
// against published values and slow integrals.
var (
	PlanckXY  = planckXY
	Beside    = beside
	Opposite  = opposite
	Encode8   = encode
	ChanceCut = chanceCut
)

// BackerHit is where a ray meets the backer of a panel, and the normal there.
func BackerHit(p Panel, o, d [3]float64) (t float64, n [3]float64) {
	b := newBoard(&p)
	t, at := b.backer(vec{o[0], o[1], o[2]}, vec{d[0], d[1], d[2]})
	return t, [3]float64{at.X, at.Y, at.Z}
}
