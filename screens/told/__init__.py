"""A page told without a screen: as text, as spoken words. All from the same blocks."""
