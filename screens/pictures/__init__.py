"""Drawings as strokes: one description for the paper, for build sheets and for tests."""
