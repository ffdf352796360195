package unit

import (
	"cmp"
	"fmt"
	"time"
)

// Date is a civil date without time or zone, from 0001-01-01 to 9999-12-31. Dates
// compare with ==. The zero Date is no date.
type Date struct {
	year  int16
	month int8
	day   int8
}

// NewDate returns the date; ok is false where the calendar has no such day.
func NewDate(year, month, day int) (d Date, ok bool) {
	if year < 1 || year > 9999 || month < 1 || month > 12 || day < 1 {
		return Date{}, false
	}
	if day > time.Date(year, time.Month(month)+1, 0, 0, 0, 0, 0, time.UTC).Day() {
		return Date{}, false
	}
	return Date{year: int16(year), month: int8(month), day: int8(day)}, true
}

// DateOf returns the date of the time in its own zone. A time outside the years 1 to
// 9999 gives the zero Date.
func DateOf(t time.Time) Date {
	y, m, d := t.Date()
	date, _ := NewDate(y, int(m), d)
	return date
}

// ParseDate reads "2027-03-31": four, two and two digits. The error is an *Error.
func ParseDate(s string) (Date, error) {
	const example = "2027-03-31"
	if len(s) != len(example) || s[4] != '-' || s[7] != '-' ||
		digits(s) != 4 || digits(s[5:]) != 2 || digits(s[8:]) != 2 {
		return Date{}, refuse(s, "date "+shown(s)+" is not year-month-day in digits", example)
	}
	d, ok := NewDate(whole(s[:4]), whole(s[5:7]), whole(s[8:]))
	if !ok {
		return Date{}, refuse(s, "date "+shown(s)+" is not in the calendar")
	}
	return d, nil
}

// whole reads a short run of ASCII digits.
func whole(s string) int {
	n := 0
	for i := range len(s) {
		n = n*10 + int(s[i]-'0')
	}
	return n
}

// IsZero reports whether there is no date.
func (d Date) IsZero() bool { return d == Date{} }

// Year returns the year.
func (d Date) Year() int { return int(d.year) }

// Month returns the month, 1 to 12.
func (d Date) Month() int { return int(d.month) }

// Day returns the day of the month.
func (d Date) Day() int { return int(d.day) }

// Compare returns -1, 0 or 1 as d is before, at or after other.
func (d Date) Compare(other Date) int {
	return cmp.Or(cmp.Compare(d.year, other.year), cmp.Compare(d.month, other.month), cmp.Compare(d.day, other.day))
}

// Before reports whether d is before other.
func (d Date) Before(other Date) bool { return d.Compare(other) < 0 }

// After reports whether d is after other.
func (d Date) After(other Date) bool { return d.Compare(other) > 0 }

// DaysSince returns the days from other to d, negative where d is the earlier.
func (d Date) DaysSince(other Date) int {
	const day = 24 * 60 * 60
	return int((d.seconds() - other.seconds()) / day)
}

// seconds places the date on a line without zones or leap seconds.
func (d Date) seconds() int64 {
	return time.Date(int(d.year), time.Month(d.month), int(d.day), 0, 0, 0, 0, time.UTC).Unix()
}

// String returns the date as it is read, "2027-03-31"; the empty text for the zero Date.
func (d Date) String() string {
	if d.IsZero() {
		return ""
	}
	return fmt.Sprintf("%04d-%02d-%02d", d.year, d.month, d.day)
}
