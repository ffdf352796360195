# Television: the antenna, the trunk down the riser, and the outlets.

run "1A/2A-X1" {
  from   = "1A-Y:1"
  to     = "2A-Y:1"
  length = "16 m"
  cable  = "x11-catvr"
  route  = ["1-L-01"]
  serves = "video"
}

run "2A-X08" {
  from   = "2A-X:8"
  to     = "3-ANT1:1"
  length = "22 m"
  cable  = "x6-catvp"
  route  = ["2-C-01"]
  serves = "video"
}

run "1A-X01" {
  from   = "1A-X:1"
  to     = "1.107T:1"
  length = "60 m"
  cable  = "x6-catvp"
  route  = ["1-T-01", "1-T-02", "1-T-03", "1-T-04", "1-D-04"]
  serves = "video"
}

run "1A-X02" {
  from   = "1A-X:2"
  to     = "1.108T:1"
  length = "62 m"
  cable  = "x6-catvp"
  route  = ["1-T-01", "1-T-02", "1-T-03", "1-T-04", "1-D-04"]
  serves = "video"
}

run "1A-X03" {
  from   = "1A-X:3"
  to     = "1.HALLT:1"
  length = "35 m"
  cable  = "x6-catvp"
  route  = ["1-T-01", "1-T-02", "1-H-01"]
  serves = "video"
}

run "2A-X01" {
  from   = "2A-X:1"
  to     = "2.201T:1"
  length = "18 m"
  cable  = "x6-catvp"
  route  = ["2-T-01", "2-D-01"]
  serves = "video"
}

run "2A-X02" {
  from   = "2A-X:2"
  to     = "2.205T:1"
  length = "47.5 m"
  cable  = "x6-catvp"
  route  = ["2-T-01", "2-T-02", "2-T-03", "2-D-03"]
  serves = "video"
}

run "2A-X03" {
  from   = "2A-X:3"
  to     = "2.220T:1"
  length = "36.5 m"
  cable  = "x6-catvp"
  route  = ["2-T-06", "2-T-07", "2-D-06"]
  serves = "video"
}

run "2A-X04" {
  from   = "2A-X:4"
  to     = "2.221T:1"
  length = "38 m"
  cable  = "x6-catvp"
  route  = ["2-T-06", "2-T-07", "2-D-06"]
  serves = "video"
}
