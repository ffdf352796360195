package rules

import (
	"iter"

	"homerun/schema/plant"
)

// A byCable holds what a rule knows of the cable types of a plant. It is asked for
// every run, so it is a list by the place of a type and no map.
type byCable[T any] struct {
	list []knownCable[T]
	some bool
}

type knownCable[T any] struct {
	value T
	known bool
}

// set keeps what is known of a cable type of the plant.
func (b *byCable[T]) set(p *plant.Plant, c *plant.Cable, value T) {
	if b.list == nil {
		b.list = make([]knownCable[T], len(p.Cables))
	}
	b.list[c.Order()] = knownCable[T]{value, true}
	b.some = true
}

// get is what is known of a cable type of the plant.
func (b *byCable[T]) get(c *plant.Cable) (value T, known bool) {
	if c == nil || !b.some {
		return value, false
	}
	at := &b.list[c.Order()]
	return at.value, at.known
}

// at is what is known of a cable type of the plant, or the zero value.
func (b *byCable[T]) at(c *plant.Cable) T {
	value, _ := b.get(c)
	return value
}

// all is what is known of each type of which anything is.
func (b *byCable[T]) all() iter.Seq[T] {
	return func(yield func(T) bool) {
		for i := range b.list {
			if b.list[i].known && !yield(b.list[i].value) {
				return
			}
		}
	}
}
