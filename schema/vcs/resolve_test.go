package vcs_test

import (
	"errors"
	"testing"
	"time"

	"github.com/google/go-cmp/cmp"

	"homerun/schema/vcs"
)

// TestResolveAsGitDoes compares every sort of name with "git rev-list".
func TestResolveAsGitDoes(t *testing.T) {
	t.Parallel()
	r := plant(t)
	r.git("tag", "-am", "As built", "as-built", "HEAD~1")
	r.git("tag", "2019-03-03", "HEAD~2")
	opened := r.open(vcs.ReaderAuto)
	for _, rev := range []string{
		"HEAD", "@", "main", "wing", "HEAD~2", "HEAD^", "HEAD~1^2", "as-built", "as-built^{commit}", "refs/heads/wing",
		"HEAD^{/Correct}", "main@{0}", r.ask("rev-parse", "HEAD~3"), r.ask("rev-parse", "--short", "HEAD"), "2019-03-03",
		r.ask("rev-parse", "as-built"),
	} {
		got, err := opened.Resolve(t.Context(), rev)
		check(t, err)
		if want := r.git("rev-list", "-1", rev, "--"); got.ID+"\n" != want {
			t.Errorf("%s: got %s, git says %s", rev, got.ID, want)
		}
	}
}

// TestResolveRefuses covers what names no single commit, and what could be taken for an option or a range.
func TestResolveRefuses(t *testing.T) {
	t.Parallel()
	r := plant(t)
	opened := r.open(vcs.ReaderAuto)
	for _, rev := range []string{
		"", "nowhere", "HEAD~99", "HEAD..wing", "^HEAD", "--all", "-1", "HEAD wing", "HEAD\nwing", "HEAD:plant.hcl", "HEAD^{tree}",
		"0000000000000000000000000000000000000000", r.ask("rev-parse", "HEAD^{tree}"), "2019-03-03\x00", "2019-02-30", "1999-01-01",
	} {
		if c, err := opened.Resolve(t.Context(), rev); !errors.Is(err, vcs.ErrUnknownRevision) {
			t.Errorf("%q: got %s, %v, want ErrUnknownRevision", rev, c.ID, err)
		}
	}
}

// dated makes commits entered at noon UTC of the days given, and a side branch entered between them and merged.
func dated(t *testing.T) *repo {
	t.Helper()
	r := fresh(t).start()
	at := func(when string) *repo {
		return r.with("GIT_COMMITTER_DATE="+when, "GIT_AUTHOR_DATE=2001-01-01T00:00:00Z")
	}
	at("2019-03-01T12:00:00Z").commit("plant.hcl", "1\n", "first")
	r.git("switch", "-qc", "side")
	at("2019-03-02T12:00:00Z").commit("side.hcl", "1\n", "side")
	r.git("switch", "-q", "main")
	at("2019-03-03T23:30:00Z").commit("plant.hcl", "2\n", "second")
	at("2019-03-05T12:00:00Z").git("merge", "-q", "--no-edit", "-m", "merged", "side")
	return r
}

// TestResolveDates states the contract of dates against the committer's times set by dated.
func TestResolveDates(t *testing.T) {
	t.Parallel()
	r := dated(t)
	east := time.FixedZone("", 2*3600)
	for _, c := range []struct {
		rev  string
		zone *time.Location
		want string
	}{
		{"2019-03-01", nil, "first"},
		{"2019-03-02", nil, "first"}, // the side branch is not on the first-parent line
		{"2019-03-03", nil, "second"},
		{"2019-03-03", east, "first"}, // there the day ends at 22:00 UTC
		{"2019-03-04", east, "second"},
		{"2019-03-03", time.FixedZone("", 1800), "first"}, // entered as the next day began there
		{"2019-03-03T23:29:59Z", nil, "first"},
		{"2019-03-03T23:30:00Z", nil, "second"}, // at that very second counts
		{"2019-03-04T01:30:00+02:00", nil, "second"},
		{"2019-03-04T01:29:59+02:00", nil, "first"},
		{"2019-03-04T01:30", east, "second"},
		{"2030-01-01", nil, "merged"},
	} {
		opened, err := vcs.Open(t.Context(), vcs.Options{Dir: r.dir, Env: r.env, Zone: c.zone})
		check(t, err)
		got, err := opened.Resolve(t.Context(), c.rev)
		check(t, err)
		if got.Subject != c.want {
			t.Errorf("%s in %v: got %q, want %q", c.rev, c.zone, got.Subject, c.want)
		}
		check(t, opened.Close())
	}
	if _, err := r.open(vcs.ReaderAuto).Resolve(t.Context(), "2019-02-28"); !errors.Is(err, vcs.ErrUnknownRevision) {
		t.Errorf("before the first commit: got %v, want ErrUnknownRevision", err)
	}
}

// TestLogOptions states the contract of LogOptions against the history that dated makes.
func TestLogOptions(t *testing.T) {
	t.Parallel()
	r := dated(t)
	day := func(d int) time.Time { return time.Date(2019, 3, d, 12, 0, 0, 0, time.UTC) }
	opened := r.in(r.dir).open(vcs.ReaderAuto)
	for _, c := range []struct {
		name string
		o    vcs.LogOptions
		want []string
	}{
		{"all", vcs.LogOptions{}, []string{"merged", "side", "second", "first"}},
		{"first parent", vcs.LogOptions{FirstParent: true}, []string{"merged", "second", "first"}},
		{"from", vcs.LogOptions{From: "side"}, []string{"side", "first"}},
		{"not", vcs.LogOptions{Not: []string{"side"}}, []string{"merged", "second"}},
		{"max", vcs.LogOptions{Max: 1}, []string{"merged"}},
		{"since, inclusive", vcs.LogOptions{Since: day(2)}, []string{"merged", "side", "second"}},
		{"until, inclusive", vcs.LogOptions{Until: day(2)}, []string{"side", "first"}},
		{"path", vcs.LogOptions{Paths: []string{"plant.hcl"}, FirstParent: true}, []string{"second", "first"}},
		{"path on a side", vcs.LogOptions{Paths: []string{"side.hcl"}}, []string{"merged", "side"}},
		{"path is no pattern", vcs.LogOptions{Paths: []string{"*.hcl"}}, nil},
	} {
		var got []string
		for commit, err := range opened.Log(t.Context(), c.o) {
			check(t, err)
			got = append(got, commit.Subject)
		}
		if diff := cmp.Diff(c.want, got); diff != "" {
			t.Errorf("%s (-want +got):\n%s", c.name, diff)
		}
	}
}

// TestLogEndsAtShallowBoundary proves that a walk through a shallow clone ends without error and says where.
func TestLogEndsAtShallowBoundary(t *testing.T) {
	t.Parallel()
	for _, form := range forms {
		if form.name != "shallow" {
			continue
		}
		r := form.make(fresh(t))
		opened := r.open(vcs.ReaderAuto)
		if !opened.Form().Shallow {
			t.Error("a shallow clone does not say so")
		}
		boundaries := 0
		for c, err := range opened.Log(t.Context(), vcs.LogOptions{}) {
			check(t, err)
			if c.Boundary {
				boundaries++
			}
		}
		// "git clone --depth=2" of this history cuts one merge: its commit keeps no parents.
		if boundaries != 1 {
			t.Errorf("%d boundary commits, want 1", boundaries)
		}
	}
}

// TestMergeBase compares with "git merge-base".
func TestMergeBase(t *testing.T) {
	t.Parallel()
	r := dated(t)
	r.git("switch", "-q", "--orphan", "lost")
	r.git("commit", "-q", "--allow-empty", "-m", "lost")
	opened := r.open(vcs.ReaderAuto)
	got, err := opened.MergeBase(t.Context(), "main~1", "side")
	check(t, err)
	if want := r.ask("merge-base", "main~1", "side"); got != want {
		t.Errorf("got %s, git says %s", got, want)
	}
	if _, err := opened.MergeBase(t.Context(), "main", "lost"); !errors.Is(err, vcs.ErrNoMergeBase) {
		t.Errorf("got %v, want ErrNoMergeBase", err)
	}
}
