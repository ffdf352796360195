package rules

import (
	"fmt"

	"homerun/lint"
	"homerun/schema"
	"homerun/schema/plant"
)

// wrongPort names a signal that comes in at an output: little of it gets from
// there to the other ports, so it is not followed on.
func (c *coaxCheck) wrongPort(h *coaxHop) {
	at := h.port.Holder
	input, _ := inputOf(at)
	f := lint.AboutField(at.Entry, schema.EquipmentInput.Field)
	f.Message = fmt.Sprintf("%s: the signal of %s comes in at port %d, its input is port %d; what is behind it is not judged", schema.Printable(at.Label),
		schema.Printable(h.source.Label), h.port.Number, input.Number)
	f.Working = []lint.Term{term("signal comes in at", schema.Printable(h.port.String())), term("input", schema.Printable(input.String()))}
	f.Result, f.Limit, f.Source = fmt.Sprintf("port %d", h.port.Number), fmt.Sprintf("port %d", input.Number), budgetSource
	f.Next = "plug the cable to the input, or correct input"
	f.Key = []string{schema.EquipmentInput.Name, h.source.Label}
	f.Related = hopNotes(h)
	c.pass.Report(f)
}

// noSuchInput names an input that the equipment does not have.
func (c *coaxCheck) noSuchInput(h *plant.Holder) {
	n, stated := schema.EquipmentInput.In(h.Record())
	if _, known := inputOf(h); !stated || known || len(h.Ports) == 0 {
		return
	}
	f := lint.AboutField(h.Entry, schema.EquipmentInput.Field)
	f.Message = fmt.Sprintf("%s: input is port %d, it has %s", schema.Printable(h.Label), n, counted(len(h.Ports), "port", "ports"))
	f.Working = []lint.Term{term("input", fmt.Sprintf("port %d", n)), term("ports", fmt.Sprintf("1 to %d", len(h.Ports)))}
	f.Result, f.Limit, f.Source = fmt.Sprintf("port %d", n), fmt.Sprintf("1 to %d", len(h.Ports)), budgetSource
	f.Next = "correct input or ports"
	f.Key = []string{schema.EquipmentInput.Name}
	c.pass.Report(f)
}
