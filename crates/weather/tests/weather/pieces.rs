//! Where a piece ends changes nothing, and no bytes bring the reader down.

use crate::reading::try_read;
use dewrun_weather::{Reader, Understanding};
use proptest::prelude::{any, prop_assert_eq, proptest};

const TABLE: &str = "site;Datum;Uhrzeit;Temp °C;Feuchte\r\nA;13.06.2024;00:00;21,5;70\r\nA;13.06.2024;01:00;20,25;71,5\r\nA;13.06.2024;02:00;----;71,5\r\n";

fn in_pieces(bytes: &[u8], size: usize) -> String {
    let mut reader = Reader::new(Understanding::default());
    for piece in bytes.chunks(size) {
        if let Err(error) = reader.push(piece) {
            return error.to_string();
        }
    }
    format!("{:?}", reader.finish())
}

proptest! {
    #[test]
    fn a_table_cut_anywhere(size in 1_usize..200) {
        prop_assert_eq!(in_pieces(TABLE.as_bytes(), size), in_pieces(TABLE.as_bytes(), 1 << 20));
    }

    #[test]
    fn bytes_of_any_kind(bytes in proptest::collection::vec(any::<u8>(), 0..400), size in 1_usize..64) {
        prop_assert_eq!(in_pieces(&bytes, size), in_pieces(&bytes, 1 << 20));
    }

    #[test]
    fn lines_that_look_like_readings(lines in proptest::collection::vec("[0-9]{1,4}[-/.][0-9]{1,2}[-/.][0-9]{1,4}( [0-9]{1,2}:[0-9]{2}( [AP]M)?)?([,;\t][-0-9.,]{0,7}){1,4}", 1..12)) {
        let text = format!("date;temp;rh\n{}\n", lines.join("\n"));
        let _ = try_read(text.as_bytes(), Understanding::default());
    }

    #[test]
    fn a_table_with_bytes_changed(at in 0_usize..150, byte in any::<u8>()) {
        let mut bytes = TABLE.as_bytes().to_vec();
        if let Some(place) = bytes.get_mut(at) {
            *place = byte;
        }
        let _ = try_read(&bytes, Understanding::default());
    }
}
