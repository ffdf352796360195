package render_test

import (
	"fmt"
	"slices"
	"testing"
	"time"

	"homerun/diffreport"
	"homerun/diffreport/render"
	"homerun/schema"
	"homerun/schema/plant"
	"homerun/schema/unit"
)

// hostile are texts that would be markup, a formula, a command to a terminal or
// a trick on the eye, if a document let them.
var hostile = []string{
	`<script>document.title="taken"</script>`, `<img src=x onerror="document.title='taken'">`, `</style><b>x</b>`, `</title></svg></details></main>`,
	`"><a href="javascript:alert(1)">x</a>`, `' onclick='x`, `<!-- `, `-->`, `]]>`, `&lt;b&gt;&#60;&amp;`, `{{.Number}}`, `<plaintext>`, `<svg/onload=x>`,
	`**bold** _em_ ~~gone~~`, "`code`", "``` fence", `[x](javascript:alert(1))`, `![x](https://tracker.example/x.png)`, `[x]: https://a.example`, `<https://a.example>`,
	`https://a.example/x`, `www.a.example`, `WWW.a.example`, `ftp://a.example`, `mail@a.example`, `@somebody`, `@somebody/team`, `#12`, `somebody/plant#12`, `GH-12`, `:tada:`, `:+1:`,
	`# heading`, `## 2`, `> quote`, `- item`, `+ item`, `* item`, `1. item`, `1)`, `12. x`, `---`, `===`, `***`, `| a | b |`, `|---|`, `\`, `\\*x*`, "$x^2$", `    code`, `[ ] box`, `[^1]`, `</details>`, `<details>`,
	`=1+1`, `+1`, `-1`, `@SUM(A1)`, `=cmd|'/C calc'!A0`, `=HYPERLINK("https://a.example","x")`, `  =1+1`, `＝1+1`, `'=1`, `_x0041_`, `"quoted", and more`,
	"\x1b[31mred\x1b[0m", "\x1b]0;title\x07", "two\nlines", "carriage\rreturn", "tab\tstop", "nul\x00byte", "\u202eright to left\u202c", "\u2066isolate\u2069", "zero\u200bwidth", "\ufeffmark", "\u2028line", "\xff\xfe", "\u0085next", "\U000e0041tag",
	"e\u0301", "通信室", "غرفة", "🔥", "ﬁ", "a\u00a0b",
	string(slices.Repeat([]byte("very-long-"), 4000)),
}

// fillIn makes an order whose every text is made by a function of a number, the
// same number for the same place.
func fillIn(text func(n int) string) render.Job {
	n := 0
	next := func() string { n++; return text(n) }
	o := diffreport.Order{
		Plant: next(), Base: next(), Head: next(), Number: next(), Units: unit.Metric, Executable: true,
		Clashes: []string{next(), next()}, Duties: []string{next()}, Proven: []string{next()},
		Labels: []string{next(), next()}, Strips: []string{next()}, Counts: diffreport.Counts{Adds: 1},
		Commits: []diffreport.Commit{{ID: next(), Author: next(), Subject: next(), Body: next(), Time: time.Date(2026, 3, 31, 9, 0, 0, 0, time.UTC)}},
	}
	for i := range hostile {
		caution := next()
		o.Cautions = append(o.Cautions, caution)
		o.Steps = append(o.Steps, diffreport.Step{
			Number: i + 1, Visit: i + 1, Action: diffreport.Pull, Class: diffreport.ClassAdd, Space: next(), Records: []string{next()},
			Text: next(), Outage: []string{next()}, Cautions: []string{caution}, RoomFor: "x" + next(), Undo: next(),
		})
		o.BackOut = append(o.BackOut, diffreport.Back{Step: i + 1, Space: "x" + next(), Text: next()})
		o.Outages = append(o.Outages, diffreport.Outage{Port: next(), Service: "x" + next(), From: 1, To: 2, At: []string{next()}})
		o.Materials = append(o.Materials, diffreport.Material{Item: next(), Count: 1, Parts: []diffreport.Part{{Record: next(), Count: 1}}})
		o.Tests = append(o.Tests, diffreport.Test{Record: next(), Limit: next(), Reason: next()})
		o.Changes = append(o.Changes, diffreport.Change{Class: diffreport.ClassAdd, Kind: "run", Label: "x" + next(), Former: "x" + next(), Why: next()})
		o.Introduced = append(o.Introduced, diffreport.FindingLine{
			Rule: "length-channel", Severity: "observation", Kind: "run", Record: next(), Path: next(), Message: next(), Source: "x" + next(),
			Working: []diffreport.Term{{Term: next(), Value: next()}},
		})
	}
	return render.Job{Order: o}
}

// hostileJob has a hostile text in every place, another one in each, and
// harmlessJob letters in the same places. A document of both has the same shape.
func hostileJob(shift int) render.Job {
	return fillIn(func(n int) string { return hostile[(n+shift)%len(hostile)] })
}

func harmlessJob() render.Job {
	return fillIn(func(n int) string { return fmt.Sprint("plain", n) })
}

// hostilePlants are records that say what an order repeats in drawings.
func hostilePlants(t *testing.T) render.Job {
	t.Helper()
	const records = `plant "<i>mole</i>" {
  standard = "TIA-568"
}
space "<b>1A</b>" {
  kind  = "telecommunications-room"
  title = "</svg><script>document.title='taken'</script>"
}
space "=1+1" {
  kind  = "work-area"
  title = "\" onload=\"x"
}
cable "@c6a" {
  category = "6A"
}
pathway "</text>&" {
  kind    = "tray"
  through = ["<b>1A</b>", "=1+1"]
  length  = "34 m"
}
panel "A\"><x" {
  space = "<b>1A</b>"
  ports = 24
}
outlet "]]>" {
  space = "=1+1"
  ports = 2
}
run "**1**" {
  from   = "A\"><x:7"
  to     = "]]>:1"
  cable  = "@c6a"
  route  = ["</text>&"]
  length = "40 m"
  note   = "[x](javascript:1)"
}
`
	head := plant.Build(".", []*schema.File{schema.NewReader().ReadFile("plant.hcl", records)})
	if len(head.Problems) > 0 {
		t.Fatalf("the records can not be read: %+v", head.Problems)
	}
	return render.Job{Order: diffreport.Plan(nil, head, diffreport.Compare(nil, head, diffreport.Options{}), diffreport.PlanOptions{Head: "worktree"}), Head: head}
}
