test "T-2025-001" {
  run    = "1A-D02"
  limit  = "TIA permanent link, Category 6A"
  result = "pass"
  length = "47.0 m"
  margin = "4.6 dB"
  date   = "2025-03-20"
  tester = "TST-40131"
}

test "T-2025-002" {
  run    = "2A-A21"
  limit  = "TIA permanent link, Category 6A"
  result = "pass"
  length = "48.0 m"
  margin = "4.9 dB"
  date   = "2025-03-20"
  tester = "TST-40131"
}
