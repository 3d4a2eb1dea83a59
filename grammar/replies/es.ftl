# Lo que dice hosebib, en español de México, de usted. Una idea por frase, 20 palabras como máximo, palabras sencillas.
# Los números, las unidades y las horas entran ya escritos. en.ftl tiene los mismos mensajes con los mismos datos.
# La palabra de seguridad sigue el uso de ISO 3864 y ANSI Z535.6: PELIGRO, ADVERTENCIA, ATENCIÓN.

### Openings

signal-danger = PELIGRO
signal-warning = ADVERTENCIA
signal-caution = ATENCIÓN
urgency-now = Ahora
urgency-soon = Pronto
urgency-plan = Planee

### Days, months, lists

day-mon = lun
day-tue = mar
day-wed = mié
day-thu = jue
day-fri = vie
day-sat = sáb
day-sun = dom
month-1 = ene
month-2 = feb
month-3 = mar
month-4 = abr
month-5 = may
month-6 = jun
month-7 = jul
month-8 = ago
month-9 = sep
month-10 = oct
month-11 = nov
month-12 = dic
list-and = { $first } y { $last }
list-or = { $first } o { $last }

### Events

event-arrived = llegó
event-leveled = nivelada
event-jacks-down = gatos abajo
event-chocked = calzada
event-power-on = con corriente
event-power-lost = se fue la corriente del sitio
event-power-back = volvió la corriente
event-water-on = agua abierta
event-water-off = agua cerrada
event-in-service = abierta al público
event-closed = cerrada
event-waste-pumped = aguas negras vaciadas
event-fresh-filled = agua limpia llena
event-fresh-drained = agua limpia drenada
event-filter-serviced = filtro limpio o cambiado
event-fuse-replaced = fusible cambiado
event-breaker-reset = breaker repuesto
event-regulator-fitted = regulador puesto
event-heater-on = calentador prendido
event-restocked = surtida
event-cleaned = limpia
event-winterized = lista para el invierno
event-hitched = enganchada
event-left = salió del sitio
event-returned = de vuelta en el patio
event-power-off = corriente cortada
event-heater-off = calentador apagado
event-unhitched = desenganchada
event-jacks-up = gatos arriba
event-stowed = todo guardado
event-lights-checked = luces de remolque revisadas

### Faults

fault-low-flow = agua con poca fuerza
fault-no-water = sin agua
fault-no-lights = sin luces
fault-no-power = sin corriente
fault-breaker-trip = se bota el breaker
fault-gfci-trip = se bota el GFCI
fault-pump-running = la bomba no para
fault-pump-dead = la bomba no anda
fault-no-heat = sin calefacción
fault-no-cooling = sin aire frío
fault-no-hot-water = sin agua caliente
fault-leak = fuga
fault-frozen = congelado
fault-toilet-clog = taza tapada
fault-toilet-running = la taza no deja de correr
fault-odor = mal olor
fault-spill = derrame de aguas negras
fault-gauge-stuck = medidor trabado
fault-not-level = desnivelada
fault-damage = daño
fault-fan-dead = ventilador parado
fault-battery-low = batería baja
fault-lock-jam = chapa trabada
fault-no-sound = sin sonido
fault-shock = toque eléctrico
fault-fuse-blown = fusible quemado
fault-sink-clog = lavabo tapado
fault-out-of-supplies = sin insumos
fault-gas-illness = alguien mal por gas o humo
fault-hot-plug = clavija caliente
fault-cord-damaged = cable dañado
fault-tire = llanta con problema
fault-fire = fuego
fault-person-trapped = alguien encerrado
fault-person-hurt = alguien herido

### Readings

level-empty = vacío
level-full = lleno
taps-shut = con llaves cerradas
taps-running = con llaves abiertas
reading-pressure = agua { $value }
reading-supply = toma { $value } antes del regulador
reading-flow = flujo { $value }
reading-hose = manguera { $value }
reading-waste = aguas negras { $level }
reading-waste-gal = aguas negras { $level } ({ $floor ->
    [yes] al menos
   *[no] unos
} { $gallons })
reading-waste-held = aguas negras { $value }
reading-fresh = agua limpia { $level }
reading-fresh-gal = agua limpia { $level } ({ $floor ->
    [yes] al menos
   *[no] unos
} { $gallons })
reading-fresh-held = agua limpia { $value }
reading-pumped = { $value } sacados
reading-air = afuera { $value }
reading-inside = adentro { $value }
reading-low = mínima prevista { $value }
reading-humidity = humedad { $value }
reading-wind = viento { $value }
reading-slope = { $value } de desnivel
reading-volts = corriente { $value }
reading-battery = batería { $value }
reading-cords = { $value ->
    [one] 1 cable con corriente
   *[other] { $value } cables con corriente
}
reading-cord = cable { $value }
reading-fuel = combustible { $value }
reading-guests = { $value ->
    [one] 1 invitado
   *[other] { $value } invitados
}
reading-eta = llega en { $value }
reading-amps = { $value }
reading-amps-circuit = circuito { $circuit } { $value }
reading-circuits-live = { $count ->
    [0] ningún circuito vivo
    [one] circuito { $circuits } vivo
   *[other] circuitos { $circuits } vivos
}

### Logged

logged = Anotado para la { $unit }: { $what }.
logged-at = Anotado para la { $unit }, { $time }: { $what }.
logged-site = Anotado para la { $unit } en { $site }: { $what }.
logged-site-at = Anotado para la { $unit } en { $site }, { $time }: { $what }.
logged-cleared = ya quedó: { $faults }
logged-too-old = Es muy viejo para cambiar lo que se sabe hoy.
all-well = { $unit }: todo dentro de sus límites.
context-last = No dijo unidad: la tomé como la { $unit }, su última.
context-answered = La tomé como la { $unit }, según su respuesta.
context-only = No dijo unidad: la tomé como la { $unit }, la única de su trabajo.
taken = Leí { $pairs }.
taken-pair = { $typed } como { $read }

### Not understood, not logged

unclear-other = No anotado: { $quote }. No lo entiendo. Mande la unidad, qué leyó y el número.
unclear-more = { $count ->
    [one] Otra parte no quedó clara. Mándela de nuevo sola.
   *[other] Otras { $count } partes no quedaron claras. Mándelas de nuevo, una por una.
}
unclear-two-values = No anotado: { $quote } da dos valores para un mismo dato. Mande solo el bueno.
unclear-range = No anotado: { $quote } no es un solo valor. Mande un número, el que mejor vea.
unclear-no-place = No anotado: { $quote }. ¿De qué es ese número? Diga presión, negras, limpia, afuera o voltios.
unclear-out-of-range = No anotado: { $quote } no puede ser. Lea otra vez y mande el número con su unidad de medida.
unclear-doubt = No anotado: { $quote } suena a duda. Vaya a ver y mande lo que halle.
unclear-which-unit = No anotado: { $quote }. ¿Qué unidad es? Mande el número de unidad.
unclear-which-tank = No anotado: { $quote }. ¿Es negras o limpia? Mande "negras" o "limpia" con el nivel.
unclear-unit-of-measure = No anotado: { $quote }. ¿Son psi o bar? Mande el número con eso.
unclear-order = No cambié nada: { $quote }. Los datos cambian solo con reportes. Mande cada unidad con lo que ve, o "deshacer".
unclear-past = No anotado: { $quote } es de otro día. ¿Fue hoy? Entonces mándelo con "hoy".
unclear-question-mark = No anotado: { $quote }. ¿Es así, o lo pregunta? Mándelo sin el signo.
unclear-correction = No anotado: { $quote }. No sé qué corrige. Mande otra vez la unidad y el dato completo.
unclear-done = No anotado: { $quote }. ¿Qué tarea quedó hecha? Mande "hecho" y el número de tarea.
aside-plan = No anotado, pues aún no se hace: { $quote }. Avise cuando esté hecho.
aside-condition = No anotado, pues dice "si": { $quote }. Avise cuando pase.
aside-request = No anotado como reporte: { $quote } pide un trabajo.
aside-past = No anotado, pues es de antes: { $quote }.
aside-quote = No anotado, pues cita a otro: { $quote }. Si es así, dígalo con sus palabras.
aside-question = No anotado, pues pregunta: { $quote }.

### Questions

ask-which-unit = ¿Para qué unidad es? Mande su número.
ask-which-unit-of = ¿Para qué unidad es: { $units }?
ask-what-value = ¿Qué es { $quote }? Conteste con una palabra: psi, negras, limpia, afuera o voltios.
ask-what-value-on = ¿Qué es { $quote } en la { $unit }? Conteste con una palabra: psi, negras, limpia, afuera o voltios.
ask-taps-shut = ¿Leyó la presión de la { $unit } con llaves abiertas o cerradas?
ask-before-regulator = ¿Leyó la presión de la { $unit } antes o después del regulador?
step-other = ¿Qué halla en la { $unit }? Conteste sí, no o salta.

### Hints

hint = { $hints }.
hint-why = "por qué"
hint-done = "hecho { $id }"
hint-pressure = mande la presión nueva

### Why

why-head = Por qué: { $name }.
why-head-unit = Por qué, { $unit }: { $name }.
why-fact = { $name }: { $value } ({ $origin })
why-formula = Cuenta: { $formula }
why-source = Fuente: { $source }
why-said = Usted lo reportó. No hay cuenta detrás.
why-more = Hay más consejos: { $names }. Pregunte "por qué" con una palabra de ahí.
why-nothing = No he dado consejo hace poco. No hay qué explicar.
origin-read = leído en sitio
origin-spec = de los datos de la flota
origin-assumed = supuesto, nadie me lo dijo
origin-computed = calculado
origin-limit = el límite
source-common-practice = uso común, sin fuente publicada

### Tasks

task-pump-out = vaciado
task-refill = llenado
task-drain = drenado
task-regulator = regulador
task-filter = filtro
task-heater = calentador
task-repair = reparación
task-electrician = electricista
task-plumber = plomero
task-check-in = reporte
task-other = trabajo
task-truck-by = camión en sitio antes de { $time }
task-by = antes de { $time }
task-call-by = llame antes de { $time }
task-call-now = llame ya
task-nobody-called = Nadie ha llamado aún.
task-nobody-has-it = Nadie la tiene aún.
task-has-it = { $who } la tiene.
task-is-done = Hecha.
task-is-dropped = Quitada.
task-is-late = Va tarde.
task-late = Tarde: tarea { $task }
task-opened = Tarea nueva { $task }
task-moved = Hora nueva: tarea { $task }
task-stands = Tarea { $task }
task-reopened = Abierta de nuevo: tarea { $task }
task-taken = Tarea { $task }: { $who } la tiene.
task-done = Tarea { $task }: hecha.
task-dropped = Tarea { $task }: quitada, { $reason }.
tail-nobody-called = Nadie ha llamado aún: tarea { $id }.
tail-taken = { $who } tiene la tarea { $id }.
tail-task = Tarea { $id }.
tasks-head = { $count ->
    [one] Una tarea abierta:
   *[other] { $count } tareas abiertas, primero la más próxima:
}
tasks-none = No hay tareas abiertas.
task-unknown = No hay tarea { $id }. No cambié nada. Mande "tareas" para ver la lista.
task-already-closed = La tarea { $id } ya está cerrada. No cambié nada.

### Forecast

forecast-none = No hay qué prever.
forecast-of = { $unit }:
forecast-no-job = La { $unit } no está en ningún trabajo. No hay qué prever.
forecast-waste-now = Las aguas negras ya están al { $limit } o más.
forecast-waste-at = Aguas negras al { $limit } como a las { $likely } ({ $early } a { $late }).
forecast-waste-perhaps = Aguas negras al { $limit } como a las { $likely }, no antes de { $early }. Podrían no llegar al { $limit }.
forecast-waste-early = Las aguas negras podrían llegar al { $limit } desde { $early }. Bien puede que no lleguen al { $limit }.
forecast-waste-never = Las aguas negras no deben llegar al { $limit } en este trabajo.
forecast-fresh-now = El agua limpia ya está al { $limit } o menos.
forecast-fresh-at = Agua limpia al { $limit } como a las { $likely } ({ $early } a { $late }).
forecast-fresh-perhaps = Agua limpia al { $limit } como a las { $likely }, no antes de { $early }. Podría no bajar al { $limit }.
forecast-fresh-early = El agua limpia podría bajar al { $limit } desde { $early }. Bien puede que no baje tanto.
forecast-fresh-never = El agua limpia no debe bajar al { $limit } en este trabajo.
forecast-battery-at = Batería a media carga como a las { $likely } ({ $early } a { $late }), con { $amps }.
forecast-battery-about = Batería a media carga como a las { $likely }, con { $amps }.
forecast-battery-long = La batería dura más de 3 días con { $amps }.
forecast-stuck = El medidor no se ha movido como debía. No confíe en él.
forecast-misread = La última lectura no va con lo demás. Léala otra vez.

### Status and history

status = { $unit }: { $stage }.
status-site = { $unit } en { $site }: { $stage }.
status-last-word = Último reporte hace { $age }, de { $who }.
status-no-word = Aún no hay reporte de ella.
status-read = { $time }: { $what }
status-faults = Mal ahora: { $faults }.
status-fault = { $fault } desde { $time }
history = { $unit }, primero lo más nuevo:
history-line = { $time } { $who }: { $what }
history-none = Aún no hay reportes de la { $unit }.
stage-unknown = sin reporte
stage-yard = en el patio
stage-hitched = enganchada o en camino
stage-setting-up = en montaje
stage-in-service = abierta
stage-closed = cerrada

### What the desk finds in a message

desk-unknown-unit = No hay unidad { $name }. No anoté nada de ella. ¿Quiso decir { $near }?
desk-unknown-unit-alone = No hay unidad { $name }. No anoté nada de ella. Mande el número correcto.
desk-implausible = No anotado: { $value } { $what ->
    [pumped] sacados es más de lo que cabe en el tanque de aguas negras
    [fresh] es más de lo que cabe en el tanque de agua limpia
   *[other] es más de lo que cabe en el tanque de aguas negras
}, { $limit }. Lea otra vez.
desk-implausible-circuit = No anotado: { $value } en el circuito { $circuit }. Esta unidad tiene { $limit ->
    [one] 1 circuito
   *[other] { $limit } circuitos
}. ¿Cuál es?
desk-not-allowed-dispatcher = No cambié nada. Solo un despachador puede hacer eso. Pídaselo al suyo.
desk-not-allowed-tech = No cambié nada. Solo un técnico o un despachador puede hacer eso. Pídaselo a uno.
odd-time = No anotado: no sé qué hora es { $quote }. Mande una hora de reloj, como 14:30.
unreadable = No puedo leer { $kind ->
    [voice] un mensaje de voz
    [sticker] un sticker
    [video] un video
    [photo] una foto sin texto
   *[other] un mensaje así
}. No anoté nada. Escriba lo que ve.
nothing-logged = No anoté nada. Mande la unidad y lo que ve: 12 presion 50 tanque 1/2.
greeting = Hola, { $who }. Mande la unidad y lo que ve: 12 presion 50 tanque 1/2. Con "ayuda" le digo más.
stranger = Este chat es solo para personas invitadas.

### Orders and their answers

undone = Quité su reporte de { $time } sobre { $units }. Ya no cuenta.
undo-nothing = No hay nada que quitar. Guardo sus reportes 24 h.
edit-taken = Su cambio toma el lugar de lo que mandó a las { $time }.
edit-undone = Su cambio quita lo que mandó a las { $time }. No anoté nada nuevo.
late-message = Su mensaje de { $time } llegó apenas. Queda anotado para esa hora.
late-meanwhile = Ya hay reportes más nuevos. Este consejo va con el más nuevo.
plan-which-unit = Aún no puse nada: { $quote }. ¿Para qué unidad es? Mándelo otra vez con el número.
watch-set = Le aviso cuando la { $unit } llegue a { $what }.
watch-set-below = Le aviso cuando la { $unit } baje a { $what }.
watch-past = La { $unit } ya está ahí: { $what }. No puse aviso.
watch-hit = Pidió que le avise: { $unit } { $what }, según { $who }.
got-it = Enterado: { $what }. No sale de nuevo, salvo que empeore.
got-it-nothing = Nada espera un "enterado".
got-it-by = { $who } ya está enterado: { $what }.
never-mind-question = Pregunta quitada. No anoté nada de ella.
never-mind-watch = Quité su aviso de la { $unit }.
never-mind-nothing = No hay ninguna pregunta abierta.
order-not-yet = Aún no puedo hacer eso. No cambié nada.
order-which-task = ¿Qué tarea? Mande la palabra con el número de tarea. "tareas" da la lista.
drop-needs-reason = ¿Por qué la quita? Mande "quita { $id }" con el motivo.
move-needs-time = ¿Para cuándo? Mande "mueve { $id } 19:30" con su propia hora.
log-of = { $who }, primero lo más nuevo:
log-line = { $time } { $unit }: { $what }
log-none = { $who } no tiene reportes de los últimos dos días.
log-who = No conozco a { $quote }. Mande un nombre de la lista del equipo.
tell-sent = Se lo pasé a { $who }.
tell-from = De { $who }: { $quote }
tell-who = No conozco a { $quote }. No pasé nada. Mande "dile", el nombre y sus palabras.
override-logged = Permiso para la { $unit } anotado a su nombre. Motivo: { $quote }.
override-needs-reason = Mande "autoriza", la unidad y el motivo.
taught = Desde hoy leo { $word } como { $meaning }.
teach-how = Mande "aprende", la palabra nueva, "=" y una que conozco: aprende tanque miel = negras.
note-taken = Nota de la { $unit } guardada: { $quote }. Sale en cada llegada hasta que la quite.
sum-result = { $name }: { $value }. Fuente: { $source }
sum-how = No conozco esa cuenta. Mande por ejemplo: sum drop 16 amps 150 ft 14 gauge.
sum-unknown = Sé hacer estas cuentas: { $names }.
sum-never = nunca
sum-assumed = Se tomó, pues no lo dio: { $what }.
sum-missing = Para esa cuenta falta: { $what }.
sum-out-of-range = Esos números no pueden ser. No se calculó nada.
sum-drop = caída de voltaje
sum-drop-pct = de 120 V
sum-freeze = manguera quieta a punto de hielo en
sum-blocked = el hielo la puede tapar tras otros
sum-hose = pérdida en la manguera
sum-flow = caudal máximo que deja 20 psi
sum-battery = batería a media carga
sum-chill = sensación térmica
sum-heat = índice de calor
sum-fill = tiempo de llenado
sum-tank = tanque de aguas negras al 85 % en
sum-queue = espera media
sum-weight = peso del líquido
sum-need-amps = amperes
sum-need-feet = largo en pies
sum-need-gauge = calibre del cable
sum-need-inches = medida de la manguera
sum-need-flow = caudal en gpm
sum-need-pressure = presión en psi
sum-need-temperature = temperatura del aire
sum-need-wind = viento
sum-need-percent = por ciento
sum-need-gallons = galones
sum-need-per-hour = usos por hora
sum-need-stalls = tazas
sum-need-number = un número
not-logged-disk = Aún no anotado: no puedo escribir por ahora. Lo anoto en cuanto pueda. No hace falta mandarlo otra vez.
not-logged-disk-again = No anotado: no puedo escribir por ahora. Mándelo otra vez más tarde.
not-logged-broken = No anotado: algo falló con este mensaje. Guardé su texto. Avise a su despachador.

### Alarms to a dispatcher

alarm-danger = { $signal } { $unit }: { $who } reporta { $what } en { $site }. Llame por teléfono ya.
alarm-danger-no-site = { $signal } { $unit }: { $who } reporta { $what }. Llame por teléfono ya.
alarm-person = { $signal }: { $who } reporta { $what }. Llame por teléfono ya.
alarm-answer = Conteste "enterado" para parar este aviso para todos.
alarm-driving = { $who } va en camino. Llame por teléfono, no escriba.

### Help

help-driver =
    Mande la unidad y lo que ve, con sus palabras:
      12 presión 50 tanque 1/2 temp 20
      14 llegué, calzada. 9 sin agua caliente
      12 vacié 380 gal
    Pregunte: "estado 12", "pronóstico 12", "historial 12", "tareas", "por qué".
    "hecho 41" cierra la tarea 41, "tomo 41" la hace suya.
    "deshacer" quita su último reporte.
    "si la 12 llega a 3/4 avísame" pone un aviso.
    Yo aconsejo. Deciden el código local y quien tiene licencia.
help-tech =
    { help-driver }
    Como técnico: "quita 41" con un motivo, "mueve 41 19:30".
help-dispatcher =
    { help-tech }
    Como despachador: "resumen", "log" con un nombre. "enterado" para un aviso para todos.

### The demo

demo-greeting =
    Esta es una prueba con una empresa inventada. Allá son las { $time } y usted es { $name }.
    Pruebe: unidad 12 presion 95 tanque 3/4 temp -5
    "ayuda" dice más, y ctrl-D termina.
demo-data = Sus datos están en { $folder }.

### Short names of findings, for lists

name-water-over-pressure = presión de agua muy alta
name-water-under-pressure = presión de agua baja
name-water-pressure-falling = presión de agua bajando
name-water-hose-undersized = manguera muy chica
name-water-fresh-endurance = se acaba el agua limpia
name-water-backflow = riesgo de retroceso
name-waste-book-pump-out = pedir vaciado
name-waste-close-now = aguas negras llenas
name-waste-spill = derrame de aguas negras
name-waste-dropped-unexplained = nivel de negras bajó sin razón
name-waste-gauge-doubtful = medidor dudoso
name-cold-freeze-soon = helada
name-cold-tank-heater-on = calentador del tanque
name-cold-no-cold-package = sin equipo de frío
name-cold-winterize = drenar para el invierno
name-cold-crew-cold = frío para el equipo
name-heat-crew-heat = calor para el equipo
name-power-shock = toque eléctrico
name-power-low-voltage = voltaje bajo
name-power-high-voltage = voltaje alto
name-power-over-current = amperes de más
name-power-cord-drop = voltaje perdido en el cable
name-power-cord-overloaded = cable sobrecargado
name-power-too-few-circuits = faltan circuitos
name-power-shared-circuit = circuito compartido
name-power-on-battery = anda con batería
name-power-battery-low = batería baja
name-power-generator = generador muy chico
name-crowd-under-served = faltan baños
name-site-not-level = desnivelada
name-site-not-chocked = sin calzas
name-site-set-up-next = sigue el montaje
name-site-wind = viento
name-tow-waste-aboard = aguas negras a bordo
name-tow-fresh-aboard = agua limpia a bordo
name-tow-not-ready = no lista para mover
name-tow-overweight = sobrepeso
name-trouble-low-flow = agua con poca fuerza
name-trouble-no-water = sin agua
name-trouble-no-lights = sin luces
name-trouble-no-power = sin corriente
name-trouble-breaker-trip = se bota el breaker
name-trouble-gfci-trip = se bota el GFCI
name-trouble-pump-running = la bomba no para
name-trouble-pump-dead = la bomba no anda
name-trouble-no-heat = sin calefacción
name-trouble-no-cooling = sin aire frío
name-trouble-no-hot-water = sin agua caliente
name-trouble-leak = fuga
name-trouble-frozen = congelado
name-trouble-toilet-clog = taza tapada
name-trouble-toilet-running = la taza no deja de correr
name-trouble-odor = mal olor
name-trouble-damage = daño
name-trouble-fan-dead = ventilador parado
name-trouble-lock-jam = chapa trabada
name-trouble-no-sound = sin sonido
name-trouble-fuse-blown = fusible quemado
name-trouble-sink-clog = lavabo tapado
name-trouble-out-of-supplies = sin insumos
name-trouble-gas-illness = alguien mal por gas o humo
name-trouble-hot-plug = clavija caliente
name-trouble-cord-damaged = cable dañado
name-trouble-tire = llanta con problema
name-trouble-fire = fuego
name-trouble-person-trapped = alguien encerrado
name-crew-late-check-in = sin reporte hace mucho
name-crew-person-hurt = alguien herido
name-desk-unknown-unit = unidad que no existe
name-desk-implausible = un número que no puede ser
name-desk-not-allowed = sin permiso

### Digest

digest-head = { $time }: { $count ->
    [one] 1 unidad
   *[other] { $count } unidades
}, { $trouble } por ver.
digest-more = { $count ->
    [one] Y 1 más con algo pendiente. Pregunte por su número.
   *[other] Y { $count } más con algo pendiente. Pregunte por número.
}
digest-good-order = En orden: { $count } ({ $stages }).
digest-well = en orden
digest-no-word = sin reporte
