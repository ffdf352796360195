package vcs

import (
	"os"
	"path/filepath"
	"strings"
)

// FolderAside gives a folder for files that are being written and shall get to their places below dir when they are
// whole. It is the git folder of the repository that dir lies in, where git looks for nothing to add, or "" where no
// repository is seen from dir. Unlike Open it looks at folders alone, and starts nothing; where git was told by its
// environment that the repository is elsewhere, Repo.GitDir knows.
func FolderAside(dir string) string {
	for at := dir; ; at = filepath.Dir(at) {
		if found := gitFolder(filepath.Join(at, ".git")); found != "" {
			return found
		}
		if at == filepath.Dir(at) {
			return ""
		}
	}
}

// gitFolder follows the file that stands for the git folder in linked work trees and submodules, see
// gitrepository-layout(5). What is no git folder is "".
func gitFolder(path string) string {
	const longest = 1 << 16
	info, err := os.Stat(path)
	if err == nil && info.Mode().IsRegular() && info.Size() < longest {
		text, _ := os.ReadFile(path)
		where, found := strings.CutPrefix(strings.TrimRight(string(text), "\r\n"), "gitdir: ")
		if !found {
			return ""
		}
		if !filepath.IsAbs(where) {
			where = filepath.Join(filepath.Dir(path), where)
		}
		path = where
	}
	if !exists(filepath.Join(path, "HEAD")) {
		return ""
	}
	return path
}
