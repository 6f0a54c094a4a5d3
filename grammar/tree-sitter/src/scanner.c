// Where lines end, and what stands on the next one: the marks that a regular expression can't tell.

#include "tree_sitter/alloc.h"
#include "tree_sitter/parser.h"

enum Token {
  NEXT_ELEMENT, // the ends of lines, before one that begins in the first column or before the end of the file
  NEXT_FACT, // the ends of lines, before one that begins with a blank
  COMMENT,    // from `--` to the line's end
  SIZE_MARK,  // the `x` between two lengths; it may touch them
  NOMINAL,    // `2x10`, but not the beginning of `2x10'` or of `4x4x1/4`
  TUBE_MARK,  // `HSS`, which may touch the figures behind it
  BROKEN,     // the rest of a line that does not fit; no rule uses it, so it is valid only while the parser recovers
};

static bool is_blank(int32_t c) { return c == ' ' || c == '\t' || c == 0xa0 || c == 0xfeff; }

static bool is_line_end(int32_t c) { return c == '\n' || c == '\r'; }

static bool is_digit(int32_t c) { return c >= '0' && c <= '9'; }

// One of ½ ¼ ¾ ⅛ ⅜ ⅝ ⅞.
static bool is_fraction(int32_t c) { return (c >= 0xbc && c <= 0xbe) || (c >= 0x215b && c <= 0x215e); }

static bool is_size_mark(int32_t c) { return c == 'x' || c == 'X' || c == 0xd7; }

// Letters beyond ASCII are taken for letters all alike: a figure's neighbour is none of the signs among them but these.
static bool is_in_word(int32_t c) {
  if (c < 0x80) return is_digit(c) || (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') || c == '_';
  return !is_blank(c) && !is_fraction(c) && c != 0x2019 && c != 0x201d && c != 0x2032 && c != 0x2033;
}

static void advance(TSLexer *lexer) { lexer->advance(lexer, false); }

static void skip_to_line_end(TSLexer *lexer) {
  while (!lexer->eof(lexer) && !is_line_end(lexer->lookahead)) advance(lexer);
}

// Steps over two dashes; false when there is at most one.
static bool takes_comment_mark(TSLexer *lexer) {
  if (lexer->lookahead != '-') return false;
  advance(lexer);
  if (lexer->lookahead != '-') return false;
  advance(lexer);
  return true;
}

// What the line behind the comments that follow was found to be.
typedef enum { UNKNOWN, ELEMENT, FACT } Ahead;

typedef struct {
  // The last line end was found while the parser recovers.
  bool is_behind_broken;
  // Found at the first of several comment lines, kept until the last, so that none is read twice.
  Ahead ahead;
} Scanner;

// From a line's end over blank lines. Whether the first line that is no comment is a fact of this element decides
// where the comments between belong: a note above an element is not the last thing of the one before it.
static bool scan_line_end(TSLexer *lexer, const bool *valid, Scanner *scanner) {
  bool is_indented = false;
  bool has_comments = false;
  for (;;) {
    while (is_line_end(lexer->lookahead)) {
      advance(lexer);
      is_indented = false;
      if (!has_comments) lexer->mark_end(lexer);
    }
    while (is_blank(lexer->lookahead)) {
      advance(lexer);
      is_indented = true;
    }
    if (is_line_end(lexer->lookahead)) continue;
    if (lexer->eof(lexer)) {
      is_indented = false;
      break;
    }
    if (!takes_comment_mark(lexer)) break;
    has_comments = true;
    if (scanner->ahead != UNKNOWN) {
      is_indented = scanner->ahead == FACT;
      break;
    }
    skip_to_line_end(lexer);
  }
  Ahead found = is_indented ? FACT : ELEMENT;
  scanner->ahead = has_comments ? found : UNKNOWN;
  scanner->is_behind_broken = valid[BROKEN];
  lexer->result_symbol = is_indented ? NEXT_FACT : NEXT_ELEMENT;
  return valid[lexer->result_symbol];
}

static const uint32_t MOST_COUNTED = 40;

// A line that does not fit costs that line: nothing in it may be taken for the continuation of another one. The parser
// looks for the cheapest way to go on, so a line that it skips after the one with the fault must be dear: each of its
// first characters counts.
static bool scan_broken(TSLexer *lexer, bool is_next_line) {
  lexer->result_symbol = BROKEN;
  if (is_next_line && lexer->get_column(lexer) < MOST_COUNTED) {
    advance(lexer);
    lexer->mark_end(lexer);
    return true;
  }
  bool is_behind_blank = true;
  while (!lexer->eof(lexer) && !is_line_end(lexer->lookahead)) {
    int32_t next = lexer->lookahead;
    if (is_behind_blank && next == '-') {
      lexer->mark_end(lexer);
      if (takes_comment_mark(lexer)) return true;
    } else if (is_behind_blank && next == '"') {
      do advance(lexer);
      while (!lexer->eof(lexer) && !is_line_end(lexer->lookahead) && lexer->lookahead != '"');
      if (lexer->lookahead == '"') advance(lexer);
    } else {
      advance(lexer);
    }
    is_behind_blank = is_blank(next);
  }
  lexer->mark_end(lexer);
  return true;
}

static bool scan_nominal(TSLexer *lexer) {
  while (is_digit(lexer->lookahead)) advance(lexer);
  if (!is_size_mark(lexer->lookahead)) return false;
  advance(lexer);
  if (!is_digit(lexer->lookahead)) return false;
  while (is_digit(lexer->lookahead)) advance(lexer);
  lexer->mark_end(lexer);
  int32_t next = lexer->lookahead;
  if (next == '.' || next == '-') {
    advance(lexer);
    return !is_digit(lexer->lookahead) && !is_fraction(lexer->lookahead);
  }
  bool is_mark = next == '/' || next == '\'' || next == '"' || (next >= 0x80 && !is_blank(next));
  return !is_mark && !is_in_word(next);
}

void *tree_sitter_framing_external_scanner_create(void) { return ts_calloc(1, sizeof(Scanner)); }

void tree_sitter_framing_external_scanner_destroy(void *payload) { ts_free(payload); }

unsigned tree_sitter_framing_external_scanner_serialize(void *payload, char *buffer) {
  Scanner *scanner = payload;
  buffer[0] = scanner->is_behind_broken;
  buffer[1] = (char)scanner->ahead;
  return 2;
}

void tree_sitter_framing_external_scanner_deserialize(void *payload, const char *buffer, unsigned length) {
  Scanner *scanner = payload;
  scanner->is_behind_broken = length > 0 && buffer[0];
  scanner->ahead = length > 1 ? (Ahead)buffer[1] : UNKNOWN;
}

bool tree_sitter_framing_external_scanner_scan(void *payload, TSLexer *lexer, const bool *valid) {
  Scanner *scanner = payload;
  bool is_apart = false;
  while (is_blank(lexer->lookahead)) {
    lexer->advance(lexer, true);
    is_apart = true;
  }
  int32_t next = lexer->lookahead;

  if (is_line_end(next)) return (valid[NEXT_ELEMENT] || valid[NEXT_FACT]) && scan_line_end(lexer, valid, scanner);

  if (next == '-' && valid[COMMENT]) {
    if (takes_comment_mark(lexer)) {
      skip_to_line_end(lexer);
      lexer->mark_end(lexer);
      lexer->result_symbol = COMMENT;
      return true;
    }
    return valid[BROKEN] && scan_broken(lexer, scanner->is_behind_broken);
  }

  if (valid[BROKEN]) return !lexer->eof(lexer) && scan_broken(lexer, scanner->is_behind_broken);

  if (is_size_mark(next) && valid[SIZE_MARK]) {
    advance(lexer);
    int32_t behind = lexer->lookahead;
    bool touches = !is_apart && (is_digit(behind) || is_fraction(behind));
    lexer->result_symbol = SIZE_MARK;
    return touches || !(is_in_word(behind) || behind == '.');
  }

  if (is_digit(next) && valid[NOMINAL]) {
    lexer->result_symbol = NOMINAL;
    return scan_nominal(lexer);
  }

  if (next == 'H' && valid[TUBE_MARK]) {
    for (const char *letter = "HSS"; *letter; letter++) {
      if (lexer->lookahead != *letter) return false;
      advance(lexer);
    }
    lexer->mark_end(lexer);
    int32_t behind = lexer->lookahead;
    lexer->result_symbol = TUBE_MARK;
    return is_digit(behind) || is_fraction(behind) || !(is_in_word(behind) || behind == '.' || behind == '-');
  }

  return false;
}
