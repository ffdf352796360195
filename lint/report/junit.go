package report

import (
	"encoding/xml"
	"fmt"
	"io"

	"homerun/lint"
	"homerun/schema"
)

// The elements and attributes are those that strict readers of JUnit's XML allow:
// the format has no standard, and one attribute too many makes such a reader
// refuse the whole report. So the place of a finding stands in its text.
type suitesXML struct {
	XMLName  xml.Name   `xml:"testsuites"`
	Name     string     `xml:"name,attr"`
	Tests    int        `xml:"tests,attr"`
	Failures int        `xml:"failures,attr"`
	Errors   int        `xml:"errors,attr"`
	Suites   []suiteXML `xml:"testsuite"`
}

type suiteXML struct {
	Name     string    `xml:"name,attr"`
	Tests    int       `xml:"tests,attr"`
	Failures int       `xml:"failures,attr"`
	Errors   int       `xml:"errors,attr"`
	Skipped  int       `xml:"skipped,attr"`
	Cases    []caseXML `xml:"testcase"`
}

type caseXML struct {
	Name    string      `xml:"name,attr"`
	Class   string      `xml:"classname,attr"`
	Failure *verdictXML `xml:"failure"`
	Skipped *verdictXML `xml:"skipped"`
	Out     string      `xml:"system-out,omitempty"`
}

type verdictXML struct {
	Message string `xml:"message,attr"`
	Type    string `xml:"type,attr,omitempty"`
	Text    string `xml:",chardata"`
}

// JUnit writes a test suite for each plant. A rule that found nothing is a
// passed test; every finding is a test of its own: a nonconformity that counts
// fails, a waived one is skipped, an observation passes and prints itself.
func JUnit(w io.Writer, b Batch) error {
	doc := suitesXML{Name: "homerun"}
	seen := make(identities)
	for _, r := range b.Reports {
		suite := suiteXML{Name: schema.Printable(r.Plant.Name())}
		found := make(map[string]bool)
		for _, e := range b.entries(r, seen) {
			found[e.Rule] = true
			suite.add(b.testCase(e))
		}
		for _, rule := range b.Rules {
			if !found[rule.Name] {
				suite.add(caseXML{Name: rule.Title, Class: rule.Name})
			}
		}
		doc.Tests += suite.Tests
		doc.Failures += suite.Failures
		doc.Suites = append(doc.Suites, suite)
	}
	text, err := xml.MarshalIndent(doc, "", "  ")
	if err == nil {
		_, err = fmt.Fprintf(w, "%s%s\n", xml.Header, text)
	}
	if err != nil {
		return fmt.Errorf("writing the report: %w", err)
	}
	return nil
}

func (s *suiteXML) add(c caseXML) {
	s.Tests++
	if c.Failure != nil {
		s.Failures++
	}
	if c.Skipped != nil {
		s.Skipped++
	}
	s.Cases = append(s.Cases, c)
}

func (b *Batch) testCase(e entry) caseXML {
	said := lines(e.Message)
	c := caseXML{Name: said, Class: e.Rule}
	text := schema.Printable(Place(e.At)) + "\n" + lines(sum(e.Finding))
	switch {
	case e.Waiver != "":
		c.Skipped = &verdictXML{Message: "waiver " + schema.Printable(e.Waiver), Text: text}
	case e.Severity == lint.Nonconformity && b.counts(e.Finding):
		c.Failure = &verdictXML{Message: said, Type: e.Severity.String(), Text: text}
	default:
		c.Out = e.Severity.String() + ": " + said + "\n" + text
	}
	return c
}
