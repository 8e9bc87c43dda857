//! What the browser keeps a moment later, under names: as much as the device has room for, which it may refuse too.

use leptos::prelude::*;
use wasm_bindgen::closure::Closure;
use wasm_bindgen::{JsCast, JsValue};
use wasm_bindgen_futures::JsFuture;
use web_sys::js_sys::{Array, Promise};
use web_sys::{IdbDatabase, IdbObjectStore, IdbRequest, IdbTransactionMode};

const NAME: &str = "dewrun";
/// The shape of the database; nothing but this one table of texts.
const VERSION: u32 = 1;
const TABLE: &str = "projects";

/// The database of the page.
#[derive(Clone)]
pub(crate) struct Database(IdbDatabase);

impl Database {
    /// Opens it.
    ///
    /// # Errors
    /// What the browser refused.
    pub(crate) async fn open() -> Result<Self, JsValue> {
        let factory = window().indexed_db()?.ok_or(JsValue::NULL)?;
        let request = factory.open_with_u32(NAME, VERSION)?;
        let made = request.clone();
        let make = Closure::once(move || {
            let database: Result<IdbDatabase, _> = made.result().map(JsCast::unchecked_into);
            // Where the table can't be made, using it says so.
            let _ = database.and_then(|database| database.create_object_store(TABLE));
        });
        request.set_onupgradeneeded(Some(make.as_ref().unchecked_ref()));
        let database = done(&request).await?;
        Ok(Self(database.unchecked_into()))
    }

    fn table(&self, mode: IdbTransactionMode) -> Result<IdbObjectStore, JsValue> {
        self.0
            .transaction_with_str_and_mode(TABLE, mode)?
            .object_store(TABLE)
    }

    /// All names and what is kept under each.
    ///
    /// # Errors
    /// What the browser refused.
    pub(crate) async fn all(&self) -> Result<Vec<(String, String)>, JsValue> {
        let table = self.table(IdbTransactionMode::Readonly)?;
        let (names, texts) = (table.get_all_keys()?, table.get_all()?);
        let names: Array = done(&names).await?.unchecked_into();
        let texts: Array = done(&texts).await?.unchecked_into();
        let both = names.iter().zip(texts.iter());
        Ok(both
            .filter_map(|(name, text)| Some((name.as_string()?, text.as_string()?)))
            .collect())
    }

    /// Keeps a text unless what is there forbids it, or forgets it; whether it did, and what is there otherwise.
    ///
    /// # Errors
    /// What the browser refused.
    pub(crate) async fn set(
        &self,
        name: &str,
        text: Option<String>,
        forbids: impl FnOnce(&str) -> bool,
    ) -> Result<Option<String>, JsValue> {
        let table = self.table(IdbTransactionMode::Readwrite)?;
        let name = JsValue::from_str(name);
        // Within one transaction no other window comes between.
        let before = done(&table.get(&name)?).await?.as_string();
        if let Some(before) = before.filter(|before| forbids(before)) {
            return Ok(Some(before));
        }
        let request = match text {
            Some(text) => table.put_with_key(&JsValue::from_str(&text), &name)?,
            None => table.delete(&name)?,
        };
        done(&request).await.map(|_| None)
    }
}

/// What a request comes to.
async fn done(request: &IdbRequest) -> Result<JsValue, JsValue> {
    let answered = Promise::new(&mut |resolve, reject| {
        request.set_onsuccess(Some(&resolve));
        request.set_onerror(Some(&reject));
    });
    JsFuture::from(answered).await?;
    request.result()
}
