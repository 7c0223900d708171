//! Text strings of the standard (ABC 2.1, 8.2): accents as mnemonics, as entities and by number.

use std::borrow::Cow;

use super::super::visible::is_visible;

/// The letters that a mark makes, each after the plain letter.
const ACCENTS: [(&str, &str, &str); 12] = [
    ("`", "grave", "AÀEÈIÌOÒUÙaàeèiìoòuùNǸnǹ"),
    (
        "'",
        "acute",
        "AÁEÉIÍOÓUÚYÝaáeéiíoóuúyýCĆcćLĹlĺNŃnńRŔrŕSŚsśZŹzź",
    ),
    (
        "^",
        "circ",
        "AÂEÊIÎOÔUÛaâeêiîoôuûCĈcĉGĜgĝHĤhĥJĴjĵSŜsŝWŴwŵYŶyŷ",
    ),
    ("~", "tilde", "AÃNÑOÕaãnñoõIĨiĩUŨuũ"),
    ("\"", "uml", "AÄEËIÏOÖUÜYŸaäeëiïoöuüyÿ"),
    ("=", "macr", "AĀEĒIĪOŌUŪaāeēiīoōuū"),
    (";", "ogon", "AĄEĘIĮUŲaąeęiįuų"),
    ("c", "cedil", "CÇcçSŞsşTŢtţGĢKĶkķLĻlļNŅnņRŖrŗ"),
    ("v", "caron", "CČcčDĎdďEĚeěNŇnňRŘrřSŠsšTŤtťZŽzž"),
    ("u", "breve", "AĂaăEĔeĕGĞgğIĬiĭOŎoŏUŬuŭ"),
    (".", "dot", "CĊcċEĖeėGĠgġIİZŻzż"),
    ("/", "slash", "OØoøDĐdđLŁlłHĦhħ"),
];

/// Mnemonics and entities that are not a letter with a mark.
const NAMES: [(&str, &str, &str); 19] = [
    ("AE", "AElig", "Æ"),
    ("ae", "aelig", "æ"),
    ("OE", "OElig", "Œ"),
    ("oe", "oelig", "œ"),
    ("AA", "Aring", "Å"),
    ("aa", "aring", "å"),
    ("ss", "szlig", "ß"),
    ("DH", "ETH", "Ð"),
    ("dh", "eth", "ð"),
    ("TH", "THORN", "Þ"),
    ("th", "thorn", "þ"),
    ("HO", "Odblac", "Ő"),
    ("Ho", "odblac", "ő"),
    ("HU", "Udblac", "Ű"),
    ("Hu", "udblac", "ű"),
    ("", "amp", "&"),
    ("", "quot", "\""),
    ("", "copy", "©"),
    ("", "nbsp", " "),
];

fn accented(marks: &str, letter: char) -> Option<char> {
    let mut letters = marks.chars();
    while let (Some(plain), Some(whole)) = (letters.next(), letters.next()) {
        if plain == letter {
            return Some(whole);
        }
    }
    None
}

/// The text with its escapes resolved; what is no escape stays as it is.
pub(super) fn decode(text: &str) -> Cow<'_, str> {
    if !text.contains(['\\', '&']) {
        return Cow::Borrowed(text);
    }
    let mut out = String::with_capacity(text.len());
    let mut rest = text;
    while let Some(at) = rest.find(['\\', '&']) {
        out.push_str(&rest[..at]);
        let (sign, after) = rest[at..].split_at(1);
        let (character, length) = match sign {
            "\\" => mnemonic(after),
            _ => entity(after),
        }
        .unwrap_or((sign.chars().next().unwrap_or('\\'), 0));
        out.push(character);
        rest = &after[length..];
    }
    out.push_str(rest);
    Cow::Owned(out)
}

/// What follows a backslash: the character meant, and how many bytes say so.
fn mnemonic(text: &str) -> Option<(char, usize)> {
    let first = text.chars().next()?;
    for (sign, digits) in [('u', 4), ('U', 8)] {
        if first == sign
            && let Some(hex) = text.get(1..=digits)
            && let Ok(code) = u32::from_str_radix(hex, 16)
            && let Some(character) = visible(code)
        {
            return Some((character, 1 + digits));
        }
    }
    if let Some(two) = text.get(..2) {
        if let Some((.., whole)) = NAMES.iter().find(|(name, ..)| *name == two) {
            return Some((whole.chars().next()?, 2));
        }
        let letter = two.chars().nth(1)?;
        let marks = ACCENTS.iter().find(|(mark, ..)| two.starts_with(mark));
        if let Some(whole) = marks.and_then(|(.., letters)| accented(letters, letter)) {
            return Some((whole, 2));
        }
    }
    matches!(first, '\\' | '%' | '&').then_some((first, 1))
}

/// What follows an ampersand.
fn entity(text: &str) -> Option<(char, usize)> {
    let end = text.bytes().take(12).position(|b| b == b';')?;
    let name = text.get(..end)?;
    let character = if let Some(number) = name.strip_prefix('#') {
        let code = match number.strip_prefix(['x', 'X']) {
            Some(hex) => u32::from_str_radix(hex, 16),
            None => number.parse(),
        };
        visible(code.ok()?)?
    } else if let Some((.., whole)) = NAMES.iter().find(|(_, known, _)| *known == name) {
        whole.chars().next()?
    } else {
        let letter = name.chars().next()?;
        let mark = &name[letter.len_utf8()..];
        let marks = ACCENTS.iter().find(|(_, known, _)| *known == mark);
        accented(marks?.2, letter)?
    };
    Some((character, end + 1))
}

fn visible(code: u32) -> Option<char> {
    char::from_u32(code).filter(|&c| is_visible(c))
}

#[cfg(test)]
mod tests {
    use super::decode;

    #[test]
    fn the_three_ways_of_the_standard_give_the_same_letters() {
        // ABC 2.1, 8.2: mnemonic, named entity, fixed width unicode.
        for text in [
            r"Caf\'e",
            "Caf&eacute;",
            r"Caf\u00e9",
            "Caf&#233;",
            "Caf&#xE9;",
        ] {
            assert_eq!(decode(text), "Café");
        }
        assert_eq!(
            decode(r#"\`a \^e \"o \~n \cc \va \aa \/o \AE \ss \HO \ua \.z"#),
            { r"à ê ö ñ ç \va å ø Æ ß Ő ă ż" }
        );
        assert_eq!(decode("&Agrave;&szlig;&oslash;&zcaron;&amp;"), "Àßøž&");
    }

    #[test]
    fn what_is_no_escape_stays() {
        for text in [
            "Fish & Chips",
            "R&B; soul",
            r"a\b",
            "\\",
            "&",
            r"\u12",
            "&#0;",
            r"\ué",
        ] {
            assert_eq!(decode(text), text);
        }
        assert_eq!(decode(r"50\% \\"), r"50% \");
    }
}
