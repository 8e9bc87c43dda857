//! A file of each form, damaged anywhere: no bytes bring a reader down, and what is read all the same holds together.

use crate::reading::try_read;
use dewrun_weather::{Understanding, Weather, design_conditions};
use proptest::prelude::{ProptestConfig, any, prop_assert, prop_assert_eq, proptest};
use proptest::sample::Index;

/// Rows of one form as it is; of TM2 the first of the typical year of Miami, US government, public domain.
const FORMS: [(&str, &[u8]); 6] = [
    (
        "EPW",
        include_bytes!("../../../../tests/cases/fixtures/W16_one_day.epw"),
    ),
    (
        "TMY3",
        include_bytes!("../../../../tests/cases/fixtures/W19a_tmy3_24h.csv"),
    ),
    ("TM2", TM2.as_bytes()),
    ("PVGIS", PVGIS.as_bytes()),
    ("satellite", SATELLITE.as_bytes()),
    (
        "logger",
        include_bytes!("../../../../tests/cases/fixtures/L01_semicolon_comma.csv"),
    ),
];
const TM2: &str = concat!(
    " 12839 MIAMI                  FL  -5 N 25 48 W  80 16     2\r\n",
    " 62010101000000000000?00000?00000?00000?00000?00000?00000?007A703A70200A70150A7073A71017A7158A7067A70161A777777A70999999999013F8062F8000A788E7\r\n",
    " 62010102000000000000?00000?00000?00000?00000?00000?00000?008A707A70206A70156A7073A71017A7158A7057A70161A788888A70999999999014F8062F8000A788E7\r\n",
);
const PVGIS: &str = "Latitude (decimal degrees): 45.250\nLongitude (decimal degrees): 8.500\nElevation (m): 210.0\n\
    month,year\n1,2018\n2,2007\n\
    time(UTC),T2m,RH,G(h),Gb(n),Gd(h),IR(h),WS10m,WD10m,SP\n\
    20180101:0000,2.5,94.1,0.0,-0.0,0.0,283.1,0.75,257.0,99870.0\n20180101:0100,-1.9,95.4,0.0,-0.0,0.0,291.4,0.78,258.0,99800.0\n\
    \nT2m: 2-m air temperature (degree Celsius)\n";
const SATELLITE: &str = "Source,Location ID,City,State,Country,Latitude,Longitude,Time Zone,Elevation,Local Time Zone\n\
    Model,1,Testville,-,-,45.5,-120.25,-8,320,-8\n\
    Year,Month,Day,Hour,Minute,DHI,DNI,GHI,Dew Point,Temperature,Pressure,Relative Humidity,Wind Speed,,\n\
    2019,1,1,0,30,0,0,0,1.1,3.0,975,87,2.5,,\n2019,1,1,1,30,0,0,0,1.0,2.5,975,90,2.4,,\n";

/// What must hold of any weather, however its file looked.
fn holds_together(weather: &Weather, bytes: usize) -> Result<(), String> {
    let series = &weather.series;
    let rows = series.len();
    let told = |is_so: bool, what: &str| is_so.then_some(()).ok_or_else(|| what.to_owned());
    told(rows <= bytes, "no row comes from nothing")?;
    for column in [
        &series.temperature_c,
        &series.dew_point_c,
        &series.relative_percent,
    ] {
        told(column.len() == rows, "columns are as long as the rows")?;
    }
    told(
        series.start_s.windows(2).all(|pair| pair[0] < pair[1]),
        "times rise",
    )?;
    let rows = series.temperature_c.iter().zip(&series.dew_point_c);
    for ((t_c, point_c), percent) in rows.zip(&series.relative_percent) {
        // A number that is missing is above nothing.
        let above = *t_c < *point_c || 100.0 < *percent;
        told(!above, "no dew point lies above the air")?;
    }
    let _ = (design_conditions(series), series.covered_hours());
    Ok(())
}

#[test]
fn each_form_is_read_as_it_is() {
    for (form, bytes) in FORMS {
        let weather = try_read(bytes, Understanding::default());
        let weather = weather.unwrap_or_else(|error| panic!("{form}: {error}"));
        assert!(2 <= weather.series.len(), "{form}");
        assert_eq!(holds_together(&weather, bytes.len()), Ok(()), "{form}");
    }
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(64))]

    #[test]
    fn bytes_are_changed(form in any::<Index>(), changes in proptest::collection::vec((any::<Index>(), any::<u8>()), 1..12)) {
        let (name, bytes) = FORMS[form.index(FORMS.len())];
        let mut damaged = bytes.to_vec();
        for (at, byte) in changes {
            let at = at.index(damaged.len());
            damaged[at] = byte;
        }
        if let Ok(weather) = try_read(&damaged, Understanding::default()) {
            prop_assert_eq!(holds_together(&weather, damaged.len()), Ok(()), "{}", name);
        }
    }

    #[test]
    fn stretches_are_lost_or_doubled(form in any::<Index>(), from in any::<Index>(), length in 1_usize..200, doubled in any::<bool>()) {
        let (name, bytes) = FORMS[form.index(FORMS.len())];
        let from = from.index(bytes.len());
        let until = (from + length).min(bytes.len());
        let damaged = if doubled {
            [&bytes[..until], &bytes[from..]].concat()
        } else {
            [&bytes[..from], &bytes[until..]].concat()
        };
        if let Ok(weather) = try_read(&damaged, Understanding::default()) {
            prop_assert!(holds_together(&weather, damaged.len()).is_ok(), "{name}: {:?}", holds_together(&weather, damaged.len()));
            if let Ok(again) = try_read(&damaged, weather.understood.clone()) {
                prop_assert_eq!(again.series.len(), weather.series.len(), "{}: as it was understood", name);
            }
        }
    }
}
