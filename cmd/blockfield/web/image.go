package web

import (
	"bytes"
	"encoding/xml"
	"errors"
	"fmt"
	"image"
	_ "image/jpeg" // logos
	_ "image/png"  // logos
	"io"
	"regexp"
	"slices"
	"strconv"
	"strings"
)

// Image is a logo or an icon.
type Image struct {
	Body          []byte
	Suffix        string  // of its file: ".svg", ".png" or ".jpg"
	Width, Height float64 // pixels, or for a drawing any unit
}

// The limits of a logo.
const (
	MaxImageBytes = 256 << 10
	maxImageSide  = 4096 // pixels
	maxSVGDepth   = 32
	maxSVGParts   = 20_000
)

// ReadImage reads an SVG, a PNG or a JPEG. A page shows it as a picture, where no script
// runs; but its file has an address of its own, so a drawing that could do more than be
// looked at is refused.
func ReadImage(body []byte) (Image, error) {
	if len(body) > MaxImageBytes {
		return Image{}, fmt.Errorf("has %d bytes (allowed up to %d)", len(body), MaxImageBytes)
	}
	if shape, format, err := image.DecodeConfig(bytes.NewReader(body)); err == nil {
		if shape.Width > maxImageSide || shape.Height > maxImageSide || shape.Width < 1 || shape.Height < 1 {
			return Image{}, fmt.Errorf("has %d × %d pixels (allowed up to %d × %d)", shape.Width, shape.Height, maxImageSide, maxImageSide)
		}
		if _, _, err := image.Decode(bytes.NewReader(body)); err != nil {
			return Image{}, fmt.Errorf("is a broken %s: %w", strings.ToUpper(format), err)
		}
		return Image{body, map[string]string{"png": ".png", "jpeg": ".jpg"}[format], float64(shape.Width), float64(shape.Height)}, nil
	}
	if !bytes.Contains(body, []byte("<svg")) {
		return Image{}, errors.New("is no picture that can be read (allowed SVG, PNG, JPEG)")
	}
	width, height, err := readSVG(body)
	return Image{body, ".svg", width, height}, err
}

// readSVG refuses whatever in a drawing is not drawn, and returns its size.
func readSVG(body []byte) (width, height float64, err error) {
	d := xml.NewDecoder(bytes.NewReader(body))
	styled := false // inside of <style>
	for depth, parts := 0, 0; ; {
		token, err := d.Token()
		switch {
		case errors.Is(err, io.EOF) && parts > 0:
			return width, height, nil
		case err != nil:
			return 0, 0, fmt.Errorf("is a broken SVG: %w", err)
		}
		switch token := token.(type) {
		case xml.Directive:
			if bytes.ContainsRune(token, '[') {
				return 0, 0, errors.New("is an SVG whose DOCTYPE names entities (allowed none)")
			}
		case xml.ProcInst:
			if token.Target != "xml" {
				return 0, 0, fmt.Errorf("is an SVG with a <?%s…> instruction (allowed none)", token.Target)
			}
		case xml.CharData:
			if styled && leaves(string(token)) {
				return 0, 0, errors.New("is an SVG with a <style> that fetches something or has a \\ (allowed url(#…))")
			}
		case xml.EndElement:
			depth--
			styled = false
		case xml.StartElement:
			depth++
			parts++
			styled = token.Name.Local == "style"
			if depth > maxSVGDepth || parts > maxSVGParts {
				return 0, 0, fmt.Errorf("is an SVG with too much in it (allowed %d elements, %d deep)", maxSVGParts, maxSVGDepth)
			}
			if err := harmless(token); err != nil {
				return 0, 0, err
			}
			if parts == 1 {
				if width, height, err = svgSize(token); err != nil {
					return 0, 0, err
				}
			}
		}
	}
}

// drawn are the elements of an SVG that are drawn, or say how.
var drawn = strings.Fields(`svg g defs title desc metadata symbol use path rect circle ellipse line polyline polygon text
	tspan textPath image clipPath mask pattern marker linearGradient radialGradient stop style filter feBlend feColorMatrix
	feComponentTransfer feFuncR feFuncG feFuncB feFuncA feComposite feFlood feGaussianBlur feMerge feMergeNode feOffset
	feDropShadow feMorphology feTurbulence`)

const svgSpace = "http://www.w3.org/2000/svg"

// others are the namespaces that a browser would build something of, the empty one with them.
var others = []string{"", "http://www.w3.org/1999/xhtml", "http://www.w3.org/1998/Math/MathML"}

// inside matches an address that stays inside of the file.
var inside = regexp.MustCompile(`^(#|data:image/(png|jpeg);base64,)`)

// harmless refuses elements that do more than draw, and attributes that act or lead
// out of the file. Those of other namespaces, which drawing programs leave, draw nothing.
func harmless(e xml.StartElement) error {
	if slices.Contains(others, e.Name.Space) {
		return fmt.Errorf("is an SVG with an element <%s> that is none of SVG's (allowed the namespace %s)", e.Name.Local, svgSpace)
	}
	if e.Name.Space == svgSpace && !slices.Contains(drawn, e.Name.Local) {
		return fmt.Errorf("is an SVG with <%s> (allowed what is drawn: %s)", e.Name.Local, strings.Join(drawn[:20], ", ")+", …")
	}
	for _, a := range e.Attr {
		name, value := strings.ToLower(a.Name.Local), strings.TrimSpace(a.Value)
		switch {
		case strings.HasPrefix(name, "on"):
			return fmt.Errorf("is an SVG with %s on <%s> (allowed no scripts)", a.Name.Local, e.Name.Local)
		case (name == "href" || name == "src") && !inside.MatchString(value):
			return fmt.Errorf("is an SVG with %s=%q on <%s> (allowed #… of the file itself, or data:image/png and jpeg)", a.Name.Local, cut(value), e.Name.Local)
		case leaves(value):
			return fmt.Errorf("is an SVG with %s=%q on <%s>, which fetches something (allowed url(#…))", a.Name.Local, cut(value), e.Name.Local)
		}
	}
	return nil
}

// address matches what a style fetches.
var address = regexp.MustCompile(`(?i)url\(\s*["']?\s*([^)]{0,60})|@import|\\`)

// leaves reports whether a style or a value fetches something from outside.
func leaves(style string) bool {
	for _, m := range address.FindAllStringSubmatch(style, -1) {
		if !strings.HasPrefix(m[1], "#") {
			return true
		}
	}
	return false
}

func cut(text string) string {
	const most = 40
	if r := []rune(text); len(r) > most {
		return string(r[:most]) + "…"
	}
	return text
}

// svgSize is the size that a drawing says of itself.
func svgSize(root xml.StartElement) (width, height float64, err error) {
	if root.Name.Local != "svg" || root.Name.Space != svgSpace {
		return 0, 0, fmt.Errorf("begins with <%s> (allowed <svg xmlns=%q>)", root.Name.Local, svgSpace)
	}
	for _, a := range root.Attr {
		switch a.Name.Local {
		case "width":
			width, _ = strconv.ParseFloat(strings.TrimSuffix(a.Value, "px"), 64)
		case "height":
			height, _ = strconv.ParseFloat(strings.TrimSuffix(a.Value, "px"), 64)
		}
	}
	if width > 0 && height > 0 {
		return width, height, nil
	}
	for _, a := range root.Attr {
		if box := strings.Fields(strings.ReplaceAll(a.Value, ",", " ")); a.Name.Local == "viewBox" && len(box) == 4 {
			width, _ = strconv.ParseFloat(box[2], 64)
			height, _ = strconv.ParseFloat(box[3], 64)
		}
	}
	if !(width > 0 && height > 0 && width < 1e6 && height < 1e6) {
		return 0, 0, errors.New("is an SVG that does not say its size (allowed width and height in pixels, or a viewBox)")
	}
	return width, height, nil
}

// named is the file name of an image: its content moves it, so that no browser shows an
// older one.
func (i *Image) named(what string) string {
	return what + "-" + hash(map[string][]byte{what: i.Body}) + i.Suffix
}
