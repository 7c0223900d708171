close = Schließen
settings = Einstellungen

## Songbook

songbook = Liederbuch
songbook-search = Stück suchen
songbook-clear-search = Suche leeren
songbook-key = Tonart
songbook-rhythm = Tanz
songbook-known = Kann ich
songbook-all-keys = Alle Tonarten
songbook-all-rhythms = Alle Tänze
songbook-to-stand = Zum Pult:
songbook-empty = Im Liederbuch ist noch kein Stück.
songbook-nothing-fits = Zu diesen Wörtern und Filtern passt kein Stück.
songbook-restore = Mitgelieferte Stücke zurückholen
songbook-show-all = Alle Stücke zeigen
songbook-count = { $count ->
    [one] { $count } Stück
   *[other] { $count } Stücke
}
songbook-count-of = { $shown } von { $count }
tune-starts-open = beginnt auf leerer { $course }-Saite
tune-starts-fret = beginnt auf { $course }, { $fret }. Bund

## Stand

stand-empty = Auf dem Pult liegt kein Stück.
stand-empty-action = Stück aussuchen
stand-back = Zurück zum Liederbuch
stand-sheet = Tonart, Namen, Kapodaster und Tempo
stand-key = Tonart
stand-clock-start = Uhr starten
stand-clock-stop = Uhr anhalten
stand-bar = Takt
stand-bar-back = Einen Takt zurück
stand-next-bar = Nächster Takt
stand-this-is-one = Hier ist 1
stand-hold = Halten
stand-go-on = Weiter
stand-next = Danach
stand-no-next = Bleibt bis zum Schluss
stand-let-ring = Leersaiten
stand-part = Teil
stand-key-down = − Halbton
stand-key-up = + Halbton
stand-as-written = Wie notiert
stand-written-in = notiert in { $key }
stand-names = Akkordnamen
names-letters = Namen
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
stand-tap-tempo = Tempo klopfen
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
stand-open-end = offen
state-waiting = Antippen
state-now = Jetzt
state-count-in = Einzählen
state-held = Angehalten
state-ended = Schluss
chord-none = Kein Akkord
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
stroke-silent = Pause
stroke-bass = Bass
stroke-chop = gedämpft
map-bar = Takt mit { $chords }
map-bar-same = Takt, gleicher Akkord
map-pickup = Auftakt
form-chip = Teil { $part }
form-chip-pass = Teil { $part }, { $pass }. Mal

## Settings

settings-back = Zurück
settings-instrument = Instrument
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
settings-known = Griffe, die ich kann
settings-known-detail = Markiere die Akkorde, die deine Hand von selbst findet. Das Liederbuch kann dann die Stücke zeigen, die mit ihnen auskommen.
settings-restore-detail = Die mitgelieferten Stücke kommen zurück; deine eigenen bleiben.
settings-care = Gib auf dich acht
settings-care-text = In der Runde kann es laut werden: Eine Stunde neben einem Banjo verlangt Gehörschutz. Gönn deinen Händen in jeder halben Stunde fünf Minuten Pause und hör auf, wenn etwas wehtut. Hier blitzt nichts, und was sich bewegt, lässt sich oben abstellen. Stimme von unten herauf und mit abgewandtem Gesicht: Eine zu stark gespannte Saite kann reißen.
settings-about = Über Fourcourse
settings-about-text = Fourcourse steht dir in der Spielrunde bei, ohne Netz und ohne Konto.
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
instrument-banjo = Fünfsaitiges Banjo
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
rhythm-strathspey = Strathspey
rhythm-song = Lied
rhythm-air = Air
rhythm-swing = Swing
rhythm-rag = Ragtime

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
notice-not-restored = Die mitgelieferten Stücke ließen sich nicht zurückholen.
notice-set-aside = Das Liederbuch war nicht lesbar. Die alte Datei liegt beiseite als { $file }.
notice-set-aside-newer = Dieses Liederbuch stammt von einem neueren Fourcourse. Die Datei liegt beiseite als { $file }.
notice-nothing-kept = Heute Abend lässt sich nichts speichern: Das Liederbuch ist nur im Arbeitsspeicher.

## When the window cannot open

window-no-display = Es gibt keinen Bildschirm für das Fenster. „fourcourse picture“ zeichnet jede Ansicht auch ohne ihn in eine Datei.
window-failed = Das Fenster ließ sich nicht öffnen: { $why }

## Auf der Befehlszeile

shell-no-chord = „{ $text }“ ist kein Akkord.
shell-no-key = „{ $text }“ ist keine Tonart.
shell-no-key-or-chord = „{ $text }“ ist weder eine Tonart noch ein Akkord.
shell-no-instrument = Ein Instrument „{ $text }“ gibt es nicht. Bekannt sind { $known }.
shell-no-shape = Keine Hand kann { $chord } hier greifen ({ $instrument }).
shell-no-tune = In { $file } steht kein Stück.
shell-file-unreadable = { $file } lässt sich nicht lesen: { $why }
shell-file-unwritable = { $file } lässt sich nicht schreiben: { $why }
shell-tune-unknown = Kein Stück im Liederbuch heißt „{ $text }“.
shell-many-tunes = Mehrere Stücke passen zu „{ $text }“:
shell-many-in-file = In { $file } stehen mehrere Stücke. Nimm die Datei ins Liederbuch auf, um eines zu wählen:
shell-songbook-in-use = Das Liederbuch ist in einem anderen Fenster oder Befehl offen.
shell-songbook-folder = Der Ordner des Liederbuchs ist nicht zu gebrauchen: { $why }
shell-songbook-failed = Das Liederbuch ließ sich nicht schreiben: { $why }
shell-no-home = Dieses System nennt keinen Ordner für das Liederbuch. Nenne einen mit --data-folder.
shell-no-app = Dieses fourcourse hat kein Fenster, nur die Befehle. „fourcourse help“ zählt sie auf.
shell-no-picture = Dieses fourcourse hat kein Fenster und zeichnet keine Bilder.
shell-no-bar = Einen Takt { $bar } hat das Stück nicht.
shell-picture-failed = Das Bild ließ sich nicht zeichnen: { $why }
shell-read-counts = { $bars } Takte, { $notes } Töne
shell-added = Aufgenommen: { $title }
shell-added-before = Schon vorhanden: { $title }
shell-ring-chord = Leere Saiten über { $chord }
shell-ring-key = Leere Saiten durch ein Stück in { $key }
shell-ring-fits = klingt mit
shell-ring-colour = färbt den Akkord
shell-ring-clash = reibt sich mit { $note }
shell-ring-drone = klingt durch
shell-ring-half-drone = Grundton oder Quinte, ohne Gegenstück
shell-ring-scale = gehört zur Tonart
shell-ring-outside = außerhalb der Tonart
shell-chart-form = Form: { $form }
shell-chart-pickup = Auftakt: { $length }
shell-chart-strum = Schlagmuster: { $strum }
shell-chart-capo = Kapodaster: { $fret }
shell-chart-start = Beginnt auf { $note }
shell-chart-start-open = Beginnt auf { $note } ({ $course }-Saite, leer)
shell-chart-start-fret = Beginnt auf { $note } ({ $course }-Saite, Bund { $fret })

## Fehler eines Textes

problem-too-long = Der Text ist länger, als gelesen wird.
problem-line-too-long = Die Zeile ist länger, als gelesen wird.
problem-words-too-long = Diese Worte sind länger, als behalten wird.
problem-too-many-tunes = Es sind mehr Stücke, als gelesen werden.
problem-too-many-bars = Es sind mehr Takte, als gelesen werden.
problem-too-many-notes = Es sind mehr Töne, als gelesen werden.
problem-too-many-chord-notes = Es klingen mehr Töne zugleich, als gelesen werden.
problem-too-many-grace-notes = Hier stehen mehr Vorschläge, als gelesen werden.
problem-too-many-signs = Hier stehen mehr Zeichen, als gelesen werden.
problem-too-many-lyrics = Unter den Noten stehen mehr Textzeilen, als gelesen werden.
problem-too-many-lines = Es sind mehr Zeilen dieser Art, als gelesen werden.
problem-too-many-parts = Die Form hat mehr Teile, als gelesen werden.
problem-too-many-definitions = Es sind mehr Erklärungen, als gelesen werden.
problem-too-many-fields = Es sind mehr Felder, als gelesen werden.
problem-too-many-problems = Es sind mehr Fehler, als genannt werden.
problem-encoding = Einige Bytes sind kein Text; sie wurden ersetzt.
problem-no-tune = In dem Text steht kein Stück.
problem-no-music = Das Stück hat keine Töne.
problem-missing-title = Das Stück hat keinen Titel.
problem-missing-key = Das Stück nennt keine Tonart; es wird in C gelesen.
problem-empty-line = Mitten im Stück steht eine leere Zeile.
problem-not-music = Diese Zeile ist weder Musik noch ein Feld.
problem-unknown-character = „{ $character }“ bedeutet hier nichts.
problem-unclosed = „{ $character }“ wird auf seiner Zeile nicht geschlossen.
problem-length = Das ist keine Notenlänge.
problem-field = Das Feld { $field } lässt sich nicht lesen: „{ $value }“.
problem-chord = „{ $text }“ ist kein Akkord; es bleibt als Text stehen.
problem-tuplet = Das Stück endet mitten in einer N-tole.
problem-broken-rhythm = Der punktierte Rhythmus braucht auf beiden Seiten einen Ton.
problem-unknown-part = Die Form nennt einen Teil „{ $text }“, den das Stück nicht hat.
problem-strum = Ein Schlagmuster „{ $text }“ gibt es nicht.
problem-directive = Die Zeile „{ $text }“ sagt nichts, was sich lesen ließe.
