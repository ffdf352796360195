# Decisions of the owner: leave to depart from a rule, and stricter limits.

waiver "W-2021-01" {
  rule    = "shielding-separation"
  records = ["1-T-03"]
  reason  = "Kitchen feeders had to go on the same trapeze; all runs in the tray re-tested with margin. The feeders move when the roof is renewed"
  granted = "building office, ref. BO-311"
  expires = "2031-12-31"
}

policy "P-2022-01" {
  rule   = "length-permanent-link"
  limit  = "85 m"
  reason = "Five metres of every link stay in reserve for a later re-termination"
}
