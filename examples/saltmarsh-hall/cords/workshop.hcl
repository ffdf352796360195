# Screened cords at the machines.

cord "1-WC101" {
  from   = "1.WS2:1"
  to     = "1-WS-CTL1:1"
  length = "3 m"
  cable  = "cord-c6a-sftp"
}

cord "1-WC102" {
  from   = "1.WS5:1"
  to     = "1-WS-CTL2:1"
  length = "3 m"
  cable  = "cord-c6a-sftp"
}

cord "1-WC103" {
  from   = "1.WS5:2"
  to     = "1-WS-CTL3:1"
  length = "3 m"
  cable  = "cord-c6a-sftp"
}

cord "1-WC104" {
  from   = "1.WS1:1"
  to     = "1-WS-PC1:1"
  length = "3 m"
  cable  = "cord-c6a-sftp"
}
