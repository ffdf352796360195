package standard

import (
	"strconv"
	"strings"
)

// decimal writes whole and fraction, which counts 10^-places, without zeros at the end.
func decimal(whole, fraction int64, places int) string {
	out := strconv.FormatInt(whole, 10)
	if fraction == 0 {
		return out
	}
	f := strconv.FormatInt(fraction, 10)
	return out + "." + strings.TrimRight(strings.Repeat("0", places-len(f))+f, "0")
}
