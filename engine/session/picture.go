package session

import (
	"bytes"
	"image/jpeg"

	"blockfield/engine"
	"blockfield/engine/design"
	"blockfield/engine/scene"
)

// Limits of a picture made for the page where the browser cannot draw it.
const (
	pictureLeast, pictureMost = 16, 1600 // pixels a side
	pictureQuality            = 85       // JPEG, no visible blocks on wood
)

// scene encodes the picture of the open document.
func (s *Session) scene() []byte {
	sc, err := engine.Scene(s.now.doc.Design, s.now.plan, s.now.doc.View)
	if err != nil {
		return nil
	}
	return sc.Encode()
}

// drag moves the eye or the lamp, as a pointer or a key asked for it.
func (s *Session) drag(req Request) Response {
	before, doc := s.now, s.now.doc
	v := doc.View
	camera := scene.Camera{YawDeg: v.Camera.Yaw, PitchDeg: v.Camera.Pitch, Zoom: v.Camera.Zoom}
	lamp := scene.Lamp{AzimuthDeg: v.Lamp.Azimuth, ElevationDeg: v.Lamp.Elevation, WarmthK: v.Lamp.Warmth}
	switch req.Kind {
	case "orbit":
		camera = camera.Orbit(req.DX, req.DY)
	case "zoom":
		camera = camera.ZoomBy(req.Factor)
	case "lamp":
		lamp = lamp.Drag(req.DX, req.DY)
	case "reset":
		fresh := design.Default().View
		camera = scene.Camera{Zoom: fresh.Camera.Zoom}
		lamp = scene.Lamp{AzimuthDeg: fresh.Lamp.Azimuth, ElevationDeg: fresh.Lamp.Elevation, WarmthK: fresh.Lamp.Warmth}
	}
	doc.View.Camera = design.Camera{Yaw: camera.YawDeg, Pitch: camera.PitchDeg, Zoom: camera.Zoom}
	doc.View.Lamp = design.Lamp{Azimuth: lamp.AzimuthDeg, Elevation: lamp.ElevationDeg, Warmth: lamp.WarmthK}
	if err := design.Validate(doc); err != nil {
		return s.refuse(err)
	}
	if err := s.change(doc); err != nil {
		return s.refuse(err)
	}
	res := s.picture(req)
	res.Values = changedValues(before.doc, doc, s.units(), "")
	res.Scene = s.scene()
	res.Text = string(design.Encode(doc))
	return res
}

// picture answers with a JPEG of the open document, if a size is asked for.
func (s *Session) picture(req Request) Response {
	if req.Width == 0 || req.Height == 0 {
		return Response{}
	}
	width := min(max(req.Width, pictureLeast), pictureMost)
	height := min(max(req.Height, pictureLeast), pictureMost)
	sc, err := engine.Scene(s.now.doc.Design, s.now.plan, s.now.doc.View)
	if err != nil {
		return s.refuse(err)
	}
	var b bytes.Buffer
	if err := jpeg.Encode(&b, scene.Render(sc, width, height, 1), &jpeg.Options{Quality: pictureQuality}); err != nil {
		return s.refuse(err)
	}
	return Response{Picture: b.Bytes()}
}
