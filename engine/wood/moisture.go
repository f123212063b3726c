package wood

// Moisture contents, in percent of the oven-dry mass.
const (
	// fibreSaturation is where cell walls are full: above it wood neither
	// swells nor changes its specific gravity. GTR-190 ch. 4 takes 30 %.
	fibreSaturation = 30
	// dryMoisture is the moisture that published densities are for.
	dryMoisture = 12
)

// perG12 is the density in kg/m³ at 12 % moisture for each unit of G12: water
// at 1000 kg/m³ and 12 % of water on top of the wood. GTR-190 ch. 4.
const perG12 = 1000 * (1 + dryMoisture/100.0)

// swell is the slope of specific gravity over moisture below fibre saturation
// in GTR-190 eq. 4-10: the volumetric shrinkage of average wood is 26.5 % of
// its basic specific gravity.
const swell = 0.265

// SpecificGravityAt returns the specific gravity (oven-dry mass, volume at the
// moisture) of a wood of given basic specific gravity: GTR-190 eq. 4-10,
//
//	Gx = Gb / (1 − 0.265·Gb·(1 − x/30)).
func SpecificGravityAt(basicG, moisturePct float64) float64 {
	return basicG / (1 - swell*basicG*dryness(moisturePct))
}

// DensityAt returns the density in kg/m³ at a moisture content for a wood of
// given G12: back to the basic specific gravity by eq. 4-10, forward to the
// moisture, and the water on top. At 12 % it is 1120·G12.
func DensityAt(g12, moisturePct float64) float64 {
	basic := g12 / (1 + swell*g12*dryness(dryMoisture))
	return 1000 * SpecificGravityAt(basic, moisturePct) * (1 + moisturePct/100)
}

// dryness is how far a wood is below fibre saturation: 1 oven-dry, 0 green.
func dryness(moisturePct float64) float64 {
	return max(0, 1-moisturePct/fibreSaturation)
}

// lbFt3 is one pound in a cubic foot in kg/m³: 0.45359237 / 0.3048³, exact.
const lbFt3 = 0.45359237 / (0.3048 * 0.3048 * 0.3048)

// NDSDensity returns the density in kg/m³ at a moisture content for a wood of
// given NDS specific gravity (oven-dry mass and volume): NDS 2018 supplement,
//
//	62.4·G/(1 + 0.009·G·m)·(1 + m/100) lb/ft³.
func NDSDensity(ndsG, moisturePct float64) float64 {
	return 62.4 * lbFt3 * ndsG / (1 + 0.009*ndsG*moisturePct) * (1 + moisturePct/100)
}

// Movement returns the movement for each percent of moisture, as a fraction,
// of a wood that shrinks by shrinkPct from green to oven-dry in the same
// direction: S/(3000 − 20·S). The law is that behind GTR-190 table 13-5 and
// gives its single-species rows to the last digit.
func Movement(shrinkPct float64) float64 { return shrinkPct / (3000 - 20*shrinkPct) }

// EMC returns the moisture in percent at which wood comes to rest in air of a
// temperature in °C and a relative humidity in percent: the two-hydrate form
// of Hailwood and Horrobin with the Celsius coefficients of GTR-190 ch. 4.
// Humidity outside 0 to 100 % is taken as the nearer end.
func EMC(tempC, humidityPct float64) float64 {
	t := tempC
	h := min(max(humidityPct, 0), 100) / 100
	// w is the mass of dry wood that takes up one mole of water, k, k1 and k2
	// are equilibrium constants of dissolved water and of the two hydrates.
	w := 349 + 1.29*t + 0.0135*t*t
	k := 0.805 + 0.000736*t - 0.00000273*t*t
	k1 := 6.27 - 0.00938*t - 0.000303*t*t
	k2 := 1.91 + 0.0407*t - 0.000293*t*t
	kh := k * h
	hydrates := (k1*kh + 2*k1*k2*kh*kh) / (1 + k1*kh + k1*k2*kh*kh)
	return 1800 / w * (kh/(1-kh) + hydrates)
}
