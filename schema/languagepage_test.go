package schema_test

import (
	"flag"
	"os"
	"testing"

	"homerun/schema"
)

var update = flag.Bool("update", false, "write generated pages anew")

// TestLanguagePage keeps LANGUAGE.md the page that the table of kinds makes.
func TestLanguagePage(t *testing.T) {
	t.Parallel()
	if *update {
		if err := os.WriteFile("LANGUAGE.md", []byte(schema.LanguagePage()), 0o600); err != nil {
			t.Fatal(err)
		}
	}
	page, err := os.ReadFile("LANGUAGE.md")
	if err != nil {
		t.Fatal(err)
	}
	if string(page) != schema.LanguagePage() {
		t.Error("LANGUAGE.md is out of date: go test ./schema -update")
	}
}
