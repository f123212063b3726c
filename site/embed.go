// Package site holds the ingredients of the page that are not Go: style sheets,
// ES modules, the script of the preview's frame, the service worker, the icon
// and the manifest. With the build tag "site" it also holds the two WebAssembly
// modules and Go's loader for them, which `make modules` writes to site/wasm.
// cmd/blockfield/web makes the site of them.
package site

import (
	"embed"
	"io/fs"
)

//go:embed *.css *.js *.svg *.webmanifest
var assets embed.FS

// Assets are the style sheets, scripts, icon and manifest.
func Assets() fs.FS { return assets }
