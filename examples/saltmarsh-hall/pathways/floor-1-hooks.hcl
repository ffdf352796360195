# Hooks from the trays to the corridor ceiling.

pathway "1-H-01" {
  kind     = "hooks"
  through  = ["1-CV-E", "1-HALL"]
  length   = "12 m"
  supports = "1.4 m"
}

pathway "1-H-02" {
  kind     = "hooks"
  through  = ["1-CV-W", "1-HALL"]
  length   = "10 m"
  supports = "1.4 m"
}
