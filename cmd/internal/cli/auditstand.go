package cli

import (
	"slices"

	"homerun/schema"
	"homerun/schema/vcs"
)

// An auditStand is one commit in the tree of first parents, with the files of
// records in which it differs from the one before.
type auditStand struct {
	id     string
	before *auditStand
	// root is set where there never was a commit before: all its files are new.
	root bool
	// depth counts the commits before it that are remembered.
	depth int
	files []vcs.Delta
}

func newAuditStand(c vcs.Commit, parents []*auditState) *auditStand {
	n := &auditStand{id: c.ID, root: len(c.Parents) == 0 && !c.Boundary && len(c.Changed) > 0}
	if len(parents) > 0 {
		n.before = parents[0].stand
		n.depth = n.before.depth + 1
	}
	for _, d := range c.Changed {
		if d.Parent == 0 && schema.IsRecords(d.Path) {
			n.files = append(n.files, d)
		}
	}
	return n
}

// forget lets go of the commits before, once nobody goes back to them.
func (n *auditStand) forget() { n.before, n.root, n.files, n.depth = nil, false, nil, 0 }

// isRecords says whether an entry of a tree is a file of records.
func isRecords(e vcs.Entry) bool { return schema.IsRecords(e.Path) && e.Mode != vcs.ModeSubmodule }

// way finds what differs between two commits of one tree, or between nothing and a
// commit; known is false where nothing is remembered that they have in common. An
// entry without an id is a file that is not there.
func (n *auditStand) way(to *auditStand) (files map[string]vcs.Entry, known bool) {
	var down []*auditStand
	up := n
	files = make(map[string]vcs.Entry)
	for up != to {
		switch {
		case to == nil || up == nil && n != nil:
			return nil, false
		case up != nil && up.depth >= to.depth:
			for _, d := range up.files {
				files[d.Path] = vcs.Entry{Path: d.Path, ID: d.Before, Mode: d.BeforeMode}
			}
			up = up.before
		default:
			down = append(down, to)
			to = to.before
		}
	}
	if up == nil && !down[len(down)-1].root {
		return nil, false
	}
	for _, n := range slices.Backward(down) {
		for _, d := range n.files {
			files[d.Path] = vcs.Entry{Path: d.Path, ID: d.After, Mode: d.AfterMode}
		}
	}
	for path, e := range files {
		if !isRecords(e) {
			files[path] = vcs.Entry{Path: path}
		}
	}
	return files, true
}
