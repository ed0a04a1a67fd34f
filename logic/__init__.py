"""The handbook in code: pure Python, SI inside, no screen."""
