"""The board in use: what is known of it and how."""

PAGES = {
    "board": "screens.board.home.board_page",
    "board.value": "screens.board.value.value_page",
    "board.boards": "screens.board.boards.boards_page",
    "board.set_ups": "screens.board.set_ups.set_ups_page",
    "board.name": "screens.board.name.name_page",
}
"""Where each page is made, by its name; it is imported at the first visit."""
