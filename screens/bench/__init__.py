"""Where the board is built and set."""

PAGES = {
    "bench": "screens.bench.home.BenchHome",
    "bench.controller": "screens.bench.controller.ControllerPage",
    "bench.power": "screens.bench.power.PowerPage",
}
"""Class of each page by its name; it is imported at the first visit."""
