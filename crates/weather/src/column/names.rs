//! Headings of columns in many languages, and what they mean.

use super::Role;
use crate::text::encoding::text_of;

/// The text of some bytes in small letters without accents, so that headings of one language look alike.
pub(crate) fn folded(bytes: &[u8]) -> String {
    let (text, _) = text_of(bytes);
    let mut out = String::with_capacity(text.len());
    for sign in text.chars() {
        match sign {
            'A'..='Z' => out.push(sign.to_ascii_lowercase()),
            'à'..='å' | 'À'..='Å' | 'ā' | 'ą' | 'Ą' => out.push('a'),
            'æ' | 'Æ' => out.push_str("ae"),
            'ç' | 'Ç' | 'ć' | 'č' | 'Č' => out.push('c'),
            'è'..='ë' | 'È'..='Ë' | 'ę' | 'ě' | 'ē' => out.push('e'),
            'ì'..='ï' | 'Ì'..='Ï' | 'ı' | 'İ' => out.push('i'),
            'ñ' | 'Ñ' | 'ń' | 'ň' => out.push('n'),
            'ò'..='ö' | 'Ò'..='Ö' | 'ø' | 'Ø' | 'ő' => out.push('o'),
            'ù'..='ü' | 'Ù'..='Ü' | 'ů' | 'ű' => out.push('u'),
            'ý' | 'ÿ' => out.push('y'),
            'ł' | 'Ł' => out.push('l'),
            'ś' | 'š' | 'Š' => out.push('s'),
            'ß' => out.push_str("ss"),
            'ř' => out.push('r'),
            'ž' | 'Ž' | 'ż' | 'ź' => out.push('z'),
            'º' | '˚' => out.push('°'),
            '\u{a0}' | '\t' => out.push(' '),
            '²' => out.push('2'),
            _ => out.push(sign),
        }
    }
    out
}

/// Words anywhere in a heading, each with the role it stands for; the first that is met decides.
const PARTS: &[(&str, Role)] = &[
    // What would be taken for something else further down.
    ("uncert", Role::Other),
    ("compressor", Role::Other),
    ("window", Role::Other),
    ("fenster", Role::Other),
    ("drain", Role::Other),
    ("valve", Role::Other),
    ("alarm", Role::Other),
    ("status", Role::Other),
    ("illum", Role::Other),
    ("intensi", Role::Other),
    ("quantity", Role::Other),
    ("duration", Role::Other),
    ("durata", Role::Other),
    ("dauer", Role::Other),
    ("source", Role::Other),
    ("quality", Role::Other),
    ("flag", Role::Other),
    ("battery", Role::Other),
    ("batterie", Role::Other),
    ("setpoint", Role::Other),
    ("heat index", Role::Other),
    ("heatindex", Role::Other),
    ("wind chill", Role::Other),
    ("windchill", Role::Other),
    ("humidex", Role::Other),
    ("apparent", Role::Other),
    ("feels", Role::Other),
    ("gefuhl", Role::Other),
    ("ressenti", Role::Other),
    ("globe", Role::Other),
    ("soil", Role::Other),
    ("boden", Role::Other),
    ("bodem", Role::Other),
    ("surface temp", Role::Other),
    ("surface_temp", Role::Other),
    ("surftemp", Role::Other),
    ("oberflache", Role::Other),
    ("skin", Role::Other),
    ("ground", Role::Other),
    ("water temp", Role::Other),
    ("wassertemp", Role::Other),
    ("panel", Role::Other),
    ("ptemp", Role::Other),
    ("housing", Role::Other),
    ("internal temp", Role::Other),
    ("wetness", Role::Other),
    ("leaf", Role::Other),
    ("absolute", Role::Other),
    ("absolut", Role::Other),
    ("vapor pressure deficit", Role::Other),
    ("vapour pressure deficit", Role::Other),
    ("vpd", Role::Other),
    ("uhrzeit", Role::Time),
    ("wet bulb", Role::WetBulb),
    ("wet-bulb", Role::WetBulb),
    ("wetbulb", Role::WetBulb),
    ("wet_bulb", Role::WetBulb),
    ("feuchtkugel", Role::WetBulb),
    ("natteboltemp", Role::WetBulb),
    ("bulbo humedo", Role::WetBulb),
    ("bulbo umido", Role::WetBulb),
    ("thermometre mouille", Role::WetBulb),
    ("очка росы", Role::DewPoint),
    ("露点", Role::DewPoint),
    ("dew", Role::DewPoint),
    ("taupunkt", Role::DewPoint),
    ("dauwpunt", Role::DewPoint),
    ("rosee", Role::DewPoint),
    ("rocio", Role::DewPoint),
    ("rugiada", Role::DewPoint),
    ("orvalho", Role::DewPoint),
    ("daggpunkt", Role::DewPoint),
    ("dugpunkt", Role::DewPoint),
    ("duggpunkt", Role::DewPoint),
    ("doggpunkt", Role::DewPoint),
    ("kastepiste", Role::DewPoint),
    ("punkt rosy", Role::DewPoint),
    ("rosneho bodu", Role::DewPoint),
    ("rosny bod", Role::DewPoint),
    ("frost point", Role::DewPoint),
    ("mixing ratio", Role::HumidityRatio),
    ("humidity ratio", Role::HumidityRatio),
    ("specific hum", Role::HumidityRatio),
    ("mischungsverh", Role::HumidityRatio),
    ("wassergehalt", Role::HumidityRatio),
    ("vapor pres", Role::VapourPressure),
    ("vapour pres", Role::VapourPressure),
    ("dampfdruck", Role::VapourPressure),
    ("dampdruk", Role::VapourPressure),
    ("humi", Role::RelativeHumidity),
    ("лажност", Role::RelativeHumidity),
    ("湿度", Role::RelativeHumidity),
    ("濕度", Role::RelativeHumidity),
    ("feucht", Role::RelativeHumidity),
    ("vochtig", Role::RelativeHumidity),
    ("humed", Role::RelativeHumidity),
    ("umidita", Role::RelativeHumidity),
    ("umidade", Role::RelativeHumidity),
    ("hygro", Role::RelativeHumidity),
    ("fuktighet", Role::RelativeHumidity),
    ("fugt", Role::RelativeHumidity),
    ("wilgotn", Role::RelativeHumidity),
    ("vlhkost", Role::RelativeHumidity),
    ("kosteus", Role::RelativeHumidity),
    ("%rh", Role::RelativeHumidity),
    ("% rh", Role::RelativeHumidity),
    ("%rf", Role::RelativeHumidity),
    ("% rf", Role::RelativeHumidity),
    ("%r.f", Role::RelativeHumidity),
    ("% r.f", Role::RelativeHumidity),
    ("%r.h", Role::RelativeHumidity),
    ("% r.h", Role::RelativeHumidity),
    ("% hr", Role::RelativeHumidity),
    ("%hr", Role::RelativeHumidity),
    ("rel. h", Role::RelativeHumidity),
    ("rel.h", Role::RelativeHumidity),
    ("sea level", Role::SeaLevelPressure),
    ("sea_level", Role::SeaLevelPressure),
    ("sealevel", Role::SeaLevelPressure),
    ("zeeniveau", Role::SeaLevelPressure),
    ("meereshohe", Role::SeaLevelPressure),
    ("meeresniveau", Role::SeaLevelPressure),
    ("niveau de la mer", Role::SeaLevelPressure),
    ("niveau mer", Role::SeaLevelPressure),
    ("nivel del mar", Role::SeaLevelPressure),
    ("livello del mare", Role::SeaLevelPressure),
    ("_msl", Role::SeaLevelPressure),
    ("mslp", Role::SeaLevelPressure),
    ("reduziert", Role::SeaLevelPressure),
    ("авлени", Role::Pressure),
    ("气压", Role::Pressure),
    ("気圧", Role::Pressure),
    ("press", Role::Pressure),
    ("druck", Role::Pressure),
    ("luchtdruk", Role::Pressure),
    ("presion", Role::Pressure),
    ("lufttryck", Role::Pressure),
    ("lufttrykk", Role::Pressure),
    ("baro", Role::Pressure),
    ("ilmanpaine", Role::Pressure),
    ("cisnienie", Role::Pressure),
    ("tlak", Role::Pressure),
    ("wind dir", Role::WindDirection),
    ("wind_dir", Role::WindDirection),
    ("winddir", Role::WindDirection),
    ("windricht", Role::WindDirection),
    ("direction du vent", Role::WindDirection),
    ("wdir", Role::WindDirection),
    ("gust", Role::Other),
    ("ruk", Role::Other),
    ("boen", Role::Other),
    ("rafale", Role::Other),
    ("rafaga", Role::Other),
    ("wind", Role::Wind),
    ("wspd", Role::Wind),
    ("direct normal", Role::Direct),
    ("direct_normal", Role::Direct),
    ("diffuse", Role::Diffuse),
    ("shortwave", Role::Global),
    ("global", Role::Global),
    ("infrared", Role::Infrared),
    ("longwave", Role::Infrared),
    ("lw down", Role::Infrared),
    ("lw_dwn", Role::Infrared),
    ("precip", Role::Rain),
    ("rain", Role::Rain),
    ("niederschlag", Role::Rain),
    ("neerslag", Role::Rain),
    ("pluie", Role::Rain),
    ("lluvia", Role::Rain),
    ("pioggia", Role::Rain),
    ("cloud", Role::Sky),
    ("hour ending", Role::Hour),
    ("hour of day", Role::Hour),
    ("dry-bulb", Role::Temperature),
    ("dry bulb", Role::Temperature),
    ("drybulb", Role::Temperature),
    ("temp", Role::Temperature),
    ("sicaklik", Role::Temperature),
    ("емператур", Role::Temperature),
    ("温度", Role::Temperature),
    ("溫度", Role::Temperature),
    ("気温", Role::Temperature),
    ("lampotila", Role::Temperature),
    ("teplota", Role::Temperature),
    ("airtc", Role::Temperature),
    ("airtf", Role::Temperature),
    ("station", Role::Station),
    ("transmitter", Role::Station),
    ("sensor name", Role::Station),
    ("device", Role::Station),
    ("zeitpunkt", Role::Date),
    ("timestamp", Role::Date),
    ("date", Role::Date),
    ("datum", Role::Date),
    ("fecha", Role::Date),
    ("data", Role::Date),
    ("dato", Role::Date),
    ("time", Role::Time),
    ("zeit", Role::Time),
    ("tijd", Role::Time),
    ("heure", Role::Time),
    ("hora", Role::Time),
    ("ora ", Role::Time),
    ("klockslag", Role::Time),
];

/// Whole words of a heading, each with the role it stands for; asked before [`PARTS`].
const WORDS: &[(&str, Role)] = &[
    ("year", Role::Year),
    ("yyyy", Role::Year),
    ("yr", Role::Year),
    ("month", Role::Month),
    ("mo", Role::Month),
    ("mon", Role::Month),
    ("day", Role::Day),
    ("dy", Role::Day),
    ("doy", Role::DayOfYear),
    ("hour", Role::Hour),
    ("hr", Role::Hour),
    ("hh", Role::Hour),
    ("minute", Role::Minute),
    ("min", Role::Minute),
    ("mm", Role::Minute),
    ("rh", Role::RelativeHumidity),
    ("rhum", Role::RelativeHumidity),
    ("rh2m", Role::RelativeHumidity),
    ("rf", Role::RelativeHumidity),
    ("rv", Role::RelativeHumidity),
    ("hr", Role::RelativeHumidity),
    ("ur", Role::RelativeHumidity),
    ("hum", Role::RelativeHumidity),
    ("nem", Role::RelativeHumidity),
    ("relh", Role::RelativeHumidity),
    ("rhavg", Role::RelativeHumidity),
    ("rhmean", Role::RelativeHumidity),
    ("td", Role::DewPoint),
    ("dwpf", Role::DewPoint),
    ("dwpc", Role::DewPoint),
    ("tdp", Role::DewPoint),
    ("tdew", Role::DewPoint),
    ("d2m", Role::DewPoint),
    ("t2mdew", Role::DewPoint),
    ("dpt", Role::DewPoint),
    ("twb", Role::WetBulb),
    ("t2mwet", Role::WetBulb),
    ("t2m", Role::Temperature),
    ("tmpf", Role::Temperature),
    ("tmpc", Role::Temperature),
    ("tavg", Role::Temperature),
    ("tmean", Role::Temperature),
    ("t", Role::Temperature),
    ("ta", Role::Temperature),
    ("tair", Role::Temperature),
    ("tdb", Role::Temperature),
    ("tmp", Role::Temperature),
    ("tl", Role::Temperature),
    ("tt", Role::Temperature),
    ("qv2m", Role::HumidityRatio),
    ("w", Role::HumidityRatio),
    ("sp", Role::Pressure),
    ("ps", Role::Pressure),
    ("bp", Role::Pressure),
    ("p", Role::Pressure),
    ("slp", Role::SeaLevelPressure),
    ("qnh", Role::SeaLevelPressure),
    ("qff", Role::SeaLevelPressure),
    ("vent", Role::Wind),
    ("viento", Role::Wind),
    ("vento", Role::Wind),
    ("sknt", Role::Wind),
    ("ws10m", Role::Wind),
    ("ws", Role::Wind),
    ("wd10m", Role::WindDirection),
    ("wd", Role::WindDirection),
    ("site", Role::Station),
    ("location", Role::Station),
    ("sensor", Role::Station),
    ("logger", Role::Station),
    ("room", Role::Station),
    ("raum", Role::Station),
    ("ort", Role::Station),
    ("lieu", Role::Station),
    ("plaats", Role::Station),
    ("locatie", Role::Station),
    ("lugar", Role::Station),
    ("name", Role::Station),
    ("ghi", Role::Global),
    ("dni", Role::Direct),
    ("dhi", Role::Diffuse),
    ("gh", Role::Global),
    ("bn", Role::Direct),
    ("gb", Role::Direct),
    ("gd", Role::Diffuse),
    ("ir", Role::Infrared),
];

/// Roles that only a part of a number or a date may have: a heading that says more is something else.
const ALONE: [Role; 6] = [
    Role::Year,
    Role::Month,
    Role::Day,
    Role::DayOfYear,
    Role::Hour,
    Role::Minute,
];

/// What a heading, folded, says of its column.
pub(crate) fn role(heading: &str) -> Role {
    let heading = heading.trim();
    let bare = without_brackets(heading);
    let words: Vec<&str> = bare
        .split(|sign: char| !(sign.is_ascii_alphanumeric() || sign == '%'))
        .filter(|word| !word.is_empty())
        .collect();
    let alone = match words[..] {
        [word] => Some(word),
        _ => None,
    };
    if let Some((_, role)) = WORDS.iter().find(|(name, _)| Some(*name) == alone) {
        return *role;
    }
    if let Some((_, role)) = PARTS.iter().find(|(part, _)| heading.contains(part)) {
        return refined(*role, heading);
    }
    let of_word = |word: &&str| {
        let role = of_one_word(word)?;
        let is_enough = alone.is_some() || (1 < word.len() && !ALONE.contains(&role));
        is_enough.then_some(role)
    };
    words.iter().find_map(of_word).unwrap_or(Role::Other)
}

/// The role of a whole word; a number behind it counts sensors.
fn of_one_word(word: &str) -> Option<Role> {
    let known = |word: &str| {
        let found = WORDS.iter().find(|(name, _)| *name == word);
        found.map(|(_, role)| *role)
    };
    let numbered = word.trim_end_matches(|sign: char| sign.is_ascii_digit());
    let is_short = word.len() <= numbered.len() + 2;
    known(word).or_else(|| known(numbered).filter(|role| is_short && role.is_reading()))
}

/// Whether a heading, folded, names something that is no reading of the air.
pub(crate) fn is_excluded(heading: &str) -> bool {
    PARTS
        .iter()
        .any(|(part, role)| *role == Role::Other && heading.contains(part))
}

/// A heading without its units in brackets, unless nothing is left then.
fn without_brackets(heading: &str) -> String {
    let mut depth = 0_u32;
    let mut out = String::with_capacity(heading.len());
    for sign in heading.chars() {
        match sign {
            '(' | '[' | '{' => depth += 1,
            ')' | ']' | '}' => depth = depth.saturating_sub(1),
            _ if depth == 0 => out.push(sign),
            _ => {}
        }
    }
    if out.trim().is_empty() {
        heading.to_owned()
    } else {
        out
    }
}

/// Extremes and spreads are not the reading itself; a date beside a time holds both.
fn refined(role: Role, heading: &str) -> Role {
    let has = |word: &str| {
        heading
            .split(|sign: char| !sign.is_ascii_alphanumeric())
            .any(|part| part == word)
    };
    let is_extreme = [
        "max", "min", "maximum", "minimum", "std", "sd", "stdev", "hi", "low", "high", "lo",
    ]
    .iter()
    .any(|word| has(word));
    match role {
        Role::Temperature
        | Role::RelativeHumidity
        | Role::DewPoint
        | Role::Pressure
        | Role::Wind
            if is_extreme =>
        {
            Role::Other
        }
        Role::Temperature if heading.contains("cpu") => Role::Other,
        Role::Time if heading.contains("date") || heading.contains("datum") => Role::Date,
        _ => role,
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[track_caller]
    fn check(heading: &str, expected: Role) {
        assert_eq!(role(&folded(heading.as_bytes())), expected, "{heading}");
    }

    #[test]
    fn headings_of_many_files() {
        check("Date Time, GMT-08:00", Role::Date);
        check("Datum", Role::Date);
        check("Uhrzeit", Role::Time);
        check("Tijd (UTC)", Role::Time);
        check("time(UTC)", Role::Time);
        check("Temp., °F (S/N: 0)", Role::Temperature);
        check("Température (°C)", Role::Temperature);
        check("Lufttemperatur", Role::Temperature);
        check("T", Role::Temperature);
        check("temp_c", Role::Temperature);
        check("T2m", Role::Temperature);
        check("temperature_2m (°C)", Role::Temperature);
        check("AirTC_Avg Deg C Avg", Role::Temperature);
        check("Dry-bulb (C)", Role::Temperature);
        check("Dry-bulb source", Role::Other);
        check("Dry-bulb uncert (code)", Role::Other);
        check("RHum (%)", Role::RelativeHumidity);
        check("RH, % (S/N: 0)", Role::RelativeHumidity);
        check("Feuchte [%]", Role::RelativeHumidity);
        check("Kanal 2 [%rF]", Role::RelativeHumidity);
        check("Vochtigheid", Role::RelativeHumidity);
        check("Humidity (RH(%))", Role::RelativeHumidity);
        check("relative_humidity_2m (%)", Role::RelativeHumidity);
        check("DewPt, °F", Role::DewPoint);
        check("Taupunkt [°C]", Role::DewPoint);
        check("Point de rosée", Role::DewPoint);
        check("BP_mbar_Avg", Role::Pressure);
        check("Luchtdruk", Role::Pressure);
        check("Luchtdruk_Zeeniveau", Role::SeaLevelPressure);
        check("pressure_msl (hPa)", Role::SeaLevelPressure);
        check("surface_pressure (hPa)", Role::Pressure);
        check("Globe Temperatuur", Role::Other);
        check("Rukwind", Role::Other);
        check("Windsnelheid", Role::Wind);
        check("Windrichting", Role::WindDirection);
        check("Year", Role::Year);
        check("HR", Role::Hour);
        check("MO", Role::Month);
        check("RH2M", Role::RelativeHumidity);
        check("G(h)", Role::Other);
        check("ETR (W/m^2)", Role::Other);
        check("T [°C]", Role::Temperature);
        check("Event", Role::Other);
        check("Vent (km/h)", Role::Wind);
        check("GHI", Role::Global);
        check("Station", Role::Station);
        check("Sensor ID", Role::Station);
        check("T1(C)", Role::Temperature);
        check("P0025_[Space Temp 1] [P25](°C)", Role::Temperature);
        check("P0026_[Space Humidity 1](%RH)", Role::RelativeHumidity);
        check("RH1 (%)", Role::RelativeHumidity);
        check("Humi(%)", Role::RelativeHumidity);
        check("Sıcaklık (°C)", Role::Temperature);
        check("Температура", Role::Temperature);
        check("湿度(%)", Role::RelativeHumidity);
        check("Sensor temperature", Role::Temperature);
        check("Hour Ending", Role::Hour);
        check("TRANSMITTER", Role::Station);
        check("Batt, V", Role::Other);
        check("Coupler Detached", Role::Other);
        check("Max Temp", Role::Other);
        check("RECORD", Role::Other);
    }
}
