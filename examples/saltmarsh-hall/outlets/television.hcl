outlet "1.107T" {
  space  = "1-107"
  ports  = 1
  series = "6"
}

outlet "1.108T" {
  space  = "1-108"
  ports  = 1
  series = "6"
}

outlet "1.HALLT" {
  space  = "1-HALL"
  ports  = 1
  series = "6"
}

outlet "2.201T" {
  space  = "2-201"
  ports  = 1
  series = "6"
}

outlet "2.205T" {
  space  = "2-205"
  ports  = 1
  series = "6"
}

outlet "2.220T" {
  space  = "2-220"
  ports  = 1
  series = "6"
}

outlet "2.221T" {
  space  = "2-221"
  ports  = 1
  series = "6"
}
