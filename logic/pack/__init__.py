"""The battery side of a board: energy, limits, charging, carrying, joining, wiring."""
