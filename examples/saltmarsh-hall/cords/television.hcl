# Antenna, head-end, amplifier, splitter, panel: then the displays.

cord "2A-XC01" {
  from   = "2A-X:8"
  to     = "2A-HE1:1"
  length = "1.5 m"
  cable  = "cord-x6"
}

cord "2A-XC02" {
  from   = "2A-HE1:2"
  to     = "2A-AMP1:1"
  length = "1 m"
  cable  = "cord-x6"
}

cord "2A-XC03" {
  from   = "2A-AMP1:2"
  to     = "2A-SPL1:1"
  length = "1 m"
  cable  = "cord-x6"
}

cord "2A-XC04" {
  from   = "2A-SPL1:2"
  to     = "2A-X:1"
  length = "1.5 m"
  cable  = "cord-x6"
}

cord "2A-XC05" {
  from   = "2A-SPL1:3"
  to     = "2A-X:2"
  length = "1.5 m"
  cable  = "cord-x6"
}

cord "2A-XC06" {
  from   = "2A-SPL1:4"
  to     = "2A-X:3"
  length = "1.5 m"
  cable  = "cord-x6"
}

cord "2A-XC07" {
  from   = "2A-SPL1:5"
  to     = "2A-X:4"
  length = "1.5 m"
  cable  = "cord-x6"
}

cord "2A-XC08" {
  from   = "2A-SPL1:6"
  to     = "2A-Y:1"
  length = "1.5 m"
  cable  = "cord-x6"
}

cord "1A-XC01" {
  from   = "1A-Y:1"
  to     = "1A-SPL1:1"
  length = "1 m"
  cable  = "cord-x6"
}

cord "1A-XC02" {
  from   = "1A-SPL1:2"
  to     = "1A-X:1"
  length = "1 m"
  cable  = "cord-x6"
}

cord "1A-XC03" {
  from   = "1A-SPL1:3"
  to     = "1A-X:2"
  length = "1 m"
  cable  = "cord-x6"
}

cord "1A-XC04" {
  from   = "1A-SPL1:4"
  to     = "1A-X:3"
  length = "1 m"
  cable  = "cord-x6"
}

cord "1-XC01" {
  from   = "1.107T:1"
  to     = "1-107-TV1:1"
  length = "2 m"
  cable  = "cord-x6"
}

cord "1-XC02" {
  from   = "1.HALLT:1"
  to     = "1-HALL-TV1:1"
  length = "2 m"
  cable  = "cord-x6"
}

cord "2-XC01" {
  from   = "2.201T:1"
  to     = "2-201-TV1:1"
  length = "2 m"
  cable  = "cord-x6"
}

cord "2-XC02" {
  from   = "2.205T:1"
  to     = "2-205-TV1:1"
  length = "2 m"
  cable  = "cord-x6"
}

cord "2-XC03" {
  from   = "2.220T:1"
  to     = "2-220-TV1:1"
  length = "2 m"
  cable  = "cord-x6"
}

cord "2-XC04" {
  from   = "2.221T:1"
  to     = "2-221-TV1:1"
  length = "2 m"
  cable  = "cord-x6"
}
