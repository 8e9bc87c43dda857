//! Members as they come in, from as many hands as there are.

use std::collections::BTreeMap;

use dewrun_season::SeasonError;

use crate::member::Member;

/// Members as they come in, in any order.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct Gathered {
    members: BTreeMap<u32, Option<Member>>,
}

impl Gathered {
    /// Takes a member, or that it has no answer.
    pub fn take(&mut self, number: u32, member: Result<Member, SeasonError>) {
        self.members.insert(number, member.ok());
    }

    /// Takes that a member has no answer, from somebody who can't say why.
    pub fn has_none(&mut self, number: u32) {
        self.members.insert(number, None);
    }

    /// Takes all that somebody else has.
    pub fn merge(&mut self, other: Self) {
        self.members.extend(other.members);
    }

    /// Those that have an answer, in the order of their numbers.
    pub fn members(&self) -> impl Iterator<Item = &Member> {
        self.members.values().flatten()
    }

    /// How many have an answer.
    #[must_use]
    pub fn count(&self) -> usize {
        self.members().count()
    }

    /// How many have none: their values leave what the relations hold for.
    #[must_use]
    pub fn unanswered(&self) -> usize {
        self.members.len() - self.count()
    }

    /// Those of the lower half of the numbers taken so far: by themselves as even as half of all can be.
    pub(crate) fn is_of_first_half(&self) -> Vec<bool> {
        let half = self.members.len() / 2;
        let numbered = self.members.values().enumerate();
        let answered = numbered.filter_map(|(at, member)| member.as_ref().map(|_| at < half));
        answered.collect()
    }
}
