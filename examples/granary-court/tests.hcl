test "T-2016-001" {
  run    = "0A-A01"
  limit  = "ISO/IEC permanent link, class E"
  result = "pass"
  length = "34.9 m"
  margin = "5.1 dB"
  date   = "2016-04-11"
}

test "T-2016-002" {
  run    = "0A-A04"
  limit  = "ISO/IEC permanent link, class E"
  result = "pass"
  length = "36.4 m"
  margin = "5.0 dB"
  date   = "2016-04-12"
}

test "T-2016-003" {
  run    = "0A-A08"
  limit  = "ISO/IEC permanent link, class E"
  result = "pass"
  length = "37.3 m"
  margin = "4.9 dB"
  date   = "2016-04-10"
}

test "T-2016-004" {
  run    = "0A-A13"
  limit  = "ISO/IEC permanent link, class E"
  result = "pass"
  length = "36.8 m"
  margin = "4.8 dB"
  date   = "2016-04-11"
}

test "T-2016-005" {
  run    = "0A-A17"
  limit  = "ISO/IEC permanent link, class E"
  result = "pass"
  length = "38.9 m"
  margin = "4.6 dB"
  date   = "2016-04-12"
}

test "T-2016-006" {
  run    = "0A-A20"
  limit  = "ISO/IEC permanent link, class E"
  result = "pass"
  length = "40.3 m"
  margin = "4.5 dB"
  date   = "2016-04-10"
}

test "T-2016-007" {
  run    = "0A-A21"
  limit  = "ISO/IEC permanent link, class E"
  result = "pass"
  length = "20.9 m"
  margin = "6.2 dB"
  date   = "2016-04-11"
}

test "T-2016-008" {
  run    = "0A-B01"
  limit  = "ISO/IEC permanent link, class F"
  result = "pass"
  length = "38.3 m"
  margin = "7.0 dB"
  date   = "2016-04-12"
}
