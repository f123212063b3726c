package engine

import (
	"fmt"

	"blockfield/engine/design"
	"blockfield/engine/length"
	"blockfield/engine/panel"
	"blockfield/engine/scene"
)

// Scene returns the picture of the first wall of a design: its panels at their
// true place, under the lamp and from the eye of the view. The panels are those
// that Plan has built.
func Scene(d design.Design, built Result, v design.View) (scene.Scene, error) {
	s := scene.Scene{
		Camera: scene.Camera{YawDeg: v.Camera.Yaw, PitchDeg: v.Camera.Pitch, Zoom: v.Camera.Zoom, DistanceM: v.Camera.Distance.Metres()},
		Lamp: scene.Lamp{AzimuthDeg: v.Lamp.Azimuth, ElevationDeg: v.Lamp.Elevation,
			WarmthK: v.Lamp.Warmth, SpreadDeg: v.Lamp.Spread},
		Figure: v.Figure,
	}
	wall := d.Walls[0]
	paint, ok := scene.WallPaint(v.WallPaint)
	if !ok {
		return scene.Scene{}, fmt.Errorf("engine: no tone for a wall in %s", v.WallPaint)
	}
	s.Wall = scene.Wall{WidthM: wall.Width.Metres(), HeightM: wall.Height.Metres(), Colour: paint}
	origins := built.Origins()
	for i, g := range built.Groups {
		if g.Wall != 0 {
			continue
		}
		panels, err := scenePanels(g, origins[i])
		if err != nil {
			return scene.Scene{}, err
		}
		s.Panels = append(s.Panels, panels...)
	}
	if len(s.Panels) > scene.MaxPanels {
		s.Panels = s.Panels[:scene.MaxPanels]
	}
	return s, nil
}

func scenePanels(g Group, origins [][]Origin) ([]scene.Panel, error) {
	in, out := g.Design, g.Built
	blocks := make([]scene.Material, 2) // one or two woods
	for i, wood := range in.Woods() {
		var ok bool
		if blocks[i], ok = material(wood, in.Finish.Kind, in.Finish.Colour); !ok {
			return nil, fmt.Errorf("engine: no tone for %s", wood)
		}
	}
	frame, ok := material(in.Frame.Wood, in.Finish.Kind, in.Finish.FrameColour)
	backer, ok2 := sheet(in)
	if !ok || !ok2 {
		return nil, fmt.Errorf("engine: no tone for %s or %s", in.Frame.Wood, in.Backer.Sheet)
	}
	one := scene.Panel{
		OuterWidthM: out.OuterWidth.Metres(), OuterHeightM: out.OuterHeight.Metres(),
		CleatThicknessM: in.Cleat.Thickness.Metres(), BackerThicknessM: in.Backer.Thickness.Metres(),
		Columns: out.Columns, Rows: out.Rows,
		PitchM: out.Pitch.Metres(), BlockM: in.Block.Size.Metres(),
		HeightsM: length.Metres(in.Heights),
		Blocks:   blocks[0], Second: blocks[1], Frame: frame, Backer: backer,
	}
	if out.Framed {
		one.FrameThicknessM, one.FrameGapM = in.Frame.Thickness.Metres(), in.Frame.Gap.Metres()
		one.FrameDepthM, one.Mitred = out.FrameDepth.Metres(), in.Frame.Joint == design.Mitred
	}
	all := make([]scene.Panel, len(out.Panels))
	for i, p := range out.Panels {
		all[i] = place(one, p, uint64(i))
		all[i].Cut = make([]scene.Cut, len(origins[i]))
		for k, from := range origins[i] {
			all[i].Cut[k] = scene.CutOf(from.Stick, from.Piece)
		}
	}
	return all, nil
}

// Light returns the light of a name, in place of another: "lamp" as in a new design,
// "window", or "raking", which is the light that there is but almost along the wall.
func Light(name string, now scene.Lamp) (scene.Lamp, bool) {
	switch name {
	case "lamp":
		fresh := design.Default().View.Lamp
		return scene.Lamp{AzimuthDeg: fresh.Azimuth, ElevationDeg: fresh.Elevation, WarmthK: fresh.Warmth}, true
	case "window":
		return scene.Window(), true
	case "raking":
		return now.Raking(), true
	}
	return now, false
}

// Lights returns their names.
func Lights() []string { return []string{"lamp", "window", "raking"} }

// material is a wood under a finish with a colour in it.
func material(wood, finish, colour string) (scene.Material, bool) {
	m, ok := scene.WoodMaterial(wood, finish)
	if !ok {
		return m, false
	}
	return m.Coloured(colour)
}

// sheet is the backer of a group as it is seen between blocks: finished as they are.
func sheet(g design.Group) (scene.Material, bool) {
	m, ok := scene.BackerMaterial(g.Backer.Sheet)
	if !ok {
		return m, false
	}
	if m, ok = m.Finished(g.Finish.Kind); !ok {
		return m, false
	}
	return m.Coloured(g.Finish.Colour)
}

func place(one scene.Panel, p panel.Panel, seed uint64) scene.Panel {
	one.LeftM, one.BottomM = p.Left.Metres(), p.Bottom.Metres()
	one.Levels, one.Woods, one.Seed = p.Grid.Levels, p.Woods, seed
	return one
}

// Tones are the materials of a group: of its woods under their finish, of its frame, and
// of the backer where it is bare.
type Tones struct {
	Woods         []scene.Material // in the order of design.Group.Woods
	Frame, Backer scene.Material
}

// TonesOf returns the materials of a group of a valid design.
func TonesOf(g design.Group) Tones {
	var t Tones
	for _, wood := range g.Woods() {
		m, _ := material(wood, g.Finish.Kind, g.Finish.Colour)
		t.Woods = append(t.Woods, m)
	}
	t.Frame, _ = material(g.Frame.Wood, g.Finish.Kind, g.Finish.FrameColour)
	t.Backer, _ = sheet(g)
	return t
}
