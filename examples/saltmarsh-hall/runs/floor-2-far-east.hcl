# Floor 2 east, rooms 205 to 208.

bundle "2-B-03" {
  cable = "c6a-uutp-cmp"
  route = ["2-T-01", "2-T-02", "2-T-03", "2-D-03"]

  run "2A-A17" {
    from   = "2A-A:17"
    to     = "2.205:1"
    length = "47 m"
    serves = "1000BASE-T"
  }

  run "2A-A18" {
    from   = "2A-A:18"
    to     = "2.205:2"
    length = "47.5 m"
    serves = "1000BASE-T"
  }

  run "2A-A19" {
    from   = "2A-A:19"
    to     = "2.205:3"
    length = "47.5 m"
    serves = "1000BASE-T"
  }

  run "2A-A20" {
    from   = "2A-A:20"
    to     = "2.205:4"
    length = "48 m"
    serves = "1000BASE-T"
  }

  run "2A-A21" {
    from   = "2A-A:21"
    to     = "2.206:1"
    length = "48 m"
    serves = "1000BASE-T"
  }

  run "2A-A22" {
    from   = "2A-A:22"
    to     = "2.206:2"
    length = "49.5 m"
    serves = "1000BASE-T"
  }

  run "2A-A23" {
    from   = "2A-A:23"
    to     = "2.206:3"
    length = "50 m"
    serves = "1000BASE-T"
  }

  run "2A-A24" {
    from   = "2A-A:24"
    to     = "2.206:4"
    length = "50.5 m"
    serves = "1000BASE-T"
  }
}

bundle "2-B-04" {
  cable = "c6a-uutp-cmp"
  route = ["2-T-01", "2-T-02", "2-T-03", "2-T-04", "2-D-04"]

  run "2A-A25" {
    from   = "2A-A:25"
    to     = "2.207:1"
    length = "61 m"
    serves = "1000BASE-T"
  }

  run "2A-A26" {
    from   = "2A-A:26"
    to     = "2.207:2"
    length = "61.5 m"
    serves = "1000BASE-T"
  }

  run "2A-A27" {
    from   = "2A-A:27"
    to     = "2.207:3"
    length = "61.5 m"
    serves = "1000BASE-T"
  }

  run "2A-A28" {
    from   = "2A-A:28"
    to     = "2.207:4"
    length = "62 m"
    serves = "1000BASE-T"
    state  = "spare"
  }

  run "2A-A29" {
    from   = "2A-A:29"
    to     = "2.208:1"
    length = "63.5 m"
    serves = "1000BASE-T"
  }

  run "2A-A30" {
    from   = "2A-A:30"
    to     = "2.208:2"
    length = "63.5 m"
    serves = "1000BASE-T"
  }

  run "2A-A31" {
    from   = "2A-A:31"
    to     = "2.208:3"
    length = "64 m"
    serves = "1000BASE-T"
  }

  run "2A-A32" {
    from   = "2A-A:32"
    to     = "2.208:4"
    length = "64.5 m"
    serves = "1000BASE-T"
  }
}
