close = Schließen
settings = Einstellungen
called = Gerufen
tonight = Heute
circle = Runde
porch = Veranda

## Songbook

songbook = Liederbuch
songbook-search = Stück suchen
songbook-clear-search = Suche leeren
songbook-key = Tonart
songbook-rhythm = Art
songbook-known = Meine Griffe
songbook-all-keys = Alle Tonarten
songbook-all-rhythms = Alle Arten
songbook-to-stand = Zum Pult:
songbook-stand = Pult
songbook-empty = Im Liederbuch ist noch kein Stück.
songbook-nothing-fits = Zu diesen Wörtern und Filtern passt kein Stück.
songbook-restore = Mitgelieferte Stücke zurückholen
songbook-show-all = Alle Stücke zeigen
songbook-count = { $count ->
    [one] { $count } Stück
   *[other] { $count } Stücke
}
songbook-count-of = { $shown } von { $count }
tune-starts-open = beginnt: { $course } leer
tune-starts-fret = beginnt: { $course }-Saite, { $fret }. Bund

## Stand

stand-empty = Auf dem Pult liegt kein Stück.
stand-empty-action = Stück aussuchen
stand-back = Zurück zum Liederbuch
stand-key = Tonart
stand-clock-start = Puls starten
stand-clock-stop = Puls anhalten
stand-bar = Takt
stand-bar-back = Einen Takt zurück
stand-next-bar = Nächster Takt
stand-this-is-one = Hier ist die 1
stand-hold = Anhalten
stand-go-on = Weiter
stand-next = Nächster
stand-no-next = Bleibt bis zum Schluss
stand-let-ring = Leersaiten
stand-part = Teil
stand-key-down = − Halbton
stand-key-up = + Halbton
stand-as-written = Wie notiert
stand-written-in = notiert in { $key }
stand-names = Akkordnamen
names-letters = Symbole
names-numbers = Stufen
names-both = Beides
stand-simpler = Akkorde
simpler-written = Wie notiert
simpler-triads = Dreiklänge
simpler-three = Nur drei
stand-playing = Beim Spielen
stand-tempo = Tempo
stand-slower = Langsamer
stand-faster = Schneller
stand-tap-tempo = Tempo tippen
stand-times = Durchgänge
stand-times-less = Weniger Durchgänge
stand-times-more = Mehr Durchgänge
stand-last-time = Das ist der letzte Durchgang
stand-capo = Kapodaster
stand-capo-less = Kapodaster tiefer
stand-capo-more = Kapodaster höher
capo-none = ohne
stand-other-shape = Anderer Griff
stand-shape-of = { $which } von { $count }
stand-time = { $time }. Durchgang
stand-time-of = Durchgang { $time }/{ $times }
stand-last = letzter Durchgang
stand-bar-of = Takt { $bar } von { $bars }
stand-open-end = ohne Ende
state-waiting = Tippen zum Start
state-now = Jetzt
state-count-in = Einzählen
state-held = Angehalten
state-ended = Schluss
chord-none = Kein Akkord
chord-degree = Stufe { $number }
chord-played-as = greife { $chord }
next-in-beats = { $beats ->
    [one] in 1 Schlag
   *[other] in { $beats } Schlägen
}
next-in-bars = { $bars ->
    [one] in 1 Takt
   *[other] in { $bars } Takten
}
missing-root = ohne Grundton
missing-third = ohne Terz
missing-fifth = ohne Quinte
missing-seventh = ohne Septime
missing-other = ein Ton fehlt
missing-bass = Bass spielen andere
shape-said = { $chord }: { $courses }
course-open = { $course } leer
course-fret = { $course } Bund { $fret }
course-fret-finger = { $course } Bund { $fret } Finger { $finger }
course-mute = { $course } nicht spielen
ring-yes = { $course }: klingen lassen
ring-leave = { $course }: weglassen
ring-clash = { $course }: reibt sich
strum-said = Schlagmuster: { $strokes }
stroke-down = ab
stroke-up = auf
stroke-silent = Leerschlag
stroke-bass = Bass
stroke-chop = gedämpft
map-bar = Takt mit { $chords }
map-bar-same = Takt, gleicher Akkord
map-pickup = Auftakt
form-chip = Teil { $part }
form-chip-pass = Teil { $part }, zum { $pass }. Mal

## Called

called-call = Stück oder Tonart
called-held = Griff
called-search = Welches Stück?
called-empty = Tippe ein paar Buchstaben des Titels, oder berühre die gerufene Tonart.
called-nothing = So heißt kein Stück. Eine Tonart allein genügt auch.
called-more = und { $count } weitere: noch ein Buchstabe
called-relative = Gleiche Töne
called-parallel = Gleiche Tonika
called-more-modes = Mehr Modi
called-fewer-modes = Weniger Modi
called-to-stand = Aufs Pult in { $key }
called-begins = erster Akkord { $chord }
called-capo-none = ohne Kapo: { $chords }
called-capo = Kapo { $fret }: { $chords }
called-tuned-anew = gestimmt { $strings }
called-tuned-capo = { $tuning }, Kapo { $fret }
called-scale-said = Die Tonleiter auf dem Griffbrett: { $notes }
called-whose-hand = Wessen Hand?
called-whose-no-capo = { $instrument } · ohne Kapo
called-whose-capo = { $instrument } · Kapo { $fret }
called-touch-frets = Berühre, wo die Finger sind. Über dem Sattel klingt ein Chor leer oder gar nicht.
called-silent = Nichts klingt: jeder Chor ist ausgelassen.
called-no-name = Kein einfacher Akkord hat genau diese Töne:
called-sounds = klingt { $notes }
called-release = Alle Finger weg
ring-scale = { $course }: in der Tonart
ring-outside = { $course }: nicht in der Tonart

## Safe to strum

safe = Leichter
safe-said = Leichter, oder etwas, das sicher passt
safe-over = Sicher über Teil { $part }
safe-over-tune = Sicher über allem
safe-note = oder ein Ton: { $note }, { $course } leer
safe-note-fret = oder ein Ton: { $note }, { $course }-Saite, Bund { $fret }
safe-note-alone = oder ein Ton: { $note }
safe-fits-nearly = passt fast überall
safe-fits-most = passt meistens
safe-fits-some = passt stellenweise
safe-none = Hier steht kein Akkord, über dem etwas sicher wäre.
map-line = Zeile
stand-called = Jemand ruft ein Stück oder eine Tonart
## Die Runde

seat-singer = Stimme
seat-in-b-flat = Instrument in B
seat-in-e-flat = Instrument in Es
seat-in-f = Instrument in F
seat-in-c = Melodieinstrument
seat-you = du
seat-no-capo = ohne Kapo: Griffe von { $key }
seat-capo-at = Kapo { $fret }: Griffe von { $key }
seat-tuned = gestimmt { $notes }
seat-reads = liest { $key }
seat-range = singt { $low } bis { $high }
seat-too-high = zu hoch: { $note } über { $top }
seat-too-low = zu tief: { $note } unter { $bottom }
seat-fits = { $low } bis { $high } passt
seat-new-shapes = { $count ->
    [one] 1 neuer Griff
   *[other] { $count } neue Griffe
}
seat-hardest = am schwersten: { $chord }
seat-below = Melodie geht unter die tiefste Saite
seat-fret = Melodie bis Bund { $fret }
seat-drones = leere Saiten klingen mit
seat-put-back = Zurück: { $seat }
seat-show = Hinüberzeigen: { $seat }
seat-change = Ändern: { $seat }
ease-easy = leicht
ease-fair = mit Vorsicht
ease-hard = schwer
key-easy = Leicht
key-easy-for-all = Leicht für alle
key-hard = Schwer: { $names }
key-care = Achtung: { $names }
key-several = { $count } Plätze
key-called = gerufen
key-written = wie notiert
key-play = In { $key } spielen
voice-group = Alle
voice-soprano = Sopran
voice-mezzo = Mezzo
voice-alto = Alt
voice-tenor = Tenor
voice-baritone = Bariton
voice-bass = Bass
circle-sounds = klingt
circle-tune = Stück:
circle-choose-tune = Stück wählen
circle-of-stand = Das Stück auf dem Pult
circle-no-tune = Die beste Tonart gibt es für ein Stück: wähle eines.
circle-seats = Plätze
circle-add = Platz dazu
circle-across = Hinüberzeigen
across-turn = Drehen
best-key = Am besten für diese Runde
best-keys = Beste Tonart
seat-name = Name
seat-player = Das bist du. Instrument, Stimmung und Hand stehen in den Einstellungen.
seat-capo = Kapodaster
capo-never = nie
capo-up-to = bis zu
capo-always = immer
seat-capo-fret = Bund
seat-knows = Kann diese Griffe
knows-all = Alle
knows-first = Die der ersten Stunden
knows-four = Vier für den Anfang
knows-marked = Die in den Einstellungen markierten
seat-voice = Stimme
seat-sings = Singt
seat-high = Höchster Ton
seat-high-less = Höchster Ton tiefer
seat-high-more = Höchster Ton höher
seat-low = Tiefster Ton
seat-low-less = Tiefster Ton tiefer
seat-low-more = Tiefster Ton höher
seat-voice-care = Stelle ein, was ohne Anstrengung geht, und höre auf, wenn es wehtut oder heiser wird. Wer Gesang lehrt, kennt deine Stimme besser als eine Liste.
seat-earlier = Nach vorn
seat-later = Nach hinten
seat-remove = Platz wegnehmen

## Die Liste für heute

last-never = noch nicht gespielt
last-tonight = heute in { $key } gespielt
last-yesterday = gestern in { $key }
last-days = vor { $days } Tagen in { $key }
save-said = Nach Tonart geordnet spart ihr { $what }.
save-pegs = { $count ->
    [one] 1 Wirbeldrehung
   *[other] { $count } Wirbeldrehungen
}
save-capos = { $count ->
    [one] 1 Kapowechsel
   *[other] { $count } Kapowechsel
}
save-keys = { $count ->
    [one] 1 Tonartwechsel
   *[other] { $count } Tonartwechsel
}
undo-removed = Zurück: { $title }
undo-reordered = Zurück zur Ordnung davor
yesterday = Gestern
date = { $day }.{ $month }.{ $year }
tonight-list = Liste
tonight-played = Gespielt
tonight-add = Stücke dazu
tonight-edit = Liste ändern
tonight-done = Fertig
tonight-empty = Auf der Liste für heute steht noch nichts.
tonight-nothing-played = Was auf dem Pult bis ans Ende eines Durchgangs gespielt wird, steht dann hier, mit seiner Tonart.
tonight-next = Spielen:
tonight-up = Früher:
tonight-down = Später:
tonight-key-down = Tiefer:
tonight-key-up = Höher:
tonight-remove = Von der Liste:
tonight-by-keys = Nach Tonart
tonight-unplayed = Nicht gespielt seit
unplayed-any = egal
unplayed-weeks = 2 Wo.
unplayed-months = 2 Mon.
unplayed-year = 1 Jahr
tonight-everyone = Nur Griffe, die alle können
retune-care = Von unten an den Ton stimmen, das Gesicht abgewandt: Eine zu straffe Saite kann reißen.
stand-listed = Auf der Liste für heute
stand-next-tune = Nächstes Stück
stand-next-is = Als Nächstes:

## Die Band

stand-band = Band
band-said = Band, { $bpm } Schläge in der Minute. { $heard }
band-play = Los
band-stop = Stopp
band-sound = Ton
band-sound-off = Das Pult hält still den Takt.
band-sound-on = Die Band ist zu hören.
band-sound-none = Stumm: Es gibt kein Tongerät.
band-sound-lost = Stumm: Das Tongerät ist weg. Ein neuer Start sucht es wieder.
band-missing-none = kein Tongerät
band-missing-lost = Ton verloren
band-loudness = Lautstärke
band-care = Leise anfangen, vor allem mit Kopfhörern: Was lange laut ist, schadet dem Gehör für immer.
band-delay = Funkverzögerung
band-delay-detail = Kopfhörer und Lautsprecher ohne Kabel klingen verspätet. Stelle höher, bis das Pult mit dem geht, was du hörst.
band-delay-less = Weniger Verzögerung
band-delay-more = Mehr Verzögerung
band-choose = Takte auf der Karte wählen
stand-choose-first = Berühre den ersten Takt
stand-choose-last = Berühre den letzten Takt
stand-choose-not = Abbrechen
band-players = Spieler
player-melody = Melodie
player-chop = Chop
player-guitar = Gitarre
player-bass = Bass
player-drones = Bordun
player-click = Klick
band-level = { $player }: wie laut
band-mute = { $player } stumm
band-unmute = { $player } spielt mit
band-loop = Immer wieder
band-whole = Ganzes Stück
band-this-part = Dieser Teil
band-from = Von Takt
band-from-less = Einen Takt früher beginnen
band-from-more = Einen Takt später beginnen
band-to = Bis Takt
band-to-less = Einen Takt früher enden
band-to-more = Einen Takt später enden
band-ramp = Nach jedem glatten Durchgang schneller
band-ramp-detail = Glatt heißt: nicht angehalten, nicht gesprungen, nicht gezogen.
band-percent = Schneller um
band-percent-less = Weniger bei jedem Durchgang
band-percent-more = Mehr bei jedem Durchgang
band-ceiling = Höchstens
band-ceiling-less = Tiefere Grenze
band-ceiling-more = Höhere Grenze
band-count-in = Einzählen
band-style = Wie sie begleitet
band-style-fits = { $style }, passt zum Stück
band-ending = Wie sie aufhört
band-human = Ungleich wie Menschen
band-human-detail = Hände etwas spät, Schläge etwas leiser oder lauter
band-alone = Allein, ohne das Stück
band-metronome = Metronom
band-drones = Bordun
band-tuning = Saiten zum Stimmen
band-string = { $note } zum Stimmen
band-a4 = Kammerton A
band-a4-less = Tieferes A
band-a4-more = Höheres A

## Settings

settings-back = Zurück
settings-instrument = Instrument
settings-tuning = Stimmung
settings-tune-down = { $course } einen Halbton tiefer
settings-tune-up = { $course } einen Halbton höher
settings-tuning-care = Eine Saite ist über ihre übliche Tonhöhe gestimmt: Stimme von unten herauf und mit abgewandtem Gesicht. Eine zu stark gespannte Saite kann reißen.
settings-left-handed = Linkshändig
settings-left-handed-detail = Griffe werden gespiegelt gezeichnet
settings-looks = Aussehen
settings-theme = Farben
theme-ebony = Ebenholz
theme-spruce = Fichte
theme-sun = Pralle Sonne
settings-less-motion = Weniger Bewegung
settings-less-motion-detail = Es bewegt sich nur, was muss
settings-words = Sprache und Noten
settings-language = Sprache
language-system = Wie das Gerät
settings-note-names = Notennamen
settings-known = Meine Griffe
settings-known-detail = Markiere die Akkorde, die deine Hand von selbst findet. Das Liederbuch kann dann die Stücke zeigen, die mit ihnen auskommen.
settings-restore-detail = Die mitgelieferten Stücke kommen zurück; deine eigenen bleiben.
settings-care = Gib auf dich acht
settings-care-text = In der Session kann es laut werden: Eine Stunde neben einem Banjo verlangt Gehörschutz. Gönn deinen Händen in jeder halben Stunde fünf Minuten Pause und hör auf, wenn etwas wehtut. Hier blitzt nichts, und was sich bewegt, lässt sich oben abstellen. Stimme von unten herauf und mit abgewandtem Gesicht: Eine zu stark gespannte Saite kann reißen.
settings-about = Über Fourcourse
settings-about-text = Fourcourse steht dir in der Session bei, ohne Netz und ohne Konto.
settings-version = Version { $version }

## Instruments

instrument-mandolin = Mandoline
instrument-octave-mandolin = Oktavmandoline
instrument-mandola = Mandola
instrument-tenor-banjo = Tenorbanjo
instrument-irish-tenor-banjo = Irisches Tenorbanjo
instrument-tenor-guitar = Tenorgitarre
instrument-guitar = Gitarre
instrument-ukulele = Ukulele
instrument-baritone-ukulele = Baritonukulele
instrument-banjo = 5-saitiges Banjo
instrument-fiddle = Geige
instrument-bass = Bass
instrument-five-string-bass = Fünfsaitiger Bass
instrument-custom = Eigene Stimmung

## Rhythms

rhythm-reel = Reel
rhythm-jig = Jig
rhythm-slip-jig = Slip Jig
rhythm-slide = Slide
rhythm-hornpipe = Hornpipe
rhythm-polka = Polka
rhythm-waltz = Walzer
rhythm-mazurka = Mazurka
rhythm-march = Marsch
rhythm-schottische = Schottisch
rhythm-barn-dance = Barn Dance
rhythm-strathspey = Strathspey
rhythm-song = Lied
rhythm-air = Air
rhythm-swing = Swing
rhythm-rag = Ragtime
rhythm-calypso = Calypso

## How the band plays

style-boom-chuck = Wechselbass
style-reel = Reel
style-jig = Jig
style-slip-jig = Slip Jig
style-hornpipe = Hornpipe
style-march = Marsch
style-polka = Polka
style-waltz = Walzer
style-swing = Swing
style-air = Air
style-strum = Schlagmuster
ending-plain = wie geschrieben
ending-held = Akkord gehalten
ending-tag = Zeile nochmal

## Modes

mode-major = Dur
mode-minor = Moll
mode-dorian = dorisch
mode-phrygian = phrygisch
mode-lydian = lydisch
mode-mixolydian = mixolydisch
mode-locrian = lokrisch

## What went wrong

notice-tune-unreadable = Dieses Stück ist nicht mehr lesbar.
notice-settings-not-kept = Die Einstellungen gelten für heute Abend, ließen sich aber nicht speichern.
notice-evening-not-kept = Runde und Liste gelten für heute Abend, konnten aber nicht aufbewahrt werden.
notice-not-restored = Die mitgelieferten Stücke ließen sich nicht zurückholen.
notice-set-aside = { $rescued ->
    [0] Das Liederbuch war nicht lesbar. Die alte Datei liegt beiseite als { $file }.
    [1] Das Liederbuch war beschädigt. Ein Stück ließ sich übernehmen; die alte Datei liegt beiseite als { $file }.
   *[other] Das Liederbuch war beschädigt. { $rescued } Stücke ließen sich übernehmen; die alte Datei liegt beiseite als { $file }.
}
notice-set-aside-newer = Dieses Liederbuch stammt von einem neueren Fourcourse. Die Datei liegt beiseite als { $file }.
notice-nothing-kept = Heute Abend lässt sich nichts speichern: Das Liederbuch ist nur im Arbeitsspeicher.
notice-read-only = Heute Abend lässt sich nichts speichern: Das Liederbuch lässt sich lesen, aber nicht beschreiben.

## When the window cannot open

window-no-display = Es gibt keinen Bildschirm für das Fenster. „fourcourse picture“ zeichnet jede Ansicht auch ohne ihn in eine Datei.
window-failed = Das Fenster ließ sich nicht öffnen: { $why }

## Auf der Befehlszeile

shell-no-chord = „{ $text }“ ist kein Akkord.
shell-no-key = „{ $text }“ ist keine Tonart wie A, Es oder F#m.
shell-no-key-or-chord = „{ $text }“ ist weder eine Tonart noch ein Akkord.
shell-no-instrument = Ein Instrument „{ $text }“ gibt es nicht. Bekannt sind { $known }.
shell-no-shape = Keine Hand kann { $chord } hier greifen ({ $instrument }).
shell-no-tune = In { $file } steht kein Stück.
shell-file-unreadable = { $file } lässt sich nicht lesen: { $why }
shell-file-unwritable = { $file } lässt sich nicht schreiben: { $why }
shell-tune-unknown = Kein Stück im Liederbuch heißt „{ $text }“. „fourcourse list“ zeigt alle.
shell-many-tunes = Mehrere Stücke passen zu „{ $text }“:
shell-many-in-file = In { $file } stehen mehrere Stücke. Nimm die Datei ins Liederbuch auf, um eines zu wählen:
shell-songbook-in-use = Das Liederbuch ist in einem anderen Fenster oder Befehl offen. Schließe das Fenster oder warte auf den Befehl, und versuche es noch einmal.
shell-songbook-folder = Der Ordner des Liederbuchs ist nicht zu gebrauchen: { $why }
shell-songbook-failed = Das Liederbuch ließ sich nicht schreiben: { $why }
shell-no-home = Dieses System nennt keinen Ordner für das Liederbuch. Nenne einen mit --data-folder.
shell-no-app = Dieses fourcourse hat kein Fenster, nur die Befehle. „fourcourse help“ zählt sie auf.
shell-no-picture = Dieses fourcourse hat kein Fenster und zeichnet keine Bilder.
shell-no-bar = Einen Takt { $bar } hat das Stück nicht; es hat { $bars }.
shell-picture-failed = Das Bild ließ sich nicht zeichnen: { $why }
shell-read-counts = { $bars ->
    [one] 1 Takt
   *[other] { $bars } Takte
}, { $notes ->
    [one] 1 Ton
   *[other] { $notes } Töne
}
shell-out-unwritable = Die Antwort ließ sich nicht ausgeben: { $why }
shell-no-tune-in-input = In dem, was hereinkam, steht kein Stück.
shell-many-in-input = In dem, was hereinkam, stehen mehrere Stücke. Nimm sie ins Liederbuch auf, um eines zu wählen:
shell-untitled = Ohne Titel
shell-band-no-music = Das Stück hat keine Takte zum Spielen.
shell-band-too-long = Die Datei würde länger als drei Stunden dauern. Lass es weniger oft oder schneller spielen.
shell-loop-backwards = Takt { $first } kommt nach Takt { $last }. Das Stück hat die Takte 1 bis { $bars }: nenne den ersten zuerst.
shell-loop-outside = Einen Takt { $bar } gibt es nicht. So wie es gespielt wird, mit Wiederholungen, hat das Stück die Takte 1 bis { $bars }.
shell-keeps-mode = Ein Stück behält sein Tongeschlecht: dies ist { $key }, nicht { $called }.
shell-band-tempo = { $beat ->
    [half] Halbe
    [quarter] Viertel
    [dotted-quarter] punktierte Viertel
    [eighth] Achtel
    [dotted-half] punktierte Halbe
   *[other] { $note }-Note
} = { $bpm }
shell-band-times = { $times ->
    [one] einmal durch
   *[other] { $times } Durchgänge
}
shell-band-loop = { $times ->
    [one] Takte { $first } bis { $last } einmal
   *[other] Takte { $first } bis { $last }, { $times } Mal
}
shell-added = Aufgenommen: { $title }
shell-added-before = Schon vorhanden: { $title }
shell-ring-chord = Leere Saiten über { $chord }
shell-ring-key = Leere Saiten für ein Stück in { $key }
shell-ring-fits = klingt mit
shell-ring-colour = färbt den Akkord
shell-ring-clash = reibt sich mit { $note }
shell-ring-drone = klingt als Bordun durch
shell-ring-half-drone = Grundton oder Quinte, ohne Gegenstück
shell-ring-scale = gehört zur Tonart
shell-ring-outside = außerhalb der Tonart
shell-key-others = parallel { $relative }, gleichnamig { $parallel }
shell-key-fret = Bund
shell-key-rings = klingen lassen
shell-key-leave = weglassen
shell-key-capo = Kapodaster Gitarre (Griffe)
shell-key-setup-capo = Kapodaster { $fret }, fünfte Saite { $fret } höher
shell-key-written = notiert
shell-name-notes = klingt { $notes }
shell-name-none = Kein einfacher Akkord hat genau diese Töne.
shell-name-lowest = { $note } liegt unten: { $symbol }
shell-name-foreign = { $note } unter dem Akkord
shell-name-not-a-fret = „{ $text }“ ist weder ein Bund noch ein x.
shell-name-courses = { $given } Bünde für { $courses } Chöre ({ $instrument }).
shell-name-off-the-neck = Chor { $course } hat dort keinen Bund { $fret } ({ $instrument }).
shell-name-silent = Nichts klingt: Kein Chor wird gespielt.
shell-capo-title = { $key } ({ $instrument }): gegriffen { $arrow } klingt
shell-capo-none = ohne Kapodaster: { $key }-Griffe
shell-capo-at = Kapodaster { $fret }: { $key }-Griffe
shell-best-title = { $title }, geschrieben in { $key }
shell-best-lead = Je länger der Balken, desto besser für alle; dahinter, was am meisten stört.
shell-best-written = wie geschrieben
shell-best-reader = Instrument in { $pitch }
shell-best-singer = Stimme { $range }
shell-best-nobody = Noch sitzt niemand im Kreis: Nenne ein --seat oder einen --singer.
shell-best-no-range = „{ $text }“ ist kein Stimmumfang wie A3-D5 oder tenor.
shell-best-tuned = gestimmt { $tuning }
shell-best-known = { $known } von { $chords } Griffen bekannt
shell-best-hardest = am schwersten { $chord }
shell-best-drones = Bordune
shell-best-open-rings = { $count ->
    [one] eine leere Saite klingt mit
   *[other] { $count } leere Saiten klingen mit
}
shell-best-below = Melodie um { $count } unter der tiefsten Saite
shell-best-fret = Melodie bis Bund { $fret }
shell-best-fits = { $range } passt
shell-best-over = { $range }, um { $over } zu hoch
shell-best-under = { $range }, um { $under } zu tief
shell-best-wide = { $range }, um { $over } zu hoch und { $under } zu tief
shell-best-reads = liest { $key }
shell-chart-form = Form: { $form }
shell-chart-pickup = Auftakt: { $length }
shell-chart-strum = Schlagmuster: { $strum }
shell-chart-capo = Kapodaster: { $fret }
shell-chart-start = Beginnt auf { $note }
shell-chart-start-open = Beginnt auf { $note } ({ $course }-Saite, leer)
shell-chart-start-fret = Beginnt auf { $note } ({ $course }-Saite, Bund { $fret })

## Fehler eines Textes

problem-too-long = Der Text ist zu lang. Der Rest wurde nicht gelesen.
problem-line-too-long = Die Zeile ist zu lang. Der Rest wurde nicht gelesen.
problem-words-too-long = Dieser Text ist zu lang. Der Rest wurde weggelassen.
problem-too-many-tunes = Es sind zu viele Stücke. Die übrigen wurden nicht gelesen.
problem-too-many-bars = Das Stück hat zu viele Takte. Die übrigen wurden nicht gelesen.
problem-too-many-notes = Das Stück hat zu viele Noten. Die übrigen wurden weggelassen.
problem-too-many-chord-notes = Zu viele Noten klingen zugleich. Die übrigen wurden weggelassen.
problem-too-many-grace-notes = Es sind zu viele Vorschlagsnoten. Die übrigen wurden weggelassen.
problem-too-many-signs = Es sind zu viele Zeichen auf einer Note. Die übrigen wurden weggelassen.
problem-too-many-lyrics = Unter diesen Noten stehen zu viele Textzeilen. Die übrigen wurden weggelassen.
problem-too-many-lines = Es sind zu viele Textzeilen. Die übrigen wurden weggelassen.
problem-too-many-parts = Es sind zu viele Teile. Die übrigen wurden weggelassen.
problem-too-many-definitions = Es sind zu viele Zeichen mit eigener Bedeutung. Die übrigen wurden weggelassen.
problem-too-many-fields = Vor dem ersten Stück stehen zu viele Zeilen. Die übrigen wurden weggelassen.
problem-too-many-problems = Es gibt mehr Probleme, als hier aufgeführt sind.
problem-too-many-played = Mit allen Wiederholungen hat das Stück zu viele Takte. Die übrigen wurden weggelassen.
problem-encoding = Einige Zeichen waren nicht lesbar und wurden ersetzt.
problem-invisible = Steuerzeichen wurden weggelassen.
problem-no-tune = In diesem Text steht kein Stück.
problem-no-music = Dieses Stück hat keine Noten.
problem-missing-title = Dieses Stück hat keinen Titel.
problem-missing-key = Das Stück nennt keine Tonart. Es wurde in C-Dur gelesen.
problem-empty-line = Mitten im Stück steht eine leere Zeile.
problem-not-music = Diese Zeile ist keine Musik. Sie wurde weggelassen.
problem-unknown-character = „{ $character }“ bedeutet hier nichts. Es wurde weggelassen.
problem-unclosed = „{ $character }“ wird hier geöffnet und nicht geschlossen.
problem-length = Das ist keine Notenlänge.
problem-field = „{ $field }: { $value }“ war nicht zu verstehen.
problem-chord = „{ $text }“ ist kein Akkord. Es blieb als Text stehen.
problem-chord-without-time = Der Akkord „{ $text }“ hat keine eigene Zeit. Er wurde weggelassen.
problem-tuplet = Nach diesem N-Tolen-Zeichen fehlen Noten.
problem-broken-rhythm = Ein punktierter Rhythmus braucht auf beiden Seiten eine Note.
problem-unknown-part = Die Form nennt einen Teil „{ $text }“, den das Stück nicht hat.
problem-strum = Es gibt kein Schlagmuster „{ $text }“.
problem-directive = Die Zeile „fourcourse-{ $text }“ war nicht zu verstehen.

## Warum das System sich weigert, mitten im Satz

io-not-found = eine solche Datei oder einen solchen Ordner gibt es nicht
io-not-allowed = das ist nicht erlaubt
io-read-only = dort lässt sich nichts schreiben
io-full = es ist kein Platz mehr
io-is-folder = es ist ein Ordner
io-not-folder = es ist kein Ordner
io-exists = es gibt es schon
io-other = das System sagt „{ $text }“

## Tabulatur

tab-octaves-down = { $count ->
    [one] Eine Oktave tiefer gespielt als geschrieben.
   *[other] { $count } Oktaven tiefer gespielt als geschrieben.
}
tab-octaves-up = { $count ->
    [one] Eine Oktave höher gespielt als geschrieben.
   *[other] { $count } Oktaven höher gespielt als geschrieben.
}
tab-off-the-neck = { $count ->
    [one] Eine Note liegt nicht auf diesem Hals; dort steht ein ?.
   *[other] { $count } Noten liegen nicht auf diesem Hals; dort steht ein ?.
}
tab-no-octave = { $count ->
    [one] Lass sie weg oder versuch das Stück in einer anderen Tonart.
   *[other] Lass sie weg oder versuch das Stück in einer anderen Tonart.
}
tab-octave-offered = Mit --octave { $octaves } liegen alle darauf.
tab-marked-against = Das Stück bezeichnet den Anschlag gegen seine Stelle im Takt: { $bars }.
tab-drones-off = Kein Bordun.
tab-drones-key = { $count ->
    [one] { $courses } klingt mit: Grundton oder Quinte von { $key }.
   *[other] { $courses } klingen mit: Grundton und Quinte von { $key }.
}
tab-drones-not-open = Kein Bordun: Grundton und Quinte von { $key } sind nicht beide leere Chöre.
tab-drones-none = Kein leerer Chor passt hier zur Melodie.
tab-drones-chord = { $count ->
    [one] { $courses } klingt bei { $rings } von { $notes } Noten mit: { $reasons }.
   *[other] { $courses } klingen bei { $rings } von { $notes } Noten mit: { $reasons }.
}
tab-left-out = Kein Bordun: { $reasons }.
why-key = Grundton oder Quinte der Tonart
why-key-no-chord = Grundton oder Quinte, wo kein Akkord steht
why-chord = Akkordton
why-colour = färbt den Akkord
why-clash = reibt sich mit { $note } im Akkord
why-rough = reibt sich mit der Melodie
why-not-of-key = weder Grundton noch Quinte neben der Note
why-fast = schneller Lauf
why-passing = im Vorübergehen
version-plain = die bloße Melodie
version-key-drones = Bordun der Tonart
version-chord-drones = Bordun nach dem Akkord
version-double-stops = Doppelgriffe
tab-easiest = Die leichteste Fassung, die noch klingt: { $version }.
tab-none-rings = Keine Fassung klingt auch nur die halbe Zeit.
drill-times = { $count ->
    [one] einmal
   *[other] { $count }-mal
}
shell-tab-no-notes = „{ $title }“ hat keine Melodie.
shell-tab-all-off = Keine einzige Note von „{ $title }“ liegt auf diesem Hals.
shell-tab-try = Versuch es ohne --octave oder in einer anderen Tonart.
shell-tab-part = Teil { $part }
shell-tab-legend = D ab, U auf; d und u bei Pausen und Haltebögen: Die Hand geht über die Saiten hinweg.
shell-tab-drone = o: der leere Chor, der mitklingt.
shell-tab-two-fingers = Finger 2/0: auf dem oberen Chor und auf dem unteren; 0 ist leer.
shell-drill-stops = Doppelgriffe, die häufigsten zuerst: ein Takt auf die Schläge, ein Takt ab und auf, in der Regel in Achteln
shell-drill-no-stops = Das Stück verlangt keine Doppelgriffe.
shell-drill-changes = Akkordwechsel, die schwersten zuerst: immer im Kreis, je ein Takt
shell-drill-no-changes = Das Stück hat keine Akkordwechsel.

## Veranda

porch-back = Zurück
porch-sheet = Notenzeile, Finger, Klang und Übungen
porch-today = Was heute zu üben ist
porch-today-why = Was gut ging, kommt nach 1, 2, 4, 7, 14 und 30 Tagen wieder, was langsamer ging, morgen.
porch-empty = Noch nichts zu üben: Es gibt kein Stück.
porch-to-page = Zurück zur Seite
porch-version = Fassung
porch-page = Seite
porch-hard = Punkte sagen, wie viel die Hände zu tun haben. Der Haken steht an der leichtesten Fassung, die noch klingt.
porch-phrase-back = Phrase davor
porch-phrase-on = Nächste Phrase
porch-show-more = Mehr zeigen
porch-hide-more = Mehr verdecken
porch-from-top = Vom Anfang der Phrase
porch-again = Immer wieder
porch-play = Spielen
porch-stop = Halt
porch-slower = Langsamer
porch-faster = Schneller
porch-staff = Notenzeile über der Tabulatur
porch-fingers = Finger
porch-fingers-detail = 1 Zeige-, 2 Mittel-, 3 Ring-, 4 kleiner Finger, 0 leer
porch-octave-up = { $count ->
    [one] Eine Oktave höher
   *[other] { $count } Oktaven höher
}
porch-octave-down = { $count ->
    [one] Eine Oktave tiefer
   *[other] { $count } Oktaven tiefer
}
porch-octave-detail = Aus: wie geschrieben.
porch-octave-offered = { $way } liegen alle darauf.
porch-melody = Die Band spielt die Melodie
porch-melody-detail = Stumm, wenn die Melodie deine ist
porch-care = Schmerz heißt aufhören. Ruh fünf Minuten in jeder halben Stunde aus und beginne Doppelgriffe und schnellere Durchgänge mit lockeren Händen; wenn es weiter wehtut, frag eine Lehrkraft oder einen Arzt.
porch-stops = Doppelgriffe dieses Stücks, die häufigsten zuerst
porch-changes = Akkordwechsel, die schwersten zuerst
porch-end-drill = Fertig
porch-whole = Ganzes Stück
porch-phrase = Phrase { $part } { $number }
porch-same = wie { $part } { $number }
porch-bar = Takt { $bar }
porch-clean = sauber bei { $bpm }
porch-plain-why = Die Melodie allein: Nichts klingt daneben mit.
porch-stops-why = Terzen, Quinten und Sexten neben der Melodie, wo die Hand Zeit dafür hat.
porch-version-plain = Melodie
porch-version-key = Bordun
porch-version-chord = Nach Akkord
porch-version-stops = Doppelgriffe
porch-version-said = { $version }, Schwierigkeit { $hard } von 5
porch-version-said-easiest = { $version }, Schwierigkeit { $hard } von 5, die leichteste, die klingt
porch-hidden-nothing = Alles zu sehen
porch-hidden-other = Jeder zweite Takt
porch-hidden-first = Erste Noten
porch-hidden-notes = Nur Akkorde
porch-hidden-all = Nichts
porch-due = { $days ->
    [one] fällig, zuletzt gestern
   *[other] fällig, zuletzt vor { $days } Tagen
}
porch-nearly = fast geschafft
porch-next = als Nächstes
porch-new = neu
porch-start-aim = { $why } · von { $start } bis { $goal }
porch-take = { $title }, { $what }, { $why }, { $tempo }
porch-stop-finger = { $course } { $fret } ({ $finger })
porch-stop-open = { $course } { $fret }
stand-practise = Auf der Veranda üben
