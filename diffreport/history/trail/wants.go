package trail

import (
	"slices"
	"strings"

	"homerun/schema"
	"homerun/schema/plant"
)

const fieldFormer = "former"

// wants is what an excerpt needs besides the blocks that differ: the bearers of
// some labels, and everything that names some others.
type wants struct {
	tokens map[token]bool
	// sieve has the bits of the tokens.
	sieve [sieveBits / 64]uint64
	// all is set where a label may be written in a way that tokens do not see.
	all bool
	// labels are those of the tokens.
	labels []string
	// longer are the runs that have another length now: what a test of theirs
	// measured decides what that means.
	longer map[string]bool
}

// name identifies a record as comparisons do.
type name struct{ kind, label string }

// wants lists what bears on the records that differ. Who else bears their labels,
// or the former labels that they state, decides whether those are believed. What
// names hardware that one side does not have decides whether it is taken for
// hardware of another label.
func (e *excerpt) wants() *wants {
	w := &wants{tokens: make(map[token]bool), longer: make(map[string]bool)}
	var borne [2]map[name]*schema.Record
	for s := range e.differ {
		borne[s] = make(map[name]*schema.Record)
		for _, r := range e.differ[s] {
			borne[s][name{r.Kind.Name, r.Label}] = r
			w.want(r.Label, defines)
			w.want(former(r), defines)
		}
	}
	for s := range borne {
		for n, r := range borne[s] {
			other := borne[1-s][n]
			switch {
			case other == nil:
				w.want(n.label, mention)
			case s == 1 && n.kind == schema.KindRun && !r.Own(schema.RunLength.Name).Same(other.Own(schema.RunLength.Name)):
				w.longer[n.label] = true
				w.want(n.label, mention)
			}
			if s == 1 && n.kind == schema.KindRun && other == nil {
				w.longer[n.label] = true // it may be a run of another label, with another length
			}
		}
	}
	w.want(e.Plant, defines)
	return w
}

func (w *wants) want(label string, way token) {
	if label == "" {
		return
	}
	if !spelled(label) {
		w.all = true
	}
	if t := tokenOf([]byte(label)) | way; !w.tokens[t] {
		w.sieve[t.bit()/64] |= 1 << (t.bit() % 64)
		w.tokens[t], w.labels = true, append(w.labels, label)
	}
}

// fewLabels is how many labels are looked for by their letters first.
const fewLabels = 4

// mayHave says, for few labels, whether a block has the letters of one or could
// spell it in another way. It is there for speed alone.
func (w *wants) mayHave(block string) bool {
	if len(w.labels) > fewLabels || strings.IndexByte(block, '\\') >= 0 || strings.IndexByte(block, '*') >= 0 || !ascii(block) {
		return true
	}
	for _, label := range w.labels {
		if strings.Contains(block, label) {
			return true
		}
	}
	return false
}

// has says whether a block may hold what is wanted.
func (w *wants) has(block string) bool {
	if w.all || !w.mayHave(block) {
		return w.all
	}
	found := false
	tokens([]byte(block), func(t token) { found = found || w.wants(t) })
	return found
}

// wants says whether a block with a token may hold what is wanted. Of the many tokens
// of a text a few bits tell for most that they are not.
func (w *wants) wants(t token) bool {
	return t == odd || w.sieve[t.bit()/64]>>(t.bit()%64)&1 != 0 && w.tokens[t]
}

// sieveBits is how many tokens the sieve tells apart.
const sieveBits = 1024

// bit is that of a token in the sieve.
func (t token) bit() int { return int(t>>2) % sieveBits }

// bearing is the versions that may hold what is wanted.
func (t *Trail) bearing(w *wants) set {
	if w.all {
		return t.all()
	}
	list := make([]token, 0, len(w.tokens))
	for t := range w.tokens {
		list = append(list, t)
	}
	return t.holding(list...)
}

func former(r *schema.Record) string {
	if v := r.Own(fieldFormer); v != nil && !v.Bad {
		return v.Text
	}
	return ""
}

// enough says whether excerpts decide what happened as whole plants would. It
// errs only to the side of the whole plants.
func enough(before, after *plant.Plant, w *wants) bool {
	if doubled(before) || doubled(after) {
		return false // which of two bearers has the label depends on all files
	}
	if after == nil {
		return true
	}
	for _, t := range after.Tests {
		of := t.Record().Own(schema.TestRun.Name)
		if of != nil && w.longer[of.Text] && t.Record().Own(schema.TestLength.Name) != nil {
			return false // that it measured the length counts only where the run is a link of its own
		}
	}
	return true
}

// doubled says whether a plant gives a label twice.
func doubled(p *plant.Plant) bool {
	return p != nil && slices.ContainsFunc(p.Problems, func(pr schema.Problem) bool { return pr.Code == schema.DuplicateLabel })
}
