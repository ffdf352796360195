test "T-2019-031" {
  run    = "2A-A17"
  limit  = "TIA permanent link, Category 6A"
  result = "pass"
  length = "46.8 m"
  margin = "5.4 dB"
  date   = "2019-08-21"
  tester = "TST-40122"
}

test "T-2019-032" {
  run    = "2A-A18"
  limit  = "TIA permanent link, Category 6A"
  result = "pass"
  length = "47.2 m"
  margin = "4.9 dB"
  date   = "2019-08-21"
  tester = "TST-40122"
}

test "T-2019-033" {
  run    = "2A-A19"
  limit  = "TIA permanent link, Category 6A"
  result = "pass"
  length = "47.2 m"
  margin = "5.1 dB"
  date   = "2019-08-21"
  tester = "TST-40122"
}

test "T-2019-034" {
  run    = "2A-A20"
  limit  = "TIA permanent link, Category 6A"
  result = "pass"
  length = "47.8 m"
  margin = "5.3 dB"
  date   = "2019-08-21"
  tester = "TST-40122"
}

test "T-2019-035" {
  run    = "2A-A21"
  limit  = "TIA permanent link, Category 6A"
  result = "pass"
  length = "49.4 m"
  margin = "4.8 dB"
  date   = "2019-08-21"
  tester = "TST-40122"
}

test "T-2019-036" {
  run    = "2A-A22"
  limit  = "TIA permanent link, Category 6A"
  result = "pass"
  length = "49.2 m"
  margin = "5.0 dB"
  date   = "2019-08-21"
  tester = "TST-40122"
}

test "T-2019-037" {
  run    = "2A-A23"
  limit  = "TIA permanent link, Category 6A"
  result = "pass"
  length = "49.8 m"
  margin = "5.2 dB"
  date   = "2019-08-21"
  tester = "TST-40122"
}

test "T-2019-038" {
  run    = "2A-A24"
  limit  = "TIA permanent link, Category 6A"
  result = "pass"
  length = "50.2 m"
  margin = "5.4 dB"
  date   = "2019-08-21"
  tester = "TST-40122"
}

test "T-2019-039" {
  run    = "2A-A25"
  limit  = "TIA permanent link, Category 6A"
  result = "pass"
  length = "60.8 m"
  margin = "4.9 dB"
  date   = "2019-08-22"
  tester = "TST-40122"
}

test "T-2019-040" {
  run    = "2A-A26"
  limit  = "TIA permanent link, Category 6A"
  result = "pass"
  length = "61.2 m"
  margin = "4.4 dB"
  date   = "2019-08-22"
  tester = "TST-40122"
}

test "T-2019-041" {
  run    = "2A-A27"
  limit  = "TIA permanent link, Category 6A"
  result = "pass"
  length = "61.2 m"
  margin = "4.6 dB"
  date   = "2019-08-22"
  tester = "TST-40122"
}

test "T-2019-042" {
  run    = "2A-A28"
  limit  = "TIA permanent link, Category 6A"
  result = "pass"
  length = "61.8 m"
  margin = "4.8 dB"
  date   = "2019-08-22"
  tester = "TST-40122"
}

test "T-2019-043" {
  run    = "2A-A29"
  limit  = "TIA permanent link, Category 6A"
  result = "pass"
  length = "63.2 m"
  margin = "4.3 dB"
  date   = "2019-08-22"
  tester = "TST-40122"
}

test "T-2019-044" {
  run    = "2A-A30"
  limit  = "TIA permanent link, Category 6A"
  result = "pass"
  length = "63.2 m"
  margin = "4.5 dB"
  date   = "2019-08-22"
  tester = "TST-40122"
}

test "T-2019-045" {
  run    = "2A-A31"
  limit  = "TIA permanent link, Category 6A"
  result = "pass"
  length = "63.8 m"
  margin = "4.7 dB"
  date   = "2019-08-22"
  tester = "TST-40122"
}

test "T-2019-046" {
  run    = "2A-A32"
  limit  = "TIA permanent link, Category 6A"
  result = "pass"
  length = "64.2 m"
  margin = "4.9 dB"
  date   = "2019-08-22"
  tester = "TST-40122"
}
