package vcs

import (
	"errors"
	"slices"
)

// Edit is a place at which one content differs from another: bytes From to To of the one became bytes Start to End of
// the other. Between the edits both are the same.
type Edit struct{ From, To, Start, End int }

var errDelta = errors.New("a change of an object does not fit it")

// taken is bytes of a base that stand, from start on, in what is made of it too.
type taken struct {
	from, size, start int
	// best is the most bytes that can be taken up to here without going back, after which other.
	best, after int
}

// patch carries out what a pack tells of an object as the change of another: it appends the content to into, and
// returns it with what was taken of base.
func patch(into, base, delta []byte, parts []taken) ([]byte, []taken, error) {
	was, delta, fits := deltaSize(delta)
	is, delta, good := deltaSize(delta)
	if !fits || !good || was != len(base) || is > MaxBlob {
		return into, parts, errDelta
	}
	first := len(into)
	for len(delta) > 0 {
		op := delta[0]
		delta = delta[1:]
		if op&0x80 == 0 { // so many bytes of its own
			if n := int(op); n == 0 || n > len(delta) {
				return into, parts, errDelta
			}
			into, delta = append(into, delta[:op]...), delta[op:]
			continue
		}
		from, size, rest, fits := deltaCopy(op, delta)
		if !fits || from+size > len(base) || len(into)-first+size > is {
			return into, parts, errDelta
		}
		delta = rest
		parts = note(parts, taken{from: from, size: size, start: len(into) - first})
		into = append(into, base[from:from+size]...)
	}
	if len(into)-first != is {
		return into, parts, errDelta
	}
	return into, parts, nil
}

// leastTaken is how many bytes are worth to be noted as taken: fewer are often but the same words elsewhere.
const leastTaken = 32

// note adds what was taken, to the last part where it goes on with it.
func note(parts []taken, p taken) []taken {
	if n := len(parts) - 1; n >= 0 {
		if last := &parts[n]; last.from+last.size == p.from && last.start+last.size == p.start {
			last.size += p.size
			return parts
		}
	}
	if p.size < leastTaken {
		return parts
	}
	return append(parts, p)
}

// mostTaken is how many parts are weighed against each other.
const mostTaken = 1 << 14

// weigher finds out which parts of a base were kept.
type weigher struct {
	parts []taken
	ends  []int
}

// edited gives the edits between two contents by the parts of the one that stand in the other. Of parts that changed
// places, those are held for the same that together are most: the others count as new.
func (w *weigher) edited(was, is int) []Edit {
	if len(w.parts) > mostTaken {
		w.parts = w.parts[:mostTaken]
	}
	edits := make([]Edit, 0, min(len(w.parts)+1, 8))
	open := Edit{To: was, End: is}
	for i := w.heaviest(); i >= 0; i = w.parts[i].after {
		p := &w.parts[i]
		open.From, open.Start = p.from+p.size, p.start+p.size
		if open.From < open.To || open.Start < open.End {
			edits = append(edits, open)
		}
		open.To, open.End = p.from, p.start
	}
	if open.From, open.Start = 0, 0; open.To > 0 || open.End > 0 {
		edits = append(edits, open)
	}
	slices.Reverse(edits)
	return edits
}

// heaviest finds the parts that stand in the order of the base and are the most bytes. It gives the last of them; each
// says after which it comes, -1 for the first.
func (w *weigher) heaviest() int {
	if w.straight() {
		return len(w.parts) - 1
	}
	// Of all rows of parts that end at the same byte or before, only the longest counts.
	w.ends = w.ends[:0]
	for i := range w.parts {
		p := &w.parts[i]
		p.best, p.after = p.size, -1
		if at := w.endingBy(p.from); at > 0 {
			p.after = w.ends[at-1]
			p.best += w.parts[p.after].best
		}
		end := p.from + p.size
		first := w.endingBy(end - 1)
		last := first
		for last < len(w.ends) && w.parts[w.ends[last]].best <= p.best {
			last++
		}
		switch {
		case first > 0 && w.parts[w.ends[first-1]].best >= p.best:
		case first == last && first < len(w.ends) && w.end(first) == end:
		default:
			w.ends = slices.Replace(w.ends, first, last, i)
		}
	}
	if len(w.ends) == 0 {
		return -1
	}
	return w.ends[len(w.ends)-1]
}

// straight says whether all parts stand in the order of the base, as they mostly do, and puts them in a row.
func (w *weigher) straight() bool {
	for i := range w.parts {
		if i > 0 && w.parts[i].from < w.parts[i-1].from+w.parts[i-1].size {
			return false
		}
		w.parts[i].after = i - 1
	}
	return true
}

// end is where the last part of a row ends.
func (w *weigher) end(row int) int { return w.parts[w.ends[row]].from + w.parts[w.ends[row]].size }

// endingBy is how many rows end at a byte or before.
func (w *weigher) endingBy(last int) int {
	low, high := 0, len(w.ends)
	for low < high {
		if middle := (low + high) / 2; w.end(middle) <= last {
			low = middle + 1
		} else {
			high = middle
		}
	}
	return low
}

// differ is the one edit that makes one content of another: what lies between what they begin and end with alike.
func differ(was, is []byte, edits []Edit) []Edit {
	n := min(len(was), len(is))
	first := alike(n, func(i, k int) bool { return string(was[i:i+k]) == string(is[i:i+k]) })
	a, b := was[first:], is[first:]
	last := alike(min(len(a), len(b)), func(i, k int) bool {
		return string(a[len(a)-i-k:len(a)-i]) == string(b[len(b)-i-k:len(b)-i])
	})
	e := Edit{From: first, To: len(was) - last, Start: first, End: len(is) - last}
	if e.From < e.To || e.Start < e.End {
		edits = append(edits, e)
	}
	return edits
}

// alike counts how many of n bytes are the same, given what says it of k bytes from one on.
func alike(n int, same func(i, k int) bool) int {
	i := 0
	for _, k := range []int{256, 16, 1} {
		for i+k <= n && same(i, k) {
			i += k
		}
	}
	return i
}

// deltaSize reads one of the two lengths that a change begins with.
func deltaSize(delta []byte) (size int, rest []byte, ok bool) {
	for i, b := range delta {
		if i > 4 {
			break
		}
		size |= int(b&0x7f) << (7 * i)
		if b&0x80 == 0 {
			return size, delta[i+1:], true
		}
	}
	return 0, nil, false
}

// deltaCopy reads which bytes of the base are taken: op says which bytes of offset and length follow.
func deltaCopy(op byte, delta []byte) (from, size int, rest []byte, ok bool) {
	for i := range 7 {
		if op>>i&1 == 0 {
			continue
		}
		if len(delta) == 0 {
			return 0, 0, nil, false
		}
		if i < 4 {
			from |= int(delta[0]) << (8 * i)
		} else {
			size |= int(delta[0]) << (8 * (i - 4))
		}
		delta = delta[1:]
	}
	if size == 0 {
		size = 0x10000
	}
	return from, size, delta, true
}
