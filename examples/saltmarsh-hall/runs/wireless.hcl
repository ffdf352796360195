# Access points at 10 Gbit/s with power over the same pairs.

bundle "1-B-31" {
  cable = "c6a-uutp-cmp"
  route = ["1-T-01", "1-T-02", "1-H-01"]
  power = "type-3"

  run "1A-B13" {
    from   = "1A-B:13"
    to     = "1.AP1:1"
    length = "36 m"
    serves = "10GBASE-T"
  }

  run "1A-B14" {
    from   = "1A-B:14"
    to     = "1.AP2:1"
    length = "38 m"
    serves = "10GBASE-T"
  }

  run "1A-B15" {
    from   = "1A-B:15"
    to     = "1.AP3:1"
    length = "40 m"
    serves = "10GBASE-T"
  }
}

bundle "1-B-32" {
  cable = "c6a-uutp-cmp"
  route = ["1-T-05", "1-T-06", "1-H-02"]
  power = "type-3"

  run "1A-B16" {
    from   = "1A-B:16"
    to     = "1.AP4:1"
    length = "40 m"
    serves = "10GBASE-T"
  }

  run "1A-B17" {
    from   = "1A-B:17"
    to     = "1.AP5:1"
    length = "42 m"
    serves = "10GBASE-T"
  }

  run "1A-B18" {
    from   = "1A-B:18"
    to     = "1.AP6:1"
    length = "44 m"
    serves = "10GBASE-T"
  }
}

bundle "2-B-31" {
  cable = "c6a-uutp-cmp"
  route = ["2-T-01", "2-T-02", "2-H-01"]
  power = "type-3"

  run "2A-B01" {
    from   = "2A-B:01"
    to     = "2.AP1:1"
    length = "38 m"
    serves = "10GBASE-T"
  }

  run "2A-B02" {
    from   = "2A-B:02"
    to     = "2.AP2:1"
    length = "40 m"
    serves = "10GBASE-T"
  }

  run "2A-B03" {
    from   = "2A-B:03"
    to     = "2.AP3:1"
    length = "42 m"
    serves = "10GBASE-T"
  }
}

bundle "2-B-32" {
  cable = "c6a-uutp-cmp"
  route = ["2-T-06", "2-T-07", "2-H-02"]
  power = "type-3"

  run "2A-B04" {
    from   = "2A-B:04"
    to     = "2.AP4:1"
    length = "40 m"
    serves = "10GBASE-T"
  }

  run "2A-B05" {
    from   = "2A-B:05"
    to     = "2.AP5:1"
    length = "42 m"
    serves = "10GBASE-T"
  }

  run "2A-B06" {
    from   = "2A-B:06"
    to     = "2.AP6:1"
    length = "44 m"
    serves = "10GBASE-T"
  }
}
