package sheet_test

import (
	"bytes"
	"fmt"
	"image"
	"image/png"
	"os"
	"os/exec"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"homerun/diffreport/labels"
	"homerun/diffreport/labels/sheet"
	"homerun/schema/unit"
)

// program finds a program of the system; the test that needs it is skipped
// with its name where it is missing.
func program(t *testing.T, name, packet string) string {
	t.Helper()
	path, err := exec.LookPath(name)
	if err != nil {
		t.Skipf("%s is not installed (Debian package %s): what it reads from the sheets is not checked", name, packet)
	}
	return path
}

func output(t *testing.T, path string, args ...string) string {
	t.Helper()
	cmd := exec.CommandContext(t.Context(), path, args...)
	var complaint bytes.Buffer
	cmd.Stderr = &complaint
	out, err := cmd.Output()
	if err != nil {
		t.Fatalf("%s %q: %v: %s", path, args, err, complaint.String())
	}
	return string(out)
}

func lay(t *testing.T, o sheet.Options, sets ...labels.Set) *sheet.Document {
	t.Helper()
	doc, err := sheet.Lay(sets, o)
	if err != nil {
		t.Fatal(err)
	}
	return doc
}

func pdf(t *testing.T, doc *sheet.Document) []byte {
	t.Helper()
	var b bytes.Buffer
	if err := sheet.PDF(&b, doc); err != nil {
		t.Fatal(err)
	}
	return b.Bytes()
}

func svg(t *testing.T, doc *sheet.Document, page int) []byte {
	t.Helper()
	var b bytes.Buffer
	if err := sheet.SVG(&b, doc, page); err != nil {
		t.Fatal(err)
	}
	return b.Bytes()
}

func write(t *testing.T, name string, content []byte) string {
	t.Helper()
	path := filepath.Join(t.TempDir(), name)
	if err := os.WriteFile(path, content, 0o600); err != nil {
		t.Fatal(err)
	}
	return path
}

// odd are identifiers of every sort that records may hold.
var odd = []string{
	"1A", "1A-A07", "1A/2A-F1", "1.104", "2-FSL04", "0", "A&B", `<use href="#b1"/>`, "=SUM(A1)", "Ü-Straße 7", "Жизнь-01", "αβγ", "机柜-7", "🏠-1",
	"in the cupboard behind the second door on the left of the lower hall, the one with a brass plate and the dent, third shelf from below ~",
	strings.Repeat("W", 128), strings.Repeat("1A-", 42), "e\u0301-1",
}

func oddSet() labels.Set {
	set := labels.Set{Plant: "mole-end", Strips: []labels.Strip{{Holder: "1A-A", Space: "1A"}, {Holder: "Ü", Ports: []string{"Ü:1", "Ü:2"}}}}
	for _, id := range odd {
		set.Labels = append(set.Labels, labels.Label{ID: id, Kind: "run", Space: "1A", At: "at 1A-A:07"})
	}
	for n := range 24 {
		set.Strips[0].Ports = append(set.Strips[0].Ports, fmt.Sprintf("1A-A:%02d", n+1))
	}
	return set
}

// held are the identifiers that the codes of a set hold, sorted.
func held(set labels.Set) []string {
	var ids []string
	for _, l := range set.Labels {
		ids = append(ids, l.ID)
	}
	for _, s := range set.Strips {
		ids = append(ids, s.Ports...)
	}
	slices.Sort(ids)
	return ids
}

// scanned reads the codes of pictures of the sheets with zbarimg, which knows
// ISO/IEC 18004 independently: one after the other, as a telephone is held to
// a label, each with what surrounds it.
func scanned(t *testing.T, doc *sheet.Document, pictures []string) []string {
	t.Helper()
	zbar := program(t, "zbarimg", "zbar-tools")
	if len(pictures) != len(doc.Pages) {
		t.Fatalf("%d pictures of %d sheets", len(pictures), len(doc.Pages))
	}
	dir := t.TempDir()
	var views []string
	for i, picture := range pictures {
		whole := picturedAt(t, picture)
		for n, code := range doc.Pages[i].Codes {
			views = append(views, filepath.Join(dir, fmt.Sprintf("%d-%d.png", i, n)))
			cut(t, whole, views[len(views)-1], doc.Size, code)
		}
	}
	out := output(t, zbar, append([]string{"--quiet", "--raw", "-Sdisable", "-Sqrcode.enable"}, views...)...)
	ids := strings.Split(strings.TrimSuffix(out, "\n"), "\n")
	slices.Sort(ids)
	return ids
}

// drawn is a picture of which parts can be taken.
type drawn interface {
	image.Image
	SubImage(image.Rectangle) image.Image
}

func picturedAt(t *testing.T, path string) drawn {
	t.Helper()
	content, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	decoded, err := png.Decode(bytes.NewReader(content))
	if err != nil {
		t.Fatal(err)
	}
	picture, ok := decoded.(drawn)
	if !ok {
		t.Fatalf("a picture of type %T", decoded)
	}
	return picture
}

// cut takes a code and 5 mm around it out of the picture of a sheet.
func cut(t *testing.T, whole drawn, view string, size sheet.Size, code sheet.Code) {
	t.Helper()
	dots := func(l unit.Length) int { return int(int64(l) * int64(whole.Bounds().Dx()) / int64(size.W)) }
	around, side := 5*mm, code.Module*unit.Length(code.Matrix.Side)
	var b bytes.Buffer
	part := whole.SubImage(image.Rect(dots(code.X-around), dots(code.Y-around), dots(code.X+side+around), dots(code.Y+side+around)))
	if err := png.Encode(&b, part); err != nil {
		t.Fatal(err)
	}
	if err := os.WriteFile(view, b.Bytes(), 0o600); err != nil {
		t.Fatal(err)
	}
}

func TestACameraReadsEveryCodeOfThePDF(t *testing.T) {
	t.Parallel()
	poppler := program(t, "pdftoppm", "poppler-utils")
	for _, o := range []sheet.Options{sheet.Defaults(unit.Metric), sheet.Defaults(unit.US), onePerPage(t)} {
		set := oddSet()
		doc := lay(t, o, set)
		file := write(t, "labels.pdf", pdf(t, doc))
		output(t, poppler, "-r", "300", "-png", file, strings.TrimSuffix(file, ".pdf"))
		pictures, err := filepath.Glob(filepath.Join(filepath.Dir(file), "*.png"))
		if err != nil {
			t.Fatal(err)
		}
		slices.Sort(pictures)
		if diff := cmp.Diff(held(set), scanned(t, doc, pictures)); diff != "" {
			t.Errorf("labels of %v on %v: wanted, and scanned:\n%s", o.Label, o.Sheet, diff)
		}
	}
}

// onePerPage is a printer of single labels, upright.
func onePerPage(t *testing.T) sheet.Options {
	t.Helper()
	o := sheet.Defaults(unit.Metric)
	for text, into := range map[string]*sheet.Size{"30x50": &o.Label, "0": &o.Margin, "0x0": &o.Gap} {
		size, err := sheet.ParseSize(text)
		if err != nil {
			t.Fatal(err)
		}
		*into = size
	}
	o.Sheet, o.CutLines = o.Label, false
	return o
}

func TestACameraReadsEveryCodeOfThePictures(t *testing.T) {
	t.Parallel()
	converter := program(t, "rsvg-convert", "librsvg2-bin")
	set := oddSet()
	doc := lay(t, sheet.Defaults(unit.Metric), set)
	var pictures []string
	for i := range doc.Pages {
		file := write(t, "sheet.svg", svg(t, doc, i))
		output(t, converter, "--dpi-x", "300", "--dpi-y", "300", "-o", file+".png", file)
		pictures = append(pictures, file+".png")
	}
	if diff := cmp.Diff(held(set), scanned(t, doc, pictures)); diff != "" {
		t.Errorf("wanted, and scanned:\n%s", diff)
	}
}

// TestTheWordsOfThePDFCanBeSearched reads them with pdftotext. Identifiers that
// are set on several lines come without their spaces.
func TestTheWordsOfThePDFCanBeSearched(t *testing.T) {
	t.Parallel()
	reader := program(t, "pdftotext", "poppler-utils")
	set := oddSet()
	file := write(t, "labels.pdf", pdf(t, lay(t, sheet.Defaults(unit.Metric), set)))
	squeezed := func(s string) string { return strings.Join(strings.Fields(s), "") }
	text := squeezed(output(t, reader, "-raw", file, "-"))
	shown := map[string]string{"机柜-7": `\u673a\u67dc-7`, "🏠-1": `\U0001f3e0-1`, "e\u0301-1": `e\u0301-1`}
	for _, id := range held(set) {
		want := id
		if as, replaced := shown[id]; replaced {
			want = as
		}
		if !strings.Contains(text, squeezed(want)) {
			t.Errorf("%q is not among the words", want)
		}
	}
}
