package plant

import "homerun/schema/unit"

// Corded is what the recorded cords of a channel measure together, and what is
// assumed beside them: the rest of the allowance for cords, where one is not
// recorded or states no length.
func (c *Channel) Corded(allowance unit.Length) (recorded, assumed unit.Length) {
	open := c.OpenStart || c.OpenEnd
	for _, cord := range c.Cords {
		length, stated := cord.CordLength()
		open = open || !stated
		recorded = recorded.Plus(length)
	}
	if open {
		assumed = max(0, allowance-recorded)
	}
	return recorded, assumed
}
