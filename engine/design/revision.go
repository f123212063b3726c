package design

import (
	"crypto/sha256"
	"encoding/binary"
	"reflect"
	"strings"
)

// crockford are the letters of Crockford's base 32: no I, L, O or U, so that a
// code can be read aloud and copied from paper.
const crockford = "0123456789ABCDEFGHJKMNPQRSTVWXYZ"

// codeLetters is the length of a revision code: 30 bits, so that two states of
// one job share a code once in a thousand million.
const codeLetters = 6

// Revision is the code of the design's content, printed on every paper. It
// speaks of what is built and not of how it was typed: 0.9 m and 900 mm are one
// revision.
func (d Design) Revision() string {
	n, _ := designTree().child("design")
	return codeOf(n, reflect.ValueOf(&d).Elem())
}

// Code is the code of the price book's content, printed on papers with money.
func (b Book) Code() string { return codeOf(bookTree(), reflect.ValueOf(&b).Elem()) }

// Code is the code of all that an offer holds, by which it is known: its number.
func (o Offer) Code() string {
	n, _ := designTree().child("offer")
	return codeOf(n, reflect.ValueOf(&o).Elem())
}

// codeOf is the code of a value without spaces, all lengths in millimetres.
func codeOf(n *node, v reflect.Value) string {
	w := writer{sizes: true}
	w.node(n, v)
	return CodeOf(w.out)
}

// CodeOf writes the first 30 bits of the SHA-256 of any content.
func CodeOf(content []byte) string {
	sum := sha256.Sum256(content)
	bits := binary.BigEndian.Uint32(sum[:])
	code := make([]byte, codeLetters)
	for i := range code {
		code[i] = crockford[bits>>(27-5*i)&31]
	}
	return string(code)
}

// IsRevision reports whether a text can be the code of a design or of a price book.
func IsRevision(s string) bool { return isCode(s) }

func isCode(s string) bool { return len(s) == codeLetters && strings.Trim(s, crockford) == "" }
