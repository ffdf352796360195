package render_test

import (
	"bytes"
	"encoding/json"
	"slices"
	"testing"

	"homerun/diffreport/audit"
	"homerun/diffreport/render"
)

// paths collects the names of a document's fields. A commit is told once.
func paths(value any, at string, into map[string]bool) {
	switch v := value.(type) {
	case []any:
		for _, item := range v {
			paths(item, at+"[]", into)
		}
	case map[string]any:
		if at == "signatures" {
			return // its names are states
		}
		for name, inner := range v {
			path := name
			if at != "" {
				path = at + "." + name
			}
			if _, commit := v["subject"]; commit && slices.Contains([]string{"commit", "time", "author", "committer", "subject"}, name) {
				continue
			}
			into[path] = true
			paths(inner, path, into)
		}
	}
}

// TestEveryFieldForProgramsIsDocumented holds AUDIT.md against a document in which
// nothing is empty, both ways.
func TestEveryFieldForProgramsIsDocumented(t *testing.T) {
	t.Parallel()
	var out bytes.Buffer
	if err := render.AuditJSON(&out, []*audit.Report{harmlessAudit()}); err != nil {
		t.Fatal(err)
	}
	var document any
	if err := json.Unmarshal(out.Bytes(), &document); err != nil {
		t.Fatal(err)
	}
	written := make(map[string]bool)
	paths(document, "", written)
	_, told := documented(t, "AUDIT.md")
	missing(t, "written and not documented", written, told)
	missing(t, "documented and not written", told, written)
}
