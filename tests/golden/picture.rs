//! A picture in memory, and its comparison with the one that is kept.

use std::fs;
use std::io::BufReader;
use std::path::{Path, PathBuf};

/// A channel may differ by so much before a pixel counts as another: text is smoothed a little differently here and there.
const SHADE: u8 = 32;

/// This share of the pixels may be others.
const SHARE: f64 = 0.002;

pub(crate) struct Picture {
    pixels: Vec<u8>,
    width: u32,
    height: u32,
}

/// Where the build puts what it makes.
pub(crate) fn made() -> PathBuf {
    let target = std::env::var_os("CARGO_TARGET_DIR").map(PathBuf::from);
    target.unwrap_or_else(|| Path::new(env!("CARGO_MANIFEST_DIR")).join("target"))
}

impl Picture {
    pub(crate) fn new(pixels: Vec<u8>, width: u32, height: u32) -> Self {
        Self {
            pixels,
            width,
            height,
        }
    }

    /// Half as wide and high: four pixels become their mean.
    pub(crate) fn halved(&self) -> Self {
        let (width, height) = (self.width / 2, self.height / 2);
        let at = |x: u32, y: u32, channel: u32| {
            u32::from(self.pixels[((y * self.width + x) * 3 + channel) as usize])
        };
        let mut pixels = Vec::with_capacity((width * height * 3) as usize);
        for y in (0..height).map(|y| y * 2) {
            for x in (0..width).map(|x| x * 2) {
                for c in 0..3 {
                    let sum = at(x, y, c) + at(x + 1, y, c) + at(x, y + 1, c) + at(x + 1, y + 1, c);
                    pixels.push(u8::try_from(sum / 4).unwrap());
                }
            }
        }
        Self::new(pixels, width, height)
    }

    fn read(path: &Path) -> Option<Self> {
        let file = BufReader::new(fs::File::open(path).ok()?);
        let mut reader = png::Decoder::new(file).read_info().unwrap();
        let mut pixels = vec![0; reader.output_buffer_size().unwrap()];
        let frame = reader.next_frame(&mut pixels).unwrap();
        Some(Self::new(pixels, frame.width, frame.height))
    }

    fn write(&self, path: &Path) {
        fs::create_dir_all(path.parent().unwrap()).unwrap();
        let file = fs::File::create(path).unwrap();
        let mut encoder = png::Encoder::new(file, self.width, self.height);
        encoder.set_color(png::ColorType::Rgb);
        encoder.set_compression(png::Compression::High);
        encoder.set_filter(png::Filter::NoFilter);
        let mut writer = encoder.write_header().unwrap();
        writer.write_image_data(&self.pixels).unwrap();
    }

    /// Share of the pixels that differ.
    fn differs(&self, other: &Self) -> f64 {
        if (self.width, self.height) != (other.width, other.height) {
            return 1.0;
        }
        let pairs = self.pixels.chunks(3).zip(other.pixels.chunks(3));
        let others = pairs
            .filter(|(one, two)| {
                let mut channels = one.iter().zip(*two);
                channels.any(|(one, two)| one.abs_diff(*two) > SHADE)
            })
            .count();
        others as f64 / f64::from(self.width * self.height)
    }

    /// Compares with the picture that is kept under a name, or keeps this one when asked to.
    pub(crate) fn compare(&self, name: &str) {
        let folder = Path::new(env!("CARGO_MANIFEST_DIR")).join("tests/golden/pictures");
        let kept = folder.join(format!("{name}.png"));
        if std::env::var("GOLDEN").is_ok_and(|wish| wish == "keep") {
            self.write(&kept);
            return;
        }
        let new = made().join("golden").join(format!("{name}.png"));
        let Some(old) = Self::read(&kept) else {
            self.write(&new);
            panic!(
                "{name} is not kept yet; it was drawn into {}",
                new.display()
            );
        };
        let share = old.differs(self);
        if share > SHARE {
            self.write(&new);
            panic!(
                "{name} differs in {:.2} % of its pixels; see {}",
                share * 100.0,
                new.display()
            );
        }
    }
}
