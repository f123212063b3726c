package pricelist_test

import (
	"strings"
	"testing"

	"blockfield/engine/design"
	"blockfield/engine/design/designtest"
	"blockfield/engine/length"
	"blockfield/engine/pricelist"
	"blockfield/engine/words"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func book() design.Book {
	b := design.DefaultBook()
	b.Currency, b.Placeholder, b.Own = "EUR", false, nil
	b.Sticks = []design.StickPrice{{Wood: "beech", Size: length.MM(36), Length: length.MM(2400), Price: design.Units(13)}}
	return b
}

// What is written reads back to the same book, whatever stands between the cells.
func TestListReadsBack(t *testing.T) {
	sentinel, _ := designtest.Sentinel(t)
	for _, b := range []design.Book{book(), sentinel} {
		text := string(pricelist.Write(b))
		assert.True(t, pricelist.Is([]byte(text)))
		for _, other := range []string{text, "\uFEFF" + text, strings.ReplaceAll(text, "\r\n", "\n"), strings.ReplaceAll(text, ",", "\t"), "sep=,\r\n" + text, "\uFEFFsep=|\n" + strings.ReplaceAll(text, ",", "|")} {
			assert.True(t, pricelist.Is([]byte(other)))
			got, err := pricelist.Read(b, []byte(other))
			require.NoError(t, err)
			assert.Equal(t, b, got)
		}
	}
}

// A list names what it changes; the rest stays. What was an example is set then, and
// goods that the book did not have come to it.
func TestListChangesWhatItNames(t *testing.T) {
	b := design.DefaultBook()
	b.Woods = b.Woods[:9] // without walnut
	got, err := pricelist.Read(b, []byte(`Price;currency;Goods;name;section;length
4.400,50;xxx;squares;Beech;;
"72,5";XXX;sheet;birch ply;12 mm;
8.50;XXX;sheet;birch ply;15 mm;
12.40;XXX;stick;oak;1-3/8 in;8 ft
1 000;XXX;squares;walnut;;
1.200,00;XXX;boards;walnut;;
;;;;;
`))
	require.NoError(t, err)
	want := design.CloneBook(b)
	want.Woods[4].SquaresPerM3 = 4400_5000
	want.Woods = append(want.Woods, design.WoodPrice{Wood: "walnut", SquaresPerM3: design.Units(1000), BoardsPerM3: design.Units(1200)})
	for i, s := range want.Sheets {
		if s.Sheet == "birch ply" && s.Thickness.Same(length.MM(12)) {
			want.Sheets[i].Price = 72_5000
		}
	}
	want.Sheets = append(want.Sheets, design.SheetPrice{Sheet: "birch ply", Thickness: length.MM(15), Price: 8_5000})
	feet, err := length.ParseExact("8 ft")
	require.NoError(t, err)
	want.Sticks = []design.StickPrice{{Wood: "oak", Size: length.Sixtyfourths(88), Length: feet, Price: 12_4000}}
	invented, all := got.Invented()
	assert.Equal(t, 6, all-invented)
	got.Own = nil
	assert.Equal(t, want, got)
}

// Each fault is said with row, column and what would be right, all of them at once, and
// the book is as it was.
func TestListFaults(t *testing.T) {
	head := "goods,name,section,length,unit,price,currency\n"
	for _, c := range []struct{ name, text, want string }{
		{"empty", "", "The file is empty. Its first row names the columns: goods, name"},
		{"a column that is none", "goods,name,unit,price,currency,shop\n", "Row 1, column F (shop): “shop” is no column of a price list. Call it one of goods,"},
		{"a column that is missing", "goods,name,unit,price\n", "Row 1: The column “currency” is missing."},
		{"a column twice", "goods,name,price,price,currency\n", "Row 1, column D (price): The column “price” stands there twice."},
		{"UTF-16", "\uFFFD\uFFFDg\x00o\x00o\x00d\x00s\x00\t\x00p\x00", "The file is written in UTF-16. Save the table once more as CSV in UTF-8."},
		{"round thousands", "sep=;\ngoods;name;price;currency\nsquares;beech;10.000;EUR\n", "Row 3, column C (price): “10.000” may be 10000 or 10. Write 10000 or 10, without"},
		{"a separator that is told", "sep=;\r\ngoods;name;price;currency;shop\n", "Row 2, column E (shop): “shop” is no column"},
		{"decimal comma between commas", head + "squares,beech,,,m³,4300,50,EUR\n", "Row 2: It has 8 cells, and the head has 7. If a price has a decimal comma, write a point"},
		{"comma that may be a mark", head + `squares,beech,,,m³,"4,300",EUR` + "\n", "Row 2, column F (price): “4,300” may be 4300 or 4.3."},
		{"point that may be a mark", strings.ReplaceAll(head, ",", ";") + "squares;beech;;;m³;4.300;EUR\n", "Row 2, column F (price): “4.300” may be 4300 or 4.3."},
		{"price in the column of the unit", head + "squares,beech,,,4300,m³,EUR\n", "Row 2, column F (price): “m³” is no price."},
		{"another unit", head + "squares,beech,,,m,4300,EUR\n", "Row 2, column E (unit): “m”, but this price is for one m³. Reckon it over, and write m³."},
		{"currency with the price", head + "squares,beech,,,m³,€4300,EUR\n", "“€4300” is no price. Write it like 42 or 0.55, without a currency."},
		{"two currencies", head + "squares,beech,,,m³,4300,EUR\nsquares,oak,,,m³,6200,USD\n", "Row 3, column G (currency): “USD”, but this price book is in EUR."},
		{"no price", head + "squares,beech,,,m³,,EUR\n", "Row 2, column F (price): “–” is no price."},
		{"below nothing", head + "squares,beech,,,m³,-3,EUR\n", "Row 2, column F (price): “-3” is no price."},
		{"beyond all", head + "brad,brad,,,,1,EUR\nsupply,brad,,,piece,99999999999,EUR\n", "Row 3, column F (price): “99999999999” is out of range. Allowed: 0 to 1\u202f000\u202f000\u202f000."},
		{"goods that are none", head + "plank,beech,,,m³,1,EUR\n", "Row 2, column A (goods): “plank” is not known here. Write one of squares, boards, stick, sheet, finish, supply."},
		{"a wood that is none", head + "squares,plastic,,,m³,1,EUR\n", "Row 2, column B (name): “plastic” is not known here. Write one of pine,"},
		{"a sheet without a thickness", head + "sheet,birch ply,,,sheet,1,EUR\n", "Row 2, column C (section): “–” is no size."},
		{"a bare number for a size", head + "sheet,birch ply,12,,sheet,1,EUR\n", "Row 2, column C (section): “12” is no size. Write it with its unit"},
		{"the same goods twice", head + "squares,beech,,,m³,1,EUR\nsquares,Beech,,,m³,2,EUR\n", "Row 3, column B (name): “Beech” has a price in row 2 already."},
		{"half a quotation", head + "squares,\"beech,,,m³,1,EUR\n", "A quotation mark is open"},
		{"a finish that is none", head + "finish,paint,,,litre,1,EUR\n", "Row 2, column B (name): “paint” is not known here."},
		{"a supply that is none", head + "supply,tea,,,kg,1,EUR\n", "Row 2, column B (name): “tea” is not known here. Write one of wood glue,"},
		{"a thickness that no sheet has", head + "sheet,birch ply,40 mm,,sheet,1,EUR\n", "The price book would not hold then"},
	} {
		t.Run(c.name, func(t *testing.T) {
			b := book()
			got, err := pricelist.Read(b, []byte(c.text))
			require.Error(t, err)
			assert.Contains(t, err.Error(), c.want)
			assert.Equal(t, b, got)
		})
	}

	b := book()
	b.Woods = b.Woods[:9]
	_, err := pricelist.Read(b, []byte(head+"squares,walnut,,,m³,1,EUR\n"))
	assert.ErrorContains(t, err, "Row 2: walnut is not in the price book yet")

	_, err = pricelist.Read(b, []byte(head+"squares,plastic,,,m³,1,USD\nplank,,,,,,\nboards,oak,,,m³,x,EUR\n"))
	faults, ok := err.(pricelist.Faults)
	require.True(t, ok)
	assert.Len(t, faults, 4, "all of them at once")
	for _, f := range faults {
		assert.NotContains(t, f.Say(words.Reader{Language: words.Pseudo()}), "⟪")
	}
}

// Only what is meant as a list is taken for one.
func TestIsAPriceList(t *testing.T) {
	assert.True(t, pricelist.Is([]byte("goods;name\n")))
	assert.True(t, pricelist.Is([]byte("Name,Price,Currency\n")))
	assert.False(t, pricelist.Is(design.EncodeBook(book())))
	assert.False(t, pricelist.Is([]byte("1,2,3\n4,5,6\n")))
	assert.False(t, pricelist.Is(nil))
}

// No file, however it is made, brings the reader down or leaves half a change.
func FuzzRead(f *testing.F) {
	f.Add(string(pricelist.Write(book())))
	f.Add("goods;name;price;currency\nsquares;beech;4,5;EUR\n")
	f.Add("price,currency\n\"")
	f.Fuzz(func(t *testing.T, text string) {
		b := book()
		got, err := pricelist.Read(b, []byte(text))
		if err != nil {
			assert.Equal(t, b, got)
			assert.NotEmpty(t, err.Error())
			return
		}
		assert.NoError(t, design.ValidateBook(got))
	})
}
