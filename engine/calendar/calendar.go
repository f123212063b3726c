// Package calendar counts days of the Gregorian calendar, without a clock: which day it
// is somebody else says.
//
// The sums from days to dates and back are those of E. G. Richards' and H. Hinnant's
// published algorithms: years begin in March, so that the leap day is the last of its
// year.
package calendar

import (
	"fmt"
	"strconv"
)

// Day is a day, as the number of days since 1 January 1970.
type Day int

// Parse reads an ISO date, "2026-03-31", from the year 1 to the year 9999.
func Parse(text string) (Day, bool) {
	if len(text) != len("2026-03-31") || text[4] != '-' || text[7] != '-' {
		return 0, false
	}
	var numbers [3]int
	for i, part := range []string{text[:4], text[5:7], text[8:]} {
		for _, digit := range part {
			if digit < '0' || digit > '9' {
				return 0, false
			}
		}
		numbers[i], _ = strconv.Atoi(part) // nothing but digits
	}
	d := Of(numbers[0], numbers[1], numbers[2])
	return d, numbers[0] > 0 && d.String() == text
}

// Days of the parts of the calendar.
const (
	inEra     = 146_097 // four hundred years
	inCentury = 36_524  // without the last leap day
	inFour    = 1460    // four years without their leap day
	inYear    = 365
	toEpoch   = 719_468 // from 1 March of the year 0 to 1 January 1970
)

// Of is the day of a date. A month or a day beyond the calendar gives some other day.
func Of(year, month, day int) Day {
	if month <= 2 {
		year--
	}
	era := floorDiv(year, 400)
	ofEra := year - era*400
	ofYear := (153*((month+9)%12)+2)/5 + day - 1
	return Day(era*inEra + ofEra*inYear + ofEra/4 - ofEra/100 + ofYear - toEpoch)
}

// Date is the year, month and day of the month.
func (d Day) Date() (year, month, day int) {
	n := int(d) + toEpoch
	era := floorDiv(n, inEra)
	ofEra := n - era*inEra
	years := (ofEra - ofEra/inFour + ofEra/inCentury - ofEra/(inEra-1)) / inYear
	ofYear := ofEra - (inYear*years + years/4 - years/100)
	shifted := (5*ofYear + 2) / 153
	day = ofYear - (153*shifted+2)/5 + 1
	month = (shifted+2)%12 + 1
	year = years + era*400
	if month <= 2 {
		year++
	}
	return year, month, day
}

// String writes the ISO date.
func (d Day) String() string {
	year, month, day := d.Date()
	return fmt.Sprintf("%04d-%02d-%02d", year, month, day)
}

// Weekday is the day of the week, from 0 for Monday to 6 for Sunday.
func (d Day) Weekday() int {
	const thursday = 3 // 1 January 1970
	return (int(d)%7 + 7 + thursday) % 7
}

func floorDiv(a, b int) int {
	q := a / b
	if a%b < 0 {
		q--
	}
	return q
}
