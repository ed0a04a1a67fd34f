"""Where parts are chosen and figures explained."""
