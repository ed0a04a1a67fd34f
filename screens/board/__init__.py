"""The board in use: what is known of it and how."""

PAGES = {
    "board": "screens.board.home.BoardHome",
    "board.value": "screens.board.value.ValuePage",
    "board.boards": "screens.board.boards.BoardsPage",
    "board.name": "screens.board.name.NamePage",
}
"""Class of each page by its name; it is imported at the first visit."""
