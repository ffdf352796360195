package cli

import (
	"homerun/diffreport"
	"homerun/diffreport/audit"
	"homerun/schema"
	"homerun/schema/unit"
)

// auditFact is what judging a commit tells: all that the audit takes from its
// records. It can be written down and read again.
type auditFact struct {
	There    bool          `json:"there,omitempty"`
	Expiries []string      `json:"expiries,omitempty"`
	Gone     []findingFact `json:"gone,omitempty"`
	Come     []findingFact `json:"come,omitempty"`
	Against  []findingFact `json:"against,omitempty"`
	Deeds    []deedFact    `json:"deeds,omitempty"`
	Waivers  []waiverFact  `json:"waivers,omitempty"`
	Unread   int           `json:"unread,omitempty"`
	Renamed  []renamedFact `json:"renamed,omitempty"`
	Compared bool          `json:"compared,omitempty"`
	Stated   bool          `json:"stated,omitempty"`
	Standard string        `json:"standard,omitempty"`
	FireCode string        `json:"fire_code,omitempty"`
}

// findingFact and deedFact are what the audit knows under the same names.
type findingFact struct {
	Rule          string   `json:"rule"`
	Kind          string   `json:"kind"`
	Record        string   `json:"record"`
	Key           []string `json:"key,omitempty"`
	Message       string   `json:"message"`
	Nonconformity bool     `json:"nonconformity,omitempty"`
	Waiver        string   `json:"waiver,omitempty"`
}

type deedFact struct {
	Kind    string           `json:"kind"`
	Label   string           `json:"label"`
	Former  string           `json:"former,omitempty"`
	Class   diffreport.Class `json:"class"`
	Meaning schema.Meaning   `json:"meaning"`
	New     bool             `json:"new,omitempty"`
	Gone    bool             `json:"gone,omitempty"`
}

// waiverFact is a waiver with its last day as a text.
type waiverFact struct {
	Label   string   `json:"label"`
	Rule    string   `json:"rule"`
	Reason  string   `json:"reason"`
	Granted string   `json:"granted"`
	Records []string `json:"records"`
	Last    string   `json:"last,omitempty"`
}

// renamedFact is what a record is called, and what it was called in the first parent.
type renamedFact struct {
	Label  string `json:"label"`
	Former string `json:"former"`
}

// renamedIn are the records that changes rename.
func renamedIn(changes []diffreport.Change) []renamedFact {
	var list []renamedFact
	for i := range changes {
		if c := &changes[i]; c.Former != "" {
			list = append(list, renamedFact{c.Label, c.Former})
		}
	}
	return list
}

// former tells what a record is called in the first parent.
func (f *auditFact) former() func(label string) string {
	changes := make([]diffreport.Change, len(f.Renamed))
	for i, r := range f.Renamed {
		changes[i].Label, changes[i].Former = r.Label, r.Former
	}
	return diffreport.Former(changes)
}

// dateText and dateOf write a date down and read it again; no date is no text.
func dateText(d unit.Date) string {
	if d.IsZero() {
		return ""
	}
	return d.String()
}

func dateOf(text string) (unit.Date, error) {
	if text == "" {
		return unit.Date{}, nil
	}
	return unit.ParseDate(text)
}

// each turns every item of a list into another.
func each[A, B any](list []A, turn func(A) B) []B {
	all := make([]B, len(list))
	for i := range list {
		all[i] = turn(list[i])
	}
	return all
}

func keptFinding(f audit.Finding) findingFact { return findingFact(f) }
func toldFinding(f findingFact) audit.Finding { return audit.Finding(f) }
func keptDeed(d audit.Deed) deedFact          { return deedFact(d) }
func toldDeed(d deedFact) audit.Deed          { return audit.Deed(d) }

// keepWaivers notes the waivers of a commit.
func (f *auditFact) keepWaivers(list []audit.Waiver) {
	f.Waivers = each(list, func(w audit.Waiver) waiverFact {
		return waiverFact{w.Label, w.Rule, w.Reason, w.Granted, w.Records, dateText(w.Expires)}
	})
}

// tell fills in what the audit takes.
func (f *auditFact) tell(step *audit.Step) (err error) {
	step.Gone, step.Come, step.Against = each(f.Gone, toldFinding), each(f.Come, toldFinding), each(f.Against, toldFinding)
	step.Deeds, step.Unread, step.HasWaivers = each(f.Deeds, toldDeed), f.Unread, true
	if f.Compared {
		step.Former = f.former()
	}
	for _, w := range f.Waivers {
		told := audit.Waiver{Label: w.Label, Rule: w.Rule, Reason: w.Reason, Granted: w.Granted, Records: w.Records}
		if told.Expires, err = dateOf(w.Last); err != nil {
			return err
		}
		step.Waivers = append(step.Waivers, told)
	}
	return nil
}
