package vcs

import (
	"context"
	"errors"
	"fmt"
	"path"
	"path/filepath"
	"strings"
)

// place is where a repository lies; all paths are absolute but prefix.
type place struct {
	gitDir, commonDir, objects, index, hooks, shallowFile string

	objectFormat  string
	bare, shallow bool
	prefix, top   string
}

// questions are put to git in one command. The top of the work tree stands last: it alone may fail, in a bare
// repository and inside .git, after everything else was answered.
func questions() []string {
	return []string{
		"rev-parse", "--path-format=absolute",
		"--git-dir", "--git-common-dir",
		"--git-path", "objects", "--git-path", "index", "--git-path", "hooks", "--git-path", "shallow",
		"--show-object-format", "--is-bare-repository", "--is-shallow-repository",
		"--show-prefix", "--show-toplevel",
	}
}

// discover asks git where the repository lies. Git decides here who may read it.
func discover(ctx context.Context, git *runner) (place, error) {
	const withoutTop = 10
	text, err := git.output(ctx, questions()...)
	lines := strings.Split(strings.TrimSuffix(string(text), "\n"), "\n")
	if errors.Is(err, ErrNoWorktree) && len(lines) == withoutTop {
		lines, err = append(lines, ""), nil
	}
	if err == nil && len(lines) != withoutTop+1 {
		err = errors.New("the path of the repository holds a line break")
	}
	if err != nil {
		return place{}, fmt.Errorf("open repository: %w", err)
	}
	at := place{
		gitDir: lines[0], commonDir: lines[1], objects: lines[2], index: lines[3], hooks: lines[4], shallowFile: lines[5],
		objectFormat: lines[6], bare: lines[7] == "true", shallow: lines[8] == "true",
		prefix: strings.TrimSuffix(lines[9], "/"), top: lines[10],
	}
	at.prefix = standing(at, git.env)
	return at, nil
}

// standing finds where the user stands below the top. GIT_PREFIX counts only at the top, where git leaves hooks
// and aliases: a script that moved on from there knows better where it stands.
func standing(at place, env []string) string {
	given, _ := lookup(env, "GIT_PREFIX")
	if at.prefix != "" || at.top == "" || given == "" || path.IsAbs(filepath.ToSlash(given)) {
		return at.prefix
	}
	clean := path.Clean(given)
	if clean == "." || clean == ".." || strings.HasPrefix(clean, "../") {
		return ""
	}
	return clean
}

// hexID reports whether s is a full object id in lower case.
func hexID(s string) bool {
	if len(s) != 40 && len(s) != 64 {
		return false
	}
	return strings.Trim(s, "0123456789abcdef") == ""
}
