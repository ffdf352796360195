package workbook

import (
	"strings"
	"unicode/utf8"
)

// MostInCell is how many characters a cell holds (32,767 is what spreadsheets
// take, common practice).
const MostInCell = 32_767

// inert is a cell whose text no spreadsheet takes for a formula, cut to what a
// cell holds.
func inert(cell any) any {
	text, isText := cell.(string)
	if !isText || text == "" {
		return cell
	}
	if likeFormula(text) {
		text = "'" + text
	}
	if utf8.RuneCountInString(text) > MostInCell {
		const said = " … (cut: a cell holds no more)"
		text = string([]rune(text)[:MostInCell-utf8.RuneCountInString(said)]) + said
	}
	return text
}

// likeFormula says whether a text, or what follows its apostrophes, begins like a
// formula. So what begins with an apostrophe already gets one more, and can be told
// from what did not.
func likeFormula(text string) bool {
	first, _ := utf8.DecodeRuneInString(strings.TrimLeft(text, " '"))
	return strings.ContainsRune("=+-@＝＋－＠", first)
}

// Bare is the text of a cell without the apostrophe that Write and WriteCSV put
// before what begins like a formula.
func Bare(text string) string {
	if rest, found := strings.CutPrefix(text, "'"); found && likeFormula(rest) {
		return rest
	}
	return text
}
