package web

import (
	"crypto/sha256"
	"encoding/base64"
	"net/http"
	"strings"
)

// contentPolicy is the strict one of every answer. The two scripts of the
// preview's frame stand inline in its document and are allowed by their text;
// scripts that are made of strings, and styles in attributes, are allowed
// nowhere.
//
// The page carries it too, for servers that send no headers: all but ancestors, which
// count in a header alone.
type contentPolicy struct{ own, ancestors string }

// newPolicy makes the policy. frames are the origins whose pages may show the page in a
// frame; nil: its own alone.
func newPolicy(loader, frameScript []byte, frames *[]string) contentPolicy {
	ancestors := "'self'"
	if frames != nil {
		ancestors = strings.Join(append([]string{"'self'"}, *frames...), " ")
	}
	if frames != nil && len(*frames) == 0 {
		ancestors = "'none'"
	}
	return contentPolicy{strings.Join([]string{
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
		"require-trusted-types-for 'script'",
		"trusted-types blockfield",
	}, "; "), "frame-ancestors " + ancestors}
}

// header is the policy as a server sends it.
func (p contentPolicy) header() string { return p.own + "; " + p.ancestors }

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
		"Content-Security-Policy":      {s.policy.header()},
		"X-Content-Type-Options":       {"nosniff"},
		"Referrer-Policy":              {"no-referrer"},
		"Cross-Origin-Opener-Policy":   {"same-origin"},
		"Cross-Origin-Resource-Policy": {"same-origin"},
		"Permissions-Policy":           {"camera=(), geolocation=(), microphone=()"},
	}
}
