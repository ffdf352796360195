cord "1A-PC051" {
  from   = "1A-B:13"
  to     = "1A-SW1:41"
  length = "2 m"
  cable  = "cord-c6a-26"
  serves = "wireless"
}

cord "1A-PC052" {
  from   = "1A-B:14"
  to     = "1A-SW1:42"
  length = "2 m"
  cable  = "cord-c6a-26"
}

cord "1A-PC053" {
  from   = "1A-B:15"
  to     = "1A-SW1:43"
  length = "2 m"
  cable  = "cord-c6a-26"
}

cord "1A-PC054" {
  from   = "1A-B:16"
  to     = "1A-SW1:44"
  length = "2 m"
  cable  = "cord-c6a-26"
}

cord "1A-PC055" {
  from   = "1A-B:17"
  to     = "1A-SW1:45"
  length = "2 m"
  cable  = "cord-c6a-26"
}

cord "1A-PC056" {
  from   = "1A-B:18"
  to     = "1A-SW1:46"
  length = "2 m"
  cable  = "cord-c6a-26"
}

cord "1-WC051" {
  from   = "1.AP1:1"
  to     = "1-AP1:1"
  length = "1.5 m"
  cable  = "cord-c6a-24"
}

cord "1-WC052" {
  from   = "1.AP2:1"
  to     = "1-AP2:1"
  length = "1.5 m"
  cable  = "cord-c6a-24"
}

cord "1-WC053" {
  from   = "1.AP3:1"
  to     = "1-AP3:1"
  length = "1.5 m"
  cable  = "cord-c6a-24"
}

cord "1-WC054" {
  from   = "1.AP4:1"
  to     = "1-AP4:1"
  length = "1.5 m"
  cable  = "cord-c6a-24"
}

cord "1-WC055" {
  from   = "1.AP5:1"
  to     = "1-AP5:1"
  length = "1.5 m"
  cable  = "cord-c6a-24"
}

cord "1-WC056" {
  from   = "1.AP6:1"
  to     = "1-AP6:1"
  length = "1.5 m"
  cable  = "cord-c6a-24"
}

cord "2A-PC051" {
  from   = "2A-B:01"
  to     = "2A-SW1:41"
  length = "2 m"
  cable  = "cord-c6a-26"
  serves = "wireless"
}

cord "2A-PC052" {
  from   = "2A-B:02"
  to     = "2A-SW1:42"
  length = "2 m"
  cable  = "cord-c6a-26"
}

cord "2A-PC053" {
  from   = "2A-B:03"
  to     = "2A-SW1:43"
  length = "2 m"
  cable  = "cord-c6a-26"
}

cord "2A-PC054" {
  from   = "2A-B:04"
  to     = "2A-SW1:44"
  length = "2 m"
  cable  = "cord-c6a-26"
}

cord "2A-PC055" {
  from   = "2A-B:05"
  to     = "2A-SW1:45"
  length = "2 m"
  cable  = "cord-c6a-26"
}

cord "2A-PC056" {
  from   = "2A-B:06"
  to     = "2A-SW1:46"
  length = "2 m"
  cable  = "cord-c6a-26"
}

cord "2-WC051" {
  from   = "2.AP1:1"
  to     = "2-AP1:1"
  length = "1.5 m"
  cable  = "cord-c6a-24"
}

cord "2-WC052" {
  from   = "2.AP2:1"
  to     = "2-AP2:1"
  length = "1.5 m"
  cable  = "cord-c6a-24"
}

cord "2-WC053" {
  from   = "2.AP3:1"
  to     = "2-AP3:1"
  length = "1.5 m"
  cable  = "cord-c6a-24"
}

cord "2-WC054" {
  from   = "2.AP4:1"
  to     = "2-AP4:1"
  length = "1.5 m"
  cable  = "cord-c6a-24"
}

cord "2-WC055" {
  from   = "2.AP5:1"
  to     = "2-AP5:1"
  length = "1.5 m"
  cable  = "cord-c6a-24"
}

cord "2-WC056" {
  from   = "2.AP6:1"
  to     = "2-AP6:1"
  length = "1.5 m"
  cable  = "cord-c6a-24"
}
