cord "2A-PC031" {
  from   = "2A-B:07"
  to     = "2A-SW1:31"
  length = "2 m"
  cable  = "cord-c6a-26"
  serves = "seminar rooms"
}

cord "2A-PC032" {
  from   = "2A-B:08"
  to     = "2A-SW1:32"
  length = "2 m"
  cable  = "cord-c6a-26"
}

cord "2A-PC035" {
  from   = "2A-B:11"
  to     = "2A-SW1:35"
  length = "2 m"
  cable  = "cord-c6a-26"
}

cord "2A-PC036" {
  from   = "2A-B:12"
  to     = "2A-SW1:36"
  length = "2 m"
  cable  = "cord-c6a-26"
}
