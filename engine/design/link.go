package design

import (
	"bytes"
	"compress/flate"
	"crypto/sha256"
	"encoding/base64"
	"io"
	"reflect"
	"strings"
)

// Bounds of a share link: its text, and what it unfolds to.
const (
	maxLinkChars = 64 << 10
	maxLinkBytes = 1 << 20
)

// linkCheckBytes of the SHA-256 of what follows open a link, so that one that
// was cut off or changed on its way is told from a good one.
const linkCheckBytes = 4

// EncodeLink writes the client copy of a document, which is the design with
// what is assumed in it, the view and the offer, as the fragment of a link: a
// check, then deflated JSON, in the letters of base64url.
func EncodeLink(doc Document) (string, error) { return encodeCopy(doc, maxLinkChars) }

// encodeCopy writes it in so many letters at most.
func encodeCopy(doc Document, most int) (string, error) {
	doc.Looks = nil
	var packed bytes.Buffer
	deflate, err := flate.NewWriter(&packed, flate.BestCompression)
	if err != nil {
		panic("design: internal error: " + err.Error())
	}
	plain := compact(designTree(), reflect.ValueOf(&doc).Elem())
	if len(plain) > maxLinkBytes {
		return "", linkTooLarge(len(plain), maxLinkBytes)
	}
	// Writing to memory does not fail.
	_, _ = deflate.Write(plain)
	_ = deflate.Close()
	text := base64.RawURLEncoding.EncodeToString(append(linkCheck(packed.Bytes()), packed.Bytes()...))
	if len(text) > most {
		return "", linkTooLarge(len(text), most)
	}
	return text, nil
}

// DecodeLink reads the fragment of a share link, with or without its # and the
// white space that copying may have put around it. The error, if any, is of
// type Faults.
func DecodeLink(fragment string) (Document, error) {
	fragment = strings.TrimSpace(strings.ReplaceAll(fragment, "%20", " "))
	return decodeCopy(strings.TrimPrefix(fragment, "#"), maxLinkChars)
}

func decodeCopy(text string, most int) (Document, error) {
	if len(text) > most {
		return Document{}, linkTooLarge(len(text), most)
	}
	damaged := Faults{{Code: BadLink}}
	packed, err := base64.RawURLEncoding.Strict().DecodeString(text)
	if err != nil || len(packed) < linkCheckBytes ||
		!bytes.Equal(packed[:linkCheckBytes], linkCheck(packed[linkCheckBytes:])) {
		return Document{}, damaged
	}
	inflate := flate.NewReader(bytes.NewReader(packed[linkCheckBytes:]))
	plain, err := io.ReadAll(io.LimitReader(inflate, maxLinkBytes+1))
	switch {
	case err != nil:
		return Document{}, damaged
	case len(plain) > maxLinkBytes:
		return Document{}, linkTooLarge(len(plain), maxLinkBytes)
	}
	return Decode(plain)
}

func linkCheck(packed []byte) []byte {
	sum := sha256.Sum256(packed)
	return sum[:linkCheckBytes:linkCheckBytes]
}

func linkTooLarge(found, allowed int) Faults {
	return Faults{{Code: TooLarge, Value: phrase("found/bytes", "n", count(found)), Allowed: phrase("allowed/bytes", "n", count(allowed))}}
}
