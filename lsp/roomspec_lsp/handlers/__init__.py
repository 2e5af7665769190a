"""The requests of the protocol, each handed to a feature: here only protocol types are turned into values and back."""
