test "T-2019-001" {
  run    = "1A-C01"
  limit  = "TIA permanent link, Category 6A"
  result = "pass"
  length = "59.8 m"
  margin = "7.0 dB"
  date   = "2019-02-07"
  tester = "TST-40122"
}

test "T-2019-002" {
  run    = "1A-C02"
  limit  = "TIA permanent link, Category 6A"
  result = "pass"
  length = "60.3 m"
  margin = "6.9 dB"
  date   = "2019-02-07"
  tester = "TST-40122"
}

test "T-2019-003" {
  run    = "1A-C03"
  limit  = "TIA permanent link, Category 6A"
  result = "pass"
  length = "60.8 m"
  margin = "6.8 dB"
  date   = "2019-02-07"
  tester = "TST-40122"
}

test "T-2019-004" {
  run    = "1A-C04"
  limit  = "TIA permanent link, Category 6A"
  result = "pass"
  length = "61.3 m"
  margin = "6.7 dB"
  date   = "2019-02-07"
  tester = "TST-40122"
}

test "T-2019-005" {
  run    = "1A-C05"
  limit  = "TIA permanent link, Category 6A"
  result = "pass"
  length = "68 m"
  margin = "6.6 dB"
  date   = "2019-02-07"
  tester = "TST-40122"
}

test "T-2019-006" {
  run    = "1A-C06"
  limit  = "TIA permanent link, Category 6A"
  result = "pass"
  length = "65.8 m"
  margin = "6.5 dB"
  date   = "2019-02-07"
  tester = "TST-40122"
}

test "T-2019-007" {
  run    = "1A-C07"
  limit  = "TIA permanent link, Category 6A"
  result = "pass"
  length = "66.3 m"
  margin = "6.4 dB"
  date   = "2019-02-07"
  tester = "TST-40122"
}

test "T-2019-008" {
  run    = "1A-C08"
  limit  = "TIA permanent link, Category 6A"
  result = "pass"
  length = "66.8 m"
  margin = "6.3 dB"
  date   = "2019-02-07"
  tester = "TST-40122"
}

test "T-2019-009" {
  run    = "1A-C09"
  limit  = "TIA permanent link, Category 6A"
  result = "pass"
  length = "67.3 m"
  margin = "6.2 dB"
  date   = "2019-02-07"
  tester = "TST-40122"
}

test "T-2019-010" {
  run    = "1A-C10"
  limit  = "TIA permanent link, Category 6A"
  result = "pass"
  length = "67.8 m"
  margin = "6.1 dB"
  date   = "2019-02-07"
  tester = "TST-40122"
}

test "T-2019-011" {
  run    = "1A-C11"
  limit  = "TIA permanent link, Category 6A"
  result = "pass"
  length = "69.8 m"
  margin = "6.0 dB"
  date   = "2019-02-07"
  tester = "TST-40122"
}

test "T-2019-012" {
  run    = "1A-C12"
  limit  = "TIA permanent link, Category 6A"
  result = "pass"
  length = "70.3 m"
  margin = "5.9 dB"
  date   = "2019-02-07"
  tester = "TST-40122"
}

test "T-2019-013" {
  run    = "1A-C13"
  limit  = "TIA permanent link, Category 6A"
  result = "pass"
  length = "70.8 m"
  margin = "5.8 dB"
  date   = "2019-02-07"
  tester = "TST-40122"
}

test "T-2019-014" {
  run    = "1A-C14"
  limit  = "TIA permanent link, Category 6A"
  result = "pass"
  length = "71.3 m"
  margin = "5.7 dB"
  date   = "2019-02-07"
  tester = "TST-40122"
}
