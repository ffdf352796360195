package unit_test

import (
	"testing"
	"time"

	"pgregory.net/rapid"

	"homerun/schema/unit"
)

// TestDates compares with package time for every day around the leap years that the
// Gregorian calendar treats apart (ISO 8601, 3.1: 2000 is one, 2100 is not).
func TestDates(t *testing.T) {
	t.Parallel()
	for _, year := range []int{1999, 2000, 2024, 2027, 2100} {
		for day := range 366 {
			at := time.Date(year, 1, 1+day, 0, 0, 0, 0, time.UTC)
			d, err := unit.ParseDate(at.Format(time.DateOnly))
			if err != nil || d.Year() != at.Year() || d.Month() != int(at.Month()) || d.Day() != at.Day() || d != unit.DateOf(at) {
				t.Fatalf("%s: read as %s, %v", at.Format(time.DateOnly), d, err)
			}
		}
	}
	for _, none := range []string{"2027-02-29", "2100-02-29", "2027-04-31", "2027-13-01", "2027-00-10", "2027-01-00", "0000-01-01"} {
		if d, err := unit.ParseDate(none); err == nil {
			t.Errorf("%s was read as %s", none, d)
		}
	}
}

// TestDateOrder compares order and distance with package time.
func TestDateOrder(t *testing.T) {
	t.Parallel()
	start := time.Date(1900, 1, 1, 0, 0, 0, 0, time.UTC)
	rapid.Check(t, func(t *rapid.T) {
		i := rapid.IntRange(0, 200_000).Draw(t, "a")
		j := rapid.IntRange(0, 200_000).Draw(t, "b")
		a, b := unit.DateOf(start.AddDate(0, 0, i)), unit.DateOf(start.AddDate(0, 0, j))
		if a.DaysSince(b) != i-j || a.Before(b) != (i < j) || a.After(b) != (i > j) || (a == b) != (i == j) {
			t.Fatalf("%s and %s: %d days apart, want %d", a, b, a.DaysSince(b), i-j)
		}
	})
}
