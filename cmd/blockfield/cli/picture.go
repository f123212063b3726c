package cli

import (
	"bytes"
	"context"
	"errors"
	"flag"
	"fmt"
	"image/png"
	"slices"
	"strconv"
	"strings"

	"blockfield/engine"
	"blockfield/engine/design"
	"blockfield/engine/scene"
)

// Bounds of a picture: enough for a page of print at 300 dots an inch.
const (
	minPicture         = 16
	maxPicture         = 4096
	pictureSupersample = 3 // soft shadow edges
)

// picture draws a design into a PNG file.
func picture(_ context.Context, args []string, s Streams) (int, error) {
	flags := flag.NewFlagSet("picture", flag.ContinueOnError)
	out := flags.String("o", "", "")
	size := flags.String("size", "1600x1200", "")
	lamp := flags.String("lamp", "", "")
	camera := flags.String("camera", "", "")
	view := flags.String("view", "", "")
	light := flags.String("light", "", "")
	names, err := parse(flags, args)
	if err != nil {
		return badInput, err
	}
	if len(names) != 1 || *out == "" {
		return badInput, errUsage
	}
	doc, err := readDesign(names[0], s)
	if err != nil {
		return badInput, err
	}
	width, height, err := parseSize(*size)
	if err != nil {
		return badInput, err
	}
	if err := errors.Join(lookFrom(&doc.View, *lamp, *camera)...); err != nil {
		return badInput, err
	}
	sc, plan, err := sceneOf(doc)
	if err != nil {
		return badInput, located(names[0], fmt.Errorf("walls[0]: the picture: %w", err))
	}
	if sc, err = lookAs(sc, plan, doc, *view, *light, float64(width)/float64(height)); err != nil {
		return badInput, err
	}
	var b bytes.Buffer
	if err := png.Encode(&b, scene.Render(sc, width, height, pictureSupersample)); err != nil {
		return badInput, err
	}
	return done, writeOutput(*out, b.Bytes(), s)
}

// sceneOf is the picture of a document's first wall, as its view has it.
func sceneOf(doc design.Document) (scene.Scene, engine.Result, error) {
	plan, err := engine.Plan(doc.Design, design.DefaultBook())
	if err != nil {
		return scene.Scene{}, plan, err
	}
	sc, err := engine.Scene(doc.Design, plan, doc.View)
	if err != nil {
		return scene.Scene{}, plan, err
	}
	return sc, plan, sc.Validate()
}

// lookAs shows a scene from a named view in a named light, for a picture of a shape;
// an empty name changes nothing.
func lookAs(sc scene.Scene, plan engine.Result, doc design.Document, view, light string, shape float64) (scene.Scene, error) {
	if view != "" {
		if !slices.Contains(scene.Views(), scene.View(view)) {
			return sc, fmt.Errorf("-view: %q is no view (allowed %s)", view, listed(scene.Views()))
		}
		wall := doc.Design.Walls[0]
		sc = plan.Show(sc, scene.View(view)).Look(scene.View(view), scene.Viewer{
			DistanceM: wall.ListenerDistance.Metres(), EarM: wall.EarHeight.Metres(), Shape: shape,
		})
	}
	if light == "" {
		return sc, nil
	}
	lamp, ok := engine.Light(light, sc.Lamp)
	if !ok {
		return sc, fmt.Errorf("-light: %q is no light (allowed %s)", light, listed(engine.Lights()))
	}
	sc.Lamp = lamp
	return sc, nil
}

// listed quotes names, as they are to be typed.
func listed[S ~string](names []S) string {
	all := make([]string, len(names))
	for i, name := range names {
		all[i] = strconv.Quote(string(name))
	}
	return strings.Join(all, ", ")
}

func parseSize(text string) (width, height int, err error) {
	w, h, found := strings.Cut(text, "x")
	width, errW := strconv.Atoi(w)
	height, errH := strconv.Atoi(h)
	if !found || errW != nil || errH != nil || min(width, height) < minPicture || max(width, height) > maxPicture {
		return 0, 0, fmt.Errorf("-size: %q is not the size of a picture in pixels (allowed WIDTHxHEIGHT, %d to %d each)",
			text, minPicture, maxPicture)
	}
	return width, height, nil
}

// lookFrom puts the lamp and the camera of the flags into a view; an empty flag
// changes nothing.
func lookFrom(v *design.View, lamp, camera string) []error {
	var faults []error
	if lamp != "" {
		n, err := numbers("-lamp", lamp, "AZIMUTH,ELEVATION: %g to %g, %g to %g degrees",
			[]float64{0, 360, scene.MinElevationDeg, scene.MaxElevationDeg})
		faults = append(faults, err)
		if err == nil {
			v.Lamp.Azimuth, v.Lamp.Elevation = n[0], n[1]
		}
	}
	if camera != "" {
		n, err := numbers("-camera", camera, "YAW,PITCH,ZOOM: %g to %g, %g to %g degrees, %g to %g",
			[]float64{-scene.MaxYawDeg, scene.MaxYawDeg, -scene.MaxPitchDeg, scene.MaxPitchDeg, scene.MinZoom, scene.MaxZoom})
		faults = append(faults, err)
		if err == nil {
			v.Camera.Yaw, v.Camera.Pitch, v.Camera.Zoom = n[0], n[1], n[2]
		}
	}
	return faults
}

// numbers reads as many numbers as there are pairs of limits.
func numbers(flag, text, allowed string, limits []float64) ([]float64, error) {
	args := make([]any, len(limits))
	for i, l := range limits {
		args[i] = l
	}
	fault := fmt.Errorf("%s: %q cannot be used (allowed "+allowed+")", append([]any{flag, text}, args...)...)
	parts := strings.Split(text, ",")
	if len(parts) != len(limits)/2 {
		return nil, fault
	}
	out := make([]float64, len(parts))
	for i, part := range parts {
		v, err := strconv.ParseFloat(strings.TrimSpace(part), 64)
		if err != nil || !(v >= limits[2*i] && v <= limits[2*i+1]) {
			return nil, fault
		}
		out[i] = v
	}
	return out, nil
}
