package cli

import (
	"errors"
	"fmt"
	"math/big"
	"regexp"
	"strconv"
	"strings"
	"unicode/utf8"

	"github.com/go-json-experiment/json"
	"github.com/go-json-experiment/json/jsontext"

	"blockfield/engine/cut"
	"blockfield/engine/length"
	"blockfield/engine/words"
)

// orderFile is a cutting problem as it is written. What can be a text or a
// number is read by hand, so that a fault can be named with its path.
type orderFile struct {
	Kerf     jsontext.Value `json:"kerf"`
	Trim     jsontext.Value `json:"trim"`
	Tail     jsontext.Value `json:"tail"`
	Stock    []orderBar     `json:"stock"`
	Pieces   []orderPiece   `json:"pieces"`
	Minimise *string        `json:"minimise"`
}

type orderBar struct {
	Name      string         `json:"name"`
	Length    jsontext.Value `json:"length"`
	Price     jsontext.Value `json:"price"`
	Available jsontext.Value `json:"available"`
}

type orderPiece struct {
	Length jsontext.Value `json:"length"`
	Count  jsontext.Value `json:"count"`
}

// order is a cutting problem with what is needed to write its plan in the words
// of the file.
type order struct {
	problem   cut.Problem
	plain     bool // lengths are whole numbers of a unit that only the reader knows
	priced    bool
	decimals  int               // of the prices
	written   map[int64]any     // each length as it was first written
	notations []length.Notation // of each bar
	faults    []error
	notation  length.Notation // of the length read last
	texts     int             // lengths written with a unit
	numbers   int             // and without
}

const (
	// maxPriceText is more characters than any price needs.
	maxPriceText = 20
	maxDecimals  = 4
	maxName      = 80
	// largestPrice is allowed whatever the decimals.
	largestPrice = cut.MaxPrice / 10_000
)

// readOrder reads a problem and reports everything that is wrong with it.
func readOrder(body []byte) (*order, error) {
	var file orderFile
	if err := json.Unmarshal(body, &file, json.RejectUnknownMembers(true)); err != nil {
		return nil, jsonFault(err, "a cutting problem")
	}
	o := &order{written: map[int64]any{}}
	o.problem.Kerf = o.length("kerf", file.Kerf, 0, true)
	o.problem.EndTrim = o.length("trim", file.Trim, 0, false)
	o.problem.Tail = o.length("tail", file.Tail, 0, false)
	o.bars(file.Stock)
	o.pieces(file.Pieces)
	switch {
	case file.Minimise == nil || *file.Minimise == "cost":
	case *file.Minimise == "boards":
		o.problem.Goal = cut.Boards
	default:
		o.fault("minimise", "%s is unknown (allowed \"cost\", \"boards\")", quoted(*file.Minimise))
	}
	if o.texts > 0 && o.numbers > 0 {
		o.fault("lengths", "%d have a unit and %d have none (allowed: all with a unit, or all whole numbers of one unit)", o.texts, o.numbers)
	}
	o.plain = o.numbers > 0
	o.room()
	return o, errors.Join(o.faults...)
}

func (o *order) fault(path, format string, args ...any) {
	o.faults = append(o.faults, fmt.Errorf("%s: %s", path, fmt.Sprintf(format, args...)))
}

func (o *order) bars(bars []orderBar) {
	if n := len(bars); n == 0 || n > cut.MaxBars {
		o.fault("stock", "%d kinds (allowed 1 to %d)", n, cut.MaxBars)
		return
	}
	prices := make([]*big.Rat, len(bars))
	priced := 0
	for i, b := range bars {
		path := fmt.Sprintf("stock[%d]", i)
		bar := cut.Bar{Name: b.Name, Length: o.length(path+".length", b.Length, 1, true)}
		o.notations = append(o.notations, o.notation)
		o.name(path+".name", b.Name)
		if bar.Name == "" {
			bar.Name = fmt.Sprint(o.written[bar.Length])
		}
		if b.Available != nil {
			bar.Limited, bar.Available = true, o.count(path+".available", b.Available)
		}
		if b.Price != nil {
			prices[i] = o.price(path+".price", b.Price)
			priced++
		}
		o.problem.Bars = append(o.problem.Bars, bar)
	}
	if priced > 0 && priced < len(bars) {
		o.fault("stock", "%d of %d have a price (allowed: all or none)", priced, len(bars))
	}
	o.priced = priced > 0
	o.setPrices(prices)
}

// name takes the names that the texts of a design take: they are printed again.
func (o *order) name(path, text string) {
	if n := utf8.RuneCountInString(text); n > maxName {
		o.fault(path, "has %d characters (allowed at most %d)", n, maxName)
	}
	if code, place := words.Unseen(text, false); code != "" {
		found := words.Phrase{Key: "found/character", Args: words.Args{"text": brief(jsontext.Value(text)), "code": code, "place": place}}
		o.fault(path, "%s", words.Reader{Language: words.English()}.Say("error/control", words.Args{"value": found}))
	}
}

// setPrices makes whole numbers of the prices, with as many decimals as the one
// that has most; without prices the cost of a bar is its length.
func (o *order) setPrices(prices []*big.Rat) {
	scale := new(big.Int).Exp(big.NewInt(10), big.NewInt(int64(o.decimals)), nil)
	for i := range o.problem.Bars {
		bar := &o.problem.Bars[i]
		if bar.Price = bar.Length; !o.priced || prices[i] == nil {
			continue
		}
		units := new(big.Rat).Mul(prices[i], new(big.Rat).SetInt(scale)).Num()
		if !units.IsInt64() || units.Int64() > cut.MaxPrice {
			o.fault(fmt.Sprintf("stock[%d].price", i), "%s is too high (allowed up to %s)", prices[i].FloatString(o.decimals), o.money(cut.MaxPrice))
			continue
		}
		bar.Price = units.Int64()
	}
}

// room says which of trim and tail to shorten where they leave nothing of the
// longest bar.
func (o *order) room() {
	longest := 0
	for i, b := range o.problem.Bars {
		if b.Length > o.problem.Bars[longest].Length {
			longest = i
		}
	}
	p := o.problem
	if len(o.faults) > 0 || p.EndTrim+p.Tail < p.Bars[longest].Length {
		return
	}
	path, value, other := "tail", p.Tail, p.EndTrim
	if p.EndTrim > p.Tail {
		path, value, other = "trim", p.EndTrim, p.Tail
	}
	text := func(v int64) any { return o.text(v, o.notations[longest]) }
	o.fault(path, "%v leaves nothing of the longest stock, %v (allowed less than %v)",
		o.written[value], o.written[p.Bars[longest].Length], text(p.Bars[longest].Length-other))
}

func (o *order) pieces(pieces []orderPiece) {
	if n := len(pieces); n > cut.MaxLines {
		o.fault("pieces", "%d lines (allowed up to %d)", n, cut.MaxLines)
		return
	}
	count := 0
	for i, p := range pieces {
		path := fmt.Sprintf("pieces[%d]", i)
		piece := cut.Piece{Length: o.length(path+".length", p.Length, 1, true), Count: o.count(path+".count", p.Count)}
		o.problem.Pieces = append(o.problem.Pieces, piece)
		count += piece.Count
	}
	if count > cut.MaxPieces {
		o.fault("pieces", "%d in all (allowed up to %d)", count, cut.MaxPieces)
	}
}

// length reads a text with a unit, in nanometres, or a whole number.
func (o *order) length(path string, v jsontext.Value, low int64, needed bool) int64 {
	switch {
	case v == nil && needed:
		o.fault(path, "is missing")
		return low
	case v == nil:
		return 0
	case v.Kind() == '"':
		o.texts++
		return o.lengthText(path, v, low)
	}
	n, ok := whole(v, low, cut.MaxLength)
	if !ok {
		o.fault(path, "%s is not a length (allowed a text like \"84 mm\", or a whole number from %d to %d)", brief(v), low, int64(cut.MaxLength))
		return low
	}
	o.numbers++
	o.write(n, n, length.InMM)
	return n
}

func (o *order) lengthText(path string, v jsontext.Value, low int64) int64 {
	var text string
	if err := json.Unmarshal(v, &text); err != nil {
		o.fault(path, "%s is not a text", brief(v))
		return low
	}
	l, err := length.ParseExact(text)
	if err != nil {
		o.fault(path, "%v", err)
		return low
	}
	nm := l.Nanometres()
	if nm < low || nm > cut.MaxLength {
		least := "0 mm"
		if low > 0 {
			least = "more than 0 mm"
		}
		o.fault(path, "%q is out of range (allowed %s to %v)", text, least, length.Nanometres(cut.MaxLength, length.InM))
		return low
	}
	o.write(nm, l.String(), l.Notation())
	return nm
}

// write keeps how a length was first written.
func (o *order) write(value int64, text any, n length.Notation) {
	if _, ok := o.written[value]; !ok {
		o.written[value] = text
	}
	o.notation = n
}

// text writes a length as the file does.
func (o *order) text(value int64, n length.Notation) any {
	if o.plain {
		return value
	}
	return length.Nanometres(value, n).String()
}

// money writes a cost as a number: in the unit of the prices, without prices in
// millimetres, or in the unit of lengths that are whole numbers.
func (o *order) money(units int64) jsontext.Value {
	switch {
	case o.priced:
		return decimal(units, o.decimals)
	case o.plain:
		return decimal(units, 0)
	}
	const nanometresADigit = 6 // of a millimetre
	return decimal(units, nanometresADigit)
}

// decimal is a whole number of the last of so many decimals, without the noughts
// that end it.
func decimal(units int64, decimals int) jsontext.Value {
	text := strconv.FormatInt(units, 10)
	if decimals == 0 {
		return jsontext.Value(text)
	}
	for len(text) <= decimals {
		text = "0" + text
	}
	at := len(text) - decimals
	return jsontext.Value(strings.TrimSuffix(strings.TrimRight(text[:at]+"."+text[at:], "0"), "."))
}

// minimised is what the plan has as little of as possible: without prices to add
// up, the length of the bars.
func (o *order) minimised() string {
	switch {
	case o.problem.Goal == cut.Boards:
		return "boards"
	case !o.priced:
		return "length"
	}
	return "cost"
}

func (o *order) count(path string, v jsontext.Value) int {
	n, ok := whole(v, 0, cut.MaxPieces)
	if !ok {
		o.fault(path, "%s is not a number of pieces (allowed 0 to %d)", brief(v), cut.MaxPieces)
	}
	return int(n)
}

// price reads a text like "7.50" or a number like it.
func (o *order) price(path string, v jsontext.Value) *big.Rat {
	text := string(v)
	if v.Kind() == '"' && json.Unmarshal(v, &text) != nil {
		text = ""
	}
	if len(text) > maxPriceText || !decimalText.MatchString(text) {
		o.fault(path, "%s is not a price (allowed like \"7.50\", 0 to %d with up to %d decimals)", brief(v), largestPrice, maxDecimals)
		return nil
	}
	if _, after, ok := strings.Cut(text, "."); ok {
		o.decimals = max(o.decimals, len(after))
	}
	r, _ := new(big.Rat).SetString(text)
	return r
}

var decimalText = regexp.MustCompile(`^[0-9]+(\.[0-9]{1,4})?$`)

// whole reads a whole number in plain digits.
func whole(v jsontext.Value, low, high int64) (int64, bool) {
	n, err := strconv.ParseInt(string(v), 10, 64)
	return n, err == nil && n >= low && n <= high
}

// brief is the beginning of a value, for a message.
func brief(v jsontext.Value) string {
	const most = 40
	if v == nil {
		return "nothing"
	}
	text := []rune(words.Printable(string(v)))
	if len(text) > most {
		return string(text[:most]) + "…"
	}
	return string(text)
}

func quoted(s string) string { return brief(jsontext.Value(strconv.Quote(s))) }

// jsonFault names the place of what could not be read, in a file of some kind.
func jsonFault(err error, of string) error {
	var path jsontext.Pointer
	what := "cannot be read as JSON"
	if e, ok := errors.AsType[*jsontext.SyntacticError](err); ok {
		path = e.JSONPointer
		what = fmt.Sprintf("cannot be read as JSON: %v at byte %d", e.Err, e.ByteOffset)
		if errors.Is(e, jsontext.ErrDuplicateName) {
			what = "is there twice"
		}
	} else if e, ok := errors.AsType[*json.SemanticError](err); ok {
		path = e.JSONPointer
		switch what = fmt.Sprintf("is of the wrong type: %v", e.JSONKind); {
		case errors.Is(e, json.ErrUnknownName):
			what = "is not a field of " + of
		case e.Err != nil:
			what = e.Err.Error()
		}
	}
	if path == "" {
		return errors.New(what)
	}
	return fmt.Errorf("%s: %s", dotted(path), what)
}

// dotted writes a pointer as a path: stock[0].length.
func dotted(p jsontext.Pointer) string {
	var out strings.Builder
	for token := range p.Tokens() {
		if _, err := strconv.Atoi(token); err == nil {
			fmt.Fprintf(&out, "[%s]", token)
			continue
		}
		if out.Len() > 0 {
			out.WriteByte('.')
		}
		out.WriteString(brief(jsontext.Value(token)))
	}
	return out.String()
}
