//! A client of the server: sends what it is told, keeps what comes until somebody asks for it.

use std::collections::{BTreeMap, VecDeque};
use std::io::{BufRead, BufReader, Read, Write};
use std::process::{Child, ChildStdin, ChildStdout, Command, Stdio};
use std::sync::mpsc::{Receiver, Sender, channel};
use std::thread;
use std::time::Duration;

use serde_json::{Value, json};

/// How long anything may take before a case fails. Nothing comes near it.
pub const LONG: Duration = Duration::from_secs(60);

/// A running server and our end of the pipes.
pub struct Session {
    child: Child,
    input: Option<ChildStdin>,
    messages: Receiver<Value>,
    /// Received, not asked for yet.
    kept: VecDeque<Value>,
    next_id: u64,
    offered: Value,
}

impl Session {
    /// A server that has been told nothing yet.
    pub fn start() -> Self {
        let mut child = Command::new(env!("CARGO_BIN_EXE_storyrod"))
            .arg("server")
            .stdin(Stdio::piped())
            .stdout(Stdio::piped())
            .stderr(Stdio::inherit())
            .spawn()
            .unwrap();
        let (sender, messages) = channel();
        let output = child.stdout.take().unwrap();
        thread::spawn(move || read_all(BufReader::new(output), &sender));
        Self {
            input: child.stdin.take(),
            child,
            messages,
            kept: VecDeque::new(),
            next_id: 1,
            offered: Value::Null,
        }
    }

    /// A server that knows this client's capabilities.
    pub fn with(capabilities: &Value) -> Self {
        let mut session = Self::start();
        session.initialize(&json!({"processId": null, "rootUri": null, "capabilities": capabilities}));
        session
    }

    /// A server with a client that says nothing of itself.
    pub fn plain() -> Self {
        Self::with(&json!({}))
    }

    /// Initializes with these parameters and gives the result.
    pub fn initialize(&mut self, params: &Value) -> Value {
        let answer = self.ask("initialize", params);
        self.notify("initialized", &json!({}));
        self.offered = answer["result"]["capabilities"].clone();
        answer["result"].clone()
    }

    /// True when the server said at the start that it can do this.
    pub fn offers(&self, provider: &str) -> bool {
        !self.offered[provider].is_null()
    }

    /// Sends bytes as they are.
    pub fn raw(&mut self, bytes: &[u8]) {
        let input = self.input.as_mut().unwrap();
        input.write_all(bytes).unwrap();
        input.flush().unwrap();
    }

    /// Sends a message.
    pub fn send(&mut self, message: &Value) {
        self.raw(&framed(message.to_string().as_bytes()));
    }

    /// Sends a notification.
    pub fn notify(&mut self, method: &str, params: &Value) {
        self.send(&json!({"jsonrpc": "2.0", "method": method, "params": params}));
    }

    /// Sends a request and gives its id.
    pub fn request(&mut self, method: &str, params: &Value) -> u64 {
        let id = self.next_id;
        self.next_id += 1;
        self.send(&json!({"jsonrpc": "2.0", "id": id, "method": method, "params": params}));
        id
    }

    /// The answer to a request.
    pub fn answer(&mut self, id: u64) -> Value {
        self.wait_for(|message| message["id"] == json!(id) && message.get("method").is_none())
    }

    /// Sends a request and waits for the answer.
    pub fn ask(&mut self, method: &str, params: &Value) -> Value {
        let id = self.request(method, params);
        self.answer(id)
    }

    /// The first message, kept or still to come, that the condition holds for.
    pub fn wait_for(&mut self, is_wanted: impl Fn(&Value) -> bool) -> Value {
        if let Some(at) = self.kept.iter().position(&is_wanted) {
            return self.kept.remove(at).unwrap();
        }
        loop {
            let message = self.messages.recv_timeout(LONG).expect("the server says something more");
            if is_wanted(&message) {
                return message;
            }
            self.kept.push_back(message);
        }
    }

    /// What is published for a version of a document; `None` for a file that is not open.
    pub fn diagnostics(&mut self, uri: &str, version: Option<i32>) -> Vec<Value> {
        let message = self.wait_for(|message| {
            message["method"] == "textDocument/publishDiagnostics"
                && message["params"]["uri"] == uri
                && message["params"].get("version").cloned().unwrap_or_default() == json!(version)
        });
        message["params"]["diagnostics"].as_array().unwrap().clone()
    }

    /// What was published last of each file that something was published of, up to now; nothing of it is kept.
    /// A file that is not open and has no findings is left out.
    pub fn shown(&mut self) -> BTreeMap<String, Value> {
        self.kept.extend(self.messages.try_iter());
        let mut shown = BTreeMap::new();
        for message in std::mem::take(&mut self.kept) {
            let params = &message["params"];
            if message["method"] == "textDocument/publishDiagnostics" {
                shown.insert(params["uri"].as_str().unwrap().to_owned(), params.clone());
            }
        }
        shown.retain(|_, params| params["version"].is_i64() || params["diagnostics"] != json!([]));
        shown
    }

    /// Opens a document.
    pub fn open(&mut self, uri: &str, text: &str) {
        let document = json!({"uri": uri, "languageId": "framing", "version": 1, "text": text});
        self.notify("textDocument/didOpen", &json!({"textDocument": document}));
    }

    /// Changes a document.
    pub fn change(&mut self, uri: &str, version: i32, changes: &Value) {
        let document = json!({"uri": uri, "version": version});
        self.notify("textDocument/didChange", &json!({"textDocument": document, "contentChanges": changes}));
    }

    /// Asks something that every server answers, and gives nothing but the certainty that it did.
    pub fn is_alive(&mut self) {
        let answer = self.ask("storyrod/noSuchMethod", &json!({}));
        assert_eq!(answer["error"]["code"], json!(-32601));
    }

    /// Closes our end of the server's input.
    pub fn hang_up(&mut self) {
        self.input = None;
    }

    /// Waits for the server to end, and gives its exit code. Its input stays open.
    pub fn exit_code(mut self) -> Option<i32> {
        loop {
            match self.messages.recv_timeout(LONG) {
                Ok(_) => {}
                Err(std::sync::mpsc::RecvTimeoutError::Disconnected) => break,
                Err(std::sync::mpsc::RecvTimeoutError::Timeout) => panic!("the server goes on"),
            }
        }
        self.child.wait().unwrap().code()
    }
}

impl Drop for Session {
    fn drop(&mut self) {
        _ = self.child.kill();
        _ = self.child.wait();
    }
}

/// A body with its header.
pub fn framed(body: &[u8]) -> Vec<u8> {
    let mut message = format!("Content-Length: {}\r\n\r\n", body.len()).into_bytes();
    message.extend_from_slice(body);
    message
}

fn read_all(mut output: BufReader<ChildStdout>, messages: &Sender<Value>) {
    loop {
        let mut header = String::new();
        if output.read_line(&mut header).unwrap_or(0) == 0 {
            return;
        }
        let length =
            header.strip_prefix("Content-Length: ").expect("nothing but messages on standard output");
        let mut body = vec![0; length.trim().parse().unwrap()];
        let mut blank = [0; 2];
        output.read_exact(&mut blank).unwrap();
        assert_eq!(&blank, b"\r\n");
        output.read_exact(&mut body).unwrap();
        if messages.send(serde_json::from_slice(&body).unwrap()).is_err() {
            return;
        }
    }
}
