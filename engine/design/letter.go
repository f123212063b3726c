package design

import (
	"bytes"
	"encoding/base64"
	"errors"
	"image/jpeg"
	"reflect"
	"sync"

	"blockfield/engine/words"
)

// The name and version that open a letter.
const (
	LetterFormat  = "blockfield letter"
	LetterVersion = 1
)

// Who writes a letter.
const (
	FromClient   = "client"
	FromWorkshop = "workshop"
)

// Letter is what a client sends to a workshop, an enquiry, or what the workshop sends
// back, an answer: a file, since people's names belong into no link. It holds the client
// copy of a design and what goes along with it in words; no price book, no record.
type Letter struct {
	Format  string  `json:"format"`
	Version int     `json:"version"`
	From    string  `json:"from"`
	Day     string  `json:"day"`
	Name    string  `json:"name"`   // of whoever writes
	Reach   string  `json:"reach"`  // a mail address or a telephone number
	Wished  string  `json:"wished"` // last day on which the client would like to have it; may be empty
	Message string  `json:"message"`
	Copy    string  `json:"copy"`             // client copy, in the letters of a link
	Asked   string  `json:"asked,omitempty"`  // in an answer: the one that it answers
	Photos  []Photo `json:"photos,omitempty"` // of an enquiry
}

// Photo is a picture of the place, as a JPEG in base64.
type Photo struct {
	Kind string `json:"kind"` // what it shows, one of PhotoKinds
	Day  string `json:"day"`
	JPEG string `json:"jpeg"`
}

// PhotoKinds are what pictures of the place show.
func PhotoKinds() []string { return []string{"wall", "studs", "damage", "way"} }

// Bounds of a letter. Six pictures of 350 kB and two copies stay below what a file may
// have and mail servers take.
const (
	MaxLetterPhotos = 6
	MaxPhotoBytes   = 350_000
	maxPhotoSide    = 2000       // pixels
	maxCopyChars    = 512 * 1024 // of a copy in a file, which nobody has to paste
)

// letterRows is the table of letters.
func letterRows() []Field {
	return []Field{
		choiceRow("format", "Says that the file is a letter.", LetterFormat).required().fixed(),
		integerRow("version", LetterVersion, LetterVersion, "The version of the file's form.").required().fixed(),
		choiceRow("from", "Who writes.", FromClient, FromWorkshop).required(),
		kindRow("day", KindDate, "On which day.").optional(),
		textRow("name", shortText, "Who writes, by name."),
		textRow("reach", shortText, "Mail address or telephone number."),
		kindRow("wished", KindDate, "Last day on which the client would like to have it; may be empty.").optional(),
		textRow("message", longText, "What there is to say.").lines(),
		textRow("copy", maxCopyChars, "Client copy of the design, in the letters of a link.").filled().required(),
		textRow("asked", maxCopyChars, "In an answer: the client copy that it answers.").sparse(),
		partsRow("photos", 0, MaxLetterPhotos, "Pictures of the place.").sparse(),
		choiceRow("photos[].kind", "What it shows.", PhotoKinds()...),
		kindRow("photos[].day", KindDate, "On which day it was taken in.").optional(),
		textRow("photos[].jpeg", base64.StdEncoding.EncodedLen(MaxPhotoBytes), "The picture, a JPEG in base64.").filled().required(),
	}
}

// The table and the tree that joins the struct with it are built once.
var (
	letterTable = sync.OnceValue(letterRows)
	letterTree  = sync.OnceValue(func() *node { return buildTree(reflect.TypeFor[Letter](), letterTable()) })
)

// NewLetter is a letter with the client copy of a document. The error is of type Faults.
func NewLetter(from string, doc Document) (Letter, error) {
	text, err := EncodeCopy(doc)
	return Letter{Format: LetterFormat, Version: LetterVersion, From: from, Copy: text}, err
}

// EncodeCopy writes the client copy of a document in the letters of a link, for files,
// where it may be longer than in a link.
func EncodeCopy(doc Document) (string, error) { return encodeCopy(doc, maxCopyChars) }

// DecodeCopy reads what EncodeCopy wrote. The error, if any, is of type Faults.
func DecodeCopy(text string) (Document, error) { return decodeCopy(text, maxCopyChars) }

// EncodeLetter writes a letter in its canonical form.
func EncodeLetter(l Letter) []byte { return file(letterTree(), reflect.ValueOf(&l).Elem()) }

// ValidateLetter checks every value of a letter but its copies, which are made by us. The
// error, if any, is of type Faults.
func ValidateLetter(l Letter) error {
	c := checker{}
	c.parts(letterTree(), reflect.ValueOf(&l).Elem(), nil)
	c.photos(l.Photos)
	return asError(c.all())
}

// DecodeLetter reads a letter and the client copy in it. The error, if any, is of type
// Faults.
func DecodeLetter(data []byte) (Letter, Document, error) {
	var l Letter
	d := decoder{data: unmarked(data), fresh: newPhoto}
	if !d.envelope(LetterFormat, LetterVersion) {
		return Letter{}, Document{}, d.all()
	}
	d.read(letterTree(), reflect.ValueOf(&l).Elem())
	d.parts(letterTree(), reflect.ValueOf(&l).Elem(), nil)
	d.photos(l.Photos)
	root := (*at)(nil)
	if l.From == FromClient && l.Asked != "" {
		d.add(root.field("asked"), NotAnswered, nil, words.Phrase{})
	}
	if faults := d.all(); faults != nil {
		return Letter{}, Document{}, faults
	}
	doc, err := DecodeCopy(l.Copy)
	if err != nil {
		return Letter{}, Document{}, inCopy("copy", err)
	}
	if l.Asked != "" {
		if _, err := DecodeCopy(l.Asked); err != nil {
			return Letter{}, Document{}, inCopy("asked", err)
		}
	}
	return l, doc, nil
}

// inCopy says in which copy of a letter something is wrong.
func inCopy(name string, err error) error {
	var faults Faults
	if !errors.As(err, &faults) {
		return err
	}
	for i, f := range faults {
		if f.Code == BadLink {
			faults[i].Code = BadCopy
		}
		faults[i].Path = name
		if f.Path != "" {
			faults[i].Path += "." + f.Path
		}
	}
	return faults
}

func newPhoto(string) any { return Photo{Kind: PhotoKinds()[0]} }

// Bytes are those of the picture; nil where it is none.
func (p Photo) Bytes() []byte {
	body, err := base64.StdEncoding.Strict().DecodeString(p.JPEG)
	if err != nil {
		return nil
	}
	return body
}

// photos reports what is no picture of ours. Only its head is read: whoever shows it has
// a browser to do so.
func (c *checker) photos(all []Photo) {
	for i, p := range all[:min(len(all), MaxLetterPhotos)] {
		place := (*at)(nil).field("photos").item(i).field("jpeg")
		if !c.clean(place) {
			continue
		}
		head, err := jpeg.DecodeConfig(bytes.NewReader(p.Bytes()))
		if err != nil || head.Width > maxPhotoSide || head.Height > maxPhotoSide {
			c.add(place, BadPhoto, nil, phrase("allowed/photo", "side", maxPhotoSide))
		}
	}
}

// LetterSchema returns the JSON Schema of letters.
func LetterSchema() []byte {
	return schema(letterTree(), "Blockfield letter", "What a client sends to a workshop, or a workshop back: a client copy and words.")
}
