package rules

import (
	"fmt"
	"strings"

	"homerun/lint"
	"homerun/schema"
	"homerun/schema/plant"
)

// RecordLabelForm holds identifiers against the form that the plant has
// chosen, where it has chosen one.
var RecordLabelForm = &lint.Rule{
	Name: "record-label-form", Title: "Checks that identifiers of rooms, panels and runs have the plant's chosen form of ANSI/TIA-606",
	Severity: lint.Observation, Reach: lint.Along, Check: labelForm,
}

const (
	linkForm  = "ANSI/TIA/EIA-606-A, horizontal link identifier, as quoted in the literature"
	spaceForm = "ANSI/TIA-606-B, telecommunications space identifier; unconfirmed: check the printed standard"
	panelForm = "ANSI/TIA-606-B, panel identifier; unconfirmed: check the printed standard"
)

func labelForm(p *lint.Pass) {
	if p.Plant.Entry.Record == nil {
		return
	}
	if form, stated := schema.PlantLabels.In(p.Plant.Entry.Record); !stated || form != "TIA-606" {
		return
	}
	for _, s := range p.Plant.Spaces {
		if isRoom(s) && s.Label != "" && !isSpaceLabel(s.Label) {
			reportForm(p, s.Entry, "floor and letter, such as 1A", spaceForm)
		}
	}
	for _, h := range p.Plant.Holders {
		if h.Kind.Name == schema.KindPanel && h.Space != nil && isRoom(h.Space) && h.Label != "" && !follows(h.Label, h.Space.Label, "-") {
			reportForm(p, h.Entry, schema.Printable(h.Space.Label)+", a hyphen and the panel, such as "+schema.Printable(h.Space.Label)+"-A", panelForm)
		}
	}
	for _, r := range p.Plant.Runs {
		if r.Label != "" {
			runForm(p, r)
		}
	}
}

// runForm judges runs from a panel: a link to an outlet is called by its
// panel and port, a cable between rooms may be called by both rooms.
func runForm(p *lint.Pass, r *plant.Run) {
	port := r.From.First()
	if port == nil || port.Holder.Kind.Name != schema.KindPanel || port.Holder.Label == "" {
		return
	}
	if len(r.From) == 1 && namesPort(r.Label, port) {
		return
	}
	to := r.To.First()
	toPanel := to != nil && to.Holder.Kind.Name == schema.KindPanel
	if (toPanel || len(r.From) > 1) && (isBackboneLabel(r.Label) || strings.HasPrefix(r.Label, port.Holder.Label)) {
		return
	}
	form := "panel and port, such as " + schema.Printable(portLabel(port))
	if toPanel || len(r.From) > 1 {
		form = "both rooms and a cable, such as 1A/2A-1"
	}
	reportForm(p, r.Entry, form, linkForm)
}

func reportForm(p *lint.Pass, e schema.Entry, form, source string) {
	f := lint.About(e)
	f.At = e.Within(e.LabelAt)
	f.Message = fmt.Sprintf("%s: the label of this %s is not of the form %s", schema.Printable(e.Label), e.Kind.Name, form)
	f.Working = []lint.Term{term("form of identifiers", "TIA-606, from the plant record"), term("label", schema.Printable(e.Label))}
	f.Result, f.Limit, f.Source = schema.Printable(e.Label), form, source
	f.Next = `relabel it and keep the old identifier in former, or state labels = "free" in the plant record`
	p.Report(f)
}

// isRoom says whether a space is one of those that the standard gives identifiers.
func isRoom(s *plant.Space) bool {
	kind, known := schema.SpaceKind.In(s.Record())
	switch kind {
	case "telecommunications-room", "equipment-room", "entrance-facility", "telecommunications-enclosure":
		return known
	}
	return false
}

// isSpaceLabel accepts floor and letters, "1A" or "B2C", with a building or a
// site before it, "N-1A".
func isSpaceLabel(label string) bool {
	name := label[strings.LastIndexAny(label, "-.")+1:]
	floor := strings.TrimRight(name, letters)
	return floor != name && strings.TrimLeft(floor, letters+digits) == "" && strings.ContainsAny(floor, digits)
}

const (
	letters = "ABCDEFGHIJKLMNOPQRSTUVWXYZ"
	digits  = "0123456789"
)

// follows says whether a label goes on after a prefix and a separator.
func follows(label, prefix, separator string) bool {
	rest, ok := strings.CutPrefix(label, prefix+separator)
	return ok && rest != ""
}

// portLabel is the identifier of the link behind a panel port.
func portLabel(port *plant.Port) string {
	return strings.Replace(port.String(), ":", "", 1)
}

// namesPort compares without building the label: it is done for every run.
func namesPort(label string, port *plant.Port) bool {
	rest, ok := strings.CutPrefix(label, port.Holder.Label)
	if !ok || rest == "" || len(rest) > 6 {
		return false
	}
	n := 0
	for i := range len(rest) {
		if rest[i] < '0' || rest[i] > '9' {
			return false
		}
		n = 10*n + int(rest[i]-'0')
	}
	return n == port.Number
}

// isBackboneLabel accepts "1A/2A-1" and "01B/5C-D.10".
func isBackboneLabel(label string) bool {
	from, rest, ok := strings.Cut(label, "/")
	cut := strings.LastIndexByte(rest, '-')
	return ok && cut > 0 && isSpaceLabel(from) && isSpaceLabel(rest[:cut]) && rest[cut+1:] != ""
}
