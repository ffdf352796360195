package schema

import "homerun/schema/unit"

// The methods below each add one field to a kind and return its handle. They
// are called only by the table in kinds.go, while the program starts.

func (k *Kind) add(f *Field) *Field {
	k.Fields = append(k.Fields, f)
	return f
}

func define[T any](k *Kind, f Field, read func(*Value) T) Handle[T] {
	return Handle[T]{Field: k.add(&f), read: read}
}

func (k *Kind) text(name string, site Meaning, doc string) Handle[string] {
	return define(k, Field{Name: name, Type: Text, Site: site, Doc: doc}, asText)
}

func (k *Kind) texts(name string, site Meaning, doc string) Handle[[]string] {
	return define(k, Field{Name: name, Type: Texts, Site: site, Doc: doc}, asList)
}

func (k *Kind) word(name string, site Meaning, doc string, words ...string) Handle[string] {
	return define(k, Field{Name: name, Type: Word, Site: site, Doc: doc, Words: words}, asText)
}

func (k *Kind) count(name string, site Meaning, doc string) Handle[int] {
	return define(k, Field{Name: name, Type: Count, Site: site, Doc: doc}, asCount)
}

func (k *Kind) length(name string, site Meaning, doc string) Handle[unit.Length] {
	return define(k, Field{Name: name, Type: Length, Site: site, Doc: doc}, asLength)
}

func (k *Kind) temperature(name string, site Meaning, doc string) Handle[unit.Temperature] {
	return define(k, Field{Name: name, Type: Temperature, Site: site, Doc: doc}, asTemperature)
}

func (k *Kind) watts(name string, site Meaning, doc string) Handle[unit.Power] {
	return define(k, Field{Name: name, Type: Power, Site: site, Doc: doc}, asPower)
}

func (k *Kind) period(name string, site Meaning, doc string) Handle[unit.Period] {
	return define(k, Field{Name: name, Type: Period, Site: site, Doc: doc}, asPeriod)
}

func (k *Kind) frequency(name string, site Meaning, doc string) Handle[unit.Frequency] {
	return define(k, Field{Name: name, Type: Frequency, Site: site, Doc: doc}, asFrequency)
}

func (k *Kind) loss(name string, site Meaning, doc string) Handle[unit.Loss] {
	return define(k, Field{Name: name, Type: Loss, Site: site, Doc: doc}, asLoss)
}

func (k *Kind) current(name string, site Meaning, doc string) Handle[unit.Current] {
	return define(k, Field{Name: name, Type: Current, Site: site, Doc: doc}, asCurrent)
}

func (k *Kind) angle(name string, site Meaning, doc string) Handle[unit.Angle] {
	return define(k, Field{Name: name, Type: Angle, Site: site, Doc: doc}, asAngle)
}

func (k *Kind) level(name string, site Meaning, doc string) Handle[unit.Level] {
	return define(k, Field{Name: name, Type: Level, Site: site, Doc: doc}, asLevel)
}

func (k *Kind) date(name string, site Meaning, doc string) Handle[unit.Date] {
	return define(k, Field{Name: name, Type: Date, Site: site, Doc: doc}, asDate)
}

func (k *Kind) conductors(name string, site Meaning, doc string) Handle[unit.Conductor] {
	return define(k, Field{Name: name, Type: Conductors, Site: site, Doc: doc}, asConductor)
}

func (k *Kind) ref(name string, site Meaning, doc string, kinds ...string) Handle[string] {
	return define(k, Field{Name: name, Type: Reference, Site: site, Doc: doc, Kinds: kinds}, asText)
}

func (k *Kind) refs(name string, site Meaning, doc string, kinds ...string) Handle[[]string] {
	return define(k, Field{Name: name, Type: References, Site: site, Doc: doc, Kinds: kinds}, asList)
}

func (k *Kind) port(name string, site Meaning, doc string, kinds ...string) Handle[Port] {
	return define(k, Field{Name: name, Type: PortReference, Site: site, Doc: doc, Kinds: kinds}, asPort)
}

func required[T any](h Handle[T]) Handle[T] {
	h.Required = true
	return h
}

func inherited[T any](h Handle[T]) Handle[T] {
	h.Inherited = true
	return h
}

// of gives a text field a form of its own, such as a cable listing.
func of[T any](h Handle[T], form func(string) (next string, ok bool)) Handle[T] {
	h.form = form
	return h
}
