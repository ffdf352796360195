# Floor 1 east, rooms 101 to 104. One bundle for each drop.

bundle "1-B-01" {
  cable = "c6a-uutp-cmp"
  route = ["1-T-01", "1-D-01"]

  run "1A-A01" {
    from   = "1A-A:01"
    to     = "1.101:1"
    length = "17.5 m"
    serves = "1000BASE-T"
  }

  run "1A-A02" {
    from   = "1A-A:02"
    to     = "1.101:2"
    length = "18 m"
    serves = "1000BASE-T"
  }

  run "1A-A03" {
    from   = "1A-A:03"
    to     = "1.101:3"
    length = "18 m"
    serves = "1000BASE-T"
  }

  run "1A-A04" {
    from   = "1A-A:04"
    to     = "1.101:4"
    length = "18.5 m"
    serves = "1000BASE-T"
    state  = "spare"
  }

  run "1A-A05" {
    from   = "1A-A:05"
    to     = "1.102:1"
    length = "20 m"
    serves = "1000BASE-T"
  }

  run "1A-A06" {
    from   = "1A-A:06"
    to     = "1.102:2"
    length = "20 m"
    serves = "1000BASE-T"
  }

  run "1A-A07" {
    from   = "1A-A:07"
    to     = "1.102:3"
    length = "20.5 m"
    serves = "1000BASE-T"
  }

  run "1A-A08" {
    from   = "1A-A:08"
    to     = "1.102:4"
    length = "21 m"
    serves = "1000BASE-T"
  }
}

bundle "1-B-02" {
  cable = "c6a-uutp-cmp"
  route = ["1-T-01", "1-T-02", "1-D-02"]

  run "1A-A09" {
    from   = "1A-A:09"
    to     = "1.103:1"
    length = "29.5 m"
    serves = "1000BASE-T"
  }

  run "1A-A10" {
    from   = "1A-A:10"
    to     = "1.103:2"
    length = "30 m"
    serves = "1000BASE-T"
  }

  run "1A-A11" {
    from   = "1A-A:11"
    to     = "1.103:3"
    length = "30 m"
    serves = "1000BASE-T"
  }

  run "1A-A12" {
    from   = "1A-A:12"
    to     = "1.103:4"
    length = "30.5 m"
    serves = "1000BASE-T"
  }

  run "1A-A13" {
    from   = "1A-A:13"
    to     = "1.104:1"
    length = "32 m"
    serves = "1000BASE-T"
  }

  run "1A-A14" {
    from   = "1A-A:14"
    to     = "1.104:2"
    length = "32 m"
    serves = "1000BASE-T"
  }

  run "1A-A15" {
    from   = "1A-A:15"
    to     = "1.104:3"
    length = "32.5 m"
    serves = "1000BASE-T"
  }

  run "1A-A16" {
    from   = "1A-A:16"
    to     = "1.103:5"
    length = "31.5 m"
    serves = "1000BASE-T"
    note   = "re-terminated in 103; the coil above 104 was cut back"
  }
}
