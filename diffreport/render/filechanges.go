package render

import (
	"io"

	"homerun/diffreport"
	"homerun/schema/console"
	"homerun/schema/unit"
)

// ChangesText writes the changes of one file as an order lists them: by class,
// each with the reason and with what was and what will be. Name is what the file
// is called.
func ChangesText(w io.Writer, name string, changes []diffreport.Change, units unit.System, opts console.Options) error {
	d := &document{Page: console.New(w, opts), paper: &paper{}}
	d.classes(&diffreport.Order{Changes: changes, Units: units})
	d.Line(0, 2, console.In(console.Strong, name))
	if len(changes) == 0 {
		d.Line(2, 4, console.Plain("the records say the same: at most layout, comments or order differ"))
	}
	d.changes()
	d.Blank()
	return d.Err()
}
