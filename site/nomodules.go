//go:build !site

package site

import "io/fs"

// Modules are engine.wasm, preview.wasm and wasm_exec.js; false when this
// program was built without them.
func Modules() (fs.FS, bool) { return nil, false }
