//! Colours and words for Vim and Neovim.

mod behind;
mod numbers;
mod words;

use std::collections::BTreeSet;
use std::path::Path;

use storyrod::syntax::vocabulary::ELEMENTS;
use storyrod::syntax::vocabulary::lexicon::{self, Phrases};

use crate::{holds, longest_first};
use behind::Group;

const WRITTEN: &str =
    "\" Written by `UPDATE=1 cargo test --test editors` from the vocabulary; not edited by hand.\n";

/// A letter: Vim's own classes of characters know those of ASCII only.
const LETTER: &str = r"[^\x01-@\[-`{-\xbf×÷−≤≥±⅛⅜⅝⅞’′”″“]";

/// A word or a name, as long as it goes.
fn word() -> String {
    format!(r"{LETTER}\%({LETTER}\|[0-9_.×]\|-\%({LETTER}\|[0-9_.]\)\@=\)*")
}

/// Phrases as a Vim pattern, to choose from.
fn phrases(phrases: impl IntoIterator<Item = &'static str>) -> String {
    let escaped = |phrase: &str| phrase.replace('.', r"\.").replace('/', r"\/").replace(' ', r"\s\+");
    longest_first(phrases).into_iter().map(escaped).collect::<Vec<_>>().join(r"\|")
}

/// One of some phrases, to the end of its last word.
fn one_of(words: impl IntoIterator<Item = &'static str>) -> String {
    format!(r"\%({}\)\>", phrases(words))
}

/// An item for the phrases of one word, one for those of two, and so on: of two items that fit, Vim takes the last.
fn by_length(phrases: &Phrases, item: impl Fn(&str) -> String) -> Vec<(usize, String)> {
    let n_words = |phrase: &str| phrase.split(' ').count();
    let lengths: BTreeSet<usize> = phrases.iter().map(|phrase| n_words(phrase)).collect();
    let such = |length| phrases.iter().copied().filter(move |phrase| n_words(phrase) == length);
    lengths.into_iter().map(|length| (length, item(&one_of(such(length))))).collect()
}

/// The items in the order in which Vim must read them.
fn in_order(items: impl IntoIterator<Item = Vec<(usize, String)>>) -> String {
    let mut items: Vec<_> = items.into_iter().flatten().collect();
    items.sort_by_key(|(length, _)| *length);
    items.into_iter().map(|(_, item)| item).collect()
}

fn word_items(group: &str, words: &Phrases) -> Vec<(usize, String)> {
    by_length(words, |pattern| format!("syntax match {group} /\\<{pattern}/ contained\n"))
}

/// The first lines of facts.
fn facts(groups: &[Group]) -> String {
    in_order(groups.iter().map(|group| {
        let next = group.next();
        by_length(&group.phrases, |pattern| {
            format!("syntax match framingFact /^\\s\\+\\zs{pattern}/ nextgroup={next}\n")
        })
    }))
}

/// Every word that can stand behind a fact, the choices last: they are known by their fact.
fn words(groups: &[Group]) -> String {
    let without_number = |words: &'static str| words.strip_suffix(" 12").unwrap_or(words);
    let joining = lexicon::joining().into_iter().filter(|word| *word != "=").map(without_number).collect();
    let anywhere = [
        word_items("framingOperator", &joining),
        word_items("framingStuff", &lexicon::stuff()),
        word_items("framingFactName", &lexicon::fact_names()),
        word_items("framingCase", &lexicon::cases()),
    ];
    in_order(anywhere) + &in_order(groups.iter().map(|group| word_items(&group.choice(), &group.choices)))
}

fn syntax() -> String {
    let groups = behind::groups();
    format!(
        r##"{WRITTEN}scriptencoding utf-8
if exists('b:current_syntax')
  finish
endif
syntax case match
syntax iskeyword @,48-57,_,-,.,192-255

" The first line of an element.
syntax match framingElement /^{elements}/ nextgroup=framingName skipwhite
syntax match framingInclude /^{include}/
syntax match framingName /{word}/ contained

" A line that begins with no fact keeps its numbers and texts only.
syntax match framingUnknown /^\s\+\zs[^[:space:]-].*/ contains=framingComment,framingText,@framingNumber
{facts}syntax match framingFactName /^\s\+\zs{claimed}\ze\s\+should\s\+be\>/ nextgroup=framingClaimed
syntax match framingClaimed /.\+/ contained contains=@framingValue

" What may stand behind a fact.
syntax cluster framingNumber contains=framingNumber,framingWord,framingTimes
syntax cluster framingValue contains=@framingNumber,framingOperator,framingText,framingComment
{behind}
" Words, and of several that begin at one place the last. A word of the author's hides what stands inside it.
syntax match framingWord /{word}/ contained transparent contains=NONE
{words}syntax match framingStuff /\<HSS\ze\d/ contained
syntax match framingOperator /[<>]\==\|[<>≤≥@]\|\/\|×/ contained

" Numbers. A unit touches its number or stands one blank behind it.
{numbers}syntax match framingUnit / \=\%({units}\)\%([[:alnum:]_]\|[-.][[:alnum:]]\)\@!\.\=/ contained
syntax match framingTimes /[[:blank:]0-9½¼¾⅛⅜⅝⅞'"’”′″]\@1<=[xX×]\ze *[0-9½¼¾⅛⅜⅝⅞]/ contained

" A quote opens a text behind a blank; any other is an inch mark.
syntax match framingText /\%(^\|[[:blank:]]\)\@1<=\%("[^[:blank:]"][^"]*"\|""\|[“”][^[:blank:]"”][^"”]*["”]\)/ contains=@Spell
syntax match framingComment /\%(^\|[[:blank:]]\)\@1<=--.*$/ contains=@Spell,framingTodo
syntax keyword framingTodo TODO FIXME contained

highlight default link framingElement Statement
highlight default link framingInclude Include
highlight default link framingName Function
highlight default link framingFact Identifier
highlight default link framingFactName Identifier
highlight default link framingCase Constant
highlight default link framingRule PreProc
highlight default link framingOperator Operator
highlight default link framingTimes Operator
highlight default link framingChoice Special
{links}highlight default link framingStuff Type
highlight default link framingNumber Number
highlight default link framingUnit Type
highlight default link framingText String
highlight default link framingComment Comment
highlight default link framingTodo Todo

let b:current_syntax = 'framing'
"##,
        elements = one_of(ELEMENTS.iter().flat_map(|spec| lexicon::openings(spec))),
        include = one_of([lexicon::INCLUDE]),
        facts = facts(&groups),
        claimed = one_of(lexicon::fact_names()),
        behind = groups.iter().map(Group::items).collect::<String>(),
        words = words(&groups),
        numbers = numbers::items(LETTER, &phrases(lexicon::units())),
        units = phrases(lexicon::units()),
        word = word(),
        links = groups.iter().map(Group::link).collect::<String>(),
    )
}

/// The openings that an indented line can't begin with: typed there, they go to the first column.
fn outdents() -> Vec<&'static str> {
    let facts = ELEMENTS.iter().flat_map(|spec| lexicon::fact_phrases(spec));
    let begin_lines: Phrases = facts.chain(lexicon::fact_names()).collect();
    let begins_no_fact =
        |word: &&str| !word.contains(' ') && !begin_lines.iter().any(|phrase| phrase.starts_with(word));
    let openings = ELEMENTS.iter().flat_map(|spec| lexicon::openings(spec)).chain([lexicon::INCLUDE]);
    openings.filter(begins_no_fact).collect::<BTreeSet<_>>().into_iter().collect()
}

fn committed(path: &str) -> String {
    std::fs::read_to_string(Path::new(env!("CARGO_MANIFEST_DIR")).join(path)).unwrap()
}

#[test]
fn vim_and_neovim_know_the_words_of_the_vocabulary() {
    let outdents: Vec<String> = outdents().iter().map(|word| format!("'{word}'")).collect();
    let words = format!(
        "{WRITTEN}\n\" The words that open an element and begin no fact.\nlet g:storyrod#words#outdents = [\n      \\ {}]\n",
        outdents.join(",\n      \\ ")
    );
    for editor in ["vim", "neovim"] {
        holds(&format!("editors/{editor}/syntax/framing.vim"), &syntax());
        holds(&format!("editors/{editor}/autoload/storyrod/words.vim"), &words);
    }
}

/// Neovim reads the same files; a folder of its own has copies, so that either can be put anywhere.
#[test]
fn neovim_has_the_files_that_both_read() {
    for path in ["indent/framing.vim", "compiler/framing.vim", "autoload/storyrod.vim", "doc/storyrod.txt"] {
        holds(&format!("editors/neovim/{path}"), &committed(&format!("editors/vim/{path}")));
    }
}
