package rules

import (
	"fmt"
	"strings"

	"homerun/lint"
	"homerun/schema"
	"homerun/schema/standard"
)

// ShieldingConstruction checks that the construction of a cable type is stated
// by its code and not by a word that several constructions share.
var ShieldingConstruction = &lint.Rule{
	Name: "shielding-construction", Title: "Checks that the screens of a cable are stated by their code, not by a word that leaves them open",
	Severity: lint.Observation, Reach: lint.Along, Check: shieldingConstruction,
}

func shieldingConstruction(p *lint.Pass) {
	for _, k := range p.Plant.Cables {
		word, ok := k.Screen()
		if !ok {
			continue
		}
		means := standard.Ambiguous(word)
		if len(means) < 2 {
			continue // no older word, or one that everybody uses for one construction
		}
		f := lint.AboutField(k.Entry, schema.CableScreen.Field)
		f.Message = fmt.Sprintf("%s: screen %s leaves the construction open, it may be %s", schema.Printable(k.Label), word, strings.Join(means, ", "))
		f.Next = "write the code of the jacket or data sheet: overall screen, a stroke, the screen of each pair and TP, such as " + means[len(means)-1]
		f.Working = []lint.Term{term("stated", word), term("may be", strings.Join(means, ", "))}
		f.Result, f.Limit, f.Source = word, "a code such as "+means[0], standard.ConstructionSource().String()
		f.Key = []string{schema.CableScreen.Name}
		p.Report(f)
	}
}
