//! What the clockwork of the band promises.

mod sequencing;
mod transport;
