package cli_test

import (
	"archive/zip"
	"bytes"
	"crypto/sha256"
	"fmt"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"
)

// altered writes an archive again with its files altered, and with a list of
// digests that fits, as somebody would who knows how the archive is made.
func altered(t *testing.T, from, to string, alter func(files map[string][]byte)) {
	t.Helper()
	in, err := zip.OpenReader(from)
	if err != nil {
		t.Fatal(err)
	}
	defer in.Close()
	files := map[string][]byte{}
	var names []string
	for _, f := range in.File {
		r, err := f.Open()
		if err != nil {
			t.Fatal(err)
		}
		var content bytes.Buffer
		if _, err := content.ReadFrom(r); err != nil {
			t.Fatal(err)
		}
		files[f.Name] = content.Bytes()
		names = append(names, f.Name)
	}
	alter(files)
	for name := range files {
		if !slices.Contains(names, name) {
			names = append(names, name)
		}
	}
	var sums strings.Builder
	for _, name := range names[1:] {
		if data, there := files[name]; there {
			fmt.Fprintf(&sums, "%x  %s\n", sha256.Sum256(data), name)
		}
	}
	files["SHA256SUMS"] = []byte(sums.String())
	var out bytes.Buffer
	w := zip.NewWriter(&out)
	for _, name := range names {
		data, there := files[name]
		if !there {
			continue
		}
		f, err := w.Create(name)
		if err != nil {
			t.Fatal(err)
		}
		if _, err := f.Write(data); err != nil {
			t.Fatal(err)
		}
	}
	if err := w.Close(); err != nil {
		t.Fatal(err)
	}
	if err := os.WriteFile(to, out.Bytes(), 0o600); err != nil {
		t.Fatal(err)
	}
}

func TestATamperedBundleIsRefusedByName(t *testing.T) {
	t.Parallel()
	r := newRoom(t)
	r.pastOf(5, 30)
	r.mustGit(r.dir, "branch", "was", "HEAD~3")
	elsewhere := t.TempDir()
	file := filepath.Join(elsewhere, "evidence.zip")
	told := r.in(r.dir, 0, "audit", "--bundle", file, "--formerly", "was", "--each", "month")
	digest := strings.Fields(told[strings.LastIndex(told, "--digest"):])[1]
	// Whoever checks has no repository at all.
	if said := r.in(elsewhere, 0, "audit", "--verify", file, "--digest", digest); !strings.Contains(said, "everything holds") {
		t.Fatalf("the bundle as it was written: %s", said)
	}
	for name, c := range map[string]struct {
		alter func(map[string][]byte)
		want  string
	}{
		"a record": {func(f map[string][]byte) {
			f["records/plant.hcl"] = bytes.Replace(f["records/plant.hcl"], []byte("TIA-568"), []byte("ISO-11801"), 1)
		}, "records/plant.hcl: it differs from commit"},
		"a record left out": {func(f map[string][]byte) { delete(f, "records/plant.hcl") }, "records/plant.hcl: the archive does not hold it"},
		"a record more":     {func(f map[string][]byte) { f["records/more.hcl"] = []byte("space \"1\" {}\n") }, "records/more.hcl: commit"},
		"a figure on the page": {func(f map[string][]byte) {
			f["report/audit.html"] = bytes.Replace(f["report/audit.html"], []byte("<td"), []byte("<td "), 1)
		}, "report/audit.html: it differs from the report made again in line"},
		"a figure for programs": {func(f map[string][]byte) {
			f["report/audit.json"] = bytes.Replace(f["report/audit.json"], []byte(`"commits": 3`), []byte(`"commits": 4`), 1)
		}, "report/audit.json: it differs from the report made again in line"},
		"the day": {func(f map[string][]byte) {
			f["about.json"] = bytes.Replace(f["about.json"], []byte("2026-03-02"), []byte("2026-03-01"), 1)
		}, "report/audit.json: it differs"},
		"the commit": {func(f map[string][]byte) {
			f["about.json"] = bytes.ReplaceAll(f["about.json"], []byte(r.ask("rev-parse", "HEAD")), []byte(r.ask("rev-parse", "HEAD~1")))
		}, "commits.bundle: its last commit is not"},
		"the commits": {func(f map[string][]byte) {
			b := f["commits.bundle"]
			b[len(b)/2] ^= 1
		}, "commits.bundle: git does not take it"},
		"no commits": {func(f map[string][]byte) { delete(f, "commits.bundle") }, "commits.bundle: the archive does not hold it"},
	} {
		t.Run(name, func(t *testing.T) {
			t.Parallel()
			to := filepath.Join(t.TempDir(), "evidence.zip")
			altered(t, file, to, c.alter)
			// In one line, as long as it is.
			said := strings.Join(strings.Fields(r.in(elsewhere, 1, "audit", "--verify", to)), " ")
			if !strings.HasPrefix(said, "does not hold: "+c.want) {
				t.Errorf("said %q, want %q", said, c.want)
			}
			if said := r.in(elsewhere, 1, "audit", "--verify", to, "--digest", digest); !strings.Contains(said, "SHA256SUMS: its SHA-256 is") {
				t.Errorf("the digest tells the two apart: %q", said)
			}
		})
	}
}

// TestRewrittenHistoryIsTold holds what an earlier commit led to against git.
func TestRewrittenHistoryIsTold(t *testing.T) {
	t.Parallel()
	r := newRoom(t)
	r.pastOf(6, 20)
	was := r.ask("rev-parse", "HEAD")
	r.mustGit(r.dir, "tag", "audited-2025")
	r.mustGit(r.dir, "reset", "-q", "--hard", "HEAD~4")
	told := r.audit("--formerly", "audited-2025", "--formerly", "HEAD~1", "--formerly", "0123456789012345678901234567890123456789")
	if len(told.Lost) != 2 {
		t.Fatalf("told %+v", told.Lost)
	}
	var got []string
	for _, c := range told.Lost[0].Commits {
		got = append(got, c.Commit)
	}
	if want := strings.Fields(r.ask("rev-list", "--topo-order", was, "--not", "HEAD")); !slices.Equal(got, want) || told.Lost[0].Ref != "audited-2025" {
		t.Errorf("lost %v, git says %v", got, want)
	}
	if !told.Lost[1].Missing {
		t.Errorf("a commit that is not here: %+v", told.Lost[1])
	}
}

// TestByTodayJudgesTheWholePeriodByOneStandard changes the standard half way: by
// ISO/IEC 11801-1:2017, as by ANSI/TIA-568.2-D, a permanent link has 90 m, and what
// differs is the fire code that the records name.
func TestByTodayJudgesTheWholePeriodByOneStandard(t *testing.T) {
	t.Parallel()
	r := newRoom(t)
	text := func(fire string) string {
		return "plant \"pier\" {\n  standard = \"TIA-568\"\n" + fire + "}\n" +
			"space \"1A\" {\n kind = \"telecommunications-room\"\n}\nspace \"1P\" {\n kind = \"ceiling-void\"\n air = \"plenum\"\n}\n" +
			"cable \"c6a\" {\n category = \"6A\"\n listing = \"CM\"\n}\npathway \"T\" {\n kind = \"tray\"\n through = [\"1A\", \"1P\"]\n}\nrun \"1A-A01\" {\n cable = \"c6a\"\n route = [\"T\"]\n length = \"40 m\"\n}\n"
	}
	for i, fire := range []string{"", "  fire_code = \"NEC-2017\"\n"} {
		r.write("plant.hcl", text(fire))
		r.mustGit(r.dir, "add", ".")
		r.mustGit(r.dir, "commit", "-qm", fmt.Sprint("state ", i))
		r.mustGit(r.dir, "tag", fmt.Sprint("state-", i))
	}
	opened := func(args ...string) string {
		for _, f := range r.audit(args...).Findings {
			if f.Rule == "rating-listing" {
				return r.ask("describe", "--tags", f.Opened.Commit)
			}
		}
		return "never"
	}
	if got := opened(); got != "state-1" {
		t.Errorf("by what each commit states, opened at %s", got)
	}
	if got := opened("--by", "today"); got != "state-0" {
		t.Errorf("by what the last commit states, opened at %s", got)
	}
}
