// Package testdata holds the example designs that the page offers and that the
// tests check: eight jobs with their second states and two reference panels,
// all of them fictional.
package testdata

import (
	"embed"
	"io/fs"
)

//go:embed scenarios/*.json
var designs embed.FS

// Designs are the design files, s1.json to s8.json, s1-second.json and so on,
// p1.json and p2.json.
func Designs() fs.FS {
	sub, err := fs.Sub(designs, "scenarios")
	if err != nil {
		panic("testdata: internal error: " + err.Error())
	}
	return sub
}
