//! The real way out, through ALSA into a file, beside the offline sound. A program of its own: ALSA reads where to go
//! from the environment, which only a new process can be given. What the machine lacks is said and skipped.

#[cfg(not(all(feature = "sound", target_os = "linux")))]
fn main() {
    println!(
        "SKIPPED: the way through the sound device is looked at on Linux with the sound feature"
    );
}

#[cfg(all(feature = "sound", target_os = "linux"))]
fn main() {
    match std::env::var_os("FOURCOURSE_DEVICE_TEST") {
        Some(_) => linux::play(),
        None => linux::compare(),
    }
}

#[cfg(all(feature = "sound", target_os = "linux"))]
mod linux {
    #![allow(clippy::unwrap_used)] // a test stops where it fails

    use std::fs;
    use std::process::Command as Program;
    use std::sync::Arc;
    use std::thread::sleep;
    use std::time::{Duration, Instant};

    use fourcourse::audio::{RATE, Sound};
    use fourcourse::band::{Band, Command, CountIn, Score, ScoreOptions, Voicings};
    use fourcourse::chart::{Pace, Ticks};

    /// Seconds that are played.
    const SECONDS: u64 = 4;

    fn commands() -> [Command; 3] {
        let text = include_bytes!("../../songbook/millrace-reel.abc");
        let tune = fourcourse::formats::abc::read(text).tunes.remove(0).tune;
        let options = ScoreOptions::fitting(&tune);
        let score = Score::of(&tune, &tune.playing(), &options, &mut Voicings::default());
        let (from, count) = ((0, Ticks::ZERO), CountIn::default());
        [
            Command::Score(Arc::new(score)),
            Command::Tempo(tune.tempo_or_fitting(Pace::Danced)),
            Command::Play { from, count },
        ]
    }

    /// Plays through whatever the environment says is the sound device, and prints how it was heard and what the clock
    /// said beside the wall clock.
    pub(super) fn play() {
        let start = Instant::now();
        let mut sound = Sound::with_device(move || start.elapsed());
        sound.switch_on(start.elapsed());
        for command in commands() {
            sound.send(start.elapsed(), command);
        }
        let mut seen = Vec::new();
        while start.elapsed() < Duration::from_secs(SECONDS) {
            sleep(Duration::from_millis(10));
            let now = start.elapsed();
            seen.push((now, sound.frame(now)));
        }
        let heard = sound.heard();
        sound.switch_off(start.elapsed());
        let steady = &seen[seen.len() / 2..];
        let (first, last) = (steady[0], steady[steady.len() - 1]);
        let frames = (last.1 - first.1) as f64;
        let seconds = (last.0 - first.0).as_secs_f64();
        println!("{heard:?} {:.4}", frames / seconds / f64::from(RATE));
        // The device is closed on a thread of its own.
        sleep(Duration::from_millis(500));
    }

    fn child(folder: &std::path::Path, config: &str) -> String {
        let file = folder.join("asound.conf");
        fs::write(&file, config).unwrap();
        let ran = Program::new(std::env::current_exe().unwrap())
            .env("FOURCOURSE_DEVICE_TEST", "play")
            .env("ALSA_CONFIG_PATH", &file)
            .output()
            .unwrap();
        assert!(
            ran.status.success(),
            "{}",
            String::from_utf8_lossy(&ran.stderr)
        );
        String::from_utf8(ran.stdout).unwrap()
    }

    pub(super) fn compare() {
        let folder = tempfile::tempdir().unwrap();
        // No device at all: the tune goes on silently, in time.
        let said = child(folder.path(), "");
        assert!(said.starts_with("NoDevice 1.0"), "{said}");
        println!("ok: no device: {}", said.trim());

        // A device that takes everything at once is no device: it runs away.
        let null = "pcm.!default { type null }\n";
        let said = child(folder.path(), null);
        assert!(said.starts_with("DeviceLost 1.0"), "{said}");
        println!("ok: a device that runs away: {}", said.trim());

        if Program::new("pv").arg("--version").output().is_err() {
            println!("SKIPPED: a device that writes to a file: there is no pv to give it its pace");
            return;
        }
        let out = folder.path().join("out.raw");
        let bytes = RATE * 4;
        let config = format!(
            "pcm.!default {{ type file slave.pcm {{ type null }} file \"| pv -qL {bytes} > {}\" format raw }}\n",
            out.display()
        );
        // A machine that is busy with other work may not keep the pace of a sound card; what came out is compared anyway.
        let mut said = child(folder.path(), &config);
        for _ in 0..2 {
            if !said.starts_with("Aloud") {
                said = child(folder.path(), &config);
            }
        }
        let raw = fs::read(&out).unwrap_or_default();
        if raw.is_empty() {
            println!(
                "SKIPPED: a device that writes to a file: this ALSA has none ({})",
                said.trim()
            );
            return;
        }
        println!("ok: a device that writes to a file: {}", said.trim());
        same(&raw);
    }

    /// What came out is what the band plays offline, to one part of 16 bits.
    fn same(raw: &[u8]) {
        let came: Vec<i16> = raw
            .chunks_exact(2)
            .map(|two| i16::from_le_bytes([two[0], two[1]]))
            .collect();
        let mut band = Band::new(RATE);
        for command in commands() {
            band.apply(command);
        }
        // As many seconds as are played.
        let mut offline = vec![0.0_f32; 2 * RATE as usize * 4];
        band.fill(&mut offline);
        // tinyaudio cuts to 16 bits, towards zero.
        #[expect(
            clippy::cast_possible_truncation,
            reason = "the limiter keeps it below 1"
        )]
        let offline: Vec<i16> = offline
            .iter()
            .map(|sample| (sample * f32::from(i16::MAX)) as i16)
            .collect();
        let start = |sound: &[i16]| {
            sound
                .iter()
                .position(|&sample| sample != 0)
                .unwrap_or(sound.len())
                & !1
        };
        let (came, offline) = (&came[start(&came)..], &offline[start(&offline)..]);
        let both = came.len().min(offline.len());
        let worst = came.iter().zip(offline).map(|(a, b)| a.abs_diff(*b)).max();
        if both < RATE as usize {
            println!("SKIPPED: the device was lost too soon: {both} samples");
            return;
        }
        assert_eq!(worst, Some(0), "in {both} samples");
        println!("ok: {both} samples are those of the offline sound");
    }
}
