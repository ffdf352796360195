package rules

import (
	"fmt"

	"homerun/lint"
	"homerun/schema"
	"homerun/schema/plant"
)

// The rules of this family hold a pathway against what lies in it: how full it
// is, how it bends, how far a cable is pulled through it and hangs free.

// pathwayKind is what a pathway is; empty where that can not be read.
func pathwayKind(w *plant.Pathway) string {
	kind, _ := schema.PathwayKind.In(w.Record())
	return kind
}

// unstatedField names a field of a record without which a pathway can not be
// checked.
func unstatedField(p *lint.Pass, e schema.Entry, field *schema.Field, what, source string) {
	f := lint.AboutField(e, field)
	f.Severity = lint.Observation
	f.Message = fmt.Sprintf("%s: %s not stated; %s", schema.Printable(e.Label), field.Name, what)
	f.Next = fmt.Sprintf("state %s: %s", field.Name, field.Doc)
	f.Source = source
	f.Key = []string{field.Name}
	p.Report(f)
}
