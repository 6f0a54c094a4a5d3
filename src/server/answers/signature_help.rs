//! `textDocument/signatureHelp`.

use tower_lsp::lsp_types::{
    ParameterInformation, ParameterLabel, Position, SignatureHelp, SignatureInformation,
};

use crate::ide::{self, Signature};
use crate::server::abilities::Abilities;
use crate::server::answers::completion::documentation;
use crate::server::desk::Glance;

/// What the fact around a position asks for.
pub fn signature_help(glance: &Glance, position: Position, abilities: Abilities) -> Option<SignatureHelp> {
    let document = &glance.document;
    let found = ide::signature(&document.text(), document.ruler.offset(position))?;
    let active = found.ways.get(found.active).and_then(|way| way.active);
    Some(SignatureHelp {
        signatures: found.ways.into_iter().map(|way| encoded(way, abilities)).collect(),
        active_signature: u32::try_from(found.active).ok(),
        active_parameter: active.and_then(|active| u32::try_from(active).ok()),
    })
}

fn encoded(way: Signature, abilities: Abilities) -> SignatureInformation {
    let label = way.label.as_str();
    let parameters = way.slots.iter().map(|slot| ParameterInformation {
        label: ParameterLabel::LabelOffsets(
            [&slot.place.start, &slot.place.end].map(|at| columns(label, *at)),
        ),
        documentation: Some(documentation(slot.meaning.clone(), abilities)),
    });
    SignatureInformation {
        parameters: Some(parameters.collect()),
        // A number behind the last parameter: none is active.
        active_parameter: Some(
            way.active.or(Some(way.slots.len())).and_then(|at| u32::try_from(at).ok()).unwrap_or(0),
        ),
        documentation: Some(documentation(way.documentation, abilities)),
        label: way.label,
    }
}

/// The protocol counts a label's columns in UTF-16, whatever it counts a document's in.
fn columns(label: &str, byte: usize) -> u32 {
    let before = label.get(..byte).unwrap_or(label);
    u32::try_from(before.encode_utf16().count()).unwrap_or(u32::MAX)
}
