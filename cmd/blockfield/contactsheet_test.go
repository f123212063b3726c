package main_test

import (
	"flag"
	"fmt"
	"image"
	"image/color"
	"image/draw"
	"image/png"
	"os"
	"path/filepath"
	"testing"

	"github.com/stretchr/testify/require"
	"golang.org/x/image/font"
	"golang.org/x/image/font/basicfont"
	"golang.org/x/image/math/fixed"

	"blockfield/engine"
	"blockfield/engine/design"
	"blockfield/engine/scene"
)

var sheetDir = flag.String("sheet", "", "folder for the contact sheets, for TestContactSheet")

// Contact sheets for people to look at: the woods under two finishes and two
// lamps, the views, the scenarios, two woods and colours. Run by make contact-sheet.
func TestContactSheet(t *testing.T) {
	if *sheetDir == "" {
		t.Skip("only with -sheet DIR")
	}
	require.NoError(t, os.MkdirAll(*sheetDir, 0o755))
	writeSheet(t, "woods.png", 4, woodTiles(t))
	writeSheet(t, "views.png", 3, viewTiles(t))
	writeSheet(t, "scenarios.png", 3, scenarioTiles(t))
	writeSheet(t, "mixed.png", 3, mixedTiles(t))
}

// tile is one picture of a sheet with its caption.
type tile struct {
	caption string
	picture image.Image
}

const (
	tileWidth, tileHeight = 480, 360
	captionHeight         = 22
)

func drawTile(caption string, s scene.Scene) tile {
	return tile{caption, scene.Render(s, tileWidth, tileHeight, 3)}
}

func sceneOfDesign(t *testing.T, doc design.Document) scene.Scene {
	s, _ := plannedScene(t, doc)
	return s
}

func plannedScene(t *testing.T, doc design.Document) (scene.Scene, engine.Result) {
	t.Helper()
	require.NoError(t, design.Validate(doc))
	plan, err := engine.Plan(doc.Design, design.DefaultBook())
	require.NoError(t, err)
	s, err := engine.Scene(doc.Design, plan, doc.View)
	require.NoError(t, err)
	require.NoError(t, s.Validate())
	return s, plan
}

func woodTiles(t *testing.T) (all []tile) {
	for _, wood := range design.Woods() {
		for _, finish := range []string{"none", "hard-wax oil"} {
			doc := design.Default()
			g := &doc.Design.Walls[0].Groups[0]
			g.Wood, g.Frame.Wood, g.Finish.Kind = wood, wood, finish
			s := sceneOfDesign(t, doc)
			s.Camera.Zoom, s.Camera.YawDeg, s.Camera.PitchDeg = 2.6, -18, 10
			all = append(all, drawTile(wood+", "+finish+", lamp from the upper left", s))
			s.Lamp.AzimuthDeg, s.Lamp.ElevationDeg = 80, 14
			all = append(all, drawTile(wood+", "+finish+", raking from the right", s))
		}
	}
	return all
}

func viewTiles(t *testing.T) (all []tile) {
	s, plan := plannedScene(t, design.Default())
	for _, v := range scene.Views() {
		looked := plan.Show(s, v).Look(v, scene.Viewer{DistanceM: 2.5, EarM: 1.2})
		all = append(all, drawTile(string(v)+", lamp", looked))
		looked.Lamp = scene.Window()
		all = append(all, drawTile(string(v)+", window", looked))
		looked.Lamp = looked.Lamp.Raking()
		all = append(all, drawTile(string(v)+", raking", looked))
	}
	return all
}

func scenarioTiles(t *testing.T) (all []tile) {
	for i := range 8 {
		body, err := os.ReadFile(fmt.Sprintf("../../testdata/scenarios/s%d.json", i+1))
		require.NoError(t, err)
		doc, err := design.Decode(body)
		require.NoError(t, err)
		all = append(all, drawTile(doc.Design.Title, sceneOfDesign(t, doc)))
	}
	return append(all, drawTile("default", sceneOfDesign(t, design.Default())))
}

// mixedTiles are two woods, and colours in the finish.
func mixedTiles(t *testing.T) (all []tile) {
	for _, mixed := range []string{design.MixedTaller, design.MixedEveryOther, design.MixedAtRandom} {
		doc := design.Default()
		g := &doc.Design.Walls[0].Groups[0]
		g.Wood, g.SecondWood, g.Frame.Wood = "maple", "walnut", "walnut"
		if mixed != design.MixedTaller {
			g.Mixed = mixed
		}
		all = append(all, drawTile("maple and walnut, "+mixed, sceneOfDesign(t, doc)))
	}
	for _, colour := range design.Colours()[1:] {
		doc := design.Default()
		doc.Design.Walls[0].Groups[0].Finish.Colour = colour
		all = append(all, drawTile("poplar, "+colour+", frame clear", sceneOfDesign(t, doc)))
	}
	return all
}

func writeSheet(t *testing.T, name string, columns int, tiles []tile) {
	t.Helper()
	rows := (len(tiles) + columns - 1) / columns
	sheet := image.NewRGBA(image.Rect(0, 0, columns*tileWidth, rows*(tileHeight+captionHeight)))
	draw.Draw(sheet, sheet.Rect, image.White, image.Point{}, draw.Src)
	for i, one := range tiles {
		at := image.Pt(i%columns*tileWidth, i/columns*(tileHeight+captionHeight))
		draw.Draw(sheet, one.picture.Bounds().Add(at), one.picture, image.Point{}, draw.Src)
		pen := font.Drawer{Dst: sheet, Src: image.NewUniform(color.Black), Face: basicfont.Face7x13,
			Dot: fixed.P(at.X+6, at.Y+tileHeight+15)}
		pen.DrawString(one.caption)
	}
	f, err := os.Create(filepath.Join(*sheetDir, name))
	require.NoError(t, err)
	defer f.Close()
	require.NoError(t, png.Encode(f, sheet))
}
