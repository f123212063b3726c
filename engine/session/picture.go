package session

import (
	"bytes"
	"image"
	"image/jpeg"
	"image/png"
	"math"
	"strings"

	"blockfield/engine"
	"blockfield/engine/design"
	"blockfield/engine/length"
	"blockfield/engine/page"
	"blockfield/engine/panel"
	"blockfield/engine/scene"
	"blockfield/engine/words"
)

// Limits of a picture made where the browser cannot draw it.
const (
	pictureLeast, pictureMost = 16, 4096 // pixels a side
	pictureQuality            = 85       // JPEG, no visible blocks on wood
	pictureSamples            = 3        // along one side of a pixel
)

// pictured is what is seen of the open document.
func (s *Session) pictured() (scene.Scene, error) {
	sc, err := engine.Scene(s.now.doc.Design, s.now.plan, s.now.doc.View)
	return s.now.plan.Show(sc, s.alone), err
}

// scene encodes the picture of the open document.
func (s *Session) scene() []byte {
	sc, err := s.pictured()
	if err != nil {
		return nil
	}
	return sc.Encode()
}

// drag moves the eye or the lamp, as a pointer or a key asked for it, or takes a
// view or a light by its name.
func (s *Session) drag(req Request) Response {
	before, doc, alone := s.now, s.now.doc, s.alone
	switch view := scene.View(req.Name); {
	case req.Kind == "view" && view.Alone():
		s.alone = view
	case req.Kind == "view", req.Kind == "reset":
		s.alone = ""
	}
	sc, err := s.pictured()
	if err != nil {
		return s.refuse(err)
	}
	switch req.Kind {
	case "view":
		sc = sc.Look(scene.View(req.Name), s.viewer(req))
	case "light":
		sc.Lamp, _ = engine.Light(req.Name, sc.Lamp)
	case "orbit":
		sc.Camera = sc.Camera.Orbit(req.DX, req.DY)
	case "zoom":
		sc.Camera = sc.Camera.ZoomBy(req.Factor)
	case "lamp":
		sc.Lamp = sc.Lamp.Drag(req.DX, req.DY)
	case "reset":
		sc.Camera, sc.Figure = scene.Camera{Zoom: 1}, false
		sc.Lamp, _ = engine.Light("lamp", sc.Lamp)
	}
	doc.View.Camera = design.Camera{
		Yaw: sc.Camera.YawDeg, Pitch: sc.Camera.PitchDeg, Zoom: sc.Camera.Zoom,
		Distance: length.MM(int64(math.Round(1000 * sc.Camera.DistanceM))),
	}
	doc.View.Lamp = design.Lamp{
		Azimuth: sc.Lamp.AzimuthDeg, Elevation: sc.Lamp.ElevationDeg, Warmth: sc.Lamp.WarmthK, Spread: sc.Lamp.SpreadDeg,
	}
	doc.View.Figure = sc.Figure
	if err := design.Validate(doc); err != nil {
		return s.refuse(err)
	}
	if err := s.change(doc); err != nil {
		return s.refuse(err)
	}
	res := Response{
		Values: s.changedValues(before.doc, ""),
		Scene:  s.scene(),
		Text:   string(design.Encode(doc)),
	}
	if s.alone != alone {
		res.Fragments = []page.Fragment{page.PictureText(page.Input{Doc: doc, Plan: s.now.plan, Words: s.reader(), Alone: s.alone})}
	}
	return res
}

// pixelM is the size of a pixel of the page, by CSS Values 4: 1/96 in. Screens differ.
const pixelM = 0.0254 / 96

// viewer is who looks at the page's picture, whose size comes with the request.
func (s *Session) viewer(req Request) scene.Viewer {
	wall := s.now.doc.Design.Walls[0]
	return scene.Viewer{
		DistanceM: wall.ListenerDistance.Metres(), EarM: wall.EarHeight.Metres(),
		PictureM: pixelM * float64(req.Height), Shape: float64(req.Width) / float64(max(req.Height, 1)),
	}
}

// point says which block lies at a place of the picture, whose size is given; DX
// and DY are the place in its pixels. Whoever builds also reads what it is cut from.
func (s *Session) point(req Request) Response {
	sc, err := s.pictured()
	if err != nil {
		return s.refuse(err)
	}
	at, column, row, ok := sc.Hit(req.Width, req.Height, req.DX, req.DY)
	if !ok || s.alone != "" {
		return Response{}
	}
	i, j := s.panelAt(at)
	g := s.now.plan.Groups[i]
	grid := g.Built.Panels[j].Grid
	say := s.reader().Say
	args := words.Args{"panel": at + 1, "column": column + 1, "row": row + 1, "height": g.Design.Heights[grid.At(row, column)]}
	said := []string{say("stage/point", args)}
	if len(sc.Panels) > 1 {
		said[0] = say("stage/point-panel", args)
	}
	wood := g.Design.Woods()[g.Built.Panels[j].WoodOf(row*grid.Columns+column)]
	if from := s.now.plan.Origins()[i][j][row*grid.Columns+column]; from.Stick > 0 && s.now.doc.View.Reading != page.Client {
		said = append(said, say("stage/point-stick", words.Args{"stick": from.Stick, "sticks": from.Sticks, "wood": words.Key("choice/" + wood)}))
	}
	for _, run := range grid.Runs(panel.NotedRun(g.Design.Pattern)) {
		if run.Holds(row, column) {
			said = append(said, say("stage/point-run", words.Args{"n": run.Length}))
			break
		}
	}
	return Response{Point: strings.Join(said, " ")}
}

// panelAt is the group of the plan, and the panel of that, which is panel n of the
// picture.
func (s *Session) panelAt(n int) (group, at int) {
	for i, g := range s.now.plan.Groups {
		if g.Wall != 0 {
			continue
		}
		if n < len(g.Built.Panels) {
			return i, n
		}
		n -= len(g.Built.Panels)
	}
	panic("session: internal error: a panel in the picture that is not in the plan")
}

// picture draws a scene, which need not be that of the open document: a PNG to
// save, or else a JPEG to show.
func (s *Session) picture(req Request) Response {
	sc, err := scene.Decode(req.Scene)
	if err != nil {
		return s.refuse(err)
	}
	side := func(pixels int) int { return min(max(pixels, pictureLeast), pictureMost) }
	width, height, samples := side(req.Width), side(req.Height), min(max(req.Samples, 1), pictureSamples)
	var b bytes.Buffer
	if req.Kind == "png" {
		err = png.Encode(&b, scene.Render(sc, width, height, samples))
	} else {
		err = jpeg.Encode(&b, still(sc, width, height, samples), &jpeg.Options{Quality: pictureQuality})
	}
	if err != nil {
		return s.refuse(err)
	}
	return Response{Picture: b.Bytes()}
}

// still is a picture to show for a while: rough ones soon.
func still(sc scene.Scene, width, height, samples int) *image.RGBA {
	if samples == 1 {
		return scene.Render(sc, width, height, 1)
	}
	return scene.RenderRefined(sc, width, height, samples)
}
