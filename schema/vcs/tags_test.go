package vcs_test

import (
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"homerun/schema/vcs"
)

// TestTags compares with what git itself takes each tag for.
func TestTags(t *testing.T) {
	t.Parallel()
	r := plant(t)
	r.git("tag", "as-built")
	r.git("tag", "-a", "-m", "handed over", "handover/1")
	r.git("tag", "-a", "-m", "once more", "again", "handover/1")
	r.git("tag", "a-file", r.ask("rev-parse", "HEAD:"+strings.Fields(r.git("ls-tree", "-r", "--name-only", "HEAD"))[0]))
	r.git("tag", "-a", "-m", "of a folder", "a-folder", r.ask("rev-parse", "HEAD^{tree}"))
	opened := r.open(vcs.ReaderAuto)
	got, err := opened.Tags(t.Context())
	check(t, err)
	want := map[string][]string{}
	for name := range strings.FieldsSeq(r.git("tag", "--list")) {
		if id := r.ask("rev-parse", "--verify", "--quiet", "refs/tags/"+name+"^{commit}"); id != "" {
			want[id] = append(want[id], name)
		}
	}
	if diff := cmp.Diff(want, got); diff != "" {
		t.Errorf("tags (-git +got):\n%s", diff)
	}
	if len(got) == 0 {
		t.Error("no tags at all")
	}
}
