//! The seal on every file that is made for somebody: who made it, for whom, and that nobody has touched it since.
//!
//! `breeks seal OWNER CONTENT`, both numbers of 16 hexadecimal digits, stands where the format keeps remarks:
//!
//! | format | as |
//! |---|---|
//! | SVG, HTML | a comment behind the first line |
//! | DXF | a comment (group 999) before all else |
//! | JSON, a line of NDJSON | the last member of the object, `"seal"` |
//! | PDF | a comment before the table of places |
//! | PNG | a text chunk before the end |
//!
//! The seal keeps people from overwriting their own and each other's work by mistake. It is no proof against somebody who
//! wants to forge one.

use std::ops::Range;

/// For whom a file is made. It is kept as a number from which nothing can be read back.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Owner(u64);

impl Owner {
    /// The owner who is known by these words, in this order.
    pub fn of<Word: AsRef<[u8]>>(words: impl IntoIterator<Item = Word>) -> Self {
        Self(words.into_iter().fold(EMPTY, |sum, word| summed(summed(sum, word.as_ref()), b"\0")))
    }
}

/// The first words of a seal.
const WORDS: &str = "breeks seal ";
const DIGITS: usize = 16;
/// Bytes of a seal: its words and two numbers with a blank between.
const LENGTH: usize = WORDS.len() + DIGITS + 1 + DIGITS;

/// Fowler, Noll and Vo's sum 1a of 64 bits (RFC 9923): of nothing, and what it is multiplied by.
const EMPTY: u64 = 0xcbf2_9ce4_8422_2325;
const PRIME: u64 = 0x0000_0100_0000_01b3;

fn summed(sum: u64, bytes: &[u8]) -> u64 {
    bytes.iter().fold(sum, |sum, byte| (sum ^ u64::from(*byte)).wrapping_mul(PRIME))
}

/// The bytes of a file with the seal of its owner; `None` for bytes of no format that this program writes.
pub fn sealed(bytes: &[u8], owner: Owner) -> Option<Vec<u8>> {
    let format = Format::of(bytes)?;
    let content = summed(summed(EMPTY, &owner.0.to_be_bytes()), bytes);
    let seal = format.wrapped(&format!("{WORDS}{:0DIGITS$x} {content:0DIGITS$x}", owner.0));
    let at = format.place(bytes)?;
    let mut sealed = Vec::with_capacity(bytes.len() + seal.len());
    sealed.extend_from_slice(&bytes[..at]);
    sealed.extend_from_slice(&seal);
    if format == Format::Pdf {
        let (table, digits) = table_of_places(bytes)?;
        sealed.extend_from_slice(&bytes[at..digits.start]);
        sealed.extend_from_slice((table + seal.len()).to_string().as_bytes());
        sealed.extend_from_slice(&bytes[digits.end..]);
    } else {
        sealed.extend_from_slice(&bytes[at..]);
    }
    Some(sealed)
}

/// For whom a file was made, and its bytes before it was sealed; `None` where it bears no seal, or was changed since.
pub fn unsealed(sealed_bytes: &[u8]) -> Option<(Owner, Vec<u8>)> {
    let format = Format::of(sealed_bytes)?;
    let long = format.wrapped(&"0".repeat(LENGTH)).len();
    let at = match format {
        // what stands before the seal is as long with it as without
        Format::Svg | Format::Html | Format::Dxf => format.place(sealed_bytes)?,
        Format::Json | Format::Pdf | Format::Png => format.place(sealed_bytes)?.checked_sub(long)?,
    };
    let seal = sealed_bytes.get(at..at + long)?;
    let words = seal.windows(WORDS.len()).position(|window| window == WORDS.as_bytes())? + WORDS.len();
    let number = std::str::from_utf8(seal.get(words..words + DIGITS)?).ok()?;
    let owner = Owner(u64::from_str_radix(number, 16).ok()?);
    let mut bytes = sealed_bytes[..at].to_vec();
    if format == Format::Pdf {
        let (table, digits) = table_of_places(sealed_bytes)?;
        bytes.extend_from_slice(&sealed_bytes[at + long..digits.start]);
        bytes.extend_from_slice(table.checked_sub(long)?.to_string().as_bytes());
        bytes.extend_from_slice(&sealed_bytes[digits.end..]);
    } else {
        bytes.extend_from_slice(&sealed_bytes[at + long..]);
    }
    (sealed(&bytes, owner)? == sealed_bytes).then_some((owner, bytes))
}

#[derive(Clone, Copy, PartialEq, Eq)]
enum Format {
    Svg,
    Html,
    Dxf,
    Json,
    Pdf,
    Png,
}

impl Format {
    const BEGINNINGS: [(&[u8], Self); 6] = [
        (b"<svg ", Self::Svg),
        (b"<!DOCTYPE html>\n", Self::Html),
        (b"{", Self::Json),
        (b"%PDF-", Self::Pdf),
        (b"\x89PNG\r\n\x1a\n", Self::Png),
        (b"  0\r\nSECTION\r\n", Self::Dxf),
    ];

    fn of(bytes: &[u8]) -> Option<Self> {
        let bare = bytes.strip_prefix(b"999\r\n".as_slice());
        // a comment goes before the first section
        let bytes = bare.and_then(|rest| rest.get(LENGTH + "\r\n".len()..)).unwrap_or(bytes);
        Self::BEGINNINGS.iter().find(|(beginning, _)| bytes.starts_with(beginning)).map(|(_, format)| *format)
    }

    /// The seal as this format keeps a remark.
    fn wrapped(self, seal: &str) -> Vec<u8> {
        match self {
            Self::Svg | Self::Html => format!("<!-- {seal} -->\n").into_bytes(),
            Self::Dxf => format!("999\r\n{seal}\r\n").into_bytes(),
            Self::Json => format!(",\n  \"seal\": \"{seal}\"").into_bytes(),
            Self::Pdf => format!("%{seal}\n").into_bytes(),
            Self::Png => chunk(b"tEXt", format!("Comment\0{seal}").as_bytes()),
        }
    }

    /// Where the seal goes; in a file that has one, where it begins or where it ends.
    fn place(self, bytes: &[u8]) -> Option<usize> {
        /// Length, name and check sum of the last chunk, which is empty.
        const END_OF_PNG: usize = 12;
        match self {
            Self::Svg | Self::Html => Some(bytes.iter().position(|byte| *byte == b'\n')? + 1),
            Self::Dxf => Some(0),
            Self::Json => {
                let end = bytes.iter().rposition(|byte| *byte == b'}')?;
                Some(bytes[..end].iter().rposition(|byte| !byte.is_ascii_whitespace())? + 1)
            }
            Self::Pdf => table_of_places(bytes).map(|(table, _)| table),
            Self::Png => bytes.len().checked_sub(END_OF_PNG),
        }
    }
}

/// Where a PDF's table of the places of its objects begins, and where the file says so.
fn table_of_places(pdf: &[u8]) -> Option<(usize, Range<usize>)> {
    const BEFORE: &[u8] = b"startxref\n";
    let start = pdf.windows(BEFORE.len()).rposition(|window| window == BEFORE)? + BEFORE.len();
    let long = pdf[start..].iter().take_while(|byte| byte.is_ascii_digit()).count();
    let table: usize = std::str::from_utf8(&pdf[start..start + long]).ok()?.parse().ok()?;
    pdf.get(table..)?.starts_with(b"xref").then_some((table, start..start + long))
}

/// A chunk of a PNG: its length, name, data and check sum (RFC 2083, section 3.2).
fn chunk(name: &[u8; 4], data: &[u8]) -> Vec<u8> {
    let mut chunk = (data.len() as u32).to_be_bytes().to_vec();
    chunk.extend_from_slice(name);
    chunk.extend_from_slice(data);
    let checked = check_sum(&chunk[4..]);
    chunk.extend_from_slice(&checked.to_be_bytes());
    chunk
}

/// The cyclic redundancy check of PNG (RFC 2083, appendix 15).
fn check_sum(bytes: &[u8]) -> u32 {
    const POLYNOMIAL: u32 = 0xedb8_8320;
    !bytes.iter().fold(u32::MAX, |sum, byte| {
        (0..8).fold(
            sum ^ u32::from(*byte),
            |sum, _| if sum & 1 == 1 { sum >> 1 ^ POLYNOMIAL } else { sum >> 1 },
        )
    })
}

#[cfg(test)]
mod tests {
    use super::*;

    /// A small file of every format.
    fn files() -> Vec<Vec<u8>> {
        let mut png = b"\x89PNG\r\n\x1a\n".to_vec();
        png.extend(chunk(b"IHDR", &[0, 0, 0, 1, 0, 0, 0, 1, 8, 0, 0, 0, 0]));
        png.extend(chunk(b"IEND", b""));
        vec![
            b"<svg xmlns=\"http://www.w3.org/2000/svg\">\n<title>breeks seal</title>\n</svg>\n".to_vec(),
            b"<!DOCTYPE html>\n<html>\n</html>\n".to_vec(),
            b"  0\r\nSECTION\r\n  2\r\nHEADER\r\n".to_vec(),
            b"{\n  \"format\": \"breeks-draft\"\n}\n".to_vec(),
            b"{\"id\":1}\n".to_vec(),
            b"%PDF-1.7\n1 0 obj\n<<>>\nendobj\nxref\n0 1\ntrailer\n<<>>\nstartxref\n29\n%%EOF".to_vec(),
            png,
        ]
    }

    #[test]
    fn owner_of_every_format_read_back() {
        for file in files() {
            let shown = String::from_utf8_lossy(&file).into_owned();
            for name in ["stroke.toml", "five.toml"] {
                let sealed = sealed(&file, Owner::of([name])).unwrap();
                assert_eq!(unsealed(&sealed), Some((Owner::of([name]), file.clone())), "{shown}");
            }
            assert_eq!(unsealed(&file), None, "{shown}");
        }
    }

    #[test]
    fn file_changed_by_one_byte_anywhere_nobodys() {
        for file in files() {
            let sealed = sealed(&file, Owner::of(["stroke.toml"])).unwrap();
            for at in 0..sealed.len() {
                let mut changed = sealed.clone();
                changed[at] ^= 1;
                assert_eq!(unsealed(&changed), None, "byte {at} of {}", String::from_utf8_lossy(&changed));
                assert_eq!(unsealed(&sealed[..at]), None, "the first {at} bytes");
            }
            let longer = [sealed.as_slice(), b"\n"].concat();
            assert_eq!(unsealed(&longer), None);
        }
    }

    #[test]
    fn words_that_run_into_each_other_told_apart() {
        assert_ne!(Owner::of(["ab", "c"]), Owner::of(["a", "bc"]));
        assert_ne!(Owner::of(["a", "b"]), Owner::of(["b", "a"]));
    }

    /// The examples of the specifications.
    #[test]
    fn sums_as_published() {
        assert_eq!(summed(EMPTY, b""), 0xcbf2_9ce4_8422_2325);
        assert_eq!(summed(EMPTY, b"foobar"), 0x8594_4171_f739_67e8);
        assert_eq!(check_sum(b"123456789"), 0xcbf4_3926);
        assert_eq!(check_sum(b"IEND"), 0xae42_6082);
    }

    #[test]
    fn other_formats_not_sealed() {
        assert_eq!(sealed(b"a drawing of my own", Owner::of([""])), None);
        assert_eq!(sealed(b"", Owner::of([""])), None);
    }
}
