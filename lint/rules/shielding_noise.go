package rules

import (
	"fmt"

	"homerun/lint"
	"homerun/schema"
	"homerun/schema/plant"
	"homerun/schema/standard"
)

// ShieldingNoise checks that unscreened pairs stay out of spaces whose
// electromagnetic class asks for screens.
var ShieldingNoise = &lint.Rule{
	Name: "shielding-noise", Title: "Checks that unscreened pairs do not lie in spaces of light industry or industry, classes E2 and E3",
	Severity: lint.Nonconformity, Reach: lint.Along, Check: shieldingNoise,
}

// noiseSource is for the classes, whose words are confirmed; the field
// strengths behind them are not used.
var noiseSource = standard.Source{
	Body: "ISO/IEC", Edition: "11801-1:2017", Clause: "MICE, electromagnetic classes E1 to E3", Confidence: standard.Confirmed,
	Note: "that E3 asks for screened pairs or closed metal is common practice",
}

func shieldingNoise(p *lint.Pass) {
	c := &noiseCheck{Pass: p, noisy: make(map[*plant.Space]standard.Noise), told: make(map[*plant.Cable]bool)}
	for _, s := range p.Plant.Spaces {
		by := statedIn(s, schema.SpaceNoise.Field)
		if by == nil {
			continue
		}
		if word, ok := schema.SpaceNoise.In(by.Record()); ok && word != standard.E1.String() {
			if noise, err := standard.ParseNoise(word); err == nil {
				c.noisy[s] = noise
			}
		}
	}
	if len(c.noisy) == 0 {
		return
	}
	screens := screenings(p.Plant)
	for _, r := range p.Plant.Runs {
		if r.Cable.Medium() != plant.TwistedPair || screens.at(r.Cable) == screenedPairs || !r.Live() {
			continue
		}
		worst, others := c.exposure(r)
		switch {
		case worst.space == nil:
		case screens.at(r.Cable) == unscreenedPairs:
			c.report(r, worst, others)
		default:
			c.unstated(r, worst)
		}
	}
}

// A noiseCheck is what one check of a plant remembers.
type noiseCheck struct {
	*lint.Pass
	noisy map[*plant.Space]standard.Noise
	told  map[*plant.Cable]bool
}

// An exposed stretch lies in a noisy space without closed metal around it.
type exposed struct {
	berth
	noise standard.Noise
	// perhaps is set where the pathway may be closed metal: it does not say.
	perhaps bool
}

// exposure finds where a run is exposed: the worst first, and the other spaces.
func (c *noiseCheck) exposure(r *plant.Run) (worst exposed, others []exposed) {
	add := func(at berth) {
		noise := c.noisy[at.space]
		if noise == 0 {
			return
		}
		found := exposed{berth: at, noise: noise}
		if at.pathway != nil {
			var closed bool
			if closed, found.perhaps = closedMetal(at.pathway); closed {
				return
			}
		}
		if worst.space == at.space && (!worst.perhaps || found.perhaps) {
			return
		}
		if worse(&found, &worst) {
			worst, found = found, worst
		}
		if found.space != nil && found.space != worst.space {
			others = append(others, found)
		}
	}
	if s := r.From.Space(); s != nil {
		add(berth{space: s})
	}
	if r.Way != nil {
		for _, w := range r.Way.Pathways {
			for _, s := range w.Through {
				add(berth{space: s, pathway: w})
			}
		}
	}
	if s := r.To.Space(); s != nil {
		add(berth{space: s})
	}
	return worst, others
}

// worse says whether one stretch decides over another: by class, and in the
// same class by being certain.
func worse(a, b *exposed) bool {
	return a.noise > b.noise || a.noise == b.noise && b.perhaps && !a.perhaps
}

// closedMetal says whether a pathway closes its cable in metal, and whether it
// may do so without saying it.
func closedMetal(w *plant.Pathway) (closed, perhaps bool) {
	n := 0
	readings := enclosuresOf(w)
	for _, e := range readings {
		if e == standard.MetalRaceway || e == standard.SolidCoveredTray {
			n++
		}
	}
	return n > 0 && n == len(readings), n > 0 || len(readings) == 0
}

func (c *noiseCheck) report(r *plant.Run, at exposed, others []exposed) {
	f := lint.About(r.Entry)
	label := schema.Printable(at.space.Label)
	f.Message = fmt.Sprintf("%s: unscreened pairs in %s, class %s (%s), must be screened or in closed metal", schema.Printable(r.Label), label, at.noise, at.noise.Place())
	if at.noise == standard.E2 || at.perhaps {
		f.Severity = lint.Observation
	}
	f.Working = []lint.Term{
		term("cable", codeOfCable(r.Cable)),
		term("space", fmt.Sprintf("%s, class %s, %s", label, at.noise, at.noise.Place())),
		term("lies", shelter(&at)),
	}
	f.Related = []schema.Note{beside(at.space.Entry, schema.SpaceNoise.Field, "class "+at.noise.String())}
	for _, o := range others {
		f.Working = append(f.Working, term("also", fmt.Sprintf("%s, class %s", schema.Printable(o.space.Label), o.noise)))
		f.Related = append(f.Related, beside(o.space.Entry, schema.SpaceNoise.Field, "class "+o.noise.String()))
	}
	f.Result, f.Limit, f.Source = "unscreened, class "+at.noise.String(), "unscreened up to class E1", noiseSource.String()
	f.Next = "pull a screened cable with screened hardware and a bonded panel, lay it in closed metal, or use fibre"
	f.Key = []string{at.space.Label}
	f.Excess = float64(at.noise)
	c.Report(f)
}

// shelter says how the cable lies in the noisy space.
func shelter(at *exposed) string {
	if at.pathway == nil {
		return "bare, since it ends here"
	}
	kind, _ := schema.PathwayKind.In(at.pathway.Record())
	text := kind + " " + schema.Printable(at.pathway.Label)
	if at.perhaps {
		return text + ", which does not say whether it is closed metal"
	}
	return text + ", not closed metal"
}

// unstated names a cable type that does not say whether it is screened, once.
func (c *noiseCheck) unstated(r *plant.Run, at exposed) {
	k := r.Cable
	if c.told[k] || lost(k.Entry, schema.CableScreen.Field) {
		return
	}
	c.told[k] = true
	f := lint.AboutField(k.Entry, schema.CableScreen.Field)
	f.Severity = lint.Observation
	f.Message = fmt.Sprintf("%s: screen not stated; run %s lies in %s, class %s", schema.Printable(k.Label), schema.Printable(r.Label), schema.Printable(at.space.Label), at.noise)
	f.Next = "state screen with the construction code, such as U/UTP or S/FTP"
	f.Key = []string{schema.CableScreen.Name}
	f.Source = noiseSource.String()
	c.Report(f)
}
