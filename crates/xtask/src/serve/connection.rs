//! One connection: a request is read, answered, and the connection closed, so that none waits behind another.

use std::io::{Read, Write};
use std::path::Path;

use super::static_files::{Answer, answer, words};

/// A longer head of a request is refused, bytes.
const LONGEST_HEAD: usize = 1 << 16;
/// So many header fields are taken in.
const FIELDS: usize = 100;

/// Reads one request and answers it with a file of the folder.
///
/// # Errors
/// The connection broke.
pub(super) fn serve(connection: &mut (impl Read + Write), folder: &Path) -> std::io::Result<()> {
    let mut head = Vec::new();
    let mut part = [0; 4096];
    loop {
        let length = connection.read(&mut part)?;
        // A connection opened in advance and never used.
        if length == 0 {
            return Ok(());
        }
        head.extend(part.iter().take(length));
        let mut fields = [httparse::EMPTY_HEADER; FIELDS];
        let mut request = httparse::Request::new(&mut fields);
        let refused = "400 Bad Request";
        return match request.parse(&head) {
            Ok(httparse::Status::Partial) if head.len() < LONGEST_HEAD => continue,
            Ok(httparse::Status::Complete(_)) => {
                let (method, url) = (request.method.unwrap_or(""), request.path.unwrap_or("/"));
                send(connection, &answer(folder, method, url), method != "HEAD")
            }
            Ok(httparse::Status::Partial) => {
                send(connection, &words(refused, "the request is too long"), true)
            }
            Err(error) => send(connection, &words(refused, &error.to_string()), true),
        };
    }
}

fn send(connection: &mut impl Write, answer: &Answer, with_content: bool) -> std::io::Result<()> {
    write!(
        connection,
        "HTTP/1.1 {}\r\nContent-Type: {}\r\nContent-Length: {}\r\nCache-Control: no-cache\r\n\
         X-Content-Type-Options: nosniff\r\nConnection: close\r\n\r\n",
        answer.status,
        answer.content_type,
        answer.content.len()
    )?;
    if with_content {
        connection.write_all(&answer.content)?;
    }
    connection.flush()
}

#[cfg(test)]
mod tests {
    use std::io::Cursor;
    use std::path::PathBuf;

    use super::*;

    /// A connection on which everything to read is there at once.
    struct Pipe(Cursor<Vec<u8>>, Vec<u8>);

    impl Read for Pipe {
        fn read(&mut self, into: &mut [u8]) -> std::io::Result<usize> {
            self.0.read(into)
        }
    }

    impl Write for Pipe {
        fn write(&mut self, bytes: &[u8]) -> std::io::Result<usize> {
            self.1.write(bytes)
        }

        fn flush(&mut self) -> std::io::Result<()> {
            Ok(())
        }
    }

    #[track_caller]
    fn check(request: &str, begins: &str, holds: &str) {
        let mut pipe = Pipe(Cursor::new(request.as_bytes().to_vec()), Vec::new());
        let folder = PathBuf::from(env!("CARGO_MANIFEST_DIR"));
        serve(&mut pipe, &folder).expect("memory does not break");
        let answer = String::from_utf8(pipe.1).expect("these answers are text");
        assert!(answer.starts_with(begins), "{request:?}: {answer}");
        assert!(answer.contains(holds), "{request:?}: {answer}");
    }

    #[test]
    fn requests_are_answered_and_closed() {
        check(
            "GET /Cargo.toml HTTP/1.1\r\nHost: a\r\n\r\n",
            "HTTP/1.1 200 OK\r\n",
            "dewrun-xtask",
        );
        check(
            "GET /nothing HTTP/1.1\r\n\r\n",
            "HTTP/1.1 404",
            "Connection: close",
        );
        check("G\u{1}T / HTTP/1.1\r\n\r\n", "HTTP/1.1 400", "text/plain");
    }

    #[test]
    fn what_is_never_asked_is_never_answered() {
        let mut pipe = Pipe(Cursor::new(Vec::new()), Vec::new());
        serve(&mut pipe, Path::new(".")).expect("memory does not break");
        assert!(pipe.1.is_empty(), "nobody asked");
    }
}
