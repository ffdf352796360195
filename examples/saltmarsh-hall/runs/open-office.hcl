# From room 1A to the consolidation point.
bundle "1-B-10" {
  cable = "c6-uutp-cmp"
  route = ["1-T-05", "1-T-06", "1-D-10"]

  run "1A-B01" {
    from   = "1A-B:01"
    to     = "1-CP1:01"
    length = "37.5 m"
    serves = "1000BASE-T"
  }

  run "1A-B02" {
    from   = "1A-B:02"
    to     = "1-CP1:02"
    length = "38 m"
    serves = "1000BASE-T"
  }

  run "1A-B03" {
    from   = "1A-B:03"
    to     = "1-CP1:03"
    length = "38.5 m"
    serves = "1000BASE-T"
  }

  run "1A-B04" {
    from   = "1A-B:04"
    to     = "1-CP1:04"
    length = "37 m"
    serves = "1000BASE-T"
  }

  run "1A-B05" {
    from   = "1A-B:05"
    to     = "1-CP1:05"
    length = "37.5 m"
    serves = "1000BASE-T"
  }

  run "1A-B06" {
    from   = "1A-B:06"
    to     = "1-CP1:06"
    length = "38 m"
    serves = "1000BASE-T"
  }

  run "1A-B07" {
    from   = "1A-B:07"
    to     = "1-CP1:07"
    length = "38.5 m"
    serves = "1000BASE-T"
  }

  run "1A-B08" {
    from   = "1A-B:08"
    to     = "1-CP1:08"
    length = "37 m"
    serves = "1000BASE-T"
  }

  run "1A-B09" {
    from   = "1A-B:09"
    to     = "1-CP1:09"
    length = "37.5 m"
    serves = "1000BASE-T"
  }

  run "1A-B10" {
    from   = "1A-B:10"
    to     = "1-CP1:10"
    length = "38 m"
    serves = "1000BASE-T"
  }

  run "1A-B11" {
    from   = "1A-B:11"
    to     = "1-CP1:11"
    length = "38.5 m"
    serves = "1000BASE-T"
  }

  run "1A-B12" {
    from   = "1A-B:12"
    to     = "1-CP1:12"
    length = "37 m"
    serves = "1000BASE-T"
  }
}

# From there to the multi-user outlet.
bundle "1-B-11" {
  cable = "c6-uutp-cmp"
  route = ["1-S-10"]

  run "1-CP1-01" {
    from   = "1-CP1:01"
    to     = "1.110:01"
    length = "11.5 m"
    serves = "1000BASE-T"
  }

  run "1-CP1-02" {
    from   = "1-CP1:02"
    to     = "1.110:02"
    length = "12 m"
    serves = "1000BASE-T"
  }

  run "1-CP1-03" {
    from   = "1-CP1:03"
    to     = "1.110:03"
    length = "11 m"
    serves = "1000BASE-T"
  }

  run "1-CP1-04" {
    from   = "1-CP1:04"
    to     = "1.110:04"
    length = "11.5 m"
    serves = "1000BASE-T"
  }

  run "1-CP1-05" {
    from   = "1-CP1:05"
    to     = "1.110:05"
    length = "12 m"
    serves = "1000BASE-T"
  }

  run "1-CP1-06" {
    from   = "1-CP1:06"
    to     = "1.110:06"
    length = "11 m"
    serves = "1000BASE-T"
  }

  run "1-CP1-07" {
    from   = "1-CP1:07"
    to     = "1.110:07"
    length = "11.5 m"
    serves = "1000BASE-T"
  }

  run "1-CP1-08" {
    from   = "1-CP1:08"
    to     = "1.110:08"
    length = "12 m"
    serves = "1000BASE-T"
  }

  run "1-CP1-09" {
    from   = "1-CP1:09"
    to     = "1.110:09"
    length = "11 m"
    serves = "1000BASE-T"
  }

  run "1-CP1-10" {
    from   = "1-CP1:10"
    to     = "1.110:10"
    length = "11.5 m"
    serves = "1000BASE-T"
  }

  run "1-CP1-11" {
    from   = "1-CP1:11"
    to     = "1.110:11"
    length = "12 m"
    serves = "1000BASE-T"
  }

  run "1-CP1-12" {
    from   = "1-CP1:12"
    to     = "1.110:12"
    length = "11 m"
    serves = "1000BASE-T"
  }
}
