//! A body as a request, a notification or a response. Liberal in what it takes, exact in what it refuses.

use serde::Deserialize;
use serde_json::{Map, Value};
use tower_lsp::jsonrpc::{Error, Id, Request, Response};
use tower_lsp::lsp_types::InitializeParams;

/// What a client sent.
#[derive(Debug, PartialEq)]
pub enum Message {
    /// A request, or without an id a notification.
    Request(Request),
    /// The answer to a request of ours.
    Response(Response),
    /// Nothing that has a meaning: the answer to give.
    Refused(Response),
}

/// Reads a body.
pub fn read(body: &[u8]) -> Message {
    let envelope: Envelope = match serde_json::from_slice(body) {
        Ok(envelope) => envelope,
        Err(fault) if fault.is_data() => return refused(Error::invalid_request(), &fault),
        Err(fault) => return refused(Error::parse_error(), &fault),
    };
    let id = match envelope.id.map(Id::deserialize) {
        Some(Err(fault)) => return refused(Error::invalid_request(), &fault),
        Some(Ok(id)) => Some(id),
        None => None,
    };
    match (envelope.method, id) {
        (Some(method), id) => Message::Request(request(method, id, envelope.params)),
        // Some clients leave out a result that is null.
        (None, Some(id)) => Message::Response(match envelope.error {
            Some(error) => Response::from_error(id, error),
            None => Response::from_ok(id, envelope.result.unwrap_or_default()),
        }),
        (None, None) => refused(Error::invalid_request(), &"it has neither a method nor an id"),
    }
}

/// Every member a message can have. The version is not asked for: only one is in use.
#[derive(Deserialize)]
struct Envelope {
    method: Option<String>,
    #[serde(default, deserialize_with = "present")]
    id: Option<Value>,
    params: Option<Value>,
    result: Option<Value>,
    error: Option<Error>,
}

/// Keeps a null apart from an absence.
fn present<'de, D: serde::Deserializer<'de>>(from: D) -> Result<Option<Value>, D::Error> {
    Value::deserialize(from).map(Some)
}

/// The answer to something that is no message.
pub fn refused(mut error: Error, why: &dyn ToString) -> Message {
    error.data = Some(Value::String(why.to_string()));
    Message::Refused(Response::from_error(Id::Null, error))
}

fn request(method: String, id: Option<Id>, params: Option<Value>) -> Request {
    let params = match method.as_str() {
        "initialize" => params.map(with_workspace_diagnostics).map(readable_initialize),
        "initialized" => Some(params.unwrap_or_else(|| Value::Object(Map::new()))),
        // They take none, and some clients send an empty something.
        "shutdown" | "exit" => None,
        _ => params,
    };
    let mut request = Request::build(method);
    if let Some(params) = params {
        request = request.params(params);
    }
    if let Some(id) = id {
        request = request.id(id);
    }
    request.finish()
}

/// The parameters of `initialize` with what the protocol calls `workspace.diagnostics` under the name that the protocol's
/// types here expect.
fn with_workspace_diagnostics(mut params: Value) -> Value {
    if let Some(workspace) = params.pointer_mut("/capabilities/workspace").and_then(Value::as_object_mut)
        && let Some(diagnostics) = workspace.get("diagnostics").cloned()
    {
        workspace.insert("diagnostic".to_owned(), diagnostics);
    }
    params
}

/// The parameters of `initialize` without the members that are not as the protocol says: one odd capability is no
/// reason to refuse a client.
fn readable_initialize(params: Value) -> Value {
    let Value::Object(members) = params else { return params };
    let whole = Value::Object(members);
    if InitializeParams::deserialize(&whole).is_ok() {
        return whole;
    }
    let Value::Object(members) = whole else { return whole };
    let mut kept = Map::new();
    for (name, value) in members {
        let value = if name == "capabilities" { readable_capabilities(value) } else { value };
        let alone = Map::from_iter([("capabilities".to_owned(), Value::Object(Map::new())), (name, value)]);
        if InitializeParams::deserialize(&Value::Object(alone.clone())).is_ok() {
            kept.extend(alone.into_iter().filter(|(name, value)| {
                name != "capabilities"
                    || value.as_object().is_some_and(|capabilities| !capabilities.is_empty())
            }));
        }
    }
    kept.entry("capabilities").or_insert_with(|| Value::Object(Map::new()));
    Value::Object(kept)
}

/// Capabilities, each group without the members that can't be read.
fn readable_capabilities(capabilities: Value) -> Value {
    let Value::Object(groups) = capabilities else { return Value::Object(Map::new()) };
    let mut kept = Map::new();
    for (group, members) in groups {
        let Value::Object(members) = members else { continue };
        let readable = members.into_iter().filter(|(name, value)| {
            let alone = Map::from_iter([(name.clone(), value.clone())]);
            let capabilities = Map::from_iter([(group.clone(), Value::Object(alone))]);
            tower_lsp::lsp_types::ClientCapabilities::deserialize(&Value::Object(capabilities)).is_ok()
        });
        let readable = Value::Object(readable.collect());
        kept.insert(group, readable);
    }
    Value::Object(kept)
}

#[cfg(test)]
mod tests {
    use super::*;
    use serde_json::json;

    fn code_of(body: &[u8]) -> i64 {
        match read(body) {
            Message::Refused(response) => {
                assert_eq!(response.id(), &Id::Null);
                response.error().unwrap().code.code()
            }
            other => panic!("{other:?}"),
        }
    }

    #[test]
    fn requests_notifications_and_responses_are_told_apart() {
        let with_id = json!({"jsonrpc": "2.0", "id": "a", "method": "x/y", "params": [1]});
        let Message::Request(request) = read(with_id.to_string().as_bytes()) else { panic!() };
        assert_eq!(request.id(), Some(&Id::String("a".to_owned())));
        assert_eq!(request.params(), Some(&json!([1])));
        let Message::Request(request) = read(br#"{"jsonrpc":"2.0","method":"x/y"}"#) else { panic!() };
        assert_eq!(request.id(), None);
        for answer in [r#"{"id":3}"#, r#"{"id":3,"result":null}"#, r#"{"id":3,"result":{}}"#] {
            assert!(matches!(read(answer.as_bytes()), Message::Response(_)), "{answer}");
        }
        let error = read(br#"{"id":3,"error":{"code":-32603,"message":"no"}}"#);
        assert!(matches!(error, Message::Response(response) if response.is_error()));
    }

    #[test]
    fn what_has_no_meaning_is_refused_with_the_code_that_says_why() {
        // Codes: the JSON-RPC 2.0 specification, section 5.1.
        for body in [br#"{"jsonrpc": "2.0", "id": 1, "#.as_slice(), b"", b"{\"method\":\"\xff\xfe\"}"] {
            assert_eq!(code_of(body), -32700);
        }
        let deep = r#"{"method":"x","params":"#.to_owned() + &"[".repeat(100_000);
        assert_eq!(code_of(deep.as_bytes()), -32700);
        for body in ["42", "[]", r#"{"foo":1}"#, r#"{"method":5}"#, r#"{"id":{},"method":"x"}"#] {
            assert_eq!(code_of(body.as_bytes()), -32600, "{body}");
        }
    }

    #[test]
    fn an_odd_capability_costs_itself_only() {
        let Message::Request(request) = read(
            json!({"id": 1, "method": "initialize", "params": {
                "processId": "seven",
                "rootUri": null,
                "capabilities": {
                    "general": {"positionEncodings": ["utf-8"]},
                    "textDocument": {"callHierarchy": [], "publishDiagnostics": {"relatedInformation": true}},
                    "window": 3,
                },
            }})
            .to_string()
            .as_bytes(),
        ) else {
            panic!()
        };
        let params = InitializeParams::deserialize(request.params().unwrap()).unwrap();
        assert_eq!(params.process_id, None);
        assert!(params.capabilities.general.unwrap().position_encodings.is_some());
        let text_document = params.capabilities.text_document.unwrap();
        assert_eq!(text_document.publish_diagnostics.unwrap().related_information, Some(true));
        assert!(text_document.call_hierarchy.is_none());
    }

    #[test]
    fn shutdown_takes_whatever_comes_with_it() {
        let Message::Request(request) = read(br#"{"id":1,"method":"shutdown","params":{}}"#) else {
            panic!()
        };
        assert_eq!(request.params(), None);
    }
}
