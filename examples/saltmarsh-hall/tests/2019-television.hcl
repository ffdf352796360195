test "T-2019-058" {
  run    = "1A/2A-X1"
  limit  = "TIA coaxial link, Series 11, 860 MHz"
  result = "pass"
  length = "15.8 m"
  loss   = "2.0 dB"
  date   = "2019-11-21"
  tester = "TST-62003"
}

test "T-2019-059" {
  run    = "2A-X08"
  limit  = "TIA coaxial link, Series 6, 860 MHz"
  result = "pass"
  length = "21.8 m"
  loss   = "4.3 dB"
  date   = "2019-11-21"
  tester = "TST-62003"
}

test "T-2019-060" {
  run    = "1A-X01"
  limit  = "TIA coaxial link, Series 6, 860 MHz"
  result = "pass"
  length = "59.8 m"
  loss   = "11.6 dB"
  date   = "2019-11-21"
  tester = "TST-62003"
}

test "T-2019-061" {
  run    = "1A-X02"
  limit  = "TIA coaxial link, Series 6, 860 MHz"
  result = "pass"
  length = "61.8 m"
  loss   = "12.0 dB"
  date   = "2019-11-21"
  tester = "TST-62003"
}

test "T-2019-062" {
  run    = "1A-X03"
  limit  = "TIA coaxial link, Series 6, 860 MHz"
  result = "pass"
  length = "34.8 m"
  loss   = "6.8 dB"
  date   = "2019-11-21"
  tester = "TST-62003"
}

test "T-2019-063" {
  run    = "2A-X01"
  limit  = "TIA coaxial link, Series 6, 860 MHz"
  result = "pass"
  length = "17.8 m"
  loss   = "3.5 dB"
  date   = "2019-11-21"
  tester = "TST-62003"
}

test "T-2019-064" {
  run    = "2A-X02"
  limit  = "TIA coaxial link, Series 6, 860 MHz"
  result = "pass"
  length = "47.3 m"
  loss   = "9.2 dB"
  date   = "2019-11-21"
  tester = "TST-62003"
}

test "T-2019-065" {
  run    = "2A-X03"
  limit  = "TIA coaxial link, Series 6, 860 MHz"
  result = "pass"
  length = "36.3 m"
  loss   = "7.1 dB"
  date   = "2019-11-21"
  tester = "TST-62003"
}

test "T-2019-066" {
  run    = "2A-X04"
  limit  = "TIA coaxial link, Series 6, 860 MHz"
  result = "pass"
  length = "37.8 m"
  loss   = "7.4 dB"
  date   = "2019-11-21"
  tester = "TST-62003"
}
