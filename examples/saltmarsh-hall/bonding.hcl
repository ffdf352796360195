# The bonding chain: every rack to the busbar of its room, every room to the
# primary busbar at the entrance.

busbar "1B-PBB" {
  kind  = "primary"
  space = "1B"
}

busbar "1A-SBB" {
  kind  = "secondary"
  space = "1A"
  bond  = "1B-PBB"
}

busbar "2A-SBB" {
  kind  = "secondary"
  space = "2A"
  bond  = "1A-SBB"
}
