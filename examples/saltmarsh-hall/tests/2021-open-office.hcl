# Measured from the panel to the multi-user outlet, with the cable beyond
# 1-CP1.

test "T-2021-001" {
  run    = "1A-B01"
  limit  = "TIA permanent link, Category 6"
  result = "pass"
  length = "48.7 m"
  margin = "5.1 dB"
  date   = "2021-01-14"
  tester = "TST-40122"
}

test "T-2021-002" {
  run    = "1A-B02"
  limit  = "TIA permanent link, Category 6"
  result = "pass"
  length = "49.7 m"
  margin = "5.0 dB"
  date   = "2021-01-14"
  tester = "TST-40122"
}

test "T-2021-003" {
  run    = "1A-B03"
  limit  = "TIA permanent link, Category 6"
  result = "pass"
  length = "49.2 m"
  margin = "4.9 dB"
  date   = "2021-01-14"
  tester = "TST-40122"
}

test "T-2021-004" {
  run    = "1A-B04"
  limit  = "TIA permanent link, Category 6"
  result = "pass"
  length = "48.2 m"
  margin = "4.8 dB"
  date   = "2021-01-14"
  tester = "TST-40122"
}

test "T-2021-005" {
  run    = "1A-B05"
  limit  = "TIA permanent link, Category 6"
  result = "pass"
  length = "49.2 m"
  margin = "4.7 dB"
  date   = "2021-01-14"
  tester = "TST-40122"
}

test "T-2021-006" {
  run    = "1A-B06"
  limit  = "TIA permanent link, Category 6"
  result = "pass"
  length = "48.7 m"
  margin = "4.6 dB"
  date   = "2021-01-14"
  tester = "TST-40122"
}

test "T-2021-007" {
  run    = "1A-B07"
  limit  = "TIA permanent link, Category 6"
  result = "pass"
  length = "49.7 m"
  margin = "4.5 dB"
  date   = "2021-01-14"
  tester = "TST-40122"
}

test "T-2021-008" {
  run    = "1A-B08"
  limit  = "TIA permanent link, Category 6"
  result = "pass"
  length = "48.7 m"
  margin = "4.4 dB"
  date   = "2021-01-14"
  tester = "TST-40122"
}

test "T-2021-009" {
  run    = "1A-B09"
  limit  = "TIA permanent link, Category 6"
  result = "pass"
  length = "48.2 m"
  margin = "4.3 dB"
  date   = "2021-01-14"
  tester = "TST-40122"
}

test "T-2021-010" {
  run    = "1A-B10"
  limit  = "TIA permanent link, Category 6"
  result = "pass"
  length = "49.2 m"
  margin = "4.2 dB"
  date   = "2021-01-14"
  tester = "TST-40122"
}

test "T-2021-011" {
  run    = "1A-B11"
  limit  = "TIA permanent link, Category 6"
  result = "pass"
  length = "50.2 m"
  margin = "4.1 dB"
  date   = "2021-01-14"
  tester = "TST-40122"
}

test "T-2021-012" {
  run    = "1A-B12"
  limit  = "TIA permanent link, Category 6"
  result = "pass"
  length = "47.7 m"
  margin = "4.0 dB"
  date   = "2021-01-14"
  tester = "TST-40122"
}
