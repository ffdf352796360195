# Along the stairs, and to the heat pump, where a frequency converter asks for
# a screen.

bundle "0-B-03" {
  cable = "k6-uutp-b2ca"
  route = ["0-D-03"]

  run "0A-A21" {
    from   = "0A-A:21"
    to     = "0.05:1"
    length = "21 m"
    serves = "1000BASE-T"
  }

  run "0A-A22" {
    from   = "0A-A:22"
    to     = "0.05:2"
    length = "21.5 m"
    serves = "1000BASE-T"
  }

  run "0A-A23" {
    from   = "0A-A:23"
    to     = "0.05:3"
    length = "22 m"
    serves = "1000BASE-T"
  }
}

bundle "0-B-04" {
  cable = "k7-sftp-cca"
  route = ["0-T-01", "0-T-02", "0-C-01"]

  run "0A-B01" {
    from   = "0A-B:01"
    to     = "0.06:1"
    length = "38.5 m"
    serves = "building-control"
  }

  run "0A-B02" {
    from   = "0A-B:02"
    to     = "0.06:2"
    length = "39 m"
    serves = "building-control"
  }
}
