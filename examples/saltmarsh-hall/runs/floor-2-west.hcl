# Seminar rooms. Ports 1 to 6 of panel 2A-B are kept for access points.

bundle "2-B-06" {
  cable = "c6a-uutp-cmp"
  route = ["2-T-06", "2-T-07", "2-D-06"]

  run "2A-B07" {
    from   = "2A-B:07"
    to     = "2.220:1"
    length = "36 m"
    serves = "1000BASE-T"
  }

  run "2A-B08" {
    from   = "2A-B:08"
    to     = "2.220:2"
    length = "36.5 m"
    serves = "1000BASE-T"
  }

  run "2A-B09" {
    from   = "2A-B:09"
    to     = "2.220:3"
    length = "36.5 m"
    serves = "1000BASE-T"
  }

  run "2A-B10" {
    from   = "2A-B:10"
    to     = "2.220:4"
    length = "37 m"
    serves = "1000BASE-T"
  }

  run "2A-B11" {
    from   = "2A-B:11"
    to     = "2.221:1"
    length = "38 m"
    serves = "1000BASE-T"
  }

  run "2A-B12" {
    from   = "2A-B:12"
    to     = "2.221:2"
    length = "38 m"
    serves = "1000BASE-T"
  }

  run "2A-B13" {
    from   = "2A-B:13"
    to     = "2.221:3"
    length = "38.5 m"
    serves = "1000BASE-T"
  }

  run "2A-B14" {
    from   = "2A-B:14"
    to     = "2.221:4"
    length = "39 m"
    serves = "1000BASE-T"
  }
}
