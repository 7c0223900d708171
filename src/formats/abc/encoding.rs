//! From bytes to text, in the encodings that ABC files are found in.

use std::borrow::Cow;

use encoding_rs::{Encoding, UTF_8, WINDOWS_1252};

/// The text and whether bytes had to be replaced.
///
/// A byte order mark decides (UTF-8, UTF-16). Otherwise it is UTF-8 if it is valid as such, otherwise what an
/// `abc-charset` line says (ABC 2.1, 8.1), otherwise Windows-1252, which has Latin-1 in it (common practice).
pub(super) fn decode(bytes: &[u8]) -> (Cow<'_, str>, bool) {
    if let Some((encoding, mark)) = Encoding::for_bom(bytes) {
        return encoding.decode_without_bom_handling(&bytes[mark..]);
    }
    match std::str::from_utf8(bytes) {
        Ok(text) => (Cow::Borrowed(text), false),
        // A text that was cut may end in the middle of a character.
        Err(error) if error.error_len().is_none() && !bytes[..error.valid_up_to()].is_ascii() => {
            UTF_8.decode_without_bom_handling(bytes)
        }
        Err(_) => charset(bytes)
            .unwrap_or(WINDOWS_1252)
            .decode_without_bom_handling(bytes),
    }
}

/// The encoding that the text names in itself, where it is one that leaves ASCII alone.
fn charset(bytes: &[u8]) -> Option<&'static Encoding> {
    let name = b"abc-charset";
    let at = bytes.windows(name.len()).position(|w| w == name)? + name.len();
    let rest = bytes[at..].trim_ascii_start();
    let end = rest.iter().position(u8::is_ascii_whitespace);
    let label = &rest[..end.unwrap_or(rest.len()).min(40)];
    let encoding = Encoding::for_label(label)?;
    (encoding.is_ascii_compatible() && encoding != UTF_8).then_some(encoding)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_encodings_of_the_standard_and_of_old_files_give_the_same_text() {
        let utf16 = |to: fn(u16) -> [u8; 2], mark: [u8; 2]| -> Vec<u8> {
            let units = "T:Café".encode_utf16().flat_map(to);
            mark.into_iter().chain(units).collect()
        };
        for bytes in [
            "T:Café".as_bytes().to_vec(),
            "\u{feff}T:Café".as_bytes().to_vec(),
            b"T:Caf\xe9".to_vec(),
            utf16(u16::to_le_bytes, [0xff, 0xfe]),
            utf16(u16::to_be_bytes, [0xfe, 0xff]),
        ] {
            assert_eq!(
                decode(&bytes),
                (Cow::Borrowed("T:Café"), false),
                "{bytes:?}"
            );
        }
        let latin2 = b"%%abc-charset iso-8859-2\nT:\xf8";
        assert_eq!(decode(latin2).0, "%%abc-charset iso-8859-2\nT:ř");
        assert_eq!(decode(b"\x93q\x94").0, "“q”");
    }
}
