# Patch cords from panel 1A-A. A port that is not here carries no cord.

cord "1A-PC001" {
  from   = "1A-A:01"
  to     = "1A-SW1:01"
  length = "2 m"
  cable  = "cord-c6a-26"
  serves = "reception desk"
}

cord "1A-PC002" {
  from   = "1A-A:02"
  to     = "1A-SW1:02"
  length = "2 m"
  cable  = "cord-c6a-26"
}

cord "1A-PC003" {
  from   = "1A-A:03"
  to     = "1A-SW1:03"
  length = "2 m"
  cable  = "cord-c6a-26"
}

cord "1A-PC004" {
  from   = "1A-A:05"
  to     = "1A-SW1:04"
  length = "2 m"
  cable  = "cord-c6a-26"
  serves = "printer"
}

cord "1A-PC005" {
  from   = "1A-A:06"
  to     = "1A-SW1:05"
  length = "2 m"
  cable  = "cord-c6a-26"
}

cord "1A-PC006" {
  from   = "1A-A:07"
  to     = "1A-SW1:06"
  length = "2 m"
  cable  = "cord-c6a-26"
}

cord "1A-PC007" {
  from   = "1A-A:09"
  to     = "1A-SW1:07"
  length = "2 m"
  cable  = "cord-c6a-26"
  serves = "tutors"
}

cord "1A-PC008" {
  from   = "1A-A:10"
  to     = "1A-SW1:08"
  length = "2 m"
  cable  = "cord-c6a-26"
}

cord "1A-PC009" {
  from   = "1A-A:11"
  to     = "1A-SW1:09"
  length = "2 m"
  cable  = "cord-c6a-26"
}

cord "1A-PC010" {
  from   = "1A-A:13"
  to     = "1A-SW1:10"
  length = "2 m"
  cable  = "cord-c6a-26"
  serves = "tutors"
}

cord "1A-PC011" {
  from   = "1A-A:14"
  to     = "1A-SW1:11"
  length = "2 m"
  cable  = "cord-c6a-26"
}

cord "1A-PC012" {
  from   = "1A-A:15"
  to     = "1A-SW1:12"
  length = "2 m"
  cable  = "cord-c6a-26"
}

cord "1A-PC013" {
  from   = "1A-A:17"
  to     = "1A-SW1:14"
  length = "2 m"
  cable  = "cord-c6a-26"
  serves = "classroom desk"
}

cord "1A-PC014" {
  from   = "1A-A:18"
  to     = "1A-SW1:13"
  length = "2 m"
  cable  = "cord-c6a-26"
}

cord "1A-PC015" {
  from   = "1A-A:19"
  to     = "1A-SW1:15"
  length = "2 m"
  cable  = "cord-c6a-26"
}

cord "1A-PC016" {
  from   = "1A-A:21"
  to     = "1A-SW1:16"
  length = "2 m"
  cable  = "cord-c6a-26"
  serves = "classroom desk"
}

cord "1A-PC017" {
  from   = "1A-A:22"
  to     = "1A-SW1:17"
  length = "2 m"
  cable  = "cord-c6a-26"
}

cord "1A-PC018" {
  from   = "1A-A:23"
  to     = "1A-SW1:18"
  length = "2 m"
  cable  = "cord-c6a-26"
}

cord "1A-PC019" {
  from   = "1A-A:25"
  to     = "1A-SW1:19"
  length = "2 m"
  cable  = "cord-c6a-26"
  serves = "library desk"
}

cord "1A-PC020" {
  from   = "1A-A:26"
  to     = "1A-SW1:20"
  length = "2 m"
  cable  = "cord-c6a-26"
}

cord "1A-PC021" {
  from   = "1A-A:27"
  to     = "1A-SW1:21"
  length = "2 m"
  cable  = "cord-c6a-26"
}

cord "1A-PC022" {
  from   = "1A-A:29"
  to     = "1A-SW1:22"
  length = "2 m"
  cable  = "cord-c6a-26"
  serves = "reading room desk"
}

cord "1A-PC023" {
  from   = "1A-A:30"
  to     = "1A-SW1:23"
  length = "2 m"
  cable  = "cord-c6a-26"
}

cord "1A-PC024" {
  from   = "1A-A:31"
  to     = "1A-SW1:24"
  length = "2 m"
  cable  = "cord-c6a-26"
}
