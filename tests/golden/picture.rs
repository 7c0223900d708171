//! A picture in memory, and its comparison with the one that is kept.

use std::fs;
use std::io::BufReader;
use std::path::{Path, PathBuf};

use color_quant::NeuQuant;

/// A channel may differ by so much before a pixel counts as another: text is smoothed a little differently here and there.
const SHADE: u8 = 32;

/// This share of the pixels may be others.
const SHARE: f64 = 0.002;

/// A channel may differ by so much on the average over the whole picture: few colours are not quite the same colours.
const MEAN: f64 = 1.5;

/// Colours of a picture that is kept.
const COLOURS: usize = 64;

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
        let mut decoder = png::Decoder::new(file);
        decoder.set_transformations(png::Transformations::EXPAND);
        let mut reader = decoder.read_info().unwrap();
        let mut pixels = vec![0; reader.output_buffer_size().unwrap()];
        let frame = reader.next_frame(&mut pixels).unwrap();
        Some(Self::new(pixels, frame.width, frame.height))
    }

    /// Writes it with few colours, so that it is small.
    fn write(&self, path: &Path) {
        let opaque = |pixel: &[u8]| [pixel[0], pixel[1], pixel[2], 255];
        let pixels: Vec<u8> = self.pixels.chunks(3).flat_map(opaque).collect();
        let palette = NeuQuant::new(1, COLOURS, &pixels);
        let places = pixels.chunks(4).map(|pixel| palette.index_of(pixel));
        let places: Vec<u8> = places.map(|place| u8::try_from(place).unwrap()).collect();

        fs::create_dir_all(path.parent().unwrap()).unwrap();
        let file = fs::File::create(path).unwrap();
        let mut encoder = png::Encoder::new(file, self.width, self.height);
        encoder.set_color(png::ColorType::Indexed);
        encoder.set_palette(palette.color_map_rgb());
        encoder.set_compression(png::Compression::High);
        encoder.set_filter(png::Filter::NoFilter);
        let mut writer = encoder.write_header().unwrap();
        writer.write_image_data(&places).unwrap();
    }

    /// Share of the pixels that differ, and by how much a channel differs on the average.
    fn differs(&self, other: &Self) -> (f64, f64) {
        if (self.width, self.height) != (other.width, other.height) {
            return (1.0, 255.0);
        }
        let by = |(one, two): (&u8, &u8)| one.abs_diff(*two);
        let pairs = self.pixels.chunks(3).zip(other.pixels.chunks(3));
        let others = pairs
            .filter(|(one, two)| one.iter().zip(*two).map(by).any(|by| by > SHADE))
            .count();
        let sum: u64 = self
            .pixels
            .iter()
            .zip(&other.pixels)
            .map(by)
            .map(u64::from)
            .sum();
        let pixels = f64::from(self.width * self.height);
        #[allow(clippy::cast_precision_loss)]
        (others as f64 / pixels, sum as f64 / (pixels * 3.0))
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
        let (share, mean) = old.differs(self);
        if share > SHARE || mean > MEAN {
            self.write(&new);
            panic!(
                "{name} differs in {:.2} % of its pixels, by {mean:.2} on the average; see {}",
                share * 100.0,
                new.display()
            );
        }
    }
}
