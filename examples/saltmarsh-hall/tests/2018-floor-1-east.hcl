# One run in every pair of ports was written down; the rest is in the binder
# in room 1A.

test "T-2018-001" {
  run    = "1A-A01"
  limit  = "TIA permanent link, Category 6A"
  result = "pass"
  length = "17.2 m"
  margin = "6.4 dB"
  date   = "2018-09-11"
  tester = "TST-40117"
}

test "T-2018-002" {
  run    = "1A-A03"
  limit  = "TIA permanent link, Category 6A"
  result = "pass"
  length = "17.7 m"
  margin = "6.2 dB"
  date   = "2018-09-11"
  tester = "TST-40117"
}

test "T-2018-003" {
  run    = "1A-A05"
  limit  = "TIA permanent link, Category 6A"
  result = "pass"
  length = "19.7 m"
  margin = "6.0 dB"
  date   = "2018-09-11"
  tester = "TST-40117"
}

test "T-2018-004" {
  run    = "1A-A06"
  limit  = "TIA permanent link, Category 6A"
  result = "pass"
  length = "19.7 m"
  margin = "5.9 dB"
  date   = "2018-09-11"
  tester = "TST-40117"
}

test "T-2018-005" {
  run    = "1A-A08"
  limit  = "TIA permanent link, Category 6A"
  result = "pass"
  length = "20.7 m"
  margin = "5.7 dB"
  date   = "2018-09-11"
  tester = "TST-40117"
}

test "T-2018-006" {
  run    = "1A-A09"
  limit  = "TIA permanent link, Category 6A"
  result = "pass"
  length = "29.2 m"
  margin = "5.9 dB"
  date   = "2018-09-12"
  tester = "TST-40117"
}

test "T-2018-007" {
  run    = "1A-A11"
  limit  = "TIA permanent link, Category 6A"
  result = "pass"
  length = "29.7 m"
  margin = "5.7 dB"
  date   = "2018-09-12"
  tester = "TST-40117"
}

test "T-2018-008" {
  run    = "1A-A13"
  limit  = "TIA permanent link, Category 6A"
  result = "pass"
  length = "31.7 m"
  margin = "5.5 dB"
  date   = "2018-09-12"
  tester = "TST-40117"
}

test "T-2018-009" {
  run    = "1A-A14"
  limit  = "TIA permanent link, Category 6A"
  result = "pass"
  length = "31.7 m"
  margin = "5.4 dB"
  date   = "2018-09-12"
  tester = "TST-40117"
}

test "T-2018-010" {
  run    = "1A-A16"
  limit  = "TIA permanent link, Category 6A"
  result = "pass"
  length = "32.7 m"
  margin = "5.2 dB"
  date   = "2018-09-12"
  tester = "TST-40117"
}

test "T-2018-011" {
  run    = "1A-A17"
  limit  = "TIA permanent link, Category 6A"
  result = "pass"
  length = "43.7 m"
  margin = "5.4 dB"
  date   = "2018-09-13"
  tester = "TST-40117"
}

test "T-2018-012" {
  run    = "1A-A19"
  limit  = "TIA permanent link, Category 6A"
  result = "pass"
  length = "44.2 m"
  margin = "5.2 dB"
  date   = "2018-09-13"
  tester = "TST-40117"
}

test "T-2018-013" {
  run    = "1A-A21"
  limit  = "TIA permanent link, Category 6A"
  result = "pass"
  length = "46.2 m"
  margin = "5.0 dB"
  date   = "2018-09-13"
  tester = "TST-40117"
}

test "T-2018-014" {
  run    = "1A-A22"
  limit  = "TIA permanent link, Category 6A"
  result = "pass"
  length = "46.2 m"
  margin = "4.9 dB"
  date   = "2018-09-13"
  tester = "TST-40117"
}

test "T-2018-015" {
  run    = "1A-A24"
  limit  = "TIA permanent link, Category 6A"
  result = "pass"
  length = "47.2 m"
  margin = "4.7 dB"
  date   = "2018-09-13"
  tester = "TST-40117"
}

test "T-2018-016" {
  run    = "1A-A25"
  limit  = "TIA permanent link, Category 6A"
  result = "pass"
  length = "60.2 m"
  margin = "4.9 dB"
  date   = "2018-09-14"
  tester = "TST-40117"
}

test "T-2018-017" {
  run    = "1A-A27"
  limit  = "TIA permanent link, Category 6A"
  result = "pass"
  length = "60.7 m"
  margin = "4.7 dB"
  date   = "2018-09-14"
  tester = "TST-40117"
}

test "T-2018-018" {
  run    = "1A-A29"
  limit  = "TIA permanent link, Category 6A"
  result = "pass"
  length = "62.7 m"
  margin = "4.5 dB"
  date   = "2018-09-14"
  tester = "TST-40117"
}

test "T-2018-019" {
  run    = "1A-A30"
  limit  = "TIA permanent link, Category 6A"
  result = "pass"
  length = "62.7 m"
  margin = "4.4 dB"
  date   = "2018-09-14"
  tester = "TST-40117"
}

test "T-2018-020" {
  run    = "1A-A32"
  limit  = "TIA permanent link, Category 6A"
  result = "pass"
  length = "63.7 m"
  margin = "4.2 dB"
  date   = "2018-09-14"
  tester = "TST-40117"
}
