//! Weather and logger files of a year: beside the project, packed with it, or named on the command line.

use std::collections::BTreeMap;
use std::path::{Path, PathBuf};
use std::sync::{Arc, Mutex, PoisonError};

use dewrun_document::{PackedFile, WeatherReference, weather_reference};
use dewrun_weather::{Reader, Understanding, Weather};

use crate::weather::read;

/// A file that was read, and what a project says of such a file.
pub(crate) struct Found {
    pub(crate) weather: Weather,
    pub(crate) reference: WeatherReference,
}

/// What became of a file: read once, whoever asks for it.
type Read = Result<Arc<Found>, String>;

/// The files of a project.
pub(crate) struct Files {
    /// Where the project lies.
    folder: PathBuf,
    /// Said on the command line, in place of the one that the project names.
    given: Option<PathBuf>,
    /// What the command line says of how the weather file is read.
    said: Understanding,
    packed: Vec<PackedFile>,
    read: Mutex<BTreeMap<String, Read>>,
    is_unnamed: Mutex<bool>,
}

impl Files {
    /// The files of a project that lies somewhere.
    pub(crate) fn new(project: &Path, packed: Vec<PackedFile>) -> Self {
        let folder = project.parent().unwrap_or(Path::new("")).to_owned();
        Self {
            packed,
            ..Self::beside(folder)
        }
    }

    /// With a weather file in place of the one that the project names, and what is said of how it is read.
    pub(crate) fn with(self, given: Option<&Path>, said: Understanding) -> Self {
        Self {
            given: given.map(Path::to_owned),
            said,
            ..self
        }
    }

    /// The files that lie in a folder.
    pub(crate) fn beside(folder: PathBuf) -> Self {
        Self {
            folder,
            given: None,
            said: Understanding::default(),
            packed: Vec::new(),
            read: Mutex::default(),
            is_unnamed: Mutex::new(false),
        }
    }

    /// The weather file: the one said on the command line, or else the one that the project names.
    pub(crate) fn weather(&self, named: Option<&WeatherReference>) -> Option<Arc<Found>> {
        if let Some(given) = &self.given {
            let key = given.display().to_string();
            return self.once(&key, || self.given(given, named));
        }
        if let Some(named) = named {
            return self.asked(named, &self.said);
        }
        *locked(&self.is_unnamed) = true;
        None
    }

    /// The file said on the command line; where the project names the same one, what it says of that counts as well.
    fn given(&self, given: &Path, named: Option<&WeatherReference>) -> Result<Found, String> {
        let found = from_disk(given, given, &self.said)?;
        let named = named.filter(|named| named.sha256 == found.reference.sha256);
        let said = match named {
            Some(named) => self.said.or(&understanding(named)?),
            None => return Ok(found),
        };
        if said == self.said {
            return Ok(found);
        }
        from_disk(given, given, &said)
    }

    /// A file that the project names, such as the one measured in a duct; its bytes must be those.
    pub(crate) fn named(&self, named: &WeatherReference) -> Option<Arc<Found>> {
        self.asked(named, &Understanding::default())
    }

    /// A file that the project names, read as is said here, or else as the project says.
    fn asked(&self, named: &WeatherReference, said: &Understanding) -> Option<Arc<Found>> {
        let key = format!(
            "{} {} {said:?} {:?}",
            named.file, named.sha256, named.reading
        );
        self.once(&key, || {
            let said = said.or(&understanding(named)?);
            let packed = self.packed.iter().find(|file| file.name == named.file);
            let found = match packed {
                Some(file) => from_bytes(file, &said)?,
                None => self.beside_project(named, &said)?,
            };
            if found.reference.sha256 == named.sha256 {
                return Ok(found);
            }
            Err(format!(
                "the weather file {} is another one than the project names (its SHA-256 begins with {}, not with {}); name it by --weather to take it all the same",
                named.file,
                begin(&found.reference.sha256),
                begin(&named.sha256)
            ))
        })
    }

    fn beside_project(
        &self,
        named: &WeatherReference,
        said: &Understanding,
    ) -> Result<Found, String> {
        // A name without a folder: what lies elsewhere is not looked for.
        let Some(name) = Path::new(&named.file).file_name() else {
            return Err(format!("the weather file {} has no name", named.file));
        };
        let path = self.folder.join(name);
        from_disk(&path, Path::new(name), said).map_err(|reason| {
            format!(
                "the weather file {} is missing: {reason}; put it beside the project or name it by --weather",
                named.file
            )
        })
    }

    /// Reads a file that nobody has read before.
    fn once(&self, key: &str, read: impl FnOnce() -> Result<Found, String>) -> Option<Arc<Found>> {
        let mut known = locked(&self.read);
        let found = known
            .entry(key.to_owned())
            .or_insert_with(|| read().map(Arc::new));
        found.as_ref().ok().map(Arc::clone)
    }

    /// Why files could not be read, a sentence each.
    pub(crate) fn complaints(&self) -> Vec<String> {
        let known = locked(&self.read);
        let failed = known
            .values()
            .filter_map(|read| read.as_ref().err().cloned());
        let unnamed = *locked(&self.is_unnamed);
        let unnamed =
            unnamed.then(|| "the project names no weather file; name one by --weather".to_owned());
        failed.chain(unnamed).collect()
    }
}

/// A lock is held for a look or a reading only, and never while something else may fail.
fn locked<T>(mutex: &Mutex<T>) -> std::sync::MutexGuard<'_, T> {
    mutex.lock().unwrap_or_else(PoisonError::into_inner)
}

fn begin(hash: &str) -> &str {
    hash.get(..8).unwrap_or(hash)
}

fn from_disk(path: &Path, name: &Path, said: &Understanding) -> Result<Found, String> {
    let weather = read(path, said.clone())?;
    Ok(found(&name_of(name), weather, said))
}

fn from_bytes(file: &PackedFile, said: &Understanding) -> Result<Found, String> {
    let mut reader = Reader::new(said.clone());
    reader
        .push(&file.bytes)
        .map_err(|error| error.to_string())?;
    let weather = reader.finish().map_err(|error| error.to_string())?;
    Ok(found(&file.name, weather, said))
}

fn found(name: &str, weather: Weather, said: &Understanding) -> Found {
    let reference = weather_reference(name, &weather).read_with(said);
    Found { weather, reference }
}

/// What a project says of how its file is read.
pub(crate) fn understanding(named: &WeatherReference) -> Result<Understanding, String> {
    named.understanding().map_err(|error| error.sentence())
}

/// The name of a file without its folder.
pub(crate) fn name_of(path: &Path) -> String {
    let name = path.file_name().unwrap_or(path.as_os_str());
    name.to_string_lossy().into_owned()
}
