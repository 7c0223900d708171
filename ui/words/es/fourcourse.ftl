close = Cerrar
settings = Ajustes
called = Me piden
tonight = Esta noche
circle = Ronda
porch = Porche

## Songbook

songbook = Cancionero
songbook-search = Buscar un tema
songbook-clear-search = Borrar la búsqueda
songbook-key = Tonalidad
songbook-rhythm = Ritmo
songbook-known = Mis acordes
songbook-all-keys = Cualquier tonalidad
songbook-all-rhythms = Cualquier ritmo
songbook-to-stand = Al atril:
songbook-stand = Atril
songbook-empty = Todavía no hay ningún tema en el cancionero.
songbook-nothing-fits = Ningún tema encaja con la búsqueda y los filtros.
songbook-restore = Recuperar los temas incluidos
songbook-show-all = Ver todos los temas
songbook-count = { $count ->
    [one] { $count } tema
   *[other] { $count } temas
}
songbook-count-of = { $shown } de { $count }
tune-starts-open = empieza: { $course } al aire
tune-starts-fret = empieza: cuerda { $course }, tr. { $fret }

## Stand

stand-empty = No hay ningún tema en el atril.
stand-empty-action = Elegir un tema
stand-back = Volver al cancionero
stand-key = Tonalidad
stand-clock-start = Iniciar el pulso
stand-clock-stop = Parar el pulso
stand-bar = atrás
stand-bar-back = Un compás atrás
stand-next-bar = Compás siguiente
stand-this-is-one = Este es el 1
stand-hold = Pausa
stand-go-on = Seguir
stand-next = Siguiente
stand-no-next = Así hasta el final
stand-let-ring = Al aire
stand-part = Parte
stand-key-down = − semitono
stand-key-up = + semitono
stand-as-written = Como está escrito
stand-written-in = escrito en { $key }
stand-names = Nombres de los acordes
names-letters = Cifrado
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
stand-open-end = sin fin
state-waiting = Pulsa para empezar
state-now = Ahora
state-count-in = Conteo
state-held = En pausa
state-ended = Fin
chord-none = Sin acorde
chord-degree = grado { $number }
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
ring-leave = { $course }: mejor callada
ring-clash = { $course }: choca
strum-said = Rasgueo: { $strokes }
stroke-down = abajo
stroke-up = arriba
stroke-silent = sin tocar
stroke-bass = bajo
stroke-chop = apagado
map-bar = Compás con { $chords }
map-bar-same = Compás, mismo acorde
map-pickup = Anacrusa
form-chip = Parte { $part }
form-chip-pass = Parte { $part }, vez { $pass }

## Called

called-call = Tema o tonalidad
called-held = Acorde visto
called-search = ¿Qué tema?
called-empty = Escribe unas letras del título o toca la tonalidad que se ha pedido.
called-nothing = Ningún tema se llama así. También basta la tonalidad.
called-more = y { $count } más: escribe otra letra
called-relative = Mismas notas
called-parallel = Misma tónica
called-more-modes = Más modos
called-fewer-modes = Menos modos
called-to-stand = Al atril en { $key }
called-begins = primer acorde { $chord }
called-capo-none = sin cejilla: { $chords }
called-capo = cejilla { $fret }: { $chords }
called-tuned-anew = afinado { $strings }
called-tuned-capo = { $tuning }, cejilla { $fret }
called-scale-said = La escala en el diapasón: { $notes }
called-whose-hand = ¿De quién es la mano?
called-whose-no-capo = { $instrument } · sin cejilla
called-whose-capo = { $instrument } · cejilla { $fret }
called-touch-frets = Toca donde están los dedos. Sobre la cejuela, un orden suena al aire o no se toca.
called-silent = No suena nada: ningún orden se toca.
called-no-name = Ningún acorde sencillo tiene justo estas notas:
called-sounds = suena { $notes }
called-release = Quitar todos los dedos
ring-scale = { $course }: de la tonalidad
ring-outside = { $course }: fuera de la tonalidad

## Safe to strum

safe = Más fácil
safe-said = Más fácil, o algo seguro que rasguear
safe-over = Seguro en la parte { $part }
safe-over-tune = Seguro sobre todo
safe-note = o una nota: { $note }, { $course } al aire
safe-note-fret = o una nota: { $note }, cuerda { $course }, traste { $fret }
safe-note-alone = o una nota: { $note }
safe-fits-nearly = encaja casi siempre
safe-fits-most = encaja a menudo
safe-fits-some = encaja a ratos
safe-none = Aquí no hay acordes escritos sobre los que algo sea seguro.
map-line = Línea
stand-called = Alguien pide un tema o una tonalidad
## La ronda

seat-singer = Voz
seat-in-b-flat = Instrumento en Si♭
seat-in-e-flat = Instrumento en Mi♭
seat-in-f = Instrumento en Fa
seat-in-c = Instrumento de melodía
seat-you = tú
seat-no-capo = sin cejilla: posiciones de { $key }
seat-capo-at = cejilla { $fret }: posiciones de { $key }
seat-tuned = afinado { $notes }
seat-reads = lee { $key }
seat-range = canta de { $low } a { $high }
seat-too-high = muy alto: { $note } sobre { $top }
seat-too-low = muy bajo: { $note } bajo { $bottom }
seat-fits = { $low } a { $high } va bien
seat-new-shapes = { $count ->
    [one] 1 posición nueva
   *[other] { $count } posiciones nuevas
}
seat-hardest = lo más difícil: { $chord }
seat-below = la melodía baja de la cuerda más grave
seat-fret = melodía hasta el traste { $fret }
seat-drones = suenan cuerdas al aire
seat-put-back = Devolver: { $seat }
seat-show = Mostrar enfrente: { $seat }
seat-change = Cambiar: { $seat }
ease-easy = fácil
ease-fair = con cuidado
ease-hard = difícil
key-easy = Fácil
key-easy-for-all = Fácil para todos
key-hard = Difícil: { $names }
key-care = Cuidado: { $names }
key-several = { $count } asientos
key-called = pedida
key-written = como escrita
key-play = Tocarlo en { $key }
voice-group = Todos
voice-soprano = Soprano
voice-mezzo = Mezzo
voice-alto = Contralto
voice-tenor = Tenor
voice-baritone = Barítono
voice-bass = Bajo
circle-sounds = suena
circle-tune = Tema:
circle-choose-tune = Elegir un tema
circle-of-stand = El tema del atril
circle-no-tune = La mejor tonalidad se busca para un tema: elige uno.
circle-seats = Asientos
circle-add = Añadir un asiento
circle-across = Mostrar enfrente
across-turn = Girar
best-key = Lo mejor para esta ronda
best-keys = Mejor tonalidad
seat-name = Nombre
seat-player = Eres tú. El instrumento, la afinación y la mano están en los ajustes.
seat-capo = Cejilla
capo-never = nunca
capo-up-to = hasta
capo-always = siempre
seat-capo-fret = Traste
seat-knows = Conoce estas posiciones
knows-all = Todas
knows-first = Las de las primeras clases
knows-four = Las cuatro de quien empieza
knows-marked = Las marcadas en los ajustes
seat-voice = Voz
seat-sings = Canta
seat-high = Nota más alta
seat-high-less = Nota más alta, más baja
seat-high-more = Nota más alta, más alta
seat-low = Nota más baja
seat-low-less = Nota más baja, más baja
seat-low-more = Nota más baja, más alta
seat-voice-care = Pon lo que sale sin esfuerzo y para si duele o te pones ronco. Un profesor de canto conoce tu voz mejor que una lista.
seat-earlier = Antes
seat-later = Después
seat-remove = Quitar el asiento

## La lista de esta noche

last-never = sin tocar aún
last-tonight = tocado hoy en { $key }
last-yesterday = ayer en { $key }
last-days = hace { $days } días en { $key }
save-said = El orden por tonos ahorra { $what }.
save-pegs = { $count ->
    [one] 1 clavija
   *[other] { $count } clavijas
}
save-capos = { $count ->
    [one] 1 cambio de cejilla
   *[other] { $count } cambios de cejilla
}
save-keys = { $count ->
    [one] 1 cambio de tono
   *[other] { $count } cambios de tono
}
undo-removed = Devolver: { $title }
undo-reordered = Volver al orden anterior
yesterday = Ayer
date = { $day }/{ $month }/{ $year }
tonight-list = Lista
tonight-played = Tocado
tonight-add = Añadir temas
tonight-edit = Cambiar la lista
tonight-done = Listo
tonight-empty = La lista de esta noche está vacía.
tonight-nothing-played = Aquí queda lo que se toca en el atril hasta el final de una vuelta, con su tonalidad.
tonight-next = Tocar
tonight-up = Antes:
tonight-down = Después:
tonight-key-down = Tono más bajo:
tonight-key-up = Tono más alto:
tonight-remove = Quitar:
tonight-by-keys = Por tonos
tonight-unplayed = Sin tocar desde hace
unplayed-any = todos
unplayed-weeks = 2 sem.
unplayed-months = 2 meses
unplayed-year = 1 año
tonight-everyone = Solo posiciones que todos conocen
retune-care = Afina subiendo hasta la nota y aparta la cara: una cuerda demasiado tensa puede saltar.
stand-listed = En la lista de esta noche
stand-next-tune = Tema siguiente
stand-next-is = Sigue:

## La banda

stand-band = Banda
band-said = Banda, { $bpm } pulsos por minuto. { $heard }
band-play = Tocar
band-stop = Parar
band-sound = Sonido
band-sound-off = El atril lleva el tiempo en silencio.
band-sound-on = La banda suena.
band-sound-none = En silencio: no hay dispositivo de sonido.
band-sound-lost = En silencio: el dispositivo de sonido ya no está. Al volver a empezar se busca de nuevo.
band-missing-none = sin sonido
band-missing-lost = sonido perdido
band-loudness = Volumen
band-care = Empieza bajo, sobre todo con auriculares: lo que suena fuerte mucho tiempo daña el oído para siempre.
band-delay = Retardo inalámbrico
band-delay-detail = Los auriculares y altavoces sin cable suenan tarde. Súbelo hasta que el atril vaya con lo que oyes.
band-delay-less = Menos retardo
band-delay-more = Más retardo
band-choose = Elegir compases en el mapa
stand-choose-first = Toca el primer compás
stand-choose-last = Toca el último compás
stand-choose-not = Cancelar
band-players = Músicos
player-melody = Melodía
player-chop = Chop
player-guitar = Guitarra
player-bass = Bajo
player-drones = Bordón
player-click = Clic
band-level = { $player }: volumen
band-mute = Silenciar { $player }
band-unmute = Que toque { $player }
band-loop = Una y otra vez
band-whole = Todo el tema
band-this-part = Esta parte
band-from = Desde el compás
band-from-less = Empezar un compás antes
band-from-more = Empezar un compás después
band-to = Hasta el compás
band-to-less = Acabar un compás antes
band-to-more = Acabar un compás después
band-ramp = Más rápido tras cada pasada limpia
band-ramp-detail = Limpia es una pasada sin pausas, saltos ni tirones.
band-percent = Más rápido en
band-percent-less = Menos en cada pasada
band-percent-more = Más en cada pasada
band-ceiling = Como máximo
band-ceiling-less = Un límite más bajo
band-ceiling-more = Un límite más alto
band-count-in = Contar antes de empezar
band-style = Cómo acompaña
band-style-fits = { $style }, le va al tema
band-ending = Cómo termina
band-human = Desigual, como las personas
band-human-detail = Manos algo tardías, golpes algo más suaves o fuertes
band-alone = A solas, sin el tema
band-metronome = Metrónomo
band-drones = Bordón
band-tuning = Cuerdas para afinar
band-string = { $note } para afinar
band-a4 = La del diapasón
band-a4-less = Un la más bajo
band-a4-more = Un la más alto

## Settings

settings-back = Atrás
settings-instrument = Instrumento
settings-tuning = Afinación
settings-tune-down = { $course } un semitono más grave
settings-tune-up = { $course } un semitono más agudo
settings-tuning-care = Hay una cuerda por encima de su afinación normal: llega a la nota desde abajo y con la cara apartada. Una cuerda demasiado tensa puede romperse.
settings-left-handed = Para zurdos
settings-left-handed-detail = Las posiciones se dibujan en espejo
settings-looks = Aspecto
settings-theme = Colores
theme-ebony = Ébano
theme-spruce = Abeto
theme-sun = Pleno sol
settings-less-motion = Menos movimiento
settings-less-motion-detail = No se mueve nada que no haga falta
settings-words = Idioma y notas
settings-language = Idioma
language-system = El del dispositivo
settings-note-names = Nombres de las notas
settings-known = Mis acordes
settings-known-detail = Marca los acordes que tu mano encuentra sola. El cancionero puede mostrar los temas que no piden otros.
settings-restore-detail = Vuelven los temas que venían con la aplicación; los tuyos se quedan.
settings-care = Cuídate
settings-care-text = En una sesión puede haber mucho volumen: una hora al lado de un banjo pide tapones. Descansa las manos cinco minutos cada media hora y para si algo duele. Aquí nada parpadea, y lo que se mueve se puede detener más arriba. Al afinar, llega a la nota desde abajo y con la cara apartada: una cuerda demasiado tensa puede romperse.
settings-about = Acerca de
settings-about-text = Fourcourse te acompaña en la sesión, sin red y sin cuenta.
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
instrument-banjo = Banjo de 5 cuerdas
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
rhythm-barn-dance = baile de granero
rhythm-strathspey = strathspey
rhythm-song = canción
rhythm-air = aire lento
rhythm-swing = swing
rhythm-rag = ragtime
rhythm-calypso = calipso

## How the band plays

style-boom-chuck = bajo alterno
style-reel = reel
style-jig = jiga
style-slip-jig = slip jig
style-hornpipe = hornpipe
style-march = marcha
style-polka = polca
style-waltz = vals
style-swing = swing
style-air = aire
style-strum = rasgueo propio
ending-plain = como escrito
ending-held = acorde sostenido
ending-tag = frase otra vez

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
notice-evening-not-kept = La ronda y la lista valen para esta noche, pero no se pudieron guardar.
notice-not-restored = No se pudieron recuperar los temas incluidos.
notice-set-aside = { $rescued ->
    [0] El cancionero no se pudo leer. El archivo anterior se apartó con el nombre { $file }.
    [1] El cancionero estaba dañado. Se pudo recuperar un tema; el archivo anterior se apartó con el nombre { $file }.
   *[other] El cancionero estaba dañado. Se pudieron recuperar { $rescued } temas; el archivo anterior se apartó con el nombre { $file }.
}
notice-set-aside-newer = Este cancionero es de una versión más nueva de Fourcourse. El archivo se ha apartado como { $file }.
notice-nothing-kept = Esta noche no se puede guardar nada: el cancionero está solo en la memoria.
notice-read-only = Esta noche no se puede guardar nada: el cancionero se puede leer, pero no escribir.

## When the window cannot open

window-no-display = No hay pantalla en la que abrir la ventana. «fourcourse picture» dibuja cualquier vista en un archivo sin ella.
window-failed = No se pudo abrir la ventana: { $why }

## Desde la terminal

shell-no-chord = «{ $text }» no es un acorde.
shell-no-key = «{ $text }» no es una tonalidad como La, Sib o Fa#m.
shell-no-key-or-chord = «{ $text }» no es ni una tonalidad ni un acorde.
shell-no-instrument = No hay ningún instrumento «{ $text }». Se conocen { $known }.
shell-no-shape = Ninguna mano puede pisar { $chord } aquí ({ $instrument }).
shell-no-tune = No hay ningún tema en { $file }.
shell-file-unreadable = No se puede leer { $file }: { $why }
shell-file-unwritable = No se puede escribir { $file }: { $why }
shell-tune-unknown = Ningún tema del cancionero se llama «{ $text }». «fourcourse list» los muestra todos.
shell-many-tunes = Hay varios temas para «{ $text }»:
shell-many-in-file = Hay varios temas en { $file }. Añádelo al cancionero para elegir uno:
shell-songbook-in-use = El cancionero está abierto en otra ventana u orden. Cierra la ventana o espera a la orden, e inténtalo de nuevo.
shell-songbook-folder = No se puede usar la carpeta del cancionero: { $why }
shell-songbook-failed = No se pudo escribir el cancionero: { $why }
shell-no-home = Este sistema no indica ninguna carpeta para el cancionero. Indica una con --data-folder.
shell-no-app = Esta versión de fourcourse no tiene ventana, solo órdenes. «fourcourse help» las muestra.
shell-no-picture = Esta versión de fourcourse no tiene ventana ni dibuja imágenes.
shell-no-bar = El tema no tiene ningún compás { $bar }; tiene { $bars }.
shell-picture-failed = No se pudo dibujar la imagen: { $why }
shell-read-counts = { $bars ->
    [one] 1 compás
   *[other] { $bars } compases
}, { $notes ->
    [one] 1 nota
   *[other] { $notes } notas
}
shell-out-unwritable = No se pudo mostrar la respuesta: { $why }
shell-no-tune-in-input = No hay ningún tema en lo que ha llegado.
shell-many-in-input = Hay varios temas en lo que ha llegado. Añádelos al cancionero para elegir uno:
shell-untitled = Sin título
shell-band-no-music = El tema no tiene compases que tocar.
shell-band-too-long = El archivo duraría más de tres horas. Tócalo menos veces o más deprisa.
shell-loop-backwards = El compás { $first } viene después del { $last }. El tema tiene los compases 1 a { $bars }: di primero el primero.
shell-loop-outside = No hay ningún compás { $bar } que repetir. Tal como se toca, con repeticiones, el tema tiene los compases 1 a { $bars }.
shell-keeps-mode = Un tema conserva su modo: esto es { $key }, no { $called }.
shell-band-tempo = { $beat ->
    [half] blanca
    [quarter] negra
    [dotted-quarter] negra con puntillo
    [eighth] corchea
    [dotted-half] blanca con puntillo
   *[other] figura de { $note }
} = { $bpm }
shell-band-times = { $times ->
    [one] una vuelta
   *[other] { $times } vueltas
}
shell-band-loop = { $times ->
    [one] compases { $first } a { $last }, una vez
   *[other] compases { $first } a { $last }, { $times } veces
}
shell-added = Añadido: { $title }
shell-added-before = Ya estaba: { $title }
shell-ring-chord = Cuerdas al aire sobre { $chord }
shell-ring-key = Cuerdas al aire para un tema en { $key }
shell-ring-fits = puede sonar
shell-ring-colour = da color al acorde
shell-ring-clash = choca con { $note }
shell-ring-drone = suena como bordón
shell-ring-half-drone = la tónica o la quinta, sin su pareja
shell-ring-scale = pertenece a la tonalidad
shell-ring-outside = fuera de la tonalidad
shell-key-others = relativa { $relative }, paralela { $parallel }
shell-key-fret = traste
shell-key-rings = dejar sonar
shell-key-leave = no tocar
shell-key-capo = cejilla de guitarra (posturas)
shell-key-setup-capo = cejilla { $fret }, quinta cuerda { $fret } más
shell-key-written = se escribe
shell-name-notes = suena { $notes }
shell-name-none = Ningún acorde sencillo tiene justo estas notas.
shell-name-lowest = { $note } es la más grave: { $symbol }
shell-name-foreign = { $note } por debajo del acorde
shell-name-not-a-fret = «{ $text }» no es un traste ni una x.
shell-name-courses = { $given } trastes para { $courses } órdenes ({ $instrument }).
shell-name-off-the-neck = El orden { $course } no tiene ahí traste { $fret } ({ $instrument }).
shell-name-silent = No suena nada: ningún orden se toca.
shell-capo-title = { $key } ({ $instrument }): se toca { $arrow } suena
shell-capo-none = sin cejilla: posturas de { $key }
shell-capo-at = cejilla { $fret }: posturas de { $key }
shell-best-title = { $title }, escrito en { $key }
shell-best-lead = Cuanto más larga la barra, mejor para todos; detrás, lo que más estorba.
shell-best-written = como está escrito
shell-best-reader = instrumento en { $pitch }
shell-best-singer = voz { $range }
shell-best-nobody = Todavía no hay nadie en el círculo: indica un --seat o un --singer.
shell-best-no-range = «{ $text }» no es la extensión de una voz, como A3-D5 o tenor.
shell-best-tuned = afinado { $tuning }
shell-best-known = { $known } de { $chords } posturas sabidas
shell-best-hardest = la más difícil { $chord }
shell-best-drones = bordones
shell-best-open-rings = { $count ->
    [one] suena una cuerda al aire
   *[other] suenan { $count } cuerdas al aire
}
shell-best-below = melodía bajo la cuerda más grave por { $count }
shell-best-fret = melodía hasta el traste { $fret }
shell-best-fits = { $range } cabe
shell-best-over = { $range }, demasiado agudo por { $over }
shell-best-under = { $range }, demasiado grave por { $under }
shell-best-wide = { $range }, demasiado agudo por { $over } y grave por { $under }
shell-best-reads = lee { $key }
shell-chart-form = Forma: { $form }
shell-chart-pickup = Anacrusa: { $length }
shell-chart-strum = Rasgueo: { $strum }
shell-chart-capo = Cejilla: { $fret }
shell-chart-start = Empieza en { $note }
shell-chart-start-open = Empieza en { $note } (orden { $course }, al aire)
shell-chart-start-fret = Empieza en { $note } (orden { $course }, traste { $fret })

## Problemas de un texto

problem-too-long = El texto es demasiado largo. El resto no se ha leído.
problem-line-too-long = La línea es demasiado larga. El resto no se ha leído.
problem-words-too-long = Estas palabras son demasiado largas. El resto se ha omitido.
problem-too-many-tunes = Hay demasiados temas. Los demás no se han leído.
problem-too-many-bars = El tema tiene demasiados compases. Los demás no se han leído.
problem-too-many-notes = El tema tiene demasiadas notas. Las demás se han omitido.
problem-too-many-chord-notes = Suenan demasiadas notas a la vez. Las demás se han omitido.
problem-too-many-grace-notes = Hay demasiadas notas de adorno. Las demás se han omitido.
problem-too-many-signs = Hay demasiados signos sobre una nota. Los demás se han omitido.
problem-too-many-lyrics = Hay demasiadas líneas de letra bajo estas notas. Las demás se han omitido.
problem-too-many-lines = Hay demasiadas líneas de texto. Las demás se han omitido.
problem-too-many-parts = Hay demasiadas partes. Las demás se han omitido.
problem-too-many-definitions = Hay demasiados signos con significado propio. Los demás se han omitido.
problem-too-many-fields = Hay demasiadas líneas antes de el primer tema. Las demás se han omitido.
problem-too-many-problems = Hay más problemas de los que se muestran aquí.
problem-too-many-played = Con todas sus repeticiones el tema tiene demasiados compases. Los demás se han omitido.
problem-encoding = Algunos caracteres no se han podido leer y se han sustituido.
problem-invisible = Se han omitido caracteres de control.
problem-no-tune = No hay ningún tema en este texto.
problem-no-music = Este tema no tiene notas.
problem-missing-title = Este tema no tiene título.
problem-missing-key = El tema no dice su tonalidad. Se ha leído en do mayor.
problem-empty-line = Hay una línea vacía en medio del tema.
problem-not-music = Esta línea no es música. Se ha omitido.
problem-unknown-character = «{ $character }» no significa nada aquí. Se ha omitido.
problem-unclosed = «{ $character }» se abre aquí y no se cierra.
problem-length = Esto no es una duración de nota.
problem-field = «{ $field }: { $value }» no se ha podido entender.
problem-chord = «{ $text }» no es un acorde. Se ha conservado como texto.
problem-chord-without-time = El acorde «{ $text }» no tiene tiempo propio. Se ha omitido.
problem-tuplet = Faltan notas después de este signo de grupo.
problem-broken-rhythm = Un ritmo con puntillo necesita una nota a cada lado.
problem-unknown-part = La forma nombra una parte «{ $text }» que el tema no tiene.
problem-strum = No hay ningún rasgueo «{ $text }».
problem-directive = La línea «fourcourse-{ $text }» no se ha podido entender.

## Por qué se negó el sistema, en medio de una frase

io-not-found = no existe ese archivo o carpeta
io-not-allowed = no está permitido
io-read-only = allí no se puede escribir
io-full = no queda sitio
io-is-folder = es una carpeta
io-not-folder = no es una carpeta
io-exists = ya existe
io-other = el sistema dice «{ $text }»

## Tablatura

tab-octaves-down = { $count ->
    [one] Se toca una octava más grave de lo escrito.
   *[other] Se toca { $count } octavas más grave de lo escrito.
}
tab-octaves-up = { $count ->
    [one] Se toca una octava más aguda de lo escrito.
   *[other] Se toca { $count } octavas más aguda de lo escrito.
}
tab-off-the-neck = { $count ->
    [one] Una nota queda fuera de este mástil; lleva un ?.
   *[other] { $count } notas quedan fuera de este mástil; llevan un ?.
}
tab-no-octave = { $count ->
    [one] Déjala fuera o prueba la melodía en otro tono.
   *[other] Déjalas fuera o prueba la melodía en otro tono.
}
tab-octave-offered = Con --octave { $octaves } caben todas.
tab-marked-against = La melodía marca la púa contra su lugar en el compás: { $bars }.
tab-drones-off = Sin bordón.
tab-drones-key = { $count ->
    [one] { $courses } suena a la vez: la tónica o la quinta de { $key }.
   *[other] { $courses } suenan a la vez: la tónica y la quinta de { $key }.
}
tab-drones-not-open = Sin bordón: la tónica y la quinta de { $key } no están ambas en órdenes al aire.
tab-drones-none = Ningún orden al aire le va aquí a la melodía.
tab-drones-chord = { $count ->
    [one] { $courses } suena con { $rings } de { $notes } notas: { $reasons }.
   *[other] { $courses } suenan con { $rings } de { $notes } notas: { $reasons }.
}
tab-left-out = Sin bordón: { $reasons }.
why-key = la tónica o la quinta del tono
why-key-no-chord = tónica o quinta, donde no hay acorde
why-chord = nota del acorde
why-colour = colorea el acorde
why-clash = choca con { $note } del acorde
why-rough = roza con la melodía
why-not-of-key = ni tónica ni quinta junto a la nota
why-fast = pasaje rápido
why-passing = de paso
version-plain = la melodía sola
version-key-drones = bordones del tono
version-chord-drones = bordones según el acorde
version-double-stops = dobles cuerdas
tab-easiest = La versión más fácil que aún resuena: { $version }.
tab-none-rings = Ninguna versión resuena la mitad del tiempo.
drill-times = { $count ->
    [one] una vez
   *[other] { $count } veces
}
shell-tab-no-notes = «{ $title }» no tiene melodía.
shell-tab-all-off = Ni una nota de «{ $title }» cae en este mástil.
shell-tab-try = Prueba sin --octave o en otro tono.
shell-tab-part = Parte { $part }
shell-tab-legend = D abajo, U arriba; d y u en silencios y ligaduras: la mano pasa sobre las cuerdas.
shell-tab-drone = o: el orden al aire que suena a la vez.
shell-tab-two-fingers = Dedos 2/0: en el orden de arriba y en el de abajo; 0 es al aire.
shell-drill-stops = Dobles cuerdas, las más frecuentes primero: un compás a tiempo, un compás abajo y arriba, por lo común en corcheas
shell-drill-no-stops = La melodía no pide dobles cuerdas.
shell-drill-changes = Cambios de acorde, los más difíciles primero: en círculo, un compás cada uno
shell-drill-no-changes = La melodía no tiene cambios de acorde.

## Porche

porch-back = Atrás
porch-sheet = Pentagrama, dedos, sonido y ejercicios
porch-today = Qué practicar
porch-today-why = Lo que salió bien vuelve a los 1, 2, 4, 7, 14 y 30 días; lo que salió más lento, mañana.
porch-empty = Aún no hay nada que practicar: no hay ningún tema.
porch-to-page = Volver a la página
porch-version = Versión
porch-page = Página
porch-hard = Los puntos dicen cuánto trabajan las manos. La marca señala la versión más fácil que aún resuena.
porch-phrase-back = Frase anterior
porch-phrase-on = Frase siguiente
porch-show-more = Mostrar más
porch-hide-more = Ocultar más
porch-from-top = Desde el principio de la frase
porch-again = Una y otra vez
porch-play = Tocar
porch-stop = Parar
porch-slower = Más lento
porch-faster = Más rápido
porch-staff = Pentagrama sobre la tablatura
porch-fingers = Dedos
porch-fingers-detail = 1 índice, 2 medio, 3 anular, 4 meñique, 0 al aire
porch-octave-up = { $count ->
    [one] Una octava más aguda
   *[other] { $count } octavas más aguda
}
porch-octave-down = { $count ->
    [one] Una octava más grave
   *[other] { $count } octavas más grave
}
porch-octave-detail = Apagado: como está escrito.
porch-octave-offered = { $way } caben todas.
porch-melody = La banda toca la melodía
porch-melody-detail = Silénciala cuando la melodía sea tuya
porch-care = El dolor significa parar. Descansa cinco minutos cada media hora y empieza las dobles cuerdas y las vueltas más rápidas con las manos sueltas; si sigue doliendo, pregunta a un maestro o a un médico.
porch-stops = Dobles cuerdas de este tema, primero las más frecuentes
porch-changes = Cambios de acorde, primero los más difíciles
porch-end-drill = Listo
porch-whole = Tema entero
porch-phrase = Frase { $part } { $number }
porch-same = como { $part } { $number }
porch-bar = Compás { $bar }
porch-clean = limpio a { $bpm }
porch-plain-why = La melodía sola: nada suena junto a ella.
porch-stops-why = Terceras, quintas y sextas junto a la melodía, donde la mano tiene tiempo.
porch-version-plain = Melodía
porch-version-key = Bordones
porch-version-chord = Por acorde
porch-version-stops = Dobles cuerdas
porch-version-said = { $version }, dificultad { $hard } de 5
porch-version-said-easiest = { $version }, dificultad { $hard } de 5, la más fácil que resuena
porch-hidden-nothing = Todo a la vista
porch-hidden-other = Compases alternos
porch-hidden-first = Primeras notas
porch-hidden-notes = Solo acordes
porch-hidden-all = Nada
porch-due = { $days ->
    [one] toca hoy, última vez ayer
   *[other] toca hoy, última vez hace { $days } días
}
porch-nearly = casi está
porch-next = la siguiente
porch-new = nuevo
porch-start-aim = { $why } · empieza a { $start }, llega a { $goal }
porch-take = { $title }, { $what }, { $why }, { $tempo }
porch-stop-finger = { $course } { $fret } ({ $finger })
porch-stop-open = { $course } { $fret }
stand-practise = Practicar en el porche
