# Floor 1 east, rooms 105 to 108.

bundle "1-B-03" {
  cable = "c6a-uutp-cmp"
  route = ["1-T-01", "1-T-02", "1-T-03", "1-D-03"]

  run "1A-A17" {
    from   = "1A-A:17"
    to     = "1.105:1"
    length = "44 m"
    serves = "1000BASE-T"
  }

  run "1A-A18" {
    from   = "1A-A:18"
    to     = "1.105:2"
    length = "44.5 m"
    serves = "1000BASE-T"
  }

  run "1A-A19" {
    from   = "1A-A:19"
    to     = "1.105:3"
    length = "44.5 m"
    serves = "1000BASE-T"
  }

  run "1A-A20" {
    from   = "1A-A:20"
    to     = "1.105:4"
    length = "45 m"
    serves = "1000BASE-T"
  }

  run "1A-A21" {
    from   = "1A-A:21"
    to     = "1.106:1"
    length = "46.5 m"
    serves = "1000BASE-T"
  }

  run "1A-A22" {
    from   = "1A-A:22"
    to     = "1.106:2"
    length = "46.5 m"
    serves = "1000BASE-T"
  }

  run "1A-A23" {
    from   = "1A-A:23"
    to     = "1.106:3"
    length = "47 m"
    serves = "1000BASE-T"
  }

  run "1A-A24" {
    from   = "1A-A:24"
    to     = "1.106:4"
    length = "47.5 m"
    serves = "1000BASE-T"
    state  = "spare"
  }
}

bundle "1-B-04" {
  cable = "c6a-uutp-cmp"
  route = ["1-T-01", "1-T-02", "1-T-03", "1-T-04", "1-D-04"]

  run "1A-A25" {
    from   = "1A-A:25"
    to     = "1.107:1"
    length = "60.5 m"
    serves = "1000BASE-T"
  }

  run "1A-A26" {
    from   = "1A-A:26"
    to     = "1.107:2"
    length = "61 m"
    serves = "1000BASE-T"
  }

  run "1A-A27" {
    from   = "1A-A:27"
    to     = "1.107:3"
    length = "61 m"
    serves = "1000BASE-T"
  }

  run "1A-A28" {
    from   = "1A-A:28"
    to     = "1.107:4"
    length = "61.5 m"
    serves = "1000BASE-T"
  }

  run "1A-A29" {
    from   = "1A-A:29"
    to     = "1.108:1"
    length = "63 m"
    serves = "1000BASE-T"
  }

  run "1A-A30" {
    from   = "1A-A:30"
    to     = "1.108:2"
    length = "63 m"
    serves = "1000BASE-T"
  }

  run "1A-A31" {
    from   = "1A-A:31"
    to     = "1.108:3"
    length = "63.5 m"
    serves = "1000BASE-T"
  }

  run "1A-A32" {
    from   = "1A-A:32"
    to     = "1.108:4"
    length = "64 m"
    serves = "1000BASE-T"
  }
}
