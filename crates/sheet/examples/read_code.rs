//! Reads the printed codes in a grey picture (PGM, binary, 8 bits) and prints what each says, a line each.
//!
//! `cargo run -p dewrun-sheet --example read_code -- card.pgm`, where `pdftoppm -gray -r 300 card.pdf card` made the picture.

use std::process::ExitCode;
use std::{env, fs};

fn main() -> ExitCode {
    let Some(path) = env::args().nth(1) else {
        eprintln!("name a picture");
        return ExitCode::from(2);
    };
    let read = fs::read(&path).map_err(|error| error.to_string());
    match read.and_then(|bytes| codes(&bytes)) {
        Ok(codes) if !codes.is_empty() => {
            codes.iter().for_each(|code| println!("{code}"));
            ExitCode::SUCCESS
        }
        Ok(_) => {
            eprintln!("{path}: no code in it");
            ExitCode::FAILURE
        }
        Err(error) => {
            eprintln!("{path}: {error}");
            ExitCode::FAILURE
        }
    }
}

/// What the codes of a picture say.
fn codes(bytes: &[u8]) -> Result<Vec<String>, String> {
    let (width, height, grey) = picture(bytes).ok_or("not a grey picture of 8 bits")?;
    let at = |x: usize, y: usize| grey.get(y * width + x).copied().unwrap_or(255);
    let mut prepared = rqrr::PreparedImage::prepare_from_greyscale(width, height, at);
    let found = prepared.detect_grids();
    let texts = found.iter().filter_map(|grid| grid.decode().ok());
    Ok(texts.map(|(_, text)| text).collect())
}

/// Width, height and grey values.
fn picture(bytes: &[u8]) -> Option<(usize, usize, &[u8])> {
    let mut rest = bytes.strip_prefix(b"P5")?;
    let mut number = || {
        let start = rest.iter().position(|sign| !sign.is_ascii_whitespace())?;
        rest = rest.get(start..)?;
        let end = rest.iter().position(|sign| !sign.is_ascii_digit())?;
        let (digits, after) = rest.split_at(end);
        rest = after;
        str::from_utf8(digits).ok()?.parse::<usize>().ok()
    };
    let (width, height, most) = (number()?, number()?, number()?);
    let grey = rest.get(1..)?;
    (most == 255 && width * height <= grey.len()).then_some((width, height, grey))
}
