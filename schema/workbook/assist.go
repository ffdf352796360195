package workbook

import (
	"github.com/xuri/excelize/v2"
)

// What spreadsheets take of hints and of words to choose from (from memory).
const (
	mostHintTitle = 32
	mostHint      = 255
	mostWords     = 255
)

// assist gives the cells below each heading their hints and words. A list of words
// that is too long for a spreadsheet is left out: what is typed is checked when it
// comes back.
func (b *book) assist(s Sheet) error {
	for i, heading := range s.Headings {
		entry, written := s.Entries[heading]
		if !written {
			continue
		}
		column, err := excelize.ColumnNumberToName(i + 1)
		if err != nil {
			return err
		}
		v := excelize.NewDataValidation(true)
		v.SetSqref(column + "2:" + column + "1048576")
		if entry.Hint != "" {
			v.SetInput(cutTo(heading, mostHintTitle), cutTo(entry.Hint, mostHint))
		}
		if length(join(entry.Words)) <= mostWords && len(entry.Words) > 0 {
			if err := v.SetDropList(entry.Words); err != nil {
				return err
			}
			v.SetError(excelize.DataValidationErrorStyleWarning, heading, "The records know only the words in the list.")
		}
		if err := b.AddDataValidation(s.Name, v); err != nil {
			return err
		}
	}
	return nil
}

func join(words []string) (list string) {
	for _, w := range words {
		list += w + ","
	}
	return list
}

// cutTo is a text of at most so many characters.
func cutTo(text string, most int) string {
	if runes := []rune(text); len(runes) > most {
		return string(runes[:most-1]) + "…"
	}
	return text
}
