package cli_test

import (
	"bytes"
	"os"
	"path/filepath"
	"testing"
)

// TestAnAuditIsTheSameWithWhatWasKept audits a history three times: anew, with what
// the first audit kept, and with that spoiled in every way in turn.
func TestAnAuditIsTheSameWithWhatWasKept(t *testing.T) {
	t.Parallel()
	r := newRoom(t)
	r.pastOf(7, 40)
	first := r.in(r.dir, 0, "audit", "--format", "json")
	kept, err := filepath.Glob(filepath.Join(r.dir, ".git", "homerun", "audit-*"))
	if err != nil || len(kept) != 1 {
		t.Fatalf("kept %v, error %v", kept, err)
	}
	content, err := os.ReadFile(kept[0])
	if err != nil {
		t.Fatal(err)
	}
	if again := r.in(r.dir, 0, "audit", "--format", "json"); again != first {
		t.Error("with what was kept the report is another")
	}
	for name, spoiled := range map[string][]byte{
		"cut":             content[:len(content)/2],
		"empty":           nil,
		"another finding": bytes.Replace(content, []byte("length"), []byte("breadth"), 1),
		"another version": bytes.Replace(content, []byte("audit 1"), []byte("audit 2"), 1),
	} {
		if err := os.WriteFile(kept[0], spoiled, 0o600); err != nil {
			t.Fatal(err)
		}
		if again := r.in(r.dir, 0, "audit", "--format", "json"); again != first {
			t.Errorf("%s: the report is another", name)
		}
		if mended, err := os.ReadFile(kept[0]); err != nil || !bytes.Equal(mended, content) {
			t.Errorf("%s: what is kept was not made anew: %v", name, err)
		}
	}
}

// TestWhatWasKeptGoesOn audits a history, then with more commits: as if nothing had
// been kept.
func TestWhatWasKeptGoesOn(t *testing.T) {
	t.Parallel()
	r := newRoom(t)
	r.pastOf(9, 40)
	r.in(r.dir, 0, "audit", "--format", "json", "HEAD~12")
	with := r.in(r.dir, 0, "audit", "--format", "json")
	if err := os.RemoveAll(filepath.Join(r.dir, ".git", "homerun")); err != nil {
		t.Fatal(err)
	}
	if without := r.in(r.dir, 0, "audit", "--format", "json"); with != without {
		t.Error("the report is another than without what was kept")
	}
}
