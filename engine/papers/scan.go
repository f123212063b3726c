package papers

import (
	"slices"
	"strings"

	"blockfield/engine/papers/sheet"

	"github.com/boombuler/barcode/qr"
)

// scanMark begins the fragment of an address that a paper's code holds. The revision
// follows, and nothing else: the job stays on the device where it is kept.
const scanMark = "paper-"

// longestSite is how long the address of a site may be: a longer one makes a code of
// modules too small for a camera. Common practice, no source.
const longestSite = 80

// IsSite reports whether a text is the address of a site that a code can lead to.
func IsSite(site string) bool {
	_, host, ok := strings.Cut(site, "://")
	scheme := strings.TrimSuffix(site, "://"+host)
	if !ok || scheme != "https" && scheme != "http" || len(site) > longestSite {
		return false
	}
	// What RFC 3986 allows in host, port and path; no user, question or fragment.
	const letters = "abcdefghijklmnopqrstuvwxyzABCDEFGHIJKLMNOPQRSTUVWXYZ0123456789-._~:/[]%!$&'()*+,;="
	return host != "" && host[0] != '/' && strings.Trim(host, letters) == ""
}

// Scanned is the revision in the fragment of an address that was scanned; false for
// another fragment. It may have been typed: case and letters that look alike do not
// count.
func Scanned(fragment string) (revision string, ok bool) {
	code, ok := strings.CutPrefix(fragment, scanMark)
	if !ok {
		return "", false
	}
	// Crockford's base 32 reads I and L as 1, and O as 0.
	return strings.NewReplacer("I", "1", "L", "1", "O", "0").Replace(strings.ToUpper(code)), true
}

// scan is the code of the job's address; nil where the site's address is unknown.
func (m *maker) scan() *sheet.Scan {
	if !IsSite(m.Site) {
		return nil
	}
	code, err := qr.Encode(m.Site+"#"+scanMark+m.Plan.Revision, qr.M, qr.Unicode)
	if err != nil {
		return nil // longer than any code, which longestSite rules out
	}
	box := code.Bounds()
	s := &sheet.Scan{Modules: box.Dx(), Text: m.T("papers/scan")}
	for y := box.Min.Y; y < box.Max.Y; y++ {
		for x := box.Min.X; x < box.Max.X; x++ {
			r, _, _, _ := code.At(x, y).RGBA()
			s.Dark = append(s.Dark, r == 0)
		}
	}
	return s
}

// scanned reports whether a paper lies on the bench while the work goes on, or is the
// cover of a set.
func scanned(paper string) bool {
	return slices.Contains([]string{"cover", "before", "stop-list", "count-card", "lay-up", "row-cards", "time-sheet"}, paper)
}
