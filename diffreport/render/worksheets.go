package render

import (
	"strconv"
	"strings"
)

// sheets are the sheets of a workbook. Each row names its plant, so that rows of
// several orders can be sorted and told apart.
func sheets(papers []*paper) []sheet {
	steps := sheet{name: "Steps", headings: []string{"Plant", "Order", "Step", "Done", "Visit", "Space", "Class", "Action", "What to do", "Records", "After", "Without service", "Cautions"}}
	materials := sheet{name: "Materials", headings: []string{"Plant", "Order", "Amount", "Unit", "Item", "How it adds up"}}
	labels := sheet{name: "Labels", headings: []string{"Plant", "Order", "Label", "Times"}}
	tests := sheet{name: "Tests", headings: []string{"Plant", "Order", "Record", "Limit", "Reason", "Result", "Date", "By"}}
	for _, p := range papers {
		steps.rows = append(steps.rows, stepRows(p)...)
		for _, m := range p.Materials {
			amount, unit := amountOf(m.Quantity)
			materials.rows = append(materials.rows, []any{p.Plant, p.Number, amount, unit, m.Item, m.Working})
		}
		for _, l := range p.Labels {
			labels.rows = append(labels.rows, []any{p.Plant, p.Number, l.Text, l.Times})
		}
		for _, holder := range p.Strips {
			labels.rows = append(labels.rows, []any{p.Plant, p.Number, stripFor(holder), 1})
		}
		for _, t := range p.Tests {
			tests.rows = append(tests.rows, []any{p.Plant, p.Number, t.Record, t.Limit, t.Reason, "", "", ""})
		}
	}
	return []sheet{steps, materials, labels, tests}
}

func stepRows(p *paper) [][]any {
	var rows [][]any
	for _, v := range p.Visits {
		for _, s := range v.Steps {
			cautions := strings.Join(each(s.Cautions, func(c caution) string { return c.Text }), "; ")
			rows = append(rows, []any{p.Plant, p.Number, s.Number, "", v.Number, v.Space, s.Class, s.Action, s.Text, list(s.Records), s.After, s.Outage, cautions})
		}
	}
	return rows
}

// amountOf divides a printed quantity into a number to reckon with and its unit.
// A number without a unit counts pieces.
func amountOf(quantity string) (amount any, unit string) {
	number, unit, _ := strings.Cut(quantity, " ")
	value, err := strconv.ParseFloat(number, 64)
	if err != nil {
		return quantity, ""
	}
	if unit == "" {
		unit = "pieces"
	}
	return value, unit
}
