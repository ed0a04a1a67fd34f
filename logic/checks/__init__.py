"""Checklists: definitions read from assets, own copies of them, a run of one, and what came of it."""
