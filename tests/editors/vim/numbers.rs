//! The ways people write a number, as Vim patterns. Written by hand after `src/syntax/lexer/`; held to the reader by
//! `words.rs` and the spellings in `editors/vim/test/`.

/// The syntax items of numbers, the plainest first: of two that begin at one place Vim takes the last.
pub fn items(letter: &str, units: &str) -> String {
    let vulgar = "[½¼¾⅛⅜⅝⅞]";
    let plain = r"\d\+\%(\.\d\+\)\=";
    let fraction = format!(r"\%(\d\+\/\d\+\|{vulgar}\)");
    let mixed = format!(r"\%({fraction}\|{plain}\%({vulgar}\|[- ]{fraction}\)\=\)");
    let inch = r#"\%(''\|’’\|′′\|["”″]\)"#;
    let foot = r"\%('\%('\)\@!\|’\%(’\)\@!\|′\%(′\)\@!\)";
    let feet = format!(r"{plain} \={foot}\%([- ]\={mixed}{inch}\|-\={mixed}[[:alnum:]]\@!\)\=");
    let sign = r"\%(-\|−\|(-) \=\|±\|+\/-\|+\)";
    let opening = format!(r"\%(\<EL\.\=\s*{sign}\=\|\%([^[:blank:](,=]\)\@1<!{sign}\)\=");
    let number = format!(r"{opening}\%({feet}\|{mixed}{inch}\=\|{plain}[eE][+-]\=\d\+\)%\=");
    let scientific = format!(r"{opening}{plain}[eE][+-]\=\d\d\={end}", end = r"[[:alnum:]]\@!");
    // `24F-V4`: letters that touch a number and are no unit.
    let in_mark = format!(r"\%({letter}\|\d\)");
    let mark = format!(
        r"\d\+\%(\%({units}\)[[:alnum:]]\@!\)\@!\%([xX×]\d\)\@!{letter}{in_mark}*\%([-.]{in_mark}\+\)*"
    );
    [
        number.as_str(),
        &mark,
        &scientific,
        r"#\d\{1,3}",
        r"\d\d\d\d-\d\d-\d\d",
        // `2x10`, but not the beginning of `4x4x1/4`.
        r#"\d\+[xX×]\d\+\%([[:alnum:]\/'"’”′″_×]\|[.-]\d\)\@!"#,
        r"\d\+-ply\>",
    ]
    // Vim's older engine is sixty times as fast with these.
    .map(|pattern| format!("syntax match framingNumber /\\%#=1{pattern}/ contained nextgroup=framingUnit\n"))
    .concat()
}
