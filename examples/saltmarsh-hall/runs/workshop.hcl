# Workshop. The screen is carried through from the panel to the machine.

bundle "1-B-41" {
  cable = "c6a-sftp-cmp"
  route = ["1-T-05", "1-T-06", "1-T-09", "1-C-41"]

  run "1A-C01" {
    from   = "1A-C:01"
    to     = "1.WS1:1"
    length = "60 m"
    serves = "1000BASE-T"
  }

  run "1A-C02" {
    from   = "1A-C:02"
    to     = "1.WS1:2"
    length = "60.5 m"
    serves = "1000BASE-T"
  }

  run "1A-C03" {
    from   = "1A-C:03"
    to     = "1.WS2:1"
    length = "61 m"
    serves = "building-control"
  }

  run "1A-C04" {
    from   = "1A-C:04"
    to     = "1.WS2:2"
    length = "61.5 m"
    serves = "building-control"
  }
}

bundle "1-B-42" {
  cable = "c6a-sftp-cmp"
  route = ["1-T-05", "1-T-06", "1-T-09", "1-C-42"]

  run "1A-C05" {
    from   = "1A-C:05"
    to     = "1.WS3:1"
    length = "68 m"
    serves = "1000BASE-T"
  }

  run "1A-C06" {
    from   = "1A-C:06"
    to     = "1.WS3:2"
    length = "66 m"
    serves = "1000BASE-T"
  }

  run "1A-C07" {
    from   = "1A-C:07"
    to     = "1.WS4:1"
    length = "66.5 m"
    serves = "1000BASE-T"
  }

  run "1A-C08" {
    from   = "1A-C:08"
    to     = "1.WS4:2"
    length = "67 m"
    serves = "1000BASE-T"
  }

  run "1A-C09" {
    from   = "1A-C:09"
    to     = "1.WS5:1"
    length = "67.5 m"
    serves = "building-control"
  }

  run "1A-C10" {
    from   = "1A-C:10"
    to     = "1.WS5:2"
    length = "68 m"
    serves = "building-control"
  }
}

bundle "1-B-43" {
  cable = "c6a-sftp-cmp"
  route = ["1-T-05", "1-T-06", "1-T-09", "1-C-43"]

  run "1A-C11" {
    from   = "1A-C:11"
    to     = "1.WS6:1"
    length = "70 m"
    serves = "1000BASE-T"
  }

  run "1A-C12" {
    from   = "1A-C:12"
    to     = "1.WS6:2"
    length = "70.5 m"
    serves = "1000BASE-T"
  }

  run "1A-C13" {
    from   = "1A-C:13"
    to     = "1.WS7:1"
    length = "71 m"
    serves = "1000BASE-T"
  }

  run "1A-C14" {
    from   = "1A-C:14"
    to     = "1.WS7:2"
    length = "71.5 m"
    serves = "1000BASE-T"
  }
}
