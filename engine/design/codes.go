package design

// Code says what is wrong, for whoever makes sentences of faults.
type Code string

// The codes of faults.
const (
	BadSyntax     Code = "syntax"        // not JSON, cut off, or followed by something else
	BadUTF8       Code = "utf-8"         // not valid UTF-8, or half of a surrogate pair
	TooLarge      Code = "too-large"     // more bytes than a file may have
	TooDeep       Code = "too-deep"      // parts within parts within parts
	ForeignFormat Code = "format"        // a file of something else
	NewerVersion  Code = "newer-version" // written by a newer program
	OlderVersion  Code = "older-version" // of a version that never was
	UnknownField  Code = "unknown-field" // a name that the document does not have
	TwiceGiven    Code = "twice"         // the same name twice in one part
	Missing       Code = "missing"       // must be there and is not
	WrongType     Code = "type"          // a text where a number belongs, and the like
	BadLength     Code = "length"        // cannot be read as a length
	BadNumber     Code = "number"        // cannot be read as a number
	BadWhole      Code = "whole"         // cannot be read as a whole number
	Ambiguous     Code = "ambiguous"     // a number or length that can be read in two ways
	BadAmount     Code = "amount"        // cannot be read as an amount of money
	FineAmount    Code = "fine-amount"   // has more decimals than an amount
	BadCurrency   Code = "currency"      // is no currency
	BadDate       Code = "date"          // is no day of the calendar
	BadCode       Code = "code"          // is no revision or book code
	OutOfRange    Code = "range"         // below or above what the field takes
	UnknownChoice Code = "choice"        // not in the list
	EmptyText     Code = "empty"         // a text that must be filled in
	LongText      Code = "long"          // more characters than the field takes
	ControlChars  Code = "control"       // characters that are not seen, such as those that turn the writing round
	WrongCount    Code = "count"         // too few or too many entries
	NotRising     Code = "rising"        // heights out of order
	LowAboveHigh  Code = "low-high"      // the ends of a range the wrong way round
	DaysReversed  Code = "days-reversed" // the last day before the first
	NotPrime      Code = "prime"         // an order that is no prime
	NotFoldable   Code = "fold"          // an order or a fold that gives no two-dimensional field
	BadOrder      Code = "panel-order"   // letters do not fit the panels
	BadDrawing    Code = "drawn"         // rows do not fit the field or the heights
	TooManyCells  Code = "cells"         // a field of too many blocks
	Outside       Code = "outside"       // not on its wall
	Oversize      Code = "oversize"      // panels larger than any wall
	NotAssumable  Code = "not-assumable" // a path that cannot be assumed
	NotUnique     Code = "not-unique"    // the same entry twice in a list
	BadSum        Code = "sum"           // parts do not add up to the whole
	CannotEdit    Code = "cannot-edit"   // not for typing
	NotSupplied   Code = "supply"        // a service that does not go with what is made
	BadLink       Code = "link"          // a share link that was damaged or cut off
	BadCopy       Code = "copy"          // a client copy in a letter that was damaged or cut off
	NotAnswered   Code = "not-answered"  // an enquiry that says it answers another
	BadPhoto      Code = "photo"         // is no picture that a letter takes
	NotYet        Code = "not-yet"       // a price book before its first day
	Expired       Code = "expired"       // a price book after its last day
	AndMore       Code = "more"          // Value more faults were found
)
