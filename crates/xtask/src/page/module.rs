//! A WebAssembly module taken apart into its sections and put together again.
//!
//! # Source
//! WebAssembly Core Specification 2.0 (W3C, 2022), chapter 5: binary format.

use std::collections::HashMap;

use anyhow::{Context, Result, bail, ensure};

/// Numbers of sections.
pub(super) const CUSTOM: u8 = 0;
pub(super) const IMPORT: u8 = 2;
pub(super) const EXPORT: u8 = 7;
pub(super) const CODE: u8 = 10;

pub(super) const HEAD: &[u8] = b"\0asm\x01\0\0\0";

/// The sections of a module in their order.
pub(super) struct Module {
    sections: Vec<(u8, Vec<u8>)>,
}

impl Module {
    pub(super) fn parse(bytes: &[u8]) -> Result<Self> {
        let body = bytes.strip_prefix(HEAD).context("not a module")?;
        let mut rest = Bytes(body);
        let mut sections = Vec::new();
        while let Some((id, after)) = rest.0.split_first() {
            rest.0 = after;
            let length = rest.number()?;
            sections.push((*id, rest.take(length)?.to_vec()));
        }
        Ok(Self { sections })
    }

    pub(super) fn to_bytes(&self) -> Vec<u8> {
        let mut bytes = HEAD.to_vec();
        for (id, content) in &self.sections {
            bytes.push(*id);
            push_part(&mut bytes, content);
        }
        bytes
    }

    /// Rewrites the entries of a section that is a list; a module without such a section stays as it is.
    ///
    /// `change` reads one entry and gives what stands in its place, or none to leave it out.
    pub(super) fn rewrite(
        &mut self,
        id: u8,
        mut change: impl FnMut(&mut Bytes<'_>) -> Result<Option<Vec<u8>>>,
    ) -> Result<()> {
        for (_, content) in self.sections.iter_mut().filter(|(own, _)| *own == id) {
            let mut rest = Bytes(content);
            let (mut kept, mut entries) = (0, Vec::new());
            for _ in 0..rest.number()? {
                if let Some(entry) = change(&mut rest)? {
                    kept += 1;
                    entries.extend(entry);
                }
            }
            let mut rewritten = Vec::new();
            push_number(&mut rewritten, kept);
            rewritten.extend(entries);
            *content = rewritten;
        }
        Ok(())
    }

    /// Leaves out what browsers do not read: names, producers, features.
    pub(super) fn drop_custom(&mut self) {
        self.sections.retain(|(id, _)| *id != CUSTOM);
    }

    /// The names of its functions by their numbers, where it has them.
    pub(super) fn names(&self) -> Result<HashMap<usize, String>> {
        let mut names = HashMap::new();
        for (_, content) in self.sections.iter().filter(|(id, _)| *id == CUSTOM) {
            let mut rest = Bytes(content);
            if rest.text()? != "name" {
                continue;
            }
            while let Some((kind, after)) = rest.0.split_first() {
                rest.0 = after;
                let length = rest.number()?;
                let mut part = Bytes(rest.take(length)?);
                // The part of the functions; others name locals, globals, data.
                if *kind != 1 {
                    continue;
                }
                for _ in 0..part.number()? {
                    let number = part.number()?;
                    names.insert(number, part.text()?.to_owned());
                }
            }
        }
        Ok(names)
    }

    /// How many functions are imported; the own ones are numbered after them.
    pub(super) fn imported_functions(&mut self) -> Result<usize> {
        let mut count = 0;
        self.rewrite(IMPORT, |rest| {
            let import = Import::read(rest)?;
            count += usize::from(import.what.first() == Some(&0));
            Ok(Some(import.written()))
        })?;
        Ok(count)
    }
}

/// One import.
pub(super) struct Import {
    pub(super) module: String,
    pub(super) name: String,
    /// Its kind and type, as they stand.
    pub(super) what: Vec<u8>,
}

impl Import {
    pub(super) fn read(rest: &mut Bytes<'_>) -> Result<Self> {
        let (module, name) = (rest.text()?.to_owned(), rest.text()?.to_owned());
        let before = rest.0;
        match rest.byte()? {
            0 => {
                rest.number()?;
            }
            1 => {
                rest.byte()?;
                rest.limits()?;
            }
            2 => rest.limits()?,
            3 => {
                rest.take(2)?;
            }
            kind => bail!("an import of kind {kind} is not known"),
        }
        let length = before.len() - rest.0.len();
        Ok(Self {
            module,
            name,
            what: before[..length].to_vec(),
        })
    }

    pub(super) fn written(&self) -> Vec<u8> {
        let mut bytes = Vec::new();
        push_part(&mut bytes, self.module.as_bytes());
        push_part(&mut bytes, self.name.as_bytes());
        bytes.extend(&self.what);
        bytes
    }
}

/// Bytes that are still to be read.
pub(super) struct Bytes<'a>(&'a [u8]);

impl<'a> Bytes<'a> {
    pub(super) const fn of(bytes: &'a [u8]) -> Self {
        Self(bytes)
    }

    pub(super) fn byte(&mut self) -> Result<u8> {
        Ok(self.take(1)?[0])
    }

    pub(super) fn take(&mut self, length: usize) -> Result<&'a [u8]> {
        ensure!(length <= self.0.len(), "the module ends within a section");
        let (taken, rest) = self.0.split_at(length);
        self.0 = rest;
        Ok(taken)
    }

    /// A number in groups of seven bits, the lowest first.
    pub(super) fn number(&mut self) -> Result<usize> {
        let mut number = 0;
        for shift in (0..35).step_by(7) {
            let byte = self.byte()?;
            number |= usize::from(byte & 0x7f) << shift;
            if byte < 0x80 {
                return Ok(number);
            }
        }
        bail!("a number of the module is too long")
    }

    pub(super) fn text(&mut self) -> Result<&'a str> {
        let length = self.number()?;
        Ok(std::str::from_utf8(self.take(length)?)?)
    }

    fn limits(&mut self) -> Result<()> {
        let has_most = self.byte()? & 1 == 1;
        self.number()?;
        if has_most {
            self.number()?;
        }
        Ok(())
    }
}

pub(super) fn push_number(bytes: &mut Vec<u8>, number: usize) {
    let mut rest = number;
    loop {
        let low = u8::try_from(rest & 0x7f).unwrap_or(0);
        rest >>= 7;
        if rest == 0 {
            bytes.push(low);
            return;
        }
        bytes.push(low | 0x80);
    }
}

/// Bytes with their length before them.
pub(super) fn push_part(bytes: &mut Vec<u8>, part: &[u8]) {
    push_number(bytes, part.len());
    bytes.extend(part);
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn numbers_come_back() {
        for number in [0, 1, 127, 128, 300, 16_383, 16_384, 4_000_000_000] {
            let mut bytes = Vec::new();
            push_number(&mut bytes, number);
            let back = Bytes(&bytes).number().ok();
            assert_eq!(back, Some(number), "{bytes:?}");
        }
    }

    #[test]
    fn what_is_no_module_is_refused() {
        assert!(
            Module::parse(b"\0asm\x02\0\0\0").is_err(),
            "another version"
        );
        assert!(
            Module::parse(b"\0asm\x01\0\0\0\x01\x05a").is_err(),
            "cut short"
        );
    }
}
