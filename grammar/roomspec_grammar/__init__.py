"""The grammar of the room language, and the parser's tables that `write_tables` makes of it with lark."""
