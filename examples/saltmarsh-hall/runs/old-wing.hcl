# Cable of the old wing. Lengths were read from the sheath marks.

bundle "1-B-20" {
  cable = "c3-cm"
  route = ["1-T-20", "1-H-20"]

  run "1A-V01" {
    from      = "1A-V:01"
    to        = "1.123:1"
    length    = "46 m"
    serves    = "voice"
    installed = 1996
    note      = "lift telephone"
  }

  run "1A-V02" {
    from      = "1A-V:02"
    to        = "1.121:1"
    length    = "41 m"
    serves    = "voice"
    installed = 1996
    note      = "fire alarm dialler"
  }

  run "1A-V03" {
    from      = "1A-V:03"
    to        = "1.121:2"
    length    = "41 m"
    serves    = "voice"
    state     = "tagged"
    installed = 1996
    note      = "tag: kept for the intercom"
  }

  run "1A-V04" {
    from      = "1A-V:04"
    to        = "1.122:1"
    length    = "43 m"
    serves    = "voice"
    state     = "tagged"
    installed = 1996
  }
}

bundle "1-B-21" {
  cable = "c5-cm"
  route = ["1-T-20", "1-H-20"]

  run "1A-Z01" {
    from      = "1A-Z:01"
    to        = "1.123D:1"
    length    = "46.5 m"
    serves    = "building-control"
    installed = 1999
    note      = "ventilation controller"
  }

  run "1A-Z02" {
    from      = "1A-Z:02"
    to        = "1.121D:1"
    length    = "41.5 m"
    serves    = "100BASE-TX"
    state     = "tagged"
    installed = 1999
  }

  run "1A-Z03" {
    from      = "1A-Z:03"
    to        = "1.122D:1"
    length    = "43 m"
    serves    = "100BASE-TX"
    state     = "tagged"
    installed = 1999
  }
}
