package drawing

import (
	"unicode/utf8"

	"homerun/schema"
)

// longestName is how many characters of a label a drawing shows.
const longestName = 40

// clip makes a text printable and cuts it to a number of characters.
func clip(text string, most int) string {
	text = schema.Printable(text)
	if utf8.RuneCountInString(text) <= most {
		return text
	}
	runes := []rune(text)
	return string(runes[:most-1]) + "…"
}

// wide is about how many pixels a text takes in a sans-serif face of a size:
// a little more than half its size a letter, and the whole of it for the scripts
// whose letters fill a square.
func wide(text string, size int) int {
	const firstSquare = 0x1100
	hundredths := 0
	for _, r := range text {
		if r >= firstSquare {
			hundredths += 100
		} else {
			hundredths += 58
		}
	}
	return (hundredths*size + 99) / 100
}
