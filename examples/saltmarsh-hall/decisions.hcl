# Decisions of the owner: stricter limits, and leave to depart from a rule.

policy "P-2020-01" {
  rule   = "length-permanent-link"
  limit  = "85 m"
  reason = "Five metres of every link stay in reserve for a later re-termination"
}

waiver "W-2021-01" {
  rule    = "length-permanent-link"
  records = ["1A-D09"]
  reason  = "The far gate is 82 m of conduit away and nothing shorter can be built. The limit of the standard is kept"
  granted = "building office, ref. BO-311"
  expires = "2031-12-31"
}
