"""A second calculation of the answers: own code, sharing nothing with logic but the board and the printed tables."""
