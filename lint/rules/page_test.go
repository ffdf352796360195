package rules_test

import (
	"slices"
	"strings"
	"testing"

	"homerun/lint"
	"homerun/lint/rules"
	"homerun/schema"
	"homerun/schema/plant"
	"homerun/schema/unit"
)

// today is the day on which the tests judge waivers.
func today(t *testing.T) unit.Date {
	t.Helper()
	d, err := unit.ParseDate("2026-06-15")
	if err != nil {
		t.Fatal(err)
	}
	return d
}

// lintText holds one text of records against every rule, with nothing to compare
// it with.
func lintText(t *testing.T, text string) *lint.Report {
	t.Helper()
	return lintPage(t, rules.Page{}, text)
}

// lintPage holds one example of a page against every rule, as a change of what
// the page says was there before.
func lintPage(t *testing.T, page rules.Page, example string) *lint.Report {
	t.Helper()
	reader := schema.NewReader()
	var before []*schema.File
	if page.Before != "" {
		before = []*schema.File{reader.ReadFile(schema.PlantFile, page.Before)}
	}
	head := plant.Build(".", []*schema.File{reader.ReadFile(schema.PlantFile, page.Given+"\n"+example)})
	report, err := lint.Run(head, rules.All(), changed(t, before, head))
	if err != nil {
		t.Fatal(err)
	}
	return report
}

// lines lists findings in one line each.
func lines(findings []lint.Finding) string {
	var b strings.Builder
	for i := range findings {
		b.WriteString(line(&findings[i]) + "\n")
	}
	return b.String()
}

// beside names the rules that a failing example can not but break too: a channel
// that keeps its length is delayed too much by its connections alone.
var beside = map[string][]string{"category-delay": {"length-connections"}}

// TestPages holds every page against its rule: the failing example breaks the
// rule and no other, the passing one breaks none.
func TestPages(t *testing.T) {
	t.Parallel()
	if err := lint.Validate(rules.All()); err != nil {
		t.Fatal(err)
	}
	for _, r := range rules.All() {
		t.Run(r.Name, func(t *testing.T) {
			t.Parallel()
			page, ok := rules.PageOf(r.Name)
			if !ok || page.Rule != r.Name || page.Title != r.Title {
				t.Fatalf("page of %s is that of %q, %q", r.Name, page.Rule, page.Title)
			}
			failing := lintPage(t, page, page.Fails)
			if !slices.ContainsFunc(failing.Findings, func(f lint.Finding) bool { return f.Rule == r.Name }) {
				t.Errorf("the failing example does not break the rule:\n%s", lines(failing.Findings))
			}
			for _, f := range failing.Findings {
				if f.Rule != r.Name && !slices.Contains(beside[r.Name], f.Rule) {
					t.Errorf("the failing example breaks another rule: %s", line(&f))
				}
			}
			if passing := lintPage(t, page, page.Passes); len(passing.Findings) > 0 {
				t.Errorf("the passing example breaks rules:\n%s", lines(passing.Findings))
			}
		})
	}
}

// TestFindingsAreWhole holds every finding of the failing examples against
// what a report needs: label first, a sum, a result beside a limit, a source,
// and what to do.
func TestFindingsAreWhole(t *testing.T) {
	t.Parallel()
	for _, r := range rules.All() {
		page, _ := rules.PageOf(r.Name)
		for _, f := range lintPage(t, page, page.Fails).Findings {
			switch {
			case f.Message == "" || f.Next == "" || f.Source == "" || f.At.Path == "" || f.At.Line == 0:
				t.Errorf("%s: message, next step, source or place is missing: %s", r.Name, line(&f))
			case f.Record != "" && !strings.HasPrefix(f.Message, schema.Printable(f.Record)+": "):
				t.Errorf("%s: the message does not begin with the label: %s", r.Name, line(&f))
			case strings.HasSuffix(f.Message, ".") || strings.Contains(f.Message, "\n"):
				t.Errorf("%s: the message is not one phrase: %s", r.Name, line(&f))
			case len(f.Working) > 0 && (f.Result == "" || f.Limit == "" || f.Result == f.Limit):
				t.Errorf("%s: result %q beside limit %q: %s", r.Name, f.Result, f.Limit, line(&f))
			}
			if strings.Contains(f.Source, "unconfirmed") && f.Severity == lint.Nonconformity && !certain[r.Name] {
				t.Errorf("%s: a nonconformity rests on an unconfirmed figure: %s", r.Name, line(&f))
			}
		}
	}
}

// certain are rules whose verdict does not rest on the figure that their
// source leaves open: a run without an end is not recorded whatever the clause,
// and a waiver without a reason says nothing.
var certain = map[string]bool{"record-end-missing": true, "waiver-reason": true}

// TestPageRefusals holds the reader of pages against pages that are not whole.
func TestPageRefusals(t *testing.T) {
	t.Parallel()
	const good = "# a-b\nWhat.\n\n## Why\nx\n## Formula\nx\n## Source\nx\n## Sure\nx\n## Decides\nx\n## Fails\n```hcl\nx\n```\n## Passes\n```hcl\nx\n```\n"
	if _, err := rules.ParsePage(good); err != nil {
		t.Fatalf("a whole page is refused: %v", err)
	}
	for name, bad := range map[string]string{
		"no heading":        strings.Replace(good, "# a-b", "a-b", 1),
		"nothing said":      strings.Replace(good, "What.", "", 1),
		"missing section":   strings.Replace(good, "## Sure\nx\n", "", 1),
		"missing last":      strings.Replace(good, "## Passes\n```hcl\nx\n```\n", "", 1),
		"unknown section":   strings.Replace(good, "## Sure", "## Surely", 1),
		"out of order":      strings.Replace(strings.Replace(good, "## Why", "## Formula", 1), "## Formula", "## Why", 2),
		"empty section":     strings.Replace(good, "## Sure\nx", "## Sure\n", 1),
		"records, no fence": strings.Replace(good, "```hcl\nx\n```", "x", 1),
		"two sections":      good + "## Passes\n```hcl\nx\n```\n",
	} {
		if _, err := rules.ParsePage(bad); err == nil {
			t.Errorf("%s: the page is accepted", name)
		}
	}
}
