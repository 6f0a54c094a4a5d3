//! Slips of the hand, the clipboard and the version control, at random.

use crate::dice::Dice;

/// Numbers that no house has, and some that it has elsewhere.
const NUMBERS: &[&str] = &[
    "0",
    "-1",
    "1",
    "7",
    "99999999999999999999999999",
    "9223372036854775807",
    "-9223372036854775808",
    "4294967296",
    "2147483648",
    "65536",
    "0.0000000001",
    "1/0",
    "0/1",
    "1e308",
    "5280000'-11 15/16\"",
    "-100'-5 1/64\"",
    "0'",
    "-0",
    "1/999999999999",
    "3.",
    ".5",
    "0x10",
];

/// What a keyboard in another language or a paste from elsewhere leaves.
const PIECES: &[&str] = &[
    "é", "½", "—", "”", "’", "′", "″", "\u{a0}", "\u{feff}", "\u{2028}", "🏠", "e\u{301}", "\0", "\t", "\r",
    "\r\n", "\n", "\n\n", " ", "  ", "\"", "'", "--", "/", ",", "@", "-", "x", "..", "(", "\u{b}",
    "\u{202e}", "|", "`",
];

/// The text with a few damages.
pub fn damaged(text: &str, dice: &mut Dice) -> String {
    let mut text = text.to_owned();
    for _ in 0..dice.between(1, 4) {
        text = damaged_once(&text, dice);
    }
    text
}

fn damaged_once(text: &str, dice: &mut Dice) -> String {
    match dice.between(0, 11) {
        0 => with_lines(text, |lines| {
            let at = place(dice, lines.len());
            lines.drain(at..(at + 1).min(lines.len()));
        }),
        1 => with_lines(text, |lines| {
            let from = place(dice, lines.len());
            let to = place(dice, lines.len());
            lines.extend_from_within(from..(from + 1).min(lines.len()));
            let copy = lines.pop().unwrap_or_default();
            lines.insert(to.min(lines.len()), copy);
        }),
        2 => with_lines(text, |lines| {
            if !lines.is_empty() {
                let (one, other) = (place(dice, lines.len() - 1), place(dice, lines.len() - 1));
                lines.swap(one, other);
            }
        }),
        3 => {
            let (from, to) = stretch(text, dice, 6);
            format!("{}{}", &text[..from], &text[to..])
        }
        4 => with_piece(text, dice.one_of(PIECES), dice),
        5..=7 => {
            let number = dice.one_of(NUMBERS);
            with_word(text, dice, |word| word.starts_with(|first: char| first.is_ascii_digit()), number)
        }
        8 => {
            let names = words(text, is_name);
            let name = match names.is_empty() {
                true => "W1".to_owned(),
                false => {
                    let (from, to) = names[place(dice, names.len() - 1)];
                    text[from..to].to_owned()
                }
            };
            with_word(text, dice, is_name, &name)
        }
        9 => {
            let (from, to) = stretch(text, dice, 2_000);
            if dice.once_in(2) { text[..from].to_owned() } else { text[to..].to_owned() }
        }
        10 => text.replace('\n', dice.one_of(&["\r\n", "\r", "\n\n", "\n\r", "\n\t"])),
        _ => {
            let (from, to) = stretch(text, dice, 400);
            let piece = text[from..to].to_owned();
            with_piece(text, &piece, dice)
        }
    }
}

/// The text with other lines.
fn with_lines(text: &str, change: impl FnOnce(&mut Vec<&str>)) -> String {
    let mut lines = text.split('\n').collect();
    change(&mut lines);
    lines.join("\n")
}

/// The text with something put in somewhere.
fn with_piece(text: &str, piece: &str, dice: &mut Dice) -> String {
    let (at, _) = stretch(text, dice, 0);
    format!("{}{piece}{}", &text[..at], &text[at..])
}

/// The text with one of the words that are meant replaced.
fn with_word(text: &str, dice: &mut Dice, is_meant: impl Fn(&str) -> bool, becomes: &str) -> String {
    let words = words(text, is_meant);
    if words.is_empty() {
        return text.to_owned();
    }
    let (from, to) = words[place(dice, words.len() - 1)];
    format!("{}{becomes}{}", &text[..from], &text[to..])
}

/// A name as drawings write it: capitals and digits.
fn is_name(word: &str) -> bool {
    word.starts_with(|first: char| first.is_ascii_uppercase())
        && word.ends_with(|last: char| last.is_ascii_digit())
}

/// Where the words that are meant stand.
fn words(text: &str, is_meant: impl Fn(&str) -> bool) -> Vec<(usize, usize)> {
    let mut words = Vec::new();
    let mut start = 0;
    for (end, _) in text.match_indices([' ', '\n', ',', '/', '"']).chain([(text.len(), "")]) {
        if start < end && is_meant(&text[start..end]) {
            words.push((start, end));
        }
        start = end + 1;
    }
    words
}

/// Two places between characters, at most about so many bytes apart.
fn stretch(text: &str, dice: &mut Dice, most: usize) -> (usize, usize) {
    let from = text.floor_char_boundary(place(dice, text.len()));
    (from, text.ceil_char_boundary((from + place(dice, most)).min(text.len())))
}

/// A number from zero to `most`.
fn place(dice: &mut Dice, most: usize) -> usize {
    usize::try_from(dice.between(0, i64::try_from(most).unwrap())).unwrap()
}
