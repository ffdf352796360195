package diffreport

import (
	"slices"

	"homerun/schema"
)

// cableNow are the records of a cable in one of its files as it stands now: none,
// one, or the old cable beside the new.
func (x *scene) cableNow(w *cableWork, in *slot) []*schema.Record {
	if w.cord.before != nil || w.cord.after != nil {
		return x.cordNow(w)
	}
	c := x.progress[w]
	was, is := physical(w.run.before), physical(w.run.after)
	var all []*schema.Record
	own := func(s side) bool { return x.homeOf(w, s) == in.path }
	switch {
	case was != nil && is != nil && !w.renew:
		if own(later) {
			all = append(all, x.movedNow(w))
		}
		return all
	case was != nil && !c.out && own(earlier):
		label := x.goneLabel(w.was)
		if is != nil {
			label = w.label + oldMark
		} else if w.run.after != nil {
			label = w.label // only the plan of it stays
		}
		old := x.carried(was.Record(), label, nil)
		all = append(all, onPorts(old, func(i int) bool { held, _ := c.held(w, i); return held }))
	}
	switch {
	case w.run.after == nil || !own(later):
	case is != nil && c.in:
		all = append(all, onPorts(is.Record(), func(i int) bool { _, held := c.held(w, i); return held }))
	case is != nil && w.run.before != nil && was == nil:
		all = append(all, x.carried(w.run.before.Record(), w.label, nil)) // planned still
	case is == nil && c.out:
		all = append(all, w.run.after.Record())
	}
	return all
}

// homeOf is the file in which the cable of one plant stands.
func (x *scene) homeOf(w *cableWork, s side) string {
	paths := x.at[w]
	if s == earlier {
		return paths[len(paths)-1]
	}
	return paths[0]
}

// movedNow is a run that stays and has ends moved, or is tagged.
func (x *scene) movedNow(w *cableWork) *schema.Record {
	c := x.progress[w]
	if c.finished(w) {
		return w.run.after.Record()
	}
	now := *x.carried(w.run.before.Record(), w.label, nil)
	now.Values = slices.DeleteFunc(now.Values, func(v schema.Value) bool { return isEnd(v.Field.Name) })
	for i, name := range []string{schema.RunFrom.Name, schema.RunTo.Name} {
		was, is := c.held(w, i)
		from := w.run.after.Record()
		switch {
		case is && (c.on[i] || !was):
		case was:
			from = x.carried(w.run.before.Record(), w.label, nil)
		default:
			bare(&now)
			return &now
		}
		if v := from.Own(name); v != nil {
			now.Values = append(now.Values, *v)
		}
	}
	return &now
}

// cordNow is a cord that is plugged in at both ends; a cord that hangs at one
// end is no connection.
func (x *scene) cordNow(w *cableWork) []*schema.Record {
	c := x.progress[w]
	was0, is0 := c.held(w, 0)
	was1, is1 := c.held(w, 1)
	switch {
	case w.cord.after != nil && is0 && is1:
		return []*schema.Record{w.cord.after.Record()}
	case w.cord.before == nil || !was0 || !was1:
		return nil
	case w.cord.after == nil:
		return []*schema.Record{x.carried(w.cord.before.Record(), x.goneLabel(w.was), nil)}
	}
	return []*schema.Record{x.carried(w.cord.before.Record(), w.label, nil)}
}

// onPorts is a run as it lies: with its ends where both are on a port, otherwise
// without any, nor a length, since nothing goes through it that could be judged.
func onPorts(r *schema.Record, held func(i int) bool) *schema.Record {
	if held(0) && held(1) {
		return r
	}
	now := *r
	now.Values = slices.Clone(r.Values)
	bare(&now)
	return &now
}

// bare takes ends and length out of a run.
func bare(r *schema.Record) {
	r.Values = slices.DeleteFunc(r.Values, func(v schema.Value) bool {
		return isEnd(v.Field.Name) || v.Field.Name == schema.RunLength.Name
	})
}

// ofSide is a record of either plant under the labels of the later.
func (x *scene) ofSide(s side, r *schema.Record, label string) *schema.Record {
	if s == later {
		return r
	}
	return x.carried(r, label, nil)
}

// carried is a record of the earlier plant under a label, with what it refers to
// under the labels of the later plant, in the blocks inside it too. Runs of a
// bundle are left out.
func (x *scene) carried(r *schema.Record, label string, parent *schema.Record) *schema.Record {
	now := *r
	now.Label, now.Parent = label, parent
	now.Values = referring(r.Values, x.nowCalled)
	now.Inner = nil
	for _, in := range r.Inner {
		if in.Kind.Name == schema.KindRun {
			continue // the runs of a bundle stand in it as their own work goes on
		}
		inner := in.Label
		if len(in.Kind.Refers) > 0 {
			inner = x.nowCalled(inner)
		}
		now.Inner = append(now.Inner, x.carried(in, inner, &now))
	}
	return &now
}

// nowCalled is what a record of the earlier plant is called in the scene.
func (x *scene) nowCalled(label string) string {
	if c := x.before[label]; c != nil && c.After.Record == nil {
		return x.goneLabel(label)
	}
	return x.roomNow(label)
}
