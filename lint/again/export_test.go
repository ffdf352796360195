package again

import "homerun/lint"

// Saying is a finding with its sum.
func Saying(f *lint.Finding) string { return saying(f) }

// SameSaying says whether two findings have one saying.
func SameSaying(f, g *lint.Finding) bool { return sameSaying(f, g) }
