# Re-tested with the kitchen feeders under load.

test "T-2021-007" {
  run    = "1A-A17"
  limit  = "TIA permanent link, Category 6A"
  result = "pass"
  length = "43.7 m"
  margin = "4.5 dB"
  date   = "2021-05-06"
  tester = "TST-40122"
}

test "T-2021-008" {
  run    = "1A-A19"
  limit  = "TIA permanent link, Category 6A"
  result = "pass"
  length = "44.2 m"
  margin = "4.4 dB"
  date   = "2021-05-06"
  tester = "TST-40122"
}

test "T-2021-009" {
  run    = "1A-A22"
  limit  = "TIA permanent link, Category 6A"
  result = "pass"
  length = "46.2 m"
  margin = "4.3 dB"
  date   = "2021-05-06"
  tester = "TST-40122"
}

test "T-2021-010" {
  run    = "1A-A25"
  limit  = "TIA permanent link, Category 6A"
  result = "pass"
  length = "60.2 m"
  margin = "4.1 dB"
  date   = "2021-05-06"
  tester = "TST-40122"
}

test "T-2021-011" {
  run    = "1A-A27"
  limit  = "TIA permanent link, Category 6A"
  result = "pass"
  length = "60.7 m"
  margin = "4.0 dB"
  date   = "2021-05-06"
  tester = "TST-40122"
}

test "T-2021-012" {
  run    = "1A-A30"
  limit  = "TIA permanent link, Category 6A"
  result = "pass"
  length = "62.7 m"
  margin = "3.9 dB"
  date   = "2021-05-06"
  tester = "TST-40122"
}
