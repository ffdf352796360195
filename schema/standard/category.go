package standard

import "homerun/schema/unit"

// Category is a category of balanced cable and connecting hardware. The zero value is
// none. The categories are in the order of what they carry.
type Category uint8

// The categories. 8 is of ANSI/TIA, 8.1 and 8.2 of ISO/IEC.
const (
	Cat3 Category = iota + 1
	Cat4
	Cat5
	Cat5e
	Cat6
	Cat6A
	Cat7
	Cat7A
	Cat8
	Cat81
	Cat82
)

// categories are the words for the categories.
var categories = []string{
	Cat3: "3", Cat4: "4", Cat5: "5", Cat5e: "5e", Cat6: "6", Cat6A: "6A", Cat7: "7", Cat7A: "7A", Cat8: "8", Cat81: "8.1", Cat82: "8.2",
}

// classes are the classes of ISO/IEC 11801-1 that the categories make up; category 4 has
// none.
var classes = []string{
	Cat3: "C", Cat5: "D", Cat5e: "D", Cat6: "E", Cat6A: "EA", Cat7: "F", Cat7A: "FA", Cat8: "I", Cat81: "I", Cat82: "II",
}

// topMegahertz are the highest frequencies that the categories are specified to.
var topMegahertz = []int64{
	Cat3: 16, Cat4: 20, Cat5: 100, Cat5e: 100, Cat6: 250, Cat6A: 500, Cat7: 600, Cat7A: 1000, Cat8: 2000, Cat81: 2000, Cat82: 2000,
}

// ParseCategory reads "5e", "6A", "8.1". The error is a *unit.Error.
func ParseCategory(s string) (Category, error) {
	i, err := indexOf(categories, "category", s)
	return Category(i), err
}

// Categories returns all categories in order.
func Categories() []Category {
	out := make([]Category, 0, len(categories))
	for c := Cat3; int(c) < len(categories); c++ {
		out = append(out, c)
	}
	return out
}

// String returns the word for the category, as in a record; empty for none.
func (c Category) String() string { return wordOf(categories, int(c)) }

// Class returns the class of ISO/IEC 11801-1 that the category makes up: "D", "EA"; empty
// where it has none.
func (c Category) Class() string { return wordOf(classes, int(c)) }

// Top returns the highest frequency that the category is specified to; 0 for none.
func (c Category) Top() unit.Frequency {
	if int(c) >= len(topMegahertz) {
		return 0
	}
	return unit.Frequency(topMegahertz[c]) * unit.Megahertz
}

// Rank orders the categories for the weakest component of a link: a link is of the
// lowest rank in it. 8 and 8.1 are one rank; 8.2 stands above them though it is made for
// other connectors and is no superset of them.
func (c Category) Rank() int {
	if c == Cat81 {
		c = Cat8
	}
	return int(c)
}

// Weaker reports whether c ranks below d.
func (c Category) Weaker(d Category) bool { return c.Rank() < d.Rank() }

// eight reports whether the category is one of the three short ones.
func (c Category) eight() bool { return c == Cat8 || c == Cat81 || c == Cat82 }

// known reports whether c is a category at all.
func (c Category) known() bool { return c >= Cat3 && c <= Cat82 }
