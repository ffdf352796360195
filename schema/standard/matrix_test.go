package standard_test

import (
	"testing"

	"homerun/schema/standard"
)

// TestStricterListingIsNeverRefused: in every cell of the matrix, what a laxer grade of a
// family may do, every stricter grade may; under-carpet cable stands outside that order.
func TestStricterListingIsNeverRefused(t *testing.T) {
	t.Parallel()
	for _, code := range []standard.FireCode{standard.NEC2017, standard.NEC2020, standard.NEC2023} {
		for _, s := range standard.Spaces() {
			for _, e := range standard.Enclosures() {
				for _, a := range listings(t) {
					for _, b := range listings(t) {
						stricterIsPermitted(t, code, s, e, a, b)
					}
				}
			}
		}
	}
}

func stricterIsPermitted(t *testing.T, code standard.FireCode, s standard.Space, e standard.Enclosure, strict, lax standard.Listing) {
	t.Helper()
	if strict.Family() != lax.Family() || strict.Grade() > lax.Grade() || lax.Grade() == standard.UnderCarpetGrade {
		return
	}
	p, ok := standard.Permit(code, strict, s, e)
	q, _ := standard.Permit(code, lax, s, e)
	if (s == standard.Outdoor) == ok {
		t.Fatalf("%s in %s: answered %t", strict, s, ok)
	}
	if q.Permitted && !p.Permitted {
		t.Errorf("%s %s, %s: %s is permitted and %s is not", code, s, e, lax, strict)
	}
	if q.Permitted && q.Bound.On == 0 && p.Bound.On != 0 {
		t.Errorf("%s %s, %s: %s is permitted freely and %s within a bound", code, s, e, lax, strict)
	}
}

// TestSubstituteIsPermittedWhereTheTypeIs ties the two published tables together: a type
// that may stand in for another is permitted wherever that one is.
func TestSubstituteIsPermittedWhereTheTypeIs(t *testing.T) {
	t.Parallel()
	for _, l := range listings(t) {
		by, _ := l.Substitutes()
		for _, s := range standard.Spaces() {
			for _, e := range standard.Enclosures() {
				p, _ := standard.Permit(standard.NEC2017, l, s, e)
				for _, better := range by {
					q, _ := standard.Permit(standard.NEC2017, better, s, e)
					if p.Permitted && !q.Permitted {
						t.Errorf("%s, %s: %s is permitted, its substitute %s is not", s, e, l, better)
					}
					if !better.MayReplace(l) {
						t.Errorf("%s is listed for %s and may not replace it", better, l)
					}
				}
			}
		}
	}
}

// TestRemediesArePermitted: what a finding offers is permitted where the listing is not.
func TestRemediesArePermitted(t *testing.T) {
	t.Parallel()
	offered := 0
	for _, l := range listings(t) {
		for _, s := range standard.Spaces() {
			for _, e := range standard.Enclosures() {
				for _, r := range standard.Remedies(standard.NEC2017, l, s, e) {
					offered++
					if p, ok := standard.Permit(standard.NEC2017, r, s, e); !ok || !p.Permitted || r == l {
						t.Errorf("%s in %s, %s: offers %s", l, s, e, r)
					}
				}
			}
		}
	}
	if offered == 0 {
		t.Error("nothing was offered at all")
	}
}

func listings(t *testing.T) []standard.Listing {
	t.Helper()
	names := standard.ListingNames()
	out := make([]standard.Listing, len(names))
	for i, n := range names {
		l, err := standard.ParseListing(n)
		if err != nil || l.String() != n {
			t.Fatalf("%s read as %s, %v", n, l, err)
		}
		out[i] = l
	}
	return out
}
