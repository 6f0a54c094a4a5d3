//! Messages on the wire: a header block with the body's length, then the body.

use std::io::{self, BufRead, Read};

/// The largest body we read. A longer one is refused before a byte of it is stored.
pub const MOST_BYTES: u64 = 64 << 20;

/// The longest header line we keep.
const MOST_HEADER_BYTES: u64 = 8 << 10;

/// The header that counts, as the resynchronising reader looks for it.
const LENGTH_HEADER: &[u8] = b"content-length:";

/// What stood on the wire.
#[derive(Debug, PartialEq, Eq)]
pub enum Received {
    /// A whole body.
    Body(Vec<u8>),
    /// Something that is no message: what is wrong with it. The next call looks for the next header.
    Unreadable(String),
    /// The input ended, between messages or inside one.
    End,
}

/// Reads messages and finds the next one again after rubbish.
pub struct Reader<R> {
    input: R,
    is_lost: bool,
}

impl<R: BufRead> Reader<R> {
    /// A reader at the start of a stream.
    pub const fn new(input: R) -> Self {
        Self { input, is_lost: false }
    }

    /// The next message. A read error counts as the end of the input.
    pub fn receive(&mut self) -> Received {
        self.try_receive().unwrap_or(Received::End)
    }

    fn try_receive(&mut self) -> io::Result<Received> {
        let mut length = None;
        if self.is_lost {
            if !self.skip_to_length()? {
                return Ok(Received::End);
            }
            self.is_lost = false;
            let Some(line) = self.header_line()? else { return Ok(Received::End) };
            length = Some(line);
        }
        loop {
            let Some(line) = self.header_line()? else { return Ok(Received::End) };
            if !line.ends_with('\n') {
                return Ok(self.lose("a header line is too long".to_owned()));
            }
            let line = line.trim_end_matches(['\r', '\n']);
            if line.is_empty() {
                break;
            }
            match line.split_once(':') {
                Some((name, value)) if name.eq_ignore_ascii_case("content-length") => {
                    length = Some(value.to_owned());
                }
                Some(_) => {}
                None => return Ok(self.lose(format!("`{line:.40}` is no header"))),
            }
        }
        let Some(length) = length else {
            return Ok(self.lose("a header block without Content-Length".to_owned()));
        };
        match length.trim().parse::<u64>() {
            Ok(length) if length <= MOST_BYTES => self.body(length),
            Ok(length) => Ok(self.lose(format!("Content-Length {length} is above {MOST_BYTES}"))),
            Err(_) => Ok(self.lose(format!("Content-Length `{:.40}` is no count of bytes", length.trim()))),
        }
    }

    fn body(&mut self, length: u64) -> io::Result<Received> {
        let mut body = Vec::new();
        self.input.by_ref().take(length).read_to_end(&mut body)?;
        let is_whole = u64::try_from(body.len()) == Ok(length);
        Ok(if is_whole { Received::Body(body) } else { Received::End })
    }

    fn lose(&mut self, why: String) -> Received {
        self.is_lost = true;
        Received::Unreadable(why)
    }

    /// A header line with its end; without one when it is too long; `None` when the input ends before it does.
    fn header_line(&mut self) -> io::Result<Option<String>> {
        let mut line = Vec::new();
        let n_read = self.input.by_ref().take(MOST_HEADER_BYTES).read_until(b'\n', &mut line)?;
        let is_cut = !line.ends_with(b"\n") && u64::try_from(n_read).is_ok_and(|n| n < MOST_HEADER_BYTES);
        Ok((!is_cut).then(|| String::from_utf8_lossy(&line).into_owned()))
    }

    /// Drops bytes up to and with the next `Content-Length:`, wherever in a line it stands: an unread body has no line
    /// end, so the next header follows it on the same line. False at the end of the input.
    fn skip_to_length(&mut self) -> io::Result<bool> {
        let mut n_matched = 0;
        for byte in self.input.by_ref().bytes() {
            let byte = byte?.to_ascii_lowercase();
            // The header's first letter stands nowhere else in it, so a mismatch begins again at the start.
            n_matched = if LENGTH_HEADER.get(n_matched) == Some(&byte) {
                n_matched + 1
            } else {
                usize::from(LENGTH_HEADER.first() == Some(&byte))
            };
            if n_matched == LENGTH_HEADER.len() {
                return Ok(true);
            }
        }
        Ok(false)
    }
}

/// A body with its header.
pub fn framed(body: &[u8]) -> Vec<u8> {
    let mut message = format!("Content-Length: {}\r\n\r\n", body.len()).into_bytes();
    message.extend_from_slice(body);
    message
}

#[cfg(test)]
mod tests {
    use super::*;

    fn all(input: &[u8]) -> Vec<Received> {
        let mut reader = Reader::new(input);
        let mut all = Vec::new();
        loop {
            match reader.receive() {
                Received::End => return all,
                received => all.push(received),
            }
        }
    }

    fn body(text: &str) -> Received {
        Received::Body(text.as_bytes().to_vec())
    }

    #[test]
    fn a_message_comes_back_as_it_was_sent() {
        let mut wire = framed("{\"a\":\"é\"}".as_bytes());
        wire.extend(framed(b""));
        assert_eq!(all(&wire), [body("{\"a\":\"é\"}"), body("")]);
    }

    #[test]
    fn other_headers_and_bare_line_feeds_are_fine() {
        let wire = b"Content-Type: x; charset=utf-8\r\ncontent-length:2\r\n\r\n{}Content-Length: 1\n\n7";
        assert_eq!(all(wire), [body("{}"), body("7")]);
    }

    #[test]
    fn the_next_message_is_found_after_each_kind_of_rubbish() {
        let noise: Vec<u8> = (0..=255).collect();
        let endless = "X-A: ".to_owned() + &"a".repeat(2_000_000);
        for rubbish in [
            b"Content-Length: abc\r\n\r\n{}".as_slice(),
            b"Content-Length: -5\r\n\r\n{}",
            b"Content-Length: 99999999999\r\n\r\n{}",
            b"Content-Length: 999999999999999999999999999999\r\n\r\n{}",
            b"X-Foo: 1\r\n\r\n{}",
            b"hello world\r\n\r\n",
            &noise,
            endless.as_bytes(),
        ] {
            let mut wire = rubbish.to_vec();
            wire.extend(framed(b"[1]"));
            let received = all(&wire);
            let (last, before) = received.split_last().unwrap();
            assert_eq!(last, &body("[1]"));
            assert!(!before.is_empty() && before.iter().all(|one| matches!(one, Received::Unreadable(_))));
        }
    }

    #[test]
    fn an_input_cut_short_just_ends() {
        for cut in [b"Content-Le".as_slice(), b"Content-Length: 500\r\n\r\n{\"jsonrpc\"", b""] {
            let received = all(cut);
            assert!(received.iter().all(|one| matches!(one, Received::Unreadable(_))), "{received:?}");
        }
    }

    #[test]
    fn the_largest_body_is_a_bound_and_not_an_allocation() {
        let wire = format!("Content-Length: {MOST_BYTES}\r\n\r\nshort");
        assert_eq!(all(wire.as_bytes()), []);
    }
}
