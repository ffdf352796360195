package rules

import (
	"embed"
	"fmt"
	"strings"
)

//go:embed pages/*.md
var pages embed.FS

// A Page explains one rule to people. Sections hold plain text in paragraphs;
// a line that begins with a space or a hyphen stands by itself.
type Page struct {
	// Rule is the rule's name, Title the sentence that begins "Checks that".
	Rule, Title string
	// What says what is checked, Why what it means on site.
	What, Why string
	// Formula names its symbols with their units; "none" where nothing is computed.
	Formula string
	// Source is body, edition and clause; Sure says how sure the figures are.
	Source, Sure string
	// Caution names a danger and defers to those who answer for it; may be empty.
	Caution string
	// Decides says who decides in doubt.
	Decides string
	// Before are the records before the change, for a rule that judges one:
	// a whole plant, empty for other rules. Given are records that both
	// examples share; may be empty. Fails and Passes are records, each of
	// which makes a whole plant with Given.
	Before, Given, Fails, Passes string
}

// section is one part of a page: its heading, where its text goes, and what
// may be left out.
type section struct {
	head     string
	text     *string
	optional bool
	records  bool
}

func (p *Page) sections() []section {
	return []section{
		{head: "Why", text: &p.Why},
		{head: "Formula", text: &p.Formula},
		{head: "Source", text: &p.Source},
		{head: "Sure", text: &p.Sure},
		{head: "Caution", text: &p.Caution, optional: true},
		{head: "Decides", text: &p.Decides},
		{head: "Before", text: &p.Before, optional: true, records: true},
		{head: "Given", text: &p.Given, optional: true, records: true},
		{head: "Fails", text: &p.Fails, records: true},
		{head: "Passes", text: &p.Passes, records: true},
	}
}

// PageOf returns the page of a rule; ok is false where there is no such rule.
// A rule without a good page is our own mistake and panics.
func PageOf(name string) (page Page, ok bool) {
	rule, ok := Named(name)
	if !ok {
		return Page{}, false
	}
	text, err := pages.ReadFile("pages/" + name + ".md")
	if err != nil {
		panic("rules: " + name + " has no page: " + err.Error())
	}
	page, err = ParsePage(string(text))
	if err != nil {
		panic("rules: page of " + name + ": " + err.Error())
	}
	page.Title = rule.Title
	return page, true
}

// ParsePage reads the text of a page: the rule's name as the heading, a
// paragraph, then the sections in their order. The error names what is missing,
// unknown or out of order.
func ParsePage(text string) (Page, error) {
	head, rest, _ := strings.Cut(text, "\n")
	name, isHead := strings.CutPrefix(head, "# ")
	if !isHead || name == "" {
		return Page{}, fmt.Errorf("the first line is not \"# \" and the rule's name")
	}
	page := Page{Rule: name}
	parts := strings.Split("\n"+rest, "\n## ")
	if page.What = strings.TrimSpace(parts[0]); page.What == "" {
		return Page{}, fmt.Errorf("it does not say what the rule checks")
	}
	wanted := page.sections()
	for _, part := range parts[1:] {
		heading, body, _ := strings.Cut(part, "\n")
		for len(wanted) > 0 && wanted[0].head != heading && wanted[0].optional {
			wanted = wanted[1:]
		}
		if len(wanted) == 0 || wanted[0].head != heading {
			return Page{}, fmt.Errorf("section %q is unknown or out of order", heading)
		}
		if err := wanted[0].take(body); err != nil {
			return Page{}, err
		}
		wanted = wanted[1:]
	}
	for _, s := range wanted {
		if !s.optional {
			return Page{}, fmt.Errorf("section %q is missing", s.head)
		}
	}
	return page, nil
}

// take reads the body of the section, without the fence around records.
func (s section) take(body string) error {
	body = strings.TrimSpace(body)
	if s.records {
		inner, opened := strings.CutPrefix(body, "```hcl\n")
		inner, closed := strings.CutSuffix(inner, "```")
		if !opened || !closed || strings.Contains(inner, "```") {
			return fmt.Errorf("section %q is not one fenced block of hcl", s.head)
		}
		body = inner
	}
	if strings.TrimSpace(body) == "" {
		return fmt.Errorf("section %q is empty", s.head)
	}
	*s.text = body
	return nil
}
