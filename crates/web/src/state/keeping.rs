//! Keeping what is on the desk between visits: each change at once, and a moment later for good with all that can be undone.

mod set_aside;

use core::mem::take;
use core::time::Duration;

use dewrun_desk::{QUICK, Stage, Store, Unkept, read_record, record_text};
use leptos::prelude::*;
use leptos::task::spawn_local;

use super::Desk;
use crate::hooks::clock::{new_key, now};
use crate::hooks::kept::{Put, Wanted, all_for_good, put_at_once, put_for_good};
pub(crate) use set_aside::{Found, SetAside};

/// What the name of a kept project begins with; its key follows.
const PROJECT: &str = "dewrun:";
/// A name that nothing is kept under.
const PROBE: &str = "dewrun";
/// How long a change waits until it is kept for good.
const WAIT: Duration = Duration::from_millis(400);

const NOTHING: &str = "This browser keeps nothing: save the file before you leave.";
const TWO_WINDOWS: &str = "This project was changed in another window too. Both are kept: what stands here goes on under a name of its own.";

/// What keeps the desk; a handful of handles and free to copy.
#[derive(Clone, Copy)]
pub(crate) struct Keeping {
    desk: Desk,
    known: StoredValue<Known>,
    told: RwSignal<Told>,
}

/// What this window knows of what is kept.
struct Known {
    /// The number of this window.
    window: String,
    /// By their keys, when the projects were changed.
    seen: Vec<(u64, u64)>,
    /// Keys of what is not kept for good yet.
    pending: Vec<u64>,
    /// What is kept for good has been read.
    is_open: bool,
}

/// What there is to say of what is kept.
#[derive(Clone)]
pub(crate) struct Told {
    /// What can't be used of it.
    pub(crate) set_aside: Vec<SetAside>,
    /// Why the open project is not kept.
    unkept: Option<String>,
    /// Another window has the same project.
    is_parted: bool,
    /// The browser keeps nothing at once.
    is_slow: bool,
    /// The browser keeps nothing for good.
    is_closed: bool,
}

impl Told {
    /// In sentences.
    pub(crate) fn sentences(&self) -> Vec<String> {
        let nothing = (self.is_slow && self.is_closed).then(|| NOTHING.to_owned());
        let two = self.is_parted.then(|| TWO_WINDOWS.to_owned());
        let unkept = self.unkept.as_ref().map(|why| {
            format!(
                "This project is not kept by the browser. {why} Save the file before you leave."
            )
        });
        [nothing, unkept, two].into_iter().flatten().collect()
    }
}

/// What keeps the desk of the page.
///
/// # Panics
/// Outside a page that was given one.
pub(crate) fn use_keeping() -> Keeping {
    expect_context()
}

impl Keeping {
    /// Begins to keep a desk that was begun on what was asked for, of what was found.
    pub(crate) fn begin(
        desk: Desk,
        asked: Option<Stage>,
        seen: Vec<(u64, u64)>,
        set_aside: Vec<SetAside>,
    ) -> Self {
        let probe = |text| {
            put_at_once(&Wanted {
                name: PROBE,
                text,
                window: "",
                seen: 0,
            })
        };
        let is_slow = !matches!(probe(Some("")), Put::Kept);
        probe(None);
        let keeping = Self {
            desk,
            known: StoredValue::new(Known {
                window: new_key().to_string(),
                seen,
                pending: Vec::new(),
                is_open: false,
            }),
            told: RwSignal::new(Told {
                set_aside,
                unkept: None,
                is_parted: false,
                is_slow,
                is_closed: false,
            }),
        };
        Effect::new(move |_| {
            desk.with_store(|_| ());
            keeping.keep_at_once();
        });
        spawn_local(keeping.open(asked));
        keeping
    }

    /// What there is to say of what is kept.
    pub(crate) fn told(self) -> Told {
        self.told.get()
    }

    /// Forgets what can't be used.
    pub(crate) fn forget(self, gone: String) {
        self.told
            .update(|told| told.set_aside.retain(|one| one.name != gone));
        spawn_local(async move {
            let wanted = Wanted {
                name: &gone,
                text: None,
                window: "",
                seen: u64::MAX,
            };
            // What can't be forgotten is told again at the next visit.
            put_at_once(&wanted);
            put_for_good(&wanted).await;
        });
    }

    /// Takes in what is kept for good.
    async fn open(self, asked: Option<Stage>) {
        let Some(named) = all_for_good().await else {
            self.told.update(|told| told.is_closed = true);
            return;
        };
        let found = Found::of(named);
        for (old, new, text) in &found.moves {
            for (name, text) in [(new, Some(text.as_str())), (old, None)] {
                put_for_good(&Wanted {
                    name,
                    text,
                    window: "",
                    seen: u64::MAX,
                })
                .await;
            }
        }
        if !found.set_aside.is_empty() {
            self.told
                .update(|told| told.set_aside.extend(found.set_aside));
        }
        self.known.update_value(|known| {
            known.is_open = true;
            for record in &found.records {
                known.see(record.kept.key, record.kept.changed);
            }
        });
        if !found.records.is_empty() {
            self.desk
                .update_store(|store| store.come_in(asked, found.records));
        }
        self.keep_for_good().await;
    }

    /// Keeps all that changed, so that even a crash costs nothing of it.
    fn keep_at_once(self) {
        let touched = self.desk.update_store_untracked(Store::take_touched);
        if touched.is_empty() {
            return;
        }
        let time = now();
        for key in touched {
            self.keep_one_at_once(key, time);
            self.known.update_value(|known| {
                known.pending.retain(|other| *other != key);
                known.pending.push(key);
            });
        }
        set_timeout(move || spawn_local(self.keep_for_good()), WAIT);
    }

    fn keep_one_at_once(self, key: u64, time: u64) {
        self.desk
            .update_store_untracked(|store| store.set_changed(key, time));
        let (text, why) = match self.text(key, false) {
            Some(Ok(text)) => (Some(text), None),
            Some(Err(Unkept(why))) => (None, Some(why)),
            None => (None, None),
        };
        let text = text.filter(|text| text.len() < QUICK);
        let is_large = text.is_none() && self.is_open(key);
        let put = self.known.with_value(|known| {
            put_at_once(&Wanted {
                name: &name_of(key),
                text: text.as_deref(),
                window: &known.window,
                seen: known.seen_at(key),
            })
        });
        if let Put::Theirs(theirs) = put {
            return self.part_from(key, &theirs);
        }
        self.known.update_value(|known| known.see(key, time));
        let is_slow = is_large || matches!(put, Put::Refused);
        let is_same = self
            .told
            .with_untracked(|told| told.is_slow == is_slow && told.unkept == why);
        if !is_same && self.is_open(key) {
            self.told.update(|told| {
                told.is_slow = is_slow;
                told.unkept = why;
            });
        }
    }

    /// Keeps all that is not kept for good yet.
    async fn keep_for_good(self) {
        if !self.known.with_value(|known| known.is_open) {
            return;
        }
        let mut keys = Vec::new();
        self.known
            .update_value(|known| keys = take(&mut known.pending));
        for key in keys {
            let text = match self.text(key, true) {
                Some(Ok(text)) => Some(text),
                Some(Err(_)) => continue,
                None => None,
            };
            let (window, seen) = self
                .known
                .with_value(|known| (known.window.clone(), known.seen_at(key)));
            let mut wanted = Wanted {
                name: &name_of(key),
                text: text.as_deref(),
                window: &window,
                seen,
            };
            let put = put_for_good(&wanted).await;
            let is_closed = matches!(put, Put::Refused);
            if self.told.with_untracked(|told| told.is_closed != is_closed) {
                self.told.update(|told| told.is_closed = is_closed);
            }
            if let Put::Theirs(theirs) = put {
                self.part_from(key, &theirs);
            } else if !is_closed && !self.is_open(key) {
                // What is kept at once has room for what is open.
                wanted.text = None;
                put_at_once(&wanted);
            }
        }
    }

    /// What is to be kept of a project; none where it is gone.
    fn text(self, key: u64, with_history: bool) -> Option<Result<String, Unkept>> {
        let window = self.known.with_value(|known| known.window.clone());
        self.desk.with_store_untracked(|store| {
            let kept = store.find(key)?;
            Some(record_text(store, kept, &window, with_history))
        })
    }

    fn is_open(self, key: u64) -> bool {
        self.desk
            .with_store_untracked(|store| store.now().key == key)
    }

    /// Leaves a key to the other window, where the project is open here.
    fn part_from(self, key: u64, theirs: &str) {
        if let Ok(theirs) = read_record(theirs)
            && self.is_open(key)
        {
            self.known
                .update_value(|known| known.see(key, theirs.kept.changed));
            self.told.update(|told| told.is_parted = true);
            self.desk
                .update_store(|store| store.part_from(theirs.kept, new_key()));
        }
    }
}

impl Known {
    fn seen_at(&self, key: u64) -> u64 {
        let seen = self.seen.iter().filter(|(own, _)| *own == key);
        seen.map(|(_, time)| *time).max().unwrap_or(0)
    }

    fn see(&mut self, key: u64, time: u64) {
        let time = time.max(self.seen_at(key));
        self.seen.retain(|(own, _)| *own != key);
        self.seen.push((key, time));
    }
}

/// What a project is kept under.
fn name_of(key: u64) -> String {
    format!("{PROJECT}{key}")
}
