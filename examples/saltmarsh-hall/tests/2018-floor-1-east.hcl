test "T-2018-004" {
  run    = "1A-A01"
  limit  = "TIA permanent link, Category 6A"
  result = "pass"
  length = "17.3 m"
  margin = "6.4 dB"
  date   = "2018-09-11"
  tester = "TST-40117"
}

test "T-2018-005" {
  run    = "1A-A02"
  limit  = "TIA permanent link, Category 6A"
  result = "pass"
  length = "17.7 m"
  margin = "5.9 dB"
  date   = "2018-09-11"
  tester = "TST-40117"
}

test "T-2018-006" {
  run    = "1A-A03"
  limit  = "TIA permanent link, Category 6A"
  result = "pass"
  length = "17.7 m"
  margin = "6.1 dB"
  date   = "2018-09-11"
  tester = "TST-40117"
}

test "T-2018-007" {
  run    = "1A-A04"
  limit  = "TIA permanent link, Category 6A"
  result = "pass"
  length = "18.3 m"
  margin = "6.3 dB"
  date   = "2018-09-11"
  tester = "TST-40117"
}

test "T-2018-008" {
  run    = "1A-A05"
  limit  = "TIA permanent link, Category 6A"
  result = "pass"
  length = "19.7 m"
  margin = "5.8 dB"
  date   = "2018-09-11"
  tester = "TST-40117"
}

test "T-2018-009" {
  run    = "1A-A06"
  limit  = "TIA permanent link, Category 6A"
  result = "pass"
  length = "19.7 m"
  margin = "6.0 dB"
  date   = "2018-09-11"
  tester = "TST-40117"
}

test "T-2018-010" {
  run    = "1A-A07"
  limit  = "TIA permanent link, Category 6A"
  result = "pass"
  length = "20.3 m"
  margin = "6.2 dB"
  date   = "2018-09-11"
  tester = "TST-40117"
}

test "T-2018-011" {
  run    = "1A-A08"
  limit  = "TIA permanent link, Category 6A"
  result = "pass"
  length = "20.7 m"
  margin = "6.4 dB"
  date   = "2018-09-11"
  tester = "TST-40117"
}

test "T-2018-012" {
  run    = "1A-A09"
  limit  = "TIA permanent link, Category 6A"
  result = "pass"
  length = "29.3 m"
  margin = "5.9 dB"
  date   = "2018-09-12"
  tester = "TST-40117"
}

test "T-2018-013" {
  run    = "1A-A10"
  limit  = "TIA permanent link, Category 6A"
  result = "pass"
  length = "29.7 m"
  margin = "5.4 dB"
  date   = "2018-09-12"
  tester = "TST-40117"
}

test "T-2018-014" {
  run    = "1A-A11"
  limit  = "TIA permanent link, Category 6A"
  result = "pass"
  length = "29.7 m"
  margin = "5.6 dB"
  date   = "2018-09-12"
  tester = "TST-40117"
}

test "T-2018-015" {
  run    = "1A-A12"
  limit  = "TIA permanent link, Category 6A"
  result = "pass"
  length = "30.3 m"
  margin = "5.8 dB"
  date   = "2018-09-12"
  tester = "TST-40117"
}

test "T-2018-016" {
  run    = "1A-A13"
  limit  = "TIA permanent link, Category 6A"
  result = "pass"
  length = "31.7 m"
  margin = "5.3 dB"
  date   = "2018-09-12"
  tester = "TST-40117"
}

test "T-2018-017" {
  run    = "1A-A14"
  limit  = "TIA permanent link, Category 6A"
  result = "pass"
  length = "31.7 m"
  margin = "5.5 dB"
  date   = "2018-09-12"
  tester = "TST-40117"
}

test "T-2018-018" {
  run    = "1A-A15"
  limit  = "TIA permanent link, Category 6A"
  result = "pass"
  length = "32.3 m"
  margin = "5.7 dB"
  date   = "2018-09-12"
  tester = "TST-40117"
}

test "T-2018-019" {
  run    = "1A-A16"
  limit  = "TIA permanent link, Category 6A"
  result = "pass"
  length = "32.7 m"
  margin = "5.9 dB"
  date   = "2018-09-12"
  tester = "TST-40117"
}
