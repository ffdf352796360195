package labels_test

import (
	"fmt"
	"maps"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
	"github.com/google/go-cmp/cmp/cmpopts"
	"pgregory.net/rapid"

	"homerun/diffreport/labels"
	"homerun/schema/plant"
)

func isFirestop(l labels.Label) bool { return strings.HasPrefix(l.Kind, "fire-stop") }

// TestEveryLabelOfAnOrderIsPrintedAsOftenAsItIsNeeded takes any two states of
// the story, in either direction.
func TestEveryLabelOfAnOrderIsPrintedAsOftenAsItIsNeeded(t *testing.T) {
	t.Parallel()
	plants := story(t)
	rapid.Check(t, func(t *rapid.T) {
		base := plants[rapid.IntRange(0, len(plants)-1).Draw(t, "base")]
		head := plants[rapid.IntRange(0, len(plants)-1).Draw(t, "head")]
		order, set := change(base, head)
		var ids []string
		ends := make(map[string][]string)
		for _, l := range set.Labels {
			ids = append(ids, l.ID)
			if l.Kind == "run" {
				ends[l.ID] = append(ends[l.ID], l.At)
			}
		}
		if diff := cmp.Diff(count(order.Labels), count(ids)); diff != "" {
			t.Fatalf("needed, and printed:\n%s", diff)
		}
		var strips []string
		for _, s := range set.Strips {
			strips = append(strips, s.Holder)
		}
		if diff := cmp.Diff(order.Strips, slices.Sorted(slices.Values(strips)), cmpopts.EquateEmpty()); diff != "" {
			t.Fatalf("port strips needed, and printed:\n%s", diff)
		}
		for run, at := range ends {
			item, _ := head.Find(run)
			r := item.(*plant.Run)
			if want := []string{"at " + r.From.String(), "at " + r.To.String()}; !slices.Equal(slices.Sorted(slices.Values(want)), slices.Sorted(slices.Values(at))) {
				t.Fatalf("%s ends %q, and its labels are for %q", run, want, at)
			}
		}
	})
}

// TestTheLabelsOfAPlantAreWhatItsRecordsSay counts in the text of the records,
// which the labels were not made from.
func TestTheLabelsOfAPlantAreWhatItsRecordsSay(t *testing.T) {
	t.Parallel()
	for _, name := range []string{"saltmarsh-hall", "granary-court"} {
		files := example(t, name)
		text := strings.Join(slices.Collect(maps.Values(files)), "\n")
		set := labels.Whole(build(files))
		got := make(map[string]int)
		for _, l := range set.Labels {
			if isFirestop(l) {
				got["fire-stop "+l.ID]++
				continue
			}
			got[l.Kind+" "+l.ID]++
		}
		want := make(map[string]int)
		for _, m := range regexp.MustCompile(`(?m)^\s*(run|cord|panel|outlet|pathway|rack|busbar|equipment|consolidation-point|splice-closure) "([^"]+)" \{`).FindAllStringSubmatch(text, -1) {
			want[strings.ReplaceAll(m[1], "-", " ")+" "+m[2]] = 1
			if m[1] == "run" || m[1] == "cord" || m[1] == "pathway" {
				want[m[1]+" "+m[2]] = 2
			}
		}
		for _, m := range regexp.MustCompile(`(?m)^\s*firestop\s*= "([^"]+)"`).FindAllStringSubmatch(text, -1) {
			want["fire-stop "+m[1]] = 2
		}
		if diff := cmp.Diff(want, got); diff != "" {
			t.Errorf("%s: in the records, and printed:\n%s", name, diff)
		}
		ports := 0
		for _, m := range regexp.MustCompile(`(?m)^(?:panel|outlet|consolidation-point|splice-closure) "[^"]+" \{\n(?:  .*\n)*?  ports\s*= (\d+)`).FindAllStringSubmatch(text, -1) {
			n, _ := strconv.Atoi(m[1])
			ports += n
		}
		for _, s := range set.Strips {
			ports -= len(s.Ports)
		}
		if ports != 0 {
			t.Errorf("%s: %d ports of the records are not on a strip", name, ports)
		}
		if len(set.Planned) > 0 || set.Order != "" {
			t.Errorf("%s: planned %v, order %q", name, set.Planned, set.Order)
		}
	}
}

const siteText = `
plant "mole-end" { standard = "TIA-568" }
space "1A" { kind = "telecommunications-room" }
space "1-HALL" { kind = "corridor" }
cable "c6a" { category = "6A" }
rack "1A-R1" { space = "1A" }
panel "1A-A" {
  space = "1A"
  rack  = "1A-R1"
  unit  = 40
  ports = 12
}
outlet "1.104" {
  space = "1-HALL"
  ports = 2
}
pathway "1-T-01" {
  kind    = "tray"
  through = ["1A", "1-HALL"]
  length  = "20 m"
  crossing "1-W-01" {
    firestop        = "1-FSL07"
    firestop_rating = "1 h"
    between         = ["1A", "1-HALL"]
  }
}
run "1A-A07" {
  from   = "1A-A:07"
  to     = "1.104:1"
  cable  = "c6a"
  route  = ["1-T-01"]
  length = "22 m"
}
`

func site(t *testing.T, edits ...string) *plant.Plant {
	t.Helper()
	text := siteText
	for i := 0; i < len(edits); i += 2 {
		if !strings.Contains(text, edits[i]) {
			t.Fatalf("the site has no %q", edits[i])
		}
		text = strings.ReplaceAll(text, edits[i], edits[i+1])
	}
	return build(map[string]string{"plant.hcl": text})
}

func lines(set labels.Set) string {
	var b strings.Builder
	for _, l := range set.Labels {
		fmt.Fprintf(&b, "%s | %s | %s | %s\n", l.ID, l.Kind, l.Space, l.At)
	}
	for _, s := range set.Strips {
		fmt.Fprintf(&b, "strip %s | %s | %s..%s\n", s.Holder, s.Space, s.Ports[0], s.Ports[len(s.Ports)-1])
	}
	return b.String()
}

func TestLabelsOfChanges(t *testing.T) {
	t.Parallel()
	for _, c := range []struct {
		name  string
		edits []string
		want  string
	}{
		{"nothing", nil, ""},
		{"a length corrected", []string{`"22 m"`, `"21 m"`}, ""},
		{"a fire-stop made anew", []string{`"1-FSL07"`, `"1-FSL09"`}, "1-FSL09 | fire-stop, 1 h | 1-HALL | at 1-T-01\n1-FSL09 | fire-stop, 1 h | 1A | at 1-T-01\n"},
		{"a fire-stop of another rating", []string{`= "1 h"`, `= "2 h"`}, "1-FSL07 | fire-stop, 2 h | 1-HALL | at 1-T-01\n1-FSL07 | fire-stop, 2 h | 1A | at 1-T-01\n"},
		{"a panel renamed", []string{"panel \"1A-A\" {", "panel \"1A-B\" {\n former = \"1A-A\"\n", `"1A-A:07"`, `"1A-B:07"`}, "1A-B | panel | 1A | in rack 1A-R1 unit 40\nstrip 1A-B | 1A | 1A-B:01..1A-B:12\n"},
		{"a run renamed", []string{"run \"1A-A07\" {", "run \"1A-A7\" {\n former = \"1A-A07\"\n"}, "1A-A7 | run | 1-HALL | at 1.104:1\n1A-A7 | run | 1A | at 1A-A:07\n"},
		{"a pathway renamed keeps its fire-stop", []string{"pathway \"1-T-01\" {", "pathway \"1-T-02\" {\n former = \"1-T-01\"\n", `["1-T-01"]`, `["1-T-02"]`}, "1-T-02 | pathway | 1-HALL | towards 1A\n1-T-02 | pathway | 1A | towards 1-HALL\n"},
		{"a panel exchanged", []string{`unit  = 40`, "unit = 40\n  category = \"6A\"", `ports = 12`, `ports = 24`}, "1A-A | panel | 1A | in rack 1A-R1 unit 40\nstrip 1A-A | 1A | 1A-A:01..1A-A:24\n"},
		{"a panel exchanged and renamed", []string{`ports = 12`, `ports = 24`, "panel \"1A-A\" {", "panel \"1A-B\" {\n former = \"1A-A\"\n", `"1A-A:07"`, `"1A-B:07"`}, "1A-B | panel | 1A | in rack 1A-R1 unit 40\nstrip 1A-B | 1A | 1A-B:01..1A-B:24\n"},
		{"a panel moved keeps its label", []string{`unit  = 40`, `unit = 41`}, ""},
	} {
		t.Run(c.name, func(t *testing.T) {
			t.Parallel()
			_, set := change(site(t), site(t, c.edits...))
			if diff := cmp.Diff(c.want, lines(set)); diff != "" {
				t.Error(diff)
			}
		})
	}
}

func TestAPlannedRunIsNamedAndHasNoLabel(t *testing.T) {
	t.Parallel()
	set := labels.Whole(site(t, `length = "22 m"`, "length = \"22 m\"\n state = \"planned\""))
	if strings.Contains(lines(set), "1A-A07 |") || !slices.Equal(set.Planned, []string{"1A-A07"}) {
		t.Errorf("planned %v:\n%s", set.Planned, lines(set))
	}
}

func TestNothingIsNeededForNothing(t *testing.T) {
	t.Parallel()
	if _, set := change(site(t), nil); len(set.Labels)+len(set.Strips) > 0 {
		t.Errorf("a plant taken out needs no labels:\n%s", lines(set))
	}
}

func TestAnOrderForARecordThatIsNotThereIsPrintedAllTheSame(t *testing.T) {
	t.Parallel()
	order, _ := change(site(t), site(t))
	order.Labels = []string{"ghost"}
	if set := labels.For(order, site(t)); len(set.Labels) != 1 || set.Labels[0].ID != "ghost" {
		t.Errorf("got %v", set.Labels)
	}
}

func TestLabelsStandInTheOrderInWhichPeopleCount(t *testing.T) {
	t.Parallel()
	text := siteText
	for _, n := range []string{"10", "2", "9"} {
		text += "outlet \"1." + n + "\" {\n  space = \"1-HALL\"\n  ports = 1\n}\n"
	}
	set := labels.Whole(build(map[string]string{"plant.hcl": text}))
	var got []string
	for _, l := range set.Labels {
		if l.Kind == "outlet" {
			got = append(got, l.ID)
		}
	}
	if want := []string{"1.2", "1.9", "1.10", "1.104"}; !slices.Equal(got, want) {
		t.Errorf("got %v, want %v", got, want)
	}
}
