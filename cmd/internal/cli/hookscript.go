package cli

import (
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"runtime"
	"slices"
	"strings"

	"homerun/schema/vcs"
)

// The hooks, by git's names for them.
const (
	hookPreCommit      = "pre-commit"
	hookPreMergeCommit = "pre-merge-commit"
	hookPrePush        = "pre-push"
	hookCommitMsg      = "commit-msg"
	hookPreReceive     = "pre-receive"
	hookUpdate         = "update"
)

// hooksFor are the hooks that a repository gets. The first two see a commit
// before it is made: a merge without conflict runs the second and not the first.
// The third sees what was committed past them. A bare repository commits
// nothing: it gets the one that sees what is pushed.
func hooksFor(repo *vcs.Repo) []string {
	if repo.Form().Bare {
		return []string{hookPreReceive}
	}
	return []string{hookPreCommit, hookPreMergeCommit, hookPrePush}
}

// everyHook are all hooks that may be ours.
func everyHook() []string {
	return []string{hookPreCommit, hookPreMergeCommit, hookCommitMsg, hookPrePush, hookPreReceive, hookUpdate}
}

// hookMark is a line by which our own hook is known again.
const hookMark = `# written by "git homerun hook install"`

// keptSuffix is added to the name of a hook that was there before ours.
const keptSuffix = ".before-homerun"

// hookWords are what the program is told in a hook.
func hookWords(name string) string {
	if name == hookPreCommit || name == hookPreMergeCommit {
		return "lint --hook"
	}
	return "hook run " + name + ` "$@"`
}

// hookLines is what hooks that are not ours have to run.
func hookLines(program string, names []string) string {
	lines := make([]string, len(names))
	for i, name := range names {
		lines[i] = name + ": " + shellQuote(filepath.ToSlash(program)) + " " + hookWords(name)
	}
	return strings.Join(lines, "; ")
}

func shellQuote(text string) string { return "'" + strings.ReplaceAll(text, "'", `'\''`) + "'" }

// hearsInput says whether git tells a hook on standard input what it is about.
func hearsInput(name string) bool {
	return slices.Contains([]string{hookPrePush, hookPreReceive}, name)
}

// hookScript is plain sh, which git brings along on every system. It names the
// program by its absolute path, because graphical clients run hooks with
// another PATH than the user's. What git says on standard input is for the
// hook that was there before as well.
func hookScript(name, program string) string {
	keep, feed, run := "", "", "exec "
	if hearsInput(name) {
		keep = "input=$(cat)\n"
		feed, run = `printf '%s\n' "$input" | `, `printf '%s\n' "$input" | `
	}
	return `#!/bin/sh
` + hookMark + `; "git homerun hook uninstall" takes it out.
# ` + hookPurpose(name) + `
` + keep + `before="$(dirname -- "$0")/` + name + keptSuffix + `"
if [ -x "$before" ]; then
	` + feed + `"$before" "$@" || exit $?
fi
program=` + shellQuote(filepath.ToSlash(program)) + `
if [ ! -x "$program" ]; then
	moved=$program
	program=$(command -v git-homerun) || {
		echo "git homerun: the program is gone from $moved and is not on PATH." >&2
		echo "  Install it again, then run: git homerun hook install" >&2
		exit 1
	}
fi
` + run + `"$program" ` + hookWords(name) + `
`
}

func hookPurpose(name string) string {
	switch name {
	case hookPrePush:
		return "It checks what is pushed and refuses what makes the plant worse."
	case hookPreReceive:
		return "It checks what arrives and refuses what makes the plant on a protected branch worse."
	case hookCommitMsg:
		return "It names the work that the commit orders, as a trailer of its message."
	}
	return "It checks what is staged and refuses what makes the plant worse."
}

// percented is a command in which git finds no word of its own.
func percented(command string) string { return strings.ReplaceAll(command, "%", "%%") }

// A state is what a hook is found to be.
type state uint8

const (
	hookMissing state = iota
	hookRight         // ours, or somebody else's that runs git homerun
	hookStale         // ours, of another version or for another program
	hookIdle          // not executable: git passes over it
	hookForeign       // somebody else's
)

// hookState looks at a hook.
func hookState(path, name, program string) (state, error) {
	info, err := os.Stat(path)
	if errors.Is(err, fs.ErrNotExist) {
		return hookMissing, nil
	}
	if err != nil {
		return hookMissing, fmt.Errorf("the hook can not be read: %w", err)
	}
	text, err := os.ReadFile(path)
	switch said := string(text); {
	case err != nil:
		return hookMissing, fmt.Errorf("the hook can not be read: %w", err)
	case runtime.GOOS != "windows" && info.Mode().Perm()&0o111 == 0:
		return hookIdle, nil
	case said == hookScript(name, program):
		return hookRight, nil
	case strings.Contains(said, hookMark):
		return hookStale, nil
	case strings.Contains(said, "homerun"):
		return hookRight, nil
	}
	return hookForeign, nil
}
