package render_test

import (
	"bytes"
	"fmt"
	"io"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"github.com/xuri/excelize/v2"

	"homerun/diffreport/audit"
	"homerun/diffreport/history"
	"homerun/diffreport/render"
	"homerun/schema"
	"homerun/schema/unit"
)

// auditOf makes a report whose every text is made by a function of a number, the
// same number for the same place. Every table has rows.
func auditOf(text func(n int) string) *audit.Report {
	n := 0
	next := func() string { n++; return text(n) }
	today, _ := unit.ParseDate("2026-03-31")
	at := func(day int) history.Revision {
		return history.Revision{
			ID: fmt.Sprintf("%040d", day), Subject: next(), Author: next(), Committer: next(), Time: time.Date(2025, 1, 1+day, 9, 0, 0, 0, time.UTC), Signature: history.Bad,
		}
	}
	r := &audit.Report{About: audit.About{
		Plant: next(), Range: next(), From: at(0).ID, To: at(400).ID, Today: today, Tool: next(), RuleSet: "0123456789abcdef", RuleCount: 72, Branch: next(),
		Stated:   []audit.Edition{{Revision: at(1), Standard: next(), FireCode: next()}},
		Formerly: []audit.Earlier{{Name: next(), Commit: at(2).ID}},
	}, Begin: at(0), End: at(400), Commits: 9, Records: 8, Line: 7, Caught: 1}
	rule := "length-channel"
	for i := range hostile {
		f := audit.Finding{Rule: rule, Kind: "run", Record: next(), Message: next(), Nonconformity: true}
		r.Points = append(r.Points, audit.Point{Name: next(), Revision: at(i), Nonconformities: i, ByRule: []audit.RuleCount{{Rule: rule, Count: i}}})
		r.Samples = append(r.Samples, audit.Sample{Time: at(i).Time, Nonconformities: i, Waived: i / 3})
		r.Standing = append(r.Standing,
			&audit.Standing{Finding: f, Introduced: at(i), Opened: at(i), Days: i, Spells: []audit.Spell{{Waiver: next(), From: at(i)}}},
			&audit.Standing{Finding: f, Introduced: at(i), Opened: at(i), Cleared: at(i + 1), ClearedBy: at(i + 1), Days: 1})
		r.People = append(r.People, audit.PersonSum{Name: next(), Introduced: 1})
		r.Waivers = append(r.Waivers, audit.WaiverLife{
			Waiver: audit.Waiver{Label: next(), Rule: next(), Reason: next(), Granted: next(), Records: []string{next()}, Expires: today}, Entered: at(i),
			Changes: []audit.WaiverChange{{Revision: at(i), Before: today, After: today, Added: []string{next()}, Dropped: []string{next()}}},
		})
		r.Signatures.Doubtful = append(r.Signatures.Doubtful, at(i))
		r.Lost = append(r.Lost, audit.Lost{Ref: next(), Commit: at(i).ID, Commits: []history.Revision{at(i)}})
		r.Direct = append(r.Direct, at(i))
		r.Breaches = append(r.Breaches, audit.Breach{Finding: f, At: at(i)})
		r.Untested = append(r.Untested, audit.Untested{Label: next(), Changed: at(i), Class: "add", Test: next(), Tested: today})
		r.Repeated = append(r.Repeated, audit.Repeated{Kind: "run", Label: next(), Times: 4, First: at(1), Last: at(i)})
		r.Unknown = append(r.Unknown, next())
		r.Commands = append(r.Commands, audit.Command{Figure: next(), Command: next()})
	}
	r.Rules = []audit.RuleSum{{Rule: rule, Opened: 2, Cleared: 1, Stands: 1}}
	r.Signatures.Counts = make(map[history.Signature]int)
	r.Signatures.Counts[history.Bad] = 9
	return r
}

func hostileAudit(shift int) *audit.Report {
	return auditOf(func(n int) string { return hostile[(n+shift)%len(hostile)] })
}

func harmlessAudit() *audit.Report {
	return auditOf(func(n int) string { return fmt.Sprint("plain", n) })
}

// twice writes the same thing two times, which has to come out the same.
func twice(t *testing.T, write func(io.Writer) error) string {
	t.Helper()
	var first, again bytes.Buffer
	if err := write(&first); err != nil {
		t.Fatal(err)
	}
	if err := write(&again); err != nil {
		t.Fatal(err)
	}
	if !bytes.Equal(first.Bytes(), again.Bytes()) {
		t.Error("the same audit gave two documents")
	}
	return first.String()
}

func auditPage(t *testing.T, most int, reports ...*audit.Report) string {
	t.Helper()
	return twice(t, func(w io.Writer) error { return render.AuditPage(w, reports, most) })
}

// TestHostileAudit puts every hostile text into every place of an audit: the page
// has the elements of a harmless one and shows the texts, and no form of the report
// holds a character that does not print.
func TestHostileAudit(t *testing.T) {
	t.Parallel()
	harmless := auditPage(t, 0, harmlessAudit())
	// Each list is as long as the corpus, so one shift brings every text to every
	// place in it; the others are for what stands in no list.
	for shift := 0; shift < len(hostile); shift += 30 {
		r := hostileAudit(shift)
		got := auditPage(t, 0, r)
		sameShape(t, harmless, got)
		text := twice(t, func(w io.Writer) error { return render.AuditText(w, []*audit.Report{r}, render.AuditOptions{}) })
		json := twice(t, func(w io.Writer) error { return render.AuditJSON(w, []*audit.Report{r}) })
		for name, document := range map[string]string{"page": got, "text": text, "JSON": json} {
			if bad := invisible(document); bad != "" {
				t.Fatalf("the %s holds %q", name, bad)
			}
		}
		shown := words(t, got)
		for _, text := range hostile {
			if want := strings.Join(strings.Fields(schema.Printable(text)), " "); shift == 0 && !strings.Contains(shown, want) {
				t.Errorf("the page does not show %q", want)
			}
		}
	}
}

// TestHostileAuditWorkbook holds that no cell is a formula, whoever wrote it.
func TestHostileAuditWorkbook(t *testing.T) {
	t.Parallel()
	for _, shift := range []int{0, 7} {
		packed := twice(t, func(w io.Writer) error { return render.AuditWorkbook(w, []*audit.Report{hostileAudit(shift)}) })
		f, err := excelize.OpenReader(strings.NewReader(packed))
		if err != nil {
			t.Fatal(err)
		}
		for _, name := range f.GetSheetList() {
			rows, err := f.GetRows(name)
			if err != nil {
				t.Fatal(err)
			}
			if len(rows) < 2 {
				t.Errorf("%s has no rows", name)
			}
			for r, row := range rows {
				for c, text := range row {
					at, _ := excelize.CoordinatesToCellName(c+1, r+1)
					if formula, _ := f.GetCellFormula(name, at); formula != "" {
						t.Errorf("%s!%s is the formula %s", name, at, formula)
					}
					if trimmed := strings.TrimSpace(text); trimmed != "" && strings.ContainsAny(trimmed[:1], "=+-@") || strings.HasPrefix(trimmed, "＝") || invisible(text) != "" {
						t.Errorf("%s!%s is %q", name, at, text)
					}
				}
			}
		}
	}
}

// TestAuditLinks keeps each link of a page of several audits inside its own.
func TestAuditLinks(t *testing.T) {
	t.Parallel()
	got := auditPage(t, 5, harmlessAudit(), harmlessAudit())
	ids := make(map[string]int)
	for _, element := range shape(t, got) {
		if _, id, ok := strings.Cut(element, " id="); ok {
			ids[id]++
		}
	}
	links := 0
	for _, element := range shape(t, got) {
		if _, to, ok := strings.Cut(element, "href=#"); ok {
			links++
			if ids[to] != 1 {
				t.Errorf("%d elements are called %s", ids[to], to)
			}
		}
	}
	if links < 2*len(ids)/3 {
		t.Errorf("only %d links to %d places", links, len(ids))
	}
}

// TestAuditPageFits opens audits in a browser, and compares what it makes of a
// hostile and of a harmless one. Tables and charts may be wider than a telephone,
// and then move by themselves.
func TestAuditPageFits(t *testing.T) {
	t.Parallel()
	for name, r := range map[string]*audit.Report{"harmless": harmlessAudit(), "hostile": hostileAudit(0)} {
		for _, width := range []int{390, 1280} {
			t.Run(fmt.Sprint(name, width), func(t *testing.T) {
				t.Parallel()
				fitsABrowser(t, auditPage(t, 40, r), width)
			})
		}
	}
	dom := func(r *audit.Report) string {
		file := filepath.Join(t.TempDir(), "audit.html")
		if err := os.WriteFile(file, []byte(auditPage(t, 0, r)), 0o600); err != nil {
			t.Fatal(err)
		}
		return browser(t, "--dump-dom", "file://"+file)
	}
	sameShape(t, dom(harmlessAudit()), dom(hostileAudit(0)))
}

// TestAuditTextFits holds the report to the width of a terminal, but for what can
// not be broken.
func TestAuditTextFits(t *testing.T) {
	t.Parallel()
	fits(t, twice(t, func(w io.Writer) error {
		return render.AuditText(w, []*audit.Report{harmlessAudit()}, render.AuditOptions{})
	}))
}

// TestAuditPagePrints prints an audit on both papers: every sheet says at its foot
// of which report it is and counts itself, and no row is lost.
func TestAuditPagePrints(t *testing.T) {
	t.Parallel()
	program, err := exec.LookPath("pdftotext")
	if err != nil {
		t.Skip("pdftotext is not installed")
	}
	r := harmlessAudit()
	for _, paper := range []string{"A4", "letter"} {
		t.Run(paper, func(t *testing.T) {
			t.Parallel()
			dir := t.TempDir()
			file, pdf := filepath.Join(dir, "audit.html"), filepath.Join(dir, "audit.pdf")
			text := strings.Replace(auditPage(t, 12, r), "</style>", "@page { size: "+paper+" }</style>", 1)
			if err := os.WriteFile(file, []byte(text), 0o600); err != nil {
				t.Fatal(err)
			}
			browser(t, "--no-pdf-header-footer", "--print-to-pdf="+pdf, "file://"+file)
			out, err := exec.CommandContext(t.Context(), program, "-layout", pdf, "-").Output()
			if err != nil {
				t.Fatal(err)
			}
			sheets := strings.Split(strings.TrimSuffix(string(out), "\f"), "\f")
			for i, sheet := range sheets {
				for _, want := range []string{"Audit of cable records, " + r.Plant, fmt.Sprintf("%d / %d", i+1, len(sheets))} {
					if !strings.Contains(sheet, want) {
						t.Errorf("sheet %d does not say %q", i+1, want)
					}
				}
			}
			for _, p := range r.Points {
				if !strings.Contains(string(out), p.Name) {
					t.Errorf("the print does not show %s", p.Name)
				}
			}
		})
	}
}
