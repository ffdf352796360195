package diffreport

import (
	"slices"
	"strings"
)

// A danger is a caution before its sentence is made: words before and after what
// it is about, so that the same danger in several places is one sentence. While
// an order is planned it is a text, which sorts and compares like any other.
const between = "\x01"

// danger makes the text of a danger: one and many end the sentence about one
// place and about several.
func danger(before, place, one, many string) string {
	return strings.Join([]string{before, place, one, many}, between)
}

// sameDanger is equal for one danger in different places.
func sameDanger(text string) (key, place string) {
	parts := strings.Split(text, between)
	if len(parts) != 4 {
		return text, ""
	}
	return parts[0] + between + parts[2] + between + parts[3], parts[1]
}

// sentences makes sentences of dangers, in the order in which they are met: one
// for each danger, with all its places. The numbers say for each text, counted
// from 0, which sentence it is in.
func sentences(dangers []string) (all []string, numbers map[string]int) {
	numbers = make(map[string]int, len(dangers))
	at := make(map[string]int)
	var keys []string
	var places [][]string
	for _, text := range dangers {
		if _, met := numbers[text]; met {
			continue
		}
		key, place := sameDanger(text)
		n, known := at[key]
		if !known {
			n = len(keys)
			at[key] = n
			keys, places = append(keys, key), append(places, nil)
		}
		places[n] = append(places[n], place)
		numbers[text] = n
	}
	all = make([]string, len(keys))
	for n, key := range keys {
		all[n] = sentence(key, places[n])
	}
	return all, numbers
}

func sentence(key string, places []string) string {
	parts := strings.Split(key, between)
	if len(parts) != 3 {
		return key
	}
	end := parts[1]
	if len(places) > 1 {
		end = parts[2]
	}
	return parts[0] + inWords(tidy(places)) + end
}

// tell makes the cautions of an order and of its steps of the dangers that they
// were planned with.
func (o *Order) tell() {
	var dangers []string
	for i := range o.Steps {
		dangers = append(dangers, o.Steps[i].Cautions...)
	}
	all, numbers := sentences(dangers)
	o.Cautions, o.cautionAt = all, make(map[string]int)
	for i := range o.Steps {
		s := &o.Steps[i]
		told, here := sentences(s.Cautions)
		for _, text := range s.Cautions {
			o.cautionAt[told[here[text]]] = numbers[text] + 1
		}
		s.Cautions = told
	}
}

// CautionNumber is the number, counted from 1, of the order's caution that holds
// one of a step: that of a step names its own places, that of the order all.
func (o *Order) CautionNumber(text string) int {
	if n, known := o.cautionAt[text]; known {
		return n
	}
	return slices.Index(o.Cautions, text) + 1
}
