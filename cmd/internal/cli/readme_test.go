package cli_test

import (
	"flag"
	"fmt"
	"os"
	"strings"
	"testing"

	"homerun/lint/rules"
)

var update = flag.Bool("update", false, "write generated parts anew")

const (
	readme    = "../../../README.md"
	tableHead = "<!-- rules: generated, see DEVELOPERS.md -->\n"
	tableEnd  = "<!-- /rules -->"
)

// ruleTable is the README's table, made from the rules themselves.
func ruleTable() string {
	var b strings.Builder
	b.WriteString("| rule | checks that | where nothing else is said |\n|---|---|---|\n")
	for _, r := range rules.All() {
		fmt.Fprintf(&b, "| `%s` | %s | %s |\n", r.Name, strings.TrimPrefix(r.Title, "Checks that "), r.Severity)
	}
	return b.String()
}

// TestReadmeRuleTable keeps the README's table the one that the rules make.
func TestReadmeRuleTable(t *testing.T) {
	t.Parallel()
	page, err := os.ReadFile(readme)
	if err != nil {
		t.Fatal(err)
	}
	before, rest, found := strings.Cut(string(page), tableHead)
	_, after, ended := strings.Cut(rest, tableEnd)
	if !found || !ended {
		t.Fatal("the README has no place for the rule table")
	}
	want := before + tableHead + ruleTable() + tableEnd + after
	if *update {
		if err := os.WriteFile(readme, []byte(want), 0o600); err != nil {
			t.Fatal(err)
		}
		return
	}
	if string(page) != want {
		t.Error("the README's rule table is out of date: go test ./cmd/internal/cli -run Readme -update")
	}
}
