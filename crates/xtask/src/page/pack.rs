//! Packs the page's module so that it travels smaller: what is alike in its functions stands together.
//!
//! Compressors look at the few bytes before the next one. In a module an instruction's number, the variable it takes, the place in memory it reads
//! and the function it calls follow each other and have little to do with each other.
//! Here each kind has a stream of its own, and one stream says in which order they are taken; `www/unpack.js` puts them together again, byte for byte.
//! The order is a file of its own: a compressor that has learned the parts does worse at it, and the other way round.
//! Both files are modules in form (one custom section), so that a server knows their type and sends them compressed.
//!
//! # Source
//! WebAssembly Core Specification 2.0 (W3C, 2022), chapter 5: binary format.
//! Streams by kind: J. Ernst, W. Evans, C. Fraser, S. Lucco, T. Proebsting, Code compression, PLDI 1997, <https://doi.org/10.1145/258915.258947> (from memory).

use std::collections::BTreeMap;

use anyhow::{Context, Result, ensure};
use wasmparser::{FunctionBody, Parser, Payload};

use super::module::{Bytes, CUSTOM, HEAD, push_number, push_part};

/// The name of the section that holds the packed module.
const SECTION: &[u8] = b"packed";
/// The symbol of the instruction with which a function ends.
const END: (&[u8], [Part; 0]) = (&[0x0b], []);
/// More kinds of instruction than fit into a byte are not packed.
const MOST_SYMBOLS: usize = 256;

/// What of an instruction goes into which stream, and how long it is.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
struct Part {
    stream: Stream,
    form: Form,
}

/// A stream by the first byte of its instructions, or that of the first among those that share one, and a number within.
type Stream = (u8, usize);

/// How `unpack.js` knows where a part ends.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
enum Form {
    /// A number in groups of seven bits.
    Number,
    /// So many bytes.
    Fixed(usize),
    /// A number, and one more than so many numbers.
    Counted,
    /// A variable of the function, by how many others were used since.
    Variable,
}

/// An instruction: what stands in its symbol, and its parts with their bytes.
struct Instruction<'a> {
    literal: &'a [u8],
    parts: Vec<(Part, &'a [u8])>,
}

/// A kind of instruction: its literal bytes and where its parts are.
type Symbol<'a> = (&'a [u8], Vec<Part>);

/// The functions of a module in their streams.
#[derive(Default)]
struct Packed<'a> {
    symbols: BTreeMap<Symbol<'a>, usize>,
    /// The symbols of all instructions in order; the end of a function is none.
    order: Vec<Option<Symbol<'a>>>,
    locals: Vec<u8>,
    parts: BTreeMap<Stream, Vec<u8>>,
    functions: usize,
}

/// The two files of a packed module.
pub(super) struct Files {
    /// All but the order.
    pub(super) parts: Vec<u8>,
    /// In which order instructions follow each other.
    pub(super) order: Vec<u8>,
}

/// The module packed.
///
/// # Errors
/// The bytes are no module, or it has more kinds of instruction than a byte can number.
pub(super) fn pack(module: &[u8]) -> Result<Files> {
    let mut packed = Packed::default();
    let (mut start, mut end) = (None, 0);
    for payload in Parser::new(0).parse_all(module) {
        if let Payload::CodeSectionEntry(body) = payload? {
            let range = body.range();
            // The length of a function stands before it and is not kept: it follows from what it holds.
            start.get_or_insert(range.start - length_of_number(range.len()));
            end = range.end;
            packed.take(module, &body)?;
        }
    }
    let start = start.context("the module has no function")?;
    packed.written(module, start, end)
}

impl<'a> Packed<'a> {
    fn take(&mut self, module: &'a [u8], body: &FunctionBody<'_>) -> Result<()> {
        self.functions += 1;
        let operators = body.get_operators_reader()?;
        let range = body.range();
        let code = operators.original_position();
        self.locals.extend(&module[range.start..code]);
        let mut starts: Vec<usize> = operators
            .into_iter_with_offsets()
            .map(|operator| Ok(operator?.1))
            .collect::<Result<_>>()?;
        starts.push(range.end);
        let mut recent = Recent::default();
        // The last instruction is the function's end.
        for pair in starts.windows(2).take(starts.len().saturating_sub(2)) {
            let instruction = split(&module[pair[0]..pair[1]])?;
            let kinds = instruction.parts.iter().map(|(part, _)| *part).collect();
            let symbol = (instruction.literal, kinds);
            self.symbols.insert(symbol.clone(), 0);
            self.order.push(Some(symbol));
            for (part, bytes) in instruction.parts {
                let stream = self.parts.entry(part.stream).or_default();
                if part.form == Form::Variable {
                    push_number(stream, recent.since(Bytes::of(bytes).number()?));
                } else {
                    stream.extend(bytes);
                }
            }
        }
        self.order.push(None);
        Ok(())
    }

    /// The files: of the parts lengths first, then every stream.
    fn written(mut self, module: &[u8], start: usize, end: usize) -> Result<Files> {
        ensure!(
            self.symbols.len() < MOST_SYMBOLS,
            "the module has {} kinds of instruction, at most {} can be packed",
            self.symbols.len(),
            MOST_SYMBOLS - 1
        );
        for (at, number) in self.symbols.values_mut().enumerate() {
            *number = at + 1;
        }
        let order: Vec<u8> = self.order.iter().map(|one| self.number(one)).collect();
        let symbols = self.symbols_written();
        let mut streams: Vec<&[u8]> =
            vec![&module[..start], &module[end..], &symbols, &self.locals];
        streams.extend(self.parts.values().map(Vec::as_slice));
        let mut content = Vec::new();
        push_number(&mut content, module.len());
        push_number(&mut content, self.functions);
        push_number(&mut content, streams.len());
        for stream in &streams {
            push_number(&mut content, stream.len());
        }
        content.extend(streams.concat());
        Ok(Files {
            parts: in_form(&content),
            order: in_form(&order),
        })
    }

    fn number(&self, symbol: &Option<Symbol<'a>>) -> u8 {
        let number = symbol.as_ref().and_then(|symbol| self.symbols.get(symbol));
        number.map_or(0, |number| u8::try_from(*number).unwrap_or(0))
    }

    /// Every symbol: its literal bytes, then stream and form of each part.
    fn symbols_written(&self) -> Vec<u8> {
        let end = (END.0, END.1.to_vec());
        let mut bytes = Vec::new();
        push_number(&mut bytes, self.symbols.len() + 1);
        for (literal, parts) in std::iter::once(&end).chain(self.symbols.keys()) {
            push_part(&mut bytes, literal);
            push_number(&mut bytes, parts.len());
            for part in parts {
                let place = self.parts.keys().position(|stream| *stream == part.stream);
                push_number(&mut bytes, FIRST_OF_PARTS + place.unwrap_or(0));
                push_number(&mut bytes, part.form.number());
            }
        }
        bytes
    }
}

/// The streams before those of the parts: what stands before and after the functions, symbols, local variables.
const FIRST_OF_PARTS: usize = 4;

/// A module of nothing but a section that holds the content.
fn in_form(content: &[u8]) -> Vec<u8> {
    let mut section = Vec::new();
    push_part(&mut section, SECTION);
    section.extend(content);
    let mut file = HEAD.to_vec();
    file.push(CUSTOM);
    push_part(&mut file, &section);
    file
}

impl Form {
    const fn number(self) -> usize {
        match self {
            Self::Number => 0,
            Self::Fixed(length) => length,
            Self::Counted => 255,
            Self::Variable => 254,
        }
    }
}

/// The variables of a function, the one used last first.
///
/// # Source
/// J. Bentley, D. Sleator, R. Tarjan, V. Wei, A locally adaptive data compression scheme, Communications of the ACM 29 (1986), 320-330, <https://doi.org/10.1145/5684.5688>.
#[derive(Default)]
struct Recent(Vec<usize>);

impl Recent {
    /// How many others were used since that variable was; those never used follow in their order.
    fn since(&mut self, variable: usize) -> usize {
        self.0.extend(self.0.len()..=variable);
        let at = self.0.iter().position(|one| *one == variable).unwrap_or(0);
        self.0.remove(at);
        self.0.insert(0, variable);
        at
    }
}

/// Takes an instruction apart.
fn split(bytes: &[u8]) -> Result<Instruction<'_>> {
    let first = *bytes.first().context("an instruction has a first byte")?;
    let fixed = |at: usize| {
        let part = Part {
            stream: (first, 0),
            form: Form::Fixed(bytes.len() - at),
        };
        (at, vec![(part, &bytes[at..])])
    };
    let (literal, parts) = match first {
        // A choice of one of two values, with the type of both.
        0x1c => (bytes.len(), Vec::new()),
        0x43 | 0x44 => fixed(1),
        0x0e => {
            let part = Part {
                stream: (first, 0),
                form: Form::Counted,
            };
            (1, vec![(part, &bytes[1..])])
        }
        // The alignment of memory belongs to what is read.
        0x28..=0x3e => {
            let literal = 1 + number_length(&bytes[1..]);
            (literal, numbers(bytes, literal, 0x28))
        }
        0xfc | 0xfd => {
            let literal = 1 + number_length(&bytes[1..]);
            match bytes.len() - literal {
                16 => fixed(literal),
                _ => (literal, numbers(bytes, literal, first)),
            }
        }
        // Small numbers and places in memory have nothing in common.
        0x41 => {
            let part = Part {
                stream: (first, bytes.len()),
                form: Form::Number,
            };
            (1, vec![(part, &bytes[1..])])
        }
        // A variable is read soon after it was used, and written to after longer.
        0x20..=0x22 => {
            let part = Part {
                stream: (first.min(0x21), 0),
                form: Form::Variable,
            };
            (1, vec![(part, &bytes[1..])])
        }
        _ => (1, numbers(bytes, 1, shared(first))),
    };
    Ok(Instruction {
        literal: &bytes[..literal],
        parts,
    })
}

/// The first of the instructions that share a stream: blocks, branches, variables of the module.
const fn shared(first: u8) -> u8 {
    match first {
        0x02..=0x04 => 0x02,
        0x0c | 0x0d => 0x0c,
        0x23 | 0x24 => 0x23,
        other => other,
    }
}

/// The numbers from there to the end of an instruction.
fn numbers(bytes: &[u8], from: usize, stream: u8) -> Vec<(Part, &[u8])> {
    let part = Part {
        stream: (stream, 0),
        form: Form::Number,
    };
    let mut found = Vec::new();
    let mut rest = &bytes[from..];
    while !rest.is_empty() {
        let (number, after) = rest.split_at(number_length(rest));
        found.push((part, number));
        rest = after;
    }
    found
}

/// How many of the bytes the number at their beginning takes.
fn number_length(bytes: &[u8]) -> usize {
    let more = bytes.iter().take_while(|byte| 0x7f < **byte).count();
    (more + 1).min(bytes.len())
}

fn length_of_number(number: usize) -> usize {
    let mut bytes = Vec::new();
    push_number(&mut bytes, number);
    bytes.len()
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Two functions of one type: `local.get 0, i32.load align=4 offset=300, i32.const -1, i32.add` and one that is empty.
    fn module() -> Vec<u8> {
        let mut bytes = HEAD.to_vec();
        let mut add = |id: u8, content: &[u8]| {
            bytes.push(id);
            push_part(&mut bytes, content);
        };
        add(1, &[1, 0x60, 1, 0x7f, 1, 0x7f]);
        add(3, &[2, 0, 0]);
        add(5, &[1, 0, 1]);
        add(
            10,
            &[
                2, 13, 1, 2, 0x7f, 0x20, 0, 0x28, 2, 0xac, 2, 0x41, 0x7f, 0x6a, 0x0b, 4, 0, 0x20,
                0, 0x0b,
            ],
        );
        bytes
    }

    fn parts(bytes: &[u8]) -> (Vec<u8>, Vec<Vec<u8>>) {
        let taken = split(bytes).expect("it is an instruction");
        let parts = taken.parts.iter().map(|(_, part)| part.to_vec()).collect();
        (taken.literal.to_vec(), parts)
    }

    #[test]
    fn an_instruction_is_taken_apart_without_loss() {
        for bytes in [
            &[0x20, 0x81, 1][..],
            &[0x28, 2, 0xac, 2],
            &[0x41, 0xff, 0],
            &[0x44, 1, 2, 3, 4, 5, 6, 7, 8],
            &[0x0e, 1, 0, 1],
            &[0x1c, 1, 0x7f],
            &[0xfc, 10, 0, 0],
            &[
                0xfd, 12, 1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12, 13, 14, 15, 16,
            ],
            &[0x6a],
        ] {
            let (mut joined, parts) = parts(bytes);
            joined.extend(parts.concat());
            assert_eq!(joined, bytes, "literal and parts in order");
        }
    }

    #[test]
    fn what_is_alike_shares_a_stream() {
        let stream = |bytes: &[u8]| {
            let taken = split(bytes).expect("it is an instruction");
            taken.parts.first().map(|(part, _)| part.stream)
        };
        assert_eq!(stream(&[0x21, 1]), stream(&[0x22, 1]), "variables written");
        assert_eq!(
            stream(&[0x28, 2, 4]),
            stream(&[0x36, 0, 4]),
            "places in memory"
        );
        assert_ne!(
            stream(&[0x41, 1]),
            stream(&[0x41, 0x80, 1]),
            "numbers of another size"
        );
    }

    #[test]
    fn a_variable_is_counted_from_its_last_use() {
        let mut recent = Recent::default();
        let since: Vec<usize> = [2, 2, 0, 2, 5, 1].map(|one| recent.since(one)).to_vec();
        assert_eq!(since, [2, 0, 1, 1, 5, 3], "0 is the one used last");
    }

    #[test]
    fn a_packed_module_is_a_module_in_form() {
        let files = pack(&module()).expect("it is a module");
        for file in [files.parts, files.order] {
            assert!(file.starts_with(HEAD), "a server knows what it is");
            let held = Parser::new(0).parse_all(&file).any(|payload| {
                matches!(payload, Ok(Payload::CustomSection(section)) if section.name() == "packed")
            });
            assert!(held, "one section holds it all");
        }
    }

    #[test]
    fn no_module_is_refused() {
        assert!(pack(b"\0asm\x01\0\0\0").is_err(), "nothing to pack");
        assert!(pack(&module()[..40]).is_err(), "cut short");
    }
}
