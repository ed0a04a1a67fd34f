"""One function a screen: Board in, frozen answer out. The only layer that sees a board and several subjects."""
