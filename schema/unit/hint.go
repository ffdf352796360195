package unit

import "strings"

// noNumber words the refusal of a text that does not start with a number.
func (k *kind) noNumber(text string) *Error {
	if rest, ok := strings.CutPrefix(text, "\u2212"); ok {
		return k.refuse(text, "has a minus sign that is not a hyphen", "-"+rest)
	}
	if text[0] == '.' && digits(text[1:]) > 0 {
		return k.refuse(text, "has no digit before the point", "0"+text)
	}
	return k.refuse(text, shown(text)+" does not start with a number", k.example)
}

// badUnit words the refusal of a text whose number is not followed by a unit.
func (k *kind) badUnit(text, num, rest string) *Error {
	if rest == "" {
		return k.refuse(text, "needs a unit", k.with(num)...)
	}
	if err := k.badNumber(text, num, rest); err != nil {
		return err
	}
	word := strings.TrimLeft(rest, " \t\u00a0\u2009\u202f")
	if _, ok := k.scale(word); ok {
		return k.refuse(text, "needs one plain space, or none, before its unit", num+" "+word)
	}
	if w, ok := k.meant(word); ok {
		return k.refuse(text, "unit "+shown(word)+" is not known", num+" "+w)
	}
	return k.refuse(text, "unit "+shown(word)+" is not known, the units are "+k.words(), k.with(num)...)
}

// badNumber tells a number that goes on in a form that is not read from a wrong unit.
func (k *kind) badNumber(text, num, rest string) *Error {
	after := digits(rest[1:])
	switch {
	case rest[0] == ',' && after == 3:
		plain := num + rest[1:]
		return k.refuse(text, "has a comma in its number", plain, num+"."+rest[1:])
	case rest[0] == ',' && after > 0:
		return k.refuse(text, "has a decimal comma", num+"."+rest[1:])
	case rest[0] == '.' && after == 0 && !strings.Contains(num, "."):
		return k.refuse(text, "has no digit after the point", num+rest[1:])
	case rest[0] == 'e' || rest[0] == 'E':
		if digits(strings.TrimLeft(rest[1:], "+-")) > 0 {
			return k.refuse(text, "has an exponent, numbers are written out", k.example)
		}
	case rest[0] == '.' || rest[0] == ',' || rest[0] == '_' || rest[0] == '/':
		return k.refuse(text, shown(text)+" is not one plain decimal number and a unit", k.example)
	}
	return nil
}

// with offers the number in the first two units of the kind.
func (k *kind) with(num string) []string {
	out := make([]string, 0, 2)
	for _, s := range k.scales {
		if len(out) < 2 {
			out = append(out, num+" "+s.word)
		}
	}
	return out
}

// words lists the units in the order of the table.
func (k *kind) words() string {
	out := make([]string, len(k.scales))
	for i, s := range k.scales {
		out[i] = s.word
	}
	return strings.Join(out, ", ")
}
