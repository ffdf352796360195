test "T-2018-020" {
  run    = "1A-A17"
  limit  = "TIA permanent link, Category 6A"
  result = "pass"
  length = "43.8 m"
  margin = "5.4 dB"
  date   = "2018-09-13"
  tester = "TST-40117"
}

test "T-2018-021" {
  run    = "1A-A18"
  limit  = "TIA permanent link, Category 6A"
  result = "pass"
  length = "44.2 m"
  margin = "4.9 dB"
  date   = "2018-09-13"
  tester = "TST-40117"
}

test "T-2018-022" {
  run    = "1A-A19"
  limit  = "TIA permanent link, Category 6A"
  result = "pass"
  length = "44.2 m"
  margin = "5.1 dB"
  date   = "2018-09-13"
  tester = "TST-40117"
}

test "T-2018-023" {
  run    = "1A-A20"
  limit  = "TIA permanent link, Category 6A"
  result = "pass"
  length = "44.8 m"
  margin = "5.3 dB"
  date   = "2018-09-13"
  tester = "TST-40117"
}

test "T-2018-024" {
  run    = "1A-A21"
  limit  = "TIA permanent link, Category 6A"
  result = "pass"
  length = "46.2 m"
  margin = "4.8 dB"
  date   = "2018-09-13"
  tester = "TST-40117"
}

test "T-2018-025" {
  run    = "1A-A22"
  limit  = "TIA permanent link, Category 6A"
  result = "pass"
  length = "46.2 m"
  margin = "5.0 dB"
  date   = "2018-09-13"
  tester = "TST-40117"
}

test "T-2018-026" {
  run    = "1A-A23"
  limit  = "TIA permanent link, Category 6A"
  result = "pass"
  length = "46.8 m"
  margin = "5.2 dB"
  date   = "2018-09-13"
  tester = "TST-40117"
}

test "T-2018-027" {
  run    = "1A-A24"
  limit  = "TIA permanent link, Category 6A"
  result = "pass"
  length = "47.2 m"
  margin = "5.4 dB"
  date   = "2018-09-13"
  tester = "TST-40117"
}

test "T-2018-028" {
  run    = "1A-A25"
  limit  = "TIA permanent link, Category 6A"
  result = "pass"
  length = "60.3 m"
  margin = "4.9 dB"
  date   = "2018-09-14"
  tester = "TST-40117"
}

test "T-2018-029" {
  run    = "1A-A26"
  limit  = "TIA permanent link, Category 6A"
  result = "pass"
  length = "60.7 m"
  margin = "4.4 dB"
  date   = "2018-09-14"
  tester = "TST-40117"
}

test "T-2018-030" {
  run    = "1A-A27"
  limit  = "TIA permanent link, Category 6A"
  result = "pass"
  length = "60.7 m"
  margin = "4.6 dB"
  date   = "2018-09-14"
  tester = "TST-40117"
}

test "T-2018-031" {
  run    = "1A-A28"
  limit  = "TIA permanent link, Category 6A"
  result = "pass"
  length = "61.3 m"
  margin = "4.8 dB"
  date   = "2018-09-14"
  tester = "TST-40117"
}

test "T-2018-032" {
  run    = "1A-A29"
  limit  = "TIA permanent link, Category 6A"
  result = "pass"
  length = "62.7 m"
  margin = "4.3 dB"
  date   = "2018-09-14"
  tester = "TST-40117"
}

test "T-2018-033" {
  run    = "1A-A30"
  limit  = "TIA permanent link, Category 6A"
  result = "pass"
  length = "62.7 m"
  margin = "4.5 dB"
  date   = "2018-09-14"
  tester = "TST-40117"
}

test "T-2018-034" {
  run    = "1A-A31"
  limit  = "TIA permanent link, Category 6A"
  result = "pass"
  length = "63.3 m"
  margin = "4.7 dB"
  date   = "2018-09-14"
  tester = "TST-40117"
}

test "T-2018-035" {
  run    = "1A-A32"
  limit  = "TIA permanent link, Category 6A"
  result = "pass"
  length = "63.7 m"
  margin = "4.9 dB"
  date   = "2018-09-14"
  tester = "TST-40117"
}
