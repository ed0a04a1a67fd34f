"""The board in use: what is known of it and how."""
