//! The tokens that a client holds, to tell it only what has changed.

use std::collections::HashMap;
use std::sync::{Arc, Mutex, PoisonError};

use tower_lsp::lsp_types::{
    SemanticToken, SemanticTokens, SemanticTokensDelta, SemanticTokensFullDeltaResult, Url,
};

use crate::server::answers::tokens::edit;

/// The tokens of more documents than so many are not kept: the longest unasked for go.
const MOST_DOCUMENTS: usize = 64;

/// The tokens that the client was given last, of each document.
#[derive(Clone, Debug, Default)]
pub struct TokenStore(Arc<Mutex<Given>>);

#[derive(Debug, Default)]
struct Given {
    /// Counts what is given: the name of a result.
    count: u64,
    documents: HashMap<Url, (u64, Vec<SemanticToken>)>,
}

impl TokenStore {
    /// All tokens of a document.
    pub fn give(&self, uri: &Url, tokens: Vec<SemanticToken>) -> SemanticTokens {
        let (id, _) = self.put(uri, &tokens);
        SemanticTokens { result_id: Some(id.to_string()), data: tokens }
    }

    /// What has changed in the tokens of a document since the result `known`; all of them when that is not the last one.
    pub fn give_changes(
        &self,
        uri: &Url,
        known: &str,
        tokens: Vec<SemanticToken>,
    ) -> SemanticTokensFullDeltaResult {
        let (id, before) = self.put(uri, &tokens);
        let result_id = Some(id.to_string());
        match before.filter(|(id, _)| id.to_string() == known) {
            Some((_, old)) => {
                SemanticTokensDelta { result_id, edits: edit(&old, &tokens).into_iter().collect() }.into()
            }
            None => SemanticTokens { result_id, data: tokens }.into(),
        }
    }

    /// Forgets a document that is closed.
    pub fn forget(&self, uri: &Url) {
        self.0.lock().unwrap_or_else(PoisonError::into_inner).documents.remove(uri);
    }

    /// Keeps the tokens; gives the name of this result, and what was there before.
    fn put(&self, uri: &Url, tokens: &[SemanticToken]) -> (u64, Option<(u64, Vec<SemanticToken>)>) {
        let mut given = self.0.lock().unwrap_or_else(PoisonError::into_inner);
        given.count += 1;
        let id = given.count;
        let before = given.documents.insert(uri.clone(), (id, tokens.to_vec()));
        if given.documents.len() > MOST_DOCUMENTS
            && let Some(oldest) =
                given.documents.iter().min_by_key(|(_, (id, _))| *id).map(|(uri, _)| uri.clone())
        {
            given.documents.remove(&oldest);
        }
        (id, before)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn uri(at: usize) -> Url {
        Url::parse(&format!("untitled:{at}")).unwrap()
    }

    fn tokens(lengths: &[u32]) -> Vec<SemanticToken> {
        lengths.iter().map(|length| SemanticToken { length: *length, ..SemanticToken::default() }).collect()
    }

    #[test]
    fn changes_are_told_of_the_last_result_alone() {
        let store = TokenStore::default();
        let first = store.give(&uri(1), tokens(&[1, 2, 3])).result_id.unwrap();
        let SemanticTokensFullDeltaResult::TokensDelta(delta) =
            store.give_changes(&uri(1), &first, tokens(&[1, 9, 3]))
        else {
            panic!("the first result is known");
        };
        assert_eq!((delta.edits[0].start, delta.edits[0].delete_count), (5, 5));
        assert_eq!(delta.edits[0].data, Some(tokens(&[9])));
        let again = store.give_changes(&uri(1), &first, tokens(&[1]));
        assert!(matches!(again, SemanticTokensFullDeltaResult::Tokens(_)), "the first result is old");
    }

    #[test]
    fn closed_documents_and_all_but_the_last_ones_are_forgotten() {
        let store = TokenStore::default();
        for at in 0..=MOST_DOCUMENTS {
            store.give(&uri(at), tokens(&[1]));
        }
        assert_eq!(store.0.lock().unwrap().documents.len(), MOST_DOCUMENTS);
        assert!(!store.0.lock().unwrap().documents.contains_key(&uri(0)));
        store.forget(&uri(7));
        assert_eq!(store.0.lock().unwrap().documents.len(), MOST_DOCUMENTS - 1);
    }
}
