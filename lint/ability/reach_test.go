package ability_test

import (
	"fmt"
	"strings"
	"testing"

	"homerun/lint/ability"
	"homerun/schema"
	"homerun/schema/plant"
	"homerun/schema/standard"
)

// channel is the text of one channel, for filling in.
type channel struct {
	family, cable, cord string
	link                string
	// cords are the lengths of the two cords; empty where none is recorded.
	cords       [2]string
	jack        string
	temperature string
}

func (c channel) plant(t *testing.T) *plant.Plant {
	t.Helper()
	var b strings.Builder
	fmt.Fprintf(&b, "plant \"p\" {\n  standard = %q\n}\n", c.family)
	b.WriteString("space \"1A\" {\n  kind = \"telecommunications-room\"\n}\nspace \"1-H\" {\n  kind = \"work-area\"\n")
	if c.temperature != "" {
		fmt.Fprintf(&b, "  temperature = %q\n", c.temperature)
	}
	b.WriteString("}\npathway \"T\" {\n  kind = \"tray\"\n  through = [\"1A\", \"1-H\"]\n  length = \"1 m\"\n}\n")
	fmt.Fprintf(&b, "cable \"c\" {\n  %s\n}\ncable \"k\" {\n  %s\n}\n", c.cable, c.cord)
	fmt.Fprintf(&b, "panel \"1A-A\" {\n  space = \"1A\"\n  ports = 24\n  %s\n}\noutlet \"1.1\" {\n  space = \"1-H\"\n  ports = 2\n}\n", c.jack)
	b.WriteString("equipment \"S\" {\n  kind = \"switch\"\n  space = \"1A\"\n  ports = 2\n}\nequipment \"W\" {\n  kind = \"workstation\"\n  space = \"1-H\"\n  ports = 1\n}\n")
	fmt.Fprintf(&b, "run \"R\" {\n  from = \"1A-A:7\"\n  to = \"1.1:1\"\n  cable = \"c\"\n  route = [\"T\"]\n")
	if c.link != "" {
		fmt.Fprintf(&b, "  length = %q\n", c.link)
	}
	b.WriteString("}\n")
	for i, ends := range [][2]string{{"S:1", "1A-A:7"}, {"1.1:1", "W:1"}} {
		if c.cords[i] != "" {
			fmt.Fprintf(&b, "cord \"C%d\" {\n  from = %q\n  to = %q\n  cable = \"k\"\n  length = %q\n}\n", i, ends[0], ends[1], c.cords[i])
		}
	}
	p := plant.Build(".", []*schema.File{schema.NewReader().ReadFile("plant.hcl", b.String())})
	if len(p.Problems) > 0 {
		t.Fatalf("%v\n%s", p.Problems[0].Message, b.String())
	}
	return p
}

func (c channel) judge(t *testing.T, application string) ability.Answer {
	t.Helper()
	p := c.plant(t)
	a, asked := ability.Judge(p, p.Channels[0], application)
	if !asked {
		t.Fatalf("%s is not asked", application)
	}
	return a
}

func twisted(category, screen, link string, cords ...string) channel {
	c := channel{family: "TIA-568", cable: fmt.Sprintf("category = %q\n  screen = %q", category, screen), cord: fmt.Sprintf("category = %q", category), link: link}
	copy(c.cords[:], cords)
	return c
}

func optical(class, link string, cords ...string) channel {
	c := channel{family: "ISO-11801", cable: fmt.Sprintf("fibre = %q", class), cord: fmt.Sprintf("fibre = %q", class), link: link}
	copy(c.cords[:], cords)
	return c
}

// TestPublishedReach holds channels at and one step over published lengths.
func TestPublishedReach(t *testing.T) {
	t.Parallel()
	for _, c := range []struct {
		name, source string
		channel      channel
		application  string
		want         standard.Verdict
	}{
		{"6 at 37 m", "TIA TSB-155-A", twisted("6", "U/UTP", "33 m", "2 m", "2 m"), "10GBASE-T", standard.Carries},
		{"6 over 37 m", "TIA TSB-155-A", twisted("6", "U/UTP", "33.1 m", "2 m", "2 m"), "10GBASE-T", standard.Conditional},
		{"6 at 45 m", "TIA TSB-155-A", twisted("6", "U/UTP", "41 m", "2 m", "2 m"), "10GBASE-T", standard.Conditional},
		{"6 at 55 m", "TIA TSB-155-A", twisted("6", "U/UTP", "51 m", "2 m", "2 m"), "10GBASE-T", standard.Conditional},
		{"6 over 55 m", "TIA TSB-155-A", twisted("6", "U/UTP", "51.1 m", "2 m", "2 m"), "10GBASE-T", standard.NotCarried},
		{"6A at 100 m", "IEEE 802.3-2018, 10GBASE-T", twisted("6A", "U/UTP", "90 m", "5 m", "5 m"), "10GBASE-T", standard.Carries},
		{"6A over 100 m", "IEEE 802.3-2018, 10GBASE-T", twisted("6A", "U/UTP", "90.1 m", "5 m", "5 m"), "10GBASE-T", standard.NotCarried},
		{"5e", "IEEE 802.3-2018, 1000BASE-T", twisted("5e", "U/UTP", "90 m", "5 m", "5 m"), "1000BASE-T", standard.Carries},
		{"5", "ANSI/TIA/EIA TSB-95", twisted("5", "U/UTP", "60 m", "5 m", "5 m"), "1000BASE-T", standard.Conditional},
		{"8 at 30 m", "ANSI/TIA-568.2-D", twisted("8", "S/FTP", "24 m", "3 m", "3 m"), "40GBASE-T", standard.Carries},
		{"8 over 30 m", "ANSI/TIA-568.2-D", twisted("8", "S/FTP", "24.1 m", "3 m", "3 m"), "40GBASE-T", standard.NotCarried},
		{"6A for 40G", "IEEE 802.3-2018, 40GBASE-T", twisted("6A", "S/FTP", "10 m", "2 m", "2 m"), "40GBASE-T", standard.NotCarried},
		{"OM3 at 300 m", "IEEE 802.3-2018, 10GBASE-SR", optical("OM3", "296 m", "2 m", "2 m"), "10GBASE-SR", standard.Carries},
		{"OM3 over 300 m", "IEEE 802.3-2018, 10GBASE-SR", optical("OM3", "296.1 m", "2 m", "2 m"), "10GBASE-SR", standard.NotCarried},
		{"OM4 at 400 m", "IEEE 802.3-2018, 10GBASE-SR", optical("OM4", "396 m", "2 m", "2 m"), "10GBASE-SR", standard.Carries},
		{"OS2 for SR", "IEEE 802.3-2018, 10GBASE-SR", optical("OS2", "10 m", "2 m", "2 m"), "10GBASE-SR", standard.NotCarried},
		{"OM3 at 100 m", "IEEE 802.3-2018, 40GBASE-SR4", optical("OM3", "100.1 m"), "40GBASE-SR4", standard.NotCarried},
	} {
		t.Run(c.name, func(t *testing.T) {
			t.Parallel()
			if a := c.channel.judge(t, c.application); a.Verdict != c.want || a.Because == "" || a.Source == "" {
				t.Errorf("%s (%s): %s, because %q, by %q; want %s", c.application, c.source, a.Word(), a.Because, a.Source, c.want)
			}
		})
	}
}

// TestOpenEnds holds channels whose cords are not recorded: what only the
// allowance of ANSI/TIA-568, 10 m, makes too long depends on the cords.
func TestOpenEnds(t *testing.T) {
	t.Parallel()
	for _, c := range []struct {
		link    string
		want    standard.Verdict
		because string
	}{
		{"27 m", standard.Carries, "channel 37 m, it reaches 37 m"},
		{"30 m", standard.Conditional, "in any case with cords of no more than 7 m that are not recorded"},
		{"47 m", standard.Conditional, "no longer than 8 m together, and if the alien crosstalk"},
		{"55 m", standard.Conditional, "no longer than 0 mm together"},
		{"55.5 m", standard.NotCarried, "channel 55.5 m, it reaches 55 m"},
	} {
		if a := twisted("6", "U/UTP", c.link).judge(t, "10GBASE-T"); a.Verdict != c.want || !strings.Contains(a.Because, c.because) {
			t.Errorf("%s: %s, %q; want %s, %q", c.link, a.Word(), a.Because, c.want, c.because)
		}
	}
}

// TestWeakestPart holds the channel to the category of its lowest part: a panel
// of category 5e behind cable of category 6A (ANSI/TIA-568.2-D).
func TestWeakestPart(t *testing.T) {
	t.Parallel()
	c := twisted("6A", "U/UTP", "50 m", "2 m", "2 m")
	c.jack = "category = \"5e\""
	a := c.judge(t, "10GBASE-T")
	if a.Verdict != standard.NotCarried || !strings.Contains(a.Because, "5e (1A-A)") || a.Mend != "exchange 1A-A for category 6" {
		t.Errorf("%s, %q, %q", a.Word(), a.Because, a.Mend)
	}
}

// TestMixedFibre joins 62.5 um to 50 um, and multimode to single-mode: nothing
// is carried for certain (ISO/IEC 11801-1, classes of optical fibre).
func TestMixedFibre(t *testing.T) {
	t.Parallel()
	for _, cord := range []string{"OM1", "OS2"} {
		c := optical("OM4", "20 m", "2 m", "2 m")
		c.cord = fmt.Sprintf("fibre = %q", cord)
		if a := c.judge(t, "10GBASE-SR"); a.Verdict != standard.NotCarried {
			t.Errorf("OM4 and %s: %s", cord, a.Word())
		}
	}
}

// TestHeat warms a full channel of category 6A: its loss grows by 0.4 % a degree
// to 40 C and 0.6 % above (ANSI/TIA-568-C.2, 6.4.7), so that a full channel no
// longer keeps its limit, and only a test can tell.
func TestHeat(t *testing.T) {
	t.Parallel()
	c := twisted("6A", "U/UTP", "89 m", "5 m", "5 m")
	c.cord = "category = \"6A\"\n  conductors = \"24 AWG stranded\""
	if a := c.judge(t, "10GBASE-T"); a.Verdict != standard.Carries {
		t.Errorf("cool: %s, %s", a.Word(), a.Because)
	}
	c.temperature = "50 C"
	if a := c.judge(t, "10GBASE-T"); a.Verdict != standard.Conditional || !strings.Contains(a.Because, "if a test shows") {
		t.Errorf("at 50 C: %s, %s", a.Word(), a.Because)
	}
	c.link = "60 m"
	if a := c.judge(t, "10GBASE-T"); a.Verdict != standard.Carries {
		t.Errorf("short at 50 C: %s, %s", a.Word(), a.Because)
	}
}

// TestUntold asks channels whose records lack what the answer needs: that is a
// fourth answer, and names the field.
func TestUntold(t *testing.T) {
	t.Parallel()
	if a := twisted("6A", "U/UTP", "").judge(t, "10GBASE-T"); a.Verdict != 0 || a.Because != "R: states no length" {
		t.Errorf("no length: %s, %q", a.Word(), a.Because)
	}
	// Over category 5e there is no length at which it would carry.
	if a := twisted("5e", "U/UTP", "").judge(t, "10GBASE-T"); a.Verdict != standard.NotCarried {
		t.Errorf("no length, category 5e: %s, %q", a.Word(), a.Because)
	}
	if a := optical("OM4", "").judge(t, "10GBASE-SR"); a.Verdict != 0 || a.Because != "R: states no length" {
		t.Errorf("fibre, no length: %s, %q", a.Word(), a.Because)
	}
}

// TestLongerIsNeverBetter lengthens channels of every category and class in
// steps: no answer becomes better, whatever the application.
func TestLongerIsNeverBetter(t *testing.T) {
	t.Parallel()
	lengths := []string{"1 m", "20 m", "24 m", "30 m", "37 m", "50 m", "60 m", "80 m", "90 m", "95 m", "120 m", "300 m", "600 m", "11 km", "50 km"}
	worse := func(name, application string, at func(length string) channel) {
		t.Helper()
		last := standard.Carries
		for _, length := range lengths {
			a := at(length).judge(t, application)
			if a.Verdict == 0 {
				continue // no figure at all
			}
			if a.Verdict < last {
				t.Errorf("%s, %s at %s: %s, shorter it was %s", name, application, length, a.Word(), last)
			}
			last = a.Verdict
		}
	}
	for _, category := range []string{"5e", "6", "6A", "8"} {
		for _, a := range standard.Applications() {
			worse("category "+category, a.String(), func(l string) channel { return twisted(category, "U/UTP", l, "2 m", "2 m") })
		}
	}
	for _, class := range standard.Fibres() {
		for _, a := range standard.OpticalApplications() {
			worse(class.String(), a.String(), func(l string) channel { return optical(class.String(), l, "2 m", "2 m") })
		}
	}
}
