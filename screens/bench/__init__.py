"""Where the board is built and set."""

PAGES = {
    "bench": "screens.bench.home.BenchHome",
}
"""Class of each page by its name; it is imported at the first visit."""
