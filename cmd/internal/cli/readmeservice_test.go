package cli_test

import (
	"errors"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"strings"
	"testing"
)

// TestReadmeHostingServices runs what the README tells hosting services to run, in
// a clone as they make it: detached, with the branch to merge into as a remote one.
// What is new ends the job with status 1, what stood before does not.
func TestReadmeHostingServices(t *testing.T) {
	t.Parallel()
	page, err := os.ReadFile(readme)
	must(t, err)
	_, section, found := strings.Cut(string(page), "## On a hosting service\n")
	section, _, _ = strings.Cut(section, "\n## ")
	commands := regexp.MustCompile(`(?m)^ *- (?:run: )?(git homerun .*)$`).FindAllStringSubmatch(section, -1)
	if !found || len(commands) < 2 {
		t.Fatalf("the README shows %d commands for hosting services", len(commands))
	}
	dir := t.TempDir()
	self, err := os.Executable()
	must(t, err)
	must(t, os.Symlink(self, filepath.Join(dir, "git-homerun")))
	env := append(os.Environ(), "PATH="+dir+string(os.PathListSeparator)+os.Getenv("PATH"), "HOME="+dir, "GIT_CONFIG_NOSYSTEM=1", "HOMERUN_TODAY=2026-03-02",
		"GITHUB_BASE_REF=main", "CI_MERGE_REQUEST_TARGET_BRANCH_NAME=main",
		"GIT_AUTHOR_NAME=Keeper", "GIT_AUTHOR_EMAIL=keeper@pier.example", "GIT_COMMITTER_NAME=Keeper", "GIT_COMMITTER_EMAIL=keeper@pier.example")
	shell := func(in, line string) (string, error) {
		cmd := exec.Command("sh", "-c", line)
		cmd.Dir, cmd.Env = in, env
		text, failed := cmd.CombinedOutput()
		return string(text), failed
	}
	said, err := shell(dir, `set -e
git init -q -b main pier && cd pier
printf 'plant "pier" {\n  standard = "TIA-568"\n}\n' >plant.hcl
printf 'space "1A" {\n  kind = "corridor"\n  flor = "1"\n}\n' >old.hcl
git add . && git commit -qm 'an old fault'
git switch -qc right && git commit -q --allow-empty -m 'nothing'
git switch -qc wrong && printf 'space "1B" {\n  knd = "corridor"\n}\n' >new.hcl
git add . && git commit -qm 'a new fault'
cd .. && git clone -q pier job && cd job && git switch -q --detach origin/right`)
	if err != nil {
		t.Fatalf("%v\n%s", err, said)
	}
	job := filepath.Join(dir, "job")
	for _, c := range commands {
		if said, err := shell(job, "git switch -q --detach origin/right && "+c[1]); err != nil {
			t.Errorf("%s, with nothing new: %v\n%s", c[1], err, said)
		}
		said, err := shell(job, "git switch -q --detach origin/wrong && "+c[1]+"; status=$?; cat quality.json 2>/dev/null; exit $status")
		// A report of code quality holds everything: the service compares two of them.
		whole := strings.Contains(c[1], "quality")
		exit, _ := errors.AsType[*exec.ExitError](err)
		if exit == nil || exit.ExitCode() != 1 || !strings.Contains(said, "new.hcl") || strings.Contains(said, "old.hcl") != whole {
			t.Errorf("%s, with a new fault: %v\n%s", c[1], err, said)
		}
	}
}
