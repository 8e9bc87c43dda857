//! Keeping what is on the desk between visits: each change at once, and a moment later for good with all that can be undone.

mod set_aside;

use core::time::Duration;

use dewrun_desk::{QUICK, Record, Stage, Unkept, read_record, record_text, stamp_of};
use leptos::prelude::*;
use leptos::task::spawn_local;
use send_wrapper::SendWrapper;

use super::Desk;
use crate::hooks::clock::{new_key, now};
use crate::hooks::database::Database;
use crate::hooks::quick_store;
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
    /// The number of this window.
    window: u64,
    /// By their keys, when the projects were changed that this window knows.
    seen: StoredValue<Vec<(u64, u64)>>,
    /// Keys of what is not kept for good yet.
    pending: StoredValue<Vec<u64>>,
    database: StoredValue<Option<SendWrapper<Database>>>,
    /// What can't be used of all that was kept.
    set_aside: RwSignal<Vec<SetAside>>,
    /// Why the open project is not kept.
    unkept: RwSignal<Option<String>>,
    /// Another window has the same project.
    is_parted: RwSignal<bool>,
    /// The browser keeps nothing at once.
    is_slow: RwSignal<bool>,
    /// The browser keeps nothing for good.
    is_closed: RwSignal<bool>,
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
        let is_slow = !quick_store::put(PROBE, "");
        quick_store::remove(PROBE);
        let keeping = Self {
            desk,
            window: new_key(),
            seen: StoredValue::new(seen),
            pending: StoredValue::default(),
            database: StoredValue::new(None),
            set_aside: RwSignal::new(set_aside),
            unkept: RwSignal::new(None),
            is_parted: RwSignal::new(false),
            is_slow: RwSignal::new(is_slow),
            is_closed: RwSignal::new(false),
        };
        Effect::new(move |_| {
            desk.with_store(|_| ());
            keeping.keep_at_once();
        });
        spawn_local(async move {
            let is_open = keeping.open(asked).await.is_some();
            keeping.is_closed.set(!is_open);
        });
        keeping
    }

    /// What there is to say of what is kept.
    pub(crate) fn told(self) -> Vec<String> {
        let nothing = (self.is_slow.get() && self.is_closed.get()).then(|| NOTHING.to_owned());
        let two = self.is_parted.get().then(|| TWO_WINDOWS.to_owned());
        let unkept = self.unkept.get();
        let unkept = unkept.map(|why| {
            format!(
                "This project is not kept by the browser: {why} Save the file before you leave."
            )
        });
        [nothing, unkept, two].into_iter().flatten().collect()
    }

    /// What can't be used of all that was kept.
    pub(crate) fn set_aside(self) -> Vec<SetAside> {
        self.set_aside.get()
    }

    /// Forgets what can't be used.
    pub(crate) fn forget(self, name: String) {
        quick_store::remove(&name);
        self.set_aside
            .update(|all| all.retain(|one| one.name != name));
        spawn_local(async move {
            if let Some(database) = self.database() {
                // What can't be forgotten is told again at the next visit.
                let _ = database.set(&name, None, |_| false).await;
            }
        });
    }

    /// Opens the database and takes in what is kept there.
    async fn open(self, asked: Option<Stage>) -> Option<()> {
        let database = Database::open().await.ok()?;
        let found = Found::of(database.all().await.ok()?);
        for (old, new, text) in found.moves {
            database.set(&new, Some(text), |_| false).await.ok()?;
            database.set(&old, None, |_| false).await.ok()?;
        }
        self.set_aside.update(|all| all.extend(found.set_aside));
        for record in &found.records {
            let Record { kept, .. } = record;
            if self.seen_at(kept.key) < kept.changed {
                self.see(kept.key, kept.changed);
            }
        }
        self.database.set_value(Some(SendWrapper::new(database)));
        if !found.records.is_empty() {
            self.desk
                .update_store(|store| store.come_in(asked, found.records));
        }
        self.keep_for_good().await;
        Some(())
    }

    fn database(self) -> Option<Database> {
        self.database
            .with_value(|database| Some(Database::clone(database.as_ref()?)))
    }

    /// Keeps all that changed, in the browser's quick store.
    fn keep_at_once(self) {
        let touched = self
            .desk
            .update_store_untracked(dewrun_desk::Store::take_touched);
        let Some(touched) = touched.filter(|touched| !touched.is_empty()) else {
            return;
        };
        let time = now();
        for key in touched {
            self.keep_quickly(key, time);
            self.pending.update_value(|keys| {
                if !keys.contains(&key) {
                    keys.push(key);
                }
            });
        }
        set_timeout(move || spawn_local(self.keep_for_good()), WAIT);
    }

    fn keep_quickly(self, key: u64, time: u64) {
        let name = name_of(key);
        if quick_store::get(&name)
            .is_some_and(|text| self.is_theirs(key, &text) && self.part_from(key, &text))
        {
            return;
        }
        self.desk
            .update_store_untracked(|store| store.set_changed(key, time));
        self.see(key, time);
        match self.text(key, false) {
            Some(Ok(text)) if text.len() < QUICK => {
                self.unkept.set(None);
                self.is_slow.set(!quick_store::put(&name, &text));
            }
            Some(Ok(_)) => {
                self.unkept.set(None);
                quick_store::remove(&name);
                self.is_slow.set(true);
            }
            Some(Err(Unkept(why))) => self.unkept.set(Some(why)),
            None => quick_store::remove(&name),
        }
    }

    /// Keeps all that is not kept for good yet.
    async fn keep_for_good(self) {
        let Some(database) = self.database() else {
            return;
        };
        let keys = self.pending.try_update_value(core::mem::take);
        for key in keys.unwrap_or_default() {
            let name = name_of(key);
            let text = match self.text(key, true) {
                Some(Ok(text)) => Some(text),
                Some(Err(_)) => continue,
                None => None,
            };
            let set = database
                .set(&name, text, |before| self.is_theirs(key, before))
                .await;
            self.is_closed.set(set.is_err());
            match set {
                Ok(Some(theirs)) => {
                    self.part_from(key, &theirs);
                }
                // The quick store has room for what is open.
                Ok(None) if self.desk.open_key() != key => quick_store::remove(&name),
                _ => {}
            }
        }
    }

    /// What is to be kept of a project; none where it is gone.
    fn text(self, key: u64, with_history: bool) -> Option<Result<String, Unkept>> {
        self.desk.with_store_untracked(|store| {
            let kept = store.find(key)?;
            Some(record_text(store, kept, self.window, with_history))
        })
    }

    /// Whether another window has kept something under a key that this one does not know.
    fn is_theirs(self, key: u64, text: &str) -> bool {
        let stamp = stamp_of(text);
        stamp.is_some_and(|stamp| stamp.window != self.window && self.seen_at(key) < stamp.time)
    }

    /// Leaves a key to the other window where the project is open here; whether it is.
    fn part_from(self, key: u64, theirs: &str) -> bool {
        let Ok(theirs) = read_record(theirs) else {
            return false;
        };
        if self.desk.open_key() != key {
            return false;
        }
        self.see(key, theirs.stamp.time);
        self.is_parted.set(true);
        self.desk
            .update_store(|store| store.part_from(theirs.kept, new_key()));
        true
    }

    fn seen_at(self, key: u64) -> u64 {
        let find = |seen: &Vec<(u64, u64)>| {
            seen.iter()
                .find(|(own, _)| *own == key)
                .map(|(_, time)| *time)
        };
        self.seen.with_value(find).unwrap_or(0)
    }

    fn see(self, key: u64, time: u64) {
        self.seen.update_value(|seen| {
            seen.retain(|(own, _)| *own != key);
            seen.push((key, time));
        });
    }
}

/// What a project is kept under.
fn name_of(key: u64) -> String {
    format!("{PROJECT}{key}")
}
