//! How values are written: a version, a check sum, and the value in postcard.
//!
//! Postcard does not describe itself, so the version comes first: it says which mirror of the domain the bytes hold.

use std::collections::BTreeMap;

use crate::chart::Tune;
use crate::desk::{
    BandSettings, Entry, MOST_DELAY_MS, Planned, Played, Practice, SeatSettings, Settings, TuneId,
};

use super::v1;

/// The version that is written.
const VERSION: u8 = 1;

/// Why a value cannot be read.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum ValueError {
    /// A newer app wrote it.
    Newer,
    /// The bytes are not what was written.
    Damaged,
}

fn seal(value: &impl serde::Serialize) -> Vec<u8> {
    // Serialising plain structs into a growing buffer has no way to fail; an empty body would be read as damaged.
    let body = postcard::to_allocvec(value).unwrap_or_default();
    let mut bytes = Vec::with_capacity(body.len() + 5);
    bytes.push(VERSION);
    bytes.extend(crc32fast::hash(&body).to_le_bytes());
    bytes.extend(body);
    bytes
}

/// The version and the body of a value whose check sum is right.
fn open(bytes: &[u8]) -> Result<(u8, &[u8]), ValueError> {
    let (&version, rest) = bytes.split_first().ok_or(ValueError::Damaged)?;
    let (sum, body) = rest.split_first_chunk::<4>().ok_or(ValueError::Damaged)?;
    if crc32fast::hash(body) != u32::from_le_bytes(*sum) {
        return Err(ValueError::Damaged);
    }
    match version {
        1..=VERSION => Ok((version, body)),
        0 => Err(ValueError::Damaged),
        _ => Err(ValueError::Newer),
    }
}

/// Whether a newer app wrote these bytes.
pub(super) fn is_newer(bytes: &[u8]) -> bool {
    open(bytes) == Err(ValueError::Newer)
}

fn read<'a, T: serde::Deserialize<'a>>(bytes: &'a [u8]) -> Result<T, ValueError> {
    let (_version, body) = open(bytes)?;
    // The next version branches here, reads its predecessor's mirror and carries it forward.
    postcard::from_bytes(body).map_err(|_| ValueError::Damaged)
}

pub(super) fn write_tune(tune: &Tune) -> Vec<u8> {
    seal(&v1::Tune::from(tune))
}

pub(super) fn read_tune(bytes: &[u8]) -> Result<Tune, ValueError> {
    read::<v1::Tune>(bytes)?
        .restore()
        .ok_or(ValueError::Damaged)
}

/// The tune with which these bytes begin, and how many of them are its own.
pub(super) fn find_tune(bytes: &[u8]) -> Option<(Tune, usize)> {
    if !(1..=VERSION).contains(bytes.first()?) {
        return None;
    }
    let body = bytes.get(5..)?;
    let (_, rest) = postcard::take_from_bytes::<v1::Tune>(body).ok()?;
    let length = bytes.len() - rest.len();
    // Only now the check sum can be asked for: how long a value is, its bytes alone say.
    let tune = read_tune(&bytes[..length]).ok()?;
    Some((tune, length))
}

pub(super) fn write_entry(entry: &Entry) -> Vec<u8> {
    seal(&v1::Entry::from(entry))
}

pub(super) fn read_entry(id: TuneId, bytes: &[u8]) -> Result<Entry, ValueError> {
    read::<v1::Entry>(bytes)?
        .restore(id)
        .ok_or(ValueError::Damaged)
}

/// The settings without the tunings and the band, which are values of their own: they came when version 1 was frozen.
pub(super) fn write_settings(settings: &Settings) -> Vec<u8> {
    seal(&v1::Settings::from(settings))
}

pub(super) fn read_settings(bytes: &[u8]) -> Result<Settings, ValueError> {
    read::<v1::Settings>(bytes)?
        .restore()
        .ok_or(ValueError::Damaged)
}

pub(super) fn write_tunings(retuned: &BTreeMap<String, Vec<i8>>) -> Vec<u8> {
    seal(&v1::Tunings::from(retuned))
}

pub(super) fn read_tunings(bytes: &[u8]) -> Result<BTreeMap<String, Vec<i8>>, ValueError> {
    read::<v1::Tunings>(bytes).map(v1::Tunings::restore)
}

/// The band, and behind it the delay of the sound where there is one: it came when version 1 was frozen, and an app that
/// does not know of it reads what stands before.
pub(super) fn write_band(band: &BandSettings) -> Vec<u8> {
    match band.delay_ms {
        0 => seal(&v1::Band::from(band)),
        delay => seal(&(v1::Band::from(band), delay)),
    }
}

pub(super) fn read_band(bytes: &[u8]) -> Result<BandSettings, ValueError> {
    let (_version, body) = open(bytes)?;
    let damaged = |_| ValueError::Damaged;
    let (band, more) = postcard::take_from_bytes::<v1::Band>(body).map_err(damaged)?;
    let delay_ms = match more {
        [] => 0,
        more => postcard::from_bytes(more).map_err(damaged)?,
    };
    let band = band.restore().filter(|_| delay_ms <= MOST_DELAY_MS);
    Ok(BandSettings {
        delay_ms,
        ..band.ok_or(ValueError::Damaged)?
    })
}

pub(super) fn write_circle(seats: &[SeatSettings]) -> Vec<u8> {
    let seats: Vec<_> = seats.iter().map(v1::Seat::from).collect();
    seal(&seats)
}

pub(super) fn read_circle(bytes: &[u8]) -> Result<Vec<SeatSettings>, ValueError> {
    let seats = read::<Vec<v1::Seat>>(bytes)?.into_iter();
    let seats: Option<_> = seats.map(v1::Seat::restore).collect();
    seats.ok_or(ValueError::Damaged)
}

pub(super) fn write_tonight(list: &[Planned]) -> Vec<u8> {
    let list: Vec<_> = list.iter().map(v1::Planned::from).collect();
    seal(&list)
}

pub(super) fn read_tonight(bytes: &[u8]) -> Result<Vec<Planned>, ValueError> {
    let list = read::<Vec<v1::Planned>>(bytes)?.into_iter();
    let list: Option<_> = list.map(v1::Planned::restore).collect();
    list.ok_or(ValueError::Damaged)
}

pub(super) fn write_played(played: &Played) -> Vec<u8> {
    seal(&v1::Played::from(played))
}

pub(super) fn read_played(bytes: &[u8]) -> Result<Played, ValueError> {
    let played = read::<v1::Played>(bytes)?.restore();
    played.ok_or(ValueError::Damaged)
}

pub(super) fn write_practice(practice: &Practice) -> Vec<u8> {
    seal(&v1::Practice::from(practice))
}

pub(super) fn read_practice(bytes: &[u8]) -> Result<Practice, ValueError> {
    read::<v1::Practice>(bytes)?
        .restore()
        .ok_or(ValueError::Damaged)
}

/// Whether two tunes are the same but for the dates on them.
pub(super) fn same_tune(a: &Tune, b: &Tune) -> bool {
    let undated = |tune: &Tune| v1::Tune::from(tune).undated();
    undated(a) == undated(b)
}
