test "T-2020-013" {
  run    = "1A-D01"
  limit  = "TIA permanent link, Category 6A"
  result = "pass"
  length = "45.8 m"
  margin = "4.9 dB"
  date   = "2020-06-22"
  tester = "TST-40122"
}

test "T-2020-014" {
  run    = "1A-D02"
  limit  = "TIA permanent link, Category 6A"
  result = "pass"
  length = "47.2 m"
  margin = "4.7 dB"
  date   = "2020-06-22"
  tester = "TST-40122"
}

test "T-2020-015" {
  run    = "1A-D03"
  limit  = "TIA permanent link, Category 6A"
  result = "pass"
  length = "50.7 m"
  margin = "4.4 dB"
  date   = "2020-06-22"
  tester = "TST-40122"
}

test "T-2020-016" {
  run    = "1A-D04"
  limit  = "TIA permanent link, Category 6A"
  result = "pass"
  length = "58.2 m"
  margin = "4.1 dB"
  date   = "2020-10-02"
  tester = "TST-40122"
}

test "T-2020-017" {
  run    = "1A-D05"
  limit  = "TIA permanent link, Category 6A"
  result = "pass"
  length = "59.8 m"
  margin = "4.0 dB"
  date   = "2020-10-02"
  tester = "TST-40122"
}

test "T-2020-018" {
  run    = "1A-D06"
  limit  = "TIA permanent link, Category 6A"
  result = "pass"
  length = "61.2 m"
  margin = "3.9 dB"
  date   = "2020-10-02"
  tester = "TST-40122"
}

test "T-2020-019" {
  run    = "1A-D07"
  limit  = "TIA modular plug terminated link, Category 6A"
  result = "pass"
  length = "69.8 m"
  margin = "3.2 dB"
  date   = "2020-10-02"
  tester = "TST-40122"
}

test "T-2020-020" {
  run    = "1A-D08"
  limit  = "TIA modular plug terminated link, Category 6A"
  result = "pass"
  length = "71.2 m"
  margin = "3.1 dB"
  date   = "2020-10-02"
  tester = "TST-40122"
}
