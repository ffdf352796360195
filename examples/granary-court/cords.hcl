cord "0A-PC001" {
  from   = "0A-A:01"
  to     = "0A-SW1:01"
  length = "2 m"
  cable  = "cord-k6"
}

cord "0A-PC002" {
  from   = "0A-A:02"
  to     = "0A-SW1:02"
  length = "2 m"
  cable  = "cord-k6"
}

cord "0A-PC003" {
  from   = "0A-A:03"
  to     = "0A-SW1:03"
  length = "2 m"
  cable  = "cord-k6"
}

cord "0A-PC004" {
  from   = "0A-A:07"
  to     = "0A-SW1:04"
  length = "2 m"
  cable  = "cord-k6"
}

cord "0A-PC005" {
  from   = "0A-A:08"
  to     = "0A-SW1:05"
  length = "2 m"
  cable  = "cord-k6"
}

cord "0A-PC006" {
  from   = "0A-A:09"
  to     = "0A-SW1:06"
  length = "2 m"
  cable  = "cord-k6"
}

cord "0A-PC007" {
  from   = "0A-A:13"
  to     = "0A-SW1:07"
  length = "2 m"
  cable  = "cord-k6"
}

cord "0A-PC008" {
  from   = "0A-A:14"
  to     = "0A-SW1:08"
  length = "2 m"
  cable  = "cord-k6"
}

cord "0A-PC009" {
  from   = "0A-A:17"
  to     = "0A-SW1:09"
  length = "2 m"
  cable  = "cord-k6"
}

cord "0A-PC010" {
  from   = "0A-A:18"
  to     = "0A-SW1:10"
  length = "2 m"
  cable  = "cord-k6"
}

cord "0A-PC011" {
  from   = "0A-A:21"
  to     = "0A-SW1:11"
  length = "2 m"
  cable  = "cord-k6"
}

cord "0A-PC012" {
  from   = "0A-A:22"
  to     = "0A-SW1:12"
  length = "2 m"
  cable  = "cord-k6"
}

cord "0A-PC101" {
  from   = "0A-B:01"
  to     = "0A-SW1:25"
  length = "2 m"
  cable  = "cord-k7"
}

cord "0-WC001" {
  from   = "0.06:1"
  to     = "0-06-CTL1:1"
  length = "3 m"
  cable  = "cord-k7"
}
