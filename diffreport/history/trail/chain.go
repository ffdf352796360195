package trail

import (
	"bytes"
	"hash/fnv"
)

// chainReader finds the tokens of versions that come in the order of their
// chains, but of all chains mixed. It looks only at the lines in which a version
// differs from the one before it in its chain.
type chainReader struct {
	open  map[int32]*chainState
	diff  map[token]int32
	spans []span
}

// chainState is the last version of a chain, with how often each token stands in
// it, and since which.
type chainState struct {
	at   int32
	text []byte
	held map[token]standing
}

type standing struct{ often, since int32 }

func newChainReader() *chainReader {
	return &chainReader{open: make(map[int32]*chainState), diff: make(map[token]int32)}
}

// take reads a version.
func (c *chainReader) take(v *version, text []byte) {
	s := c.open[v.chain]
	if s == nil {
		s = &chainState{held: make(map[token]standing)}
		c.open[v.chain] = s
	}
	s.at = v.at
	start, was, is := between(s.text, text)
	clear(c.diff)
	tokens(s.text[start:was], func(t token) { c.diff[t]-- })
	tokens(text[start:is], func(t token) { c.diff[t]++ })
	for t, n := range c.diff {
		c.count(v.chain, s, t, n)
	}
	s.text = append(s.text[:0], text...)
}

func (c *chainReader) count(chain int32, s *chainState, t token, n int32) {
	h := s.held[t]
	switch {
	case n == 0:
	case h.often == 0:
		s.held[t] = standing{often: n, since: s.at}
	case h.often+n == 0:
		c.spans = append(c.spans, span{token: t, chain: chain, from: h.since, to: s.at - 1})
		delete(s.held, t)
	default:
		h.often += n
		s.held[t] = h
	}
}

// end closes a chain of which nothing more comes.
func (c *chainReader) end(chain int32) {
	s := c.open[chain]
	delete(c.open, chain)
	for t, h := range s.held {
		c.spans = append(c.spans, span{token: t, chain: chain, from: h.since, to: s.at})
	}
}

// endAll closes every chain.
func (c *chainReader) endAll() {
	for chain := range c.open {
		c.end(chain)
	}
}

// between finds the whole lines in which two texts differ: from a common start
// to an end in each.
func between(was, is []byte) (start, endWas, endIs int) {
	start = bytes.LastIndexByte(was[:common(was, is)], '\n') + 1
	endWas, endIs = len(was), len(is)
	for endWas-64 >= start && endIs-64 >= start && string(was[endWas-64:endWas]) == string(is[endIs-64:endIs]) {
		endWas, endIs = endWas-64, endIs-64
	}
	for endWas > start && endIs > start && was[endWas-1] == is[endIs-1] {
		endWas, endIs = endWas-1, endIs-1
	}
	// Back to where a line ends, which is at the same distance in both.
	if stop := bytes.IndexByte(was[endWas:], '\n'); stop >= 0 && endWas+stop < len(was) {
		endWas, endIs = endWas+stop, endIs+stop
	} else {
		endWas, endIs = len(was), len(is)
	}
	return start, endWas, endIs
}

// common is how many bytes two texts begin with alike.
func common(a, b []byte) int {
	n := min(len(a), len(b))
	i := 0
	for i+64 <= n && string(a[i:i+64]) == string(b[i:i+64]) {
		i += 64
	}
	for i < n && a[i] == b[i] {
		i++
	}
	return i
}

// markOf is equal for texts whose places are equal that can name a plant: from
// the word to the brace behind it.
func markOf(text []byte) uint64 {
	sum := fnv.New64a()
	for {
		at := bytes.Index(text, []byte("plant"))
		if at < 0 {
			return sum.Sum64() | 1
		}
		end := len(text)
		if brace := bytes.IndexByte(text[at:], '{'); brace >= 0 {
			end = at + brace
		}
		sum.Write(text[at:end])
		text = text[end:]
	}
}
