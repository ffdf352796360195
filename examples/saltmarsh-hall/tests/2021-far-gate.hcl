test "T-2021-013" {
  run    = "1A-D09"
  limit  = "TIA modular plug terminated link, Category 6A"
  result = "pass"
  length = "86.2 m"
  margin = "1.9 dB"
  date   = "2021-05-07"
  tester = "TST-40122"
}
