package trail

import (
	"context"
	"iter"
	"path"
	"slices"
	"sync"

	"homerun/diffreport/history"
	"homerun/schema"
	"homerun/schema/plant"
	"homerun/schema/vcs"
)

// Options say where to look.
type Options struct {
	Repo   *vcs.Repo
	Reader *schema.Reader
	// From is the id of the commit whose history is told.
	From string
	// Plant and Dir are label and folder of the plant: at each commit it is the
	// plant of that label or, where there is none, the one in that folder.
	Plant, Dir string
	// Folder is where the register is kept; empty keeps none.
	Folder string
	// Progress, where it is set, is told how many versions of files were read of
	// how many. It is called from several goroutines.
	Progress func(done, of int)
}

// Trail is one history that is looked at for labels. It is not for several
// goroutines.
type Trail struct {
	Options
	*register
	ctx     context.Context
	order   []string
	labels  map[subject]*followed
	changed bool
	memory
}

// Open reads what the register does not know of the commit's history, and keeps
// it. That a register can not be kept is no error: the next look takes longer.
func Open(ctx context.Context, o Options) (*Trail, error) {
	var kept *register
	var reading sync.WaitGroup
	reading.Go(func() { kept = load(o.Folder) })
	order, err := o.Repo.Ancestry(ctx, o.From)
	reading.Wait()
	if err != nil {
		return nil, err
	}
	t := &Trail{Options: o, ctx: ctx, order: order, labels: make(map[subject]*followed), memory: newMemory(), register: kept}
	if t.index.size() > 2*t.fresh {
		t.register = newRegister() // read piece by piece it has grown too long
	}
	if err := t.gather(ctx, order); err != nil {
		return nil, err
	}
	if t.changed && o.Folder != "" {
		keep(o.Folder, t.register)
	}
	return t, nil
}

// Steps walks the commits for history.Of, newest first.
func (t *Trail) Steps() iter.Seq2[history.Step, error] {
	return func(yield func(history.Step, error) bool) {
		for _, id := range t.order {
			if t.ctx.Err() != nil {
				yield(history.Step{}, context.Cause(t.ctx))
				return
			}
			if !yield(t.step(id), nil) {
				return
			}
		}
	}
}

func (t *Trail) step(id string) history.Step {
	at := t.steps[id]
	s := history.Step{Revision: history.Revision{ID: id}, Boundary: at.boundary, Parents: make([]history.Parent, len(at.parents))}
	for i, parent := range at.parents {
		s.Parents[i].ID = parent
	}
	s.Look = func(label string, what history.Interest, parent int) (before, after *plant.Plant, err error) {
		f, err := t.follow(subject{label, what})
		if err != nil {
			return nil, nil, err
		}
		e := &excerpt{Trail: t, followed: f, at: at, after: id}
		if parent >= 0 {
			e.before = at.parents[parent]
			// A parent that is named twice is compared with once.
			e.parent = int32(slices.Index(at.parents, e.before))
		}
		return e.look()
	}
	return s
}

// unsettles says whether a difference may be one of which plant is where.
func (t *Trail) unsettles(d *delta) bool {
	if path.Base(t.paths[d.path]) != schema.PlantFile {
		return false
	}
	if d.before == none || d.after == none {
		return true
	}
	was, is := t.blobs[d.before].mark, t.blobs[d.after].mark
	return was != is || was == 0
}
