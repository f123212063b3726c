// Package wood holds what the workshop knows about its materials: woods,
// sawn and planed sections, sheets, finishes and stock lengths, and the closed
// forms for density, movement and moisture of wood.
//
// Every row names its source. Most are from the Wood Handbook of the Forest
// Products Laboratory (FPL-GTR-190, public domain), from its tables 4-3
// (shrinkage), 5-3a (specific gravity at 12 %) and 13-5 (movement), and from
// the National Design Specification for Wood Construction (NDS, 2018), table
// 12.3.3A. What is only habit says "common practice, no source".
//
// Beware of three different specific gravities, all with the oven-dry mass:
// basic (volume when green), G12 (volume at 12 % moisture) and the NDS one
// (volume when oven-dry). Mass is worked out from G12, fasteners from NDS; one
// never goes into the other's formula.
//
// Units: kg/m³, moisture in percent of the oven-dry mass, movement as a
// fraction of the size for each percent of moisture, temperature in °C.
package wood

// Species is one wood of the shop.
type Species struct {
	Name      string // what the shop calls it
	Row       string // the wood in the tables that stands for it
	Botanical string

	// DensityKgM3 is the mass at 12 % moisture over the volume at 12 %.
	DensityKgM3 float64
	BasicG      float64 // oven-dry mass, green volume
	NDSG        float64 // oven-dry mass and volume, for fasteners; 0 if not listed

	// MovementRadial and MovementTangential are fractions of the size across
	// the grain for each percent of moisture, between 6 and 14 %.
	MovementRadial     float64
	MovementTangential float64

	// SideHardnessN is the force in newtons that presses a steel ball of 11.3 mm half its
	// width into the side of the wood at 12 % moisture. GTR-190 table 5-3a (from memory).
	SideHardnessN float64

	Estimated bool   // some figure is not of a table row for this wood
	Source    string // of the figures, and of the estimate
}

// MovementMean returns the mean of radial and tangential movement, for blocks
// whose rings lie in all directions.
func (s Species) MovementMean() float64 { return (s.MovementRadial + s.MovementTangential) / 2 }

// softN is below which hardness a wood counts as soft: between the softwoods with poplar
// and the other woods of the shop, where none lies near. Chosen by us.
const softN = 3000

// Soft reports whether a wood takes dents from everyday knocks, as a chair's back makes.
func (s Species) Soft() bool { return s.SideHardnessN < softN }

// Sources of the rows below.
const (
	handbook    = "Wood Handbook FPL-GTR-190, tables 4-3, 5-3a, 13-5; NDS 2018 table 12.3.3A"
	handbookLaw = "Wood Handbook FPL-GTR-190, tables 4-3, 5-3a, movement from shrinkage by the law of its table 13-5; NDS 2018 table 12.3.3A"

	// unlisted ends the source of a wood that the NDS does not list.
	unlisted = " (not listed)"

	sprucesNote = "specific gravity: Forest Service inventory data (NRS-38), as the 0.36 of GTR-190 table 5-3a " +
		"lies below its own green value 0.37; movement: no row, mean shrinkage of black, Sitka and Engelmann spruce " +
		"(from memory) by the law of table 13-5; NDS 2018 table 12.3.3A, spruce-pine-fir"
	pineNote = "density: common practice, no source; basic specific gravity back from it by GTR-190 eq. 4-10; " +
		"movement: mean shrinkage of lodgepole and ponderosa pine (from memory) by the law of table 13-5; " +
		"NDS 2018 table 12.3.3A, red pine"
	mapleNote = "; the NDS value is that of mixed maple, the lowest of its group"
)

// All returns the woods of the shop, softwoods first.
func All() []Species {
	return []Species{
		{
			Name: "pine", Row: "Scots or red pine", Botanical: "Pinus sylvestris, P. resinosa",
			DensityKgM3: 500, BasicG: 0.42, NDSG: 0.44,
			MovementRadial: Movement((4.3 + 3.9) / 2), MovementTangential: Movement((6.7 + 6.2) / 2),
			SideHardnessN: 2500,
			Estimated:     true, Source: pineNote,
		},
		{
			Name: "spruce", Row: "white spruce", Botanical: "Picea glauca",
			DensityKgM3: 0.40 * perG12, BasicG: 0.37, NDSG: 0.42,
			MovementRadial: Movement((4.1 + 4.3 + 3.8) / 3), MovementTangential: Movement((6.8 + 7.5 + 7.1) / 3),
			SideHardnessN: 2100,
			Estimated:     true, Source: sprucesNote,
		},
		{
			Name: "cedar", Row: "western redcedar", Botanical: "Thuja plicata",
			DensityKgM3: 0.32 * perG12, BasicG: 0.31, NDSG: 0.36,
			MovementRadial: 0.00081, MovementTangential: 0.00172,
			SideHardnessN: 1600,
			Source:        handbookLaw + ", western cedars",
		},
		{
			Name: "poplar", Row: "yellow-poplar", Botanical: "Liriodendron tulipifera",
			DensityKgM3: 0.42 * perG12, BasicG: 0.40, NDSG: 0.43,
			MovementRadial: 0.00158, MovementTangential: 0.00289,
			SideHardnessN: 2400,
			Source:        handbookLaw,
		},
		{
			Name: "beech", Row: "American beech", Botanical: "Fagus grandifolia",
			DensityKgM3: 0.64 * perG12, BasicG: 0.56, NDSG: 0.71,
			MovementRadial: 0.00190, MovementTangential: 0.00431,
			SideHardnessN: 5800,
			Source:        handbook,
		},
		{
			Name: "ash", Row: "white ash", Botanical: "Fraxinus americana",
			DensityKgM3: 0.60 * perG12, BasicG: 0.55,
			MovementRadial: 0.00169, MovementTangential: 0.00274,
			SideHardnessN: 5900,
			Source:        handbook + unlisted,
		},
		{
			Name: "maple", Row: "sugar maple", Botanical: "Acer saccharum",
			DensityKgM3: 0.63 * perG12, BasicG: 0.56, NDSG: 0.55,
			MovementRadial: 0.00165, MovementTangential: 0.00353,
			SideHardnessN: 6400,
			Source:        handbook + mapleNote,
		},
		{
			Name: "oak", Row: "white oak", Botanical: "Quercus alba",
			DensityKgM3: 0.68 * perG12, BasicG: 0.60, NDSG: 0.73,
			MovementRadial: 0.00180, MovementTangential: 0.00365,
			SideHardnessN: 6000,
			Source:        handbook,
		},
		{
			Name: "cherry", Row: "black cherry", Botanical: "Prunus serotina",
			DensityKgM3: 0.50 * perG12, BasicG: 0.47,
			MovementRadial: 0.00126, MovementTangential: 0.00248,
			SideHardnessN: 4200,
			Source:        handbook + unlisted,
		},
		{
			Name: "walnut", Row: "black walnut", Botanical: "Juglans nigra",
			DensityKgM3: 0.55 * perG12, BasicG: 0.51,
			MovementRadial: 0.00190, MovementTangential: 0.00274,
			SideHardnessN: 4500,
			Source:        handbook + unlisted,
		},
	}
}

// Find returns the wood with a name.
func Find(name string) (Species, bool) {
	for _, s := range All() {
		if s.Name == name {
			return s, true
		}
	}
	return Species{}, false
}
