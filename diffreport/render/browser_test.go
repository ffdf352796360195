package render_test

import (
	"fmt"
	"net/http"
	"net/http/httptest"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"strings"
	"testing"

	"golang.org/x/tools/txtar"

	"homerun/diffreport"
	"homerun/diffreport/render"
	"homerun/schema"
)

// browser runs a real browser without a window.
func browser(t *testing.T, args ...string) string {
	t.Helper()
	program, err := exec.LookPath("chromium")
	if err != nil {
		t.Skip("chromium is not installed")
	}
	args = append([]string{
		"--headless", "--no-sandbox", "--disable-gpu", "--disable-background-networking", "--disable-dev-shm-usage",
		"--user-data-dir=" + t.TempDir(), "--virtual-time-budget=10000",
	}, args...)
	out, err := exec.CommandContext(t.Context(), program, args...).Output()
	if err != nil {
		t.Fatalf("chromium: %v", err)
	}
	return string(out)
}

// caseJobs are the orders of all cases, with their plants.
func caseJobs(t *testing.T) map[string]render.Job {
	t.Helper()
	names, err := filepath.Glob(filepath.FromSlash("../../testdata/orders/*.txtar"))
	if err != nil || len(names) == 0 {
		t.Fatalf("there are no cases: %v", err)
	}
	jobs := make(map[string]render.Job)
	for _, name := range names {
		archive, err := txtar.ParseFile(name)
		if err != nil {
			t.Fatal(err)
		}
		reader := schema.NewReader()
		j := render.Job{Base: plantIn(t, reader, archive, "base/"), Head: plantIn(t, reader, archive, "head/")}
		j.Order = diffreport.Plan(j.Base, j.Head, diffreport.Compare(j.Base, j.Head, diffreport.Options{}), diffreport.PlanOptions{Base: "0f1e2d3c4b5a", Head: "8c7d6e5f4a3b"})
		jobs[strings.TrimSuffix(filepath.Base(name), ".txtar")] = j
	}
	return jobs
}

// measure is a page that shows another one at a width and says what sticks out
// of it, whether a fold closes and a box takes a tick, whether everybody can use
// it, and whether anything ran.
const measure = `<!DOCTYPE html><body><iframe id="f" style="border:0" width="%d" height="800" src="/order"></iframe><pre id="out">nothing</pre><script>
document.getElementById("f").onload = function () {
	var d = this.contentDocument, wide = %d, said = [];
	if (d.documentElement.scrollWidth > wide) said.push("the page is " + d.documentElement.scrollWidth + " wide");
	d.querySelectorAll("main *").forEach(function (e) {
		if (e.closest(".route figure, .wide, .chart") || e.closest("svg") || e.closest("details:not([open])")) return;
		var r = e.getBoundingClientRect();
		if (r.right > wide + 0.5) said.push(e.tagName + "." + e.className + " ends at " + r.right);
	});
	var fold = d.querySelector("details");
	if (fold) {
		var before = fold.getBoundingClientRect().height;
		fold.querySelector("summary").click();
		if (fold.open || fold.getBoundingClientRect().height >= before) said.push("a fold does not close");
	}
	var box = d.querySelector("input");
	if (box) { box.parentElement.click(); if (!box.checked) said.push("a box takes no tick"); }
	said = said.concat(access(d));
	if (d.title.indexOf("taken") == 0) said.push("a text of the records ran");
	document.getElementById("out").textContent = said.join("; ") || "all fits";
};
</script>` + access

// access says what keeps somebody from using a page who can not see it, or not
// well, or has no mouse. Contrast is that of WCAG 2.1, 1.4.3.
const access = `<script>
function access(d) {
	var said = [];
	d.querySelectorAll("input, summary, a").forEach(function (e) {
		if (e.tabIndex < 0) said.push("the keyboard does not reach " + e.outerHTML);
		if (e.labels && !(e.labels.length == 1 && e.labels[0].textContent.trim())) said.push("a box is not named");
	});
	d.querySelectorAll("svg").forEach(function (e) {
		if (!e.getAttribute("aria-label") && e.getAttribute("aria-hidden") != "true") said.push("a drawing has no words");
	});
	d.querySelectorAll("table").forEach(function (e) { if (!e.querySelector("thead th")) said.push("a table has no headings"); });
	var light = function (c) {
		var v = c.match(/[\d.]+/g).slice(0, 3).map(function (n) { n /= 255; return n <= 0.04045 ? n / 12.92 : Math.pow((n + 0.055) / 1.055, 2.4); });
		return 0.2126 * v[0] + 0.7152 * v[1] + 0.0722 * v[2];
	};
	var seen = {};
	d.querySelectorAll("main *").forEach(function (e) {
		if (e.closest("svg") || !Array.prototype.some.call(e.childNodes, function (n) { return n.nodeType == 3 && n.data.trim(); })) return;
		for (var at = e; at && /rgba\(.*, 0\)|transparent/.test(getComputedStyle(at).backgroundColor); ) at = at.parentElement;
		var pair = [getComputedStyle(e).color, at ? getComputedStyle(at).backgroundColor : "rgb(255, 255, 255)"];
		if (seen[pair]) return;
		seen[pair] = true;
		var a = light(pair[0]), b = light(pair[1]);
		if ((Math.max(a, b) + 0.05) / (Math.min(a, b) + 0.05) < 4.5) said.push("hard to read: " + pair.join(" on ") + " in " + e.tagName + "." + e.className);
	});
	return said;
}
</script>`

// TestPageFits opens pages in a browser at the width of a telephone and of a
// desk.
func TestPageFits(t *testing.T) {
	t.Parallel()
	var all []render.Job
	for _, name := range []string{"new-runs", "renamed-panel", "clash"} {
		all = append(all, caseJobs(t)[name])
	}
	pages := map[string]string{"real": page(t, all...), "hostile": page(t, hostilePlants(t), hostileJob(0))}
	for name, text := range pages {
		for _, width := range []int{390, 1280} {
			t.Run(fmt.Sprint(name, width), func(t *testing.T) {
				t.Parallel()
				fitsABrowser(t, text, width)
			})
		}
	}
}

// fitsABrowser opens a page in a browser at a width, in CSS pixels.
func fitsABrowser(t *testing.T, text string, width int) {
	t.Helper()
	mux := http.NewServeMux()
	answer := func(text string) http.HandlerFunc {
		return func(w http.ResponseWriter, _ *http.Request) {
			w.Header().Set("Content-Type", "text/html; charset=utf-8")
			fmt.Fprint(w, text)
		}
	}
	mux.HandleFunc("/order", answer(text))
	mux.HandleFunc("/", answer(fmt.Sprintf(measure, width, width)))
	server := httptest.NewServer(mux)
	defer server.Close()
	dom := browser(t, "--dump-dom", server.URL)
	if !strings.Contains(dom, ">all fits</pre>") {
		_, said, _ := strings.Cut(dom, `<pre id="out">`)
		said, _, _ = strings.Cut(said, "</pre>")
		t.Errorf("%.600s", said)
	}
}

// TestHostilePageInABrowser compares what a browser makes of a hostile and of a
// harmless page.
func TestHostilePageInABrowser(t *testing.T) {
	t.Parallel()
	dom := func(j render.Job) string {
		file := filepath.Join(t.TempDir(), "order.html")
		if err := os.WriteFile(file, []byte(page(t, j)), 0o600); err != nil {
			t.Fatal(err)
		}
		return browser(t, "--dump-dom", "file://"+file)
	}
	sameShape(t, dom(harmlessJob()), dom(hostileJob(0)))
}

// TestPagePrints prints orders on both papers: visits are kept together, short
// ones share a sheet, and nothing is lost at the edge.
func TestPagePrints(t *testing.T) {
	t.Parallel()
	program, err := exec.LookPath("pdftotext")
	if err != nil {
		t.Skip("pdftotext is not installed")
	}
	jobs := map[string]render.Job{"three visits": caseJobs(t)["new-runs"], "many short visits": harmlessJob()}
	for name, job := range jobs {
		for _, paper := range []string{"A4", "letter"} {
			t.Run(name+" "+paper, func(t *testing.T) {
				t.Parallel()
				dir := t.TempDir()
				text := strings.Replace(page(t, job), "</style>", "@page { size: "+paper+" }</style>", 1)
				text = strings.ReplaceAll(text, "<details open", "<details") // as somebody left it who closed all folds
				file, pdf := filepath.Join(dir, "order.html"), filepath.Join(dir, "order.pdf")
				if err := os.WriteFile(file, []byte(text), 0o600); err != nil {
					t.Fatal(err)
				}
				browser(t, "--no-pdf-header-footer", "--print-to-pdf="+pdf, "file://"+file)
				out, err := exec.CommandContext(t.Context(), program, "-layout", pdf, "-").Output()
				if err != nil {
					t.Fatal(err)
				}
				sheets := strings.Split(strings.TrimSuffix(string(out), "\f"), "\f")
				shared := keptTogether(t, sheets, len(job.Order.Visits()))
				if name == "many short visits" && shared == 0 {
					t.Error("no two visits share a sheet")
				}
				whole := strings.Join(strings.Fields(string(out)), " ")
				for i := range job.Order.Changes {
					if why, _, _ := strings.Cut(job.Order.Changes[i].Why, ","); !strings.Contains(whole, why) {
						t.Errorf("the print does not show why %s changes, in a closed fold", job.Order.Changes[i].Label)
					}
				}
				for _, step := range job.Order.Steps {
					first, _, _ := strings.Cut(step.Text, ",")
					if !strings.Contains(whole, strings.Join(strings.Fields(first), " ")) {
						t.Errorf("the print does not show step %d, %q", step.Number, first)
					}
				}
			})
		}
	}
}

// keptTogether holds the sheets to what a crew needs: the visits come in their
// order, one that does not begin its sheet ends on it, and the line that is
// signed never stands on a sheet without a step. It returns how many visits share
// a sheet with an earlier one.
func keptTogether(t *testing.T, sheets []string, visits int) (shared int) {
	t.Helper()
	marks := regexp.MustCompile(`(?m)^\s*Visit (\d+) of \d+|visit finished`)
	next := 1
	for i, sheet := range sheets {
		open := false
		for k, found := range marks.FindAllStringSubmatchIndex(sheet, -1) {
			begins := found[2] >= 0
			switch alone := strings.TrimSpace(sheet[:found[0]]) == ""; {
			case !begins && alone:
				t.Errorf("sheet %d begins with the line that is signed", i+1)
			case begins && open:
				t.Errorf("sheet %d has a part of visit %d only", i+1, next-1)
			case begins:
				if got := sheet[found[2]:found[3]]; got != fmt.Sprint(next) {
					t.Errorf("sheet %d has visit %s, not %d", i+1, got, next)
				}
				next++
				if k > 0 {
					shared++
				}
				open = !alone
			default:
				open = false
			}
		}
		if open {
			t.Errorf("visit %d begins on sheet %d and does not end there", next-1, i+1)
		}
	}
	if next != visits+1 {
		t.Errorf("%d visits are printed of %d", next-1, visits)
	}
	return shared
}
