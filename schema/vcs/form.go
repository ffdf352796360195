package vcs

import (
	"errors"
	"fmt"
	"io"
	"os"
	"path/filepath"
	"strings"

	"github.com/go-git/go-git/v5/plumbing/format/config"
)

// examine tells the form of the repository from what lies in its folders, and why the reader in this process must
// not be used on it; nil where it may. Every reason was seen to give a wrong or missing answer there.
func examine(at place, git *runner) (Form, error) {
	form := Form{ObjectFormat: at.objectFormat, Bare: at.bare, Shallow: at.shallow}
	_, ignoring := lookup(git.env, "GIT_NO_REPLACE_OBJECTS")
	form.Replaced = !ignoring && replaced(at.commonDir)
	packs, _ := filepath.Glob(filepath.Join(globQuote(at.objects), "pack", "*.promisor"))
	extension, err := extensions(at)
	form.Partial = len(packs) > 0 || extension == "partialclone"
	switch {
	case err != nil:
	case at.objectFormat != "sha1":
		err = fmt.Errorf("objects are %s", at.objectFormat)
	case form.Shallow:
		err = errors.New("shallow clone")
	case form.Partial:
		err = errors.New("partial clone")
	case form.Replaced:
		err = errors.New("refs/replace in use")
	case extension != "":
		err = fmt.Errorf("extension %s", extension)
	default:
		err = elsewhere(at, git.env)
	}
	return form, err
}

// elsewhere finds objects or parents that come from outside the object folder.
func elsewhere(at place, env []string) error {
	for _, file := range []string{"alternates", "http-alternates"} {
		if exists(filepath.Join(at.objects, "info", file)) {
			return errors.New("objects of another repository (" + file + ")")
		}
	}
	if exists(filepath.Join(at.commonDir, "info", "grafts")) {
		return errors.New("grafts")
	}
	for _, name := range []string{
		"GIT_OBJECT_DIRECTORY", "GIT_ALTERNATE_OBJECT_DIRECTORIES", "GIT_QUARANTINE_PATH", "GIT_NAMESPACE",
		"GIT_SHALLOW_FILE", "GIT_GRAFT_FILE", "GIT_REPLACE_REF_BASE",
	} {
		if _, set := lookup(env, name); set {
			return fmt.Errorf("%s is set", name)
		}
	}
	return nil
}

// extensions gives the first extension of the repository format that changes how it is read, "" for none. Git too
// reads these from the repository's own config file alone.
func extensions(at place) (string, error) {
	file, err := os.Open(filepath.Join(at.commonDir, "config"))
	if errors.Is(err, os.ErrNotExist) {
		return "", nil
	}
	if err != nil {
		return "", err
	}
	defer func() { _ = file.Close() }()
	return extension(file)
}

// extension reads the first such extension from a config file.
func extension(file io.Reader) (string, error) {
	cfg := config.New()
	if err := guard(func() error { return config.NewDecoder(file).Decode(cfg) }); err != nil {
		return "", fmt.Errorf("config: %w", err)
	}
	for _, option := range cfg.Section("extensions").Options {
		switch name := strings.ToLower(option.Key); name {
		case "objectformat", "noop", "preciousobjects":
		default:
			return name, nil
		}
	}
	return "", nil
}

// replaced reports whether the repository holds replacement refs, loose or packed.
func replaced(commonDir string) bool {
	loose, _ := os.ReadDir(filepath.Join(commonDir, "refs", "replace"))
	if len(loose) > 0 {
		return true
	}
	packed, _ := os.ReadFile(filepath.Join(commonDir, "packed-refs"))
	return strings.Contains(string(packed), " refs/replace/")
}

func exists(path string) bool {
	_, err := os.Lstat(path)
	return err == nil
}

// globQuote keeps the brackets and stars of a folder's name from being read as a pattern.
func globQuote(path string) string {
	return strings.NewReplacer("[", "[[]", "*", "[*]", "?", "[?]").Replace(path)
}

// guard runs a decoder that is not ours: what it would panic over is an error, since the content is untrusted.
func guard(decode func() error) (err error) {
	defer func() {
		if cause := recover(); cause != nil {
			err = fmt.Errorf("decoder failed: %v", cause)
		}
	}()
	return decode()
}
