package scene

import (
	"fmt"
	"strconv"
	"strings"
)

// ShaderConstants returns the constants that the shader shares with this
// package, as the text of its declarations: there is one source of each.
func ShaderConstants() string {
	var b strings.Builder
	b.WriteString("\nconst (\n")
	for _, c := range []struct {
		name  string
		value float64
	}{
		{"Never", never}, {"Tiny", tiny}, {"LiftM", liftM},
		{"GoldenAngle", goldenAngle}, {"LampRim", lampRim}, {"ScatterX", scatterX}, {"ScatterY", scatterY}, {"SameLight", sameLight / 255.0}, {"Bounce", bounce}, {"SideLift", sideLift}, {"Shoulder", shoulder},
		{"GlossShine", glossShine}, {"GlossDull", glossDull}, {"GlossSharp", glossSharp},
		{"SeamDark", seamDark}, {"ArrisM", arrisM}, {"ArrisLight", arrisLight}, {"FreeEdgeM", freeEdgeM}, {"MitreM", mitreM},
		{"Sticks", sticks}, {"DriftM", driftM}, {"PithNearM", pithNearM}, {"PithSpanM", pithSpanM},
		{"HeartEdgeM", heartEdgeM}, {"StickSpread", stickSpread}, {"WarmSpread", warmSpread},
		{"BoardPithM", boardPithM}, {"BoardLean", boardLean}, {"BoardWaveM", boardWaveM},
		{"WaverM", waverM}, {"RaysRound", raysRound}, {"SpellYears", spellYears}, {"SpellDeep", spellDeep}, {"LateMean", lateMean}, {"EarlyMean", earlyMean},
		{"RayHalfM", rayHalfM}, {"RaySeen", raySeen}, {"PoreM", poreM}, {"PoreLongM", poreLongM}, {"PoreSeen", poreSeen},
		{"SideGrain", sideGrain},
		{"SkirtingM", skirtingM}, {"SkirtingTopM", skirtingTopM}, {"PlankM", plankM}, {"PlankLineM", plankLineM},
		{"FloorGloss", floorGloss}, {"OutlineM", outlineM}, {"OutlineDark", outlineDark},
		{"SkirtingR", skirtingPaint().R}, {"SkirtingG", skirtingPaint().G}, {"SkirtingB", skirtingPaint().B},
		{"FloorR", floorWood().R}, {"FloorG", floorWood().G}, {"FloorB", floorWood().B},
	} {
		fmt.Fprintf(&b, "\t%s = %s\n", c.name, strconv.FormatFloat(c.value, 'e', -1, 64))
	}
	b.WriteString(")\n")
	return b.String()
}
