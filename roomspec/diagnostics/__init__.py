"""What is said about a text: diagnostics, fixes, citations. Values only."""
