//! Real sessions with the language server over its standard input and output.
#![allow(
    clippy::unwrap_used,
    clippy::expect_used,
    clippy::panic,
    clippy::indexing_slicing,
    reason = "a test fails by panicking"
)]

mod documents;
mod features;
mod figures;
mod lifecycle;
mod names;
mod session;
mod sheets;
mod text;
mod wire;
