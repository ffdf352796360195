package table

import (
	"strings"

	"homerun/schema"
)

// literal is a cell as a value of its field. What is no value of it is written all
// the same, and found when it is read.
func literal(f *schema.Field, cell string) string {
	switch f.Type {
	case schema.Count:
		if isWhole(cell) {
			return cell
		}
	case schema.References, schema.Texts:
		items := Split(cell)
		for i := range items {
			items[i] = schema.Literal(items[i])
		}
		return "[" + strings.Join(items, ", ") + "]"
	case schema.Text, schema.Word, schema.Length, schema.Temperature, schema.Power, schema.Period, schema.Frequency, schema.Loss, schema.Current,
		schema.Angle, schema.Level, schema.Date, schema.Conductors, schema.Reference, schema.PortReference:
	}
	return schema.Literal(cell)
}

// isWhole says whether a text is a whole number as records write it.
func isWhole(text string) bool {
	digits := strings.TrimPrefix(text, "-")
	const most = 18
	if digits == "" || len(digits) > most {
		return false
	}
	for i := range len(digits) {
		if digits[i] < '0' || digits[i] > '9' {
			return false
		}
	}
	return true
}

// lines are a claim as the lines of a block, indented, each stated field on a line of
// its own behind the first.
func (c *Claim) lines(k *schema.Kind, indent string) []string {
	head := indent + k.Name + " {"
	if !k.Unlabelled {
		head = indent + k.Name + " " + schema.Literal(c.Label) + " {"
	}
	all := []string{head}
	for _, s := range c.Stated {
		if s.Text != "" {
			all = append(all, indent+"  "+s.Field.Name+" = "+literal(s.Field, s.Text))
		}
	}
	return append(all, indent+"}")
}
