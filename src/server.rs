//! The language server: the only module that knows the protocol.
//!
//! `wire` and `message` read what a client sends, `transport` brings it to the handlers, `outbox` takes everything back.

mod message;
mod outbox;
mod transport;
mod wire;

use std::fmt;
use std::io::Write;

/// Says something to whoever reads the server's log. Standard output belongs to the protocol.
fn log(what: fmt::Arguments) {
    // A closed log is no reason to stop.
    _ = writeln!(std::io::stderr(), "storyrod: {what}");
}
