package render

import (
	"slices"
	"strings"

	"homerun/diffreport"
	"homerun/schema"
	"homerun/schema/plant"
)

// A visitPart is one visit of the crew to a space, with what it meets there.
type visitPart struct {
	Number, Of int
	// Order is the order's number: the sheets of visits may part company.
	Order        string
	Space, Title string
	Steps        []stepPart
	Cautions     []caution
}

type stepPart struct {
	Number        int
	Action, Class string
	Text          string
	Records       []string
	// Notes are what else has to be known: what comes before, who loses
	// service, which cautions.
	After    string
	RoomFor  string
	Outage   string
	Cautions []caution
}

func (p *paper) visits(j *Job) {
	all := j.Order.Visits()
	for _, v := range all {
		part := visitPart{Number: v.Number, Of: len(all), Order: p.Number, Space: schema.Printable(v.Space), Title: spaceTitle(j, v.Space)}
		if v.Space == "" {
			part.Space = "a place that the records do not state"
		}
		for k := range v.Steps {
			step := stepOf(&v.Steps[k], &j.Order)
			part.Steps = append(part.Steps, step)
			part.Cautions = append(part.Cautions, step.Cautions...)
		}
		part.Cautions = inOrder(part.Cautions)
		p.Visits = append(p.Visits, part)
	}
}

func stepOf(s *diffreport.Step, o *diffreport.Order) stepPart {
	part := stepPart{Number: s.Number, Action: string(s.Action), Class: s.Class.String(), Text: schema.Printable(s.Text), Records: printable(s.Records), RoomFor: schema.Printable(s.RoomFor), Outage: list(printable(s.Outage))}
	if len(s.After) > 0 {
		part.After = numbers("step", s.After)
	}
	for _, text := range s.Cautions {
		if n := o.CautionNumber(text); n > 0 {
			text = o.Cautions[n-1]
			part.Cautions = append(part.Cautions, caution{n, schema.Printable(text)})
		}
	}
	part.Cautions = inOrder(part.Cautions)
	return part
}

func inOrder(list []caution) []caution {
	list = slices.Clone(list)
	slices.SortFunc(list, func(a, b caution) int { return a.Number - b.Number })
	return slices.Compact(list)
}

// marks writes the numbers of cautions.
func marks(list []caution) string {
	if len(list) == 0 {
		return ""
	}
	n := make([]int, len(list))
	for i, c := range list {
		n[i] = c.Number
	}
	return numbers("caution", n)
}

// Notes are what else there is to know about a step, in one line.
func (s stepPart) Notes() []string {
	var all []string
	if s.After != "" {
		all = append(all, "after "+s.After)
	}
	if s.RoomFor != "" {
		all = append(all, roomFor(s.RoomFor))
	}
	if s.Outage != "" {
		all = append(all, "without service: "+s.Outage)
	}
	if m := marks(s.Cautions); m != "" {
		all = append(all, m)
	}
	return all
}

// spaceTitle is what the records say about a space besides its label, in
// either plant.
func spaceTitle(j *Job, label string) string {
	for _, p := range []*plant.Plant{j.Head, j.Base} {
		if p == nil {
			continue
		}
		it, _ := p.Find(label)
		sp, ok := it.(*plant.Space)
		if !ok {
			continue
		}
		kind, _ := schema.SpaceKind.In(sp.Record())
		if title, stated := schema.SpaceTitle.In(sp.Record()); stated {
			return schema.Printable(title)
		}
		return plainWords(kind)
	}
	return ""
}

// plainWords writes a word of the record language as one would say it.
func plainWords(word string) string { return strings.ReplaceAll(word, "-", " ") }
