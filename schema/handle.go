package schema

import "homerun/schema/unit"

// A Handle is a field together with the Go type of its value, so that code
// that reads records names a field once and can not misread it:
//
//	length, known := schema.RunLength.In(run)
type Handle[T any] struct {
	*Field
	read func(*Value) T
}

// In returns the field's value in a record, inherited from the enclosing block
// where the field allows it. It is not known when nobody wrote it and when what
// was written could not be read: then no rule may judge it.
func (h Handle[T]) In(r *Record) (value T, known bool) {
	v := r.Lookup(h.Field)
	if v == nil || v.Bad {
		return value, false
	}
	return h.read(v), true
}

// Or returns the field's value, or otherwise where nobody wrote it. A value
// that could not be read is not replaced: known is false.
func (h Handle[T]) Or(r *Record, otherwise T) (value T, known bool) {
	v := r.Lookup(h.Field)
	switch {
	case v == nil:
		return otherwise, true
	case v.Bad:
		return value, false
	}
	return h.read(v), true
}

// A Port names one port of a panel, outlet or piece of equipment, or a row of
// neighbouring ports ("1A-F:1-12") for a cable that takes several.
type Port struct {
	Label       string
	First, Last int
}

// Count is the number of ports that the reference names.
func (p Port) Count() int { return p.Last - p.First + 1 }

func asText(v *Value) string                  { return v.Text }
func asList(v *Value) []string                { return v.List }
func asCount(v *Value) int                    { return int(v.Number) }
func asPort(v *Value) Port                    { return Port{v.Text, int(v.Number), int(v.Last)} }
func asLength(v *Value) unit.Length           { return unit.Length(v.Number) }
func asTemperature(v *Value) unit.Temperature { return unit.Temperature(v.Number) }
func asPower(v *Value) unit.Power             { return unit.Power(v.Number) }
func asPeriod(v *Value) unit.Period           { return unit.Period(v.Number) }
func asFrequency(v *Value) unit.Frequency     { return unit.Frequency(v.Number) }
func asLoss(v *Value) unit.Loss               { return unit.Loss(v.Number) }
func asCurrent(v *Value) unit.Current         { return unit.Current(v.Number) }
func asAngle(v *Value) unit.Angle             { return unit.Angle(v.Number) }
func asLevel(v *Value) unit.Level             { return unit.Level(v.Number) }
func asConductor(v *Value) unit.Conductor {
	return unit.Conductor{Gauge: int(v.Number), Stranded: v.Last == 1}
}

func asDate(v *Value) unit.Date {
	d, err := unit.ParseDate(v.Text)
	if err != nil {
		// Decoding has already parsed this text.
		panic("schema: date changed after decoding: " + v.Text)
	}
	return d
}
