//! Our own way round the protocol service: who reads, who answers, how it ends.
//!
//! One thread reads and decodes, one writes, and between them the handlers' futures share one thread. A handler runs up
//! to its first wait before the next message is looked at, so whatever it does before that happens in the order the
//! messages came; then it waits beside the others, and a cancellation finds it at once.

use std::io::{BufReader, Read};
use std::panic::{AssertUnwindSafe, catch_unwind};
use std::pin::Pin;
use std::task::Poll;
use std::thread;
use std::time::Instant;

use futures_util::future::{BoxFuture, poll_fn};
use futures_util::{FutureExt, Sink, StreamExt};
use serde_json::Value;
use tokio::sync::mpsc::{UnboundedReceiver, UnboundedSender, unbounded_channel};
use tower::Service;
use tower_lsp::ClientSocket;
use tower_lsp::jsonrpc::{Error, Id, Request, Response};

use crate::server::capabilities::with_later_members;
use crate::server::message::{self, Message};
use crate::server::outbox::Outbox;
use crate::server::wire::{self, Received};

/// How a session ended.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Ending {
    /// The client asked us to shut down first: exit code 0.
    Orderly,
    /// It left without a word: exit code 1.
    Abrupt,
}

/// What handlers give.
type Answer = BoxFuture<'static, Option<Response>>;

/// Serves one client until it says `exit` or its end of the input is closed.
///
/// # Errors
/// The system starts no more threads.
pub async fn serve<S>(
    mut service: S,
    socket: ClientSocket,
    input: impl Read + Send + 'static,
    outbox: Outbox,
) -> std::io::Result<Ending>
where
    S: Service<Request, Response = Option<Response>>,
    S::Future: Send + 'static,
{
    let mut messages = read_in_a_thread(input)?;
    let (mut requests_to_client, mut answers_of_client) = socket.split();
    let to_client = outbox.clone();
    tokio::spawn(async move {
        while let Some(request) = requests_to_client.next().await {
            to_client.send(&without_null(request));
        }
    });

    let mut ending = Ending::Abrupt;
    while let Some(message) = messages.recv().await {
        match message {
            Message::Refused(answer) => outbox.send(&answer),
            Message::Response(answer) => {
                // The service panics when nobody waits for the answer any more.
                _ = catch_unwind(AssertUnwindSafe(|| Pin::new(&mut answers_of_client).start_send(answer)));
            }
            Message::Request(request) if request.method() == "exit" => break,
            Message::Request(request) => {
                let changes_the_session = matches!(request.method(), "initialize" | "shutdown");
                let is_shutdown = request.method() == "shutdown";
                let is_initialize = request.method() == "initialize";
                let mut answer = answered(&mut service, request);
                // What comes behind these two is judged by their outcome.
                let at_once = if changes_the_session {
                    Some(answer.as_mut().await)
                } else {
                    answer.as_mut().now_or_never()
                };
                match at_once {
                    Some(answer) => {
                        let answer = if is_initialize { answer.map(with_later_members) } else { answer };
                        if is_shutdown && answer.as_ref().is_some_and(Response::is_ok) {
                            ending = Ending::Orderly;
                        }
                        answer.iter().for_each(|answer| outbox.send(answer));
                    }
                    None => {
                        let outbox = outbox.clone();
                        tokio::spawn(
                            async move { answer.await.iter().for_each(|answer| outbox.send(answer)) },
                        );
                    }
                }
            }
        }
    }
    outbox.flush();
    Ok(ending)
}

/// Decodes messages in a thread of its own. The channel closes at the end of the input.
fn read_in_a_thread(input: impl Read + Send + 'static) -> std::io::Result<UnboundedReceiver<Message>> {
    let (sender, receiver) = unbounded_channel();
    thread::Builder::new().name("input".to_owned()).spawn(move || read_all(input, &sender))?;
    Ok(receiver)
}

fn read_all(input: impl Read, messages: &UnboundedSender<Message>) {
    let mut reader = wire::Reader::new(BufReader::new(input));
    loop {
        let message = match reader.receive() {
            Received::Body(body) => message::read(&body),
            Received::Unreadable(why) => message::refused(Error::parse_error(), &why),
            Received::End => return,
        };
        if messages.send(message).is_err() {
            return;
        }
    }
}

/// A message to the client without parameters that are nothing: JSON-RPC 2.0 knows lists and objects there, or no such
/// member.
fn without_null(request: Request) -> Request {
    if request.params() != Some(&Value::Null) {
        return request;
    }
    let (method, id, _) = request.into_parts();
    let bare = Request::build(method);
    match id {
        Some(id) => bare.id(id).finish(),
        None => bare.finish(),
    }
}

/// The answer to a request, whatever its handler does.
fn answered<S>(service: &mut S, request: Request) -> Answer
where
    S: Service<Request, Response = Option<Response>>,
    S::Future: Send + 'static,
{
    let id = request.id().cloned();
    let (method, since) = (request.method().to_owned(), Instant::now());
    let Ok(future) = catch_unwind(AssertUnwindSafe(|| service.call(request))) else {
        return async move { id.map(internal_error) }.boxed();
    };
    let mut future = Box::pin(future);
    let guarded =
        poll_fn(move |context| match catch_unwind(AssertUnwindSafe(|| future.as_mut().poll(context))) {
            Ok(poll) => poll.map(Some),
            Err(_) => Poll::Ready(None),
        });
    async move {
        let outcome = guarded.await;
        tracing::debug!("{method} took {:.1?}", since.elapsed());
        match outcome {
            Some(Ok(Some(answer))) => Some(answer),
            // The service leaves requests unanswered whose method begins with `$/` and is not known.
            Some(Ok(None)) => id.map(|id| Response::from_error(id, Error::method_not_found())),
            Some(Err(_)) => id.map(|id| Response::from_error(id, Error::invalid_request())),
            None => id.map(internal_error),
        }
    }
    .boxed()
}

fn internal_error(id: Id) -> Response {
    Response::from_error(id, Error::internal_error())
}

#[cfg(test)]
mod tests {
    use std::io::{BufReader, PipeReader, PipeWriter, Write, pipe};
    use std::sync::mpsc::{Receiver, channel};
    use std::time::Duration;

    use serde_json::{Value, json};
    use tower_lsp::lsp_types::{
        Hover, HoverParams, InitializeParams, InitializeResult, MessageType, ShowMessageRequestParams,
        request::ShowMessageRequest,
    };
    use tower_lsp::{Client, LanguageServer, LspService, async_trait, jsonrpc};

    use super::*;

    /// No case comes near it.
    const LONG: Duration = Duration::from_secs(20);

    /// A server whose handlers misbehave as the case asks.
    struct Odd {
        client: Client,
        seen: std::sync::mpsc::Sender<Value>,
    }

    #[async_trait]
    impl LanguageServer for Odd {
        async fn initialize(&self, _: InitializeParams) -> jsonrpc::Result<InitializeResult> {
            Ok(InitializeResult::default())
        }
        async fn shutdown(&self) -> jsonrpc::Result<()> {
            Ok(())
        }
        async fn hover(&self, _: HoverParams) -> jsonrpc::Result<Option<Hover>> {
            panic!("a handler of a test")
        }
    }

    impl Odd {
        async fn note(&self, what: Value) {
            _ = self.seen.send(what);
            tokio::task::yield_now().await;
        }
        async fn wait(&self) -> jsonrpc::Result<()> {
            std::future::pending().await
        }
        async fn ask_client(&self) -> jsonrpc::Result<Value> {
            let question = ShowMessageRequestParams {
                typ: MessageType::INFO,
                message: "well?".to_owned(),
                actions: None,
            };
            let answer = self.client.send_request::<ShowMessageRequest>(question).await?;
            Ok(json!(answer.map(|action| action.title)))
        }
        async fn echo(&self, what: Value) -> jsonrpc::Result<Value> {
            Ok(what)
        }
    }

    struct Session {
        input: Option<PipeWriter>,
        output: wire::Reader<BufReader<PipeReader>>,
        seen: Receiver<Value>,
        ending: Receiver<Ending>,
    }

    impl Session {
        fn start() -> Self {
            let (server_input, input) = pipe().unwrap();
            let (output, server_output) = pipe().unwrap();
            let (seen_sender, seen) = channel();
            let (ending_sender, ending) = channel();
            thread::spawn(move || {
                let (service, socket) = LspService::build(|client| Odd { client, seen: seen_sender })
                    .custom_method("odd/note", Odd::note)
                    .custom_method("odd/wait", Odd::wait)
                    .custom_method("odd/askClient", Odd::ask_client)
                    .custom_method("odd/echo", Odd::echo)
                    .finish();
                let outbox = Outbox::start(server_output).unwrap();
                let runtime = tokio::runtime::Builder::new_current_thread().build().unwrap();
                let ending = runtime.block_on(serve(service, socket, server_input, outbox)).unwrap();
                ending_sender.send(ending).unwrap();
            });
            let output = wire::Reader::new(BufReader::new(output));
            let mut session = Self { input: Some(input), output, seen, ending };
            session.send(&json!({"id": "init", "method": "initialize", "params": {"capabilities": {}}}));
            assert_eq!(session.receive()["id"], "init");
            session
        }

        fn raw(&mut self, bytes: &[u8]) {
            self.input.as_mut().unwrap().write_all(bytes).unwrap();
        }

        fn send(&mut self, message: &Value) {
            self.raw(&wire::framed(message.to_string().as_bytes()));
        }

        fn request(&mut self, id: u32, method: &str) {
            self.send(&json!({"jsonrpc": "2.0", "id": id, "method": method, "params": "p"}));
        }

        fn receive(&mut self) -> Value {
            match self.output.receive() {
                Received::Body(body) => serde_json::from_slice(&body).unwrap(),
                other => panic!("{other:?}"),
            }
        }

        fn is_alive(&mut self) {
            self.send(&json!({"id": 999, "method": "odd/echo", "params": [7]}));
            assert_eq!(self.receive(), json!({"jsonrpc": "2.0", "id": 999, "result": [7]}));
        }
    }

    fn wait_request(id: u32) -> Value {
        json!({"jsonrpc": "2.0", "id": id, "method": "odd/wait"})
    }

    #[test]
    fn five_hundred_notifications_in_one_write_keep_their_order() {
        let mut session = Session::start();
        let mut burst = Vec::new();
        for n in 0..500 {
            burst.extend(wire::framed(json!({"method": "odd/note", "params": n}).to_string().as_bytes()));
        }
        session.raw(&burst);
        for n in 0..500 {
            assert_eq!(session.seen.recv_timeout(LONG).unwrap(), json!(n));
        }
        session.is_alive();
    }

    #[test]
    fn a_cancellation_is_answered_while_others_wait() {
        let mut session = Session::start();
        for id in 1..=6 {
            session.send(&wait_request(id));
        }
        session.send(&json!({"method": "$/cancelRequest", "params": {"id": 3}}));
        let answer = session.receive();
        // The protocol's RequestCancelled.
        assert_eq!((&answer["id"], &answer["error"]["code"]), (&json!(3), &json!(-32800)));
        session.is_alive();
    }

    #[test]
    fn a_panic_is_answered_and_the_session_goes_on() {
        let mut session = Session::start();
        let position = json!({"textDocument": {"uri": "file:///a"}, "position": {"line": 0, "character": 0}});
        session.send(&json!({"id": 1, "method": "textDocument/hover", "params": position}));
        let answer = session.receive();
        // JSON-RPC's internal error.
        assert_eq!((&answer["id"], &answer["error"]["code"]), (&json!(1), &json!(-32603)));
        session.is_alive();
    }

    #[test]
    fn requests_are_answered_while_handlers_wait_for_the_client() {
        let mut session = Session::start();
        for id in 1..=5 {
            session.send(&json!({"id": id, "method": "odd/askClient"}));
        }
        let questions: Vec<_> = (0..5).map(|_| session.receive()).collect();
        session.is_alive();
        for question in &questions {
            session.send(&json!({"id": question["id"], "result": {"title": "yes"}}));
        }
        for _ in 0..5 {
            assert_eq!(session.receive()["result"], json!("yes"));
        }
    }

    #[test]
    fn an_answer_nobody_waits_for_any_more_is_dropped() {
        let mut session = Session::start();
        session.send(&json!({"id": 1, "method": "odd/askClient"}));
        let question = session.receive();
        session.send(&json!({"method": "$/cancelRequest", "params": {"id": 1}}));
        assert_eq!(session.receive()["error"]["code"], json!(-32800));
        session.send(&json!({"id": question["id"], "result": null}));
        session.send(&json!({"id": 4711, "result": null}));
        session.is_alive();
    }

    #[test]
    fn what_is_no_message_is_answered_without_an_id() {
        let mut session = Session::start();
        for (rubbish, code) in [
            (b"Content-Length: 99999999999\r\n\r\n{}".as_slice(), -32700),
            (b"Content-Length: x\r\n\r\n", -32700),
            (&wire::framed(b"{\"id\": 1, \"method\": "), -32700),
            (&wire::framed(b"{\"method\":\"\xff\xfe\"}"), -32700),
            (&wire::framed(b"[]"), -32600),
        ] {
            session.raw(rubbish);
            let answer = session.receive();
            assert_eq!((&answer["id"], &answer["error"]["code"]), (&Value::Null, &json!(code)));
            session.is_alive();
        }
    }

    #[test]
    fn unknown_methods_are_refused_and_unknown_notifications_passed_over() {
        let mut session = Session::start();
        session.send(&json!({"method": "$/unknown"}));
        session.send(&json!({"method": "odd/unknown"}));
        for method in ["$/unknown", "odd/unknown"] {
            session.request(1, method);
            assert_eq!(session.receive()["error"]["code"], json!(-32601));
        }
    }

    #[test]
    fn a_question_without_parameters_has_no_such_member() {
        let written = |request| serde_json::to_value(without_null(request)).unwrap();
        let bare = Request::build("odd/refresh").id(1).params(Value::Null).finish();
        assert_eq!(written(bare), json!({"jsonrpc": "2.0", "id": 1, "method": "odd/refresh"}));
        let whole = Request::build("odd/tell").params(json!([7])).finish();
        assert_eq!(written(whole), json!({"jsonrpc": "2.0", "method": "odd/tell", "params": [7]}));
    }

    #[test]
    fn exit_ends_the_session_with_the_input_still_open() {
        let mut session = Session::start();
        session.send(&wait_request(1));
        session.send(&json!({"id": 2, "method": "shutdown"}));
        session.send(&json!({"method": "exit"}));
        assert_eq!(session.receive()["id"], json!(2));
        assert_eq!(session.ending.recv_timeout(LONG).unwrap(), Ending::Orderly);
        let mut session = Session::start();
        session.send(&json!({"method": "exit"}));
        assert_eq!(session.ending.recv_timeout(LONG).unwrap(), Ending::Abrupt);
    }

    #[test]
    fn the_end_of_the_input_ends_the_session_whoever_waits() {
        let mut session = Session::start();
        session.send(&wait_request(1));
        session.send(&json!({"id": 2, "method": "odd/askClient"}));
        assert!(session.receive()["method"].is_string());
        session.input = None;
        assert_eq!(session.ending.recv_timeout(LONG).unwrap(), Ending::Abrupt);
    }
}
