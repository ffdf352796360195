package weave_test

import (
	"fmt"
	"maps"
	"math/rand/v2"
	"os"
	"os/exec"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"homerun/schema/weave"
)

// TestAsGitMergesLines holds the merge against git's own: where the lines of the
// three texts merge without conflict and the result can be read, the records
// joined state the same. Git is not asked about records that moved or that both
// sides added, since a merge of lines may put those together wrongly.
func TestAsGitMergesLines(t *testing.T) {
	t.Parallel()
	dir := t.TempDir()
	merged := 0
	for seed := range uint64(150) {
		r := rand.New(rand.NewPCG(seed, 7))
		base := newTable(r)
		ours, theirs := base.edit(r), base.edit(r)
		for label := range ours {
			if base[label] == nil {
				delete(ours, label)
			}
		}
		texts := weave.Texts{Base: base.plain(), Ours: ours.plain(), Theirs: theirs.plain()}
		files := make([]string, 3)
		for i, text := range []string{texts.Ours, texts.Base, texts.Theirs} {
			files[i] = filepath.Join(dir, string(rune('a'+i)))
			if err := os.WriteFile(files[i], []byte(text), 0o600); err != nil {
				t.Fatal(err)
			}
		}
		lines, err := exec.Command("git", append([]string{"merge-file", "-p", "-q"}, files...)...).Output()
		if err != nil {
			continue // a conflict of lines
		}
		merged++
		got, err := weave.Merge(texts, weave.Options{})
		if err != nil {
			t.Fatal(err)
		}
		if len(got.Conflicts) > 0 {
			t.Errorf("seed %d: git merges the lines, but there are conflicts: %v", seed, got.Conflicts)
			continue
		}
		if diff := cmp.Diff(read(t, string(lines)), read(t, got.Text)); diff != "" {
			t.Errorf("seed %d (-git +got):\n%s", seed, diff)
		}
	}
	if merged < 10 {
		t.Errorf("git merged only %d of the texts, which proves little", merged)
	}
}

// plain writes the records sorted and in one layout.
func (tb table) plain() string {
	var b strings.Builder
	for _, label := range slices.Sorted(maps.Keys(tb)) {
		fmt.Fprintf(&b, "run %q {\n", label)
		for _, name := range slices.Sorted(maps.Keys(tb[label])) {
			fmt.Fprintf(&b, "  %s = %q\n", name, tb[label][name])
		}
		b.WriteString("}\n\n")
	}
	return b.String()
}
