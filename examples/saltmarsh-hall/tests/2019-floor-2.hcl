test "T-2019-011" {
  run    = "2A-A01"
  limit  = "TIA permanent link, Category 6A"
  result = "pass"
  length = "17.8 m"
  margin = "6.1 dB"
  date   = "2019-08-19"
  tester = "TST-40122"
}

test "T-2019-012" {
  run    = "2A-A04"
  limit  = "TIA permanent link, Category 6A"
  result = "pass"
  length = "18.8 m"
  margin = "5.8 dB"
  date   = "2019-08-19"
  tester = "TST-40122"
}

test "T-2019-013" {
  run    = "2A-A05"
  limit  = "TIA permanent link, Category 6A"
  result = "pass"
  length = "20.3 m"
  margin = "5.7 dB"
  date   = "2019-08-19"
  tester = "TST-40122"
}

test "T-2019-014" {
  run    = "2A-A08"
  limit  = "TIA permanent link, Category 6A"
  result = "pass"
  length = "21.3 m"
  margin = "5.4 dB"
  date   = "2019-08-19"
  tester = "TST-40122"
}

test "T-2019-015" {
  run    = "2A-A09"
  limit  = "TIA permanent link, Category 6A"
  result = "pass"
  length = "31.3 m"
  margin = "5.6 dB"
  date   = "2019-08-20"
  tester = "TST-40122"
}

test "T-2019-016" {
  run    = "2A-A12"
  limit  = "TIA permanent link, Category 6A"
  result = "pass"
  length = "32.3 m"
  margin = "5.3 dB"
  date   = "2019-08-20"
  tester = "TST-40122"
}

test "T-2019-017" {
  run    = "2A-A13"
  limit  = "TIA permanent link, Category 6A"
  result = "pass"
  length = "33.8 m"
  margin = "5.2 dB"
  date   = "2019-08-20"
  tester = "TST-40122"
}

test "T-2019-018" {
  run    = "2A-A16"
  limit  = "TIA permanent link, Category 6A"
  result = "pass"
  length = "34.8 m"
  margin = "4.9 dB"
  date   = "2019-08-20"
  tester = "TST-40122"
}

test "T-2019-019" {
  run    = "2A-A17"
  limit  = "TIA permanent link, Category 6A"
  result = "pass"
  length = "46.8 m"
  margin = "5.1 dB"
  date   = "2019-08-21"
  tester = "TST-40122"
}

test "T-2019-020" {
  run    = "2A-A20"
  limit  = "TIA permanent link, Category 6A"
  result = "pass"
  length = "47.8 m"
  margin = "4.8 dB"
  date   = "2019-08-21"
  tester = "TST-40122"
}

test "T-2019-021" {
  run    = "2A-A21"
  limit  = "TIA permanent link, Category 6A"
  result = "pass"
  length = "49.6 m"
  margin = "4.7 dB"
  date   = "2019-08-21"
  tester = "TST-40122"
}

test "T-2019-022" {
  run    = "2A-A24"
  limit  = "TIA permanent link, Category 6A"
  result = "pass"
  length = "50.3 m"
  margin = "4.4 dB"
  date   = "2019-08-21"
  tester = "TST-40122"
}

test "T-2019-023" {
  run    = "2A-A25"
  limit  = "TIA permanent link, Category 6A"
  result = "pass"
  length = "60.8 m"
  margin = "4.6 dB"
  date   = "2019-08-22"
  tester = "TST-40122"
}

test "T-2019-024" {
  run    = "2A-A28"
  limit  = "TIA permanent link, Category 6A"
  result = "pass"
  length = "61.8 m"
  margin = "4.3 dB"
  date   = "2019-08-22"
  tester = "TST-40122"
}

test "T-2019-025" {
  run    = "2A-A29"
  limit  = "TIA permanent link, Category 6A"
  result = "pass"
  length = "63.3 m"
  margin = "4.2 dB"
  date   = "2019-08-22"
  tester = "TST-40122"
}

test "T-2019-026" {
  run    = "2A-A32"
  limit  = "TIA permanent link, Category 6A"
  result = "pass"
  length = "64.3 m"
  margin = "3.9 dB"
  date   = "2019-08-22"
  tester = "TST-40122"
}

test "T-2019-027" {
  run    = "2A-B07"
  limit  = "TIA permanent link, Category 6A"
  result = "pass"
  length = "35.8 m"
  margin = "5.9 dB"
  date   = "2019-08-23"
  tester = "TST-40122"
}

test "T-2019-028" {
  run    = "2A-B10"
  limit  = "TIA permanent link, Category 6A"
  result = "pass"
  length = "36.8 m"
  margin = "5.6 dB"
  date   = "2019-08-23"
  tester = "TST-40122"
}

test "T-2019-029" {
  run    = "2A-B11"
  limit  = "TIA permanent link, Category 6A"
  result = "pass"
  length = "37.8 m"
  margin = "5.5 dB"
  date   = "2019-08-23"
  tester = "TST-40122"
}

test "T-2019-030" {
  run    = "2A-B14"
  limit  = "TIA permanent link, Category 6A"
  result = "pass"
  length = "38.8 m"
  margin = "5.2 dB"
  date   = "2019-08-23"
  tester = "TST-40122"
}
