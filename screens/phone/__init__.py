"""What the phone itself can do. Each is asked for at the moment it is needed and never before."""
