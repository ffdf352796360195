cord "1A-PC071" {
  from   = "1A-D:01"
  to     = "1A-SW3:01"
  length = "1.5 m"
  cable  = "cord-c6a-26"
  serves = "cameras"
}

cord "1A-PC072" {
  from   = "1A-D:02"
  to     = "1A-SW3:02"
  length = "1.5 m"
  cable  = "cord-c6a-26"
}

cord "1A-PC073" {
  from   = "1A-D:03"
  to     = "1A-SW3:03"
  length = "1.5 m"
  cable  = "cord-c6a-26"
}

cord "1A-PC074" {
  from   = "1A-D:04"
  to     = "1A-SW3:04"
  length = "1.5 m"
  cable  = "cord-c6a-26"
}

cord "1A-PC075" {
  from   = "1A-D:05"
  to     = "1A-SW3:05"
  length = "1.5 m"
  cable  = "cord-c6a-26"
}

cord "1A-PC076" {
  from   = "1A-D:06"
  to     = "1A-SW3:06"
  length = "1.5 m"
  cable  = "cord-c6a-26"
}

cord "1A-PC077" {
  from   = "1A-D:07"
  to     = "1A-SW3:07"
  length = "1.5 m"
  cable  = "cord-c6a-26"
}

cord "1A-PC078" {
  from   = "1A-D:08"
  to     = "1A-SW3:08"
  length = "1.5 m"
  cable  = "cord-c6a-26"
}

cord "1A-PC079" {
  from   = "1A-D:09"
  to     = "1A-SW3:09"
  length = "1.5 m"
  cable  = "cord-c6a-26"
}

cord "1-WC071" {
  from   = "1.YN1:1"
  to     = "1-CAM1:1"
  length = "1 m"
  cable  = "cord-c6a-24"
}

cord "1-WC072" {
  from   = "1.YN2:1"
  to     = "1-CAM2:1"
  length = "1 m"
  cable  = "cord-c6a-24"
}

cord "1-WC073" {
  from   = "1.YN3:1"
  to     = "1-CAM3:1"
  length = "1 m"
  cable  = "cord-c6a-24"
}

cord "1-WC074" {
  from   = "1.YS1:1"
  to     = "1-CAM4:1"
  length = "1 m"
  cable  = "cord-c6a-24"
}

cord "1-WC075" {
  from   = "1.YS2:1"
  to     = "1-CAM5:1"
  length = "1 m"
  cable  = "cord-c6a-24"
}

cord "1-WC076" {
  from   = "1.YS3:1"
  to     = "1-CAM6:1"
  length = "1 m"
  cable  = "cord-c6a-24"
}
