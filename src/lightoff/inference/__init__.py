"""What readings say: their uncertainty, and whether a limit is met."""
