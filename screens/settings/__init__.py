"""Units, reading and tools."""
