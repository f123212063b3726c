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
