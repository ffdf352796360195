package cli

import (
	"bytes"
	"context"
	"encoding/json"
	"errors"
	"fmt"
	"os"
	"path/filepath"
	"strings"

	"homerun/diffreport/audit/evidence"
	"homerun/schema"
	"homerun/schema/console"
	"homerun/schema/vcs"
)

// verifyEvidence checks an archive: its digests, its commits, that the records are
// those of the last commit, and that the commits give the report.
func (a *app) verifyEvidence(ctx context.Context, o auditFlags) error {
	page := console.New(a.Out, a.page(ctx, a.Out))
	v := &verification{app: a, flags: o}
	err := v.run(ctx)
	if ctx.Err() != nil {
		return ctx.Err() // what was cut off says nothing about the archive
	}
	if flaw, ok := errors.AsType[*evidence.FlawError](err); ok {
		page.Line(0, 2, console.In(console.Alarm, "does not hold: "), console.Plain(flaw.Error()))
		if page.Err() != nil {
			return page.Err()
		}
		return errObjected
	}
	if err != nil {
		return err
	}
	for _, said := range v.said {
		page.Line(0, 2, console.Plain(said))
	}
	if v.unproved {
		if page.Err() != nil {
			return page.Err()
		}
		return errObjected
	}
	page.Line(0, 2, console.In(console.Strong, "everything holds"))
	return page.Err()
}

// verification is the work of checking one archive.
type verification struct {
	*app
	flags   auditFlags
	archive *evidence.Archive
	// dir is a folder of our own.
	dir   string
	about evidenceAbout
	said  []string
	// unproved is set where nothing is wrong but not everything could be checked.
	unproved bool
}

func (v *verification) tell(format string, args ...any) {
	v.said = append(v.said, fmt.Sprintf(format, args...))
}

func (v *verification) run(ctx context.Context) error {
	file, err := os.Open(v.userPath(v.flags.verify))
	if err != nil {
		return fmt.Errorf("the archive can not be read: %w", err)
	}
	defer func() { _ = file.Close() }()
	info, err := file.Stat()
	if err != nil {
		return fmt.Errorf("the archive can not be read: %w", err)
	}
	if v.archive, err = evidence.Open(file, info.Size()); err != nil {
		return err
	}
	if v.flags.digest != "" && !strings.EqualFold(v.flags.digest, v.archive.Digest) {
		return &evidence.FlawError{Name: evidence.Sums, What: fmt.Sprintf("its SHA-256 is %s, and not the one that was told", v.archive.Digest)}
	}
	v.tell("%d files are as %s lists them", len(v.archive.Names), evidence.Sums)
	if v.flags.digest == "" {
		v.tell("the digest of the list is %s: compare it with the one that was told when the archive was written", v.archive.Digest)
	}
	if err = v.readAbout(); err != nil {
		return err
	}
	if v.dir, err = os.MkdirTemp("", "homerun-*"); err != nil {
		return err
	}
	defer func() { _ = os.RemoveAll(v.dir) }()
	return v.unfold(ctx)
}

// mostAbout is how long the description of an archive may be, and mostEvidence each
// of the files that are compared, in bytes.
const (
	mostAbout    = 1 << 20
	mostEvidence = 256 << 20
)

func (v *verification) readAbout() error {
	data, err := v.archive.Read(evidence.About, mostAbout)
	if err != nil {
		return err
	}
	if err := json.Unmarshal(data, &v.about); err != nil {
		return &evidence.FlawError{Name: evidence.About, What: "it can not be read: " + err.Error()}
	}
	if v.about.Format != evidenceFormat {
		return &evidence.FlawError{Name: evidence.About, What: fmt.Sprintf("it is of form %d, and this program reads form %d", v.about.Format, evidenceFormat)}
	}
	for _, id := range []string{v.about.To, v.about.From} {
		if v.about.To == "" || strings.Trim(id, "0123456789abcdef") != "" {
			return &evidence.FlawError{Name: evidence.About, What: "it names no commit"}
		}
	}
	return nil
}

// unfold takes the commits out of the bundle. Git works out every id anew and
// refuses a bundle in which something is missing.
func (v *verification) unfold(ctx context.Context) error {
	file := filepath.Join(v.dir, "commits")
	if err := v.unpack(evidence.Commits, file); err != nil {
		return err
	}
	repo := filepath.Join(v.dir, "plant")
	// No settings of the user's take part, a bundle starts no program, nothing in it
	// takes the place of something else, and git takes no more memory than this at once.
	env := append(bareEnv(v.Env), "GIT_CONFIG_NOSYSTEM=1", "GIT_CONFIG_GLOBAL="+os.DevNull, "GIT_NO_REPLACE_OBJECTS=1", "GIT_ALLOC_LIMIT=256m")
	fetch := []string{"-C", repo, "-c", "fetch.unpackLimit=1", "-c", "core.bigFileThreshold=16m", "fetch", "--quiet", "--no-auto-gc", "--no-tags", file}
	for _, args := range [][]string{
		{"init", "--quiet", "--bare", "--template=", "--object-format=" + objectFormat(v.about.To), repo},
		append(fetch, evidenceRefs()...),
		{"-C", repo, "symbolic-ref", "HEAD", evidenceHead},
	} {
		if _, err := v.gitWith(ctx, v.dir, env, args...); err != nil {
			return &evidence.FlawError{Name: evidence.Commits, What: "git does not take it: " + schema.Printable(err.Error())}
		}
	}
	inside := *v.app
	inside.stand, inside.Env = repo, env
	if v.about.Today != "" {
		inside.Env = append(inside.Env, "HOMERUN_TODAY="+v.about.Today)
	}
	return v.compare(ctx, &inside)
}

// unpack writes a file of the archive where a program can read it.
func (v *verification) unpack(name, to string) error {
	file, err := os.OpenFile(to, os.O_WRONLY|os.O_CREATE|os.O_EXCL, 0o600)
	if err != nil {
		return err
	}
	return errors.Join(v.archive.Copy(file, name), file.Close())
}

func objectFormat(id string) string {
	const sha256Digits = 64
	if len(id) == sha256Digits {
		return "sha256"
	}
	return "sha1"
}

// compare holds records and report against the commits.
func (v *verification) compare(ctx context.Context, inside *app) error {
	inside.plantFlag = ""
	src, err := inside.open(ctx)
	if err != nil {
		return err
	}
	defer src.close()
	head, err := src.repo.Resolve(ctx, evidenceHead)
	if errors.Is(err, vcs.ErrUnknownRevision) || err == nil && head.ID != v.about.To {
		return &evidence.FlawError{Name: evidence.Commits, What: "its last commit is not " + v.about.To}
	}
	if err != nil {
		return err
	}
	v.tell("git finds every commit whole, up to %s of %s", short(head.ID), head.Committer.When.Format("2006-01-02"))
	records, err := src.recordsAt(ctx, head.ID)
	if err != nil {
		return &evidence.FlawError{Name: evidence.Commits, What: "the records of its last commit can not be read: " + err.Error()}
	}
	if err = v.differing(evidence.Records, records, "commit "+short(head.ID)); err != nil {
		return err
	}
	v.tell("the records are as that commit has them, in files: %d", len(records))
	return v.report(ctx, src)
}

// keys writes the archive's keys where they can be read from.
func (v *verification) keys(dir string) (files []string, err error) {
	for i, name := range v.archive.Under(evidence.Keys) {
		file := filepath.Join(dir, fmt.Sprintf("keys-%d", i))
		if err := v.unpack(name, file); err != nil {
			return nil, err
		}
		files = append(files, file)
	}
	return files, nil
}

// report makes the report again.
func (v *verification) report(ctx context.Context, src *source) error {
	if v.about.RuleSet != ruleSet() {
		v.unproved = true
		v.tell("the report was made with other rules (%s, by %s) than this program has (%s): it was not made again", schema.Printable(v.about.RuleSet), schema.Printable(v.about.Tool), ruleSet())
		return nil
	}
	o := v.flags
	o.by, o.points, o.formerly, o.most = v.about.By, v.about.Each, nil, v.about.Most
	opts, err := o.settle()
	if err != nil {
		return &evidence.FlawError{Name: evidence.About, What: err.Error()}
	}
	opts.rng, opts.name, opts.formerly, opts.plants = rangeOf(&v.about), v.about.Range, v.about.Formerly, v.about.Plants
	opts.tool, opts.branch, opts.protected = v.about.Tool, v.about.Branch, v.about.Protected
	if opts.keys, err = v.keys(v.dir); err != nil {
		return err
	}
	reports, err := src.audits(ctx, opts)
	if err != nil {
		return &evidence.FlawError{Name: evidence.About, What: "the commits give no report: " + err.Error()}
	}
	written, err := evidenceReports(reports, o.most)
	if err != nil {
		return err
	}
	err = v.differing(evidence.Reports, written, "the report made again")
	if flaw, ok := errors.AsType[*evidence.FlawError](err); ok && v.about.Tool != toolVersion() {
		v.unproved = true
		v.tell("%s; it was made by another version (%s) than this one (%s): have it checked with that one", flaw.Error(), schema.Printable(v.about.Tool), toolVersion())
		return nil
	}
	if err != nil {
		return err
	}
	v.tell("the report made again from the commits is the same, in every form")
	return nil
}

// differing finds the first file below a folder that is not as it should be.
func (v *verification) differing(folder string, want []evidence.File, whose string) error {
	known := make(map[string][]byte, len(want))
	for _, f := range want {
		known[f.Name] = f.Data
	}
	for _, name := range v.archive.Under(folder) {
		data, ok := known[name]
		if !ok {
			return &evidence.FlawError{Name: name, What: whose + " has no such file"}
		}
		got, err := v.archive.Read(name, mostEvidence)
		if err != nil {
			return err
		}
		if !bytes.Equal(data, got) {
			return &evidence.FlawError{Name: name, What: fmt.Sprintf("it differs from %s in line %d", whose, lineOfDifference(got, data))}
		}
		delete(known, name)
	}
	for _, f := range want {
		if _, left := known[f.Name]; left {
			return &evidence.FlawError{Name: f.Name, What: "the archive does not hold it, and " + whose + " has it"}
		}
	}
	return nil
}

// lineOfDifference counts the line, from 1, in which two texts first differ.
func lineOfDifference(a, b []byte) int {
	same := 0
	for same < min(len(a), len(b)) && a[same] == b[same] {
		same++
	}
	return bytes.Count(a[:same], []byte("\n")) + 1
}
