# Every run was measured before it was handed over.

test "T-2016-001" {
  run    = "0A-A01"
  limit  = "ISO/IEC permanent link, class E"
  result = "pass"
  length = "34.8 m"
  margin = "4.8 dB"
  date   = "2016-04-11"
}

test "T-2016-002" {
  run    = "0A-A02"
  limit  = "ISO/IEC permanent link, class E"
  result = "pass"
  length = "35.3 m"
  margin = "4.7 dB"
  date   = "2016-04-11"
}

test "T-2016-003" {
  run    = "0A-A03"
  limit  = "ISO/IEC permanent link, class E"
  result = "pass"
  length = "35.9 m"
  margin = "4.6 dB"
  date   = "2016-04-11"
}

test "T-2016-004" {
  run    = "0A-A04"
  limit  = "ISO/IEC permanent link, class E"
  result = "pass"
  length = "36.3 m"
  margin = "4.9 dB"
  date   = "2016-04-11"
}

test "T-2016-005" {
  run    = "0A-A05"
  limit  = "ISO/IEC permanent link, class E"
  result = "pass"
  length = "36.8 m"
  margin = "4.8 dB"
  date   = "2016-04-11"
}

test "T-2016-006" {
  run    = "0A-A06"
  limit  = "ISO/IEC permanent link, class E"
  result = "pass"
  length = "37.4 m"
  margin = "4.6 dB"
  date   = "2016-04-11"
}

test "T-2016-007" {
  run    = "0A-A07"
  limit  = "ISO/IEC permanent link, class E"
  result = "pass"
  length = "36.8 m"
  margin = "4.6 dB"
  date   = "2016-04-11"
}

test "T-2016-008" {
  run    = "0A-A08"
  limit  = "ISO/IEC permanent link, class E"
  result = "pass"
  length = "37.3 m"
  margin = "4.8 dB"
  date   = "2016-04-11"
}

test "T-2016-009" {
  run    = "0A-A09"
  limit  = "ISO/IEC permanent link, class E"
  result = "pass"
  length = "37.9 m"
  margin = "4.7 dB"
  date   = "2016-04-12"
}

test "T-2016-010" {
  run    = "0A-A10"
  limit  = "ISO/IEC permanent link, class E"
  result = "pass"
  length = "38.3 m"
  margin = "4.6 dB"
  date   = "2016-04-12"
}

test "T-2016-011" {
  run    = "0A-A11"
  limit  = "ISO/IEC permanent link, class E"
  result = "pass"
  length = "38.8 m"
  margin = "4.5 dB"
  date   = "2016-04-12"
}

test "T-2016-012" {
  run    = "0A-A12"
  limit  = "ISO/IEC permanent link, class E"
  result = "pass"
  length = "39.4 m"
  margin = "4.8 dB"
  date   = "2016-04-12"
}

test "T-2016-013" {
  run    = "0A-A13"
  limit  = "ISO/IEC permanent link, class E"
  result = "pass"
  length = "36.8 m"
  margin = "4.8 dB"
  date   = "2016-04-12"
}

test "T-2016-014" {
  run    = "0A-A14"
  limit  = "ISO/IEC permanent link, class E"
  result = "pass"
  length = "37.3 m"
  margin = "4.6 dB"
  date   = "2016-04-12"
}

test "T-2016-015" {
  run    = "0A-A15"
  limit  = "ISO/IEC permanent link, class E"
  result = "pass"
  length = "37.9 m"
  margin = "4.5 dB"
  date   = "2016-04-12"
}

test "T-2016-016" {
  run    = "0A-A16"
  limit  = "ISO/IEC permanent link, class E"
  result = "pass"
  length = "38.3 m"
  margin = "4.8 dB"
  date   = "2016-04-12"
}

test "T-2016-017" {
  run    = "0A-A17"
  limit  = "ISO/IEC permanent link, class E"
  result = "pass"
  length = "38.8 m"
  margin = "4.7 dB"
  date   = "2016-04-12"
}

test "T-2016-018" {
  run    = "0A-A18"
  limit  = "ISO/IEC permanent link, class E"
  result = "pass"
  length = "39.4 m"
  margin = "4.6 dB"
  date   = "2016-04-13"
}

test "T-2016-019" {
  run    = "0A-A19"
  limit  = "ISO/IEC permanent link, class E"
  result = "pass"
  length = "39.8 m"
  margin = "4.5 dB"
  date   = "2016-04-13"
}

test "T-2016-020" {
  run    = "0A-A20"
  limit  = "ISO/IEC permanent link, class E"
  result = "pass"
  length = "40.3 m"
  margin = "4.8 dB"
  date   = "2016-04-13"
}

test "T-2016-021" {
  run    = "0A-A21"
  limit  = "ISO/IEC permanent link, class E"
  result = "pass"
  length = "20.9 m"
  margin = "5.1 dB"
  date   = "2016-04-13"
}

test "T-2016-022" {
  run    = "0A-A22"
  limit  = "ISO/IEC permanent link, class E"
  result = "pass"
  length = "21.3 m"
  margin = "5.0 dB"
  date   = "2016-04-13"
}

test "T-2016-023" {
  run    = "0A-A23"
  limit  = "ISO/IEC permanent link, class E"
  result = "pass"
  length = "21.8 m"
  margin = "4.9 dB"
  date   = "2016-04-13"
}

test "T-2016-024" {
  run    = "0A-B01"
  limit  = "ISO/IEC permanent link, class F"
  result = "pass"
  length = "38.4 m"
  margin = "7.0 dB"
  date   = "2016-04-13"
}

test "T-2016-025" {
  run    = "0A-B02"
  limit  = "ISO/IEC permanent link, class F"
  result = "pass"
  length = "38.8 m"
  margin = "7.0 dB"
  date   = "2016-04-13"
}
