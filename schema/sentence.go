package schema

import (
	"strconv"
	"strings"
	"unicode"
	"unicode/utf8"

	"github.com/agext/levenshtein"
)

// longestLabel bounds an identifier, in bytes: what a printed label can hold,
// with room to spare.
const longestLabel = 128

// labelFault says what keeps a text from being an identifier, or nothing.
func labelFault(label string) string {
	switch {
	case label == "":
		return "is empty"
	case len(label) > longestLabel:
		return "is longer than " + strconv.Itoa(longestLabel) + " bytes"
	case strings.TrimSpace(label) != label:
		return "begins or ends with a space"
	case Printable(label) != label:
		return "holds a character that can not be printed"
	}
	return ""
}

// Printable returns the text with every character escaped that a terminal or
// reader could take for something else: control characters, directional
// overrides, invisible characters and bytes that are not UTF-8.
func Printable(text string) string {
	if isPlain(text) {
		return text
	}
	var b strings.Builder
	for i := 0; i < len(text); {
		r, n := utf8.DecodeRuneInString(text[i:])
		switch {
		case r == utf8.RuneError && n == 1:
			b.WriteString(`\x` + strconv.FormatUint(uint64(text[i]), 16))
		case r != ' ' && !unicode.IsGraphic(r), unicode.Is(unicode.Cf, r), unicode.Is(unicode.Zl, r), unicode.Is(unicode.Zp, r):
			quoted := strconv.QuoteRuneToASCII(r)
			b.WriteString(quoted[1 : len(quoted)-1])
		default:
			b.WriteString(text[i : i+n])
		}
		i += n
	}
	return b.String()
}

func isPlain(text string) bool {
	for i := range len(text) {
		if text[i] < ' ' || text[i] > '~' {
			return false
		}
	}
	return true
}

// Quote is the text in quotes, printable and cut where it is very long.
func Quote(text string) string {
	const most = 60
	text = Printable(text)
	if len(text) > most {
		cut := most
		for !utf8.RuneStart(text[cut]) {
			cut--
		}
		text = text[:cut] + "…"
	}
	return `"` + text + `"`
}

// Nearest returns the candidate that a mistyped word was probably meant to be,
// or nothing where none is close.
func Nearest(word string, candidates []string) string { return nearest(word, candidates) }

func nearest(word string, candidates []string) string {
	const tooLong = 40 // comparing is quadratic, and nobody mistypes that much
	if len(word) > tooLong {
		return ""
	}
	best, distance := "", 1+slips(word)
	for _, c := range candidates {
		if abs(len(c)-len(word)) >= distance {
			continue
		}
		if d := levenshtein.Distance(strings.ToLower(word), strings.ToLower(c), nil); d < distance {
			best, distance = c, d
		}
	}
	return best
}

// slips is how many letters may be wrong in a word that was meant: two letters
// that changed places count as two.
func slips(word string) int {
	const short, long = 4, 9
	switch {
	case len(word) < short:
		return 1
	case len(word) < long:
		return 2
	}
	return len(word) / 3
}

func abs(n int) int {
	if n < 0 {
		return -n
	}
	return n
}

func list(words []string) string {
	switch len(words) {
	case 0:
		return "none"
	case 1:
		return words[0]
	}
	return strings.Join(words[:len(words)-1], ", ") + " and " + words[len(words)-1]
}

func kindNames(kinds []*Kind) []string {
	names := make([]string, len(kinds))
	for i, k := range kinds {
		names[i] = k.Name
	}
	return names
}
