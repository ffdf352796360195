package sheet

import (
	"bytes"
	"fmt"
	"io"
	"time"

	"codeberg.org/go-pdf/fpdf"
	"golang.org/x/image/font/gofont/gobold"
	"golang.org/x/image/font/gofont/goregular"

	"homerun/schema/unit"
)

// made is the date that every PDF states. A real one would make the same labels
// other bytes every time.
func made() time.Time { return time.Date(2000, 1, 1, 0, 0, 0, 0, time.UTC) }

// PDF writes a document, a page a sheet, with words that can be searched and
// copied. The error is that of the writer, or says what can not be set.
func PDF(w io.Writer, d *Document) error {
	size := fpdf.SizeType{Wd: mm(d.Size.W), Ht: mm(d.Size.H)}
	doc := fpdf.NewCustom(&fpdf.InitType{OrientationStr: "P", UnitStr: "mm", Size: size})
	doc.SetCatalogSort(true)
	doc.SetCreationDate(made())
	doc.SetModificationDate(made())
	doc.SetProducer("homerun", true)
	doc.SetTitle(d.bold.plain(d.Title), true)
	doc.SetAutoPageBreak(false, 0)
	// The library writes into the typeface that it is given.
	doc.AddUTF8FontFromBytes("b", "", bytes.Clone(gobold.TTF))
	doc.AddUTF8FontFromBytes("r", "", bytes.Clone(goregular.TTF))
	for i := range d.Pages {
		doc.AddPage()
		printPage(doc, d, &d.Pages[i])
	}
	if err := doc.Output(w); err != nil {
		return fmt.Errorf("the labels can not be written as PDF: %w", err)
	}
	return nil
}

func printPage(doc *fpdf.Fpdf, d *Document, p *Page) {
	doc.SetLineWidth(0.1)
	doc.SetDrawColor(0x99, 0x99, 0x99)
	for _, l := range p.Lines {
		doc.Line(mm(l.X1), mm(l.Y1), mm(l.X2), mm(l.Y2))
	}
	for i := range p.Codes {
		printCode(doc, d, &p.Codes[i])
	}
	for _, t := range p.Texts {
		_, face := d.face(t.Tone)
		grey := 0
		if t.Tone == Beside {
			grey = 0x55
		}
		doc.SetTextColor(grey, grey, grey)
		doc.SetFont(face, "", 0)
		doc.SetFontUnitSize(mm(t.Size))
		doc.Text(mm(t.X), mm(t.Y), t.Words)
	}
}

// printCode draws the dark modules in a frame of which a module is the unit and
// in which rows count upwards: short to write, and one shape, without seams.
func printCode(doc *fpdf.Fpdf, d *Document, c *Code) {
	const point = 72 / 25.4
	unitSize := mm(c.Module) * point
	foot := d.Size.H - c.Y - c.Module*unit.Length(c.Matrix.Side)
	var b bytes.Buffer
	fmt.Fprintf(&b, "q 0 g %.5f 0 0 %.5f %.5f %.5f cm\n", unitSize, unitSize, mm(c.X)*point, mm(foot)*point)
	for s := range c.Matrix.stretches() {
		fmt.Fprintf(&b, "%d %d %d 1 re\n", s.x, c.Matrix.Side-1-s.y, s.n)
	}
	b.WriteString("f Q\n")
	doc.RawWriteStr(b.String())
}

func mm(l unit.Length) float64 { return float64(um(l)) / 1000 }
