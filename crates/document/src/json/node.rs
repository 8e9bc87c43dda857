//! A JSON value with its place in the text.

use crate::limits;

/// A JSON value with its place in the text.
pub(crate) struct Node<'a> {
    /// Bytes before it.
    pub(crate) start: usize,
    /// Its own text.
    pub(crate) text: &'a str,
    /// What it holds.
    pub(crate) content: Content<'a>,
}

/// What a JSON value holds; numbers are read from their text when they are wanted.
pub(crate) enum Content<'a> {
    Null,
    Boolean,
    Number,
    Text(String),
    List(Vec<Node<'a>>),
    Object(Vec<Member<'a>>),
}

/// A field of an object.
pub(crate) struct Member<'a> {
    pub(crate) name: String,
    /// Bytes before its colon.
    pub(crate) colon: usize,
    pub(crate) value: Node<'a>,
}

impl Node<'_> {
    /// Bytes before what follows it.
    pub(crate) const fn end(&self) -> usize {
        self.start + self.text.len()
    }

    /// The fields of an object; none where it is something else.
    pub(crate) fn members(&self) -> Option<&[Member<'_>]> {
        match &self.content {
            Content::Object(members) => Some(members),
            _ => None,
        }
    }

    /// Its kind, and what it is where that can be said.
    pub(crate) fn described(&self) -> String {
        match &self.content {
            Content::Null => "null".to_owned(),
            Content::Boolean => format!("boolean `{}`", self.text),
            Content::Number => format!("the number `{}`", self.shortened()),
            Content::Text(text) => format!("string \"{}\"", cut(text)),
            Content::List(_) => "sequence".to_owned(),
            Content::Object(_) => "map".to_owned(),
        }
    }

    /// As it is written, cut where it is long.
    pub(crate) fn shortened(&self) -> String {
        cut(self.text)
    }
}

fn cut(text: &str) -> String {
    match text.char_indices().nth(limits::ID) {
        Some((end, _)) => format!("{}..", text.get(..end).unwrap_or("")),
        None => text.to_owned(),
    }
}
