package cli

import (
	"bytes"
	"crypto/sha256"
	"encoding/json"
	"fmt"
	"maps"
	"os"
	"path/filepath"
	"slices"
	"strconv"

	"homerun/diffreport/audit"
	"homerun/schema"
)

// An auditKeep holds what an audit found out about each commit, for the next one.
// It is a file in git's own folder, which may be taken away at any time: its first
// line says what it was made with and the digest of the rest, and it is not believed
// where either differs. An audit that is verified makes everything anew.
type auditKeep struct {
	file, made string
	facts      map[string]json.RawMessage
	// fresh is set once there is more than the file holds, size the bytes of all.
	fresh bool
	size  int
}

// mostKept is how many bytes are kept of one audit: what a history longer than that
// tells is found out each time.
const mostKept = 64 << 20

// keep opens what is kept for an audit of a plant; nil where nothing may be kept.
func (w *auditWalk) keep(period *auditPeriod, o auditOptions) *auditKeep {
	if f := w.repo.Form(); o.tool != "" || f.Shallow || f.Replaced || f.Partial {
		return nil
	}
	about := sha256.New()
	add := func(parts ...string) {
		for _, p := range parts {
			_, _ = fmt.Fprintf(about, "%d\x00%s", len(p), p) // a digest takes everything
		}
	}
	add(w.like.Dir, w.like.Name(), fmt.Sprint(w.by), period.base.ID)
	for _, c := range period.before {
		add(c.ID)
	}
	name := fmt.Sprintf("audit-%x", about.Sum(nil)[:8])
	add(toolVersion(), w.build(), ruleSet())
	if r := w.like.Entry.Record; w.by == audit.ByToday && r != nil {
		add(r.Source())
	}
	k := &auditKeep{file: filepath.Join(w.repo.CommonDir(), "homerun", name), made: fmt.Sprintf("%x", about.Sum(nil)), facts: make(map[string]json.RawMessage)}
	k.read()
	return k
}

// build tells one build of the program from another of the same version.
func (s *source) build() string {
	if s.app.Program == nil {
		return ""
	}
	program, err := s.app.Program()
	if err != nil {
		return ""
	}
	info, err := os.Stat(program)
	if err != nil {
		return ""
	}
	return fmt.Sprint(info.Size(), info.ModTime().UnixNano())
}

// head is the first line of the file.
func (k *auditKeep) head(body []byte) string {
	return fmt.Sprintf("homerun audit 1 %s %x\n", k.made, sha256.Sum256(body))
}

// read believes the file where it is whole and made the same way.
func (k *auditKeep) read() {
	if info, err := os.Stat(k.file); err != nil || info.Size() > 2*mostKept {
		return
	}
	content, err := os.ReadFile(k.file)
	if err != nil {
		return // nothing is kept
	}
	n := bytes.IndexByte(content, '\n') + 1
	if body := content[n:]; string(content[:n]) != k.head(body) || json.Unmarshal(body, &k.facts) != nil {
		k.facts = make(map[string]json.RawMessage)
	}
	for _, f := range k.facts {
		k.size += len(f)
	}
}

// has says whether something is kept of a commit.
func (k *auditKeep) has(key string) bool {
	if k == nil {
		return false
	}
	_, kept := k.facts[key]
	return kept
}

// get reads what is kept of a commit.
func (k *auditKeep) get(key string) (*auditFact, bool) {
	if !k.has(key) {
		return nil, false
	}
	f := &auditFact{}
	return f, json.Unmarshal(k.facts[key], f) == nil
}

// put keeps what was found out about a commit.
func (k *auditKeep) put(key string, f *auditFact) {
	if k == nil || k.size > mostKept {
		return
	}
	text, err := json.Marshal(f)
	if err != nil {
		panic("audit: a fact can not be written: " + err.Error())
	}
	if bytes.Contains(text, []byte(`\ufffd`)) {
		return // the name of a file that is no text would be another one when it is read
	}
	k.facts[key], k.fresh = text, true
	k.size += len(text)
}

// write puts the file in its place, whole or not at all. Where it can not be
// written, the next audit takes as long as this one.
func (k *auditKeep) write() {
	if k == nil || !k.fresh || k.size > mostKept {
		return
	}
	if os.MkdirAll(filepath.Dir(k.file), 0o777) != nil {
		return
	}
	body := k.body()
	_ = replaceFile(k.file, append([]byte(k.head(body)), body...), 0o644)
}

// body is the JSON of all facts. They are JSON already and are not read again for it.
func (k *auditKeep) body() []byte {
	body := make([]byte, 0, k.size+64*len(k.facts))
	before := byte('{')
	for _, key := range slices.Sorted(maps.Keys(k.facts)) {
		body = append(strconv.AppendQuote(append(body, before), key), ':')
		body = append(body, k.facts[key]...)
		before = ','
	}
	return append(body, '}')
}

// keptKey is under what a commit is kept: before a period it is something else than
// in it.
func keptKey(id string, role commitRole) string {
	if role == earlierCommit {
		return "before " + id
	}
	return id
}

// statedBy notes what the plant record states.
func (f *auditFact) statedBy(r *schema.Record) {
	if f.Stated = r != nil; !f.Stated {
		return
	}
	f.Standard, _ = schema.PlantStandard.In(r)
	f.FireCode, _ = schema.PlantFireCode.In(r)
}
