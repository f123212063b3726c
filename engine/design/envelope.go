package design

import (
	"bytes"
	"errors"
	"io"
	"strconv"
	"strings"
	"unicode/utf8"

	"blockfield/engine/words"

	"github.com/go-json-experiment/json/jsontext"
)

// byteOrderMark opens files of some editors. RFC 8259, section 8.1, lets a
// reader ignore it.
const byteOrderMark = "\uFEFF"

func unmarked(data []byte) []byte { return bytes.TrimPrefix(data, []byte(byteOrderMark)) }

// FormatOf returns what a file says it is, Format, BookFormat or SellingFormat
// among others, as far as it can be read; "" where it does not say.
func FormatOf(data []byte) string {
	d := decoder{data: unmarked(data)}
	d.in = tokens(d.data)
	head, _ := d.scan()
	return head.format
}

// envelope reads the whole file once without keeping anything: its size, its
// syntax, its depth, its format and its version must be right before the rest
// means anything.
func (d *decoder) envelope(format string, version int) bool {
	switch {
	case len(d.data) > maxFileBytes:
		d.add(nil, TooLarge, phrase("found/bytes", "n", count(len(d.data))), phrase("allowed/bytes", "n", count(maxFileBytes)))
		return false
	case !utf8.Valid(d.data):
		d.add(nil, BadUTF8, d.place("found/place", firstBadByte(d.data)), words.Phrase{})
		return false
	}
	d.in = tokens(d.data)
	head, ok := d.scan()
	if !ok {
		return false
	}
	if head.format != format {
		d.add((*at)(nil).field("format"), ForeignFormat, head.format, words.Plain(format))
		return false
	}
	v, err := strconv.ParseUint(head.version, 10, 32)
	ours := words.Plain(count(version))
	switch p := (*at)(nil).field("version"); {
	case head.version == "":
		d.add(p, Missing, nil, ours)
	case !head.isNumber:
		d.add(p, WrongType, head.version, phrase("allowed/number", "range", ours))
	case err != nil || v == 0:
		d.add(p, OlderVersion, head.version, ours)
	case v > uint64(version):
		d.add(p, NewerVersion, head.version, phrase("allowed/version", "n", version))
	default:
		return true
	}
	return false
}

// firstBadByte is where data stops being UTF-8.
func firstBadByte(data []byte) int {
	for i := 0; i < len(data); {
		r, size := utf8.DecodeRune(data[i:])
		if r == utf8.RuneError && size == 1 {
			return i
		}
		i += size
	}
	return len(data)
}

// place says where a byte of the file is, for a person with an editor: lines
// and characters, both counted from 1.
func (d *decoder) place(key string, offset int) words.Phrase {
	before := d.data[:min(max(offset, 0), len(d.data))]
	line := bytes.Count(before, []byte("\n")) + 1
	column := utf8.RuneCount(before[bytes.LastIndexByte(before, '\n')+1:]) + 1
	return phrase(key, "line", count(line), "column", count(column))
}

// head is what a file says of itself.
type head struct {
	format   string
	version  string // as it is written
	isNumber bool   // of the version
}

// scan walks over all tokens and returns what the file says of itself, as far
// as it can be read.
func (d *decoder) scan() (h head, ok bool) {
	if d.in.PeekKind() != '{' {
		_, err := d.in.ReadToken()
		if err == nil {
			d.add(nil, ForeignFormat, nil, words.Phrase{Key: "allowed/object"})
			return h, false
		}
		return h, d.syntax(err)
	}
	name, end := "", -1
	for {
		tok, err := d.in.ReadToken()
		if err == io.EOF {
			return h, true
		}
		if err != nil {
			return h, d.syntax(err)
		}
		if end >= 0 {
			d.add(nil, BadSyntax, d.place("found/after-end", end), words.Phrase{})
			return h, false
		}
		depth := d.in.StackDepth()
		if depth > maxDepth {
			d.add(nil, TooDeep, d.place("found/place", d.offset()), phrase("allowed/levels", "n", maxDepth))
			return h, false
		}
		switch {
		case depth == 0:
			end = d.offset()
		case depth == 1 && d.isName():
			name = tok.String()
		case depth == 1 && name == "format" && tok.Kind() == '"':
			h.format = tok.String()
		case name == "version" && h.version == "":
			h.version, h.isNumber = tok.String(), tok.Kind() == '0'
			if tok.Kind() == '"' {
				h.version = strconv.Quote(h.version)
			}
		}
	}
}

// isName reports whether the token just read names a part of the file, which
// has names and values in turn.
func (d *decoder) isName() bool {
	_, n := d.in.StackIndex(1)
	return n%2 == 1
}

// syntax reports what keeps the file from being read at all.
func (d *decoder) syntax(err error) bool {
	key, code, offset := "found/place", BadSyntax, d.offset()
	if wrong, ok := errors.AsType[*jsontext.SyntacticError](err); ok {
		offset = int(wrong.ByteOffset)
	}
	switch text := err.Error(); {
	case errors.Is(err, io.EOF) || errors.Is(err, io.ErrUnexpectedEOF):
		key, offset = "found/cut-off", len(d.data)
	case strings.Contains(text, "UTF-8") || strings.Contains(text, "surrogate"):
		code = BadUTF8
	}
	d.add(nil, code, d.place(key, offset), words.Phrase{})
	return false
}

// offset is how far the file was read.
func (d *decoder) offset() int { return int(d.in.InputOffset()) }
