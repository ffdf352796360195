package examples

import (
	"embed"
	"fmt"
	"strings"
	"time"

	"golang.org/x/tools/txtar"
)

//go:embed story/*.txtar
var told embed.FS

// A Commit is one commit of the story: what is written and deleted, by whom and
// when. Paths are slash-separated and relative to the plant's folder.
type Commit struct {
	Author, Email string
	When          time.Time
	Subject, Body string
	// Branch is where the commit goes; empty for the main branch. A branch
	// that does not exist yet starts at the main branch.
	Branch string
	// Merge is the branch that the commit merges, or empty.
	Merge string
	// Tag is the name that the commit is given, or empty.
	Tag string
	// Refused is set for an attempt that the hook refuses: its files are
	// taken back, and the next commit starts where it started.
	Refused bool
	// Write holds the whole new content of every file that changes.
	Write map[string]string
	// Delete are the files that go.
	Delete []string
}

// Story returns the commits of Saltmarsh Hall, oldest first. The error names
// what can not be read in the embedded files; a released build has none.
func Story() ([]Commit, error) {
	files, err := told.ReadDir("story")
	if err != nil {
		return nil, fmt.Errorf("story: %w", err)
	}
	commits := make([]Commit, 0, len(files))
	for _, f := range files {
		text, err := told.ReadFile("story/" + f.Name())
		if err != nil {
			return nil, fmt.Errorf("story: %w", err)
		}
		c, err := parse(txtar.Parse(text))
		if err != nil {
			return nil, fmt.Errorf("story: %s: %w", f.Name(), err)
		}
		commits = append(commits, c)
	}
	return commits, nil
}

// parse reads one commit: lines of "name: value", an empty line, the body of
// the message, then the files.
func parse(a *txtar.Archive) (Commit, error) {
	head, body, _ := strings.Cut(string(a.Comment), "\n\n")
	c := Commit{Body: strings.TrimSpace(body), Write: make(map[string]string, len(a.Files))}
	for line := range strings.Lines(head) {
		name, value, ok := strings.Cut(strings.TrimSpace(line), ": ")
		if !ok {
			return c, fmt.Errorf("line %q is no name and value", line)
		}
		if err := c.set(name, value); err != nil {
			return c, err
		}
	}
	for _, f := range a.Files {
		c.Write[f.Name] = string(f.Data)
	}
	if c.Author == "" || c.Subject == "" || c.When.IsZero() {
		return c, fmt.Errorf("author, when and subject are not all there")
	}
	return c, nil
}

func (c *Commit) set(name, value string) (err error) {
	switch name {
	case "author":
		author, email, ok := strings.Cut(strings.TrimSuffix(value, ">"), " <")
		if !ok {
			return fmt.Errorf("author %q has no address", value)
		}
		c.Author, c.Email = author, email
	case "when":
		c.When, err = time.Parse(time.RFC3339, value)
	case "subject":
		c.Subject = value
	case "branch":
		c.Branch = value
	case "merge":
		c.Merge = value
	case "tag":
		c.Tag = value
	case "refused":
		c.Refused = value == "yes"
	case "delete":
		c.Delete = append(c.Delete, value)
	default:
		return fmt.Errorf("%q is nothing that a commit has", name)
	}
	return err
}
