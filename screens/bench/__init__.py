"""Where the board is built and set."""
