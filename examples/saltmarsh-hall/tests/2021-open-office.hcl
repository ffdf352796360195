test "T-2021-001" {
  run    = "1A-B01"
  limit  = "TIA permanent link, Category 6"
  result = "pass"
  length = "48.7 m"
  margin = "5.1 dB"
  date   = "2021-01-14"
  tester = "TST-40122"
  note   = "with the cable beyond 1-CP1"
}

test "T-2021-002" {
  run    = "1A-B03"
  limit  = "TIA permanent link, Category 6"
  result = "pass"
  length = "49.2 m"
  margin = "4.9 dB"
  date   = "2021-01-14"
  tester = "TST-40122"
}

test "T-2021-003" {
  run    = "1A-B05"
  limit  = "TIA permanent link, Category 6"
  result = "pass"
  length = "49.2 m"
  margin = "4.7 dB"
  date   = "2021-01-14"
  tester = "TST-40122"
}

test "T-2021-004" {
  run    = "1A-B07"
  limit  = "TIA permanent link, Category 6"
  result = "pass"
  length = "49.7 m"
  margin = "4.5 dB"
  date   = "2021-01-14"
  tester = "TST-40122"
}

test "T-2021-005" {
  run    = "1A-B09"
  limit  = "TIA permanent link, Category 6"
  result = "pass"
  length = "48.2 m"
  margin = "4.3 dB"
  date   = "2021-01-14"
  tester = "TST-40122"
}

test "T-2021-006" {
  run    = "1A-B11"
  limit  = "TIA permanent link, Category 6"
  result = "pass"
  length = "50.2 m"
  margin = "4.1 dB"
  date   = "2021-01-14"
  tester = "TST-40122"
}
