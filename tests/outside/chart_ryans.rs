//! Parts, repeats and pickups in real dance tunes: 265 of Ryan's Mammoth Collection (`fixtures/ryans/ryans.abc`).

use fourcourse::formats::abc;

#[test]
fn the_parts_of_dance_tunes_come_out_in_fours_as_a_player_counts_them() {
    // Common practice: a part is 4, 8 or 16 bars, with its pickup joined to the short bar at its end. The rest of the
    // collection's parts are crooked as printed, slips of the pen, or songs;
    // the share was 97.5 % when it was first counted.
    let (mut runs, mut fours) = (0, 0);
    for read in abc::read(include_bytes!("fixtures/ryans/ryans.abc")).tunes {
        let playing = read.tune.playing();
        let mut at = 0;
        while at < playing.bars.len() {
            runs += 1;
            fours += usize::from(playing.count(at) % 4 == 0);
            at = playing.run(at).end;
        }
    }
    assert!(runs > 950, "{runs} runs through parts");
    assert!(fours * 100 >= runs * 97, "{fours} of {runs} are in fours");
}
