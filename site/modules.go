//go:build site

package site

import (
	"embed"
	"io/fs"
)

//go:embed wasm/engine.wasm wasm/preview.wasm wasm/wasm_exec.js
var modules embed.FS

// Modules are engine.wasm, preview.wasm and wasm_exec.js; false when this
// program was built without them.
func Modules() (fs.FS, bool) {
	sub, err := fs.Sub(modules, "wasm")
	return sub, err == nil
}
