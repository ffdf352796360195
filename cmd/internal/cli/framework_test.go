package cli_test

import (
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"
)

// A framework is a folder with what the hook framework needs: its cache, a
// repository that offers the project's manifest, and one with records that asks
// for a hook of it.
type framework struct {
	t       *testing.T
	records string
	bin     string
	env     []string
}

// newFramework builds both repositories; offer writes what the one holds that
// has the manifest.
func newFramework(t *testing.T, id string, offer func(dir string)) *framework {
	t.Helper()
	if _, err := exec.LookPath("pre-commit"); err != nil {
		t.Skip("pre-commit is not installed")
	}
	dir := t.TempDir()
	bin := filepath.Join(dir, "bin")
	fw := &framework{t: t, records: filepath.Join(dir, "records"), bin: bin}
	fw.env = append(os.Environ(), "PATH="+bin+string(os.PathListSeparator)+os.Getenv("PATH"), "HOME="+dir, "PRE_COMMIT_HOME="+filepath.Join(dir, "cache"),
		"GIT_CONFIG_NOSYSTEM=1", "GIT_CONFIG_GLOBAL="+filepath.Join(dir, "none"), "HOMERUN_TODAY=2026-03-02", "SKIP=", "GIT_ALLOW_PROTOCOL=file",
		"GIT_AUTHOR_NAME=Keeper", "GIT_AUTHOR_EMAIL=keeper@pier.example", "GIT_COMMITTER_NAME=Keeper", "GIT_COMMITTER_EMAIL=keeper@pier.example")
	// The test binary is git-homerun when it is called by that name.
	self, err := os.Executable()
	must(t, err)
	must(t, os.Mkdir(bin, 0o755))
	must(t, os.Symlink(self, filepath.Join(bin, "git-homerun")))
	offered := filepath.Join(dir, "offered")
	must(t, os.Mkdir(offered, 0o755))
	offer(offered)
	fw.git(offered, "init", "-q")
	fw.git(offered, "add", "-A")
	fw.git(offered, "commit", "-qm", "Offer")
	must(t, os.Mkdir(fw.records, 0o755))
	fw.git(fw.records, "init", "-q")
	fw.write(".pre-commit-config.yaml", "repos:\n- repo: "+offered+"\n  rev: "+strings.TrimSpace(fw.git(offered, "rev-parse", "HEAD"))+"\n  hooks:\n  - id: "+id+"\n")
	fw.run(fw.records, "pre-commit", "install")
	return fw
}

func must(t *testing.T, err error) {
	t.Helper()
	if err != nil {
		t.Fatal(err)
	}
}

func (fw *framework) write(name, text string) {
	fw.t.Helper()
	must(fw.t, os.WriteFile(filepath.Join(fw.records, name), []byte(text), 0o644))
}

func (fw *framework) try(dir, program string, args ...string) (string, error) {
	cmd := exec.Command(program, args...)
	cmd.Dir, cmd.Env = dir, fw.env
	said, err := cmd.CombinedOutput()
	return string(said), err
}

func (fw *framework) run(dir, program string, args ...string) string {
	fw.t.Helper()
	said, err := fw.try(dir, program, args...)
	if err != nil {
		fw.t.Fatalf("%s %v: %v\n%s", program, args, err, said)
	}
	return said
}

func (fw *framework) git(dir string, args ...string) string {
	fw.t.Helper()
	return fw.run(dir, "git", args...)
}

// commits commits a right plant and tries a wrong one, a wrong one that is only
// saved, and the deletion of a record that another refers to.
func (fw *framework) commits() {
	t := fw.t
	t.Helper()
	fw.write("plant.hcl", "plant \"pier\" {\n  standard = \"TIA-568\"\n}\n")
	fw.write("spaces.hcl", "space \"1A\" {\n  kind = \"telecommunications-room\"\n}\n")
	fw.write("panels.hcl", "panel \"1A-A\" {\n  space = \"1A\"\n  ports = 24\n}\n")
	fw.git(fw.records, "add", "-A")
	fw.git(fw.records, "commit", "-qm", "Survey")
	fw.write("panels.hcl", "panel \"1A-A\" {\n  space = \"1A\"\n  prots = 24\n}\n")
	if said, err := fw.try(fw.records, "git", "commit", "-qam", "Wrong"); err == nil || !strings.Contains(said, "did you mean ports?") {
		t.Errorf("a wrong panel: %v\n%s", err, said)
	}
	fw.git(fw.records, "reset", "-q")
	fw.write("note.txt", "text\n")
	fw.git(fw.records, "add", "note.txt")
	fw.git(fw.records, "commit", "-qm", "The wrong panel is not staged")
	fw.git(fw.records, "checkout", "-q", "panels.hcl")
	fw.git(fw.records, "rm", "-q", "spaces.hcl")
	if said, err := fw.try(fw.records, "git", "commit", "-qm", "No room left"); err == nil || !strings.Contains(said, "1A-A") {
		t.Errorf("a room taken out from around a panel: %v\n%s", err, said)
	}
}

// TestFrameworkRunsInstalledHook runs the framework itself with the manifest that
// the project offers, and the program on PATH.
func TestFrameworkRunsInstalledHook(t *testing.T) {
	t.Parallel()
	manifest, err := os.ReadFile("../../../.pre-commit-hooks.yaml")
	must(t, err)
	newFramework(t, "homerun-installed", func(dir string) {
		must(t, os.WriteFile(filepath.Join(dir, ".pre-commit-hooks.yaml"), manifest, 0o644))
	}).commits()
}

// TestFrameworkBuildsHook lets the framework build the program from the
// project's files, as it does on a machine that does not have it.
func TestFrameworkBuildsHook(t *testing.T) {
	t.Parallel()
	if testing.Short() {
		t.Skip("builds the program")
	}
	fw := newFramework(t, "homerun", func(dir string) {
		must(t, copyTracked("../../..", dir))
	})
	must(t, os.Remove(filepath.Join(fw.bin, "git-homerun"))) // it has to be the one that is built
	cache, err := exec.Command("go", "env", "GOMODCACHE", "GOCACHE").Output()
	must(t, err)
	folders := strings.Fields(string(cache))
	// Nothing is fetched: what the build needs is in the module cache. From the
	// same folder it is compiled already, too; from a copy it would not be.
	fw.env = append(fw.env, "GOPROXY=off", "GOMODCACHE="+folders[0], "GOCACHE="+folders[1], "GOFLAGS=-mod=mod", "GOSUMDB=off")
	fw.commits()
}

// copyTracked copies the files that git tracks.
func copyTracked(from, to string) error {
	names, err := exec.Command("git", "-C", from, "ls-files", "-z").Output()
	if err != nil {
		return err
	}
	for name := range strings.SplitSeq(strings.Trim(string(names), "\x00"), "\x00") {
		text, err := os.ReadFile(filepath.Join(from, name))
		if os.IsNotExist(err) {
			continue
		}
		if err != nil {
			return err
		}
		if err := os.MkdirAll(filepath.Join(to, filepath.Dir(name)), 0o755); err != nil {
			return err
		}
		if err := os.WriteFile(filepath.Join(to, name), text, 0o644); err != nil {
			return err
		}
	}
	return nil
}
