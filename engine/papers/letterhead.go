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
	name, reach := strings.TrimSpace(m.Book.Workshop), m.reach()
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

// reach is the workshop's address with its tax number, on one line.
func (m *maker) reach() string {
	var all []string
	for line := range strings.Lines(m.Book.Address) {
		if line = strings.TrimSpace(line); line != "" {
			all = append(all, line)
		}
	}
	if tax := strings.TrimSpace(m.Book.TaxNumber); tax != "" {
		all = append(all, m.T("letterhead/tax", "number", tax))
	}
	return strings.Join(all, " · ")
}
