"""Text as lines and places in it. Knows nothing of the language."""
