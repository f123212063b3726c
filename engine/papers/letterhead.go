package papers

import (
	"strings"

	"blockfield/engine/papers/sheet"
)

// letterheadSize is that of the type of the workshop's name.
const letterheadSize = 5.2

// letterhead is who writes, at the head of a paper that goes to a client; nothing where
// neither the price book says nor the site. A workshop writes it on every letter: it is no
// figure.
func (m *maker) letterhead() []sheet.Block {
	name, reach, number := m.sender()
	if number != "" {
		reach = strings.TrimPrefix(reach+" · "+m.T("letterhead/tax", "number", number), " · ")
	}
	if name == "" && reach == "" {
		name, reach = m.Maker, m.WriteTo
	}
	if name == "" {
		return nil
	}
	return []sheet.Block{sheet.Fitted(func(width float64) []sheet.Block {
		high := sheet.TextHeight(sheet.Bold, letterheadSize, width, name)
		return []sheet.Block{sheet.Piece{Height: high + sheet.TextHeight(sheet.Regular, sheet.SmallSize, width, reach), Draw: func(p sheet.Pen) {
			p.Lines(sheet.Type{Size: letterheadSize, Face: sheet.Bold}, name)
			p.In(0, high, p.Width, p.Height-high).Lines(sheet.Type{Size: sheet.SmallSize}, reach)
		}}}
	})}
}

// sender is the workshop by name, how to reach it, on one line, and its tax number: as the
// offer of this very design has them, or else the book.
func (m *maker) sender() (name, reach, number string) {
	name, address, number := m.Book.Workshop, m.Book.Address, m.Book.TaxNumber
	if o := m.snapshot(); o != nil {
		name, address, number = o.Workshop, o.Address, o.TaxNumber
	}
	var all []string
	for line := range strings.Lines(address) {
		if line = strings.TrimSpace(line); line != "" {
			all = append(all, line)
		}
	}
	return strings.TrimSpace(name), strings.Join(all, " · "), strings.TrimSpace(number)
}
