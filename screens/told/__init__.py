"""A page told without a screen: as text, as HTML with its pictures, as spoken words. All from the same blocks."""
