// The language, as the runtime finds it.

#ifdef _WIN32
__declspec(dllexport)
#else
__attribute__((visibility("default")))
#endif
const TSLanguage *tree_sitter_roomspec(void) {
  static const uint16_t no_aliases[] = {0};
  static const TSSymbol no_sequences[] = {0};
  static const TSLanguage language = {
    .version = 14,
    .symbol_count = SYMBOLS,
    .token_count = TERMINALS,
    .state_count = STATES,
    .production_id_count = 1,
    .small_parse_table = ROWS,
    .small_parse_table_map = ROW_OF,
    .parse_actions = ACTIONS,
    .symbol_names = SYMBOL_NAMES,
    .symbol_metadata = SYMBOL_METADATA,
    .public_symbol_map = PUBLIC_SYMBOLS,
    .alias_map = no_aliases,
    .alias_sequences = no_sequences,
    .lex_modes = MODE_OF,
    .lex_fn = scan_word,
    .primary_state_ids = STATE_IDS,
  };
  return &language;
}
