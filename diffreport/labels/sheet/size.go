package sheet

import (
	"fmt"
	"strings"

	"homerun/schema"
	"homerun/schema/unit"
)

// A Size is a width and a height.
type Size struct{ W, H unit.Length }

// The sheets that have a name. ISO 216 for A4 and A5, ANSI/ASME Y14.1 for Letter
// (size A); Legal is common practice.
func named(name string) (Size, bool) {
	const mm, inch = unit.Millimetre, unit.Inch
	switch strings.ToLower(name) {
	case "a4":
		return Size{210 * mm, 297 * mm}, true
	case "a5":
		return Size{148 * mm, 210 * mm}, true
	case "letter":
		return Size{17 * inch / 2, 11 * inch}, true
	case "legal":
		return Size{17 * inch / 2, 14 * inch}, true
	}
	return Size{}, false
}

// longestSide bounds a size: no sheet or label is longer.
const longestSide = 2 * unit.Metre

// ParseSize reads a size, width first: "50x20", "50x20mm", "2x0.75in" or "2inx19mm".
// Numbers without a unit are millimetres; a unit after the second number alone
// holds for both. One number alone is both width and height. The names A4, A5,
// Letter and Legal are sizes too. The error says that the text is none.
func ParseSize(text string) (Size, error) {
	if size, ok := named(text); ok {
		return size, nil
	}
	w, h, two := strings.Cut(strings.ReplaceAll(strings.ToLower(text), "×", "x"), "x")
	if !two {
		h = w
	}
	last := strings.TrimLeft(strings.TrimSpace(h), "0123456789.")
	if last == "" {
		last = "mm"
	}
	width, ok := side(w, last)
	height, also := side(h, last)
	if !ok || !also {
		return Size{}, fmt.Errorf("%s is no size of up to %s", schema.Quote(text), longestSide.Text(unit.Metric))
	}
	return Size{width, height}, nil
}

func side(text, otherwise string) (length unit.Length, ok bool) {
	number := strings.TrimSpace(text)
	word := strings.TrimLeft(number, "0123456789.")
	number = strings.TrimSuffix(number, word)
	if word == "" {
		word = otherwise
	}
	length, err := unit.ParseLength(number + " " + strings.TrimSpace(word))
	return length, err == nil && length >= 0 && length <= longestSide
}

// String prints the size as ParseSize reads it.
func (s Size) String() string {
	for _, name := range []string{"A4", "A5", "Letter", "Legal"} {
		if size, _ := named(name); size == s {
			return name
		}
	}
	return millimetres(s.W) + "x" + millimetres(s.H) + " mm"
}

// millimetres prints a length without its unit, rounded to a micrometre.
func millimetres(l unit.Length) string {
	um := int64((l + unit.Micrometre/2) / unit.Micrometre)
	text := fmt.Sprintf("%d.%03d", um/1000, um%1000)
	return strings.TrimSuffix(strings.TrimRight(text, "0"), ".")
}
