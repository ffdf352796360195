package cli

import (
	"context"
	"io"

	"homerun/diffreport/render"
)

// orderFormats are the forms of an order, in the order in which they are named.
func orderFormats() []string { return []string{"text", "markdown", "html", "sheet", "json"} }

// orderWriter chooses what writes orders. A spreadsheet is no text, so it is not
// written to a terminal.
func (a *app) orderWriter(ctx context.Context, o orderFlags) (func(io.Writer, []render.Job) error, error) {
	switch o.format {
	case "text":
		page := a.page(ctx, a.Out)
		page.Colour = page.Colour && o.output == ""
		return func(w io.Writer, jobs []render.Job) error {
			for _, j := range jobs {
				if err := render.OrderText(w, j, page); err != nil {
					return err
				}
			}
			return nil
		}, nil
	case "json":
		return func(w io.Writer, jobs []render.Job) error {
			for _, j := range jobs {
				if err := render.OrderJSON(w, j.Order); err != nil {
					return err
				}
			}
			return nil
		}, nil
	case "markdown":
		return render.OrderMarkdown, nil
	case "html":
		return render.OrderPage, nil
	case "sheet":
		if o.output == "" && isTerminal(a.Out) {
			return nil, &usageError{"a spreadsheet is no text for a terminal", "write it to a file, such as --output order.xlsx"}
		}
		return render.OrderWorkbook, nil
	}
	return nil, noFormat(o.format, orderFormats())
}
