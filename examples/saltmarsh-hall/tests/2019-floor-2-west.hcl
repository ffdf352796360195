test "T-2019-047" {
  run    = "2A-B07"
  limit  = "TIA permanent link, Category 6A"
  result = "pass"
  length = "35.8 m"
  margin = "5.9 dB"
  date   = "2019-08-23"
  tester = "TST-40122"
}

test "T-2019-048" {
  run    = "2A-B08"
  limit  = "TIA permanent link, Category 6A"
  result = "pass"
  length = "36.3 m"
  margin = "5.8 dB"
  date   = "2019-08-23"
  tester = "TST-40122"
}

test "T-2019-049" {
  run    = "2A-B09"
  limit  = "TIA permanent link, Category 6A"
  result = "pass"
  length = "36.3 m"
  margin = "5.7 dB"
  date   = "2019-08-23"
  tester = "TST-40122"
}

test "T-2019-050" {
  run    = "2A-B10"
  limit  = "TIA permanent link, Category 6A"
  result = "pass"
  length = "36.8 m"
  margin = "5.6 dB"
  date   = "2019-08-23"
  tester = "TST-40122"
}

test "T-2019-051" {
  run    = "2A-B11"
  limit  = "TIA permanent link, Category 6A"
  result = "pass"
  length = "37.8 m"
  margin = "5.5 dB"
  date   = "2019-08-23"
  tester = "TST-40122"
}

test "T-2019-052" {
  run    = "2A-B12"
  limit  = "TIA permanent link, Category 6A"
  result = "pass"
  length = "37.8 m"
  margin = "5.4 dB"
  date   = "2019-08-23"
  tester = "TST-40122"
}

test "T-2019-053" {
  run    = "2A-B13"
  limit  = "TIA permanent link, Category 6A"
  result = "pass"
  length = "38.3 m"
  margin = "5.3 dB"
  date   = "2019-08-23"
  tester = "TST-40122"
}

test "T-2019-054" {
  run    = "2A-B14"
  limit  = "TIA permanent link, Category 6A"
  result = "pass"
  length = "38.8 m"
  margin = "5.2 dB"
  date   = "2019-08-23"
  tester = "TST-40122"
}
