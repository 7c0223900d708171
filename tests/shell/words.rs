//! The language of the sentences.

use super::run;

#[test]
fn the_language_is_the_one_asked_for_or_the_systems() {
    assert_eq!(
        run(["--language", "de", "spell", "Hm"]).err,
        "„Hm“ ist kein Akkord.\n"
    );
    let folder = tempfile::tempdir().unwrap();
    let mut command = super::program(folder.path());
    let said = super::finish(command.env("LANG", "es_ES.UTF-8").args(["spell", "Hm"]));
    assert_eq!(said.err, "«Hm» no es un acorde.\n");
}
