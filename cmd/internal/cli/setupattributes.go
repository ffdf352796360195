package cli

import (
	"bytes"
	"context"
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path"
	"path/filepath"
	"slices"
	"strings"

	"homerun/schema"
)

// attributesFile is where git looks for attributes, in any folder.
const attributesFile = ".gitattributes"

// attributesMark and attributesLine are what setup writes beside a plant.hcl:
// so the attributes hold for this plant alone and for no other .hcl file of the
// repository. git tells capitals apart, the records do not.
const (
	attributesMark = `# written by "git homerun setup"; "git homerun setup --remove" takes it out`
	attributesLine = "*.[hH][cC][lL] merge=homerun diff=homerun text eol=lf"
)

// mostAttributes bounds a file of attributes, as git does.
const mostAttributes = 100 << 20

// plantFolders are the folders with a plant of the working tree.
func (p *place) plantFolders(ctx context.Context) ([]string, error) {
	snap, err := p.src.worktree(ctx)
	if isNoPlant(err) {
		return nil, nil
	}
	if err != nil {
		return nil, err
	}
	var dirs []string
	for dir := range snap.entries {
		dirs = append(dirs, dir)
	}
	slices.Sort(dirs)
	return dirs, nil
}

func (p *place) setAttributes(ctx context.Context) error {
	dirs, err := p.plantFolders(ctx)
	if err != nil {
		return err
	}
	if len(dirs) == 0 {
		return p.say("there is no plant.hcl here yet: run git homerun setup again when there is\n")
	}
	for _, dir := range dirs {
		name := path.Join(dir, attributesFile)
		text, mode, err := p.attributes(name)
		if err != nil {
			return err
		}
		if slices.Contains(strings.Split(text, "\n"), attributesLine) {
			if err := p.say("attributes are set: %s\n", name); err != nil {
				return err
			}
			continue
		}
		if text != "" && !strings.HasSuffix(text, "\n") {
			text += "\n"
		}
		text += attributesMark + "\n" + attributesLine + "\n"
		if err := replaceFrom(p.repo.GitDir(), p.full(name), []byte(text), mode); err != nil {
			return err
		}
		if err := p.say("attributes are set: %s (commit it, so that every clone has it)\n", name); err != nil {
			return err
		}
	}
	return nil
}

func (p *place) full(name string) string {
	return filepath.Join(p.repo.Top(), filepath.FromSlash(name))
}

// attributes reads a file of attributes; none is an empty one. A link is not
// followed: git does not follow it either.
func (p *place) attributes(name string) (text string, mode fs.FileMode, err error) {
	const fresh = 0o644
	info, err := os.Lstat(p.full(name))
	switch {
	case errors.Is(err, fs.ErrNotExist):
		return "", fresh, nil
	case err != nil:
		return "", 0, fmt.Errorf("the attributes can not be read: %w", err)
	case !info.Mode().IsRegular() || info.Size() > mostAttributes:
		return "", 0, fmt.Errorf("%s is no plain file of attributes: it stays as it is", schema.Printable(name))
	}
	content, err := os.ReadFile(p.full(name))
	if err != nil {
		return "", 0, fmt.Errorf("the attributes can not be read: %w", err)
	}
	return string(content), info.Mode().Perm(), nil
}

func (p *place) unsetAttributes(ctx context.Context) error {
	dirs, err := p.plantFolders(ctx)
	if err != nil {
		return err
	}
	for _, dir := range dirs {
		name := path.Join(dir, attributesFile)
		text, mode, err := p.attributes(name)
		if err != nil {
			return err
		}
		left := slices.DeleteFunc(strings.SplitAfter(text, "\n"), func(line string) bool {
			line = strings.TrimRight(line, "\r\n")
			return line == attributesMark || line == attributesLine
		})
		rest := strings.Join(left, "")
		switch rest {
		case text:
			continue
		case "":
			err = os.Remove(p.full(name))
		default:
			err = replaceFrom(p.repo.GitDir(), p.full(name), []byte(rest), mode)
		}
		if err != nil {
			return err
		}
		if err := p.say("attributes are taken out: %s\n", name); err != nil {
			return err
		}
	}
	return nil
}

// attributesLacking asks git which attributes the records have, wherever they
// are written.
func (p *place) attributesLacking(ctx context.Context) ([]lack, error) {
	snap, err := p.src.worktree(ctx)
	if isNoPlant(err) || err == nil && len(snap.Plants) == 0 {
		return []lack{{"there is no plant.hcl here, so no file has attributes", "write a plant with git homerun init, then " + mendSetup}}, nil
	}
	if err != nil {
		return nil, err
	}
	var ask bytes.Buffer
	for _, entries := range snap.entries {
		for _, e := range entries {
			ask.WriteString(e.Path + "\x00")
		}
	}
	has, err := p.checkAttr(ctx, &ask)
	if err != nil {
		return nil, err
	}
	var lacks []lack
	for _, want := range [][2]string{{"merge", "homerun"}, {"diff", "homerun"}, {"eol", "lf"}} {
		first, n := "", 0
		for file, attributes := range has {
			if attributes[want[0]] != want[1] {
				if n++; first == "" || file < first {
					first = file
				}
			}
		}
		if n > 0 {
			lacks = append(lacks, lack{
				fmt.Sprintf("%s of the records lack the attribute %s=%s, such as %s", files(n), want[0], want[1], schema.Printable(first)),
				mendSetup + "; if it was run, look for a line in .gitattributes that says something else",
			})
		}
	}
	return lacks, nil
}

func files(n int) string {
	if n == 1 {
		return "1 file"
	}
	return fmt.Sprintf("%d files", n)
}

// checkAttr gives the attributes of files, by path and attribute.
func (p *place) checkAttr(ctx context.Context, paths *bytes.Buffer) (map[string]map[string]string, error) {
	out, err := p.gitTold(ctx, p.repo.Top(), paths, "check-attr", "-z", "--stdin", "merge", "diff", "eol")
	if err != nil {
		return nil, err
	}
	has := make(map[string]map[string]string)
	words := strings.Split(out, "\x00")
	for i := 0; i+2 < len(words); i += 3 {
		if has[words[i]] == nil {
			has[words[i]] = make(map[string]string)
		}
		has[words[i]][words[i+1]] = words[i+2]
	}
	return has, nil
}
