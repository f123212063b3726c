package design

import (
	_ "embed"
	"sync"
)

//go:embed placeholder.json
var placeholder string

// DefaultBook is the placeholder book of a workshop that does not exist. Every
// figure in it is invented; it is there so that the whole job can be tried, and
// what it yields is shown as example figures.
func DefaultBook() Book {
	book, err := DecodeBook([]byte(placeholder))
	if err != nil {
		panic("design: internal error: " + err.Error())
	}
	return book
}

// DefaultBookCode is the code of DefaultBook.
var DefaultBookCode = sync.OnceValue(func() string { return DefaultBook().Code() })
