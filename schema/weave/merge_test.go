package weave_test

import (
	"errors"
	"flag"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
	"golang.org/x/tools/txtar"

	"homerun/schema/weave"
)

var update = flag.Bool("update", false, "write the result files of testdata/merge anew")

// TestMerge merges the cases of testdata/merge. Each holds base, ours, theirs
// and the result that a person would write; its comment says why.
func TestMerge(t *testing.T) {
	t.Parallel()
	files, err := filepath.Glob("testdata/merge/*.txtar")
	if err != nil || len(files) == 0 {
		t.Fatal("no cases", err)
	}
	for _, name := range files {
		t.Run(strings.TrimSuffix(filepath.Base(name), ".txtar"), func(t *testing.T) {
			t.Parallel()
			archive, err := txtar.ParseFile(name)
			if err != nil {
				t.Fatal(err)
			}
			text := map[string]string{}
			for _, f := range archive.Files {
				text[f.Name] = string(f.Data)
			}
			result, err := weave.Merge(weave.Texts{Base: text["base"], Ours: text["ours"], Theirs: text["theirs"]}, weave.Options{})
			got := result.Text
			if unfit, ok := errors.AsType[*weave.UnfitError](err); ok {
				got = "unfit: " + unfit.Error() + "\n"
			} else if err != nil {
				t.Fatal(err)
			}
			if *update {
				keep(t, name, archive, got)
				return
			}
			if diff := cmp.Diff(text["result"], got); diff != "" {
				t.Errorf("(-want +got):\n%s", diff)
			}
		})
	}
}

func keep(t *testing.T, name string, a *txtar.Archive, result string) {
	t.Helper()
	a.Files = slices.DeleteFunc(a.Files, func(f txtar.File) bool { return f.Name == "result" })
	a.Files = append(a.Files, txtar.File{Name: "result", Data: []byte(result)})
	if err := os.WriteFile(name, txtar.Format(a), 0o644); err != nil {
		t.Fatal(err)
	}
}
