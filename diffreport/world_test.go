package diffreport_test

import (
	"fmt"
	"maps"
	"slices"
	"strings"

	"pgregory.net/rapid"

	"homerun/schema"
	"homerun/schema/plant"
)

// A thing is one record of a made-up site. It knows other things by their
// number and not by their label, so that what is the same thing is known by
// construction, whatever it is called.
type thing struct {
	kind, label string
	// fields hold literals as written, or references: "@3" a thing, "@3:7" a
	// port of it, "@3 @4" a list of things.
	fields map[string]string
	// in is the bundle that a run stands in, 0 for none.
	in int
}

// A world is a made-up site: its things by number.
type world map[int]*thing

func (w world) clone() world {
	c := make(world, len(w))
	for id, t := range w {
		c[id] = &thing{t.kind, t.label, maps.Clone(t.fields), t.in}
	}
	return c
}

func (w world) add(kind, label string, fields map[string]string) int {
	id := 1
	for ; w[id] != nil; id++ {
	}
	return w.put(id, kind, label, fields)
}

func (w world) put(id int, kind, label string, fields map[string]string) int {
	w[id] = &thing{kind: kind, label: label, fields: fields}
	return id
}

func (w world) of(kinds ...string) []int {
	var ids []int
	for id, t := range w {
		if slices.Contains(kinds, t.kind) {
			ids = append(ids, id)
		}
	}
	slices.Sort(ids)
	return ids
}

// literal writes a stored value as the record language has it.
func (w world) literal(value string) string {
	if !strings.HasPrefix(value, "@") {
		return value
	}
	name := func(ref string) string {
		var id, port int
		if n, _ := fmt.Sscanf(ref, "@%d:%d", &id, &port); n == 2 {
			return fmt.Sprintf("%q", fmt.Sprintf("%s:%d", w[id].label, port))
		}
		fmt.Sscanf(ref, "@%d", &id)
		return fmt.Sprintf("%q", w[id].label)
	}
	if !strings.Contains(value, " ") {
		return name(value)
	}
	var names []string
	for ref := range strings.FieldsSeq(value) {
		names = append(names, name(ref))
	}
	return "[" + strings.Join(names, ", ") + "]"
}

// A layout is a way to write the same records down.
type layout struct {
	order  []int
	files  int
	indent string
	remark string
}

func plain(w world) layout {
	return layout{order: slices.Sorted(maps.Keys(w)), files: 1, indent: "  "}
}

// write lays the records out and reads them back, with a reader of its own.
func (w world) write(l layout) *plant.Plant {
	texts := make([]strings.Builder, l.files)
	block := func(b *strings.Builder, id int, indent string) {
		t := w[id]
		fmt.Fprintf(b, "%s%s %q {%s\n", indent, t.kind, t.label, l.remark)
		names := slices.Sorted(maps.Keys(t.fields))
		if l.remark != "" {
			slices.Reverse(names)
		}
		for _, name := range names {
			fmt.Fprintf(b, "%s%s%s = %s\n", indent, l.indent, name, w.literal(t.fields[name]))
		}
		for _, in := range l.order {
			if w[in].in == id {
				t := w[in]
				fmt.Fprintf(b, "%srun %q {\n", l.indent, t.label)
				for _, name := range slices.Sorted(maps.Keys(t.fields)) {
					fmt.Fprintf(b, "%s%s = %s\n", l.indent, name, w.literal(t.fields[name]))
				}
				b.WriteString("}\n")
			}
		}
		fmt.Fprintf(b, "%s}\n\n", indent)
	}
	for n, id := range l.order {
		if w[id].in == 0 {
			block(&texts[n%l.files], id, "")
		}
	}
	return build(texts)
}

func build(texts []strings.Builder) *plant.Plant {
	reader := schema.NewReader()
	files := []*schema.File{reader.ReadFile("plant.hcl", "plant \"mole-end\" {\n  standard = \"TIA-568\"\n}\n")}
	for i := range texts {
		files = append(files, reader.ReadFile(fmt.Sprintf("part-%d.hcl", i), texts[i].String()))
	}
	return plant.Build(".", files)
}

// sound insists that the made-up site is one without mistakes, so that a law is
// never shown on records that could not be read.
func sound(t interface {
	Fatalf(string, ...any)
	Helper()
}, p *plant.Plant,
) *plant.Plant {
	t.Helper()
	if len(p.Problems) > 0 || len(p.Clashes) > 0 {
		t.Fatalf("the made-up site is not sound: %+v %+v", p.Problems, p.Clashes)
	}
	return p
}

const ports = 8

// site makes a small site with some runs and cords.
func site(t *rapid.T) world {
	w := world{}
	room := w.add("space", "1A", map[string]string{"kind": `"telecommunications-room"`})
	hall := w.add("space", "1-HALL", map[string]string{"kind": `"work-area"`})
	shop := w.add("space", "1-SHOP", map[string]string{"kind": `"workshop"`})
	w.add("cable", "c6a", map[string]string{"category": `"6A"`})
	w.add("cable", "c6", map[string]string{"category": `"6"`})
	w.add("pathway", "1-T-01", map[string]string{"kind": `"tray"`, "through": ref(room) + " " + ref(hall), "length": `"20 m"`})
	w.add("pathway", "1-T-02", map[string]string{"kind": `"tray"`, "through": ref(room) + " " + ref(shop), "length": `"25 m"`})
	rack := w.add("rack", "1A-R1", map[string]string{"space": ref(room)})
	for i := range 2 {
		w.add("panel", fmt.Sprintf("1A-%c", 'A'+i), map[string]string{"space": ref(room), "rack": ref(rack), "unit": fmt.Sprint(20 + i), "ports": fmt.Sprint(ports), "category": `"6A"`})
	}
	w.add("equipment", "1A-SW1", map[string]string{"kind": `"switch"`, "space": ref(room), "ports": fmt.Sprint(ports)})
	for i, where := range []int{hall, shop} {
		w.add("equipment", fmt.Sprintf("1-PC%d", i+1), map[string]string{"kind": `"workstation"`, "space": ref(where), "ports": "2"})
	}
	for i := range 4 {
		where := []int{hall, shop}[i/2]
		w.add("outlet", fmt.Sprintf("1.10%d", i), map[string]string{"space": ref(where), "ports": "2"})
	}
	cables, ways := w.of("cable"), w.of("pathway")
	for i := range 2 {
		w.add("bundle", fmt.Sprintf("1-B-%02d", i+1), map[string]string{"cable": ref(cables[i]), "route": ref(ways[i]) + " " + ref(ways[1-i])})
	}
	for range rapid.IntRange(0, 6).Draw(t, "runs") {
		w.addRun(t, "1A-N", 20)
	}
	for range rapid.IntRange(0, 4).Draw(t, "cords") {
		w.addCord(t, "1A-C", 2)
	}
	for range rapid.IntRange(0, 2).Draw(t, "desk cords") {
		w.addDeskCord(t, "1-E", 3)
	}
	for range rapid.IntRange(0, 2).Draw(t, "ties") {
		w.addTie(t, "1A-N", 20)
	}
	for range rapid.IntRange(0, 2).Draw(t, "cords across") {
		w.addCordAcross(t, "1A-C", 2)
	}
	return w
}

func ref(id int) string                     { return fmt.Sprintf("@%d", id) }
func portRef(id, n int) string              { return fmt.Sprintf("@%d:%d", id, n) }
func quoted(format string, a ...any) string { return fmt.Sprintf("%q", fmt.Sprintf(format, a...)) }

// free lists the ports of some kinds whose side nothing uses: the rear for
// runs, the front for cords.
func (w world) free(user string, kinds ...string) []string {
	used := make(map[string]bool)
	for _, id := range w.of(user) {
		used[w[id].fields["from"]], used[w[id].fields["to"]] = true, true
	}
	var found []string
	for _, id := range w.of(kinds...) {
		n := ports
		if value := w[id].fields["ports"]; value == "2" {
			n = 2
		}
		for p := 1; p <= n; p++ {
			if !used[portRef(id, p)] {
				found = append(found, portRef(id, p))
			}
		}
	}
	return found
}

// fresh is a label that nothing bears or bore.
func (w world) fresh(t *rapid.T, prefix string) string {
	for n := rapid.IntRange(1, 99).Draw(t, "number"); ; n++ {
		label := fmt.Sprintf("%s%02d", prefix, n)
		taken := false
		for _, have := range w {
			taken = taken || have.label == label || have.fields["former"] == quoted("%s", label)
		}
		if !taken {
			return label
		}
	}
}

// addRun adds a run between free ports. Its label and length are of a range of
// the caller's: a new cable under a new label that states just what a removed
// one did could not be told from it.
func (w world) addRun(t *rapid.T, prefix string, shortest int) {
	w.addRunBetween(t, prefix, shortest, w.free("run", "panel"), w.free("run", "outlet"))
}

// addTie adds a run between two panels, so that a channel may have several runs.
func (w world) addTie(t *rapid.T, prefix string, shortest int) {
	free := w.free("run", "panel")
	w.addRunBetween(t, prefix, shortest, free[:len(free)/2], free[len(free)/2:])
}

func (w world) addRunBetween(t *rapid.T, prefix string, shortest int, from, to []string) {
	if len(from) == 0 || len(to) == 0 {
		return
	}
	fields := map[string]string{
		"from":   rapid.SampledFrom(from).Draw(t, "from"),
		"to":     rapid.SampledFrom(to).Draw(t, "to"),
		"length": quoted("%d m", rapid.IntRange(shortest, shortest+60).Draw(t, "length")),
	}
	id := w.put(w.unused(t, prefix), "run", w.fresh(t, prefix), fields)
	if rapid.Bool().Draw(t, "in a bundle") {
		w[id].in = rapid.SampledFrom(w.of("bundle")).Draw(t, "bundle")
		return
	}
	fields["cable"] = ref(rapid.SampledFrom(w.of("cable")).Draw(t, "cable"))
	ways := w.of("pathway")
	fields["route"] = ref(ways[0]) + " " + ref(ways[1])
}

func (w world) addCord(t *rapid.T, prefix string, length int) {
	from, to := w.free("cord", "panel"), w.free("cord", "equipment")
	if len(from) == 0 || len(to) == 0 {
		return
	}
	w.put(w.unused(t, prefix), "cord", w.fresh(t, prefix), map[string]string{
		"from": rapid.SampledFrom(from).Draw(t, "from"), "to": rapid.SampledFrom(to).Draw(t, "to"), "length": quoted("%d m", length),
	})
}

// addCordAcross adds a cord between two ports of panels.
func (w world) addCordAcross(t *rapid.T, prefix string, length int) {
	free := w.free("cord", "panel")
	from, to := free[:len(free)/2], free[len(free)/2:]
	if len(from) == 0 || len(to) == 0 {
		return
	}
	w.put(w.unused(t, prefix), "cord", w.fresh(t, prefix), map[string]string{
		"from": rapid.SampledFrom(from).Draw(t, "from"), "to": rapid.SampledFrom(to).Draw(t, "across to"), "length": quoted("%d m", length),
	})
}

// addDeskCord adds a cord between an outlet and what stands beside it.
func (w world) addDeskCord(t *rapid.T, prefix string, length int) {
	from, to := w.free("cord", "outlet"), w.free("cord", "equipment")
	if len(from) == 0 || len(to) == 0 {
		return
	}
	w.put(w.unused(t, prefix), "cord", w.fresh(t, prefix), map[string]string{
		"from": rapid.SampledFrom(from).Draw(t, "outlet"), "to": rapid.SampledFrom(to).Draw(t, "desk"), "length": quoted("%d m", length),
	})
}

// unused is a number that no thing of either side has.
func (w world) unused(t *rapid.T, prefix string) int {
	from := 1 << 20
	if strings.HasPrefix(prefix, "1A-N") || strings.HasPrefix(prefix, "1A-C") || strings.HasPrefix(prefix, "1-E") {
		from = 1000 // the things that a site begins with
	}
	for {
		id := rapid.IntRange(from, 2*from).Draw(t, "thing")
		if w[id] == nil {
			return id
		}
	}
}

func drawLayout(t *rapid.T, w world) layout {
	return layout{
		order:  rapid.Permutation(slices.Sorted(maps.Keys(w))).Draw(t, "order"),
		files:  rapid.IntRange(1, 3).Draw(t, "files"),
		indent: rapid.SampledFrom([]string{"", "  ", "\t"}).Draw(t, "indent"),
		remark: rapid.SampledFrom([]string{"", " # seen on site", "\n\n  // seen on site"}).Draw(t, "remark"),
	}
}
