package trail

import (
	"context"
	"fmt"
	"iter"
	"strings"

	"homerun/diffreport/history"
	"homerun/schema"
	"homerun/schema/plant"
	"homerun/schema/vcs"
	"homerun/schema/vcs/pack"
)

// Options say where to look.
type Options struct {
	Repo   *vcs.Repo
	Reader *schema.Reader
	// From is the commit whose history is told.
	From vcs.Commit
	// Plant and Dir are label and folder of the plant: at each commit it is the
	// plant of that label or, where there is none, the one in that folder.
	Plant, Dir string
}

// Trail is one history that is looked at for labels. It is not for several
// goroutines.
type Trail struct {
	Options
	store *pack.Store
	// commits are in the order of the walk, children before their parents.
	commits []vcs.Commit
	trees   map[string]pack.ID
	// plants leads to all versions of every file that makes a folder a plant.
	plants *holding
	labels map[string]*followed
	memory
}

// Open reads the commits and opens the objects. Errors that wrap vcs.ErrUnfit or
// vcs.ErrTooLarge say that the history has to be read commit by commit instead.
func Open(ctx context.Context, o Options) (*Trail, error) {
	t := &Trail{Options: o, trees: make(map[string]pack.ID), labels: make(map[string]*followed), memory: newMemory()}
	var opened error
	done := make(chan struct{})
	go func() {
		defer close(done)
		t.store, opened = o.Repo.Archive()
	}()
	err := t.log(ctx)
	<-done
	if opened != nil {
		return nil, opened
	}
	if err != nil {
		return nil, err
	}
	ids := make(map[pack.ID]bool)
	for _, id := range t.store.Named(schema.PlantFile) {
		ids[id] = true
	}
	if t.plants = t.hold(ids); t.plants.broad {
		return nil, fmt.Errorf("plants in too many folders: %w", vcs.ErrTooLarge)
	}
	return t, nil
}

func (t *Trail) log(ctx context.Context) error {
	for c, err := range t.Repo.Log(ctx, vcs.LogOptions{From: t.From.ID}) {
		if err != nil {
			return err
		}
		tree, ok := pack.ParseID(c.Tree)
		if !ok {
			return fmt.Errorf("commit %s: %w", c.ID, vcs.ErrUnfit)
		}
		t.commits = append(t.commits, c)
		t.trees[c.ID] = tree
	}
	return nil
}

// Steps walks the commits for history.Of.
func (t *Trail) Steps(ctx context.Context) iter.Seq2[history.Step, error] {
	return func(yield func(history.Step, error) bool) {
		for i := range t.commits {
			if err := ctx.Err(); err != nil {
				yield(history.Step{}, context.Cause(ctx))
				return
			}
			if !yield(t.step(&t.commits[i]), nil) {
				return
			}
		}
	}
}

func (t *Trail) step(c *vcs.Commit) history.Step {
	s := history.Step{Revision: Revision(c), Boundary: c.Boundary, Parents: make([]history.Parent, len(c.Parents))}
	for i, id := range c.Parents {
		s.Parents[i].ID = id
	}
	s.Look = func(label string, parent int) (before, after *plant.Plant, err error) {
		if parent < 0 {
			return t.look(label, nil, t.trees[c.ID])
		}
		was := t.trees[c.Parents[parent]]
		return t.look(label, &was, t.trees[c.ID])
	}
	return s
}

// Revision is what a commit says of itself.
func Revision(c *vcs.Commit) history.Revision {
	return history.Revision{
		ID: c.ID, Subject: c.Subject, Author: c.Author.Name, Committer: c.Committer.Name, Time: c.Committer.When,
	}
}

// followed is what is known about one label over all commits.
type followed struct {
	*holding

	label string
	// texts are what a file has to hold, one of them, to hold the label.
	texts []string
	// stated are the blocks of one file version that state a record of the label.
	stated map[pack.ID][]string
}

// follow searches all versions of all files for a label, once.
func (t *Trail) follow(label string) *followed {
	if f := t.labels[label]; f != nil {
		return f
	}
	f := &followed{label: label, texts: writings(label), stated: make(map[pack.ID][]string)}
	f.holding = t.hold(t.store.Blobs(f.texts...))
	t.labels[label] = f
	return f
}

// mayName says whether a text can hold the label in any way of writing it.
func (f *followed) mayName(text string) bool {
	for _, w := range f.texts {
		if strings.Contains(text, w) {
			return true
		}
	}
	return false
}

// writings are texts of which every file that names the label holds one: the
// label in its quotes or before a port's number, or the mark of an escape that
// can stand for anything. Of a label that may be written in several ways it is
// the longest part that may not, and letters that are read as ones of it.
func writings(label string) []string {
	longest, from := "", 0
	for i := range len(label) + 1 {
		if i < len(label) && label[i] > ' ' && label[i] < 0x7f && !strings.ContainsRune(`"\$%{`, rune(label[i])) {
			continue
		}
		if i-from > len(longest) {
			longest = label[from:i]
		}
		from = i + 1
	}
	texts := []string{longest, `\u`, `\U`}
	if longest == label {
		texts = []string{`"` + label + `"`, `"` + label + `:`, `\u`, `\U`}
	}
	for ascii, other := range map[string]string{"K": "\u212a", ";": "\u037e", "`": "\u1fef"} {
		if strings.Contains(longest, ascii) {
			texts = append(texts, other)
		}
	}
	return texts
}
