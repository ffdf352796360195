test "T-2020-001" {
  run    = "1A-B13"
  limit  = "TIA permanent link, Category 6A"
  result = "pass"
  length = "35.8 m"
  margin = "5.3 dB"
  date   = "2020-02-25"
  tester = "TST-40122"
}

test "T-2020-002" {
  run    = "1A-B14"
  limit  = "TIA permanent link, Category 6A"
  result = "pass"
  length = "37.8 m"
  margin = "5.2 dB"
  date   = "2020-02-25"
  tester = "TST-40122"
}

test "T-2020-003" {
  run    = "1A-B15"
  limit  = "TIA permanent link, Category 6A"
  result = "pass"
  length = "39.8 m"
  margin = "5.1 dB"
  date   = "2020-02-25"
  tester = "TST-40122"
}

test "T-2020-004" {
  run    = "1A-B16"
  limit  = "TIA permanent link, Category 6A"
  result = "pass"
  length = "39.8 m"
  margin = "5.0 dB"
  date   = "2020-02-25"
  tester = "TST-40122"
}

test "T-2020-005" {
  run    = "1A-B17"
  limit  = "TIA permanent link, Category 6A"
  result = "pass"
  length = "41.8 m"
  margin = "4.9 dB"
  date   = "2020-02-25"
  tester = "TST-40122"
}

test "T-2020-006" {
  run    = "1A-B18"
  limit  = "TIA permanent link, Category 6A"
  result = "pass"
  length = "43.8 m"
  margin = "4.8 dB"
  date   = "2020-02-25"
  tester = "TST-40122"
}

test "T-2020-007" {
  run    = "2A-B01"
  limit  = "TIA permanent link, Category 6A"
  result = "pass"
  length = "37.8 m"
  margin = "5.3 dB"
  date   = "2020-02-26"
  tester = "TST-40122"
}

test "T-2020-008" {
  run    = "2A-B02"
  limit  = "TIA permanent link, Category 6A"
  result = "pass"
  length = "39.8 m"
  margin = "5.2 dB"
  date   = "2020-02-26"
  tester = "TST-40122"
}

test "T-2020-009" {
  run    = "2A-B03"
  limit  = "TIA permanent link, Category 6A"
  result = "pass"
  length = "41.8 m"
  margin = "5.1 dB"
  date   = "2020-02-26"
  tester = "TST-40122"
}

test "T-2020-010" {
  run    = "2A-B04"
  limit  = "TIA permanent link, Category 6A"
  result = "pass"
  length = "39.8 m"
  margin = "5.0 dB"
  date   = "2020-02-26"
  tester = "TST-40122"
}

test "T-2020-011" {
  run    = "2A-B05"
  limit  = "TIA permanent link, Category 6A"
  result = "pass"
  length = "41.8 m"
  margin = "4.9 dB"
  date   = "2020-02-26"
  tester = "TST-40122"
}

test "T-2020-012" {
  run    = "2A-B06"
  limit  = "TIA permanent link, Category 6A"
  result = "pass"
  length = "43.8 m"
  margin = "4.8 dB"
  date   = "2020-02-26"
  tester = "TST-40122"
}
