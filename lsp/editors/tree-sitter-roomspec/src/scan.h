// The next word of a line, taken as the language server takes it. Nothing is ever refused: a word that does not fit
// comes back as `broken`, or by its look as a number or a text.

static unsigned class_of(const TSLexer *lexer) {
  if (lexer->eof(lexer)) return CLASSES - 1;
  int32_t c = lexer->lookahead;
  unsigned low = 0, high = RANGES;
  while (low < high) {
    unsigned middle = (low + high) / 2;
    if (CLASS_RANGES[middle].last < c) low = middle + 1; else high = middle;
  }
  return low < RANGES && CLASS_RANGES[low].first <= c ? CLASS_RANGES[low].kind : 0;
}

static bool may_start(const TSLexer *lexer, unsigned start) { return SCAN[start][class_of(lexer)] > 1; }

static bool is_blank(int32_t c) {
  return c == ' ' || c == '\t' || c == '\f' || c == '\r' || c == 0xa0 || c == 0xfeff;
}

static bool take(TSLexer *lexer, TSSymbol symbol) {
  lexer->mark_end(lexer);
  lexer->result_symbol = symbol;
  return true;
}

// True where the pattern fits; the end is then marked. What was looked at cannot be given back.
static bool scan(TSLexer *lexer, unsigned state) {
  for (bool fits = false;;) {
    unsigned step = SCAN[state][class_of(lexer)];
    if (step & 1) {
      lexer->mark_end(lexer);
      fits = true;
    }
    if (!(state = step >> 1)) return fits;
    lexer->advance(lexer, false);
  }
}

static bool take_comment(TSLexer *lexer) {
  while (!lexer->eof(lexer) && lexer->lookahead != '\n') {
    bool may_end = lexer->lookahead == '\r';
    if (may_end) take(lexer, sym_comment);
    lexer->advance(lexer, false);
    if (may_end && lexer->lookahead == '\n') return true;
  }
  return take(lexer, sym_comment);
}

static bool take_value(TSLexer *lexer, TSSymbol symbol, unsigned start) {
  bool quoted = lexer->lookahead == '"';
  if (scan(lexer, start)) {
    lexer->result_symbol = symbol;
    return true;
  }
  return take(lexer, quoted ? sym_open_string : sym_broken);
}

// A whole word: a keyword of the mode, else a name where the mode has one.
static bool take_word(TSLexer *lexer, const Mode *mode) {
  char text[32];
  unsigned length = 0;
  for (unsigned state = NAME_START;; lexer->advance(lexer, false)) {
    state = SCAN[state][class_of(lexer)] >> 1;
    if (!state) break;
    if (length < sizeof text) text[length++] = lexer->lookahead < 128 ? (char)lexer->lookahead : '?';
  }
  for (unsigned at = mode->first; at < mode->last; at++) {
    const char *keyword = SYMBOL_NAMES[KEYWORDS[at]];
    unsigned same = 0;
    while (same < length && keyword[same] == text[same]) same++;
    if (same == length && !keyword[same]) return take(lexer, KEYWORDS[at]);
  }
  return take(lexer, mode->name ? mode->name : sym_broken);
}

static bool scan_word(TSLexer *lexer, TSStateId number) {
  const Mode *mode = &MODES[number];
  while (!lexer->eof(lexer) && (is_blank(lexer->lookahead) || (number == BETWEEN_LINES && lexer->lookahead == '\n')))
    lexer->advance(lexer, true);
  if (lexer->eof(lexer) || lexer->lookahead == '\n') return take(lexer, number == BETWEEN_LINES ? sym_end : sym_line_end);
  if (lexer->lookahead == '#') return take_comment(lexer);
  for (unsigned at = 0; at < mode->count; at++)
    if (may_start(lexer, mode->values[at].start)) return take_value(lexer, mode->values[at].symbol, mode->values[at].start);
  if (may_start(lexer, NAME_START) && (mode->name || !may_start(lexer, NUMBER_START))) return take_word(lexer, mode);
  if (lexer->lookahead == '"') return take_value(lexer, sym_string, STRING_START);
  if (may_start(lexer, NUMBER_START)) return take_value(lexer, sym_number, NUMBER_START);
  lexer->advance(lexer, false);
  return take(lexer, sym_broken);
}
