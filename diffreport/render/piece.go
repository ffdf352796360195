package render

import (
	"strings"
	"unicode/utf8"
)

// A piece is a part of a sentence. One that is whole is not torn at the end of a
// line: half a label is no label.
type piece struct {
	Text  string
	Whole bool
}

const (
	// shortest is about how many characters stand on a line of a narrow page; in a
	// sentence of so many hardly anything can be torn.
	shortest = 34
	// longestWhole is how long a word may be that is kept whole: longer ones have
	// to be torn where a page is narrow.
	longestWhole = 28
)

// pieces divides a sentence into words that a browser would tear at their
// hyphens, and what stands between them.
func pieces(sentence string) []piece {
	if len(sentence) <= shortest {
		return []piece{{Text: sentence}}
	}
	var all []piece
	rest := 0
	for at := 0; at < len(sentence); {
		end := len(sentence)
		if gap := strings.IndexByte(sentence[at:], ' '); gap >= 0 {
			end = at + gap
		}
		if word := sentence[at:end]; strings.ContainsRune(word, '-') && utf8.RuneCountInString(word) <= longestWhole {
			if at > rest {
				all = append(all, piece{Text: sentence[rest:at]})
			}
			all = append(all, piece{word, true})
			rest = end
		}
		at = end + 1
	}
	if rest < len(sentence) {
		all = append(all, piece{Text: sentence[rest:]})
	}
	return all
}
