test "T-2024-001" {
  run    = "2A-A33"
  limit  = "TIA permanent link, Category 6A"
  result = "pass"
  length = "68.3 m"
  margin = "3.8 dB"
  date   = "2024-08-30"
  tester = "TST-40131"
}

test "T-2024-002" {
  run    = "2A-A34"
  limit  = "TIA permanent link, Category 6A"
  result = "pass"
  length = "68.8 m"
  margin = "3.7 dB"
  date   = "2024-08-30"
  tester = "TST-40131"
}

test "T-2024-003" {
  run    = "2A-A35"
  limit  = "TIA permanent link, Category 6A"
  result = "pass"
  length = "69.3 m"
  margin = "3.6 dB"
  date   = "2024-08-30"
  tester = "TST-40131"
}

test "T-2024-004" {
  run    = "2A-A36"
  limit  = "TIA permanent link, Category 6A"
  result = "pass"
  length = "69.8 m"
  margin = "3.5 dB"
  date   = "2024-08-30"
  tester = "TST-40131"
}
