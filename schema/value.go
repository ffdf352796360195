package schema

import (
	"errors"
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
	case Text, Word, Reference, Date:
		return v.Text
	case References, Texts:
		return strings.Join(v.List, ", ")
	case Count:
		return strconv.FormatInt(v.Number, 10)
	case PortReference:
		return showPort(asPort(v))
	case Length:
		return asLength(v).Text(in)
	case Temperature:
		return asTemperature(v).Text(in)
	case Power:
		return asPower(v).Text(in)
	case Period:
		return asPeriod(v).Text(in)
	case Frequency:
		return asFrequency(v).Text(in)
	case Loss:
		return asLoss(v).Text(in)
	case Current:
		return asCurrent(v).Text(in)
	case Angle:
		return asAngle(v).Text(in)
	case Level:
		return asLevel(v).Text(in)
	case Conductors:
		return asConductor(v).String()
	}
	return v.Text
}

func showPort(p Port) string {
	text := p.Label + ":" + strconv.Itoa(p.First)
	if p.Last != p.First {
		text += "-" + strconv.Itoa(p.Last)
	}
	return text
}

// String is the port as references write it, without leading zeros.
func (p Port) String() string { return showPort(p) }

// readQuantity parses a text with a unit into v.Number.
func readQuantity(t Type, text string, v *Value) error {
	switch t {
	case Length:
		return quantity(unit.ParseLength, text, v)
	case Temperature:
		return quantity(unit.ParseTemperature, text, v)
	case Power:
		return quantity(unit.ParsePower, text, v)
	case Period:
		return quantity(unit.ParsePeriod, text, v)
	case Frequency:
		return quantity(unit.ParseFrequency, text, v)
	case Loss:
		return quantity(unit.ParseLoss, text, v)
	case Current:
		return quantity(unit.ParseCurrent, text, v)
	case Angle:
		return quantity(unit.ParseAngle, text, v)
	case Level:
		return quantity(unit.ParseLevel, text, v)
	case Date:
		v.Text = text
		_, err := unit.ParseDate(text)
		return err
	case Conductors:
		c, err := unit.ParseConductor(text)
		v.Number = int64(c.Gauge)
		if c.Stranded {
			v.Last = 1
		}
		return err
	case Text, Word, Count, Reference, References, PortReference, Texts:
	}
	return errors.New("not a quantity")
}

func quantity[Q ~int64](parse func(string) (Q, error), text string, v *Value) error {
	q, err := parse(text)
	v.Number = int64(q)
	return err
}

// signed says whether a quantity below zero makes sense: a temperature in
// frost, a weak signal, a negative margin; no length, power or time does.
func (t Type) signed() bool { return t == Temperature || t == Level || t == Loss }
