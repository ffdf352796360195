package cli_test

import (
	"bytes"
	"context"
	"encoding/json"
	"fmt"
	"io"
	"maps"
	"math/rand/v2"
	"os/exec"
	"slices"
	"strings"
	"testing"
	"time"

	"homerun/cmd/internal/cli"
)

// in runs the program in this process, in the room's folder or another; it has
// to end with a status, or with -1 as it likes.
func (r *room) in(dir string, want int, args ...string) string {
	r.t.Helper()
	var said, complained bytes.Buffer
	status := cli.Main(context.Background(), args, cli.Process{
		In: strings.NewReader(""), Out: &said, Err: &complained, Env: r.env,
		Dir: func() (string, error) { return dir, nil }, Program: func() (string, error) { return r.program, nil }, Now: time.Now,
	})
	if want >= 0 && status != want || status > 1 {
		r.t.Errorf("git homerun %v: status %d\n%s%s", args, status, said.String(), complained.String())
	}
	return said.String()
}

func (r *room) ask(args ...string) string {
	r.t.Helper()
	cmd := exec.Command("git", args...)
	cmd.Dir, cmd.Env = r.dir, r.env
	out, err := cmd.Output()
	if err != nil {
		r.t.Fatalf("git %v: %v", args, err)
	}
	return strings.TrimSpace(string(out))
}

// site is the state of an invented site: lengths of runs in decimetres, and the
// runs under a waiver with its last day.
type site struct {
	lengths map[int]int
	waived  map[int]string
	note    int
}

func (s site) clone() site { return site{maps.Clone(s.lengths), maps.Clone(s.waived), s.note} }

func (s site) text() string {
	var b strings.Builder
	b.WriteString("plant \"pier\" {\n  standard = \"TIA-568\"\n  fire_code = \"NEC-2017\"\n}\nspace \"1A\" { kind = \"telecommunications-room\" }\nspace \"1H\" { kind = \"work-area\" }\n" +
		"cable \"c6a\" {\n category = \"6A\"\n screen = \"U/UTP\"\n listing = \"CMP\"\n}\npanel \"1A-A\" {\n space = \"1A\"\n ports = 48\n category = \"6A\"\n}\n")
	for _, n := range slices.Sorted(maps.Keys(s.lengths)) {
		fmt.Fprintf(&b, "outlet \"1.%03d\" {\n space = \"1H\"\n ports = 1\n category = \"6A\"\n}\n", n)
		fmt.Fprintf(&b, "run \"1A-A%02d\" {\n cable = \"c6a\"\n from = \"1A-A:%d\"\n to = \"1.%03d:1\"\n length = \"%d.%d m\"\n}\n", n, n, n, s.lengths[n]/10, s.lengths[n]%10)
		if last := s.waived[n]; last != "" {
			fmt.Fprintf(&b, "waiver \"W-%02d\" {\n rule = \"length-permanent-link\"\n records = [\"1A-A%02d\"]\n reason = \"until the new room\"\n granted = \"owner\"\n expires = %q\n}\n", n, n, last)
		}
	}
	fmt.Fprintf(&b, "# sheet %d\n", s.note)
	return b.String()
}

// turn does one thing on the site, to a run whose number has the parity asked for.
func (s *site) turn(random *rand.Rand, parity int, day time.Time) {
	n := 2*(1+random.IntN(12)) + parity
	switch random.IntN(6) {
	case 0, 1, 2:
		s.lengths[n] = 850 + random.IntN(100)
	case 3:
		delete(s.lengths, n)
		delete(s.waived, n)
	case 4:
		if s.lengths[n] > 0 {
			s.waived[n] = day.AddDate(0, 0, random.IntN(60)).Format(time.DateOnly)
		}
	case 5:
		s.note++
	}
}

// pastOf makes a history with branches and merges in the room, a commit a day.
func (r *room) pastOf(seed uint64, commits int) {
	r.t.Helper()
	random := rand.New(rand.NewPCG(seed, 7))
	var stream strings.Builder
	mark := 0
	commit := func(s site, parents ...int) int {
		mark++
		when := 1_700_000_000 + mark*86400
		fmt.Fprintf(&stream, "commit refs/heads/main\nmark :%d\nauthor P%d <p@pier.example> %d +0000\ncommitter Keeper <k@pier.example> %d +0000\ndata <<X\nday %d\nX\n\n", mark, mark%3, when, when, mark)
		for i, p := range parents {
			fmt.Fprintf(&stream, "%s :%d\n", []string{"from", "merge"}[i], p)
		}
		text := s.text()
		fmt.Fprintf(&stream, "M 100644 inline plant.hcl\ndata %d\n%s\n", len(text), text)
		if mark%9 == 0 {
			fmt.Fprintf(&stream, "reset refs/tags/round-%d\nfrom :%d\n\n", mark/9, mark)
		}
		return mark
	}
	day := func() time.Time { return time.Unix(int64(1_700_000_000+mark*86400), 0).UTC() }
	now := site{map[int]int{}, map[int]string{}, 0}
	at := commit(now)
	for mark < commits {
		if random.IntN(3) > 0 {
			now.turn(random, random.IntN(2), day())
			at = commit(now, at)
			continue
		}
		// The line works on even runs and the branch on odd ones.
		side, other := now.clone(), at
		for range 1 + random.IntN(3) {
			side.turn(random, 1, day())
			side.note = now.note
			other = commit(side, other)
		}
		for range random.IntN(3) {
			now.turn(random, 0, day())
			at = commit(now, at)
		}
		for n := 1; n < 30; n += 2 {
			delete(now.lengths, n)
			delete(now.waived, n)
			if side.lengths[n] > 0 {
				now.lengths[n] = side.lengths[n]
			}
			if side.waived[n] != "" {
				now.waived[n] = side.waived[n]
			}
		}
		at = commit(now, at, other)
	}
	fmt.Fprintf(&stream, "reset refs/heads/main\nfrom :%d\n", at)
	r.mustGit(r.dir, "symbolic-ref", "HEAD", "refs/heads/main")
	fastImport(r.t, r.dir, r.env, strings.NewReader(stream.String()))
}

// fastImport makes the commits of a stream in a repository.
func fastImport(tb testing.TB, dir string, env []string, stream io.Reader) {
	tb.Helper()
	load := exec.CommandContext(tb.Context(), "git", "fast-import", "--quiet")
	load.Dir, load.Env, load.Stdin = dir, env, stream
	if out, err := load.CombinedOutput(); err != nil {
		tb.Fatalf("git fast-import: %v\n%s", err, out)
	}
}

type auditTold struct {
	From, To string
	Commits  int
	Line     int `json:"commits_of_the_line"`
	Points   []struct {
		Name, Commit                       string
		Nonconformity, Observation, Waived int
		Opened, Cleared                    int
	}
	Findings []struct {
		Rule, Record, Message string
		Introduced, Opened    *struct{ Commit, Author string }
		ClearedBy             *struct{ Commit, Author string } `json:"cleared_by"`
		Cleared               *struct{ Commit string }
		Days                  int
		WaivedDays            int `json:"waived_days"`
		Waiver                string
		Before                bool `json:"before_the_period"`
	}
	Direct   []struct{ Commit string }                     `json:"made_on_the_line"`
	Doubtful []struct{ Commit, Signature, Subject string } `json:"without_a_good_signature"`
	Lost     []struct {
		Ref     string
		Missing bool
		Commits []struct{ Commit string }
	} `json:"rewritten"`
	Repeated []struct {
		Record string
		Times  int
	} `json:"changed_again_and_again"`
	Signatures map[string]int
	Commands   []struct{ Figure, Command string }
}

func (r *room) audit(args ...string) auditTold {
	r.t.Helper()
	out := r.in(r.dir, 0, append([]string{"audit", "--format", "json"}, args...)...)
	var told auditTold
	if err := json.Unmarshal([]byte(out), &told); err != nil {
		r.t.Fatal(err)
	}
	return told
}

type lintTold struct {
	Summary  struct{ Nonconformity, Observation, Waived int }
	Findings []struct{ Fingerprint, Rule, Record, Severity, Waiver string }
}

func (r *room) lintAt(commit string) (told lintTold, keys map[string]string) {
	r.t.Helper()
	out := r.in(r.dir, -1, "lint", "--format", "json", "--at", commit)
	if err := json.Unmarshal([]byte(out), &told); err != nil {
		r.t.Fatal(err)
	}
	keys = make(map[string]string)
	for _, f := range told.Findings {
		if f.Severity == "nonconformity" {
			keys[f.Rule+" "+f.Record] = f.Waiver
		}
	}
	return told, keys
}

// TestAuditIsWhatItsCommandsGive holds every figure of an audit against the
// commands that it names: the linter at single commits, and git.
func TestAuditIsWhatItsCommandsGive(t *testing.T) {
	t.Parallel()
	for _, seed := range []uint64{1, 2, 3} {
		t.Run(fmt.Sprint(seed), func(t *testing.T) {
			t.Parallel()
			r := newRoom(t)
			r.pastOf(seed, 70)
			told := r.audit()
			r.checkCounts(told, "HEAD")
			r.checkStanding(told, strings.Fields(r.ask("rev-list", "--first-parent", "--reverse", "HEAD")), nil)
			middle := strings.Fields(r.ask("rev-list", "--first-parent", "HEAD"))[15]
			part := r.audit(middle + "..HEAD")
			r.checkCounts(part, middle+"..HEAD")
			_, before := r.lintAt(middle)
			r.checkStanding(part, strings.Fields(r.ask("rev-list", "--first-parent", "--reverse", middle+"..HEAD")), before)
		})
	}
}

func (r *room) checkCounts(told auditTold, span string) {
	r.t.Helper()
	if got := r.ask("rev-list", "--count", span); got != fmt.Sprint(told.Commits) {
		r.t.Errorf("%s: %d commits, git counts %s", span, told.Commits, got)
	}
	if got := r.ask("rev-list", "--count", "--first-parent", span); got != fmt.Sprint(told.Line) {
		r.t.Errorf("%s: %d commits on the line, git counts %s", span, told.Line, got)
	}
	var direct []string
	for _, c := range told.Direct {
		direct = append(direct, c.Commit)
	}
	// Every commit of this history touches the records, but for those that
	// changed nothing at all.
	want := strings.Fields(r.ask("log", "--reverse", "--format=%H", "--first-parent", "--no-merges", "--min-parents=1", span, "--", "plant.hcl"))
	if !slices.Equal(direct, want) {
		r.t.Errorf("%s: made on the line %v, git says %v", span, direct, want)
	}
	for _, p := range told.Points {
		at, _ := r.lintAt(p.Commit)
		if p.Nonconformity != at.Summary.Nonconformity || p.Observation != at.Summary.Observation || p.Waived != at.Summary.Waived {
			r.t.Errorf("point %s: told %+v, the linter says %+v", p.Name, p, at.Summary)
		}
		if p.Name != "before" && p.Name != "end" && r.ask("rev-parse", p.Name+"^{commit}") != p.Commit {
			r.t.Errorf("point %s is not at its tag", p.Name)
		}
	}
	if len(told.Points) < 3 {
		r.t.Errorf("%s: %d points", span, len(told.Points))
	}
}

// checkStanding works out from the linter alone when each finding stood on the line.
func (r *room) checkStanding(told auditTold, line []string, held map[string]string) {
	r.t.Helper()
	type span struct{ from, to string }
	open := map[string]string{}
	want := map[string][]span{}
	for key := range held {
		open[key] = "before"
	}
	for _, commit := range line {
		_, now := r.lintAt(commit)
		for key := range now {
			if open[key] == "" {
				open[key] = commit
			}
		}
		for key, from := range open {
			if _, stands := now[key]; !stands {
				want[key] = append(want[key], span{from, commit})
				delete(open, key)
			}
		}
	}
	for key, from := range open {
		want[key] = append(want[key], span{from, ""})
	}
	got := map[string][]span{}
	for _, f := range told.Findings {
		s := span{from: "before"}
		if f.Opened != nil {
			s.from = f.Opened.Commit
			r.checkMaker(f.Introduced.Commit, f.Rule+" "+f.Record)
		}
		if f.Cleared != nil {
			s.to = f.Cleared.Commit
			r.checkClearer(f.ClearedBy.Commit, f.Rule+" "+f.Record)
		}
		got[f.Rule+" "+f.Record] = append(got[f.Rule+" "+f.Record], s)
	}
	if len(want) < 5 {
		r.t.Errorf("only %d findings: the history is too good", len(want))
	}
	for _, key := range slices.Sorted(maps.Keys(want)) {
		if !slices.Equal(want[key], got[key]) {
			r.t.Errorf("%s stood %v, told %v", key, want[key], got[key])
		}
		delete(got, key)
	}
	for key := range got {
		r.t.Errorf("%s is invented", key)
	}
}

// checkMaker holds that a commit has a finding and none of its parents has.
func (r *room) checkMaker(commit, key string) {
	r.t.Helper()
	if _, now := r.lintAt(commit); !has(now, key) {
		r.t.Errorf("%s did not introduce %s: it has it not", commit, key)
	}
	for p := range strings.FieldsSeq(r.ask("log", "-1", "--format=%P", commit)) {
		if _, before := r.lintAt(p); has(before, key) {
			r.t.Errorf("%s did not introduce %s: its parent %s has it", commit, key, p)
		}
	}
}

// checkClearer holds that a commit has not what one of its parents has.
func (r *room) checkClearer(commit, key string) {
	r.t.Helper()
	if _, now := r.lintAt(commit); has(now, key) {
		r.t.Errorf("%s did not clear %s: it has it", commit, key)
	}
	for p := range strings.FieldsSeq(r.ask("log", "-1", "--format=%P", commit)) {
		if _, before := r.lintAt(p); has(before, key) {
			return
		}
	}
	r.t.Errorf("%s did not clear %s: none of its parents had it", commit, key)
}

func has(found map[string]string, key string) bool {
	_, there := found[key]
	return there
}

// TestTheProtectedBranchIsNamed follows a branch that is protected and one that is
// not: the commits made straight on it mean something else.
func TestTheProtectedBranchIsNamed(t *testing.T) {
	t.Parallel()
	r := newRoom(t)
	r.pastOf(12, 8)
	r.mustGit(r.dir, "branch", "side")
	r.mustGit(r.dir, "config", "homerun.protected", "main")
	for rev, want := range map[string]string{
		"main": "back from main, a protected branch", "HEAD": "back from main, a protected branch", "side": "back from side, which is no protected branch here", "main~1": "back from the last commit",
	} {
		if said := strings.Join(strings.Fields(r.in(r.dir, 0, "audit", rev)), " "); !strings.Contains(said, "line first parents, "+want+" commits ") {
			t.Errorf("%s: said %.400q, want %q", rev, said, want)
		}
	}
}
