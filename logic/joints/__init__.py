"""Screws, nuts and threadlocker: how tight, what gives way first, what keeps it there."""
