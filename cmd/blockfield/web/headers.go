package web

import (
	"crypto/sha256"
	"encoding/base64"
	"fmt"
	"net/http"
	"strings"
)

// policy is the strict content policy of every answer. The two scripts of the
// preview's frame stand inline in its document and are allowed by their text;
// scripts that are made of strings, and styles in attributes, are allowed
// nowhere.
func policy(loader, frameScript []byte) string {
	return strings.Join([]string{
		"default-src 'none'",
		"script-src 'self' 'wasm-unsafe-eval' " + scriptHash(loader) + " " + scriptHash(frameScript),
		"style-src 'self'",
		"font-src 'self'",
		"img-src 'self' data: blob:",
		"connect-src 'self'",
		"worker-src 'self'",
		"frame-src 'self'",
		"manifest-src 'self'",
		"base-uri 'none'",
		"form-action 'none'",
		"frame-ancestors 'self'",
		"require-trusted-types-for 'script'",
		"trusted-types blockfield",
	}, "; ")
}

func scriptHash(text []byte) string {
	sum := sha256.Sum256(text)
	return "'sha256-" + base64.StdEncoding.EncodeToString(sum[:]) + "'"
}

// How long a browser may keep an answer: a year where the address names the
// content, and never without asking again elsewhere.
const (
	keepForEver = "public, max-age=31536000, immutable"
	askAgain    = "no-cache"
)

// headers are sent with every answer, errors too.
func (s *Site) headers() http.Header {
	return http.Header{
		"Content-Security-Policy":      {s.policy},
		"X-Content-Type-Options":       {"nosniff"},
		"Referrer-Policy":              {"no-referrer"},
		"Cross-Origin-Opener-Policy":   {"same-origin"},
		"Cross-Origin-Resource-Policy": {"same-origin"},
		"Permissions-Policy":           {"camera=(), geolocation=(), microphone=()"},
	}
}

// headersText tells whoever puts the files on a server of their own what that
// server should send.
func (s *Site) headersText() string {
	var b strings.Builder
	b.WriteString("A server of these files should send these headers with every answer:\n\n")
	for _, name := range []string{
		"Content-Security-Policy", "X-Content-Type-Options", "Referrer-Policy",
		"Cross-Origin-Opener-Policy", "Cross-Origin-Resource-Policy", "Permissions-Policy",
	} {
		fmt.Fprintf(&b, "%s: %s\n", name, s.headers().Get(name))
	}
	fmt.Fprintf(&b, "\nFor files below a-…/ also\n\nCache-Control: %s\n\nand for all others\n\nCache-Control: %s\n", keepForEver, askAgain)
	b.WriteString("\nModules (.wasm) are application/wasm, scripts text/javascript. A file with .br or .gz\n" +
		"behind its name is the same file compressed, to be sent in its place with Content-Encoding.\n")
	return b.String()
}
