"""From cells to road: gearing, motor, limits of current, road load, and where push and load meet."""
