# What the owner will not do without was measured at the survey.

test "T-2018-001" {
  run    = "1A-V01"
  limit  = "TIA wire map and length, Category 3"
  result = "pass"
  length = "45.6 m"
  date   = "2018-04-05"
  tester = "TST-40117"
}

test "T-2018-002" {
  run    = "1A-V02"
  limit  = "TIA wire map and length, Category 3"
  result = "pass"
  length = "40.8 m"
  date   = "2018-04-05"
  tester = "TST-40117"
}

test "T-2018-003" {
  run    = "1A-Z01"
  limit  = "TIA permanent link, Category 5"
  result = "pass"
  length = "46.2 m"
  margin = "2.1 dB"
  date   = "2018-04-05"
  tester = "TST-40117"
}
