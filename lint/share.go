package lint

import (
	"strconv"
	"strings"
)

// A Share is a part of a whole in per cent, such as how full a pathway may be.
type Share int

// String prints the share, as in "40 %".
func (s Share) String() string { return strconv.Itoa(int(s)) + " %" }

// parseShare reads "40 %": a whole number from 1 to 100, then the sign.
func parseShare(text string) (Share, bool) {
	number, ok := strings.CutSuffix(text, "%")
	number = strings.TrimSuffix(number, " ")
	if !ok || number == "" || len(number) > 3 || strings.Trim(number, "0123456789") != "" {
		return 0, false
	}
	n, err := strconv.Atoi(number)
	return Share(n), err == nil && n >= 1 && n <= 100
}

// MostShare returns the limit to hold a share against: the owner's where it is
// stricter, otherwise the standard's. Own is empty, or names the policy.
func (p *Pass) MostShare(limit Share) (most Share, own string) {
	if p.policy != nil && p.policy.HasShare && p.policy.Share < limit {
		return p.policy.Share, "owner's policy " + p.policy.Label
	}
	return limit, ""
}
