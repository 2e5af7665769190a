"""What burns, and what can hurt those who do the work."""
