test "T-2019-055" {
  run    = "1A/1B-F1"
  limit  = "TIA Tier 1, single-mode, 1310 nm"
  result = "pass"
  length = "46.6 m"
  loss   = "0.6 dB"
  date   = "2019-09-05"
  tester = "TST-51008"
}

test "T-2019-056" {
  run    = "1A/2A-F1"
  limit  = "TIA Tier 1, single-mode, 1310 nm"
  result = "pass"
  length = "18.1 m"
  loss   = "0.5 dB"
  date   = "2019-09-05"
  tester = "TST-51008"
}

test "T-2019-057" {
  run    = "1A/2A-F2"
  limit  = "TIA Tier 1, multimode, 850 nm"
  result = "pass"
  length = "18.0 m"
  loss   = "0.7 dB"
  date   = "2019-09-05"
  tester = "TST-51008"
}
