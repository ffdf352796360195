cord "1A-PC101" {
  from   = "1A-C:01"
  to     = "1A-SW2:01"
  length = "2 m"
  cable  = "cord-c6a-sftp"
}

cord "1A-PC102" {
  from   = "1A-C:02"
  to     = "1A-SW2:02"
  length = "2 m"
  cable  = "cord-c6a-sftp"
}

cord "1A-PC103" {
  from   = "1A-C:03"
  to     = "1A-SW2:03"
  length = "2 m"
  cable  = "cord-c6a-sftp"
}

cord "1A-PC104" {
  from   = "1A-C:04"
  to     = "1A-SW2:04"
  length = "2 m"
  cable  = "cord-c6a-sftp"
}

cord "1A-PC105" {
  from   = "1A-C:05"
  to     = "1A-SW2:05"
  length = "2 m"
  cable  = "cord-c6a-sftp"
}

cord "1A-PC106" {
  from   = "1A-C:06"
  to     = "1A-SW2:06"
  length = "2 m"
  cable  = "cord-c6a-sftp"
}

cord "1A-PC107" {
  from   = "1A-C:07"
  to     = "1A-SW2:07"
  length = "2 m"
  cable  = "cord-c6a-sftp"
}

cord "1A-PC108" {
  from   = "1A-C:08"
  to     = "1A-SW2:08"
  length = "2 m"
  cable  = "cord-c6a-sftp"
}

cord "1A-PC109" {
  from   = "1A-C:09"
  to     = "1A-SW2:09"
  length = "2 m"
  cable  = "cord-c6a-sftp"
}

cord "1A-PC110" {
  from   = "1A-C:10"
  to     = "1A-SW2:10"
  length = "2 m"
  cable  = "cord-c6a-sftp"
}
