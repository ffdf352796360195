# Through the void below the ground floor.

bundle "0-B-01" {
  cable = "k6-uutp-cca"
  route = ["0-T-01", "0-T-02", "0-D-01"]

  run "0A-A01" {
    from   = "0A-A:01"
    to     = "0.01:1"
    length = "35 m"
    serves = "1000BASE-T"
  }

  run "0A-A02" {
    from   = "0A-A:02"
    to     = "0.01:2"
    length = "35.5 m"
    serves = "1000BASE-T"
  }

  run "0A-A03" {
    from   = "0A-A:03"
    to     = "0.01:3"
    length = "36 m"
    serves = "1000BASE-T"
  }

  run "0A-A04" {
    from   = "0A-A:04"
    to     = "0.01:4"
    length = "36.5 m"
    serves = "1000BASE-T"
  }

  run "0A-A05" {
    from   = "0A-A:05"
    to     = "0.01:5"
    length = "37 m"
    serves = "1000BASE-T"
  }

  run "0A-A06" {
    from   = "0A-A:06"
    to     = "0.01:6"
    length = "37.5 m"
    serves = "1000BASE-T"
    state  = "spare"
  }

  run "0A-A07" {
    from   = "0A-A:07"
    to     = "0.02:1"
    length = "37 m"
    serves = "1000BASE-T"
  }

  run "0A-A08" {
    from   = "0A-A:08"
    to     = "0.02:2"
    length = "37.5 m"
    serves = "1000BASE-T"
  }

  run "0A-A09" {
    from   = "0A-A:09"
    to     = "0.02:3"
    length = "38 m"
    serves = "1000BASE-T"
  }

  run "0A-A10" {
    from   = "0A-A:10"
    to     = "0.02:4"
    length = "38.5 m"
    serves = "1000BASE-T"
  }

  run "0A-A11" {
    from   = "0A-A:11"
    to     = "0.02:5"
    length = "39 m"
    serves = "1000BASE-T"
  }

  run "0A-A12" {
    from   = "0A-A:12"
    to     = "0.02:6"
    length = "39.5 m"
    serves = "1000BASE-T"
    state  = "spare"
  }
}

bundle "0-B-02" {
  cable = "k6-uutp-cca"
  route = ["0-T-01", "0-T-02", "0-D-02"]

  run "0A-A13" {
    from   = "0A-A:13"
    to     = "0.03:1"
    length = "37 m"
    serves = "1000BASE-T"
  }

  run "0A-A14" {
    from   = "0A-A:14"
    to     = "0.03:2"
    length = "37.5 m"
    serves = "1000BASE-T"
  }

  run "0A-A15" {
    from   = "0A-A:15"
    to     = "0.03:3"
    length = "38 m"
    serves = "1000BASE-T"
  }

  run "0A-A16" {
    from   = "0A-A:16"
    to     = "0.03:4"
    length = "38.5 m"
    serves = "1000BASE-T"
  }

  run "0A-A17" {
    from   = "0A-A:17"
    to     = "0.04:1"
    length = "39 m"
    serves = "1000BASE-T"
  }

  run "0A-A18" {
    from   = "0A-A:18"
    to     = "0.04:2"
    length = "39.5 m"
    serves = "1000BASE-T"
  }

  run "0A-A19" {
    from   = "0A-A:19"
    to     = "0.04:3"
    length = "40 m"
    serves = "1000BASE-T"
  }

  run "0A-A20" {
    from   = "0A-A:20"
    to     = "0.04:4"
    length = "40.5 m"
    serves = "1000BASE-T"
  }
}
