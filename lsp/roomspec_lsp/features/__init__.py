"""What editors are told, as values: places, texts and names. No type of the protocol is known here."""
