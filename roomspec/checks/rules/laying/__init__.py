"""Mistakes of setting out and laying."""
