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

// pieces divides a sentence into words that a browser would tear at their
// hyphens, and what stands between them.
func pieces(sentence string) []piece {
	// longer words have to be torn where a page is narrow
	const longest = 28
	var all []piece
	rest := 0
	for at := 0; at < len(sentence); {
		end := at + strings.IndexByte(sentence[at:]+" ", ' ')
		if word := sentence[at:end]; strings.ContainsRune(word, '-') && utf8.RuneCountInString(word) <= longest {
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
