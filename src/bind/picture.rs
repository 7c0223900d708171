//! Pictures of any view, drawn in software with no display.

use std::cell::{Cell, RefCell};
use std::rc::Rc;
use std::time::Duration;

use slint::platform::software_renderer::{MinimalSoftwareWindow, RepaintBufferType};
use slint::platform::{Platform, PlatformError, WindowAdapter, WindowEvent};
use slint::{ComponentHandle, PhysicalSize, Rgb8Pixel, SharedPixelBuffer};

use super::{Host, Interface, fonts};

/// Width and height at most, in pixels: beyond this the renderer's own arithmetic ends.
const MOST: f32 = 16_384.0;

/// A view cannot be drawn.
#[derive(Debug, thiserror::Error)]
pub enum NoPicture {
    /// The size is nothing, or beyond 16384 pixels a side.
    #[error("a picture has 1 to 16384 pixels a side")]
    Size,
    /// The toolkit failed.
    #[error(transparent)]
    Toolkit(#[from] PlatformError),
    /// The pixels could not be packed.
    #[error(transparent)]
    Png(#[from] png::EncodingError),
}

thread_local! {
    static PLATFORM: RefCell<Option<Rc<Headless>>> = const { RefCell::new(None) };
}

/// A platform with windows in memory and a clock that stands still until it is told.
struct Headless {
    now: Cell<Duration>,
    window: RefCell<Option<Rc<MinimalSoftwareWindow>>>,
}

struct Hand(Rc<Headless>);

impl Platform for Hand {
    fn create_window_adapter(&self) -> Result<Rc<dyn WindowAdapter>, PlatformError> {
        let window = MinimalSoftwareWindow::new(RepaintBufferType::NewBuffer);
        self.0.window.replace(Some(Rc::clone(&window)));
        Ok(window)
    }

    fn duration_since_start(&self) -> Duration {
        self.0.now.get()
    }
}

fn headless() -> Result<Rc<Headless>, PlatformError> {
    PLATFORM.with(|place| {
        if let Some(there) = place.borrow().as_ref() {
            return Ok(Rc::clone(there));
        }
        let made = Rc::new(Headless {
            now: Cell::default(),
            window: RefCell::default(),
        });
        slint::platform::set_platform(Box::new(Hand(Rc::clone(&made))))
            .map_err(|error| PlatformError::Other(error.to_string()))?;
        fonts::register();
        place.replace(Some(Rc::clone(&made)));
        Ok(made)
    })
}

/// A picture that is being looked at: its window can be touched before the pixels are taken.
pub struct Sitting {
    platform: Rc<Headless>,
    window: Rc<MinimalSoftwareWindow>,
    interface: Interface,
    size: (u32, u32),
}

impl Sitting {
    /// Lays a host's views out at a size in density-independent pixels and so many physical pixels for each of them.
    /// The host sees a clock that stands at `now`.
    ///
    /// # Errors
    /// Where the size is out of bounds, or where this thread already has a window of another kind.
    pub fn new(
        host: Box<dyn Host>,
        (width, height): (u32, u32),
        density: f32,
        now: Duration,
    ) -> Result<Self, NoPicture> {
        let pixels = |side: u32| -> Result<u32, NoPicture> {
            #[allow(clippy::cast_precision_loss)]
            let side = side as f32 * density;
            if !(1.0..=MOST).contains(&side) {
                return Err(NoPicture::Size);
            }
            // In bounds, as was just asked.
            #[allow(clippy::cast_possible_truncation, clippy::cast_sign_loss)]
            Ok(side.round() as u32)
        };
        let size = (pixels(width)?, pixels(height)?);
        let platform = headless()?;
        let interface = Interface::new(host, Box::new(move || now))?;
        interface.app().show()?;
        let window = platform.window.borrow_mut().take();
        let window = window.ok_or(PlatformError::NoPlatform)?;
        window.dispatch_event(WindowEvent::ScaleFactorChanged {
            scale_factor: density,
        });
        window.set_size(PhysicalSize::new(size.0, size.1));
        let sitting = Self {
            platform,
            window,
            interface,
            size,
        };
        sitting.settle();
        Ok(sitting)
    }

    /// The interface that is drawn.
    pub fn interface(&self) -> &Interface {
        &self.interface
    }

    /// Lets what moves come to rest.
    pub fn settle(&self) {
        // What is laid out first may move what comes after it: a few rounds are enough for all of them to end.
        for _ in 0..4 {
            let now = self.platform.now.get();
            self.platform.now.set(now + Duration::from_millis(300));
            slint::platform::update_timers_and_animations();
            self.draw();
        }
    }

    fn draw(&self) -> SharedPixelBuffer<Rgb8Pixel> {
        let (width, height) = self.size;
        let mut pixels = SharedPixelBuffer::<Rgb8Pixel>::new(width, height);
        self.window.request_redraw();
        self.window.draw_if_needed(|renderer| {
            renderer.set_repaint_buffer_type(RepaintBufferType::NewBuffer);
            renderer.render(pixels.make_mut_slice(), width as usize);
        });
        pixels
    }

    /// Draws what has changed into the same pixels as the last time, a frame of 16 ms later, as a window on a screen does.
    pub fn redraw(&self, pixels: &mut SharedPixelBuffer<Rgb8Pixel>) {
        let now = self.platform.now.get();
        self.platform.now.set(now + Duration::from_millis(16));
        slint::platform::update_timers_and_animations();
        self.window.draw_if_needed(|renderer| {
            renderer.set_repaint_buffer_type(RepaintBufferType::ReusedBuffer);
            let width = pixels.width() as usize;
            renderer.render(pixels.make_mut_slice(), width);
        });
    }

    /// The pixels, three bytes each, line by line, with width and height.
    pub fn pixels(&self) -> (Vec<u8>, u32, u32) {
        let pixels = self.draw();
        (pixels.as_bytes().to_vec(), self.size.0, self.size.1)
    }

    /// The picture as a PNG file.
    ///
    /// # Errors
    /// Where packing fails, which memory alone can cause.
    pub fn png(&self) -> Result<Vec<u8>, NoPicture> {
        let (pixels, width, height) = self.pixels();
        let mut file = Vec::new();
        let mut encoder = png::Encoder::new(&mut file, width, height);
        encoder.set_color(png::ColorType::Rgb);
        encoder.set_depth(png::BitDepth::Eight);
        let mut writer = encoder.write_header()?;
        writer.write_image_data(&pixels)?;
        writer.finish()?;
        Ok(file)
    }
}

impl Drop for Sitting {
    fn drop(&mut self) {
        // Hiding fails only where a window was never shown.
        let _ = self.interface.app().hide();
    }
}

/// Draws the room that a host is in as a PNG file; see [`Sitting::new`].
///
/// # Errors
/// As [`Sitting::new`] and [`Sitting::png`].
pub fn render(
    host: Box<dyn Host>,
    size: (u32, u32),
    density: f32,
    now: Duration,
) -> Result<Vec<u8>, NoPicture> {
    Sitting::new(host, size, density, now)?.png()
}
