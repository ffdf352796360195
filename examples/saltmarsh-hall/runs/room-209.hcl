bundle "2-B-05" {
  cable = "c6a-uutp-cmp"
  route = ["2-T-01", "2-T-02", "2-T-03", "2-T-04", "2-T-05", "2-D-05"]

  run "2A-A33" {
    from   = "2A-A:33"
    to     = "2.209:1"
    length = "68.5 m"
    serves = "10GBASE-T"
  }

  run "2A-A34" {
    from   = "2A-A:34"
    to     = "2.209:2"
    length = "69 m"
    serves = "10GBASE-T"
  }

  run "2A-A35" {
    from   = "2A-A:35"
    to     = "2.209:3"
    length = "69.5 m"
    serves = "1000BASE-T"
  }

  run "2A-A36" {
    from   = "2A-A:36"
    to     = "2.209:4"
    length = "70 m"
    serves = "1000BASE-T"
  }
}
