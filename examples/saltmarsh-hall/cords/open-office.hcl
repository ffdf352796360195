# Long work-area cords are allowed here: the outlet serves several desks.

cord "1A-PC025" {
  from   = "1A-B:01"
  to     = "1A-SW1:25"
  length = "3 m"
  cable  = "cord-c6a-26"
  serves = "open office"
}

cord "1A-PC026" {
  from   = "1A-B:02"
  to     = "1A-SW1:26"
  length = "3 m"
  cable  = "cord-c6a-26"
}

cord "1A-PC027" {
  from   = "1A-B:03"
  to     = "1A-SW1:27"
  length = "3 m"
  cable  = "cord-c6a-26"
}

cord "1A-PC028" {
  from   = "1A-B:04"
  to     = "1A-SW1:28"
  length = "3 m"
  cable  = "cord-c6a-26"
}

cord "1A-PC029" {
  from   = "1A-B:05"
  to     = "1A-SW1:29"
  length = "3 m"
  cable  = "cord-c6a-26"
}

cord "1A-PC030" {
  from   = "1A-B:06"
  to     = "1A-SW1:30"
  length = "3 m"
  cable  = "cord-c6a-26"
}

cord "1A-PC031" {
  from   = "1A-B:07"
  to     = "1A-SW1:31"
  length = "3 m"
  cable  = "cord-c6a-26"
}

cord "1A-PC032" {
  from   = "1A-B:08"
  to     = "1A-SW1:32"
  length = "3 m"
  cable  = "cord-c6a-26"
}

cord "1A-PC033" {
  from   = "1A-B:09"
  to     = "1A-SW1:33"
  length = "3 m"
  cable  = "cord-c6a-26"
}

cord "1A-PC034" {
  from   = "1A-B:10"
  to     = "1A-SW1:34"
  length = "3 m"
  cable  = "cord-c6a-26"
}

cord "1-WC021" {
  from   = "1.110:01"
  to     = "1-110-PC1:1"
  length = "10 m"
  cable  = "cord-c6a-24"
}

cord "1-WC022" {
  from   = "1.110:02"
  to     = "1-110-PC2:1"
  length = "12 m"
  cable  = "cord-c6a-24"
}

cord "1-WC023" {
  from   = "1.110:03"
  to     = "1-110-PC3:1"
  length = "8 m"
  cable  = "cord-c6a-24"
}

cord "1-WC024" {
  from   = "1.110:04"
  to     = "1-110-PC4:1"
  length = "10 m"
  cable  = "cord-c6a-24"
}

cord "1-WC025" {
  from   = "1.110:05"
  to     = "1-110-PC5:1"
  length = "12 m"
  cable  = "cord-c6a-24"
}

cord "1-WC026" {
  from   = "1.110:06"
  to     = "1-110-PC6:1"
  length = "8 m"
  cable  = "cord-c6a-24"
}
