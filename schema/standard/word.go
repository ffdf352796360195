package standard

import (
	"fmt"
	"strings"

	"homerun/schema/unit"
)

// refuseWord words the refusal of a text that is none of the words.
func refuseWord(words []string, noun, s string) error {
	for _, w := range words {
		if w != "" && strings.EqualFold(w, s) {
			return refuse(s, noun+" "+shown(s)+" is not known", w)
		}
	}
	return &unit.Error{Text: s, Message: noun + " " + shown(s) + " is not known", Next: "use one of " + strings.Join(wordsOf(words), ", ")}
}

// refuse builds the error of a parser, with what to write instead.
func refuse(text, message, instead string) error {
	next := ""
	if instead != "" {
		next = fmt.Sprintf("write %q", instead)
	}
	return &unit.Error{Text: text, Message: message, Next: next}
}

// shown quotes a text for a message, cut short.
func shown(s string) string {
	const most = 40
	if r := []rune(s[:min(len(s), 4*most)]); len(r) > most {
		return fmt.Sprintf("%q...", string(r[:most]))
	}
	return fmt.Sprintf("%q", s)
}
