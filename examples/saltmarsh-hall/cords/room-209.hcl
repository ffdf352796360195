cord "2A-PC025" {
  from   = "2A-A:33"
  to     = "2A-SW1:25"
  length = "2 m"
  cable  = "cord-c6a-26"
  serves = "laboratory"
}

cord "2A-PC026" {
  from   = "2A-A:34"
  to     = "2A-SW1:26"
  length = "2 m"
  cable  = "cord-c6a-26"
}
