# Floor 2 east, rooms 201 to 204.

bundle "2-B-01" {
  cable = "c6a-uutp-cmp"
  route = ["2-T-01", "2-D-01"]

  run "2A-A01" {
    from   = "2A-A:01"
    to     = "2.201:1"
    length = "18 m"
    serves = "1000BASE-T"
  }

  run "2A-A02" {
    from   = "2A-A:02"
    to     = "2.201:2"
    length = "18.5 m"
    serves = "1000BASE-T"
  }

  run "2A-A03" {
    from   = "2A-A:03"
    to     = "2.201:3"
    length = "18.5 m"
    serves = "1000BASE-T"
  }

  run "2A-A04" {
    from   = "2A-A:04"
    to     = "2.201:4"
    length = "19 m"
    serves = "1000BASE-T"
  }

  run "2A-A05" {
    from   = "2A-A:05"
    to     = "2.202:1"
    length = "20.5 m"
    serves = "1000BASE-T"
  }

  run "2A-A06" {
    from   = "2A-A:06"
    to     = "2.202:2"
    length = "20.5 m"
    serves = "1000BASE-T"
  }

  run "2A-A07" {
    from   = "2A-A:07"
    to     = "2.202:3"
    length = "21 m"
    serves = "1000BASE-T"
  }

  run "2A-A08" {
    from   = "2A-A:08"
    to     = "2.202:4"
    length = "21.5 m"
    serves = "1000BASE-T"
  }
}

bundle "2-B-02" {
  cable = "c6a-uutp-cmp"
  route = ["2-T-01", "2-T-02", "2-D-02"]

  run "2A-A09" {
    from   = "2A-A:09"
    to     = "2.203:1"
    length = "31.5 m"
    serves = "1000BASE-T"
  }

  run "2A-A10" {
    from   = "2A-A:10"
    to     = "2.203:2"
    length = "32 m"
    serves = "1000BASE-T"
  }

  run "2A-A11" {
    from   = "2A-A:11"
    to     = "2.203:3"
    length = "32 m"
    serves = "1000BASE-T"
  }

  run "2A-A12" {
    from   = "2A-A:12"
    to     = "2.203:4"
    length = "32.5 m"
    serves = "1000BASE-T"
    state  = "spare"
  }

  run "2A-A13" {
    from   = "2A-A:13"
    to     = "2.204:1"
    length = "34 m"
    serves = "1000BASE-T"
  }

  run "2A-A14" {
    from   = "2A-A:14"
    to     = "2.204:2"
    length = "34 m"
    serves = "1000BASE-T"
  }

  run "2A-A15" {
    from   = "2A-A:15"
    to     = "2.204:3"
    length = "34.5 m"
    serves = "1000BASE-T"
  }

  run "2A-A16" {
    from   = "2A-A:16"
    to     = "2.204:4"
    length = "35 m"
    serves = "1000BASE-T"
  }
}
