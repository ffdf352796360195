# Work-area cords that stay plugged in.

cord "1-WC001" {
  from   = "1.101:1"
  to     = "1-101-PC1:1"
  length = "3 m"
  cable  = "cord-c6a-24"
}

cord "1-WC002" {
  from   = "1.101:2"
  to     = "1-101-TEL1:1"
  length = "3 m"
  cable  = "cord-c6a-24"
}

cord "1-WC003" {
  from   = "1.102:1"
  to     = "1-102-PRN1:1"
  length = "3 m"
  cable  = "cord-c6a-24"
}

cord "1-WC004" {
  from   = "1.105:1"
  to     = "1-105-PC1:1"
  length = "3 m"
  cable  = "cord-c6a-24"
}

cord "1-WC005" {
  from   = "1.107:1"
  to     = "1-107-PC1:1"
  length = "3 m"
  cable  = "cord-c6a-24"
}
