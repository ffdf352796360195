package rules

import (
	"fmt"

	"homerun/lint"
	"homerun/schema"
	"homerun/schema/plant"
	"homerun/schema/standard"
	"homerun/schema/unit"
)

// ShieldingSeparation checks the gap between a pathway and the power cable
// beside it: by the sum A = S x P of EN 50174-2, and by the floor of NFPA 70
// where an edition of it is the plant's fire code.
var ShieldingSeparation = &lint.Rule{
	Name: "shielding-separation", Title: "Checks that data cable keeps its distance from the power cable beside its pathway",
	Severity: lint.Nonconformity, Reach: lint.Within, Safety: true, Check: shieldingSeparation,
}

func shieldingSeparation(p *lint.Pass) {
	c := &separationCheck{Pass: p, classes: make(map[*plant.Cable]segregation), told: make(map[*schema.Record]bool)}
	for _, w := range p.Plant.Pathways {
		if blocks := w.Blocks(schema.KindPower); len(blocks) > 0 {
			c.pathway(w, blocks)
		}
	}
}

// A separationCheck is what one check of a plant remembers.
type separationCheck struct {
	*lint.Pass
	classes map[*plant.Cable]segregation
	told    map[*schema.Record]bool
}

// A circuit is one block of power cable beside a pathway, as far as it is known.
type circuit struct {
	schema.Entry
	gap      unit.Length
	hasGap   bool
	barrier  standard.Barrier
	how      string
	load     standard.PowerLoad
	readable bool
}

func (c *separationCheck) pathway(w *plant.Pathway, blocks []*schema.Record) {
	worst, copper := c.worst(w)
	if copper == nil {
		return
	}
	circuits := make([]circuit, len(blocks))
	for i, b := range blocks {
		circuits[i] = readCircuit(w, w.In(b))
	}
	for i := range circuits {
		at := &circuits[i]
		switch {
		case !at.readable:
			c.odd(w, at)
		case !at.hasGap && at.barrier != standard.SolidMetal:
			c.missing(w, at, schema.PowerGap.Field, "gap not stated; the distance from power can not be checked")
		case at.hasGap:
			if worst.class != 0 {
				c.sum(w, circuits, at, &worst)
			}
			c.floor(w, at, copper)
		}
	}
}

// worst finds the cable of the poorest class among the live runs of a pathway,
// and any live run of copper at all.
func (c *separationCheck) worst(w *plant.Pathway) (worst segregation, copper *plant.Run) {
	for _, l := range w.Loads {
		r := l.First
		medium := r.Cable.Medium()
		if medium != plant.TwistedPair && medium != plant.Coax || !r.Live() {
			continue
		}
		if copper == nil {
			copper = r
		}
		class, seen := c.classes[r.Cable]
		if !seen {
			class = segregationOf(r.Cable)
			c.classes[r.Cable] = class
		}
		if class.class == 0 {
			c.unclassed(w, r)
			continue
		}
		poorer := worst.class == 0 || class.class < worst.class || class.class == worst.class && !worst.source.Sure() && class.source.Sure()
		if poorer {
			worst, worst.run = class, r
		}
	}
	return worst, copper
}

// readCircuit reads one block of power cable.
func readCircuit(w *plant.Pathway, e schema.Entry) circuit {
	at := circuit{Entry: e}
	at.gap, at.hasGap = schema.PowerGap.In(e.Record)
	n, ok := schema.PowerCircuits.In(e.Record)
	phases, okPhases := schema.PowerPhases.Or(e.Record, 1)
	current, okCurrent := schema.PowerCurrent.Or(e.Record, 0)
	at.load = standard.PowerLoad{Circuits: n, Phases: phases, Current: current}
	var okBarrier bool
	at.barrier, at.how, okBarrier = barrierOf(w, e)
	at.readable = ok && okPhases && (phases == 1 || phases == 3) && okCurrent && okBarrier && !lost(e, schema.PowerGap.Field)
	return at
}

// barrierOf is what stands between: as stated, otherwise what the pathway
// itself is made of.
func barrierOf(w *plant.Pathway, e schema.Entry) (b standard.Barrier, how string, ok bool) {
	if word, known := schema.PowerBarrier.In(e.Record); known {
		b, err := standard.ParseBarrier(word)
		return b, "stated", err == nil
	}
	if lost(e, schema.PowerBarrier.Field) {
		return 0, "", false
	}
	if closed, _ := closedMetal(w); closed {
		return standard.SolidMetal, "the pathway is closed metal", true
	}
	kind, _ := schema.PathwayKind.In(w.Record())
	material, _ := schema.PathwayMaterial.In(w.Record())
	if material == "metal" && (kind == "tray" || kind == "ladder" || kind == "basket") {
		return standard.OpenMetal, "the pathway is a metal " + kind, true
	}
	return standard.NoBarrier, "none stated", true
}

// odd names phases that are neither one nor three. What could not be read at
// all is reported with the records.
func (c *separationCheck) odd(w *plant.Pathway, at *circuit) {
	phases, ok := schema.PowerPhases.In(at.Record)
	if ok && phases != 1 && phases != 3 {
		c.missing(w, at, schema.PowerPhases.Field, fmt.Sprintf("%d phases; the distance from power is known for 1 and 3", phases))
	}
}

// missing names a field of a power block without which nothing can be checked.
func (c *separationCheck) missing(w *plant.Pathway, at *circuit, field *schema.Field, what string) {
	if c.told[at.Record] {
		return
	}
	c.told[at.Record] = true
	f := lint.About(w.Entry)
	f.At = at.Where(field)
	f.Severity = lint.Observation
	f.Message = fmt.Sprintf("%s: power beside it, %s", schema.Printable(w.Label), what)
	f.Next = fmt.Sprintf("state %s in its power block: %s", field.Name, field.Doc)
	f.Key = []string{field.Name}
	c.Report(f)
}

// unclassed names a cable type whose class is not known, once, where the
// plant's own standards ask for it.
func (c *separationCheck) unclassed(w *plant.Pathway, r *plant.Run) {
	k := r.Cable
	if c.Plant.Regime != standard.ISO || c.told[k.Record()] || lost(k.Entry, schema.CableSegregate.Field) {
		return
	}
	c.told[k.Record()] = true
	f := lint.AboutField(k.Entry, schema.CableSegregate.Field)
	f.Severity = lint.Observation
	f.Message = fmt.Sprintf("%s: segregation class not stated and not known from category and screen; run %s lies beside power in %s",
		schema.Printable(k.Label), schema.Printable(r.Label), schema.Printable(w.Label))
	f.Next = "state segregation as the data sheet gives it: a, b, c or d"
	f.Key = []string{schema.CableSegregate.Name}
	c.Report(f)
}
