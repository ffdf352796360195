package cli_test

import (
	"encoding/json"
	"fmt"
	"maps"
	"os"
	"regexp"
	"slices"
	"strings"
	"testing"
	"unicode"
	"unicode/utf8"

	"homerun/schema"
)

// hostile returns the corpus of texts that try to be taken for something else,
// in the order of what they try.
func hostile(t *testing.T) []string {
	t.Helper()
	content, err := os.ReadFile("../../../testdata/hostile/texts.json")
	if err != nil {
		t.Fatal(err)
	}
	named := make(map[string]string)
	if err := json.Unmarshal(content, &named); err != nil {
		t.Fatal(err)
	}
	var texts []string
	for _, name := range slices.Sorted(maps.Keys(named)) {
		texts = append(texts, named[name])
	}
	return texts
}

// misleading finds what a terminal or a reader could take for something else.
func misleading(text string) string {
	if !utf8.ValidString(text) {
		return "bytes that are no UTF-8"
	}
	for i, r := range text {
		if r != '\n' && !unicode.IsGraphic(r) || unicode.In(r, unicode.Cf, unicode.Zl, unicode.Zp) {
			return fmt.Sprintf("%U behind %q", r, text[max(0, i-60):i])
		}
	}
	return ""
}

var style = regexp.MustCompile(`(?s)<style>.*?</style>`)

// newHostileRoom has every text of the corpus in labels, titles, reasons, names
// of files, branches, authors and messages of commits, and a change of all.
func newHostileRoom(t *testing.T, texts []string) *room {
	t.Helper()
	r := newRoom(t)
	r.env = append(r.env, "LC_ALL=C.UTF-8")
	for n, what := range []string{"corridor", "work-area"} {
		var b strings.Builder
		for i, text := range texts {
			l := schema.Literal(text)
			fmt.Fprintf(&b, "space \"S%03d\" {\n  kind = %q\n  title = %s\n}\n", i, what, schema.Literal(text+strings.Repeat("!", n)))
			fmt.Fprintf(&b, "space %s {\n  kind = %q\n  title = %s\n}\n", l, what, l)
			fmt.Fprintf(&b, "waiver \"W%03d\" {\n  rule = %s\n  records = [%s]\n  reason = %s\n  granted = %s\n  expires = \"2027-01-0%d\"\n}\n", i, l, l, l, l, n+1)
			name := strings.NewReplacer("/", "-", "\x00", "", "\\", "-").Replace(text)
			r.write(fmt.Sprintf("%.60s-%03d.hcl", strings.ToValidUTF8(name, ""), i), fmt.Sprintf("rack \"K%03d\" {\n  space = %s\n  unitz = %d\n}\n", i, l, n))
		}
		r.write("texts.hcl", b.String())
		r.mustGit(r.dir, "add", ".")
		for i, text := range texts {
			r.env = append(r.env, "GIT_AUTHOR_NAME=x"+strings.NewReplacer("\x00", "", "\n", " ").Replace(text))
			if i == 0 {
				r.mustGit(r.dir, "commit", "-qm", "all of them")
				continue
			}
			r.write("K.hcl", fmt.Sprintf("rack \"K\" {\n  space = \"S001\"\n  units = %d\n}\n", 1000*n+i))
			r.mustGit(r.dir, "add", ".")
			r.mustGit(r.dir, "commit", "-q", "--cleanup=verbatim", "-m", "x"+strings.ReplaceAll(text, "\x00", ""))
		}
		r.mustGit(r.dir, "tag", fmt.Sprint("state", n))
	}
	return r
}

// TestHostileRepository prints everything there is to print about a repository
// of hostile texts.
func TestHostileRepository(t *testing.T) {
	t.Parallel()
	r := newHostileRoom(t, hostile(t))
	for _, line := range []string{
		"lint", "lint --format json", "lint --format sarif", "lint --format junit", "lint --format annotations", "lint --format quality", "lint --since state0",
		"order state0..state1", "order state0..state1 --format json", "order state0..state1 --format markdown", "order state0..state1 --format html",
		"history K", "history K --format json", "history S003", "history K:1", "history K --on 2999-01-01", "history K --on 2999-01-01 --format json", "history S003 --on 2999-01-01", "audit state0..state1", "audit state0..state1 --format json", "audit state0..state1 --format html", "ready", "ready --format json", "takeoff", "takeoff --format json", "export --kind space --format csv", "export --kind waiver --format csv", "trace S003", "fmt --check", "fmt --check --names", "labels --format svg",
	} {
		out, status := r.homerun(strings.Fields(line)...)
		if status > 2 || len(out) < 40 {
			t.Errorf("%s: exit status %d: %s", line, status, out)
		}
		// The page's own style is indented with tabs.
		out = strings.ReplaceAll(strings.TrimPrefix(out, "\ufeff"), "\r\n", "\n") // as spreadsheets have them
		if bad := misleading(style.ReplaceAllString(out, "")); bad != "" {
			t.Errorf("%s: %s", line, bad)
		}
	}
	for _, i := range []string{"forged", "../forged", "../../forged"} {
		if _, err := os.Stat(r.dir + "/" + i); err == nil {
			t.Error("a text was taken for a command, or for a place to write to")
		}
	}
}

// TestHostileArguments quotes what a user typed, or pasted, in every complaint.
func TestHostileArguments(t *testing.T) {
	t.Parallel()
	r := newRoom(t)
	r.mustGit(r.dir, "add", ".")
	r.mustGit(r.dir, "commit", "-qm", "first")
	for i, text := range hostile(t) {
		if testing.Short() && i%8 != 0 {
			continue
		}
		text = strings.ReplaceAll(text, "\x00", "")
		for _, args := range [][]string{
			{"explain", "--", text},
			{"history", "--", text},
			{"history", "K", "--on=" + text},
			{"history", "K", "--field=" + text},
			{"history", "K", "--since=" + text},
			{"order", "--", text},
			{"lint", "--at=" + text},
			{"lint", "--plant=" + text},
			{"lint", "--format=" + text},
			{"lint", "--color=" + text},
			{"lint", "--most=" + text},
			{"help", text},
			{"x" + text},
			{"completion", "--", text},
		} {
			out, status := r.homerun(args...)
			if bad := misleading(out); bad != "" || status > 3 {
				t.Errorf("%q: exit status %d, %s", args, status, bad)
			}
		}
	}
}
