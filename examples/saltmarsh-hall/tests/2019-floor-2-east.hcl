test "T-2019-015" {
  run    = "2A-A01"
  limit  = "TIA permanent link, Category 6A"
  result = "pass"
  length = "17.8 m"
  margin = "6.4 dB"
  date   = "2019-08-19"
  tester = "TST-40122"
}

test "T-2019-016" {
  run    = "2A-A02"
  limit  = "TIA permanent link, Category 6A"
  result = "pass"
  length = "18.2 m"
  margin = "5.9 dB"
  date   = "2019-08-19"
  tester = "TST-40122"
}

test "T-2019-017" {
  run    = "2A-A03"
  limit  = "TIA permanent link, Category 6A"
  result = "pass"
  length = "18.2 m"
  margin = "6.1 dB"
  date   = "2019-08-19"
  tester = "TST-40122"
}

test "T-2019-018" {
  run    = "2A-A04"
  limit  = "TIA permanent link, Category 6A"
  result = "pass"
  length = "18.8 m"
  margin = "6.3 dB"
  date   = "2019-08-19"
  tester = "TST-40122"
}

test "T-2019-019" {
  run    = "2A-A05"
  limit  = "TIA permanent link, Category 6A"
  result = "pass"
  length = "20.2 m"
  margin = "5.8 dB"
  date   = "2019-08-19"
  tester = "TST-40122"
}

test "T-2019-020" {
  run    = "2A-A06"
  limit  = "TIA permanent link, Category 6A"
  result = "pass"
  length = "20.2 m"
  margin = "6.0 dB"
  date   = "2019-08-19"
  tester = "TST-40122"
}

test "T-2019-021" {
  run    = "2A-A07"
  limit  = "TIA permanent link, Category 6A"
  result = "pass"
  length = "20.8 m"
  margin = "6.2 dB"
  date   = "2019-08-19"
  tester = "TST-40122"
}

test "T-2019-022" {
  run    = "2A-A08"
  limit  = "TIA permanent link, Category 6A"
  result = "pass"
  length = "21.2 m"
  margin = "6.4 dB"
  date   = "2019-08-19"
  tester = "TST-40122"
}

test "T-2019-023" {
  run    = "2A-A09"
  limit  = "TIA permanent link, Category 6A"
  result = "pass"
  length = "31.3 m"
  margin = "5.9 dB"
  date   = "2019-08-20"
  tester = "TST-40122"
}

test "T-2019-024" {
  run    = "2A-A10"
  limit  = "TIA permanent link, Category 6A"
  result = "pass"
  length = "31.7 m"
  margin = "5.4 dB"
  date   = "2019-08-20"
  tester = "TST-40122"
}

test "T-2019-025" {
  run    = "2A-A11"
  limit  = "TIA permanent link, Category 6A"
  result = "pass"
  length = "31.7 m"
  margin = "5.6 dB"
  date   = "2019-08-20"
  tester = "TST-40122"
}

test "T-2019-026" {
  run    = "2A-A12"
  limit  = "TIA permanent link, Category 6A"
  result = "pass"
  length = "32.3 m"
  margin = "5.8 dB"
  date   = "2019-08-20"
  tester = "TST-40122"
}

test "T-2019-027" {
  run    = "2A-A13"
  limit  = "TIA permanent link, Category 6A"
  result = "pass"
  length = "33.7 m"
  margin = "5.3 dB"
  date   = "2019-08-20"
  tester = "TST-40122"
}

test "T-2019-028" {
  run    = "2A-A14"
  limit  = "TIA permanent link, Category 6A"
  result = "pass"
  length = "33.7 m"
  margin = "5.5 dB"
  date   = "2019-08-20"
  tester = "TST-40122"
}

test "T-2019-029" {
  run    = "2A-A15"
  limit  = "TIA permanent link, Category 6A"
  result = "pass"
  length = "34.3 m"
  margin = "5.7 dB"
  date   = "2019-08-20"
  tester = "TST-40122"
}

test "T-2019-030" {
  run    = "2A-A16"
  limit  = "TIA permanent link, Category 6A"
  result = "pass"
  length = "34.7 m"
  margin = "5.9 dB"
  date   = "2019-08-20"
  tester = "TST-40122"
}
