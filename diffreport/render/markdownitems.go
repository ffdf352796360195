package render

import (
	"fmt"
	"strings"
)

func plainItems(list []string) []item {
	return each(list, func(text string) item { return item{text: "- " + escape(text)} })
}

func cautionItems(p *paper) []item {
	return each(p.Cautions, func(c caution) item { return item{text: fmt.Sprintf("- %d: %s", c.Number, escape(c.Text))} })
}

func outageItems(p *paper) []item {
	return each(p.Outages, func(o outagePart) item {
		text := fmt.Sprintf("- %s %s", code(o.Port), escape(o.When))
		if o.Service != "" {
			text += ": " + escape(o.Service)
		}
		return item{text: text}
	})
}

func changeItems(p *paper) []item {
	var all []item
	for _, class := range p.Classes {
		for _, c := range class.Items {
			text := fmt.Sprintf("- %s, %s: %s", code(c.Name), c.Kind, escape(c.Why))
			all = append(all, item{text: text + factLines(c.Fields), heading: "**" + escape(class.Title) + "**"})
		}
	}
	return all
}

// stepItems lists the steps with a heading for each visit. The boxes are those
// that a comment can be ticked off with.
func stepItems(p *paper) []item {
	var all []item
	for _, v := range p.Visits {
		heading := fmt.Sprintf("<b>Visit %d: %s</b>", v.Number, escape(v.Space))
		if v.Title != "" {
			heading += " " + escape(v.Title)
		}
		for i := range v.Steps {
			s := &v.Steps[i]
			text := fmt.Sprintf("- [ ] %d: %s", s.Number, escape(s.Text))
			if notes := s.Notes(); len(notes) > 0 {
				text += "<br><sub>" + escape(strings.Join(notes, "; ")) + "</sub>"
			}
			all = append(all, item{text: text, heading: heading})
		}
	}
	return all
}

func backItems(p *paper) []item {
	return each(p.BackOut, func(b backPart) item {
		text := fmt.Sprintf("- step %d", b.Step)
		if b.Space != "" {
			text += " in " + code(b.Space)
		}
		return item{text: text + ": " + escape(b.Text)}
	})
}

func materialItems(p *paper) []item {
	return each(p.Materials, func(m materialPart) item {
		return item{text: fmt.Sprintf("- **%s** %s<br><sub>%s</sub>", escape(m.Quantity), code(m.Item), escape(m.Working))}
	})
}

func labelItems(p *paper) []item {
	strips := each(p.Strips, func(holder string) item { return item{text: "- " + escape(stripFor(holder))} })
	return append(each(p.Labels, func(l labelPart) item {
		if l.Times > 1 {
			return item{text: fmt.Sprintf("- %s, %d times", code(l.Text), l.Times)}
		}
		return item{text: "- " + code(l.Text)}
	}), strips...)
}

func testItems(p *paper) []item {
	return each(p.Tests, func(t testPart) item {
		return item{text: fmt.Sprintf("- [ ] %s: %s; %s", code(t.Record), escape(t.Limit), escape(t.Reason))}
	})
}

func findingItems(list []findingPart) []item {
	return each(list, func(f findingPart) item {
		text := fmt.Sprintf("- %s, %s: %s", escape(f.Severity), code(f.Rule), escape(f.Message))
		return item{text: text + factLines(f.Terms())}
	})
}

// factLines are facts as a list inside a list.
func factLines(facts []fact) string {
	return strings.Join(each(facts, func(f fact) string { return fmt.Sprintf("\n  - %s: %s", escape(f.Name), escape(f.Text)) }), "")
}
