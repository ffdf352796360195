pathway "1-T-20" {
  kind     = "tray"
  through  = ["1A", "1-CV-O"]
  length   = "20 m"
  width    = "150 mm"
  depth    = "50 mm"
  material = "metal"
  power {
    circuits = 2
    gap      = "100 mm"
  }
  crossing "1-W-20" {
    rating          = "1 h"
    firestop        = "1-FSL01"
    firestop_rating = "1 h"
    between         = ["1A", "1-CV-O"]
  }
}

pathway "1-H-20" {
  kind     = "hooks"
  through  = ["1-CV-O", "1-121", "1-122", "1-123"]
  length   = "15 m"
  supports = "1.4 m"
  note     = "drops inside the old partition walls"
}
