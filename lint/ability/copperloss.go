package ability

import (
	"fmt"
	"strconv"

	"homerun/schema"
	"homerun/schema/plant"
	"homerun/schema/standard"
	"homerun/schema/unit"
)

// lossGrain is the least that counts as over a limit, in dB: below it is the
// rounding of the sum itself.
const lossGrain = 1e-6

// copperLoss is what a channel loses at the top frequency of a category, and
// the limit of the category there, in dB.
type copperLoss struct {
	total, limit float64
	sum          standard.ChannelLoss
	src          standard.Source
}

// terms are the lines of the sum, with the heat that it counts with.
func (l *copperLoss) terms(k *copper) []Term {
	var terms []Term
	if k.hot != nil {
		terms = append(terms, Term{"hottest space on its way", schema.Printable(k.hot.Label) + ", " + k.high.Text(k.plant.Units)})
	}
	for i := range l.sum.Terms {
		terms = append(terms, lossTerm(&l.sum.Terms[i]))
	}
	return terms
}

// source is where the limit stands, and whether the sum is as sure.
func (l *copperLoss) source() string {
	if l.src.Sure() && l.sum.Confidence != standard.Confirmed {
		return l.src.String() + "; figures of the sum unconfirmed: check the printed standard"
	}
	return l.src.String()
}

// loss adds up the channel as it is built, judged as a category; ok is false
// where a figure is missing. Parts that are better lose no more.
func (k *copper) loss(category standard.Category) (out copperLoss, ok bool) {
	regime, top := k.plant.Regime, category.Top()
	limit, src, limited := standard.ChannelLossLimit(regime, category, top)
	assumed, _, known := standard.AssumedCordDerating(regime)
	if !limited || !known || !k.known {
		return out, false
	}
	parts := standard.ChannelParts{Regime: regime, Frequency: top}
	for _, l := range k.Links {
		for _, r := range l.Runs {
			length, _ := r.Length()
			part := standard.CablePart{Name: "run " + schema.Printable(r.Label), Category: category, Length: length, Shield: k.shield}
			if k.hot != nil {
				part.Temperature = k.high
			}
			if !derate(&part, r.Cable, 0) {
				return out, false
			}
			parts.Cables = append(parts.Cables, part)
		}
	}
	for _, cord := range k.Cords {
		length, _ := cord.CordLength()
		part := standard.CablePart{Name: "cord " + schema.Printable(cord.Label), Category: category, Length: length}
		if !derate(&part, cord.Cable, assumed) {
			return out, false
		}
		parts.Cables = append(parts.Cables, part)
	}
	if k.assumed > 0 {
		parts.Cables = append(parts.Cables, standard.CablePart{Name: "cords not recorded, assumed", Category: category, Length: k.assumed, Derating: assumed})
	}
	for range k.Connections() {
		parts.Connections = append(parts.Connections, category)
	}
	sum, ok := standard.LossOfChannel(parts)
	if !ok {
		return out, false
	}
	return copperLoss{total: sum.Total, limit: limit, sum: sum, src: src}, true
}

// derate sets how much more than fixed cable a part loses, by its conductors;
// ok is false for a gauge without a figure.
func derate(part *standard.CablePart, cable *plant.Cable, otherwise int) (ok bool) {
	part.Derating = otherwise
	if cable == nil {
		return true
	}
	if wire, stated := schema.CableConductors.In(cable.Record()); stated {
		part.Derating, _, ok = standard.CordDerating(part.Category, wire)
		return ok
	}
	return true
}

// lossTerm writes one line of the sum with its numbers put in.
func lossTerm(t *standard.LossTerm) Term {
	if t.Count > 0 {
		return Term{t.Name, fmt.Sprintf("%d x %.3f dB = %.2f dB", t.Count, t.PerHundred, t.Loss)}
	}
	value := fmt.Sprintf("%s/100 m x %.2f dB", t.Length.Text(unit.Metric), t.PerHundred)
	if t.Derating != 1 {
		value += " x " + strconv.FormatFloat(t.Derating, 'f', -1, 64)
	}
	if t.Heat != 1 {
		value += " x " + strconv.FormatFloat(t.Heat, 'f', -1, 64)
	}
	return Term{t.Name, fmt.Sprintf("%s = %.2f dB", value, t.Loss)}
}

// decibels prints a loss and its limit with as many decimals as it takes to
// show which is greater.
func decibels(value, limit float64) (shown, bound string) { return figures(value, limit, "dB") }

func figures(value, limit float64, word string) (shown, bound string) {
	for places := 2; ; places++ {
		shown, bound = strconv.FormatFloat(value, 'f', places, 64), strconv.FormatFloat(limit, 'f', places, 64)
		if shown != bound || value == limit || places > 9 {
			return shown + " " + word, bound + " " + word
		}
	}
}
