"""The build sheet: a board, its numbers, its checks and its tension history on paper for another person."""
