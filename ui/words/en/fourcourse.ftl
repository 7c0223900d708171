### Every word that a player sees. The same keys stand in the folder of each language.

close = Close
settings = Settings
called = Called
tonight = Tonight
circle = Circle
porch = Porch

## Songbook

songbook = Songbook
songbook-search = Find a tune
songbook-clear-search = Clear the search
songbook-key = Key
songbook-rhythm = Rhythm
songbook-known = Shapes I know
songbook-all-keys = Any key
songbook-all-rhythms = Any rhythm
songbook-to-stand = To the stand:
songbook-stand = Stand
songbook-empty = There is no tune in the songbook yet.
songbook-nothing-fits = No tune fits these words and filters.
songbook-restore = Bring back the shipped tunes
songbook-show-all = Show all tunes
songbook-count = { $count ->
    [one] { $count } tune
   *[other] { $count } tunes
}
songbook-count-of = { $shown } of { $count }
tune-starts-open = starts on open { $course }
tune-starts-fret = starts on { $course } string, fret { $fret }

## Stand

stand-empty = No tune is on the stand.
stand-empty-action = Choose a tune
stand-back = Back to the songbook
stand-key = Key
stand-clock-start = Start the clock
stand-clock-stop = Stop the clock
stand-bar = bar
stand-bar-back = One bar back
stand-next-bar = Next bar
stand-this-is-one = This is 1
stand-hold = Hold
stand-go-on = Go on
stand-next = Next
stand-no-next = Stays to the end
stand-let-ring = Let ring
stand-part = Part
stand-key-down = − half step
stand-key-up = + half step
stand-as-written = As written
stand-written-in = written in { $key }
stand-names = Chord names
names-letters = Letters
names-numbers = Numbers
names-both = Both
stand-simpler = Chords
simpler-written = As written
simpler-triads = Plain
simpler-three = Three
stand-playing = Playing
stand-tempo = Tempo
stand-slower = Slower
stand-faster = Faster
stand-tap-tempo = Tap the tempo
stand-times = Times through
stand-times-less = Fewer times
stand-times-more = More times
stand-last-time = This is the last time
stand-capo = Capo
stand-capo-less = Capo down
stand-capo-more = Capo up
capo-none = none
stand-other-shape = Another shape
stand-shape-of = { $which } of { $count }
stand-time = time { $time }
stand-time-of = time { $time } of { $times }
stand-last = last time
stand-bar-of = bar { $bar } of { $bars }
stand-open-end = no end
state-waiting = Tap to begin
state-now = Now
state-count-in = Counting in
state-held = Held
state-ended = The end
chord-none = No chord
chord-degree = the { $number } chord
chord-played-as = play { $chord }
next-in-beats = { $beats ->
    [one] in 1 beat
   *[other] in { $beats } beats
}
next-in-bars = { $bars ->
    [one] in 1 bar
   *[other] in { $bars } bars
}
missing-root = no root
missing-third = no third
missing-fifth = no fifth
missing-seventh = no seventh
missing-other = a note missing
missing-bass = bass left to others
shape-said = { $chord }: { $courses }
course-open = { $course } open
course-fret = { $course } fret { $fret }
course-fret-finger = { $course } fret { $fret } finger { $finger }
course-mute = { $course } not played
ring-yes = { $course }: let it ring
ring-leave = { $course }: leave it
ring-clash = { $course }: clashes
strum-said = Strum: { $strokes }
stroke-down = down
stroke-up = up
stroke-silent = silent
stroke-bass = bass
stroke-chop = chop
map-bar = Bar with { $chords }
map-bar-same = Bar, same chord
map-pickup = Pickup
form-chip = Part { $part }
form-chip-pass = Part { $part }, time { $pass }

## Called

called-call = Tune or key
called-held = Held chord
called-search = Which tune?
called-empty = Type a few letters of the title, or touch the key that was called.
called-nothing = No tune is called that. A key alone will do.
called-more = and { $count } more: type another letter
called-relative = Same notes
called-parallel = Same home
called-more-modes = More modes
called-fewer-modes = Fewer modes
called-to-stand = To the stand in { $key }
called-begins = first chord { $chord }
called-capo-none = no capo: { $chords }
called-capo = capo { $fret }: { $chords }
called-tuned-anew = tuned { $strings }
called-tuned-capo = { $tuning }, capo { $fret }
called-scale-said = The scale on the fingerboard: { $notes }
called-whose-hand = Whose hand?
called-whose-no-capo = { $instrument } · no capo
called-whose-capo = { $instrument } · capo { $fret }
called-touch-frets = Touch where the fingers are. Above the nut a course is open, or not played.
called-silent = Nothing sounds: every course is left out.
called-no-name = No plain chord has just these notes:
called-sounds = sounds { $notes }
called-release = Take all fingers away
ring-scale = { $course }: in the key
ring-outside = { $course }: outside the key

## Safe to strum

safe = Easier
safe-said = Easier, or something safe to strum
safe-over = Safe over part { $part }
safe-over-tune = Safe over all of it
safe-note = or one note: { $note }, open { $course }
safe-note-fret = or one note: { $note }, { $course } string, fret { $fret }
safe-note-alone = or one note: { $note }
safe-fits-nearly = fits nearly everywhere
safe-fits-most = fits most of it
safe-fits-some = fits some of it
safe-none = No chord is written here to be safe over.
map-line = Line
stand-called = Somebody calls a tune or a key
## The circle

seat-singer = Singer
seat-in-b-flat = Instrument in B♭
seat-in-e-flat = Instrument in E♭
seat-in-f = Instrument in F
seat-in-c = Melody instrument
seat-you = you
seat-no-capo = no capo: { $key } shapes
seat-capo-at = capo { $fret }: { $key } shapes
seat-tuned = tuned { $notes }
seat-reads = reads { $key }
seat-range = sings { $low } to { $high }
seat-too-high = too high: { $note } above { $top }
seat-too-low = too low: { $note } below { $bottom }
seat-fits = { $low } to { $high } fits
seat-new-shapes = { $count ->
    [one] 1 new shape
   *[other] { $count } new shapes
}
seat-hardest = hardest: { $chord }
seat-below = melody goes below the lowest string
seat-fret = melody up to fret { $fret }
seat-drones = open strings ring
seat-put-back = Put back: { $seat }
seat-show = Show across: { $seat }
seat-change = Change: { $seat }
ease-easy = easy
ease-fair = with care
ease-hard = hard
key-easy = Easy
key-easy-for-all = Easy for everyone
key-hard = Hard: { $names }
key-care = Watch: { $names }
key-several = { $count } seats
key-called = called
key-written = as written
key-play = Play it in { $key }
voice-group = Everybody
voice-soprano = Soprano
voice-mezzo = Mezzo
voice-alto = Alto
voice-tenor = Tenor
voice-baritone = Baritone
voice-bass = Bass
circle-sounds = sounds
circle-tune = Tune:
circle-choose-tune = Choose a tune
circle-of-stand = The tune on the stand
circle-no-tune = The best key is found for a tune: choose one.
circle-seats = Seats
circle-add = Add a seat
circle-across = Show across
across-turn = Turn
best-key = Best for this circle
best-keys = Best key
seat-name = Name
seat-player = This is you. Instrument, tuning and hand stand in the settings.
seat-capo = Capo
capo-never = never
capo-up-to = up to
capo-always = always
seat-capo-fret = Fret
seat-knows = Knows these shapes
knows-all = All of them
knows-first = Those of the first lessons
knows-four = A beginner's four
knows-marked = Those marked in the settings
seat-voice = Voice
seat-sings = Sings
seat-high = Highest note
seat-high-less = Highest note lower
seat-high-more = Highest note higher
seat-low = Lowest note
seat-low-less = Lowest note lower
seat-low-more = Lowest note higher
seat-voice-care = Set what comes without strain, and stop when it hurts or turns hoarse. A singing teacher knows your voice better than a list does.
seat-earlier = Earlier
seat-later = Later
seat-remove = Take the seat away

## Tonight's list

last-never = not played yet
last-tonight = played tonight in { $key }
last-yesterday = yesterday in { $key }
last-days = { $days } days ago in { $key }
save-said = The order by keys saves { $what }.
save-pegs = { $count ->
    [one] 1 turned peg
   *[other] { $count } turned pegs
}
save-capos = { $count ->
    [one] 1 moved capo
   *[other] { $count } moved capos
}
save-keys = { $count ->
    [one] 1 change of key
   *[other] { $count } changes of key
}
undo-removed = Put back: { $title }
undo-reordered = Back to the order before
yesterday = Yesterday
date = { $year }-{ $month }-{ $day }
tonight-list = List
tonight-played = Played
tonight-add = Add tunes
tonight-edit = Change the list
tonight-done = Done
tonight-empty = Nothing is on tonight's list yet.
tonight-nothing-played = What is played on the stand to the end of a time through is remembered here, with its key.
tonight-next = Play
tonight-up = Earlier:
tonight-down = Later:
tonight-key-down = Lower key:
tonight-key-up = Higher key:
tonight-remove = Off the list:
tonight-by-keys = By the keys
tonight-unplayed = Not played for
unplayed-any = any
unplayed-weeks = 2 weeks
unplayed-months = 2 months
unplayed-year = a year
tonight-everyone = Only the shapes everyone knows
retune-care = Tune up to the note from below with your face turned away: a string that is tightened too far can snap.
stand-listed = On tonight's list
stand-next-tune = Next tune
stand-next-is = Next:

## The band

stand-band = Band
band-said = Band, { $bpm } beats a minute. { $heard }
band-play = Play
band-stop = Stop
band-sound = Sound
band-sound-off = The Stand keeps the time in silence.
band-sound-on = The band plays aloud.
band-sound-none = Silent: there is no sound device.
band-sound-lost = Silent: the sound device is gone. Start again to look for it.
band-missing-none = no sound device
band-missing-lost = sound lost
band-loudness = Loudness
band-care = Begin quietly, in headphones most of all: what is loud for long harms your ears for good.
band-delay = Wireless delay
band-delay-detail = Headphones and speakers without a wire sound late. Raise this until the Stand moves with what you hear.
band-delay-less = A shorter delay
band-delay-more = A longer delay
band-choose = Choose bars on the map
stand-choose-first = Touch the first bar
stand-choose-last = Touch the last bar
stand-choose-not = Cancel
band-players = Players
player-melody = Melody
player-chop = Chop
player-guitar = Guitar
player-bass = Bass
player-drones = Drones
player-click = Click
band-level = { $player }: how loud
band-mute = Silence { $player }
band-unmute = Let { $player } play
band-loop = Again and again
band-whole = Whole tune
band-this-part = This part
band-from = From bar
band-from-less = Begin a bar earlier
band-from-more = Begin a bar later
band-to = To bar
band-to-less = End a bar earlier
band-to-more = End a bar later
band-ramp = Faster after each clean pass
band-ramp-detail = Clean is a pass with no hold, no jump and no pull.
band-percent = Faster by
band-percent-less = Less at each pass
band-percent-more = More at each pass
band-ceiling = Up to
band-ceiling-less = A lower ceiling
band-ceiling-more = A higher ceiling
band-count-in = Count in
band-style = How it accompanies
band-style-fits = { $style }, suits the tune
band-ending = How it ends
band-human = Uneven, as people are
band-human-detail = Hands a little late, strokes a little softer or harder
band-alone = Alone, without the tune
band-metronome = Metronome
band-drones = Drones
band-tuning = Strings to tune by
band-string = { $note } to tune by
band-a4 = A of the tuning fork
band-a4-less = A lower A
band-a4-more = A higher A

## Settings

settings-back = Back
settings-instrument = Instrument
settings-tuning = Tuning
settings-tune-down = { $course } a half step down
settings-tune-up = { $course } a half step up
settings-tuning-care = A course is tuned above its pitch: tune up to the note from below with your face turned away. A string tightened too far can snap.
settings-left-handed = Left-handed
settings-left-handed-detail = Shapes are drawn as a mirror
settings-looks = Looks
settings-theme = Colours
theme-ebony = Ebony
theme-spruce = Spruce
theme-sun = Full sun
settings-less-motion = Less motion
settings-less-motion-detail = Nothing moves that need not
settings-words = Language and notes
settings-language = Language
language-system = As the device
settings-note-names = Note names
settings-known = Shapes I know
settings-known-detail = Mark the chords that your hand finds by itself. The songbook can then show the tunes that need no others.
settings-restore-detail = Tunes that came with the app come back; your own stay.
settings-care = Take care
settings-care-text = A circle can be loud: an hour beside a banjo wants ear plugs. Rest your hands five minutes in every half hour, and stop when something hurts. Nothing here flashes; what moves can be stilled above. Tune a string up from below with your face turned away: one that is tightened too far can snap.
settings-about = About
settings-about-text = Fourcourse stands by you in the jam circle, without a network and without an account.
settings-version = Version { $version }

## Instruments

instrument-mandolin = Mandolin
instrument-octave-mandolin = Octave mandolin
instrument-mandola = Mandola
instrument-tenor-banjo = Tenor banjo
instrument-irish-tenor-banjo = Irish tenor banjo
instrument-tenor-guitar = Tenor guitar
instrument-guitar = Guitar
instrument-ukulele = Ukulele
instrument-baritone-ukulele = Baritone ukulele
instrument-banjo = Five-string banjo
instrument-fiddle = Fiddle
instrument-bass = Bass
instrument-five-string-bass = Five-string bass
instrument-custom = Own tuning

## Rhythms

rhythm-reel = reel
rhythm-jig = jig
rhythm-slip-jig = slip jig
rhythm-slide = slide
rhythm-hornpipe = hornpipe
rhythm-polka = polka
rhythm-waltz = waltz
rhythm-mazurka = mazurka
rhythm-march = march
rhythm-schottische = schottische
rhythm-barn-dance = barn dance
rhythm-strathspey = strathspey
rhythm-song = song
rhythm-air = air
rhythm-swing = swing
rhythm-rag = rag
rhythm-calypso = calypso

## How the band plays

style-boom-chuck = boom-chuck
style-reel = reel
style-jig = jig
style-slip-jig = slip jig
style-hornpipe = hornpipe
style-march = march
style-polka = polka
style-waltz = waltz
style-swing = swing shuffle
style-air = air
style-strum = own strum
ending-plain = as written
ending-held = last chord held
ending-tag = last line again

## Modes

mode-major = major
mode-minor = minor
mode-dorian = dorian
mode-phrygian = phrygian
mode-lydian = lydian
mode-mixolydian = mixolydian
mode-locrian = locrian

## What went wrong

notice-tune-unreadable = This tune cannot be read any more.
notice-settings-not-kept = Your settings hold for this evening, but they could not be kept.
notice-evening-not-kept = The circle or tonight's list holds for this evening, but could not be kept.
notice-not-restored = The shipped tunes could not be brought back.
notice-set-aside = { $rescued ->
    [0] The songbook could not be read. The old file was set aside as { $file }.
    [1] The songbook was damaged. One tune could be taken over; the old file was set aside as { $file }.
   *[other] The songbook was damaged. { $rescued } tunes could be taken over; the old file was set aside as { $file }.
}
notice-set-aside-newer = A newer Fourcourse wrote this songbook. The file was set aside as { $file }.
notice-nothing-kept = Nothing can be kept this evening: the songbook is in memory only.
notice-read-only = Nothing can be kept this evening: the songbook can be read, but not written to.

## When the window cannot open

window-no-display = There is no display to open the window on. "fourcourse picture" draws any view into a file without one.
window-failed = The window could not be opened: { $why }

## From the shell

shell-no-chord = "{ $text }" is not a chord symbol.
shell-no-key = "{ $text }" is not a key such as A, Bb or F#m.
shell-no-key-or-chord = "{ $text }" is neither a key nor a chord.
shell-no-instrument = There is no instrument "{ $text }". Known are { $known }.
shell-no-shape = No hand can hold { $chord } here ({ $instrument }).
shell-no-tune = There is no tune in { $file }.
shell-file-unreadable = { $file } cannot be read: { $why }
shell-file-unwritable = { $file } cannot be written: { $why }
shell-tune-unknown = No tune in the songbook is called "{ $text }". "fourcourse list" shows them all.
shell-many-tunes = Several tunes fit "{ $text }":
shell-many-in-file = There are several tunes in { $file }. Add it to the songbook to choose one:
shell-songbook-in-use = The songbook is open in another window or command. Close the window, or wait for the command, and try again.
shell-songbook-folder = The folder of the songbook cannot be used: { $why }
shell-songbook-failed = The songbook could not be written: { $why }
shell-no-home = This system names no folder for the songbook. Say one with --data-folder.
shell-no-app = This build of fourcourse has no window, only the commands. "fourcourse help" lists them.
shell-no-picture = This build of fourcourse has no window and draws no pictures.
shell-no-bar = The tune has no bar { $bar }; it has { $bars }.
shell-picture-failed = The picture could not be drawn: { $why }
shell-read-counts = { $bars ->
    [one] 1 bar
   *[other] { $bars } bars
}, { $notes ->
    [one] 1 note
   *[other] { $notes } notes
}
shell-out-unwritable = The answer could not be printed: { $why }
shell-no-tune-in-input = There is no tune in what came in.
shell-many-in-input = There are several tunes in what came in. Add them to the songbook to choose one:
shell-untitled = Untitled
shell-band-no-music = The tune has no bars to play.
shell-band-too-long = The file would last longer than three hours. Play it fewer times, or faster.
shell-loop-backwards = Bar { $first } comes after bar { $last }. The tune has bars 1 to { $bars }: say the first bar first.
shell-loop-outside = There is no bar { $bar } to play again and again. As it is played, repeats counted, the tune has bars 1 to { $bars }.
shell-keeps-mode = A tune keeps its mode: this is { $key }, not { $called }.
shell-band-tempo = { $beat ->
    [half] half note
    [quarter] quarter note
    [dotted-quarter] dotted quarter
    [eighth] eighth note
    [dotted-half] dotted half note
   *[other] { $note } note
} = { $bpm }
shell-band-times = { $times ->
    [one] once through
   *[other] { $times } times through
}
shell-band-loop = { $times ->
    [one] bars { $first } to { $last } once
   *[other] bars { $first } to { $last }, { $times } times
}
shell-added = Added: { $title }
shell-added-before = Already there: { $title }
shell-ring-chord = Open strings over { $chord }
shell-ring-key = Open strings through a tune in { $key }
shell-ring-fits = rings along
shell-ring-colour = colours the chord
shell-ring-clash = clashes with { $note }
shell-ring-drone = rings through
shell-ring-half-drone = the tonic or fifth, without its partner
shell-ring-scale = belongs to the key
shell-ring-outside = outside the key
shell-key-others = relative { $relative }, parallel { $parallel }
shell-key-fret = fret
shell-key-rings = let ring
shell-key-leave = leave alone
shell-key-capo = guitar capo (shapes)
shell-key-setup-capo = capo { $fret }, fifth string up { $fret }
shell-key-written = written
shell-name-notes = sounds { $notes }
shell-name-none = No plain chord has just these notes.
shell-name-lowest = { $note } is lowest: { $symbol }
shell-name-foreign = { $note } below the chord
shell-name-not-a-fret = "{ $text }" is neither a fret nor an x.
shell-name-courses = { $given } frets for { $courses } courses ({ $instrument }).
shell-name-off-the-neck = Course { $course } has no fret { $fret } there ({ $instrument }).
shell-name-silent = Nothing sounds: every course is left out.
shell-capo-title = { $key } ({ $instrument }): played { $arrow } sounding
shell-capo-none = no capo: { $key } shapes
shell-capo-at = capo { $fret }: { $key } shapes
shell-best-title = { $title }, written in { $key }
shell-best-lead = The longer the bar, the better for all; behind it, what is most in the way.
shell-best-written = as written
shell-best-reader = instrument in { $pitch }
shell-best-singer = singer { $range }
shell-best-nobody = Nobody sits in the circle yet: name a --seat or a --singer.
shell-best-no-range = "{ $text }" is no range of a voice, such as A3-D5 or tenor.
shell-best-tuned = tuned { $tuning }
shell-best-known = { $known } of { $chords } shapes known
shell-best-hardest = hardest { $chord }
shell-best-drones = drones
shell-best-open-rings = { $count ->
    [one] one open string rings
   *[other] { $count } open strings ring
}
shell-best-below = melody below the lowest string by { $count }
shell-best-fret = melody up to fret { $fret }
shell-best-fits = { $range } fits
shell-best-over = { $range }, too high by { $over }
shell-best-under = { $range }, too low by { $under }
shell-best-wide = { $range }, too high by { $over } and too low by { $under }
shell-best-reads = reads { $key }
shell-chart-form = Form: { $form }
shell-chart-pickup = Pickup: { $length }
shell-chart-strum = Strum: { $strum }
shell-chart-capo = Capo: { $fret }
shell-chart-start = Starts on { $note }
shell-chart-start-open = Starts on { $note } ({ $course } course, open)
shell-chart-start-fret = Starts on { $note } ({ $course } course, fret { $fret })

## Problems of a text

problem-too-long = The text is too long. The rest of it was not read.
problem-line-too-long = The line is too long. The rest of it was not read.
problem-words-too-long = These words are too long. The rest of them was left out.
problem-too-many-tunes = There are too many tunes. The others were not read.
problem-too-many-bars = The tune has too many bars. The others were not read.
problem-too-many-notes = The tune has too many notes. The others were left out.
problem-too-many-chord-notes = Too many notes sound at once. The others were left out.
problem-too-many-grace-notes = There are too many grace notes. The others were left out.
problem-too-many-signs = There are too many signs on one note. The others were left out.
problem-too-many-lyrics = There are too many lines of words under these notes. The others were left out.
problem-too-many-lines = There are too many lines of text. The others were left out.
problem-too-many-parts = There are too many parts. The others were left out.
problem-too-many-definitions = There are too many signs with a meaning of their own. The others were left out.
problem-too-many-fields = There are too many lines before the first tune. The others were left out.
problem-too-many-problems = There are more problems than are listed here.
problem-too-many-played = Played with all its repeats the tune has too many bars. The others were left out.
problem-encoding = Some characters could not be read and were replaced.
problem-invisible = Control characters were left out.
problem-no-tune = There is no tune in this text.
problem-no-music = This tune has no notes.
problem-missing-title = This tune has no title.
problem-missing-key = The tune does not say its key. It was read in C.
problem-empty-line = There is an empty line in the middle of the tune.
problem-not-music = This line is not music. It was left out.
problem-unknown-character = "{ $character }" means nothing here. It was left out.
problem-unclosed = "{ $character }" is opened here and not closed.
problem-length = This is no note length.
problem-field = "{ $field }: { $value }" could not be understood.
problem-chord = "{ $text }" is not a chord. It was kept as words.
problem-chord-without-time = The chord “{ $text }” has no time of its own. It was left out.
problem-tuplet = There are too few notes after this tuplet sign.
problem-broken-rhythm = A dotted rhythm needs a note on both sides.
problem-unknown-part = The form names a part "{ $text }" that the tune does not have.
problem-strum = There is no strum "{ $text }".
problem-directive = The line "fourcourse-{ $text }" could not be understood.

## Why the system refused, in the middle of a sentence

io-not-found = there is no such file or folder
io-not-allowed = that is not allowed
io-read-only = nothing can be written there
io-full = there is no room left
io-is-folder = it is a folder
io-not-folder = it is not a folder
io-exists = it is there already
io-other = the system says "{ $text }"

## Tablature

tab-octaves-down = { $count ->
    [one] Played an octave lower than written.
   *[other] Played { $count } octaves lower than written.
}
tab-octaves-up = { $count ->
    [one] Played an octave higher than written.
   *[other] Played { $count } octaves higher than written.
}
tab-off-the-neck = { $count ->
    [one] One note is off this neck; it is marked ?.
   *[other] { $count } notes are off this neck; they are marked ?.
}
tab-no-octave = { $count ->
    [one] Leave it out, or try the tune in another key.
   *[other] Leave them out, or try the tune in another key.
}
tab-octave-offered = With --octave { $octaves } all of them are on it.
tab-marked-against = The tune marks the pick against its place in the bar: { $bars }.
tab-drones-off = No drones.
tab-drones-key = { $count ->
    [one] { $courses } rings along: the tonic or the fifth of { $key }.
   *[other] { $courses } ring along: the tonic and the fifth of { $key }.
}
tab-drones-not-open = No drones: the tonic and the fifth of { $key } are not both open courses.
tab-drones-none = No open course suits the melody here.
tab-drones-chord = { $count ->
    [one] { $courses } rings along with { $rings } of { $notes } notes: { $reasons }.
   *[other] { $courses } ring along with { $rings } of { $notes } notes: { $reasons }.
}
tab-left-out = No drone: { $reasons }.
why-key = the tonic or the fifth of the key
why-key-no-chord = tonic or fifth, where there is no chord
why-chord = a tone of the chord
why-colour = colours the chord
why-clash = clashes with { $note } of the chord
why-rough = rubs with the melody
why-not-of-key = neither tonic nor fifth beside the note
why-fast = fast run
why-passing = in passing
version-plain = the plain melody
version-key-drones = drones of the key
version-chord-drones = drones by the chord
version-double-stops = double stops
tab-easiest = The easiest version that still rings: { $version }.
tab-none-rings = No version rings half of the time.
drill-times = { $count ->
    [one] once
   *[other] { $count } times
}
shell-tab-no-notes = "{ $title }" has no melody.
shell-tab-all-off = Not one note of "{ $title }" is on this neck.
shell-tab-try = Try it without --octave, or in another key.
shell-tab-part = Part { $part }
shell-tab-legend = D down, U up; d and u on rests and ties: the hand passes over the strings.
shell-tab-drone = o: the open course that rings along.
shell-tab-two-fingers = Fingers 2/0: on the upper course and on the lower one; 0 is open.
shell-drill-stops = Double stops, the most frequent first: a bar on the beat, a bar down and up, as a rule in eighths
shell-drill-no-stops = The tune asks for no double stops.
shell-drill-changes = Chord changes, the hardest first: round and round, a bar each
shell-drill-no-changes = The tune has no chord changes.

## Porch

porch-back = Back
porch-sheet = Staff, fingers, sound and exercises
porch-today = What to practise
porch-today-why = What went well comes again after 1, 2, 4, 7, 14 and 30 days, what went slower tomorrow.
porch-empty = Nothing to practise so far: there is no tune.
porch-to-page = Back to the page
porch-version = Version
porch-page = Page
porch-hard = Dots say how much the hands have to do. The tick marks the easiest version that still rings.
porch-phrase-back = Phrase before
porch-phrase-on = Next phrase
porch-show-more = Show more
porch-hide-more = Hide more
porch-from-top = From the top of the phrase
porch-again = Again and again
porch-play = Play
porch-stop = Stop
porch-slower = Slower
porch-faster = Faster
porch-staff = Staff above the tablature
porch-fingers = Fingers
porch-fingers-detail = 1 index, 2 middle, 3 ring, 4 little, 0 open
porch-octave-up = { $count ->
    [one] An octave higher
   *[other] { $count } octaves higher
}
porch-octave-down = { $count ->
    [one] An octave lower
   *[other] { $count } octaves lower
}
porch-octave-detail = Off: as it is written.
porch-octave-offered = { $way }, all of them are on it.
porch-melody = The band plays the melody
porch-melody-detail = Silence it when the melody is yours
porch-care = Pain means stop. Rest five minutes in every half hour, and begin double stops and faster passes with loose hands; if it goes on hurting, ask a teacher or a physician.
porch-stops = Double stops of this tune, the most frequent first
porch-changes = Chord changes, the hardest first
porch-end-drill = Done
porch-whole = Whole tune
porch-phrase = Phrase { $part } { $number }
porch-same = like { $part } { $number }
porch-bar = Bar { $bar }
porch-clean = clean at { $bpm }
porch-plain-why = The melody alone: nothing rings beside it.
porch-stops-why = Thirds, fifths and sixths beside the melody, where the hand has time for them.
porch-version-plain = Melody
porch-version-key = Drones
porch-version-chord = By chord
porch-version-stops = Double stops
porch-version-said = { $version }, hard { $hard } of 5
porch-version-said-easiest = { $version }, hard { $hard } of 5, the easiest that rings
porch-hidden-nothing = All shown
porch-hidden-other = Every other bar
porch-hidden-first = First notes
porch-hidden-notes = Chords only
porch-hidden-all = Nothing
porch-due = { $days ->
    [one] due, last time yesterday
   *[other] due, last time { $days } days ago
}
porch-nearly = nearly there
porch-next = the next one
porch-new = new
porch-start-aim = { $why } · start at { $start }, aim for { $goal }
porch-take = { $title }, { $what }, { $why }, { $tempo }
porch-stop-finger = { $course } { $fret } ({ $finger })
porch-stop-open = { $course } { $fret }
stand-practise = Practise on the porch
