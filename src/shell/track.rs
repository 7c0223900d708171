//! A track: what a band plays from its first count until it has faded, at the loudness of the trade, as a WAV file.

use std::io::{self, BufWriter, IsTerminal, Write, stderr};

use ebur128::{EbuR128, Mode};
use hound::{SampleFormat, WavSpec};
use indicatif::{ProgressBar, ProgressStyle};

use fourcourse::band::{Band, Command, TARGET_LUFS};

use super::target::Target;

/// Seconds that the last sound may take to fade.
const FADE_SECONDS: u32 = 4;

/// What is no longer heard: -80 dB.
const SILENT: f32 = 1e-4;

/// Frames rendered in one go.
const CHUNK: usize = 4096;

/// How far a track may be off the wanted loudness before it is measured again, in LU.
const NEAR: f64 = 0.2;

/// How often it is measured at most: where the limiter has much to do, a gain does less than it says.
const MOST_PASSES: usize = 6;

/// The most that a track is made louder, and the least.
const GAINS: std::ops::RangeInclusive<f64> = 0.1..=4.0;

/// How much more is tried than is missing where the limiter takes some of it.
const OVER: f64 = 1.5;

/// Below this the limiter of the band has done nothing.
const CEILING: f32 = 0.89;

/// Any error on the way into a file.
pub(super) type Trouble = Box<dyn std::error::Error>;

/// A band that is about to play, and for how long.
pub(super) struct Track {
    /// Frames a second.
    pub(super) rate: u32,
    /// What the band is told before it begins.
    pub(super) commands: Vec<Command>,
    /// Frames until the tune is over.
    pub(super) frames: u64,
}

/// What came of listening to a track.
#[derive(Clone, Copy)]
struct Heard {
    /// Frames until it has faded.
    frames: u64,
    /// Integrated, after ITU-R BS.1770.
    lufs: f64,
    /// The loudest sample.
    peak: f32,
}

impl Track {
    /// Writes it in 32-bit floating point or 16 bits; gives its length in seconds.
    pub(super) fn write(&self, float: bool, target: &mut Target) -> Result<f64, Trouble> {
        let bar = progress(self.frames);
        let (gain, heard) = self.level(&bar)?;
        let mut out = BufWriter::new(target);
        out.write_all(&header(self.rate, float, heard.frames)?)?;
        bar.set_position(0);
        let mut left = heard.frames;
        self.play(gain, |block| {
            let frames = left.min((block.len() / 2) as u64);
            left -= frames;
            bar.inc(frames);
            #[allow(clippy::cast_possible_truncation)] // of a block
            for &sample in &block[..2 * frames as usize] {
                if float {
                    out.write_all(&sample.to_le_bytes())?;
                } else {
                    // The limiter keeps it below 1.
                    out.write_all(&((sample * 32_767.0).round() as i16).to_le_bytes())?;
                }
            }
            Ok(left > 0)
        })?;
        out.flush()?;
        bar.finish_and_clear();
        #[allow(clippy::cast_precision_loss)] // three hours
        Ok(heard.frames as f64 / f64::from(self.rate))
    }

    /// How much louder than live the band has to play, and what is heard then.
    fn level(&self, bar: &ProgressBar) -> Result<(f32, Heard), Trouble> {
        let mut gain = 1.0;
        let mut heard = self.listen(gain, None, bar)?;
        for pass in 1..MOST_PASSES {
            let mut off = TARGET_LUFS - heard.lufs;
            if !off.is_finite() || off.abs() < NEAR {
                break;
            }
            if pass > 1 && off > 0.0 {
                off *= OVER;
            }
            let wanted =
                (f64::from(gain) * 10_f64.powf(off / 20.0)).clamp(*GAINS.start(), *GAINS.end());
            #[allow(clippy::cast_possible_truncation)] // a factor
            let wanted = wanted as f32;
            let louder = wanted / gain;
            gain = wanted;
            if heard.peak * louder < CEILING && heard.peak < CEILING {
                // The limiter neither did anything nor will: what is heard follows.
                heard.peak *= louder;
                break;
            }
            heard = self.listen(gain, Some(heard.frames), bar)?;
        }
        Ok((gain, heard))
    }

    /// Plays it to nobody, for as long as it lasts or for so many frames.
    fn listen(&self, gain: f32, frames: Option<u64>, bar: &ProgressBar) -> Result<Heard, Trouble> {
        let mut meter = EbuR128::new(2, self.rate, Mode::I | Mode::HISTOGRAM)?;
        let (mut heard, mut peak) = (0, 0.0_f32);
        bar.set_position(0);
        self.play(gain, |block| {
            heard += (block.len() / 2) as u64;
            bar.set_position(heard);
            let loudest = block
                .iter()
                .fold(0.0_f32, |peak, sample| peak.max(sample.abs()));
            peak = peak.max(loudest);
            meter.add_frames_f32(block)?;
            let over = heard >= self.frames && loudest < SILENT;
            Ok(frames.map_or(!over, |frames| heard < frames))
        })?;
        Ok(Heard {
            frames: frames.unwrap_or(heard),
            lufs: meter.loudness_global()?,
            peak,
        })
    }

    /// Plays it, block by block, as long as it is wanted.
    fn play(
        &self,
        gain: f32,
        mut take: impl FnMut(&[f32]) -> Result<bool, Trouble>,
    ) -> Result<(), Trouble> {
        let mut band = Band::new(self.rate);
        band.apply(Command::Gain(gain));
        for command in &self.commands {
            band.apply(command.clone());
        }
        let mut block = [0.0; 2 * CHUNK];
        // What the band holds back is not to be a silence in front.
        let late = band.latency();
        band.fill(&mut block[..2 * late.min(CHUNK)]);
        let end = self.frames + late as u64;
        let most = end + u64::from(FADE_SECONDS * self.rate);
        while band.frame() < most {
            let over = band.frame() >= end;
            if over && band.transport().is_going() {
                band.apply(Command::Stop);
            }
            let left = if over { most } else { end } - band.frame();
            let frames = usize::try_from(left).map_or(CHUNK, |left| left.min(CHUNK));
            let block = &mut block[..2 * frames];
            band.fill(block);
            if !take(block)? {
                break;
            }
        }
        Ok(())
    }
}

/// The header of a file of so many frames. It is known before the first of them, so that a pipe can be written to as well.
fn header(rate: u32, float: bool, frames: u64) -> io::Result<Vec<u8>> {
    let spec = WavSpec {
        channels: 2,
        sample_rate: rate,
        bits_per_sample: if float { 32 } else { 16 },
        sample_format: match float {
            true => SampleFormat::Float,
            false => SampleFormat::Int,
        },
    };
    let mut header = spec.into_header_for_infinite_file();
    let bytes = frames * 2 * u64::from(spec.bits_per_sample / 8);
    let size = |bytes: u64| u32::try_from(bytes).map_err(|_| io::ErrorKind::FileTooLarge);
    let (data, last) = (size(bytes)?, header.len() - 4);
    let riff = size(bytes + header.len() as u64 - 8)?;
    header[4..8].copy_from_slice(&riff.to_le_bytes());
    header[last..].copy_from_slice(&data.to_le_bytes());
    Ok(header)
}

/// A bar on a terminal, and nothing in a file or a pipe.
fn progress(frames: u64) -> ProgressBar {
    if !stderr().is_terminal() {
        return ProgressBar::hidden();
    }
    let bar = ProgressBar::new(frames);
    match ProgressStyle::with_template("{bar:40} {percent:>3} %") {
        Ok(style) => bar.with_style(style),
        Err(_) => bar,
    }
}
