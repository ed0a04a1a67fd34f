"""The belt between motor and wheel: shape, tension, and measuring it."""
