//! Everything that goes to the client, in the order it was said.

use std::io::Write;
use std::sync::mpsc::{Receiver, Sender, channel};
use std::thread;
use std::time::Duration;

use serde::Serialize;
use tower_lsp::jsonrpc::Request;
use tower_lsp::lsp_types::notification::Notification;

use crate::server::wire;

/// How long the end of a session waits for a client that does not read.
const LAST_WAIT: Duration = Duration::from_secs(1);

/// A way to the client for any thread. Sending never waits.
#[derive(Clone, Debug)]
pub struct Outbox {
    lines: Sender<Parcel>,
}

enum Parcel {
    Message(Vec<u8>),
    /// Say so when everything before it is written.
    Receipt(Sender<()>),
}

impl Outbox {
    /// Starts the thread that writes to `output`. It ends with the last clone, or when the output is closed.
    ///
    /// # Errors
    /// The system starts no more threads.
    pub fn start(output: impl Write + Send + 'static) -> std::io::Result<Self> {
        let (lines, parcels) = channel();
        thread::Builder::new().name("output".to_owned()).spawn(move || write_all(output, &parcels))?;
        Ok(Self { lines })
    }

    /// Sends a request, a notification or a response. After the output was closed nothing happens.
    pub fn send(&self, message: &impl Serialize) {
        match serde_json::to_vec(message) {
            Ok(body) => _ = self.lines.send(Parcel::Message(wire::framed(&body))),
            Err(fault) => tracing::error!("a message can't be written: {fault}"),
        }
    }

    /// Sends a notification.
    pub fn notify<N: Notification>(&self, params: &N::Params) {
        match serde_json::to_value(params) {
            Ok(params) => self.send(&Request::build(N::METHOD).params(params).finish()),
            Err(fault) => tracing::error!("{} can't be written: {fault}", N::METHOD),
        }
    }

    /// Waits until everything is written, but not for ever.
    pub fn flush(&self) {
        let (receipt, written) = channel();
        if self.lines.send(Parcel::Receipt(receipt)).is_ok() {
            _ = written.recv_timeout(LAST_WAIT);
        }
    }
}

fn write_all(mut output: impl Write, parcels: &Receiver<Parcel>) {
    while let Ok(parcel) = parcels.recv() {
        // Whatever else waits already goes out with it in one flush.
        let mut next = Some(parcel);
        let mut receipts = Vec::new();
        while let Some(parcel) = next {
            match parcel {
                Parcel::Message(bytes) => {
                    if output.write_all(&bytes).is_err() {
                        return;
                    }
                }
                Parcel::Receipt(receipt) => receipts.push(receipt),
            }
            next = parcels.try_recv().ok();
        }
        if output.flush().is_err() {
            return;
        }
        for receipt in receipts {
            _ = receipt.send(());
        }
    }
}
