# Hooks from the trays to the corridor ceiling.

pathway "2-H-01" {
  kind     = "hooks"
  through  = ["2-CV-E", "2-HALL"]
  length   = "12 m"
  supports = "1.4 m"
}

pathway "2-H-02" {
  kind     = "hooks"
  through  = ["2-CV-W", "2-HALL"]
  length   = "10 m"
  supports = "1.4 m"
}
