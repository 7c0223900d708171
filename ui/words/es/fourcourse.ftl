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
songbook-set-aside = No se pudo leer el cancionero. El archivo anterior se ha guardado aparte.
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
stand-this-is-one = Esto es el 1
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
stand-time-of = { $time } de { $times }
stand-last = última vuelta
stand-bar-of = compás { $bar } de { $bars }
stand-open-end = libre
state-waiting = Toca para empezar
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
