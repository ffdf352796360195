package sheet

import (
	"fmt"

	"homerun/diffreport/labels"
	"homerun/schema/unit"
)

// Options are the measures of labels and sheets.
type Options struct {
	// Label is the size of a label, Sheet that of a page.
	Label, Sheet Size
	// Gap is the space between labels, across and down; Margin that from the
	// edge of the sheet to the first label, and left free at the other side.
	Gap, Margin Size
	// Port is the size of one port of a strip.
	Port Size
	// Used are the labels already taken from the first sheet.
	Used int
	// CutLines says whether labels are outlined, for sheets that are cut by
	// hand; sheets that are cut already need none.
	CutLines bool
}

// Defaults are measures for plain paper that is cut by hand.
func Defaults(system unit.System) Options {
	const mm = unit.Millimetre
	page, _ := named("A4")
	if system == unit.US {
		page, _ = named("Letter")
	}
	return Options{
		Label: Size{45 * mm, 20 * mm}, Sheet: page, Gap: Size{3 * mm, 4 * mm}, Margin: Size{10 * mm, 12 * mm},
		Port: Size{15 * mm, 14 * mm}, CutLines: true,
	}
}

// The smallest label and port that leave room for a code and a line of text.
const (
	leastWidth  = 8 * unit.Millimetre
	leastHeight = 5 * unit.Millimetre
)

// A grid is how many labels a sheet holds.
type grid struct{ columns, rows int }

func (g grid) places() int { return g.columns * g.rows }

// Check returns why labels of these measures can not be laid out, or nil.
func (o Options) Check() error {
	g := o.grid()
	for _, s := range []struct {
		name string
		size Size
	}{{"label", o.Label}, {"port", o.Port}} {
		if s.size.W < leastWidth || s.size.H < leastHeight {
			return fmt.Errorf("a %s of %s has no room for a code and a text: the least is %s", s.name, s.size, Size{leastWidth, leastHeight})
		}
	}
	switch {
	case g.places() == 0:
		return fmt.Errorf("a label of %s does not fit on a sheet of %s with a margin of %s", o.Label, o.Sheet, o.Margin)
	case o.Used < 0 || o.Used >= g.places():
		return fmt.Errorf("%d labels of the first sheet are used, and a sheet holds %d", o.Used, g.places())
	}
	return nil
}

// checkStrips returns why the port strips of sets can not be laid out.
func (o Options) checkStrips(sets []labels.Set) error {
	room := o.room()
	for _, set := range sets {
		if len(set.Strips) > 0 && (o.Port.W > room.W || o.pieceHeight() > room.H) {
			return fmt.Errorf("a port of %s and the line above it do not fit on a sheet of %s with a margin of %s", o.Port, o.Sheet, o.Margin)
		}
	}
	return nil
}

func (o Options) grid() grid {
	return grid{fitting(o.room().W, o.Label.W, o.Gap.W), fitting(o.room().H, o.Label.H, o.Gap.H)}
}

// room is what the margins leave of a sheet.
func (o Options) room() Size { return Size{o.Sheet.W - 2*o.Margin.W, o.Sheet.H - 2*o.Margin.H} }

// fitting is how many pieces with gaps between them fit in a length.
func fitting(room, piece, gap unit.Length) int {
	if piece <= 0 || room < piece {
		return 0
	}
	return int((room + gap) / (piece + gap))
}
