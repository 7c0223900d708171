close = Cerrar
settings = Ajustes

## Songbook

songbook = Cancionero
songbook-search = Buscar un tema
songbook-clear-search = Borrar la búsqueda
songbook-key = Tonalidad
songbook-rhythm = Ritmo
songbook-known = Los que sé
songbook-all-keys = Cualquier tonalidad
songbook-all-rhythms = Cualquier ritmo
songbook-to-stand = Al atril:
songbook-empty = Todavía no hay ningún tema en el cancionero.
songbook-nothing-fits = Ningún tema encaja con la búsqueda y los filtros.
songbook-restore = Recuperar los temas incluidos
songbook-show-all = Ver todos los temas
songbook-count = { $count ->
    [one] { $count } tema
   *[other] { $count } temas
}
songbook-count-of = { $shown } de { $count }
tune-starts-open = empieza en { $course } al aire
tune-starts-fret = empieza en { $course }, traste { $fret }

## Stand

stand-empty = No hay ningún tema en el atril.
stand-empty-action = Elegir un tema
stand-back = Volver al cancionero
stand-sheet = Tonalidad, nombres, cejilla y tempo
stand-key = Tonalidad
stand-clock-start = Poner en marcha el pulso
stand-clock-stop = Parar el pulso
stand-bar = compás
stand-bar-back = Un compás atrás
stand-next-bar = Compás siguiente
stand-this-is-one = Aquí el 1
stand-hold = Esperar
stand-go-on = Seguir
stand-next = Después
stand-no-next = Sigue hasta el final
stand-let-ring = Al aire
stand-part = Parte
stand-key-down = − semitono
stand-key-up = + semitono
stand-as-written = Como está escrito
stand-written-in = escrito en { $key }
stand-names = Nombres de los acordes
names-letters = Notas
names-numbers = Grados
names-both = Ambos
stand-simpler = Acordes
simpler-written = Originales
simpler-triads = Sencillos
simpler-three = Solo tres
stand-playing = Al tocar
stand-tempo = Tempo
stand-slower = Más lento
stand-faster = Más rápido
stand-tap-tempo = Marcar el tempo
stand-times = Vueltas
stand-times-less = Menos vueltas
stand-times-more = Más vueltas
stand-last-time = Esta es la última vuelta
stand-capo = Cejilla
stand-capo-less = Bajar la cejilla
stand-capo-more = Subir la cejilla
capo-none = sin
stand-other-shape = Otra posición
stand-shape-of = { $which } de { $count }
stand-time = vuelta { $time }
stand-time-of = vuelta { $time } de { $times }
stand-last = última vuelta
stand-bar-of = compás { $bar } de { $bars }
stand-open-end = libre
state-waiting = Toca y empieza
state-now = Ahora
state-count-in = Entrada
state-held = En espera
state-ended = Fin
chord-none = Sin acorde
chord-played-as = toca { $chord }
next-in-beats = { $beats ->
    [one] en 1 tiempo
   *[other] en { $beats } tiempos
}
next-in-bars = { $bars ->
    [one] en 1 compás
   *[other] en { $bars } compases
}
missing-root = sin fundamental
missing-third = sin tercera
missing-fifth = sin quinta
missing-seventh = sin séptima
missing-other = falta una nota
missing-bass = el bajo lo tocan otros
shape-said = { $chord }: { $courses }
course-open = { $course } al aire
course-fret = { $course } traste { $fret }
course-fret-finger = { $course } traste { $fret } dedo { $finger }
course-mute = { $course } no se toca
ring-yes = { $course }: déjala sonar
ring-leave = { $course }: mejor no
ring-clash = { $course }: choca
strum-said = Rasgueo: { $strokes }
stroke-down = abajo
stroke-up = arriba
stroke-silent = pausa
stroke-bass = bajo
stroke-chop = apagado
map-bar = Compás con { $chords }
map-bar-same = Compás, mismo acorde
map-pickup = Anacrusa
form-chip = Parte { $part }
form-chip-pass = Parte { $part }, vez { $pass }

## Settings

settings-back = Atrás
settings-instrument = Instrumento
settings-left-handed = Zurdo
settings-left-handed-detail = Las posiciones se dibujan en espejo
settings-looks = Aspecto
settings-theme = Colores
theme-ebony = Ébano
theme-spruce = Abeto
theme-sun = Pleno sol
settings-less-motion = Menos movimiento
settings-less-motion-detail = No se mueve nada que no haga falta
settings-words = Palabras
settings-language = Idioma
language-system = El del dispositivo
settings-note-names = Nombres de las notas
settings-known = Posiciones que sé
settings-known-detail = Marca los acordes que tu mano encuentra sola. El cancionero puede mostrar los temas que no piden otros.
settings-restore-detail = Vuelven los temas que venían con la aplicación; los tuyos se quedan.
settings-care = Cuídate
settings-care-text = Una rueda de músicos puede sonar fuerte: una hora al lado de un banjo pide tapones. Descansa las manos cinco minutos cada media hora y para si algo duele. Aquí nada parpadea, y lo que se mueve se puede detener más arriba. Afina subiendo desde abajo y con la cara apartada: una cuerda demasiado tensa puede romperse.
settings-about = Acerca de
settings-about-text = Fourcourse te acompaña en la rueda de músicos, sin red y sin cuenta.
settings-version = Versión { $version }

## Instruments

instrument-mandolin = Mandolina
instrument-octave-mandolin = Mandolina octava
instrument-mandola = Mandola
instrument-tenor-banjo = Banjo tenor
instrument-irish-tenor-banjo = Banjo tenor irlandés
instrument-tenor-guitar = Guitarra tenor
instrument-guitar = Guitarra
instrument-ukulele = Ukelele
instrument-baritone-ukulele = Ukelele barítono
instrument-banjo = Banjo de cinco cuerdas
instrument-fiddle = Violín
instrument-bass = Bajo
instrument-five-string-bass = Bajo de cinco cuerdas
instrument-custom = Afinación propia

## Rhythms

rhythm-reel = reel
rhythm-jig = jiga
rhythm-slip-jig = slip jig
rhythm-slide = slide
rhythm-hornpipe = hornpipe
rhythm-polka = polca
rhythm-waltz = vals
rhythm-mazurka = mazurca
rhythm-march = marcha
rhythm-schottische = chotis
rhythm-strathspey = strathspey
rhythm-song = canción
rhythm-air = aire
rhythm-swing = swing
rhythm-rag = ragtime

## Modes

mode-major = mayor
mode-minor = menor
mode-dorian = dórico
mode-phrygian = frigio
mode-lydian = lidio
mode-mixolydian = mixolidio
mode-locrian = locrio

## What went wrong

notice-tune-unreadable = Este tema ya no se puede leer.
notice-settings-not-kept = Los ajustes valen por esta noche, pero no se pudieron guardar.
notice-not-restored = No se pudieron recuperar los temas incluidos.
notice-set-aside = No se pudo leer el cancionero. El archivo anterior se ha apartado como { $file }.
notice-set-aside-newer = Este cancionero es de una versión más nueva de Fourcourse. El archivo se ha apartado como { $file }.
notice-nothing-kept = Esta noche no se puede guardar nada: el cancionero está solo en la memoria.

## When the window cannot open

window-no-display = No hay pantalla en la que abrir la ventana. «fourcourse picture» dibuja cualquier vista en un archivo sin ella.
window-failed = No se pudo abrir la ventana: { $why }

## Desde la terminal

shell-no-chord = «{ $text }» no es un acorde.
shell-no-key = «{ $text }» no es una tonalidad.
shell-no-key-or-chord = «{ $text }» no es ni una tonalidad ni un acorde.
shell-no-instrument = No hay ningún instrumento «{ $text }». Se conocen { $known }.
shell-no-shape = Ninguna mano puede pisar { $chord } aquí ({ $instrument }).
shell-no-tune = No hay ningún tema en { $file }.
shell-file-unreadable = No se puede leer { $file }: { $why }
shell-file-unwritable = No se puede escribir { $file }: { $why }
shell-tune-unknown = Ningún tema del cancionero se llama «{ $text }».
shell-many-tunes = Hay varios temas para «{ $text }»:
shell-many-in-file = Hay varios temas en { $file }. Añádelo al cancionero para elegir uno:
shell-songbook-in-use = El cancionero está abierto en otra ventana u orden.
shell-songbook-folder = No se puede usar la carpeta del cancionero: { $why }
shell-songbook-failed = No se pudo escribir el cancionero: { $why }
shell-no-home = Este sistema no indica ninguna carpeta para el cancionero. Indica una con --data-folder.
shell-no-app = Esta versión de fourcourse no tiene ventana, solo órdenes. «fourcourse help» las muestra.
shell-no-picture = Esta versión de fourcourse no tiene ventana ni dibuja imágenes.
shell-no-bar = El tema no tiene ningún compás { $bar }.
shell-picture-failed = No se pudo dibujar la imagen: { $why }
shell-read-counts = { $bars } compases, { $notes } notas
shell-added = Añadido: { $title }
shell-added-before = Ya estaba: { $title }
shell-ring-chord = Cuerdas al aire sobre { $chord }
shell-ring-key = Cuerdas al aire durante un tema en { $key }
shell-ring-fits = puede sonar
shell-ring-colour = da color al acorde
shell-ring-clash = choca con { $note }
shell-ring-drone = suena todo el tiempo
shell-ring-half-drone = la tónica o la quinta, sin su pareja
shell-ring-scale = pertenece a la tonalidad
shell-ring-outside = fuera de la tonalidad
shell-chart-form = Forma: { $form }
shell-chart-pickup = Anacrusa: { $length }
shell-chart-strum = Rasgueo: { $strum }
shell-chart-capo = Cejilla: { $fret }
shell-chart-start = Empieza en { $note }
shell-chart-start-open = Empieza en { $note } (orden { $course }, al aire)
shell-chart-start-fret = Empieza en { $note } (orden { $course }, traste { $fret })

## Problemas de un texto

problem-too-long = El texto es más largo de lo que se lee.
problem-line-too-long = La línea es más larga de lo que se lee.
problem-words-too-long = Estas palabras son más largas de lo que se guarda.
problem-too-many-tunes = Hay más temas de los que se leen.
problem-too-many-bars = Hay más compases de los que se leen.
problem-too-many-notes = Hay más notas de las que se leen.
problem-too-many-chord-notes = Suenan juntas más notas de las que se leen.
problem-too-many-grace-notes = Hay aquí más notas de adorno de las que se leen.
problem-too-many-signs = Hay aquí más signos de los que se leen.
problem-too-many-lyrics = Hay más líneas de letra bajo las notas de las que se leen.
problem-too-many-lines = Hay más líneas de este tipo de las que se leen.
problem-too-many-parts = La forma tiene más partes de las que se leen.
problem-too-many-definitions = Hay más definiciones de las que se leen.
problem-too-many-fields = Hay más campos de los que se leen.
problem-too-many-problems = Hay más problemas de los que se cuentan.
problem-encoding = Algunos bytes no son texto; se han sustituido.
problem-no-tune = No hay ningún tema en el texto.
problem-no-music = El tema no tiene notas.
problem-missing-title = El tema no tiene título.
problem-missing-key = El tema no dice su tonalidad; se lee en do.
problem-empty-line = Hay una línea vacía en medio del tema.
problem-not-music = Esta línea no es ni música ni un campo.
problem-unknown-character = «{ $character }» no significa nada aquí.
problem-unclosed = «{ $character }» se abre y no se cierra en su línea.
problem-length = Esto no es una duración.
problem-field = No se puede leer el campo { $field }: «{ $value }».
problem-chord = «{ $text }» no es un acorde; se guarda como palabras.
problem-tuplet = El tema termina antes que su grupo de valor especial.
problem-broken-rhythm = El ritmo desigual necesita una nota a cada lado.
problem-unknown-part = La forma nombra una parte «{ $text }» que el tema no tiene.
problem-strum = No hay ningún rasgueo «{ $text }».
problem-directive = La línea «{ $text }» no dice nada que se pueda leer.
