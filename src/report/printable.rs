//! Text from a file made safe for a terminal.

use std::borrow::Cow;

/// The text with every character that would steer a terminal replaced by a mark of the same length in bytes, so that
/// places stay right. Line ends and tabs stay.
pub fn printable(text: &str) -> Cow<'_, str> {
    if !text.chars().any(steers_terminal) {
        return Cow::Borrowed(text);
    }
    let replaced = text.chars().map(|character| match character {
        steering if !steers_terminal(steering) => steering,
        steering => match steering.len_utf8() {
            1 => '?',
            2 => '¿',
            _ => '\u{fffd}',
        },
    });
    Cow::Owned(replaced.collect())
}

/// Control characters, and those that turn the direction of writing or end a line where the format does not.
fn steers_terminal(character: char) -> bool {
    match character {
        '\n' | '\r' | '\t' => false,
        '\u{200e}' | '\u{200f}' | '\u{2028}'..='\u{202e}' | '\u{2066}'..='\u{2069}' | '\u{feff}' => true,
        other => other.is_control(),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn escapes_are_replaced_and_bytes_stay_where_they_were() {
        let text = "a\u{1b}[31m\u{85}b\u{202e}c\n\té½\u{301}";
        let shown = printable(text);
        assert_eq!(shown, "a?[31m¿b\u{fffd}c\n\té½\u{301}");
        assert_eq!(shown.len(), text.len());
    }
}
