package site

import (
	"golang.org/x/image/font/gofont/gobold"
	"golang.org/x/image/font/gofont/goregular"
)

// The files of the two faces that papers are set in. Each names its licence in
// itself.
const (
	RegularFont = "go-regular.ttf"
	BoldFont    = "go-bold.ttf"
)

// Fonts are the faces as TrueType, by the names of their files.
func Fonts() map[string][]byte {
	return map[string][]byte{RegularFont: goregular.TTF, BoldFont: gobold.TTF}
}
