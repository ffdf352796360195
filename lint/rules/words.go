package rules

import (
	"strconv"

	"homerun/lint"
	"homerun/schema"
)

// How findings word what several families say.

// counted writes a number with its noun.
func counted(n int, one, many string) string {
	if n == 1 {
		return "1 " + one
	}
	return strconv.Itoa(n) + " " + many
}

// note points at another record of a finding.
func note(e schema.Entry, message string) schema.Note {
	return schema.Note{Kind: e.Kind.Name, Label: e.Name(), At: e.Start(), Message: message}
}

// term is one line of a sum.
func term(what, value string) lint.Term { return lint.Term{Term: what, Value: value} }

// ohms, nanoseconds and decibels print the result of a formula and its limit
// with one decimal, and with as many more as it takes to show which is greater.
func floats(value, limit float64, word string) (shown, bound string) {
	for places := 1; ; places++ {
		shown = strconv.FormatFloat(value, 'f', places, 64)
		bound = strconv.FormatFloat(limit, 'f', places, 64)
		if shown != bound || value == limit || places > 12 {
			return shown + " " + word, bound + " " + word
		}
	}
}

// decimals prints a figure with at most so many decimals, without zeros at the end.
func decimals(value float64, most int) string {
	text := strconv.FormatFloat(value, 'f', most, 64)
	if most == 0 {
		return text
	}
	for text[len(text)-1] == '0' {
		text = text[:len(text)-1]
	}
	if text[len(text)-1] == '.' {
		text = text[:len(text)-1]
	}
	return text
}
