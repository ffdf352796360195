# Patch cords from panel 2A-A.

cord "2A-PC001" {
  from   = "2A-A:01"
  to     = "2A-SW1:01"
  length = "2 m"
  cable  = "cord-c6a-26"
}

cord "2A-PC002" {
  from   = "2A-A:02"
  to     = "2A-SW1:02"
  length = "2 m"
  cable  = "cord-c6a-26"
}

cord "2A-PC003" {
  from   = "2A-A:03"
  to     = "2A-SW1:03"
  length = "2 m"
  cable  = "cord-c6a-26"
}

cord "2A-PC004" {
  from   = "2A-A:05"
  to     = "2A-SW1:04"
  length = "2 m"
  cable  = "cord-c6a-26"
}

cord "2A-PC005" {
  from   = "2A-A:06"
  to     = "2A-SW1:05"
  length = "2 m"
  cable  = "cord-c6a-26"
}

cord "2A-PC006" {
  from   = "2A-A:07"
  to     = "2A-SW1:06"
  length = "2 m"
  cable  = "cord-c6a-26"
}

cord "2A-PC007" {
  from   = "2A-A:09"
  to     = "2A-SW1:07"
  length = "2 m"
  cable  = "cord-c6a-26"
}

cord "2A-PC008" {
  from   = "2A-A:10"
  to     = "2A-SW1:08"
  length = "2 m"
  cable  = "cord-c6a-26"
}

cord "2A-PC009" {
  from   = "2A-A:11"
  to     = "2A-SW1:09"
  length = "2 m"
  cable  = "cord-c6a-26"
}

cord "2A-PC010" {
  from   = "2A-A:13"
  to     = "2A-SW1:10"
  length = "2 m"
  cable  = "cord-c6a-26"
}

cord "2A-PC011" {
  from   = "2A-A:14"
  to     = "2A-SW1:11"
  length = "2 m"
  cable  = "cord-c6a-26"
}

cord "2A-PC012" {
  from   = "2A-A:15"
  to     = "2A-SW1:12"
  length = "2 m"
  cable  = "cord-c6a-26"
}

cord "2A-PC013" {
  from   = "2A-A:17"
  to     = "2A-SW1:13"
  length = "2 m"
  cable  = "cord-c6a-26"
}

cord "2A-PC014" {
  from   = "2A-A:18"
  to     = "2A-SW1:14"
  length = "2 m"
  cable  = "cord-c6a-26"
}

cord "2A-PC015" {
  from   = "2A-A:19"
  to     = "2A-SW1:15"
  length = "2 m"
  cable  = "cord-c6a-26"
}

cord "2A-PC016" {
  from   = "2A-A:21"
  to     = "2A-SW1:16"
  length = "2 m"
  cable  = "cord-c6a-26"
}

cord "2A-PC017" {
  from   = "2A-A:22"
  to     = "2A-SW1:17"
  length = "2 m"
  cable  = "cord-c6a-26"
}

cord "2A-PC018" {
  from   = "2A-A:23"
  to     = "2A-SW1:18"
  length = "2 m"
  cable  = "cord-c6a-26"
}

cord "2A-PC019" {
  from   = "2A-A:25"
  to     = "2A-SW1:19"
  length = "2 m"
  cable  = "cord-c6a-26"
}

cord "2A-PC020" {
  from   = "2A-A:26"
  to     = "2A-SW1:20"
  length = "2 m"
  cable  = "cord-c6a-26"
}

cord "2A-PC021" {
  from   = "2A-A:27"
  to     = "2A-SW1:21"
  length = "2 m"
  cable  = "cord-c6a-26"
}

cord "2A-PC022" {
  from   = "2A-A:29"
  to     = "2A-SW1:22"
  length = "2 m"
  cable  = "cord-c6a-26"
}

cord "2A-PC023" {
  from   = "2A-A:30"
  to     = "2A-SW1:23"
  length = "2 m"
  cable  = "cord-c6a-26"
}

cord "2A-PC024" {
  from   = "2A-A:31"
  to     = "2A-SW1:24"
  length = "2 m"
  cable  = "cord-c6a-26"
}
