//! Colours for Vim and Neovim.

use storyrod::syntax::vocabulary::{ELEMENTS, lexicon};

use crate::{holds, longest_first};

/// Phrases as a Vim pattern.
fn alternatives(phrases: impl IntoIterator<Item = &'static str>) -> String {
    longest_first(phrases).join(r"\|").replace(' ', r"\s\+")
}

fn syntax() -> String {
    format!(
        r#"" Written by `UPDATE=1 cargo test --test editors` from the vocabulary; not edited by hand.
if exists('b:current_syntax')
  finish
endif

syntax match framingElement /^\%({elements}\)\>/
syntax match framingInclude /^include\>/
syntax match framingFact /^\s\+\zs\%({facts}\)\>/
syntax match framingNumber /\%(^\|[ ,#-]\)\@1<=\d[0-9.'"\/-]*\%(\s\d\+\/\d\+"\)\?/
syntax match framingText /\%(^\|\s\)\@1<="[^" \t][^"]*"/
syntax match framingComment /\%(^\|\s\)\@1<=--.*$/ contains=@Spell

highlight default link framingElement Statement
highlight default link framingInclude Include
highlight default link framingFact Identifier
highlight default link framingNumber Number
highlight default link framingText String
highlight default link framingComment Comment

let b:current_syntax = 'framing'
"#,
        elements = alternatives(ELEMENTS.iter().flat_map(|spec| lexicon::openings(spec))),
        facts = alternatives(ELEMENTS.iter().flat_map(|spec| lexicon::fact_phrases(spec))),
    )
}

#[test]
fn neovim_colours_the_words_of_the_vocabulary() {
    holds("editors/neovim/syntax/framing.vim", &syntax());
}
