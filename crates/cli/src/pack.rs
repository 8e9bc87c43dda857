//! `dewrun pack` and `dewrun unpack`: a project saved with its weather, and parted again.

use std::fs::{File, OpenOptions};
use std::io::{self, Read, Write};
use std::path::Path;

use dewrun_document::{
    DocumentError, FILE_BYTES, Kept, Packed, PackedFile, WeatherReference, weather_reference, write,
};
use dewrun_weather::{Reader, Understanding};

use crate::args::{Pack, Unpack};
use crate::exit::Ending;
use crate::project::{complain_of, load_packed, name_of, told_of};
use crate::weather::given;
use crate::year::files;

pub(crate) fn pack(args: &Pack, out: &mut impl Write) -> io::Result<Ending> {
    let said = match given(&args.said, args.units) {
        Ok(said) => said,
        Err(sentence) => {
            eprintln!("dewrun: {sentence}");
            return Ok(Ending::WrongCommandLine);
        }
    };
    match packed(args, &said) {
        Ok(text) => match &args.out {
            Some(path) => File::create(path)?.write_all(text.as_bytes())?,
            None => out.write_all(text.as_bytes())?,
        },
        Err(complaint) => {
            eprintln!("dewrun: {complaint}");
            return Ok(Ending::Failed);
        }
    }
    Ok(Ending::Dry)
}

fn packed(args: &Pack, said: &Understanding) -> Result<String, String> {
    let name = name_of(&args.project);
    let of = |error| told_of(&name, &error);
    let mut packed = load_packed(&args.project).map_err(of)?;
    let folder = args.project.parent().unwrap_or(Path::new(""));
    if let Some(path) = &args.weather {
        let file = from_disk(path)?;
        let reference = referred(&file, said)?;
        packed.project.weather = Some(Kept::<WeatherReference>::of(&reference).map_err(of)?);
        packed.files = vec![file];
    } else {
        if packed.files.is_empty() {
            packed.files = named(&packed.project, folder, &name)?;
        }
        reread(&mut packed, said)?;
    }
    dewrun_document::pack(&packed).map_err(of)
}

/// Puts what is said of how the weather file is read into the project, with the design states that follow.
fn reread(packed: &mut Packed, said: &Understanding) -> Result<(), String> {
    let told = |error: DocumentError| error.sentence();
    let named = packed.project.weather.as_ref();
    let named = named.map(Kept::<WeatherReference>::get);
    let Some(named) = named.transpose().map_err(told)? else {
        return Ok(());
    };
    let file = packed.files.iter().find(|file| file.name == named.file);
    if let Some(file) = file.filter(|_| *said != Understanding::default()) {
        let said = said.or(&files::understanding(&named)?);
        let reference = referred(file, &said)?;
        packed.project.weather = Some(Kept::<WeatherReference>::of(&reference).map_err(told)?);
    }
    Ok(())
}

/// The files that a project names, each with the bytes that it must have.
fn named(
    project: &dewrun_document::Project,
    folder: &Path,
    name: &str,
) -> Result<Vec<PackedFile>, String> {
    let of = |error| told_of(name, &error);
    let mut references: Vec<WeatherReference> = Vec::new();
    for position in 0..project.runs.len() {
        let said = dewrun_document::to_season(project, position).map_err(of)?;
        for file in said.weather.into_iter().chain(said.measured) {
            if !references.iter().any(|known| known.file == file.file) {
                references.push(file);
            }
        }
    }
    if references.is_empty() {
        return Err(format!(
            "{name}: the project names no weather file; name one by --weather"
        ));
    }
    references
        .iter()
        .map(|reference| {
            let file = from_disk(&folder.join(&reference.file))?;
            if referred(&file, &files::understanding(reference)?)?.sha256 == reference.sha256 {
                return Ok(file);
            }
            Err(format!(
                "{name}: the weather file {} is another one than the project names; name it by --weather to take it all the same",
                reference.file
            ))
        })
        .collect()
}

fn from_disk(path: &Path) -> Result<PackedFile, String> {
    let most = u64::try_from(FILE_BYTES).unwrap_or(u64::MAX);
    let mut bytes = Vec::new();
    File::open(path)
        .and_then(|file| file.take(most).read_to_end(&mut bytes))
        .map_err(|error| format!("{}: the file can't be read: {error}", path.display()))?;
    Ok(PackedFile {
        name: files::name_of(path),
        bytes,
    })
}

fn referred(file: &PackedFile, said: &Understanding) -> Result<WeatherReference, String> {
    let mut reader = Reader::new(said.clone());
    let told = |error: dewrun_weather::WeatherError| format!("{}: {error}", file.name);
    reader.push(&file.bytes).map_err(told)?;
    let weather = reader.finish().map_err(told)?;
    Ok(weather_reference(&file.name, &weather).read_with(said))
}

pub(crate) fn unpack(args: &Unpack, out: &mut impl Write) -> io::Result<Ending> {
    let name = name_of(&args.packed);
    let parted = load_packed(&args.packed).and_then(|packed| parts(&args.packed, &packed));
    let parts = match parted {
        Ok(parts) => parts,
        Err(error) => {
            complain_of(&name, &error);
            return Ok(Ending::Failed);
        }
    };
    for (name, bytes) in parts {
        let path = args.into.join(&name);
        let made = OpenOptions::new().write(true).create_new(true).open(&path);
        if let Err(error) = made.and_then(|mut file| file.write_all(&bytes)) {
            eprintln!("dewrun: {}: {error}", path.display());
            return Ok(Ending::Failed);
        }
        writeln!(out, "{}", path.display())?;
    }
    Ok(Ending::Dry)
}

/// The project and its files, by names without a folder.
fn parts(from: &Path, packed: &Packed) -> Result<Vec<(String, Vec<u8>)>, DocumentError> {
    let stem = from.file_stem().unwrap_or_default().to_string_lossy();
    let project = (
        format!("{stem}-project.json"),
        write(&packed.project)?.into_bytes(),
    );
    let files = packed.files.iter();
    let files = files.map(|file| (files::name_of(Path::new(&file.name)), file.bytes.clone()));
    Ok([project].into_iter().chain(files).collect())
}
