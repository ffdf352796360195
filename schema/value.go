package schema

import (
	"fmt"
	"strconv"
	"strings"

	"homerun/schema/block"
	"homerun/schema/unit"
)

// A Value is what a record states in one field.
type Value struct {
	Field *Field
	// Number is the quantity in its unit's smallest step, the count, the first
	// port of a port reference or the gauge of a conductor.
	Number int64
	// Last is the last port of a port reference; 1 for stranded conductors.
	Last int64
	// Text is the text, word, date or label.
	Text string
	// List holds the items of a list.
	List []string
	// Name and At are where the field's name and value stand in the block's text.
	Name, At block.Range
	// Bad is set where something is written that could not be read as the
	// field's type: no rule may judge it.
	Bad bool
	// Digits is how many digits a port reference writes its first port with, zeros
	// before it counted: so it is printed again. What it states does not depend on it.
	Digits uint8
}

// Same says whether two values state the same. Where they stand and how they
// are laid out does not matter.
func (v *Value) Same(w *Value) bool {
	if v == nil || w == nil {
		return v == w
	}
	if v.Bad || w.Bad || v.Number != w.Number || v.Last != w.Last || v.Text != w.Text || len(v.List) != len(w.List) {
		return false
	}
	for i := range v.List {
		if v.List[i] != w.List[i] {
			return false
		}
	}
	return true
}

// Show prints the value as people write it, quantities in the given system.
func (v *Value) Show(in unit.System) string {
	if v == nil {
		return "not stated"
	}
	if v.Bad {
		return "unreadable"
	}
	switch v.Field.Type {
	case References, Texts:
		return strings.Join(v.List, ", ")
	case Count:
		return strconv.FormatInt(v.Number, 10)
	case PortReference:
		return showPort(asPort(v), int(v.Digits))
	case Conductors:
		return asConductor(v).String()
	case Text, Word, Reference, Date, Length, Temperature, Power, Period, Frequency, Loss, Current, Angle, Level:
	}
	if m, ok := measureOf(v.Field.Type); ok {
		return m.show(v.Number, in)
	}
	return v.Text
}

// showPort prints a port or a row of ports, each number with at least so many digits.
func showPort(p Port, digits int) string {
	text := fmt.Sprintf("%s:%0*d", p.Label, digits, p.First)
	if p.Last != p.First {
		text += fmt.Sprintf("-%0*d", digits, p.Last)
	}
	return text
}

// String is the port as references write it, without leading zeros.
func (p Port) String() string { return showPort(p, 1) }

// A measure reads and prints one sort of quantity.
type measure struct {
	parse func(text string) (int64, error)
	show  func(number int64, in unit.System) string
}

// measures are the sorts of quantity by the type of their field.
var measures = [...]measure{
	Length:      measured(unit.ParseLength),
	Temperature: measured(unit.ParseTemperature),
	Power:       measured(unit.ParsePower),
	Period:      measured(unit.ParsePeriod),
	Frequency:   measured(unit.ParseFrequency),
	Loss:        measured(unit.ParseLoss),
	Current:     measured(unit.ParseCurrent),
	Angle:       measured(unit.ParseAngle),
	Level:       measured(unit.ParseLevel),
}

// measureOf finds the measure of a type; ok is false for what is no quantity.
func measureOf(t Type) (m measure, ok bool) {
	if int(t) >= len(measures) || measures[t].parse == nil {
		return measure{}, false
	}
	return measures[t], true
}

func measured[Q interface {
	~int64
	Text(unit.System) string
}](parse func(string) (Q, error),
) measure {
	return measure{
		parse: func(text string) (int64, error) {
			q, err := parse(text)
			return int64(q), err
		},
		show: func(number int64, in unit.System) string { return Q(number).Text(in) },
	}
}

// readQuantity parses a date, a conductor or a text with a unit.
func readQuantity(t Type, text string, v *Value) (err error) {
	switch m, ok := measureOf(t); {
	case ok:
		v.Number, err = m.parse(text)
	case t == Date:
		v.Text = text
		_, err = unit.ParseDate(text)
	case t == Conductors:
		var c unit.Conductor
		c, err = unit.ParseConductor(text)
		v.Number = int64(c.Gauge)
		if c.Stranded {
			v.Last = 1
		}
	default:
		panic("schema: " + t.String() + " is no quantity")
	}
	return err
}

// signed says whether a quantity below zero makes sense: a temperature in
// frost, a weak signal, a negative margin; no length, power or time does.
func (t Type) signed() bool { return t == Temperature || t == Level || t == Loss }
