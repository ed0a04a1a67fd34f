"""What the phone lends, asked for at the moment it is needed; each part has a quiet way out where it is not there."""
