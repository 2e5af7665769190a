"""One file a mistake: what is said about it, and the function that finds it."""
