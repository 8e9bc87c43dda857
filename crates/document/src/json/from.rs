//! Values from JSON: what belongs in a place, and the sentence where something else stands there.

use dewrun_quantity::decimal::nearest;

use super::node::Member;
use super::{Content, Fault, Node};
use crate::field_path::Here;

/// What can be read from JSON.
pub(crate) trait FromJson: Sized {
    /// Reads what stands at a place.
    fn from_json(node: &Node<'_>, at: &Here<'_>) -> Result<Self, Fault>;

    /// What it is where it is left out; none where it must not be.
    fn missing() -> Option<Self> {
        None
    }

    /// Whether a list of it may be left out where there is none.
    fn left_out_where_none() -> bool {
        false
    }
}

impl FromJson for f64 {
    fn from_json(node: &Node<'_>, at: &Here<'_>) -> Result<Self, Fault> {
        if !matches!(node.content, Content::Number) {
            return Err(Fault::wrong(node, at, "a number"));
        }
        nearest(node.text)
            .filter(|number| number.is_finite())
            .ok_or_else(|| Fault::syntax("number out of range", node.end()))
    }
}

impl FromJson for bool {
    fn from_json(node: &Node<'_>, at: &Here<'_>) -> Result<Self, Fault> {
        match (&node.content, node.text) {
            (Content::Boolean, "true") => Ok(true),
            (Content::Boolean, _) => Ok(false),
            _ => Err(Fault::wrong(node, at, "true or false")),
        }
    }

    fn missing() -> Option<Self> {
        Some(false)
    }
}

impl FromJson for String {
    fn from_json(node: &Node<'_>, at: &Here<'_>) -> Result<Self, Fault> {
        match &node.content {
            Content::Text(text) => Ok(text.clone()),
            _ => Err(Fault::wrong(node, at, "a string")),
        }
    }
}

impl<T: FromJson> FromJson for Vec<T> {
    fn from_json(node: &Node<'_>, at: &Here<'_>) -> Result<Self, Fault> {
        let Content::List(entries) = &node.content else {
            return Err(Fault::wrong(node, at, "a list"));
        };
        let read = |(position, entry)| T::from_json(entry, &at.index(position));
        entries.iter().enumerate().map(read).collect()
    }

    fn missing() -> Option<Self> {
        T::left_out_where_none().then(Vec::new)
    }
}

impl<T: FromJson> FromJson for Option<T> {
    fn from_json(node: &Node<'_>, at: &Here<'_>) -> Result<Self, Fault> {
        match node.content {
            Content::Null => Ok(None),
            _ => T::from_json(node, at).map(Some),
        }
    }

    fn missing() -> Option<Self> {
        Some(None)
    }
}

/// The fields of an object, all of them known and none given twice.
pub(crate) struct Fields<'a> {
    members: &'a [Member<'a>],
    end: usize,
    at: &'a Here<'a>,
}

impl<'a> Fields<'a> {
    pub(crate) fn of(
        node: &'a Node<'a>,
        at: &'a Here<'a>,
        expected: &str,
        names: &[&str],
    ) -> Result<Self, Fault> {
        let Some(members) = node.members() else {
            return Err(Fault::wrong(node, at, expected));
        };
        for (position, member) in members.iter().enumerate() {
            let name = member.name.as_str();
            if !names.contains(&name) {
                let message = format!("unknown field `{name}`, expected {}", one_of(names));
                return Err(Fault::shape(at.path().field(name), message, member.colon));
            }
            let is_doubled = members
                .iter()
                .take(position)
                .any(|other| other.name == name);
            if is_doubled {
                let message = format!("duplicate field `{name}`");
                return Err(Fault::shape(at.path(), message, member.colon));
            }
        }
        Ok(Self {
            members,
            end: node.end(),
            at,
        })
    }

    /// Reads the field of that name.
    pub(crate) fn take<T: FromJson>(&self, name: &'static str) -> Result<T, Fault> {
        match self.members.iter().find(|member| member.name == name) {
            Some(member) => T::from_json(&member.value, &self.at.field(name)),
            None => T::missing().ok_or_else(|| self.lack(name)),
        }
    }

    fn lack(&self, name: &str) -> Fault {
        Fault::shape(self.at.path(), format!("missing field `{name}`"), self.end)
    }
}

/// The word that stands there, one of those known.
pub(crate) fn word<'a>(
    node: &Node<'_>,
    at: &Here<'_>,
    known: &[&'a str],
) -> Result<&'a str, Fault> {
    let Content::Text(word) = &node.content else {
        return Err(Fault::wrong(node, at, &one_of(known)));
    };
    known_word(word, node.end(), at, known)
}

/// The one field of an object that says by its name which of several things stands in it.
pub(crate) fn variant<'a, 'k>(
    node: &'a Node<'a>,
    at: &Here<'_>,
    expected: &str,
    known: &[&'k str],
) -> Result<(&'k str, &'a Node<'a>), Fault> {
    let Some([member, rest @ ..]) = node.members() else {
        return Err(Fault::wrong(node, at, expected));
    };
    let name = known_word(&member.name, member.colon, at, known)?;
    match rest.first() {
        None => Ok((name, &member.value)),
        Some(second) => {
            let message = format!("`{}` beside `{name}`, expected {expected}", second.name);
            Err(Fault::shape(at.path(), message, second.colon))
        }
    }
}

fn known_word<'a>(
    word: &str,
    before: usize,
    at: &Here<'_>,
    known: &[&'a str],
) -> Result<&'a str, Fault> {
    let found = known.iter().find(|own| **own == word);
    found.copied().ok_or_else(|| {
        let message = format!("unknown variant `{word}`, expected {}", one_of(known));
        Fault::shape(at.path(), message, before)
    })
}

/// The names in words.
fn one_of(names: &[&str]) -> String {
    match names {
        [one] => format!("`{one}`"),
        [one, other] => format!("`{one}` or `{other}`"),
        _ => format!("one of `{}`", names.join("`, `")),
    }
}
