"""What was measured, done and ridden."""
