//go:build js

// Program engine runs a session in a worker of the page. It gives the worker's
// script one function, blockfieldHandle, which takes the bytes of a request and
// returns the bytes of the answer (package session says what they hold), and
// then calls the script's blockfieldReady. It touches nothing else.
package main

import (
	"runtime/debug"
	"syscall/js"

	"blockfield/engine/design"
	"blockfield/engine/session"
)

// collectAt is by how much the heap grows, in percent, before it is collected. In
// a browser there is one thread, so a collection is a part of an edit's time; the
// heap in use is a few MiB.
const collectAt = 400

func main() {
	debug.SetGCPercent(collectAt)
	s := session.New(design.DefaultBook())
	js.Global().Set("blockfieldHandle", js.FuncOf(func(_ js.Value, args []js.Value) any {
		return toJS(s.Handle(toGo(args[0])))
	}))
	js.Global().Call("blockfieldReady")
	select {} // the session lives as long as its worker
}

func toGo(array js.Value) []byte {
	b := make([]byte, array.Get("byteLength").Int())
	js.CopyBytesToGo(b, array)
	return b
}

func toJS(b []byte) js.Value {
	array := js.Global().Get("Uint8Array").New(len(b))
	js.CopyBytesToJS(array, b)
	return array
}
