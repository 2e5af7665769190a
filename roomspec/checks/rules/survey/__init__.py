"""Mistakes of the survey."""
