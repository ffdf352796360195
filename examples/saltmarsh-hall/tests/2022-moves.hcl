test "T-2022-001" {
  run    = "1A-A16"
  limit  = "TIA permanent link, Category 6A"
  result = "pass"
  length = "31.3 m"
  margin = "5.8 dB"
  date   = "2022-10-03"
  tester = "TST-40122"
}
