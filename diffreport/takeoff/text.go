package takeoff

import (
	"fmt"
	"io"
	"strings"

	"homerun/schema"
	"homerun/schema/console"
)

// TextOptions say how a take-off is shown to people.
type TextOptions struct {
	console.Options
	// Most bounds how many parts of one sum are listed; 0 lists all. The rest
	// is counted, never dropped in silence.
	Most int
}

// Text writes the list by group, each item with its sum.
func Text(w io.Writer, t Takeoff, o TextOptions) error {
	page := console.New(w, o.Options)
	what := "all that is planned, in service or spare, " + t.Head
	if t.Base != "" {
		what = "what " + t.Base + ".." + t.Head + " adds, planned work included, and pulls or exchanges anew"
	}
	page.Line(0, 2, console.In(console.Strong, "Take-off"), console.Plain(", "+t.Plant+": "+what))
	assumed := fmt.Sprintf("assumed: %d %% waste on each run", t.Waste)
	if t.Reel > 0 {
		assumed += ", reels of " + t.Reel.Text(t.Units) + " for twisted pair and coaxial cable, fibre cut to length"
	}
	page.Line(0, 2, console.In(console.Quiet, assumed+" (common practice: set your own with --waste and --reel)"))
	for _, group := range Groups() {
		textGroup(page, &t, group, o.Most)
	}
	if len(t.Items) == 0 {
		page.Blank()
		page.Line(0, 2, console.Plain("nothing is needed"))
	}
	if len(t.Left) > 0 {
		page.Blank()
		page.Line(0, 2, console.Plain("not counted, since withdrawn: "+labels(t.Left, o.Most)))
	}
	return page.Err()
}

func textGroup(page *console.Page, t *Takeoff, group string, most int) {
	first := true
	for i := range t.Items {
		it := &t.Items[i]
		if it.Group != group {
			continue
		}
		if first {
			page.Blank()
			page.Line(0, 2, console.In(console.Strong, group))
			if group == GroupFirestop {
				page.Line(2, 2, console.In(console.Notice, "a fire-stop is a tested system for its wall or floor: the authority having jurisdiction and licensed practice decide"))
			}
			first = false
		}
		page.Line(2, 6, console.Plain(schema.Printable(it.Name)+": "), console.In(console.Strong, it.Quantity(t)))
		for _, line := range it.Working(t, most) {
			page.Line(6, 8, console.In(console.Quiet, line))
		}
	}
}

// Quantity is what to order.
func (it *Item) Quantity(t *Takeoff) string {
	switch {
	case it.Group == GroupCable && it.Reels != nil:
		return fmt.Sprintf("%s, %s", it.Gross.Text(t.Units), counted(it.Reels.Whole, "reel"))
	case it.Group == GroupCable && len(it.Parts) > 0:
		return it.Gross.Text(t.Units)
	case it.Group == GroupPathway && len(it.Parts) > 0:
		return it.Length.Text(t.Units)
	case it.Group == GroupCable || it.Group == GroupPathway:
		return "length not stated"
	}
	return itoa(it.Count)
}

func counted(n int, noun string) string {
	if n == 1 {
		return "1 " + noun
	}
	return itoa(n) + " " + noun + "s"
}

// Working is the sum that gives the quantity, line by line. Most bounds its
// parts; 0 lists all.
func (it *Item) Working(t *Takeoff, most int) []string {
	var lines []string
	if it.Length > 0 {
		lines = it.lengthLines(t, most)
	} else if len(it.Parts) > 1 {
		parts := make([]string, 0, len(it.Parts))
		for _, p := range it.Parts {
			parts = append(parts, fmt.Sprintf("%s %d", schema.Printable(p.Record), p.Count))
		}
		lines = append(lines, cutList(parts, most, " + ")+fmt.Sprintf(" = %d", it.Count))
	}
	if len(it.Unknown) > 0 {
		lines = append(lines, "not stated, and not in the sum: "+labels(it.Unknown, most))
		if it.Count > 0 {
			lines[len(lines)-1] = "not stated: " + labels(it.Unknown, most)
		}
	}
	return lines
}

// lengthLines are the parts of a length, their sum, the waste and the reels.
func (it *Item) lengthLines(t *Takeoff, most int) []string {
	var lines []string
	for i, p := range it.Parts {
		if most > 0 && i == most {
			lines = append(lines, fmt.Sprintf("and %d more: --most 0 lists all", len(it.Parts)-most))
			break
		}
		text := schema.Printable(p.Record)
		if it.Group == GroupCable {
			text += ", " + counted(p.Count, "run")
		}
		lines = append(lines, text+": "+p.Length.Text(t.Units))
	}
	if len(it.Parts) > 1 {
		lines = append(lines, "together "+it.Length.Text(t.Units))
	}
	if it.Group != GroupCable {
		return lines
	}
	lines = append(lines, fmt.Sprintf("with %d %% waste: %s x %s = %s", t.Waste, it.Length.Text(t.Units), factor(t.Waste), it.Gross.Text(t.Units)))
	if r := it.Reels; r != nil {
		lines = append(lines, fmt.Sprintf("reels of %s: at least %d by the metre; %d so that no run is spliced", r.Size.Text(t.Units), r.Least, r.Whole))
		if len(r.TooLong) > 0 {
			lines = append(lines, "longer than a reel, and in neither number: "+labels(r.TooLong, most))
		}
	}
	return lines
}

// factor is 1 and the waste: 1.1 for 10 %.
func factor(percent int) string {
	text := fmt.Sprintf("%d.%02d", 1+percent/100, percent%100)
	return strings.TrimSuffix(strings.TrimRight(text, "0"), ".")
}

func labels(all []string, most int) string {
	shown := make([]string, len(all))
	for i, l := range all {
		shown[i] = schema.Printable(l)
	}
	return cutList(shown, most, ", ")
}

func cutList(all []string, most int, between string) string {
	if most > 0 && len(all) > most {
		return strings.Join(all[:most], between) + fmt.Sprintf("%sand %d more", between, len(all)-most)
	}
	return strings.Join(all, between)
}
