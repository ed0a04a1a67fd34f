"""Where the board is ridden: checks at the kerb."""
