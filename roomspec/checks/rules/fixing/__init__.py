"""Mistakes of fixing: what the panels hang on, and how they end."""
