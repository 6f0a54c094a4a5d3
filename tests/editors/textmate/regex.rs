//! The pieces that the grammar's patterns are made of: words, phrases, and numbers in every spelling that is read.
//!
//! The dialect is Oniguruma's; a lookbehind here is one character wide, as every engine takes it.

use crate::longest_first;
use storyrod::syntax::lexer::unit_spellings;

/// A word or a name.
pub const WORD: &str = r"\p{Alpha}(?:[\p{Alpha}\p{Nd}_.×]|-[\p{Alpha}\p{Nd}_.])*";

/// Behind a word, so that `for` is not found in `form` or in `for-all`.
pub const WORD_END: &str = r"(?![\p{Alpha}\p{Nd}_.×]|-[\p{Alpha}\p{Nd}_.])";

const VULGAR: &str = "½¼¾⅛⅜⅝⅞";
const FOOT_MARK: &str = "(?:'(?!')|’(?!’)|′(?!′))";
const INCH_MARK: &str = "(?:[\"”″]|''|’’|′′)";
const SIGN: &str = r"(?:\(-\) ?|\+/-|[-−±+])";
const LEVEL: &str = r"EL\.?(?:[ \t]+(?:\(-\) ?|\+/-|[-−±+])?|(?:\(-\) ?|\+/-|[-−±+]))";
const PLAIN: &str = r"(?>[0-9]+(?:\.[0-9]+)?)";
const FRACTION: &str = "(?>[½¼¾⅛⅜⅝⅞]|[0-9]+/[0-9]+)";
const ALPHANUMERIC: &str = r"[\p{Alpha}\p{N}]";
const SCIENTIFIC: &str = r"[0-9]+(?:\.[0-9]+)?[eE][+-]?[0-9]{1,2}(?![\p{Alpha}\p{N}])";
const UNIT_END: &str = r"(?![\p{Alpha}\p{N}_/-])";

/// `9`, `9.5`, `3/4`, `9-1/2`, `9½`: as much as fits, never less.
fn mixed() -> String {
    format!(r"(?>{FRACTION}|[0-9]+(?:\.[0-9]+|[- ]{FRACTION}|[{VULGAR}])?)")
}

/// These phrases, the longest first, with any blanks between their words.
pub fn alternatives(phrases: impl IntoIterator<Item = &'static str>) -> String {
    longest_first(phrases).into_iter().map(phrase).collect::<Vec<_>>().join("|")
}

fn phrase(phrase: &str) -> String {
    let word = |word: &str| match word {
        "at" => "(?:at|@)".to_owned(),
        word => word.replace('.', r"\."),
    };
    phrase.split(' ').map(word).collect::<Vec<_>>().join(r"\s+")
}

/// A spelling of a number.
pub struct Number {
    pub scope: &'static str,
    pub pattern: String,
    /// The pattern's one group is a unit in letters.
    pub has_unit: bool,
}

/// A length in feet, and in inches behind a dash, a blank or nothing.
fn feet() -> String {
    let (mixed, inch) = (mixed(), inch());
    format!("{PLAIN} ?{FOOT_MARK}(?:-?{mixed}(?:{inch}|(?!{ALPHANUMERIC}))| {mixed}{inch})?")
}

fn inch() -> String {
    format!(r"(?:{INCH_MARK}|[ \x{{a0}}]?in{UNIT_END}\.?)")
}

/// The unit of a length in letters.
fn length_unit() -> String {
    let [lengths, ..] = unit_spellings();
    format!(r"[ \x{{a0}}]?((?:{}){UNIT_END}\.?)", alternatives(lengths))
}

/// Everything that begins with a figure or with a number's sign, but for a number alone; the first that fits wins.
pub fn quantities() -> Vec<Number> {
    let [_, loads, stresses, areas] = unit_spellings();
    let other_units = alternatives([loads, stresses, areas].into_iter().flatten());
    let other_unit = format!(r"[ \x{{a0}}]?((?:{other_units}){UNIT_END})");
    let (mixed, inch, length_unit) = (mixed(), inch(), length_unit());
    let numbers = [
        ("constant.numeric.date", r#"[0-9]{4}-[0-9]{2}-[0-9]{2}(?![\p{Alpha}\p{N}\-/'"])"#.to_owned()),
        // Refused, since a comma parts a list: `12,000`.
        ("invalid.illegal.number", r"[0-9]+(?:,[0-9]{3}(?![0-9]))+".to_owned()),
        // Refused, since it can be read in two ways: `12' - 6"`.
        ("invalid.illegal.dimension", format!(r"{PLAIN} ?{FOOT_MARK}(?:\s+-\s*|-\s+){mixed}{inch}?")),
        ("constant.numeric.length", feet()),
        // Refused too: `12-6`, `9 - 1/2"`.
        (
            "invalid.illegal.dimension",
            format!(r"(?>[0-9]+)(?!\.[0-9])(?:\s*-\s+{mixed}|-(?!{FRACTION}){mixed}(?!\p{{Alpha}})){inch}?"),
        ),
        // `2x10`
        (
            "constant.numeric.size",
            format!(r#"[0-9]+[xX×][0-9]+(?!\.[0-9{VULGAR}]|-[0-9{VULGAR}]|[\p{{Alpha}}\p{{N}}/'"’”′″_×])"#),
        ),
        // `1.4e6 psi`, `250e6`
        ("constant.numeric.quantity", format!("{SCIENTIFIC}{other_unit}")),
        ("constant.numeric.number", SCIENTIFIC.to_owned()),
        ("constant.numeric.length", format!("{mixed}(?:{INCH_MARK}|{length_unit})")),
        ("constant.numeric.quantity", format!("{mixed}{other_unit}")),
        ("constant.numeric.quantity", format!("{PLAIN}%")),
        ("constant.numeric.count", format!("[0-9]+-ply(?!{ALPHANUMERIC})")),
        // A mark that begins with a figure: `24F-V4`.
        (
            "support.type.material",
            format!(
                r"{PLAIN}(?![xX×][0-9{VULGAR}])\p{{Alpha}}[\p{{Alpha}}\p{{Nd}}]*(?:[-.](?={ALPHANUMERIC})[\p{{Alpha}}\p{{Nd}}]*)*"
            ),
        ),
    ];
    // `EL 0` and `±0` need no unit.
    let level = format!(r"(?:{LEVEL}|(?<![^\s(,=])(?:±|\+/-)){mixed}");
    let level = Number { scope: "constant.numeric.length", pattern: level, has_unit: false };
    let bar = Number { scope: "constant.numeric.bar", pattern: "#[0-9]{1,3}".to_owned(), has_unit: false };
    let numbers = numbers.into_iter().map(|(scope, pattern)| {
        let has_unit = pattern.contains(&length_unit) || pattern.contains(&other_unit);
        Number { scope, pattern: signed(&pattern), has_unit }
    });
    numbers.chain([level, bar]).collect()
}

/// A number alone, without a unit.
pub fn bare_number() -> String {
    signed(&mixed())
}

/// A whole or decimal number alone, as a grid line's name.
pub fn grid_number() -> String {
    format!("(?!{FRACTION}|[0-9]+[- ]?{FRACTION}){PLAIN}")
}

/// A number as a grid line's name where other numbers stand too: it has an offset or a slash behind it.
pub fn grid_number_of_point() -> String {
    let length =
        format!("(?:{}|{}(?:{INCH_MARK}|{}))", feet(), mixed(), length_unit().replace("((?:", "(?:(?:"));
    format!(r"{}(?=(?:\s+(?:plus|less)\s+{length})?\s*/\s*[\p{{Alpha}}0-9])", grid_number())
}

/// Between the sides of a size: `2'-9" x 14"`, `9x12`.
pub fn size_mark() -> String {
    format!(r#"(?<=[0-9{VULGAR}"”″'’′.])[xX×](?=[0-9{VULGAR}])|[xX]{WORD_END}|×"#)
}

/// With its sign, or with `EL` before it.
fn signed(pattern: &str) -> String {
    format!(r"(?:{LEVEL}|(?<![^\s(,=]){SIGN})?{pattern}")
}
