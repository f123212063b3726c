package wood

// Coverage is how many square metres a litre finishes in one coat.
type Coverage struct {
	EndFirst, EndNext   float64 // end grain: the tops of the blocks
	FaceFirst, FaceNext float64 // long grain and bare backer
	Frame               float64 // every coat on the frame
}

// Hours is a span of time.
type Hours struct{ Low, High float64 }

// Finish is what the wood is sealed with. Its figures are habit: the label on
// the tin goes before them.
type Finish struct {
	Name               string
	Coverage           Coverage
	CoatsMin           int // that make sense on blocks
	CoatsMax           int
	OilyRags           bool  // rags can catch fire by themselves
	NextCoat, FullyDry Hours // zero FullyDry: only the maker's sheet says
	Source             string
}

// coverage holds for every finish until the shop has figures of its own; end
// grain drinks about two and a half times as much as long grain in the first coat.
// The Wood Handbook (GTR-190 ch. 16) gives penetrating stains 2.4 to 4.9 m²
// for a litre on saw-textured and 4.9 to 9.8 m² on smooth wood.
func coverage() Coverage {
	return Coverage{EndFirst: 4.5, EndNext: 9, FaceFirst: 11, FaceNext: 13, Frame: 11}
}

// Hours of a day and a week, for drying times.
const (
	day  = 24
	week = 7 * day
)

// Finishes returns what the shop can seal a field with; the first one takes no
// coats.
//
// Any oil that hardens by taking up oxygen heats its rags, which counts for
// hard-wax oils too: they are drying oils with wax in them.
func Finishes() []Finish {
	return []Finish{
		{Name: "none", Coverage: coverage(), Source: practice},
		{
			Name: "waterborne varnish", Coverage: coverage(), CoatsMin: 1, CoatsMax: 3,
			NextCoat: Hours{2, 4}, FullyDry: Hours{week, week}, Source: practice,
		},
		{
			Name: "hard-wax oil", Coverage: coverage(), CoatsMin: 1, CoatsMax: 2, OilyRags: true,
			NextCoat: Hours{12, 24}, FullyDry: Hours{week, 2 * week}, Source: practice,
		},
		{
			Name: "drying oil", Coverage: coverage(), CoatsMin: 1, CoatsMax: 3, OilyRags: true,
			NextCoat: Hours{day, 2 * day}, FullyDry: Hours{2 * week, 4 * week}, Source: practice,
		},
		{
			Name: "shellac", Coverage: coverage(), CoatsMin: 1, CoatsMax: 4,
			NextCoat: Hours{1, 2}, FullyDry: Hours{3 * day, 3 * day}, Source: practice,
		},
		{
			Name: "fire-retardant varnish", Coverage: coverage(), CoatsMin: 2, CoatsMax: 3,
			NextCoat: Hours{day, day}, Source: practice,
		},
	}
}

// FindFinish returns the finish with a name.
func FindFinish(name string) (Finish, bool) {
	for _, f := range Finishes() {
		if f.Name == name {
			return f, true
		}
	}
	return Finish{}, false
}
