"""What the phone lends: each part has a quiet way out where it is not there."""
