"""Mistakes where water gets."""
