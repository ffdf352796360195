package vcs

import (
	"slices"
	"strings"
)

// dropped names the variables that would change what our questions mean or start a program of somebody's choosing.
func dropped(name string) bool {
	switch name {
	case "GIT_LITERAL_PATHSPECS", "GIT_GLOB_PATHSPECS", "GIT_NOGLOB_PATHSPECS", "GIT_ICASE_PATHSPECS",
		"GIT_EXTERNAL_DIFF", "GIT_DIFF_OPTS", "GIT_OPTIONAL_LOCKS", "GIT_TERMINAL_PROMPT",
		"LC_ALL", "LANGUAGE", "GIT_PAGER":
		return true
	}
	return false
}

// environ is the environment of every child: the caller's, without what would change our questions, in git's own
// English, taking no locks and asking the user nothing. Without leave to fetch, no transport is allowed at all:
// git before 2.45 knows no other way to keep a partial clone from fetching.
func environ(given []string, missing Missing) []string {
	env := slices.DeleteFunc(slices.Clone(given), func(pair string) bool {
		name, _, _ := strings.Cut(pair, "=")
		return dropped(name)
	})
	env = append(env, "LC_ALL=C", "GIT_OPTIONAL_LOCKS=0", "GIT_TERMINAL_PROMPT=0")
	if missing != MissingFetch {
		env = append(env, "GIT_NO_LAZY_FETCH=1", "GIT_ALLOW_PROTOCOL=none")
	}
	return env
}

// Harmless gives the options that stand before a git command, and the environment for it, with which git starts
// nothing that the repository names: no file system monitor, no pager, no transport for what a partial clone lacks.
// Everything that this package asks is asked so; whoever asks git something else says it the same way.
func Harmless(env []string) (options, environment []string) {
	return settings(), environ(env, MissingRefuse)
}

// lookup gives the value of a variable, the last one winning, and whether it is set at all.
func lookup(env []string, name string) (string, bool) {
	for _, pair := range slices.Backward(env) {
		if key, value, _ := strings.Cut(pair, "="); key == name {
			return value, true
		}
	}
	return "", false
}

// settings are put before every command: they switch off whatever a repository's config could add to an answer.
func settings() []string {
	return []string{
		"--no-pager",
		"-c", "core.fsmonitor=false",
		"-c", "core.quotePath=false",
		"-c", "core.bigFileThreshold=16m",
		"-c", "log.showSignature=false",
		"-c", "log.showRoot=true",
		"-c", "log.follow=false",
		"-c", "diff.relative=false",
		"-c", "gc.auto=0",
		"-c", "maintenance.auto=false",
	}
}
