package trail

import (
	"bytes"
	"fmt"
	"hash/fnv"
	"slices"

	"homerun/schema"
	"homerun/schema/vcs"
)

// tally counts how often tokens stand in versions, each against the one that it is
// told by. Only the lines in which they differ are looked at.
type tally struct {
	events []event
	// more and less are the tokens of lines that came and went.
	more, less []token
	edits      []vcs.Edit
}

// event says how much more often a token stands in a version than in its base,
// less often where more is below 0.
type event struct {
	token         token
	version, more int32
}

// take reads a version.
func (t *tally) take(v *vcs.Version) {
	t.more, t.less = t.more[:0], t.less[:0]
	if v.Base < 0 {
		tokens(v.Text, func(k token) { t.more = append(t.more, k) })
	} else {
		t.edits = wholeLines(v, t.edits[:0])
		for _, e := range t.edits {
			tokens(v.Was[e.From:e.To], func(k token) { t.less = append(t.less, k) })
			tokens(v.Text[e.Start:e.End], func(k token) { t.more = append(t.more, k) })
		}
	}
	t.settle(int32(v.N))
}

// settle makes events of what was counted, in the order of the tokens.
func (t *tally) settle(version int32) {
	slices.Sort(t.more)
	slices.Sort(t.less)
	more, less := t.more, t.less
	for len(more) > 0 || len(less) > 0 {
		var k token
		switch {
		case len(less) == 0 || len(more) > 0 && more[0] < less[0]:
			k = more[0]
		default:
			k = less[0]
		}
		e := event{token: k, version: version}
		for ; len(more) > 0 && more[0] == k; more = more[1:] {
			e.more++
		}
		for ; len(less) > 0 && less[0] == k; less = less[1:] {
			e.more--
		}
		if e.more != 0 {
			t.events = append(t.events, e)
		}
	}
}

// wholeLines widens edits to the lines that they touch, and joins those that touch
// the same one.
func wholeLines(v *vcs.Version, into []vcs.Edit) []vcs.Edit {
	for _, e := range v.Edits {
		// Back to the last edit both sides are the same, but one of them alone
		// may begin a line there.
		back := e.From - (bytes.LastIndexByte(v.Was[:e.From], '\n') + 1)
		if n := len(into) - 1; n >= 0 && back >= e.From-into[n].To {
			into[n].To, into[n].End = e.To, e.End
			continue
		}
		into = append(into, vcs.Edit{From: e.From - back, To: e.To, Start: e.Start - back, End: e.End})
	}
	for i := range into {
		// The next edit, if there is one, begins behind the end of a line.
		e := &into[i]
		rest := len(v.Was) - e.To
		if stop := bytes.IndexByte(v.Was[e.To:], '\n'); stop >= 0 {
			rest = stop + 1
		}
		e.To, e.End = e.To+rest, e.End+rest
	}
	return into
}

// markOf is equal for texts of a plant's file that give their plants the same labels.
// What stands around a record decides too whether it can be read, so it is.
func markOf(text []byte) uint64 {
	sum := fnv.New64a()
	for _, label := range plantLabels(schema.NewReader(), schema.Blocks(string(text))) {
		sum.Write(fmt.Appendf(nil, "%d %s", len(label), label))
	}
	return sum.Sum64() | 1
}
