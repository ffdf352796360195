package cli

import (
	"cmp"
	"context"
	"crypto/sha256"
	"errors"
	"fmt"
	"runtime/debug"
	"slices"

	"homerun/diffreport/audit"
	"homerun/diffreport/history"
	"homerun/lint/rules"
	"homerun/schema/plant"
	"homerun/schema/vcs"
)

// auditOptions are what the flags of an audit say.
type auditOptions struct {
	// rng is the range to read, name what the user calls it.
	rng, name string
	by        audit.By
	points    audit.Points
	formerly  []earlier
	// keys are files of keys to check signatures with.
	keys []string
	// plants keeps only plants of these names, and tool is told instead of this
	// program's version, and branch instead of what the range names; all are for making a report again.
	plants       []string
	tool, branch string
	protected    bool
}

// audits makes a report of every plant that the last commit holds and the user
// asked for.
func (s *source) audits(ctx context.Context, o auditOptions) ([]*audit.Report, error) {
	period, err := s.period(ctx, o.rng, o.name)
	if err != nil {
		return nil, err
	}
	listed := make(chan error, 1)
	go func() { listed <- s.list(ctx, period) }() // git walks while the records are read
	head, failed := s.commit(ctx, period.head)
	if err = cmp.Or(<-listed, failed); err != nil {
		return nil, err
	}
	about, err := s.about(ctx, period, o)
	if err != nil {
		return nil, err
	}
	verdicts, err := s.verdicts(ctx, period, o.keys)
	if err != nil {
		return nil, err
	}
	tags, err := s.repo.Tags(ctx)
	if err != nil {
		return nil, err
	}
	if o.tool != "" {
		about.Tool, about.Branch, about.Protected = o.tool, o.branch, o.protected
	}
	chosen := head.Plants
	s.all = true
	if len(o.plants) > 0 {
		if head, err = s.commit(ctx, period.head); err != nil {
			return nil, err
		}
		chosen = slices.DeleteFunc(head.Plants, func(p *plant.Plant) bool { return !slices.Contains(o.plants, p.Name()) })
	}
	var reports []*audit.Report
	for _, p := range chosen {
		w := &auditWalk{source: s, like: p, by: o.by, tags: tags, verdicts: verdicts}
		w.kept = w.keep(period, o)
		into := audit.New(audit.Options{Points: o.points})
		if err := w.walk(ctx, period, into); err != nil {
			return nil, err
		}
		about.Plant, about.Several, about.Stated = p.Name(), head.several, w.editions
		reports = append(reports, into.Report(about, p))
	}
	return reports, nil
}

func (s *source) about(ctx context.Context, period *auditPeriod, o auditOptions) (audit.About, error) {
	form := s.repo.Form()
	about := audit.About{
		Range: period.name, Branch: period.branch, Protected: period.protected, From: period.base.ID, To: period.head.ID, By: o.by, Keys: len(o.keys) > 0,
		Tool: toolVersion(), RuleSet: ruleSet(), RuleCount: len(rules.All()),
		Shallow: form.Shallow, Partial: form.Partial, Replaced: form.Replaced,
	}
	var err error
	if about.Today, err = s.app.today(); err != nil {
		return about, err
	}
	about.Formerly, about.Lost, err = s.lost(ctx, period.head, o.formerly)
	return about, err
}

// ruleSet is a digest of every rule and its page: two reports with the same one
// were made with the same rules, as far as their pages tell.
func ruleSet() string {
	sum := sha256.New()
	for _, r := range rules.All() {
		_, _ = fmt.Fprintf(sum, "%s\x00%s\x00%s\x00%t\x00%t\n", r.Name, r.Title, r.Severity, r.Safety, r.Change) // a digest takes everything
		if page, ok := rules.PageOf(r.Name); ok {
			_, _ = fmt.Fprintf(sum, "%+v\n", page)
		}
	}
	return fmt.Sprintf("%x", sum.Sum(nil))[:16]
}

// toolVersion is what the build says about itself.
func toolVersion() string {
	info, ok := debug.ReadBuildInfo()
	if !ok {
		return "unknown"
	}
	version := info.Main.Version
	if version == "" || version == "(devel)" {
		version = "built from source"
	}
	for _, s := range info.Settings {
		if s.Key == "vcs.revision" {
			version += " at " + short(s.Value)
		}
		if s.Key == "vcs.modified" && s.Value == "true" {
			version += ", modified"
		}
	}
	return version
}

// verdicts checks the signatures of the period; without keys none is checked.
func (s *source) verdicts(ctx context.Context, period *auditPeriod, files []string) (map[string]vcs.Verdict, error) {
	if len(files) == 0 {
		return nil, nil
	}
	s.app.progress.say("checking signatures")
	keys, err := vcs.OpenKeys(ctx, files...)
	if err != nil {
		return nil, err
	}
	verdicts, err := s.repo.Verdicts(ctx, period.commits, keys)
	return verdicts, errors.Join(err, keys.Close())
}

// signature is what is known of a commit's signature.
func (w *auditWalk) signature(c vcs.Commit) history.Signature {
	return signatureOf(c, w.verdicts)
}

// signatureOf is what is known of a commit's signature, where verdicts were given.
func signatureOf(c vcs.Commit, verdicts map[string]vcs.Verdict) history.Signature {
	switch verdicts[c.ID] {
	case vcs.VerdictGood:
		return history.Good
	case vcs.VerdictBad:
		return history.Bad
	case vcs.VerdictUnknownKey:
		return history.UnknownKey
	case vcs.VerdictExpired:
		return history.ExpiredKey
	case vcs.VerdictRevoked:
		return history.RevokedKey
	case vcs.VerdictNone, vcs.VerdictUnchecked:
	}
	if !c.Signed {
		return history.Unsigned
	}
	return history.NotChecked
}

// edition notes what the plant's record states, where that differs from before.
func (w *auditWalk) edition(c vcs.Commit, f *auditFact) {
	if !w.main[c.ID] {
		return
	}
	e := audit.Edition{Revision: revisionOf(c), Standard: f.Standard, FireCode: f.FireCode}
	if n := len(w.editions); n > 0 && w.editions[n-1].Standard == e.Standard && w.editions[n-1].FireCode == e.FireCode {
		return
	}
	w.editions = append(w.editions, e)
}

func revisionOf(c vcs.Commit) history.Revision {
	return history.Revision{ID: c.ID, Subject: c.Subject, Author: c.Author.Name, Committer: c.Committer.Name, Time: c.Committer.When}
}
