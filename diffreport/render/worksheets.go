package render

import (
	"io"
	"strconv"
	"strings"

	"homerun/schema/workbook"
)

// OrderWorkbook writes orders as one spreadsheet with a sheet each for steps,
// cautions, materials, labels and tests. The error is that of the writer, or of an
// order with more rows than a sheet has.
func OrderWorkbook(w io.Writer, jobs []Job) error {
	papers := each(jobs, paperOf)
	titles := each(papers, func(p *paper) string { return "Work order " + p.Number + ", " + p.Plant })
	return workbook.Write(w, strings.Join(titles, "; "), sheets(papers))
}

// sheets are the sheets of a workbook. Each row ends with its plant and order, so
// that rows of several orders can be sorted and told apart.
func sheets(papers []*paper) []workbook.Sheet {
	steps := orderSheet("Steps", "Step", "Done", "Visit", "Space", "Class", "Action", "What to do", "Records", "After", "Without service", "Cautions")
	steps.Widest = map[string]float64{"Space": 18, "What to do": 60, "Records": 22, "After": 16, "Without service": 22, "Cautions": 12}
	cautions := orderSheet("Cautions", "Caution", "What to mind")
	cautions.Widest = map[string]float64{"What to mind": 90}
	materials := orderSheet("Materials", "Amount", "Unit", "Item", "How it adds up")
	materials.Widest = map[string]float64{"How it adds up": 60}
	labels := orderSheet("Labels", "Label", "Times")
	tests := orderSheet("Tests", "Record", "Limit", "Reason", "Result", "Date", "By")
	tests.Widest = map[string]float64{"Record": 30}
	for _, p := range papers {
		for i := range p.Visits {
			p.stepRows(&steps, &p.Visits[i])
		}
		for _, c := range p.Cautions {
			p.row(&cautions, c.Number, c.Text)
		}
		for _, m := range p.Materials {
			amount, unit := amountOf(m.Quantity)
			p.row(&materials, amount, unit, m.Item, m.Working)
		}
		for _, l := range p.Labels {
			p.row(&labels, l.Text, l.Times)
		}
		for _, holder := range p.Strips {
			p.row(&labels, stripFor(holder), 1)
		}
		for _, t := range p.Tests {
			p.row(&tests, t.Record, t.Limit, t.Reason, "", "", "")
		}
	}
	return []workbook.Sheet{steps, cautions, materials, labels, tests}
}

// orderSheet is a sheet without rows. What tells orders apart stays off the
// paper, where it would only take room.
func orderSheet(name string, headings ...string) workbook.Sheet {
	return workbook.Sheet{Name: name, Headings: append(headings, "Plant", "Order"), Printed: len(headings)}
}

func (p *paper) row(s *workbook.Sheet, cells ...any) {
	s.Rows = append(s.Rows, append(cells, p.Plant, p.Number))
}

func (p *paper) stepRows(s *workbook.Sheet, v *visitPart) {
	for i := range v.Steps {
		step := &v.Steps[i]
		cautions := each(step.Cautions, func(c caution) int { return c.Number })
		p.row(s, step.Number, "", v.Number, v.Space, step.Class, step.Action, step.Text, list(step.Records), step.After, step.Outage, spans(cautions))
	}
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
