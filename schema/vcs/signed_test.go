package vcs_test

import (
	"testing"

	"homerun/schema/vcs"
)

// TestSigned tells a commit with a signature from one that only speaks of it.
func TestSigned(t *testing.T) {
	t.Parallel()
	r := plant(t)
	const who = " Åsa <a@example.org> 1551600000 +0130\n"
	opened := r.open(vcs.ReaderAuto)
	for name, c := range map[string]struct {
		headers, message string
		want             bool
	}{
		"unsigned":                {"", "subject\n", false},
		"signed":                  {"gpgsig -----BEGIN\n \n -----END\n", "subject\n", true},
		"signed by the other way": {"gpgsig-sha256 -----BEGIN\n -----END\n", "subject\n", true},
		"only in the message":     {"", "subject\n\ngpgsig -----BEGIN\n", false},
	} {
		id := r.store("tree " + r.ask("rev-parse", "HEAD^{tree}") + "\nauthor" + who + "committer" + who + c.headers + "\n" + c.message)
		got, err := opened.Signed(t.Context(), id)
		check(t, err)
		if got != c.want {
			t.Errorf("%s: signed %v, want %v", name, got, c.want)
		}
		commit, err := opened.Resolve(t.Context(), id)
		check(t, err)
		if commit.Signed != c.want {
			t.Errorf("%s: the commit says signed %v, want %v", name, commit.Signed, c.want)
		}
		for logged, err := range opened.Log(t.Context(), vcs.LogOptions{From: id}) {
			check(t, err)
			if logged.Signed != c.want {
				t.Errorf("%s: the log says signed %v, want %v", name, logged.Signed, c.want)
			}
		}
	}
	if _, err := opened.Signed(t.Context(), "0123456789012345678901234567890123456789"); err == nil {
		t.Error("a commit that is not there is neither signed nor unsigned")
	}
}
