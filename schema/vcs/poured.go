package vcs

import (
	"bytes"
	"context"
	"errors"
	"runtime"
	"sync"
)

// fewVersions is how many contents are read by one git before another is worth its start.
const fewVersions = 64

// pouredVersions reads contents through git, by several side by side. Each has a part of ids, in their order: in that
// of a history git finds there what it has just unpacked, while the versions of one file by themselves cost it ten
// times as much.
func (r *Repo) pouredVersions(ctx context.Context, o Reading) error {
	n := len(o.IDs) - o.First
	parts := max(1, min(runtime.GOMAXPROCS(0), n/fewVersions))
	o.Begin(parts)
	failed := make([]error, parts)
	var wait sync.WaitGroup
	for part := range parts {
		p := pouring{Reading: o, reader: part, first: o.First + n*part/parts, last: o.First + n*(part+1)/parts}
		wait.Go(func() { failed[part] = p.read(ctx, r) })
	}
	wait.Wait()
	return errors.Join(failed...)
}

// pouring is the part of one git.
type pouring struct {
	Reading
	reader, first, last int
	// needed is how many of the part are like each of it, texts are those that are needed yet and held their bytes.
	needed []int
	texts  map[int][]byte
	held   int
	edits  []Edit
}

func (p *pouring) read(ctx context.Context, r *Repo) error {
	p.needed, p.texts = make([]int, p.last-p.first), make(map[int][]byte)
	for n := p.first; n < p.last; n++ {
		if like := int(p.Like[n]); like >= p.first {
			p.needed[like-p.first]++
		}
	}
	return r.pour(ctx, p.IDs[p.first:p.last], func(i int, text []byte) error { return p.take(p.first+i, text) })
}

func (p *pouring) take(n int, text []byte) error {
	v := Version{N: n, Base: -1, Text: text}
	like := int(p.Like[n])
	if was, there := p.texts[like]; there && text != nil {
		p.edits = differ(was, text, p.edits[:0])
		v.Base, v.Was, v.Edits = like, was, p.edits
	}
	err := p.Take(p.reader, &v)
	if like >= p.first {
		if p.needed[like-p.first]--; p.needed[like-p.first] == 0 {
			p.held -= len(p.texts[like])
			delete(p.texts, like)
		}
	}
	if p.needed[n-p.first] > 0 && text != nil && p.held+len(text) <= mostHeld {
		p.texts[n] = bytes.Clone(text)
		p.held += len(text)
	}
	return err
}
