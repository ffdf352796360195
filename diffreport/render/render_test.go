package render_test

import (
	"bytes"
	"encoding/json"
	"flag"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"
	"time"
	"unicode/utf8"

	"github.com/google/go-cmp/cmp"
	"golang.org/x/tools/txtar"

	"homerun/diffreport"
	"homerun/diffreport/history"
	"homerun/diffreport/render"
	"homerun/schema"
	"homerun/schema/console"
	"homerun/schema/plant"
	"homerun/schema/unit"
)

var update = flag.Bool("update", false, "write what is rendered into the test cases, to be read before it is kept")

// TestOrders makes out the order of each case: two small plants, and the
// document as a person has read and accepted it.
func TestOrders(t *testing.T) {
	t.Parallel()
	cases, err := filepath.Glob(filepath.FromSlash("../../testdata/orders/*.txtar"))
	if err != nil || len(cases) == 0 {
		t.Fatalf("there are no cases: %v", err)
	}
	for _, name := range cases {
		t.Run(filepath.Base(name), func(t *testing.T) {
			t.Parallel()
			archive, err := txtar.ParseFile(name)
			if err != nil {
				t.Fatal(err)
			}
			order := orderOf(t, archive)
			var text bytes.Buffer
			if err := render.OrderText(&text, render.Job{Order: order}, console.Options{}); err != nil {
				t.Fatal(err)
			}
			fits(t, text.String())
			strictOrder(t, order)
			if *update {
				set(archive, "order.txt", text.Bytes())
				if err := os.WriteFile(name, txtar.Format(archive), 0o600); err != nil {
					t.Fatal(err)
				}
				return
			}
			if diff := cmp.Diff(string(data(archive, "order.txt")), text.String()); diff != "" {
				t.Errorf("accepted, and as rendered now:\n%s", diff)
			}
		})
	}
}

func orderOf(t *testing.T, archive *txtar.Archive) diffreport.Order {
	t.Helper()
	reader := schema.NewReader()
	base, head := plantIn(t, reader, archive, "base/"), plantIn(t, reader, archive, "head/")
	return diffreport.Plan(base, head, diffreport.Compare(base, head, diffreport.Options{}), diffreport.PlanOptions{
		Base: "0f1e2d3c4b5a69788796a5b4c3d2e1f001234567", Head: "8c7d6e5f4a3b2c1d0e9f8a7b6c5d4e3f2a1b0c9d",
		Commits: []diffreport.Commit{{ID: "8c7d6e5f4a3b2c1d0e9f8a7b6c5d4e3f2a1b0c9d", Author: "R. Keeper", Subject: strings.TrimSpace(string(archive.Comment)), Time: time.Date(2026, 3, 31, 9, 0, 0, 0, time.UTC)}},
	})
}

func plantIn(t *testing.T, reader *schema.Reader, archive *txtar.Archive, dir string) *plant.Plant {
	t.Helper()
	var files []*schema.File
	for _, f := range archive.Files {
		if name, ok := strings.CutPrefix(f.Name, dir); ok {
			files = append(files, reader.ReadFile(name, string(f.Data)))
		}
	}
	if len(files) == 0 {
		return nil
	}
	p := plant.Build(".", files)
	for _, problem := range p.Problems {
		t.Errorf("%s%s:%d: %s", dir, problem.At.Path, problem.At.Line, problem.Message)
	}
	return p
}

func data(archive *txtar.Archive, name string) []byte {
	for _, f := range archive.Files {
		if f.Name == name {
			return f.Data
		}
	}
	return nil
}

func set(archive *txtar.Archive, name string, text []byte) {
	archive.Files = slices.DeleteFunc(archive.Files, func(f txtar.File) bool { return f.Name == name })
	archive.Files = append(archive.Files, txtar.File{Name: name, Data: text})
}

// fits insists on 80 columns, unless a single word is longer.
func fits(t *testing.T, text string) {
	t.Helper()
	for line := range strings.Lines(text) {
		if line = strings.TrimSuffix(line, "\n"); utf8.RuneCountInString(line) > console.DefaultWidth && strings.Contains(strings.TrimSpace(line), " ") {
			t.Errorf("wider than a page: %q", line)
		}
	}
}

// The shape that other programs were promised; a document may say more.
type promisedOrder struct {
	Plant      *string         `json:"plant"`
	Base       *string         `json:"base"`
	Head       *string         `json:"head"`
	Executable *bool           `json:"executable"`
	Summary    map[string]int  `json:"summary"`
	Steps      []promisedStep  `json:"steps"`
	Materials  []promisedItem  `json:"materials"`
	Labels     []string        `json:"labels"`
	Tests      []promisedTest  `json:"tests"`
	Findings   promisedFinding `json:"findings"`
}

type promisedStep struct {
	Number   *int     `json:"number"`
	Action   *string  `json:"action"`
	Class    *string  `json:"class"`
	Space    *string  `json:"space"`
	Records  []string `json:"records"`
	Text     *string  `json:"text"`
	After    []int    `json:"after"`
	Outage   []string `json:"outage"`
	Cautions []string `json:"cautions"`
}

type promisedItem struct {
	Item     *string `json:"item"`
	Quantity *string `json:"quantity"`
	Working  *string `json:"working"`
}

type promisedTest struct {
	Record *string `json:"record"`
	Limit  *string `json:"limit"`
	Reason *string `json:"reason"`
}

type promisedFinding struct {
	Introduced []any `json:"introduced"`
	Cleared    []any `json:"cleared"`
}

type promisedHistory struct {
	Kind   string          `json:"kind"`
	Record string          `json:"record"`
	Events []promisedEvent `json:"events"`
}

type promisedEvent struct {
	Commit    string          `json:"commit"`
	Time      string          `json:"time"`
	Author    string          `json:"author"`
	Signature string          `json:"signature"`
	Class     string          `json:"class"`
	Summary   string          `json:"summary"`
	Fields    []promisedField `json:"fields"`
}

type promisedField struct {
	Name   string `json:"name"`
	Before string `json:"before"`
	After  string `json:"after"`
}

func strictOrder(t *testing.T, order diffreport.Order) {
	t.Helper()
	var out bytes.Buffer
	if err := render.OrderJSON(&out, order); err != nil {
		t.Fatal(err)
	}
	if at := strings.Index(out.String(), "null"); at >= 0 {
		t.Errorf("a list is null: %s", out.String()[max(0, at-60):at])
	}
	var got promisedOrder
	if err := json.Unmarshal(out.Bytes(), &got); err != nil {
		t.Fatal(err)
	}
	if got.Plant == nil || got.Base == nil || got.Head == nil || got.Executable == nil || *got.Executable != order.Executable {
		t.Errorf("the head of the document is not as promised: %s", out.String())
	}
	for _, name := range []string{"moves", "adds", "changes", "removals", "relabels", "records_only"} {
		if _, ok := got.Summary[name]; !ok {
			t.Errorf("the summary lacks %s", name)
		}
	}
	for _, s := range got.Steps {
		if s.Number == nil || s.Action == nil || s.Class == nil || s.Space == nil || s.Text == nil || s.After == nil || s.Outage == nil || s.Cautions == nil || len(s.Records) == 0 {
			t.Errorf("a step is not as promised: %+v", s)
		}
	}
	if len(got.Steps) != len(order.Steps) || got.Labels == nil || got.Tests == nil || got.Materials == nil || got.Findings.Introduced == nil || got.Findings.Cleared == nil {
		t.Errorf("a list is missing: %s", out.String())
	}
}

func TestHistoryDocuments(t *testing.T) {
	t.Parallel()
	reader := schema.NewReader()
	at := func(id, length string, parents ...history.Parent) history.Step {
		return history.Step{
			Revision: history.Revision{ID: id, Author: "R. Keeper", Committer: "R. Keeper", Subject: "Note \x1b[31m what was done", Time: time.Date(2026, 3, 31, 9, 0, 0, 0, time.FixedZone("", 7200)), Signature: history.Unsigned},
			Plant:    plant.Build(".", []*schema.File{reader.ReadFile("plant.hcl", "plant \"mole-end\" { standard = \"TIA-568\" }\nrun \"1A-A07\" { length = \""+length+"\" }\n")}),
			Parents:  parents,
		}
	}
	first := at("1111111111aaaa", "41 m")
	second := at("2222222222bbbb", "52.5 m", history.Parent{ID: first.ID, Plant: first.Plant})
	h, err := history.Of(history.Asked{Label: "1A-A07"}, func(yield func(history.Step, error) bool) { _ = yield(second, nil) && yield(first, nil) })
	if err != nil {
		t.Fatal(err)
	}
	var text, document bytes.Buffer
	if err := render.HistoryText(&text, h, unit.US, console.Options{}); err != nil {
		t.Fatal(err)
	}
	fits(t, text.String())
	for _, want := range []string{"1A-A07, run: 2 events", "134.514 ft became 172.244 ft", "2222222222", `\x1b`} {
		if !strings.Contains(text.String(), want) {
			t.Errorf("the text lacks %q:\n%s", want, text.String())
		}
	}
	if strings.Contains(text.String(), "\x1b") {
		t.Errorf("a control character reached the page: %q", text.String())
	}
	if err := render.HistoryJSON(&document, h); err != nil {
		t.Fatal(err)
	}
	var got promisedHistory
	if err := json.Unmarshal(document.Bytes(), &got); err != nil {
		t.Fatal(err)
	}
	if got.Kind != "run" || got.Record != "1A-A07" || len(got.Events) != 2 {
		t.Fatalf("got %s", document.String())
	}
	e := got.Events[0]
	if e.Time != "2026-03-31T09:00:00+02:00" || e.Signature != "none" || e.Class != "change" || e.Fields[0].Before != "41 m" || e.Fields[0].After != "52.5 m" {
		t.Errorf("got %+v", e)
	}
}

func TestAnOrderOfNothing(t *testing.T) {
	t.Parallel()
	order := diffreport.Plan(nil, nil, diffreport.Compare(nil, nil, diffreport.Options{}), diffreport.PlanOptions{})
	strictOrder(t, order)
	if err := render.OrderText(failing{}, render.Job{Order: order}, console.Options{}); err == nil {
		t.Error("a writer that fails is an error")
	}
}

type failing struct{}

func (failing) Write([]byte) (int, error) { return 0, os.ErrClosed }
