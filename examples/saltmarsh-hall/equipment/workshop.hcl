equipment "1-WS-CTL1" {
  kind  = "controller"
  space = "1-WS"
  ports = 1
  note  = "extraction fans"
}

equipment "1-WS-CTL2" {
  kind  = "controller"
  space = "1-WS"
  ports = 1
  note  = "long lathe"
}

equipment "1-WS-CTL3" {
  kind  = "controller"
  space = "1-WS"
  ports = 1
  note  = "plasma table"
}

equipment "1-WS-PC1" {
  kind  = "workstation"
  space = "1-WS"
  ports = 1
  note  = "drawing desk"
}
