package fixing

import (
	"fmt"
	"math"
)

// Joint is one wood screw through a side member into a main member, and the gap
// between them. Lengths are inches.
type Joint struct {
	Screw    Screw
	LengthIn float64 // of the screw
	SideG    float64
	SideIn   float64 // thickness of the side member
	GapIn    float64
	MainG    float64
	MainIn   float64 // depth of the main member that the screw may stand in
	PullIn   float64 // depth of a first layer of the main member that alone holds against pull; 0: all of it holds
	PullG    float64 // of that layer
	Adjust   Adjust  // of the main member; damp is of both
}

// Holds is what one screw holds, adjusted, in lbf.
type Holds struct {
	PullLbf       float64 // the lower of thread and head
	ThreadLbf     float64
	HeadLbf       float64
	ShearLbf      float64
	Mode          Mode
	PenetrationIn float64
	FullDepth     float64 // share of the depth that full shear wants, at most 1
}

// Depths of screws and nails, in diameters, tip and all: the least that counts
// sideways and that for the full value (12.1.5.6; table 12L, footnote 3).
const (
	leastDepths = 6
	fullDepths  = 10
)

// Holds returns what the joint holds. It is an error where the standard has no
// value: too little depth, a wood outside the tables, pull in end grain.
func (j Joint) Holds() (Holds, error) {
	p := math.Min(j.LengthIn-j.SideIn-j.GapIn, j.MainIn)
	out := Holds{PenetrationIn: p}
	if least := leastDepths * j.Screw.DiameterIn; p < least {
		return out, fmt.Errorf("screw stands %.3f in deep, %.3f in are the least that counts", p, least)
	}
	out.FullDepth = math.Min(1, p/(fullDepths*j.Screw.DiameterIn))
	if err := j.shear(&out); err != nil {
		return out, err
	}
	return out, j.pull(&out)
}

func (j Joint) shear(out *Holds) error {
	side, err := Bearing(j.SideG)
	if err != nil {
		return err
	}
	main, err := Bearing(j.MainG)
	if err != nil {
		return err
	}
	least, mode, err := Dowel{
		DiameterIn: j.Screw.RootIn, YieldPsi: j.Screw.YieldPsi,
		SidePsi: side, MainPsi: main,
		SideIn: j.SideIn, MainIn: out.PenetrationIn - j.Screw.TipIn()/2, GapIn: j.GapIn,
	}.Least()
	out.ShearLbf, out.Mode = least*out.FullDepth*j.Adjust.Shear(), mode
	return err
}

// pull counts the thread without its tip, which the standard takes off for lag
// screws only: the cautious reading.
func (j Joint) pull(out *Holds) error {
	g, depth, grain := j.MainG, out.PenetrationIn, j.Adjust
	if j.PullIn > 0 {
		g, depth, grain.EndGrain = j.PullG, math.Min(depth, j.PullIn), false
	}
	factor, err := grain.Pull()
	if err != nil {
		return err
	}
	perInch, err := ScrewPull(g, j.Screw.DiameterIn)
	if err != nil {
		return err
	}
	head, err := HeadPull(j.SideG, j.Screw.HeadIn, j.SideIn)
	if err != nil {
		return err
	}
	// Measured from the point: the tip, and what stands beyond the layer that
	// holds, do not count; nor does the bare shank.
	first := math.Max(out.PenetrationIn-depth, j.Screw.TipIn())
	last := math.Min(out.PenetrationIn, j.Screw.ThreadIn(j.LengthIn))
	out.ThreadLbf, out.HeadLbf = perInch*math.Max(0, last-first)*factor, head*factor
	out.PullLbf = math.Min(out.ThreadLbf, out.HeadLbf)
	return nil
}

// Use is the share of what the screw holds that a shear and a pull take: the
// combined rule, and no less than either alone. The rule by itself has a small
// pull make a screw safer that holds more than twice as much out as sideways,
// which nobody should build on.
func (h Holds) Use(shearLbf, pullLbf float64) float64 {
	return max(
		Combined(h.ShearLbf, h.PullLbf, shearLbf, pullLbf),
		Combined(h.ShearLbf, h.PullLbf, shearLbf, 0),
		Combined(h.ShearLbf, h.PullLbf, 0, pullLbf),
	)
}

// Combined is the use of a screw by the rule for combined loads: Z_a = W'p Z' /
// (W'p cos²a + Z' sin²a) (eq. 12.4-1), holding values first, then loads. It is
// infinite where there is a load and nothing that holds it.
func Combined(holdsShear, holdsPull, shear, pull float64) float64 {
	load := math.Hypot(shear, pull)
	if load == 0 {
		return 0
	}
	if shear > 0 && holdsShear <= 0 || pull > 0 && holdsPull <= 0 {
		return math.Inf(1)
	}
	cos2, sin2 := shear*shear/(load*load), pull*pull/(load*load)
	switch {
	case pull == 0:
		return load / holdsShear
	case shear == 0:
		return load / holdsPull
	}
	return load * (holdsPull*cos2 + holdsShear*sin2) / (holdsPull * holdsShear)
}

// CombinedNail is the rule for nails: no squares (eq. 12.4-2).
func CombinedNail(holdsShear, holdsPull, shear, pull float64) float64 {
	load := math.Hypot(shear, pull)
	if load == 0 {
		return 0
	}
	return load * (holdsPull*shear/load + holdsShear*pull/load) / (holdsPull * holdsShear)
}
