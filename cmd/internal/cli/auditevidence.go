package cli

import (
	"bytes"
	"context"
	"encoding/json"
	"fmt"
	"io"
	"os"
	"path/filepath"
	"slices"
	"strings"

	"homerun/diffreport/audit"
	"homerun/diffreport/audit/evidence"
	"homerun/diffreport/render"
	"homerun/schema"
	"homerun/schema/console"
	"homerun/schema/vcs"
)

// evidenceAbout is what a report was made with, so that it can be made again.
type evidenceAbout struct {
	Format int    `json:"format"`
	From   string `json:"from"`
	To     string `json:"to"`
	Range  string `json:"range"`
	Branch string `json:"branch"`
	// Protected is what the settings of the repository said, which no bundle holds.
	Protected bool      `json:"protected"`
	By        string    `json:"by"`
	Each      string    `json:"each"`
	Most      int       `json:"most"`
	Formerly  []earlier `json:"formerly"`
	Today     string    `json:"today"`
	// Plants are those that the report is about.
	Plants  []string `json:"plants"`
	Tool    string   `json:"tool"`
	RuleSet string   `json:"rule_set"`
}

// evidenceFormat is the form of the archives that this program writes.
const evidenceFormat = 1

// bundleEvidence writes the archive and tells its digest.
func (a *app) bundleEvidence(ctx context.Context, src *source, reports []*audit.Report, opts auditOptions, o auditFlags) error {
	if len(reports) == 0 {
		return &noPlantError{message: "there are no cable records to bundle", next: noPlantNext}
	}
	r := reports[0]
	switch {
	case r.Shallow, r.Partial:
		return &usageError{"this clone does not hold all commits, so nobody could check them", "git fetch --unshallow, then try again"}
	case r.Replaced:
		return &usageError{"refs/replace puts other objects in the place of some, and a bundle holds the true ones", "set GIT_NO_REPLACE_OBJECTS=1, then try again"}
	}
	about := evidenceAbout{
		Format: evidenceFormat, From: r.From, To: r.To, Range: r.Range, Branch: r.Branch, Protected: r.Protected, By: o.by, Each: o.points, Most: o.most, Formerly: []earlier{}, Today: r.Today.String(),
		Tool: r.Tool, RuleSet: r.RuleSet,
	}
	for _, r := range reports {
		about.Plants = append(about.Plants, r.Plant)
	}
	for _, e := range r.Formerly {
		about.Formerly = append(about.Formerly, earlier(e))
	}
	files, err := a.evidenceFiles(ctx, src, reports, about, opts.keys)
	if err != nil {
		return err
	}
	var digest string
	if err = a.handOver(ctx, o.bundle, func(w io.Writer) (err error) {
		digest, err = evidence.Pack(w, files, r.End.Time)
		return err
	}); err != nil {
		return err
	}
	if o.bundle == "-" {
		return nil
	}
	page := console.New(a.Out, a.page(ctx, a.Out))
	page.Line(0, 2, console.Plain(fmt.Sprintf("%s holds the records of commit %s, the commits that led there and the report: %d files", schema.Printable(o.bundle), short(r.To), len(files))))
	page.Line(0, 2, console.Plain("keep this digest apart from the file; only with it can the whole be told from another:"))
	page.Line(2, 2, console.Plain(digest))
	page.Line(0, 2, console.Plain("it is checked with: git homerun audit --verify FILE --digest "+digest))
	return page.Err()
}

// evidenceFiles are the files of an archive, in its order.
func (a *app) evidenceFiles(ctx context.Context, src *source, reports []*audit.Report, about evidenceAbout, keys []string) ([]evidence.File, error) {
	said, err := json.MarshalIndent(about, "", "  ")
	if err != nil {
		return nil, err
	}
	files := []evidence.File{{Name: evidence.Notes, Data: []byte(evidenceNotes(&about, reports))}, {Name: evidence.About, Data: append(said, '\n')}}
	records, err := src.recordsAt(ctx, about.To)
	if err != nil {
		return nil, err
	}
	files = append(files, records...)
	written, err := evidenceReports(reports, about.Most)
	if err != nil {
		return nil, err
	}
	commits, err := a.commitsBundle(ctx, src, &about)
	if err != nil {
		return nil, err
	}
	files = append(append(files, written...), evidence.File{Name: evidence.Commits, Data: commits})
	for i, file := range keys {
		data, err := os.ReadFile(file)
		if err != nil {
			return nil, fmt.Errorf("keys: %w", err)
		}
		files = append(files, evidence.File{Name: fmt.Sprintf("%s%d", evidence.Keys, i+1), Data: data})
	}
	return files, nil
}

// recordsAt are all files of records of a commit, as it holds them.
func (s *source) recordsAt(ctx context.Context, commit string) ([]evidence.File, error) {
	entries, err := s.repo.Tree(ctx, commit)
	if err != nil {
		return nil, err
	}
	entries = slices.DeleteFunc(entries, func(e vcs.Entry) bool { return !schema.IsRecords(e.Path) || !e.Regular() })
	var files []evidence.File
	for _, e := range entries {
		data, err := s.repo.Blob(ctx, e.ID)
		if err != nil {
			return nil, fmt.Errorf("%s: %w", e.Path, err)
		}
		files = append(files, evidence.File{Name: evidence.Records + e.Path, Data: data})
	}
	return files, nil
}

// evidenceReports are the report in every form.
func evidenceReports(reports []*audit.Report, most int) ([]evidence.File, error) {
	var files []evidence.File
	for _, form := range []struct {
		name  string
		write func(io.Writer) error
	}{
		{"audit.json", func(w io.Writer) error { return render.AuditJSON(w, reports) }},
		{"audit.txt", func(w io.Writer) error {
			return render.AuditText(w, reports, render.AuditOptions{Most: most})
		}},
		{"audit.html", func(w io.Writer) error { return render.AuditPage(w, reports, most) }},
		{"audit.xlsx", func(w io.Writer) error { return render.AuditWorkbook(w, reports) }},
	} {
		var text bytes.Buffer
		if err := form.write(&text); err != nil {
			return nil, err
		}
		files = append(files, evidence.File{Name: evidence.Reports + form.name, Data: text.Bytes()})
	}
	return files, nil
}

// commitsBundle lets git write the commits, in a repository of its own that
// borrows the user's objects: a bundle holds names, and none is made in the user's.
func (a *app) commitsBundle(ctx context.Context, src *source, about *evidenceAbout) ([]byte, error) {
	dir, err := os.MkdirTemp("", "homerun-*")
	if err != nil {
		return nil, err
	}
	defer func() { _ = os.RemoveAll(dir) }()
	env := bareEnv(a.Env)
	if _, err = a.gitWith(ctx, dir, env, "init", "--quiet", "--bare", "--template=", "--object-format="+src.repo.Form().ObjectFormat, "."); err != nil {
		return nil, err
	}
	objects := filepath.Join(src.repo.CommonDir(), "objects")
	if err = os.WriteFile(filepath.Join(dir, "objects", "info", "alternates"), []byte(objects+"\n"), 0o600); err != nil {
		return nil, err
	}
	names, err := a.evidenceNames(ctx, about)
	if err != nil {
		return nil, err
	}
	args := []string{"-c", "pack.threads=1", "bundle", "create", "--quiet", "commits"}
	for _, n := range names {
		if _, err := a.gitWith(ctx, dir, env, "update-ref", n.Name, n.Commit); err != nil {
			return nil, err
		}
		args = append(args, n.Name)
	}
	if _, err := a.gitWith(ctx, dir, env, args...); err != nil {
		return nil, err
	}
	return os.ReadFile(filepath.Join(dir, "commits"))
}

// The names of commits in a bundle: the last one, the one before the period, and
// what was there earlier.
const (
	evidenceHead     = "refs/heads/audited"
	evidenceBase     = "refs/audited/from"
	evidenceFormerly = "refs/formerly/"
)

// evidenceRefs is what is fetched from a bundle, by name: refs of other kinds could
// put one object in the place of another.
func evidenceRefs() []string {
	refs := []string{evidenceHead, "refs/tags/*", evidenceFormerly + "*", "refs/audited/*"}
	for i, ref := range refs {
		refs[i] = "+" + ref + ":" + ref
	}
	return refs
}

// evidenceNames are the names in a bundle; besides them the tags that lead to
// commits before the last.
func (a *app) evidenceNames(ctx context.Context, about *evidenceAbout) ([]earlier, error) {
	names := []earlier{{evidenceHead, about.To}}
	if about.From != "" {
		names = append(names, earlier{evidenceBase, about.From})
	}
	said, err := a.git(ctx, a.stand, "for-each-ref", "--merged="+about.To, "--format=%(objectname) %(refname)", "refs/tags")
	if err != nil {
		return nil, err
	}
	for line := range strings.Lines(said) {
		id, ref, _ := strings.Cut(strings.TrimSuffix(line, "\n"), " ")
		names = append(names, earlier{ref, id})
	}
	for i, e := range about.Formerly {
		if e.Commit != "" {
			names = append(names, earlier{fmt.Sprint(evidenceFormerly, i+1), e.Commit})
		}
	}
	return names, nil
}

// bareEnv is the environment for a repository of our own, wherever the user's is.
func bareEnv(env []string) []string {
	return slices.DeleteFunc(slices.Clone(env), func(pair string) bool {
		name, _, _ := strings.Cut(pair, "=")
		switch name {
		case "GIT_DIR", "GIT_WORK_TREE", "GIT_INDEX_FILE", "GIT_OBJECT_DIRECTORY", "GIT_ALTERNATE_OBJECT_DIRECTORIES", "GIT_COMMON_DIR", "GIT_PREFIX", "GIT_NAMESPACE", "GIT_SHALLOW_FILE",
			"GIT_QUARANTINE_PATH", "GIT_CONFIG_PARAMETERS", "GIT_CONFIG_COUNT", "GIT_REPLACE_REF_BASE":
			return true
		}
		return false
	})
}

// rangeOf is the period in commits.
func rangeOf(about *evidenceAbout) string {
	if about.From == "" {
		return about.To
	}
	return about.From + ".." + about.To
}
