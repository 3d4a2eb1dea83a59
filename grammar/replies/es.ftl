# Lo que dice hosebib, en español de México, de usted. Una idea por frase, 20 palabras como máximo, palabras sencillas.
# Los números, las unidades y las horas entran ya escritos. en.ftl tiene los mismos mensajes con los mismos datos.
# La palabra de seguridad sigue el uso de ISO 3864 y ANSI Z535.6: PELIGRO, ADVERTENCIA, ATENCIÓN.

### Openings

signal-danger = PELIGRO
signal-warning = ADVERTENCIA
signal-caution = ATENCIÓN
urgency-now = Ahora
urgency-soon = Pronto
urgency-plan = Plan

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
event-left = salida del sitio
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
fault-burnt-smell = olor a quemado
fault-co-alarm = alarma de CO o humo de escape
fault-fire = fuego
fault-runaway = remolque suelto o rodando
fault-person-trapped = alguien encerrado
fault-person-hurt = alguien herido
fault-person-cold = alguien afectado por el frío
fault-generator-inside = generador o calentador de gas adentro
fault-no-backflow = nada contra el retroceso
fault-gas-smell = olor a gas o combustible
fault-breakaway-fault = falla del freno de seguridad (breakaway)
fault-brake-fault = falla de frenos del remolque
fault-coupler-fault = falla del enganche o su perno
fault-chain-fault = falla de cadenas de seguridad
fault-tow-lights-fault = luz de remolque apagada
fault-jack-fault = gato atorado

### Readings

level-empty = vacío
level-full = lleno
taps-shut = con llaves cerradas
taps-running = con llaves abiertas
reading-pressure = agua { $value }
reading-supply = toma { $value } antes del regulador
reading-flow = flujo { $value }
reading-hose = manguera { $value }
reading-waste = tanque de negras { $level }
reading-waste-gal = tanque de negras { $level } ({ $floor ->
    [yes] al menos
   *[no] unos
} { $gallons })
reading-waste-held = tanque de negras { $value }
reading-fresh = tanque limpio { $level }
reading-fresh-gal = tanque limpio { $level } ({ $floor ->
    [yes] al menos
   *[no] unos
} { $gallons })
reading-fresh-held = tanque limpio { $value }
reading-pumped = { $value } sacados
reading-air = afuera { $value }
reading-inside = adentro { $value }
reading-low = mínima prevista { $value }
reading-humidity = humedad { $value }
reading-wind = viento { $value }
reading-slope = { $value } de desnivel
reading-volts = corriente { $value }
reading-volts-high = una línea a { $value }
reading-volts-low = la otra a { $value }
reading-battery = batería { $value }
reading-cords = { $value ->
    [one] 1 cable con corriente
   *[other] { $value } cables con corriente
}
reading-cord = cable { $value }
reading-cord-gauge = cable { $value }
reading-fuel = combustible { $value }
reading-guests = { $value ->
    [one] 1 invitado
   *[other] { $value } invitados
}
reading-eta = llega en { $value }
reading-stalls-out = { $value ->
    [one] { $value } baño fuera de uso
   *[other] { $value } baños fuera de uso
}
reading-amps = { $value }
reading-amps-circuit = circuito { $circuit } a { $value }
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
logged-many = Anotado para las unidades { $units }: { $what }.
logged-many-at = Anotado para las unidades { $units }, { $time }: { $what }.
logged-many-site = Anotado para las unidades { $units } en { $site }: { $what }.
logged-many-site-at = Anotado para las unidades { $units } en { $site }, { $time }: { $what }.
logged-cleared = ya quedó: { $faults }
logged-too-old = Es muy viejo para cambiar lo que se sabe hoy.
read-well = { $unit }: lo que leyó está dentro de sus límites. Sigue pendiente: { $names }.
all-well = { $unit }: todo dentro de sus límites.
danger-guessed = No dijo unidad: la tomé como la { $unit }, su última. Si no es la { $unit }, diga cuál.
danger-guessed-site = No dijo unidad: la tomé como la { $unit }, en { $site }. Si no es la { $unit }, diga cuál.
danger-site-differs = Dijo { $unit } y { $site }. Según el plan la { $unit } está en { $was }. Si está en { $site }: diga { $address }.
danger-site-beside = Dijo { $unit } y { $site }. Si está en { $site }: diga { $address }.
context-last = No dijo unidad: la tomé como la { $unit }, su última.
context-site = No dijo unidad: la tomé como la { $unit }, en { $site }.
context-answered = La tomé como la { $unit }, según su respuesta.
context-only = No dijo unidad: la tomé como la { $unit }, la única de su trabajo.
taken = Leí { $pairs }.
taken-pair = { $typed } como { $read }

### Not understood, not logged

unclear-other = No anotado: { $quote }. No lo entiendo. Mande la unidad, qué leyó y el número.
unclear-of-a-part = No anotado: { $quote } es de una parte, no del aire de afuera. El aire se manda así: "12 afuera 20".
unclear-below-what = No anotado: { $quote }. ¿Bajo qué? Mande la temperatura con su signo, como -5.
unclear-beside-unplaced = No anotado: { $quote } va junto a un número que no sé de qué es. Mande cada valor con su nombre.
unclear-no-measure = No anotado: { $quote }. No conozco la palabra tras el número. Mande psi, galones, voltios o pies.
unclear-static-and-flowing = No anotado: { $quote } da dos presiones. Mande sola la que se anota, como "12 presión 52 con llaves abiertas".
unclear-strange-word = No anotado: { $quote } trae una palabra que no conozco y puede cambiar el número. Mándelo otra vez.
unclear-more = { $count ->
    [one] Otra parte no quedó clara. Mándela de nuevo sola.
   *[other] Otras { $count } partes no quedaron claras. Mándelas de nuevo, una por una.
}
unclear-two-values = No anotado: { $quote } da dos valores para un mismo dato. Mande solo el bueno.
unclear-range = No anotado: { $quote } no es un solo valor. Mande un número, el que mejor vea.
unclear-bound = No anotado: { $quote } dice más de, menos de o casi. Mande el número que leyó.
unclear-no-place = No anotado: { $quote }. ¿De qué es el número? Diga presión, negras, limpia, afuera o voltios.
unclear-no-number = No anotado: { $quote }. ¿Cuánto leyó? Mándelo con el número.
unclear-implausible = No anotado: { $quote } no puede ser. Lea otra vez y mande el número con su unidad de medida.
unclear-doubt = No anotado: { $quote } suena a duda. Vaya a ver y mande lo que halle.
unclear-which-unit = No anotado: { $quote }. ¿Qué unidad es? Mande cada unidad con su propio dato.
unclear-which-tank = No anotado: { $quote }. ¿Es negras o limpia? Mande "negras" o "limpia" con el nivel.
unclear-which-volts = No anotado: { $quote }. ¿Es del contacto o de la batería? Mande "contacto" o "batería" con los voltios.
unclear-mains-or-lights = No anotado: { $quote }. ¿Falta la corriente, o solo las luces? Mande "sin corriente" o "sin luces".
unclear-cords-live = No anotado: { $quote }. ¿Cuántos cables tienen corriente ahora? Mándelo como "12 2 cables vivos".
unclear-outlet-power = No anotado: { $quote }. ¿Un solo contacto, y seco? Apriete una vez el reset de su GFCI. Si se bota otra vez, déjelo apagado hasta que lo vea un electricista. Todo muerto: mándelo como "12 sin corriente".
unclear-stopped-where = No anotado: { $quote }. ¿Ya está el remolque en su sitio de trabajo? Si es así, mándelo como "12 llegó".
unclear-done-in-part = No anotado: { $quote }. ¿Cuánto queda en el tanque? Mándelo como "12 negras 1/2".
unclear-nearly-level = No anotado: { $quote }. Nivele hasta que la burbuja quede al centro. Luego mande "nivelada", o cuánto le falta: "desnivel 1%".
unclear-spaced-minus = No anotado: { $quote }. ¿El número es bajo cero? Mándelo con el menos pegado, como -5.
unclear-bar-or-psi = No anotado: { $quote }. ¿Son bar o psi? Mande el número con eso.
unclear-f-or-c = No anotado: { $quote }. ¿Son °F o °C? Mande el número con eso.
unclear-feet-or-metres = No anotado: { $quote }. ¿Son pies o metros? Mande el número con eso.
unclear-percent-or-gallons = No anotado: { $quote }. ¿Es por ciento o galones? Mande el número con eso.
unclear-order = No cambié nada: { $quote }. Los datos cambian solo con reportes. Mande cada unidad con lo que ve, o "deshacer".
unclear-earlier-day = No anotado: { $quote } es de otro día. Si fue hoy, mándelo sin el día.
unclear-asks-something = No anotado: { $quote }. ¿Qué quiere saber? Con "ayuda" le digo qué puedo contestar.
unclear-which-to-mend = No anotado: { $quote }. No sé qué corrige. Mande otra vez la unidad y el dato completo.
unclear-done-what = No anotado: { $quote }. ¿Qué quedó hecho? Mande el trabajo, como "vacié la 12", o "hecho" y el número de tarea.
unclear-not-understood = No entendí { $quote }. Mande la unidad y lo que ve: 12 presión 50 tanque 1/2.
unclear-not-understood-again = No entendí { $quote }. "ayuda" muestra cómo escribir.
unclear-what-is-wrong = No anotado: { $quote }. ¿Qué tiene? Dígalo como "la 12 no tiene luces" o "la bomba de la 12 no sirve".
aside-plan = No anotado, pues aún no se hace: { $quote }. Avise cuando esté hecho.
aside-wish = No hice tarea de { $quote }. Para avisar al equipo: "dile a NOMBRE" y sus palabras.
aside-condition = No anotado, pues aún no pasa: { $quote }. Avise cuando pase.
aside-past = No anotado, pues es de antes: { $quote }.
aside-earlier-day = No anotado, pues es de otro día: { $quote }.
aside-quotation = No anotado, pues cita a otro: { $quote }. Si es así, dígalo con sus palabras.

### Questions

ask-which-unit = ¿Para qué unidad es? Mande su número.
ask-which-unit-of = ¿Para qué unidad es: { $units }?
ask-unit-yes = ¿Es para la { $unit }? Conteste sí, o mande la unidad.
ask-still = Sigue sin anotar: { $what }. ¿Para qué unidad es?
ask-which-unit-for = ¿Para qué unidad es { $quote }? Mande su número.
ask-which-unit-for-yes = ¿{ $quote } es para la { $unit }? Conteste sí, o mande la unidad.
ask-which-unit-for-of = ¿Para qué unidad es { $quote }: { $units }?
ask-which-mend = Nada cambió aún. ¿Quiere decir { $ways }?
ask-which-task = ¿Qué tarea quedó hecha: { $tasks }? Conteste con su número.
ask-task-done = ¿Ya quedó la tarea { $tasks }? Sí o no.
mend-unit = la unidad { $unit }
mend-on = { $what } en la { $unit }
ask-what-value = ¿Qué es { $quote }? Conteste con una palabra: psi, negras, limpia, afuera o voltios.
ask-cords-live = ¿Cuántos cables de la { $unit } tienen corriente ahora? Mande el número.
ask-what-value-on = ¿Qué es { $quote } en la { $unit }? Conteste con una palabra: psi, negras, limpia, afuera o voltios.
ask-taps-shut = ¿Leyó la presión de la { $unit } con llaves abiertas o cerradas?
ask-before-regulator = ¿Leyó la presión de la { $unit } antes o después del regulador?
ask-when = No anotado aún: { $quote } en la { $unit }. ¿A qué hora fue? Mande una hora como 14:30, o "ahora".
ask-leaves-unit = ¿Sale la { $unit } del sitio con usted? Sí o no. Aún nada anotado.
ask-leaves = ¿Sale algún remolque con usted? Mande su número, o no.
ask-override-why = Aún no anotado. ¿Por qué autoriza en la { $unit }? Mande la razón en pocas palabras.

### Respuestas a preguntas

still = Sigue en la { $unit }: { $names }.
answer-beside = Además en la { $unit }: { $names }. "más" dice todo.
answer-then = Luego:
answer-more = "más" dice todo de la { $unit }.
answer-next-none = No hay nada mal en la { $unit }, por lo reportado. Mande lo que lea: presión, tanque, voltios, temperatura.
answer-drain-heater = Primero apague su pastilla, y espere a que se enfríe. Cierre la toma, abra una llave caliente, luego su válvula de drenaje. Ponga un letrero en la pastilla: apagada hasta que el tanque esté lleno.
answer-tow-waste = No, en camino no, por corto que sea. El líquido mueve el peso, y ejes y frenos pueden pasar su límite. Primero vacíela. Dentro del sitio decide el despachador.
answer-tow-must-be-empty = Sí, los dos tanques, para cualquier camino, por corto que sea. El líquido mueve el peso, y ejes y frenos pueden pasar su límite. Lo que la bomba no saca puede quedar, 5 % cuando más. Dentro del sitio decide el despachador.
answer-hold-breaker = No. Una pastilla detenida a la fuerza deja que los cables se quemen. Déjela abajo, y desconecte lo que usa.
answer-backfeed = No. Las patas de ese cable traen corriente, y la corriente al revés mata a gente en la línea. Cada cable va de su contacto a su entrada.
answer-hot-swap = No. Primero apague las cargas, luego la pastilla en la fuente. Luego cámbielo con manos secas, y vuelva a prender.
answer-daisy-chain = No. Cada cable va directo a un contacto y un circuito propios. Los cables unidos y los contactos compartidos se calientan y se queman.
answer-thaw = Corte la corriente en lo mojado. Cierre la toma, abra la llave cercana. Aire o toallas tibias, desde la punta abierta hacia atrás. Luego llene despacio y busque grietas.
answer-breakaway-test = Enganchada y calzada, clavija de luces fuera de la troca. Jale el perno: los frenos deben trabarse. Jale despacio: deben aguantar. Meta el perno enseguida, conecte. Si no aguantan: cargue su batería, y no salga al camino.
answer-hook-up-water = Primero enjuague la manguera. Luego llave, rompevacío, regulador, manguera de agua potable, entrada. Abra despacio, busque goteras, y mande la presión en la entrada.
answer-level-how = En el gancho, primero de lado a lado: bloques bajo las llantas bajas. Luego calce los dos lados. Desenganche, luego de frente a atrás con el gato de la lengua. Al final los estabilizadores: solo dan firmeza.
answer-reset-more = No. Dos veces a lo más, y ya las tuvo. Déjela abajo, desconecte lo que usa, y que la vea un electricista.
answer-cannot-tell = No puedo decir si eso es seguro, ni cómo se hace. Antes de hacerlo pregunte al despachador o a quien sepa.
answer-flame = No. Nunca soplete, flama ni pistola de calor. Corte la corriente en lo mojado, cierre la toma, abra la llave cercana. Aire o toallas tibias, desde la punta abierta hacia atrás.
answer-dumped = No. Las aguas negras nunca van al suelo, a una zanja ni a una coladera. Pare, aleje a la gente y llame a la oficina.
answer-lost-neutral = PELIGRO: el neutro puede estar abierto. Baje ya todas las pastillas y déjelas abajo. Nadie prende nada. Llame a un electricista con licencia y a la oficina.
answer-fuel-heater = No. Solo calor eléctrico, de los circuitos del remolque.
answer-generator-place = Afuera, a 20 ft (6 m) o más de puertas, ventanas y respiraderos. El escape lejos de la gente. Nunca en una puerta.
answer-refuel = Primero apáguelo y deje que se enfríe. Luego cargue, lejos de flama y puertas.
answer-antifreeze = Solo anticongelante rosa, nunca el de auto. Sal solo en el tanque de negras, nunca en el agua limpia. Pregunte antes a la planta: la sal daña las válvulas.
answer-unclog = Ni ácido, ni sosa, ni agua a presión. Guantes y careta. Primero bomba de mano, luego guía para taza.
answer-bleach = Solo en piso duro y herramienta, con agua: 1/4 de taza por galón (15 ml por litro) en herramienta. Nunca lo mezcle, nunca en el tanque de negras.
answer-bigger-breaker = No. El breaker protege el cable y la clavija, y esos siguen igual de delgados. Quite carga, o use otro circuito.
answer-amp-outlet = Un contacto de { $value } aguanta { $limit } por horas, no más. Es un solo clima o un solo calefactor, sin nada más.
answer-act-unknown = No puedo decir si eso es seguro: nada de lo reportado lo dice. Si duda: déjelo y pregunte primero al despachador o a un técnico.
answer-warm-air = Secadora de pelo solo en un contacto con GFCI, con manos secas, lejos de lo mojado. Cierre la toma, llave abierta, desde la punta abierta hacia atrás. Nunca la deje sola.
answer-amp-outlet-small = Un contacto de { $value } aguanta { $limit } por horas, no más. Un clima o un calefactor pide 12.5 A: es demasiado. Solo convertidor y luces.
answer-unplug = Sí, si puede sin peligro: primero el breaker en la fuente, luego los cables allá. Manos secas, sin tocar metal ni agua.
answer-wet-hands = No. Con manos o pies mojados la corriente pasa y puede matar. Salga del agua y séquese las manos. Primero baje el breaker del sitio, desde suelo seco. Luego la clavija. Si no llega en seco: déjela, aleje a la gente y llame a un electricista.
danger-no-shrug = { $unit }: no es cualquier cosa, y no espera. Ni guantes ni pruebas con la mano. Nadie la usa hasta que la revisen.
answer-boiling-water = No. El agua hirviendo raja un tubo frío y quema, y se vuelve a congelar. Toallas tibias o aire tibio, con la llave abierta antes.
answer-power-again = No, no después de un toque, una clavija caliente, olor a quemado o agua cerca de corriente. Déjelo apagado hasta que un electricista lo revise. Si no hubo nada de eso: una vez, y lea los voltios.
answer-bypass = No. Un GFCI que se bota halló una falla. Desconecte todo y conecte de uno en uno.
answer-reset-again = Una vez más, y ya: bájelo todo, luego súbalo. Se bota otra vez: déjelo abajo. Clavija caliente o quemada: no lo suba.
answer-bigger-fuse = No. Solo uno igual, una vez. Se quema otra vez: hay un corto.
answer-tape-cord = No. Corte la corriente en la fuente. Quite ese cable y use uno bueno.
answer-hot-plug = Deje de usarla. Corte la corriente en la fuente y luego desconecte. Cambie clavija y contacto.
answer-enter-tank = No. Nadie entra a un tanque ni mete cabeza o brazos. Vea desde afuera con una luz.
answer-smoke = No, ni cerca del tanque, ni de una válvula abierta, ni de la batería. Su gas arde.
answer-regulator-off = No, déjelo puesto. Poco flujo: limpie el filtro de entrada, busque un doblez, use manguera más ancha o corta.
answer-drink = No. El agua del tanque no es para tomar.
answer-wrong-hose = Manguera de agua potable, solo para el agua limpia. La de negras nunca va en el agua limpia.
answer-vacuum-breaker = Sí, en la toma, cada vez. Ninguna punta de manguera en un balde, un tanque o el piso.
answer-roof = No con viento, lluvia, hielo, ni a solas. Corte la corriente antes de abrir una tapa.
answer-jacks-lift = No. La afirman. Primero nivele con bloques, lado a lado, luego con el gato de la lanza.
answer-chocks = Primero calce los dos lados, siempre. Luego desenganche.
answer-ice-cap = No, mientras pueda estar helada. Caliente despacio, con aire o toallas tibias.
answer-pump-dry = No. Bomba apagada hasta llenar el tanque.
answer-drip = Solo a un drenaje seguro afuera, y no un hilo fino: también se hiela. Nunca al tanque de negras: lo llena. Mejor caliente la manguera, o drénela.
answer-heat-tape = Sí, si está aprobada para esa manguera o tubo. Con espuma encima y en un GFCI.
answer-heat-tape-ac = No en el contacto ni circuito del clima: el clima solo se lleva casi todo. Dele su propio contacto con GFCI. Solo cinta aprobada para esa manguera o tubo.
answer-if-shocked = No lo toque. Corte la corriente en la fuente: baje el breaker del sitio, o jale el cable allá. Si no se puede: empújelo con madera seca, parado en seco. Luego el número de emergencias. Si no respira: presione el pecho. A quien recibió un toque lo ve un médico.
answer-hose-in-drain = No. Tape la coladera. Conténgalo con tierra o absorbente y que lo chupe el camión. Avise a su despachador.
answer-ac-and-heat = No. El aire y la calefacción de un cuarto nunca van juntos. Nunca dos aires en un cable.
answer-water-heater = Prenda solo con su tanque lleno: la llave caliente corre sin aire. Apague antes de drenar. Primero cargue la batería, luego caliente agua.
answer-filter = Cierre la toma, saque la presión por un lavabo, luego abra el vaso. Enjuague, cierre a mano, abra despacio.
answer-battery-charge = Nada de pasar corriente de una camioneta. Cárguela con el convertidor: alimente su circuito. Una batería helada puede reventar: primero métala.
answer-hydrant = Solo con permiso de la compañía de agua, su medidor y su válvula contra retroceso. Primero va el regulador.
answer-alone = Mejor dos juntos. A solas: mande "voy abajo de la", la unidad y "revísame en 15". Pregunto, y aviso al despachador.
answer-level-now = { $unit }: { $read }.
answer-level-since = { $unit }: cerca de { $value } ahora. Última lectura a las { $time }: { $read }.
answer-level-read = { $unit }, { $time }: { $read }.
answer-level-guessed = { $unit }: nadie ha leído el tanque de negras. Por la gente va cerca de { $value }. Léalo y mándelo.
answer-level-waste-unknown = { $unit }: nadie ha leído el tanque de negras. Mándelo: { $unit } tanque 1/2.
answer-level-fresh-unknown = { $unit }: nadie ha leído el agua limpia. Mándela: { $unit } agua limpia 1/2.
answer-level-battery-unknown = { $unit }: nadie ha leído la batería. Mándela: { $unit } batería 12.4 voltios.
answer-fresh-on-hose = Usa agua del sitio, así que su tanque limpio no baja.
answer-battery-on-power = Con corriente en su convertidor, la batería carga. Solo baja sin corriente.
answer-not-read = { $unit }: nadie lo ha leído. Léalo y mándelo.
answer-pumped = { $unit }: el último vaciado fue a las { $time }.
answer-pumped-so-much = { $unit }: el último vaciado fue a las { $time }: { $value }.
answer-not-pumped = { $unit }: no hay ningún vaciado en el libro.
answer-truck-promised = El camión para la { $unit } quedó para las { $time }: tarea { $id }.
answer-truck-called = Ya llamaron el camión para la { $unit }, sin hora: tarea { $id }. Pregunte cuándo llega.
answer-truck-nobody-late = Nadie ha llamado aún al camión de la { $unit }. Era para { $due }, hace { $age }: tarea { $id }.
answer-truck-nobody-due = Nadie ha llamado el camión para la { $unit }. Debe estar ahí a las { $due }: tarea { $id }.
answer-truck-nobody = Nadie ha llamado el camión para la { $unit }: tarea { $id }.
answer-no-truck = No hay camión pedido para la { $unit }. ¿Hace falta? Mande "la { $unit } necesita vaciado".
answer-no-truck-at-all = No hay camión pedido para ninguna unidad. Diga la unidad y le doy su pronóstico.
answer-ok = Sí: { $what } está bien para la { $unit }.
answer-ok-nearly = Casi: { $what } en la { $unit } sirve por ahora.
answer-not-ok = No: { $what } no está bien para la { $unit }.
answer-too-high-no = No: { $what } no es demasiado para la { $unit }.
answer-too-high-yes = Sí: { $what } es demasiado para la { $unit }.
answer-too-low-no = No: { $what } no es muy poco para la { $unit }.
answer-too-low-yes = Sí: { $what } es muy poco para la { $unit }.
answer-but-too-low = No es demasiado, es muy poco: { $what } en la { $unit }.
answer-but-too-high = No es poco, es demasiado: { $what } en la { $unit }.
answer-bad-no = No: { $what } está bien para la { $unit }.
answer-bad-yes = Sí: { $what } no está bien para la { $unit }.
answer-range = Está bien de { $first } a { $last } con las llaves cerradas.
answer-not-logged = No anoté nada. Si lo leyó, mándelo con la unidad.
answer-general-pressure = De 40 a 60 psi (3 a 4 bar) está bien. Ponga el regulador a 45 psi (3 bar). Diga la unidad para ver sus límites.
answer-partly = { $unit }: nada urgente, pero no todo está bien.
answer-cannot = Eso no lo puedo calcular. No se anota nada. Pregunte a su despachador, o mande lo que lee.
answer-without-if = Ese "si" no lo puedo calcular. Como está ahora:
answer-truck-call-by = { $unit }: llame al camión a más tardar a las { $time }.
answer-truck-call-now = { $unit }: no espere. Llame al camión ya.
answer-ground-rod = No lo puedo decir. El manual y el código local dicen si ese generador lleva varilla. Deje su tierra como vino de fábrica.
answer-level-enough = Hasta media burbuja (1 %) está bien. Más de 2 %: súbala con bloques. Más de 3 %: muévala.
answer-no-blocks = No la nivele con piedras ni con los gatos. Consiga bloques, o busque piso más plano. Las cuñas se quedan donde están.
answer-small-outlet = Un contacto de 15 A da 12 A por horas. Una carga cuando mucho, y ninguna de más de 12 A en su placa. Sin aire. Lea el voltaje con carga.
answer-house-cord = Nada de cable delgado de interior: el calibre 16 no aguanta un calentador ni un aire. Cable de exterior calibre 12 o más grueso, 10 si pasa de 50 ft (15 m). Cada cable en su circuito.
answer-well = Sí, por lo reportado de la { $unit }.
answer-who-last = { $unit }: última noticia hace { $age }, de { $who }.
answer-who-none = { $unit }: nadie ha escrito de ella.
answer-who-road = { $who } va en camino a la { $unit }.
answer-who-crew = En el trabajo: { $names }.
answer-trucks-none = Ningún camión está pedido ni hace falta.
answer-next-job-none = No sé de otro trabajo para la { $unit } en las próximas dos semanas.
answer-next-job = { $unit }: sigue en { $site }, de { $time } a { $last }, { $count } invitados.
answer-next-job-full = Solo por los invitados, las negras llegan a su tope como a las { $time }.
answer-next-job-no-water = Allá no hay agua: llévela llena.
answer-next-job-no-power = Allá no hay corriente: solo la batería, o lleve un generador.
answer-next-job-nobody = No hay nadie apuntado.
answer-free = Sin trabajo apuntado y en ningún remolque, por lo que sé: { $names }.
answer-free-none = Por lo que sé, nadie está libre.
answer-takes-waste = { $unit }: unos { $count } usos más y las negras llegan al { $limit }. Ahora van como al { $value }.
answer-takes-empty = { $unit }: unos { $count } usos desde vacío hasta el { $limit }. Nadie ha leído las negras.
answer-takes-fresh = { $unit }: unos { $count } usos y queda poca agua limpia. Se acaba antes de que se llenen las negras.
answer-takes-guests = Son unos { $count } invitados por { $value } horas abiertas. Para más hace falta un camión a medias.
answer-generator-size = { $unit }: todo junto gasta { $value }. Pide un generador de { $limit }. Calculado para { $first } y { $last }.
answer-generator-enough = Sí: { $read } alcanza para la { $unit }.
answer-generator-tight = No: { $read } la sostiene, pero quizá no arranca un clima con lo demás. Arranque uno por uno, el calentador al final.
answer-generator-too-small = No: { $read } es poco para toda la { $unit }. Deje un clima o el calentador de agua apagado, o traiga uno más grande.
answer-lasts-yes = Sí: por lo que sé, el tanque de negras de la { $unit } aguanta hasta { $time }.
answer-lasts-no = No: el tanque de negras de la { $unit } no aguanta hasta { $time }. Hay que vaciarlo antes.
answer-lasts-perhaps = No es seguro: las negras de la { $unit } quizá se llenan antes de { $time }. Tenga listo un camión.
done-truck-to-come = La tarea { $id } sigue abierta: el camión para la { $unit } viene a las { $time }. ¿Ya la vaciaron? Mande "{ $unit } vaciada" con los galones. ¿No hace falta? Mande "camión para la { $unit } cancelado".
answer-guests-told = { $unit }: { $count } invitados en el sitio, contados a las { $time }.
answer-guests-booked = { $unit }: { $count } invitados apuntados. Nadie los ha contado todavía.
answer-guests-none = La { $unit } no está en ningún trabajo, así que no sé de invitados.
answer-where-road = { $who } va en camino.
answer-where-road-unit = { $who } va en camino con la { $unit }, o hacia ella.
answer-where-road-eta = { $who } va en camino, llega como a las { $time }.
answer-where-road-unit-eta = { $who } va en camino con la { $unit }, o hacia ella, llega como a las { $time }.
answer-where-last = { $who }: última noticia hace { $age }, de la { $unit } en { $site }.
answer-where-last-no-site = { $who }: última noticia hace { $age }, de la { $unit }.
silent-phone = Llame otra vez a { $who }.
silent-phone-near = Llame otra vez a { $who }, luego a quien escribió de ahí hace poco: { $names }.
silent-contact = Pregunte en el sitio: { $what }.
silent-then = Si en 15 min no contesta: mande a alguien a ver. Con "revisa a { $who } en 15" yo le pregunto.
aid-told = Avisé a los despachadores que necesita ayuda.
aid-nobody = Necesita ayuda, y no tengo a qué despachador avisar. Llame a su gente.
aid-what = Alguien herido o en peligro: primero llame al número de emergencia. ¿Qué pasa ahí? Mándelo con la unidad.
worry-first = Si hay alguien herido o en peligro: aleje a todos y primero llame al número de emergencia.
ask-worry = ¿Es así? Mande qué es y dónde: "hay un herido", "gas" o "fuego". Si no, mande "no".
worry-told = { $who } escribió { $quote }. No sé si hay alguien en peligro, y le pregunté. Llámele.
worry-none = { $who } dice que nadie está en peligro.
worry-dropped = Bien: nadie está en peligro. Si cambia, mándelo luego luego.
aid-asks = { $who } necesita ayuda: { $quote }. No dijo qué pasa: ya le pregunté.
aid-asks-on = { $who } necesita ayuda en la { $unit }: { $quote }. No dijo qué pasa: ya le pregunté.
aid-written = Escrito a las { $time }, llegó tarde. Llámele ya.
aid-alone = Di la alarma a { $names }: trabaja a solas y necesita ayuda. Quédese donde sea seguro.
aid-alone-told = { $signal }: { $who } trabaja a solas y pide ayuda: { $quote }. Lugar: { $site }. Llámele ya. Si no contesta: mande a alguien, llame a emergencias.
silent-alone = Trabaja a solas: no espere. Mande ya a alguien a ver, y llame a emergencias.
silent-road = Quien maneja no contesta. Llame otra vez cuando deba haber llegado. Si 30 min después nada: mande a alguien por el camino.
silent-hurt = Si hay herida o no despierta: primero llame a emergencias. Nunca entre a un tanque por nadie.
silent-hurt-at = Si hay herida o no despierta: primero llame a emergencias. Diga { $address }. Nunca entre a un tanque por nadie.
answer-where-none = Sin noticia de { $who } en el último día.
answer-where-quiet = Sin noticia en el último día: { $names }.
answer-late-none = Ninguna tarea va tarde.
answer-silent-none = De toda unidad abierta hubo noticia en las últimas 4 horas abiertas.
answer-silent-all-along = { $unit }: ni una palabra en este trabajo. Puertas abiertas desde { $time }.
answer-silent = { $unit }: sin noticia desde hace { $age }.
answer-fills = { $unit }: negras al { $limit } % como a las { $time }, quizá { $due }.
answer-fills-now = { $unit }: las negras quizá ya están al { $limit } %.
answer-fills-perhaps = { $unit }: negras al { $limit } % quizá desde las { $time }.
answer-fills-none = Ningún tanque va hacia su límite, y no hay vaciado pedido.
answer-send-someone = Yo no puedo mandar a nadie. Páselo: "dile a NOMBRE toma la 12 por mí".
answer-who-can-go = Yo no puedo mandar a nadie. Pregúntele a uno: "dile a NOMBRE si puede ir a la 12".
answer-did-today = Hoy { $who } reportó:
answer-did-nothing = Hoy no hay reportes de { $who }.
report-line = { $time } { $unit }: { $what }
answer-greeting = Aquí estoy. Mande lo que ve, con la unidad: 12 presión 50 tanque 1/2. "ayuda" dice más.
answer-what-are-you = Soy un bot, no una persona. Mándeme lo que lee en un remolque. Lo reviso, lo anoto y digo qué hacer. "ayuda" dice cómo.
answer-stop-texting = Mande "silencio 22:00-06:00": a esas horas llega solo lo que no puede esperar. "enterado" detiene una alarma. "dejo el equipo" lo termina del todo.
answer-my-job = { $site }, con { $units }. Abre { $time }.
answer-my-job-on = { $site }, con { $units }. Abierto desde { $time }.
answer-my-job-ask = Ningún trabajo lo nombra. Pregunte al despachador: "dile a { $who } a dónde voy".
answer-my-job-none = Ningún trabajo lo nombra. Pregunte a su despachador.
answer-tonight-freezes = Sí, aquí hiela:
answer-tonight-low = mínima { $value }
answer-tonight-air = { $value } leídos a las { $time }
answer-tonight-mild = No: con la mínima que se dijo no llega a congelar.
answer-tonight-unknown = No puedo decirlo. Nadie me dijo la mínima de esta noche, y ninguna unidad leyó aire helado.
answer-tonight-row = { $unit } en { $site }: { $read }.
answer-tonight-row-what = { $unit } en { $site }: { $read }, { $what }.
answer-tonight-more = Hay más unidades fuera de las que digo. Nombre una para su respuesta.
answer-tonight-tell = No todo sitio tiene la mínima de esta noche. Mande "mínima esta noche 12F", o pegue un TAF.
answer-tonight-ask = No todo sitio tiene la mínima de esta noche. Pídala al despachador.
answer-package-none = Sin paquete de frío: { $units }.
answer-package-none-out = De esas, fuera ahora o pronto: { $units }. Drénelas antes de que hiele.
answer-package-with = Con paquete de frío: { $units }.
several-left = No tengo respuesta a { $quote }. Pregúntelo aparte, o "dile a NOMBRE".
question-unknown = Para eso no tengo respuesta. Sé: "estado 12", "pronóstico 12", "quién tiene la 12", "qué está atrasado", "tareas", "por qué". Para preguntar a una persona: "dile a NOMBRE ...".
answer-no-word = No tengo lecturas de la { $unit }. Mande presión, tanque, voltios y temperatura.
answer-not-well = No. La { $unit } necesita algo ya.
answer-regulator-yes = Sí. La { $unit } recibe { $read }, límite { $limit }. Cierre la toma, ponga uno a { $value }, abra despacio.
answer-regulator-no = No a { $read }: la { $unit } aguanta hasta { $limit }. Lea otra vez de noche, y traiga uno en la camioneta.
answer-regulator-unread = Primero lea la presión, con las llaves cerradas. Más de { $limit }: sí, puesto a { $value }.
answer-no-regulator = Cierre la llave ya. { $unit } aguanta hasta { $limit }, y el lugar da { $read }. Ponga un regulador puesto a { $value } y abra despacio.
answer-no-regulator-unread = Cierre la llave ya. { $unit } aguanta hasta { $limit }, y no se sabe la presión de aquí. Ponga un regulador puesto a { $value } y abra despacio.
answer-back-in = No. Nadie vuelve a entrar a { $unit } todavía. Primero la libera bomberos, la compañía de gas o un electricista con licencia. Dígame quién la liberó.
hazard-told = { $signal } { $unit }: { $who } avisa de { $what } en { $site }. Llámele.
hazard-no-site = { $signal } { $unit }: { $who } avisa de { $what }. Llámele.
hazard-person = { $signal }: { $who } avisa de { $what }. Llámele.
on-a-road = En carretera: diga cuál, en qué sentido, y la salida o el kilómetro más cercano.
left-no-address = No hay dirección anotada: la { $unit } no está ahora en un sitio. Diga a emergencias el camino, el sentido y la salida o el kilómetro más cercano.
place-unknown = No hay dirección anotada: nadie dijo dónde está ahora la { $unit }. Diga dónde está: la calle, la entrada, qué hay cerca.
answer-back-on-task = { $unit }: no antes de que un electricista con licencia halle la falla y diga que es segura. Decide esa persona, no este bot. Luego mande "hecho { $id }".
answer-back-on-free = { $unit }: ahora no hay nada anotado en su contra. Apague primero todas las cargas. Encienda una sola vez y lea los volts. Si salta, da toques o huele: apague otra vez, y decide un electricista.
answer-site-empty = Nadie avisó de un remolque en { $site }, y ahora no toca ninguno ahí.
answer-danger-open = No. La { $unit } tiene abierto: { $what }. Todos fuera y lejos, y lo que la alimenta sigue apagado. Solo quien puede autorizarla lo termina.
danger-used = { $signal } { $unit }: sigue abierto: { $what }. Ciérrela ya. Todos fuera y lejos. Nadie la use.
danger-switched = { $signal } { $unit }: sigue abierto: { $what }. No se prende nada. Todos fuera y lejos. Corte la corriente en la fuente, si llega sin peligro.
danger-switched-gas = { $signal } { $unit }: sigue abierto: { $what }. No mueva ningún interruptor más, ni para prender ni para apagar: una chispa enciende el gas. Todos fuera, contra el viento. Llame a emergencias desde afuera.
danger-used-told = { $signal } { $unit }: { $who } escribió { $quote }, y ahí sigue abierto: { $what }. Llámele ya: todos fuera, y nada se prende ni se apaga.
danger-fault = { $signal } { $unit }: sigue abierto: { $what }. Todos siguen fuera y lejos. Ahí nada se restablece, se prende ni se repara.
danger-fault-gas = { $signal } { $unit }: sigue abierto: { $what }. Todos siguen fuera, contra el viento. No toque interruptor, clavija ni breaker: una chispa enciende el gas. Ahí nada se repara.
danger-fault-waits = En la { $unit } ahora no empieza ninguna revisión: { $what }. Mándelo otra vez cuando pase el peligro. Entonces empieza.
danger-packed = { $signal } { $unit }: sigue abierto: { $what }. Todos siguen fuera y lejos. Nadie la recoge ni la engancha. La lista de salida empieza cuando pase el peligro.
danger-packed-gas = { $signal } { $unit }: sigue abierto: { $what }. Todos siguen fuera, contra el viento. No toque interruptor, clavija ni breaker: una chispa enciende el gas. Nadie la recoge ni la engancha. La lista de salida empieza cuando pase el peligro.
danger-unread = No pude leer { $quote }. ¿Es otro peligro? Mande la unidad y qué es. El despachador ya sabe.
danger-unread-told = { $unit }: { $who } agrega { $quote } al peligro de ahí, y no lo pude leer. Llámele.
danger-confirmed = Queda como peligro de verdad. El despachador ya sabe.
danger-confirmed-told = { $unit }: { $who } dice otra vez que el peligro de ahí es real: { $quote }. Llámele.
danger-freeze-waits = Primero la gente. Luego, en la { $unit }: hiela y no hay corriente. Drene primero la manguera, luego las líneas, luego los tanques.
danger-sign-gone = { $unit }: que ya no se note no quiere decir que pasó el peligro. Sigue abierto ahí: { $what }. Todos se quedan fuera.
danger-all-well = { $unit }: qué bueno que la gente está bien. Sigue abierto ahí: { $what }.
help-over-stands = { $unit }: qué bueno que ya los atienden. Lo que les hizo daño puede seguir ahí. Nadie vuelva a entrar.
closes-shock = Primero la prueba un electricista con licencia y dice que es segura. Luego mande "{ $unit } el electricista la probó, segura".
closes-fire = Solo los bomberos lo terminan: un fuego puede volver. Luego mande "{ $unit } la liberaron los bomberos".
closes-burnt-smell = Primero la revisan los bomberos o un electricista con licencia. Luego mande "{ $unit } la liberaron los bomberos" o "{ $unit } el electricista la revisó, segura".
closes-gas-illness = Solo los bomberos o la compañía de gas lo terminan, ya ventilada. Luego mande "{ $unit } la liberaron los bomberos".
closes-co-alarm = Solo los bomberos o la compañía de gas lo terminan, ya ventilada. Luego mande "{ $unit } la liberaron los bomberos".
closes-gas-smell = Solo los bomberos o la compañía de gas lo terminan, ya ventilada. Luego mande "{ $unit } la liberaron los bomberos".
closes-generator-inside = Ya afuera, puertas abiertas, bien ventilada y nadie mareado: mande "{ $unit } ya está afuera y ventilada".
closes-person-hurt = Ya atendida: mande "{ $unit } herido atendido".
closes-person-cold = Ya en calor y atendida: mande "{ $unit } herido atendido".
closes-person-trapped = Ya fuera y bien: mande "{ $unit } ya lo sacamos".
closes-runaway = Cuando esté quieta: calce los dos lados. Luego mande "{ $unit } calzada".
electrician-came = { $unit }: ¿el electricista la probó y dice que es segura? Entonces mande "{ $unit } el electricista la probó, segura". Hasta entonces sigue apagada.
electrician-came-task = { $unit }: ¿el electricista encontró la falla y la arregló? Entonces mande "hecho { $id }". Hasta entonces sigue apagada.
burner-aired = { $unit }: que se quede afuera, a 20 ft (6 m) o más de puertas, ventanas y respiraderos. Dolor de cabeza, mareo o náusea: llame a emergencias.
burner-out = { $unit }: abra puertas y respiraderos, y ventile bien antes de que alguien entre. Dolor de cabeza, mareo o náusea: emergencias.
shock-stays = { $unit }: un toque que ya no se siente puede volver. El peligro sigue. Corriente cortada en la fuente hasta que la pruebe un electricista con licencia. ¿Quién la probó?
help-called = { $unit }: bien. Quédese con la persona hasta que llegue la ayuda. Diga dónde está, deje libre el paso. Ya atendida: mande "{ $unit } herido atendido".
help-unanswered = { $unit }: llame otra vez, y desde otro teléfono. Que la gente cerca también llame. Que el personal del sitio traiga sus primeros auxilios. El despachador ya sabe que debe llamar. Quédese ahí.
help-unanswered-told = { $signal } { $unit }: { $who } no logra comunicarse con emergencias. Llame usted ya. Luego llame a { $who }.
both-not-taken = { $quote } no se tomó: { $what } está anotado solo en la { $unit }. Si también es en la otra: mándelo otra vez con esa unidad.
help-coming = { $unit }: bien. Todos fuera y lejos, y deje libre el paso. Haga lo que digan.
help-over = { $unit }: queda como atendida. Anote qué pasó mientras lo recuerda. Despachador: "incidente { $unit }".
help-better = { $unit }: bien, pero sigue abierto. Quédese con la persona hasta que esté atendida. El despachador ya sabe. Luego mande "{ $unit } herido atendido".
help-better-told = { $unit }: { $who } dice de la persona herida: { $quote }. Sigue abierto hasta que la atiendan. Llámele a { $who }.
help-over-who = { $unit }: ¿a quién ya atendieron? Ahí hay más de un aviso de alguien herido, y sigue abierto. Si ya atendieron a todos: mande "{ $unit } herido atendido". Si alguien sigue herido: emergencias, y quédese con esa persona.
help-over-none = { $unit }: ahí no hay ningún aviso abierto de alguien herido.
help-over-told = { $unit }: { $who } dice que la persona herida ya está atendida.
hazard-over-told = { $unit }: { $who } dice que ya pasó: { $what }.
people-out = { $unit }: bien que ya salieron. Cuéntelos. Nadie vuelve a entrar.
one-cord-out = { $unit }: deje fuera ese cable. ¿Cuántos cables siguen vivos? Mande el número, así: "3 cables". Ninguno: "corriente cortada".
gas-stays = { $unit }: que ya no huela no quiere decir que sea seguro. El peligro sigue: todos afuera, no toque ningún interruptor. ¿Quién lo liberó? Solo bomberos o la compañía de gas.
answer-regulator-fitted = La { $unit } tiene uno desde { $time }. Debe dar { $value }. Si da más de { $limit } no aguanta: cámbielo.
answer-set-regulator = Ponga el regulador de la { $unit } a { $value }.
answer-heater-yes = Sí. Con { $value }: prenda el circuito { $circuit } de la { $unit }, calentador de tanque y compartimento. Lea sus amperes.
answer-heater-yes-plain = Sí. Con { $value }: prenda el calentador de tanque y compartimento de la { $unit }. Lea sus amperes.
answer-heater-no = Todavía no: { $value } en la { $unit }. Préndalo a 40 °F (4 °C) o menos.
answer-heater-is-on = { $unit }: ya lo reportaron prendido. Déjelo así y lea sus amperes. El botón no prueba nada.
answer-heater-unread = Prendido a 40 °F (4 °C) o menos. Nadie leyó el aire en la { $unit } hoy. Mándelo: { $unit } temp 20.
answer-heater-none = La { $unit } no tiene equipo de frío ni calentador de tanque. Planee drenarla antes de que hiele.
answer-heater-none-freezing = La { $unit } no tiene calentador de tanque, y con { $value } hiela. Calor en el compartimento. Drene manguera y partes mojadas.
answer-drain-unread = Nadie leyó el aire en la { $unit } hoy. Mándelo: { $unit } temp 20. Si hiela sin corriente ni calor: drénela.
answer-drain-no = No: { $value } está lejos de helar.
answer-drain-ready = Todavía no con { $value }. Esté listo: al helar, caliente la manguera, que corra, o drénela.
answer-drain-hose = La manguera, si nadie puede calentarla o tenerla corriendo a { $value }. Los tanques se quedan mientras caliente el calentador.
answer-drain-wet-ends = Sí: ya drene manguera y partes mojadas, a { $value }. También los tanques si hace más frío.
answer-drain-all = Sí, todo, a { $value }. Primero la manguera. Luego líneas de bomba y calentador. Luego los tanques.
answer-freeze-no = En la { $unit } no hiela, por la última lectura.
answer-freeze-unread = Nadie leyó el aire en la { $unit } hoy. Mande temperatura y viento: { $unit } temp 20 viento 10.
answer-hook-up = Primero corte la corriente en la fuente y baje todos los interruptores del remolque. Conecte en el remolque, luego en la fuente. Luego dé corriente, un interruptor a la vez.
answer-hook-up-then = No se anotó nada. Cuando haya corriente, mande cables y voltios: "2 cables, 119 V".
answer-patrol-none = Ninguna estancia larga espera visita: de todas hay noticia en las últimas 16 h.
answer-cords = La { $unit } necesita { $count ->
    [one] un cable
   *[other] { $count } cables
} con este clima, en este orden: { $names }. Primero el circuito { $circuit }: mantiene luces y bombas.
answer-cords-offered = El sitio da { $count ->
    [one] un cable
   *[other] { $count } cables
}. Cada cable a su propio contacto.
answer-tow-no = No. La { $unit } todavía no se debe mover.
answer-tow-not-yet = Todavía no. La { $unit } no está lista para salir.
answer-tow-left = Falta hacer o reportar: { $names }.
answer-tow-yes = Sí, por lo reportado de la { $unit }.
answer-open-yes = Sí, por lo reportado de la { $unit }. Antes baje cada taza, pruebe cada llave y cerrojo.
answer-open-no = Todavía no en la { $unit }. Primero:
answer-open-unread = No tengo lecturas de la { $unit }. Mande primero presión, tanque, voltios y temperatura.
answer-pump-out-now = Ya toca vaciar: cierre unas tazas y apure el camión.
answer-pump-out-yes = El tanque de negras de la { $unit } no aguanta este trabajo. Hay que vaciarlo.
answer-pump-out-perhaps = El tanque de negras de la { $unit } puede no aguantar este trabajo. Léalo otra vez y tenga un camión a la mano.
answer-pump-out-no = El tanque de negras de la { $unit } debe aguantar este trabajo. Por ahora no hay que vaciarlo.
answer-pump-out-unread = La { $unit } no está en un trabajo, no lo puedo decir. Más de la mitad: vacíela. Antes de remolcar: siempre.

### Lo que pide un aviso, en pocas palabras

do-water-over-pressure = Toma cerrada, regulador puesto.
do-water-under-pressure = Cierre las llaves y lea otra vez la presión.
do-water-pressure-falling = Limpie el filtro de entrada.
do-water-hose-undersized = Use manguera más ancha o corta.
do-water-fresh-endurance = Llene el tanque limpio.
do-water-backflow = Puntas de manguera fuera de baldes y tanques.
do-truck-called = Pida que llegue a tiempo.
do-truck-here = Mande los galones al terminar.
do-truck-missing = No ha llegado. Llame al del camión, o a otro.
do-waste-book-pump-out = Llame al camión.
do-waste-close-now = Cierre tazas, apure el camión.
do-waste-close-now-here = Tenga cerradas las tazas hasta que la vacíen.
do-waste-close-now-uncalled = Cierre tazas, llame al camión.
do-waste-spill = Cierre la unidad, tape las coladeras.
do-waste-dropped-unexplained = Busque abajo una válvula abierta o una fuga.
do-waste-gauge-doubtful = No confíe en el medidor: vea con una luz.
do-cold-freeze-soon = Caliente la manguera, que corra, o drénela.
do-cold-tank-heater-on = Calentador de tanque prendido, lea sus amperes.
do-cold-no-cold-package = Drene manguera y partes mojadas.
do-cold-winterize = Drénela e inviérnela.
do-cold-crew-cold = Turnos cortos afuera, de dos en dos.
do-heat-crew-heat = Sombra y agua, de dos en dos.
do-power-shock = Corte la corriente en la fuente.
do-power-low-voltage = Aire apagado, revise el cable.
do-power-high-voltage = Lea otra vez el voltaje, aparatos apagados.
do-power-over-current = Quite carga de ese circuito.
do-power-cord-drop = Use cable más grueso o corto.
do-power-cord-overloaded = Quite carga, toque la clavija sin corriente.
do-power-too-few-circuits = Primero corriente al circuito del convertidor.
do-power-shared-circuit = Una sola carga a la vez en ese circuito.
do-power-on-battery = Que vuelva la luz, o alimente el convertidor.
do-power-battery-low = Cargue la batería, ventiladores apagados.
do-power-generator = Un aire a la vez, el agua caliente al final.
do-crowd-under-served = Pida más tazas.
do-site-not-level = Nivélela.
do-site-not-chocked = Calce los dos lados.
do-site-set-up-next = Siga con la instalación.
do-site-wind = Toldos adentro, puertas sujetas.
do-site-unsafe = Primero haga eso seguro.
do-site-icy = Arena en los escalones, cierre esa puerta.
do-tow-waste-aboard = Vacíe negras antes de remolcar.
do-tow-fresh-aboard = Drene el agua limpia antes de remolcar.
do-tow-not-ready = Termine la lista de salida.
do-tow-overweight = Vacíe los dos tanques.
do-crew-late-check-in = Mande un reporte.

### Hints

hint = Mande { $hints }.
hint-why = "por qué"
hint-done = "hecho { $id }"
hint-pressure = la presión nueva

### Why

why-head = Por qué: { $name }.
why-head-unit = Por qué, { $unit }: { $name }.
why-fact = { $name }: { $value } ({ $origin })
why-book-late = se debió pedir hace { $value } ({ $origin })
why-formula = Cuenta: { $formula }
why-source = Fuente: { $source }
why-said = Usted lo reportó. No hay cuenta detrás.
why-more = Hay más consejos: { $names }. Pregunte "por qué" con una palabra de ahí.
why-nothing = No he dado consejo hace poco. No hay qué explicar.
origin-read = leído en sitio
origin-report = del reporte del tiempo
origin-spec = de los datos de la flota
origin-assumed = supuesto, nadie me lo dijo
origin-computed = calculado
origin-limit = el límite
source-practice = uso común
source-memory = de memoria
why-not-that = No di consejo de eso últimamente. Puedo decir por qué de: { $names }.
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
task-found = {" "}({ $what })
task-truck-by = camión en sitio antes de { $time }
task-by = antes de { $time }
task-call-by = llame antes de { $time }
task-call-now = llame ya
task-call-late = llame ya, va { $age } tarde
task-wanted-by = {" "}(pedido para { $time })
task-truck-too-late = Si llama ya, el camión llega hacia { $time }, tarde. Prepárese para cerrar baños.
task-truck-may-be-late = Si llama ya, el camión llega hacia { $time }. Puede ser tarde: prepárese para cerrar baños.
task-truck-to-tow = Si llama ya, el camión llega hacia { $time }. Hasta entonces se queda donde está.
task-truck-after-wish = Si llama ya, el camión llega hacia { $time }: después de lo pedido.
task-nobody-called = Nadie ha llamado aún.
task-nobody-has-it = Nadie la tiene aún.
task-has-it = { $who } la tiene.
task-is-done = Hecha.
task-is-here = El camión está ahí desde { $time }.
task-is-dropped = Quitada.
task-is-late = Va { $age } tarde.
task-truck-is-over = De eso hace { $age }.
task-due-by = Antes de { $time }.
task-was-due = Era para { $time }, hace { $age }.
task-truck-late = Camión tarde: tarea { $task } Llame al del camión.
task-late = Tarde: tarea { $task }
task-opened = Tarea nueva { $task }
task-moved = Hora nueva: tarea { $task }
task-stands = Tarea { $task }
task-reopened = Abierta de nuevo: tarea { $task }
task-taken = Tarea { $task }: { $who } la tiene.
task-done = Tarea { $task }: hecha.
task-dropped = Tarea { $task }: quitada, { $reason }.
task-taken-back = Tarea { $task }: retirada, ya no hace falta.
task-no-need = Tarea { $task }: ya no hace falta, pues volvió la corriente.
task-has-left = Tarea { $task }: quitada, pues el remolque se va.
task-called = Ya se llamó.
task-called-for = Ya se llamó, prometido para { $time }.
task-called-by = Ya se llamó, dice { $who }.
task-called-by-for = Ya se llamó, dice { $who }. Prometido para { $time }.
tail-called = Ya se llamó: tarea { $id }.
booked-too-late = El tanque puede llenarse a las { $due }, antes del camión de las { $promised }. Pida uno antes. Si no, cierre baños a tiempo.
booked-too-late-now = El tanque puede llenarse antes del camión de las { $promised }. Pida uno antes. Si no, cierre baños a tiempo.
wanted-too-late = Lo pide para { $time }. El tanque puede llenarse a las { $due }: la tarea queda con esa hora.
wanted-too-late-now = Lo pide para { $time }. El tanque ya puede estar lleno, así que la tarea sigue para { $due }.
booked-after-wanted = Se pidió para las { $due }, y el camión llega a las { $promised }.
booked-replaces = Antes estaba prometido para las { $was }: las { $time } toman su lugar. ¿Son dos camiones? Guarde el otro con "tarea para la { $unit }: segundo camión a las { $was }".
booked-replaces-told = { $who } dice que el camión para la { $unit } llega a las { $time }, y no a las { $was }.
truck-second = Ya hay un camión anotado para la { $unit }, para las { $time }. Se queda así. Si cambió de hora: "camión para la { $unit } tarde, 21:00". Si es otro: "tarea para la { $unit }: segundo camión a las 21:00".
truck-overtaken = Eso lo escribió a las { $time }. Del camión para la { $unit } se avisó de nuevo a las { $since }: eso queda.
truck-delay-counted = Contado desde las { $was }, la hora prometida: { $time }. ¿No es así? Mande la hora, como "no, 8:15".
truck-moved-over = El camión de la { $unit } va ahora a la { $to }. Para la { $unit } no hay nadie llamado.
truck-off = El camión para la { $unit } no viene. Llame a otro.
truck-unneeded = El camión para la { $unit } ya no está anotado. Hable a la empresa del camión: yo no llamo a nadie.
truck-here = El camión está en la { $unit }. Mande los galones al terminar: "{ $unit } vacié 380 gal".
truck-none = No hay camión anotado para la { $unit }. Nada cambió.
truck-none-booked = No hay camión anotado como llamado. Nada cambió.
truck-not-due = El camión para la { $unit } está prometido para las { $time }. Avíseme si para entonces no está.
truck-no-show = Anotado: todavía no hay camión en la { $unit }. Llame al camión, o a otro.
truck-no-show-late = Anotado: todavía no hay camión en la { $unit }. Lo prometieron para las { $time }, hace { $age }. Llame al camión, o a otro.
truck-no-show-told = { $who } dice que no ha llegado camión a la { $unit }. Llame al camión, o a otro.
truck-how = ¿Qué camión llega a qué hora? No anoté ninguno. Mande unidad y hora, un camión por línea: "camión para la 12 llega a las 19:00".
ask-was-pumped = ¿Vaciaron la { $unit } después de las { $since }? Mande "sí" con la hora, o "no".
pumped-taken = Tomado como vaciado hacia { $time }, a la mitad entre las dos lecturas.
pumped-in-part-left = No lo tomé por vacío. El vaciado de la { $unit } sigue pendiente.
hose-off-dry = { $unit }: se zafó la manguera de negras y no salió nada: no anoto derrame. Primero cierre la válvula. Póngase guantes. Conéctela otra vez, con su abrazadera bien apretada. Luego vea abajo. Mojado: mande "{ $unit } derrame".
back-after-frost-task = La tarea { $id } sigue: "hecho { $id }" cuando todo corra y nada gotee.
back-after-frost = { $unit }: volvió la luz, tras { $age } de frío sin ella. Puede haber tubos helados o rajados. Deje apagados la bomba y el calentador de agua. Abra una llave a la vez y vea abajo si gotea. No sale: descongele o drene. La tarea { $id } sigue: "hecho { $id }" cuando todo corra y nada gotee.
pumped-in-part = No lo tomé por vacío. ¿Cuánto queda en la { $unit }? Mándelo como "{ $unit } negras 1/2", o "{ $unit } negras vacías".
pumped-too-few = No lo tomé por vacío: la { $unit } tenía cerca de { $was } a las { $time }, y salieron { $value }. ¿Cuánto queda? Mándelo como "{ $unit } negras 1/2", o "{ $unit } negras vacías".
pumped-not = Entonces se fue por otro lado, o el medidor miente. Vea bajo la { $unit } si hay válvula abierta o fuga. Mire por un inodoro con una luz. Mande lo que vea.
truck-gone = ¿El camión vació la { $unit }? Mande los galones: "{ $unit } vacié 380 gal". Aún no se anota nada.
truck-call-yourself = Yo no llamo a nadie. Cuando alguien llame, mande "camión para la { $unit } llega a las 19:00".
truck-late-when = ¿Cuándo viene el camión para la { $unit }? Mande la hora, como 19:30.
truck-off-told = { $who } dice que el camión para la { $unit } no viene. Llame a otro.
truck-unneeded-told = { $who } dice que la { $unit } ya no ocupa camión. Ya no está anotado: avise a la empresa del camión.
truck-late-told = { $who } dice que el camión para la { $unit } llega a las { $time }. Puede ser tarde para el tanque.
tail-called-for = Ya se llamó, prometido para { $time }: tarea { $id }.
tail-here = El camión está ahí desde { $time }: tarea { $id }.
tail-nobody-called = Nadie ha llamado aún: tarea { $id }.
tail-taken = { $who } tiene la tarea { $id }.
tail-task = Tarea { $id }.
tasks-head = { $count ->
    [one] Una tarea abierta:
   *[other] { $count } tareas abiertas, primero la más próxima:
}
tasks-none = No hay tareas abiertas.
tasks-none-mine = No tiene tareas abiertas. "tareas" las muestra todas.
tasks-none-on = No hay tareas abiertas en la { $unit }.
tasks-who = No conozco a nadie que se llame { $quote }. "tareas" las dice todas, "tareas de" y un nombre las suyas.
tasks-none-of = { $who } no tiene tareas abiertas.
task-unknown = No hay tarea { $id }. No cambié nada. Mande "tareas" para ver la lista.
task-or-trailer = ¿La { $unit } ya está cerrada? Mande "{ $unit } cerrada". ¿Alguien debe cerrarla? Mande "dile a NOMBRE que cierre la { $unit }".
tasks-on-unit = Abiertas en la { $unit }: { $tasks }. Use el número de tarea, el primero.
task-already-closed = La tarea { $id } ya está cerrada. No cambié nada.

### Forecast

forecast-none = No hay qué prever.
forecast-of = { $unit }:
forecast-no-job = La { $unit } no está en ningún trabajo. No hay qué prever.
forecast-waste-now = Las aguas negras ya están al { $limit } o más.
forecast-waste-at = Aguas negras al { $limit } hacia { $likely } ({ $early } a { $late }).
forecast-waste-perhaps = Aguas negras al { $limit } hacia { $likely }, no antes de { $early }. Podrían no llegar al { $limit }.
forecast-waste-early = Las aguas negras podrían llegar al { $limit } desde { $early }. Bien puede que no lleguen al { $limit }.
forecast-waste-never = Las aguas negras no deben llegar al { $limit } en este trabajo.
forecast-fresh-now = El agua limpia ya está al { $limit } o menos.
forecast-fresh-at = Agua limpia al { $limit } hacia { $likely } ({ $early } a { $late }).
forecast-fresh-perhaps = Agua limpia al { $limit } hacia { $likely }, no antes de { $early }. Podría no bajar al { $limit }.
forecast-fresh-early = El agua limpia podría bajar al { $limit } desde { $early }. Bien puede que no baje tanto.
forecast-fresh-never = El agua limpia no debe bajar al { $limit } en este trabajo.
forecast-battery-at = Batería a media carga hacia { $likely } ({ $early } a { $late }), con { $amps }.
forecast-battery-about = Batería a media carga hacia { $likely }, con { $amps }.
forecast-battery-long = La batería dura más de 3 días con { $amps }.
forecast-stuck = El medidor no se ha movido como debía. No confíe en él.
forecast-waste-unread = Nadie ha leído las aguas negras. Por la gente pueden estar ya al { $limit } o más. Léalas.
forecast-fresh-unread = Nadie ha dicho el nivel de agua limpia. Por la gente puede estar ya al { $limit } o menos. Léalo.
forecast-unread = Eso es solo por la gente: nadie lo ha leído.
forecast-misread = La última lectura no va con lo demás. Léala otra vez.

### Status and history

status = { $unit }: { $stage }.
status-site = { $unit } en { $site }: { $stage }.
status-last-word = Último reporte hace { $age }, de { $who }.
status-no-word = Aún no hay reporte de ella.
status-read = { $time }: { $what }
status-faults = Mal ahora: { $faults }.
status-fault = { $fault } desde { $time }
status-hazard-ends = ¿Ya es seguro? Mande "{ $unit } ya es segura".
status-row = { $signal } { $name }. { $what }
status-row-signal = { $signal } { $unit }: { $name }. { $what }
more-left = "más" sigue con la { $unit }.
status-more = "más" dice todo de la { $unit }, "por qué" las razones.
history = { $unit }, últimos reportes:
history-line = { $time } { $who }: { $what }
history-none = Aún no hay reportes de la { $unit }.
stage-unknown = estado sin reportar
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
unreadable = No puedo leer { $kind ->
    [voice] un mensaje de voz
    [sticker] un sticker
    [video] un video
    [photo] una foto sin texto
   *[other] un mensaje así
}. No anoté nada. Escriba lo que ve.
heard-of = Anotado, noticias de { $units }. Nada nuevo que registrar.
unplaced = No anotado, no supe qué es: { $quote }. Diga la cosa, como "{ $unit } fuga" o "{ $unit } sin luz". Alguien en peligro: primero llame al número de emergencia, luego mande "necesito ayuda".
nothing-to-log = Leído. Nada que registrar.
nearest-none = No hallé reporte ni orden en { $quote }.
nearest-help = "ayuda" lista las órdenes.
answer-digest-past = No guardo el resumen de un día que ya pasó: "historial 12" cuenta lo de un remolque. Así está ahora.
nearest-hours = Los trabajos, sus horas y sus remolques están en el archivo jobs.toml de la flota, y ningún mensaje los cambia. Los pronósticos van por ese archivo. Para avisar al equipo: "dile a Sam" y sus palabras.
nearest-shift = No llevo turnos: quién trabaja está en los archivos de la flota. Una tarea se pasa con "asigna 4 a Sam". Lo demás: "dile a Sam" y sus palabras.
nearest-stop = "enterado" para una alarma, "silencio 22:00-06:00" guarda lo que puede esperar.
nearest-cancel = "deshacer" retira lo último suyo, "quita 41" y la razón una tarea. Un camión: "ya no viene el camión de la 12".
nearest-assign = Para dar una tarea: "asigna 4 a Sam". "tareas" da los números.
nearest-truck = Un camión que viene: "camión para la 12 llega a las 19:00". Uno que hace falta: "necesito camión para la 12 a las 19:00".
nearest-tell = Para pasar un recado: "dile a Sam" y sus palabras.
nearest-people = Para dejar entrar a alguien: "invita conductor Sam". Para dejarlo fuera: "bloquea a Sam".
nearest-export = Eso se hace en la máquina del bot: hosebib export. "resumen", "tareas" e "historial 12" listan aquí.
nearest-set = La hora de una tarea: "mueve 41 19:30". La mínima de hoy: "mínima esta noche 12F".
nearest-show = "resumen", "tareas", "trabajos", "equipo", "estado 12" e "historial 12" listan lo que sé.
stranger = Este chat es solo para personas invitadas.

### Incidents: opened, told and released by a dispatcher

incident-opened = Incidente { $id } de la { $unit } abierto. Lo que se dijo de la { $unit } de { $from } a { $to } se guarda hasta liberarlo.
incident-help-first = ¿Hay alguien herido ahora? Sí: primero llame al número de emergencia. Luego "incidente { $unit }" sigue.
incident-opened-by = { $who } abrió el incidente { $id } de la { $unit }. Lo que se dijo de la { $unit } de { $from } a { $to } se guarda.
incident-goes-on = Sigue el incidente { $id } de la { $unit }.
incident-ask = Incidente { $id }, { $row } de { $rows }: { $what }
incident-ask-what = ¿qué pasó? "salta" si no se sabe, "luego" para seguir después.
incident-ask-when = ¿cuándo fue? Una hora, o: ayer 18:40.
incident-ask-where = ¿en qué lugar? La puerta, el escalón, el baño.
incident-ask-who = ¿quiénes estaban? Nombres, si son del equipo o invitados.
incident-ask-injured = ¿hubo heridos, y cómo están? ¿Quién dio ayuda?
incident-ask-told = ¿a quién se avisó, y cuándo? Oficina, cliente, seguro, policía.
incident-ask-witnesses = ¿quién lo vio? Nombres y cómo hablarles.
incident-ask-photos = ¿hay fotos? ¿Quién las tiene?
incident-noted = Anotado: { $quote }.
incident-kept = Ahora se guarda lo que se dijo de { $from } a { $to }.
incident-added = Lo agregué al incidente { $id }. Para otro: "nuevo incidente { $unit }".
incident-not-known = Anotado que no se sabe.
incident-later = Los demás datos pueden esperar. Luego se sigue con "incidente { $unit }".
incident-stopped = Lo dejo aquí. { $count ->
    [one] Falta 1 dato
   *[other] Faltan { $count } datos
  } del incidente { $id }. "incidente { $unit }" sigue.
incident-complete = Incidente { $id } de la { $unit }: { $count ->
    [0] ya pregunté todo
    [one] falta 1 dato
   *[other] faltan { $count } datos
  }. Sus textos se guardan. "libera incidente { $id }" con el motivo los suelta.
incident-line = Incidente { $id } de la { $unit }, abierto { $time }: { $count ->
    [0] ya pregunté todo
    [one] falta 1 dato
   *[other] faltan { $count } datos
  }.
incident-none = No hay incidentes abiertos. No se retiene ningún texto.
incident-how = Ábralo así: incidente 14 qué pasó, con la hora. "incidentes" los muestra. "libera incidente 3" con el motivo cierra uno.
incident-export = Eso se hace en la máquina del bot: hosebib export incident { $id } --csv --data DIR. "incidentes" los lista aquí.
incident-export-which = Dígalo con su número: exporta incidente 3. "incidentes" los muestra.
incident-release-how = Dígalo con su número y el motivo: libera incidente 3 el seguro ya pagó. "incidentes" los muestra.
incident-release-why = El incidente { $id } sigue retenido. ¿Por qué se libera? Mande la razón en pocas palabras.
incident-release-sure = El incidente { $id } sigue retenido. ¿Se libera para siempre, por { $quote }? Sí o no.
incident-no-such = No hay un incidente { $id } abierto. "incidentes" los muestra.
incident-released = Incidente { $id } de la { $unit } liberado. Sus textos ya se borran como los demás. Si lo necesita, expórtelo antes.
incident-released-by = { $who } liberó el incidente { $id } de la { $unit }: { $quote }.

### Printed on a trailer's sticker

sticker = Personal: escanee para reportar sobre el remolque.

### The service itself

service-not-logged-yet = SIN ANOTAR todavía: falla el disco del bot. Lo anoto cuando lo arreglen. No hace falta mandarlo otra vez.
service-not-logged = SIN ANOTAR: falla el disco. Arréglelo y mande su mensaje otra vez.
service-danger-not-logged = { $words }
    (Sin anotar: falla el disco del bot.)
service-answered-below = Usted editó ese mensaje. La respuesta está abajo.
service-set-aside = No pude procesar este mensaje. Guardo sus palabras, pero no anoté nada. Dígalo de otra manera o llame al despachador.
service-unreachable = { $who } no recibe mensajes del chat. Llame por teléfono.
service-undelivered = Esto no le llegó a { $who } por el chat. Llame por teléfono:
    { $words }

### Orders and their answers

undone = Retirado, de las { $time }: { $what }. Ya no cuenta. Para ponerlo otra vez, mándelo de nuevo.
undone-note = Nota de la { $unit } retirada: { $quote }
undone-cleared = Las notas de la { $unit } valen otra vez.
undone-override = Retirado de la { $unit }: { $quote }. El consejo vale otra vez.
undone-weather = Se quita: una mínima de { $value } esta noche.
undone-air = Se quita: aire a { $value }.
undone-weather-told = Ya lo saben: { $names }.
weather-taken-back = { $who } se retracta de la mínima de { $value } que dijo antes.
air-taken-back = { $who } se retracta del aire a { $value } que dijo antes.
weather-holds = Vale la mínima de { $value }.
weather-holds-air = Para esta noche cuenta el aire a { $value }.
weather-holds-none = Ahora no hay mínima dicha para esta noche.
undone-step = Retirado de la { $unit }: { $what }. Cuenta como no hecho.
order-taken-back = { $unit }: { $who } retira la orden que avisó antes: { $quote }.
undone-correction = Su corrección queda retirada. Vuelve a contar lo que mandó antes.
undone-task = Retirado, lo que me pidió a las { $time }: { $what }.
ask-no-danger = ¿De veras fue un error en la { $unit }: { $what }? Sí o no. Si duda: no, y vale otra vez. Mientras, nadie se acerca.
ask-no-danger-person = ¿De veras fue un error: { $what }? Sí o no. Si duda: no, y vale otra vez. Mientras, nadie se acerca.
danger-back-taken = Retirado: { $what }. El despachador ya sabe.
danger-back-person = { $who } retira: { $what }, sin decir la unidad. Llame y asegúrese.
no-danger-person = Queda como error. A la menor duda: que nadie se acerque, y mándelo otra vez.
no-danger = { $unit }: queda como error. A la menor duda: que nadie se acerque, y mándelo otra vez.
danger-back = { $unit }: { $who } retira: { $what }. Llame y asegúrese antes de que alguien la use.
danger-back-moved = { $unit }: { $who } retira: { $what }. Es la { $to }.
danger-back-not-yours = El peligro en la { $unit } solo lo retira quien lo avisó. Sigue en pie. Nadie se acerca, y llámele.
undo-old = Su último mensaje es de las { $time }: { $what }. ¿Lo retiro? Sí o no.
undo-not-yours = Cada quien retira lo suyo. Llame a { $who }: que mande "deshacer".
undo-older = Ya retiró su último mensaje. Antes, a las { $time }: { $what }. ¿Retiro ese también? Sí o no.
undo-what-note = una nota de la { $unit }
undo-what-cleared = notas de la { $unit } borradas
undo-what-override = una decisión sobre la { $unit }
undo-what-step = un paso de la salida de la { $unit }
undo-what-watch = un aviso de la { $unit }
undo-what-low = una mínima de { $value }
undo-what-air = aire a { $value }
changed-value = Cambiado en la { $unit }: { $was }, ahora { $what }.
changed-unit = Cambiado: era para la { $unit }, no para la { $from }. Nada de eso queda en la { $from }.
changed-off = Retirado en la { $unit }: { $what }.
undo-nothing = No hay nada que quitar. Guardo sus reportes 24 h.
undo-for-good = "deshacer" no puede quitar su última orden. Nada cambió. Dé la orden contraria, o avise a quien le toca.
edit-taken = Su cambio toma el lugar de lo que mandó ({ $time }).
edit-undone = Su cambio quita lo que mandó ({ $time }). No anoté nada nuevo.
late-message = Su mensaje de { $time } llegó apenas. Queda anotado para esa hora.
late-message-own = Su mensaje de las { $time } llegó apenas. Quedó anotado a las horas que dio.
late-meanwhile = Ya hay reportes más nuevos. Este consejo va con el más nuevo.
late-since = Después en la { $unit }, { $time }, { $who }: { $what }.
watch-set = Le aviso cuando la { $unit } llegue a { $what }.
watch-set-below = Le aviso cuando la { $unit } baje a { $what }.
watch-past = La { $unit } ya está ahí: { $what } a las { $time }. Sin aviso puesto.
watch-how = No hay aviso puesto: no entendí qué vigilar. Mande unidad y valor: "avísame si la 12 llega a 3/4".
watch-left = Esto no se vigila: { $quote }. Mándelo aparte.
watch-none = No tiene avisos puestos. Mande por ejemplo: si la 12 llega a 3/4 avísame.
watch-hit = Pidió que le avise: { $unit } { $what }, según { $who }.
got-it = Enterado: { $what }. No sale de nuevo, salvo que empeore.
got-it-noted = Enterado: { $what }.
got-it-danger-stands = Bien. El peligro en la { $unit } sigue: haga lo dicho. Solo el despachador se da por enterado.
got-it-advice = Bien. Sigue hasta que se haga. Solo el "enterado" de un despachador para su alarma.
got-it-nothing = Nada espera un "enterado".
got-it-by = { $who } ya está enterado: { $what }.
got-it-task = tarea { $task }
got-it-alone = { $who } trabaja a solas y no contesta
got-it-alone-ask = ¿Alguien ya habló con { $who }? Entonces mande "{ $who } está bien": eso para el reloj. Si no, mande a alguien, llame a emergencias. Pregunto otra vez en 10 min.
never-mind-question = Pregunta quitada. No anoté nada de ella.
never-mind-left = Queda como está. Nada cambió.
never-mind-watch = Quité su aviso de la { $unit }.
never-mind-nothing = No hay ninguna pregunta abierta.
order-not-yet = Aún no puedo hacer eso. No cambié nada.
order-left = No hecho: { $quote }. Mándelo aparte.
order-which-task = ¿Qué tarea? Mande la palabra con el número de tarea. "tareas" da la lista.
drop-needs-reason = ¿Por qué la quita? Mande "quita { $id }" con el motivo.
move-is-past = Esa hora ya pasó hoy. Nada cambió. Mándela con el día, como en "mueve { $id } mañana 8am".
move-past-limit = Por el pronóstico el tanque puede llegar a su límite desde { $time }. Un camión a las { $due } llega tarde.
move-needs-time = ¿Para cuándo? Mande "mueve { $id } 19:30" con su propia hora.
log-of = { $who }, primero lo más nuevo:
log-line = { $time } { $unit }: { $what }
log-none = { $who } no tiene reportes de los últimos dos días.
log-who = No conozco a { $quote }. Mande un nombre de la lista del equipo.
assign-how = Mande "asigna", el número de tarea y un nombre: asigna 4 a Sam.
assign-who = No conozco a nadie que se llame { $quote }. La tarea queda como estaba.
errand-how = Diga qué hay que hacer. Una tarea: "tarea para la 12: llevar manguera a las 18:00". Para alguien: "recuerda a tobin a las 16:00 llevar sal".
assign-told = { $who } le da esta tarea: { $task } Mande "hecho { $id }" cuando quede. Si no puede, avise a { $who }.
assign-taken-back = { $who } se retractó. Esta tarea ya no es suya: { $task }
need-told = { $unit }: { $who } pide algo: { $quote }.
refuse-not-yours = No tiene la tarea { $id }. Nada cambió.
refuse-done = Avisé a { $who } que usted no puede hacerla.
refuse-told = { $who } no puede con la tarea { $task }: { $quote }. Ahora nadie la tiene.
drop-told = { $who } quitó la tarea { $task }: { $quote }.
tell-answered = { $who } contesta a { $quote }: { $words }
tell-sent = Se lo pasé a { $who }.
tell-already = Ya se reportó de la { $unit }: { $what }, { $time }.
tell-from = De { $who }: { $quote }
tell-asks = { $who } pregunta: { $quote }
tell-who = No conozco a { $quote }. No pasé nada. Mande "dile", el nombre y sus palabras.
tell-site-nobody = No sé de nadie en ese sitio ahora. Nada enviado. Mande "dile a", un nombre y sus palabras.
tell-only-you = Usted es el único despachador. Nada enviado.
tell-at-once = Salió enseguida. Con hora lo guardo hasta entonces: "recuérdale a tobin a las 18:00 llevar sal".
person-is-out = { $who } está fuera del equipo. No cambié nada. "invita conductor { $who }" le deja entrar otra vez.
tell-who-near = ¿Quiso decir { $names }?
tell-all-what = Mande "dile a todos" y sus palabras.
tell-all-nobody = No hay nadie más en el equipo hoy. Nada pasado.
tell-all-off = No son del equipo de hoy y no se les avisó: { $who }. Avíseles por nombre.
tell-except = No se lo pasé a nadie: no sé dejar fuera a alguien. Nombre para quién es, como "dile a juno y lupe" y sus palabras.
tell-all-instead = Avíseles uno por uno: "dile a NOMBRE" y sus palabras.
override-told = { $unit }: { $who } la deja ir así: { $quote }. Los cuidados siguen. A paso de hombre, en plano, sin vía pública. Mande "salí con la { $unit }" al irse.
override-logged = Permiso para la { $unit } anotado a su nombre. Motivo: { $quote }.
relearn-done = Olvidé lo que { $count ->
        [one] un vaciado
       *[other] { $count } vaciados
    } me enseñó de la { $unit }. Valen los datos de la flota hasta que aprenda de nuevo.
relearn-nothing = Todavía no aprendí nada de la { $unit }. Valen los datos de la flota.
relearn-how = Mande "reaprende" y la unidad: reaprende 12. Olvida lo que enseñaron los vaciados.
override-needs-reason = Mande "autoriza", la unidad y el motivo.
taught = Desde hoy leo { $word } como { $meaning }, para todos. Para quitarla, mande "olvida palabra" y la palabra.
teach-how = Para sumar una palabra, mande "aprende", la palabra, "=" y una que conozco: aprende barrilote = negras.
teach-taught-already = Ya leo { $word } como { $meaning }. No hay nada que aprender.
teach-taught-else = No la aprendí. { $word } ya quiere decir { $meaning }. Primero mande "olvida palabra" y la palabra.
teach-no-word = No la aprendí. Una palabra nueva lleva solo letras: { $count } palabras y { $value } letras como mucho.
teach-unknown = No la aprendí. No conozco { $meaning }. Pruebe una de estas: { $names }.
teach-no-use = No la aprendí. { $meaning } no puede tener otra palabra. Use una cosa, un estado o una falla, como "negras".
teach-number = No la aprendí. { $word } es un número. Use una palabra sin números.
teach-ordinary = No la aprendí. { $word } es una palabra de todos los días. Otros mensajes se leerían mal. Use una que solo digan ustedes.
teach-known = No la aprendí. Ya leo { $word } como otra cosa. Use otra palabra.
teach-slip = No la aprendí. { $word } parece { $meaning } mal escrito. Use una palabra menos parecida.
teach-name = No la aprendí. { $word } es el nombre de { $kind ->
    [trailer] una unidad
    [site] un sitio
   *[person] una persona
}. Use otra palabra.
words-none = Todavía no hay palabras propias.
words-head = { $count ->
    [one] 1 palabra propia:
   *[other] { $count } palabras propias:
}
words-line = { $word } = { $meaning }
forget-word-how = Mande "olvida palabra" y la palabra: olvida palabra barrilote. "palabras" las muestra.
word-forgotten = { $word } ya no quiere decir { $meaning }.
word-not-taught = Nadie me enseñó { $quote }. "palabras" muestra las que aprendí.
word-of-files = { $quote } está en words.toml de la flota. Hay que quitarla de ahí.
note-taken = Nota de la { $unit } guardada: { $quote }. Sale en cada llegada hasta que la quite.
sum-result = { $name }: { $value }. Fuente: { $source }
sum-how = Por ejemplo: cuenta caída 16 amperes 150 pies calibre 14.
sum-unknown = No conozco esa cuenta. Sé hacer estas: { $names }.
sum-never = nunca
sum-assumed = Se tomó, pues no lo dio: { $what }.
sum-unused = No se usó en esta cuenta: { $what }.
sum-missing = Para esa cuenta falta: { $what }.
sum-out-of-range = Esos números no pueden ser. No se calculó nada.
sum-list = Esa cuenta lleva una lista, que no cabe en un mensaje. "hosebib sum" la recibe.
sum-yes = sí
sum-no = no
sum-cord-end = queda en el remolque
sum-longest-cord = cable más largo con 3 % de caída
sum-ampacity = capacidad del cable
sum-continuous = lo más por horas en ese breaker
sum-converter = el convertidor toma
sum-residual = presión en el remolque
sum-climb = presión que quita la subida
sum-demand = caudal que pide la hora pico
sum-charge = carga de la batería en reposo
sum-reheat = agua caliente en
sum-glycol = anticongelante rosa mezclado se hiela a
sum-salt = sal para esa salmuera
sum-brine = la salmuera se hiela a
sum-fresh = el agua limpia dura
sum-busy = tazas ocupadas
sum-burst = la fila acaba en
sum-seats = tazas para esos trabajadores
sum-urinals = mingitorios además
sum-uses = usos por hora
sum-paper = rollos de papel
sum-tongue = peso en la lanza, de menos a más
sum-overweight = pasa del límite de peso por
sum-tire = presión de la llanta entonces
sum-downhill = fuerza que la hace rodar
sum-block = alto del bloque
sum-ramp = largo de la rampa
sum-pad = placa del gato, pulgadas cuadradas
sum-leak = fuga
sum-body = corriente por el cuerpo
sum-need-sinks = lavabos
sum-need-people = personas
sum-need-volts = voltios
sum-need-rise = subida en pies
sum-need-watts = vatios
sum-need-pounds = peso en libras
sum-need-seconds = segundos
sum-need-hours = horas
sum-drop = caída de voltaje
sum-drop-pct = de los voltios de la toma
sum-drop-fine = Bien: hasta { $limit } está bien.
sum-drop-long-use = Muy larga para horas de carga: más de { $limit }. Un cable calibre { $count } pierde { $value }.
sum-drop-long-shorter = Muy larga para horas de carga: más de { $limit }. Use un cable más corto o menos carga.
sum-drop-too-much-use = Demasiado: más de { $limit }. Use calibre { $count }: pierde { $value }. O un cable más corto.
sum-drop-too-much-shorter = Demasiado: más de { $limit }. Use un cable más corto o menos carga.
sum-drop-over-rating = Y { $read } pasa de lo que aguanta ese cable, { $limit }. No lo use así.
sum-freeze = manguera quieta a punto de hielo en
sum-blocked = manguera quieta tapada por hielo en
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
unreachable = No se puede hallar a { $who } por el chat. Llame por teléfono.

### Letting people in

role-driver = conductor
role-tech = técnico
role-dispatcher = despachador
invite-made = Invitación para { $who } ({ $role }). Pásele el mensaje que sigue. Deja entrar a una persona, una vez, hasta { $time }.
invite-link = { $who }, con esto entra al chat del equipo de { $company }. Ábralo en su teléfono y toque Iniciar: { $link }
invite-code = { $who }, con esto entra al chat del equipo de { $company }. Mande esta línea al bot: /start { $code }
invite-how = Dígalo así: invita técnico Sam es. El papel es conductor, técnico o despachador; el idioma es en o es.
invite-not-here = Aquí no se puede invitar. Nada cambió.
invite-not-yours = Esta invitación es para { $who } y no se gastó. Pásesela.
invite-spent = Esta invitación ya no sirve. Usted ya está en el equipo y no la necesita.
invite-withdrawn = La invitación para { $who } ya no sirve.
joined =
    Hola { $who }. Ya está en el equipo de { $company }. Su papel: { $role }.
    Mande la unidad y lo que ve: 12 presión 50 tanque 1/2.
    "ayuda" muestra lo que puede mandar. "idioma en" es para inglés.
joined-told = { $who } entró ({ $role }).
role-set = El papel de { $who } es { $role } desde ahora.
role-same = El papel de { $who } ya es { $role }. Nada cambió.
role-yours = Su papel es { $role } desde ahora. "ayuda" muestra lo que puede hacer.
role-how = Dígalo así: rol Sam técnico. El papel es conductor, técnico o despachador.
shut-out = { $who } queda fuera desde ahora. Sus mensajes y botones ya no cuentan, y no se le manda nada más. Para que vuelva, invítelo otra vez.
shut-out-told = { $by } dejó fuera a { $who }. No se le manda nada más.
shut-out-already = { $who } ya está fuera. Nada cambió.
shut-out-how = ¿A quién? Dígalo así: bloquea a Sam. Vale al momento.
last-dispatcher = Nada cambió. Usted es el último despachador que puede escribirme, y alguien tiene que serlo. Invite antes a otro: invita despachador Sam es.
people-unknown = Nadie del equipo se llama { $quote }. Nada cambió. "equipo" muestra a todos.
people-which = Varias personas se llaman así. Nada cambió. Diga cuál: { $ids }.
people-list = { $count ->
    [one] Hay 1 persona en el equipo:
   *[other] Hay { $count } personas en el equipo:
}
people-row-heard = { $who } ({ $id }), { $role }{ $language ->
    [en] , en
    [es] , es
   *[other] {""}
}: escribió hace { $age }
people-row = { $who } ({ $id }), { $role }{ $language ->
    [en] , en
    [es] , es
   *[other] {""}
}: aún no escribió
people-row-no-phone = { $who } ({ $id }), { $role }{ $language ->
    [en] , en
    [es] , es
   *[other] {""}
}: aún no entró
people-row-unreachable = { $row }. No le llegan mensajes desde { $since }. ¿Bloqueó el bot?
people-row-invited = { $who }, { $role }: con invitación, hasta { $time }
people-row-out = { $who }: fuera del equipo
left-crew = Usted dejó el equipo. No le mando nada más. Un despachador lo puede invitar otra vez.
left-crew-told = { $who } dejó el equipo por su cuenta. No se le manda nada más.
language-set = Desde ahora le contesto en español.
language-how = Escribo inglés y español. Mande "idioma en" o "idioma es".
quiet-set = Anotado: lo que puede esperar no se le manda de { $from } a { $to }. Los peligros llegan siempre. "silencio no" lo quita.
quiet-how = No leí ahí dos horas. Mande por ejemplo "silencio 22:00-06:00". "silencio no" lo quita.
quiet-off = Usted ya no tiene horas de silencio.
refused = Rechazado desde { $time }: { $rows }. Nada de eso tuvo efecto.
refused-row = { $what ->
    [message] { $count ->
        [one] 1 mensaje
       *[other] { $count } mensajes
    } de { $senders ->
        [one] 1 desconocido
       *[other] { $senders } desconocidos
    }
    [forged-invite] { $count ->
        [one] 1 invitación que nadie dio
       *[other] { $count } invitaciones que nadie dio
    }
    [used-invite] { $count ->
        [one] 1 invitación usada
       *[other] { $count } invitaciones usadas
    }
    [expired-invite] { $count ->
        [one] 1 invitación vencida
       *[other] { $count } invitaciones vencidas
    }
    [withdrawn-invite] { $count ->
        [one] 1 invitación retirada
       *[other] { $count } invitaciones retiradas
    }
    [press] { $count ->
        [one] 1 botón tocado
       *[other] { $count } botones tocados
    }
   *[order] { $count ->
        [one] 1 orden
       *[other] { $count } órdenes
    }
}
refused-row-crew = { $row } de { $who } sin permiso

### Buttons: what stands on them, and what a press says

choice-done = Hecho { $id }
choice-done-says = hecho { $id }
choice-take = Tomo { $id }
choice-take-says = tomo { $id }
choice-why = ¿Por qué?
choice-why-says = por qué
choice-got-it = Enterado
choice-got-it-says = enterado
choice-ok = OK
choice-ok-says = ok
choice-help = Ayuda
choice-help-says = ayuda
choice-not-right = No es así
choice-not-right-says = deshacer
choice-yes = Sí
choice-yes-says = sí
choice-no = No
choice-no-says = no
choice-all = Todas
choice-all-says = todas
choice-skip = Omitir
choice-skip-says = omite
choice-ready = Listo
choice-ready-says = sí
choice-shut = Cerradas
choice-shut-says = llaves cerradas
choice-running = Abiertas
choice-running-says = llaves abiertas
choice-before = Antes
choice-before-says = antes del regulador
choice-after = Después
choice-after-says = después del regulador
choice-first-says = la primera
choice-second-says = la segunda
choice-third-says = la tercera

### Shown for a moment to whoever pressed a button that does nothing

press-over = Esa pregunta ya pasó. Escríbalo, si todavía vale.
press-spent = Ya lo tocó. Cuenta una vez.
press-expired = Este botón es muy viejo. Escríbalo mejor.
press-not-yours = Este botón es para otra persona. Escríbalo mejor.
press-unknown = Este botón no hace nada. Escríbalo mejor.

### The menu of commands: a word of a-z and _, and what it is for

menu-status = estado
menu-status-about = Cómo está un remolque
menu-tasks = tareas
menu-tasks-about = Qué hay por hacer
menu-why = por_que
menu-why-about = La cuenta y la fuente del último consejo
menu-undo = deshacer
menu-undo-about = Quitar mi último reporte
menu-got-it = enterado
menu-got-it-about = Parar un aviso para todos
menu-forecast = pronostico
menu-forecast-about = Cuándo se llena un tanque o se baja una batería
menu-digest = resumen
menu-digest-about = Todos los remolques de una vez (despachador)
menu-help = ayuda
menu-help-about = Qué puedo mandar

### A place that was shared

place-there = Usted está en { $site }.
place-not-by-plan = El plan tiene la { $unit } en { $from }, no en { $site }. Si usted no dice que no, la ayuda va a { $site }.
answer-none-at = Ahora nada está en { $site }, según el plan y lo dicho.
answer-none-open = Según lo reportado, ninguna unidad está abierta.
answer-none-closed = Según lo reportado, ninguna unidad está cerrada.
answer-plan-elsewhere = Aquí no cambio el plan. Lo guardan los archivos de la empresa. Para avisar al equipo: "dile a NOMBRE" y sus palabras.
place-not-by-plan-told = { $who } dice que la { $unit } está en { $site }. El plan la tiene en { $from }.
left-early-told = { $who } se fue de { $site } con la { $unit }. El trabajo ahí dura hasta { $time }.
place-none-due = Ya no se espera ahí ningún remolque de hoy.
place-far = { $site } queda a unos { $value } en línea recta, más o menos { $age } con remolque.
place-nowhere = No conozco el lugar de ningún trabajo de ahora. Dígalo con palabras: "llegó la 12".
place-late = Ese lugar es de hace rato, así que no lo usé. Dígalo con palabras: "llegó la 12".
ask-arrived = ¿Llegó la { $unit }? Sí o no.
ask-arrived-which = ¿Cuál llegó: { $units }? Mande la unidad, o "todas".

### Pictures

photo-noted = Foto anotada con la { $unit }.
photo-noted-nowhere = Foto anotada.
photo-of = Las fotos quedan con la { $unit }.
ask-photo-of = ¿De qué unidad es?
ask-photo-of-which = ¿De qué unidad es: { $units }?
photo-lost-too-large = Una foto que mandó no se guardó: pasa de 10 MB. Mándela más chica, como foto y no como archivo.
photo-lost-no-picture = Una foto que mandó no se guardó: no es una imagen JPEG, PNG, WebP o HEIC. Mándela como foto.
photo-lost-gone = Una foto que mandó no se guardó: la red ya no la entrega. Mándela otra vez.

### Alarms to a dispatcher

alarm-danger = { $signal } { $unit }: { $who } reporta { $what } en { $site }. Llame por teléfono ya.
alarm-danger-no-site = { $signal } { $unit }: { $who } reporta { $what }. Llame por teléfono ya.
alarm-danger-another = { $signal } { $unit }: { $who } reporta otra vez { $what }, quizás otra persona. Llame por teléfono ya.
alarm-person = { $signal }: { $who } reporta { $what }. Llame por teléfono ya.
alarm-where = No se sabe dónde está: pregúntele.
alarm-told-by = { $who } reporta:
alarm-no-power-frost = { $unit }: sin corriente a { $value }, dice { $who }, y hay agua a bordo. Los calentadores se apagaron: se congela. Corriente pronto, o drénela. ¿Alguien la atiende?
alarm-no-power-frost-site = { $unit } en { $site }: sin corriente a { $value }, dice { $who }, y hay agua a bordo. Los calentadores se apagaron: se congela. Corriente pronto, o drénela. ¿Alguien la atiende?
alarm-read-by = { $who } acaba de escribir:
alarm-no-heat = { $unit }: sin calor a { $value }, dice { $who }, y lleva agua. Caliéntela pronto, o drénela. ¿Hay alguien en eso?
alarm-no-heat-site = { $unit } en { $site }: sin calor a { $value }, dice { $who }, y lleva agua. Caliéntela pronto, o drénela. ¿Hay alguien en eso?
alarm-guessed = No dijo la unidad: confirme cuál.
alarm-site = Dice que es en { $site }.
alarm-site-differs = También dijo { $site }: confirme dónde.
alarm-answer = Conteste "enterado" para parar este aviso para todos.
alarm-driving = { $who } va en camino. Llame por teléfono, no escriba.

### Cargas, como las nombran las flotas

part-ac = aire
part-heat = calefacción
part-water-heater = calentador de agua
part-converter = convertidor
part-bay-heater = calentador del compartimento
part-tank-heater = calentador del tanque
part-of-room = { $what } del cuarto { $name }
fact-feed-count = cuántos circuitos

### Help

help-driver =
    Alguien herido o en peligro: primero llame al número de emergencia, luego mande "necesito ayuda".
    Mande la unidad y lo que ve, con sus palabras:
      12 presión 50 tanque 1/2 temp 20
      14 llegué, calzada. 9 sin agua caliente
      12 vacié 380 gal
    Pregunte: "estado 12", "pronóstico 12", "historial 12", "tareas", "por qué".
    "hecho 41" cierra la tarea 41, "tomo 41" la hace suya.
    "perdón, 52" o "*3/4" corrige su último reporte. "deshacer" quita un reporte, nota, aviso u orden.
    "si la 12 llega a 3/4 avísame" pone un aviso, "mis avisos" los muestra.
    En una revisión: "atrás", "repite", "omite", "deja la revisión". Luego "en qué íbamos" la sigue, "yo sigo con la 12" toma la de otro.
    "apunta 12 golpee el medidor" sale en cada llegada de la 12.
    "idioma en" cambia su idioma, "silencio 22:00-06:00" pone sus horas de silencio. "log" muestra sus reportes.
    "dejo el equipo" lo saca para siempre.
    Yo aconsejo. Deciden el código local y quien tiene licencia.
help-tech =
    { help-driver }
    Como técnico: "quita 41" con un motivo, "mueve 41 19:30". "tarea para la 12: llevar manguera a las 18:00" abre una tarea. "recuérdale a Sam a las 16:00 llevar sal" se la da a Sam.
help-dispatcher =
    { help-tech }
    Como despachador: "resumen", "log" con un nombre, "autoriza 12" con un motivo. "asigna 41 a Sam" le da una tarea a Sam. "reaprende 12" olvida lo aprendido de los vaciados. "aprende" suma una palabra propia, "palabras" las muestra. "enterado" para un aviso para todos.
    "invita técnico Sam es" deja entrar a Sam. "rol Sam conductor" cambia lo que puede hacer. "equipo" muestra a todos.
    Un teléfono perdido: "bloquea a Sam". Vale al momento.
    "incidente 14" con lo que pasó guarda lo que se dijo de la 14, y pregunta los datos.

### The demo

demo-greeting =
    Esta es una prueba con una empresa inventada. Allá son las { $time } y usted es { $name }.
    Pruebe: unidad 12 presion 95 tanque 3/4 temp -5
    "ayuda" dice más, y ctrl-D termina.
demo-data = Sus datos están en { $folder }.
console-greeting = Usted es { $name }. Son las { $time }. "ayuda" muestra qué mandar, y ctrl-D termina.

### Short names of findings, for lists

name-water-over-pressure = presión de agua muy alta
name-water-under-pressure = presión de agua baja
name-water-pressure-falling = presión de agua bajando
name-water-hose-undersized = manguera muy chica
name-water-fresh-endurance = se acaba el agua limpia
name-water-backflow = riesgo de retroceso
name-waste-book-pump-out = pedir vaciado
truck-named-promised = camión prometido para { $time }
truck-named-here = camión ya está ahí
air-taken = (Aire tomado de la { $from }.)
truck-named-called = camión llamado, sin hora
name-waste-close-now = aguas negras llenas
name-waste-spill = derrame de aguas negras
name-waste-dropped-unexplained = nivel de negras bajó sin razón
name-waste-gauge-doubtful = medidor dudoso
name-cold-freeze-soon = helada
name-cold-tank-heater-on = calentador del tanque
name-cold-no-cold-package = sin equipo de frío
name-cold-winterize = drenar para el invierno
name-cold-crew-cold = frío para el equipo
name-cold-crew-cold-warning = alguien afectado por el frío
name-heat-crew-heat = calor para el equipo
name-power-shock = toque eléctrico
name-power-low-voltage = voltaje bajo
name-power-high-voltage = voltaje alto
name-power-high-voltage-danger = posible neutro abierto
name-power-over-current = amperes de más
name-power-cord-drop = voltaje perdido en el cable
name-power-cord-overloaded = cable sobrecargado
name-power-too-few-circuits = faltan circuitos
name-power-shared-circuit = circuito compartido
name-power-on-battery = anda con batería
name-power-battery-low = batería baja
name-power-generator = generador muy chico
name-power-generator-danger = generador o calentador de gas adentro
name-crowd-under-served = faltan baños
name-site-not-level = desnivelada
name-site-not-chocked = sin calzas
name-site-set-up-next = sigue el montaje
name-site-wind = viento
name-site-unsafe = algo peligroso
name-site-unsafe-no-chocks = sin calzas
name-site-unsafe-dumped = negras tiradas al suelo o a un drenaje
name-site-unsafe-battery-gassing = una batería que echa gas o se hincha
name-site-unsafe-battery-frozen = una batería congelada
name-site-unsafe-backfeed = corriente metida al revés, con clavija viva
name-site-unsafe-refuel-running = combustible echado con el generador prendido
name-site-unsafe-bypassed = un GFCI o la tierra puenteados
name-site-unsafe-power-strip = un remolque o calentador en una regleta
name-site-unsafe-breaker-held = un breaker trabado
name-site-unsafe-generator-near = un generador demasiado cerca
name-site-unsafe-fuel-heater = un calefactor de combustible adentro
name-site-unsafe-cord-in-water = un cable o clavija en el agua
name-site-unsafe-people-inside = gente todavía adentro
name-site-unsafe-water-on-fire = agua sobre un fuego
name-site-unsafe-rolled = un remolque que se rodó
name-site-unsafe-bites = metal que da toques
name-site-unsafe-road-loose = un remolque suelto en la carretera
name-site-unsafe-came-off = un remolque que se soltó del enganche
name-site-unsafe-exhaust-in = humo de motor que se mete
name-site-unsafe-generator-at-door = un generador en la puerta
name-site-unsafe-generator-behind = un generador muy cerca
name-site-unsafe-engine-at-door = un motor prendido en la puerta
name-site-unsafe-burnt-smell = olor a quemado
name-site-unsafe-burnt-smell-plug = olor a quemado en una clavija
name-site-unsafe-co-alarm = alarma de CO o humo de escape
name-site-unsafe-frostbite = piel o cuerpo dañado por el frío
name-site-unsafe-trapped = alguien encerrado que no contesta
name-site-unsafe-needle = una aguja en el piso o el lavabo
name-site-unsafe-needle-how = una aguja en el piso o el lavabo
name-site-unsafe-needle-stick = alguien picado con una aguja
name-site-unsafe-burnt-by-plug = alguien quemado con una clavija
name-site-unsafe-plug-hot = una clavija caliente o quemada
name-site-unsafe-spill-drain = aguas negras en un drenaje o arroyo
name-site-unsafe-smoking = alguien fumando junto a un respiradero o gas
name-site-unsafe-tank-entry = alguien que se mete a un tanque
name-site-unsafe-under-jack = alguien abajo de un remolque en un gato
name-site-unsafe-fuse-wrong = un fusible equivocado o papel en su lugar
name-site-unsafe-thaw-heat = flama o pistola de calor en tubos congelados
name-site-unsafe-relief-valve = una válvula de alivio que escupe
name-site-unsafe-space-heater = un calefactor en una extensión
name-site-unsafe-power-line = una línea de luz tocada o caída
name-site-unsafe-power-line-hurt = alguien herido por una línea de luz
name-site-unsafe-swaying = un remolque que colea en el camino
name-site-unsafe-open-neutral = un neutro que puede estar abierto
name-site-unsafe-wreck = un choque, o un remolque en la cuneta
name-site-unsafe-sliding = un remolque que se resbala
name-site-unsafe-wind-tips = viento que puede voltear un remolque
name-site-unsafe-shared-outlet = dos cables en un contacto
name-site-unsafe-towed-attached = un remolque que rueda con algo afuera o conectado
name-site-unsafe-blowout = una llanta que tronó en la carretera
name-site-unsafe-drowsy = un chofer que se duerme
name-site-unsafe-drank = un chofer que tomó
name-site-unsafe-truck-brakes = una troca que no frena bien
name-site-unsafe-stolen = algo robado
name-site-unsafe-heat-stroke = alguien con golpe de calor
name-site-unsafe-heat-stroke-at = alguien con golpe de calor
site-unsafe-drank = No maneje ni remolque, ni para cruzar el lote. Dé las llaves a alguien que no tomó. Si ya va en el camino: oríllese donde sea seguro y cálcelo. Nadie se enoja por un remolque tarde: avise ya al despachador, que maneje otro.
site-unsafe-truck-brakes = No la maneje ni remolque con ella. En el camino: suelte el acelerador, velocidad baja, intermitentes. Oríllese donde sea seguro. Luego calce troca y remolque, y llame al despachador. Un taller ve los frenos antes de que ruede otra vez.
site-unsafe-stolen = No los siga, y no toque lo que tocaron. Si alguien sigue ahí: aléjese y llame a emergencias. Si no: repórtelo a la policía: qué, cuándo, placa o número. Cable cortado o tubo abierto: corte luz y agua en la fuente.
site-unsafe-heat-stroke = Llame ya al número de emergencia. A la sombra o al aire, ropa fuera o floja. Enfríe de inmediato: agua fría por todo el cuerpo y aire, o hielo en cuello, axilas e ingles. Siga hasta que llegue ayuda. Confundido o sin despertar: nada de beber.
site-unsafe-heat-stroke-at = Llame ya al número de emergencia. Diga que está en { $address }. A la sombra o al aire, ropa fuera o floja. Enfríe de inmediato: agua fría por todo el cuerpo y aire, o hielo en cuello, axilas e ingles. Siga hasta que llegue ayuda. Confundido o sin despertar: nada de beber.
name-site-unsafe-hose-whips = una manguera con presión que se soltó
name-site-unsafe-waste-cap-off = una tapa de negras que se soltó
name-site-unsafe-bowl-over = una taza o mingitorio que se desborda
name-site-unsafe-drain-cleaner-in = destapacaños en un tapón
name-site-unsafe-cord-taped = un cable dañado, con cinta y en uso
name-site-unsafe-fuel-heater-meant = un calentador de gas que quieren meter
name-site-unsafe-on-the-roof = alguien en el techo
name-site-unsafe-battery-jumped = una batería a la que le pasan corriente
name-site-unsafe-held = alguien pegado a la corriente
name-site-unsafe-mixed-cleaners = limpiadores mezclados que hacen gas
name-site-unsafe-tips = un remolque que se puede voltear
name-site-unsafe-tank-gas-strong = un olor fuerte a gas de tanque
name-site-unsafe-tank-gas = un olor a gas de tanque
name-site-unsafe-hitch-pin = pasador o bola del enganche que falta o no queda
name-site-unsafe-tire-low = una llanta que se ve baja
name-site-unsafe-gas-collapse = alguien tirado junto a un tanque que suelta gas
name-site-unsafe-chain-broken = una cadena de seguridad rota o que falta
name-site-unsafe-tow-lights-out = luces de remolque que no prenden
name-site-unsafe-sewage-up = aguas negras que se salen
name-site-unsafe-hurt = alguien lastimado
name-site-unsafe-ill = alguien mareado
name-site-unsafe-not-ok = alguien que no está bien
name-site-unsafe-pushed = un remolque que empuja la troca
name-site-unsafe-lost = alguien perdido en el frío
name-site-unsafe-stranded = alguien atascado en la nieve sin calefacción
name-site-unsafe-stuck-in-snow = una troca atascada en la nieve
name-site-unsafe-gas-leak = una fuga de gas
name-site-unsafe-panel-hot = un tablero que zumba, chispea o quema
name-site-unsafe-water-in-panel = agua en el tablero o un contacto
name-site-unsafe-sewage-runs = aguas negras que corren
name-site-unsafe-overdose = una sobredosis
name-site-unsafe-fight = una pelea o un arma
name-site-unsafe-emergency = una emergencia
name-site-unsafe-shut-in = alguien que no puede salir
name-site-unsafe-generator-in = una planta prendida adentro
name-site-unsafe-scalding = agua que quema
name-site-unsafe-wheel-loose = una rueda floja
name-site-unsafe-choking = alguien que se atraganta
name-site-unsafe-choking-at = alguien que se atraganta
name-site-unsafe-scald-burn = alguien quemado con agua caliente
name-site-unsafe-scald-burn-at = alguien quemado con agua caliente
name-site-unsafe-sewage-on-person = aguas negras en alguien
name-site-unsafe-sewage-on-person-at = aguas negras en alguien
name-site-unsafe-self-harm = alguien que puede hacerse daño
name-site-unsafe-foul-fresh = aguas negras en el agua limpia
name-site-unsafe-brown-water = agua que se ve, sabe o huele mal
name-site-unsafe-gunshots = balazos
name-site-unsafe-bomb-threat = una amenaza de bomba o algo sospechoso
name-site-unsafe-assault = alguien atacado o seguido
name-site-unsafe-missing-person = alguien perdido
name-site-unsafe-gives-way = un techo o piso que se vence
name-site-unsafe-steps-loose = escalones o pasamanos que se mueven
name-site-unsafe-roof-ice = hielo o nieve que cae del techo
name-site-unsafe-flood = agua que sube alrededor del remolque
name-site-unsafe-person-under = alguien debajo del remolque
name-site-unsafe-alarm-fire = una alarma de humo o fuego
name-site-icy = hielo donde se pisa
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
name-trouble-odor-danger = olor a gas o combustible
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
name-trouble-burnt-smell = olor a quemado
name-trouble-burnt-smell-at = olor a quemado
name-trouble-co-alarm = alarma de CO o humo de escape
name-trouble-co-alarm-at = alarma de CO o humo de escape
name-trouble-fire = fuego
name-trouble-runaway = remolque suelto o rodando
name-trouble-person-trapped = alguien encerrado
name-crew-late-check-in = sin reporte hace mucho
name-crew-person-hurt = alguien herido
name-desk-unknown-unit = unidad que no existe
name-desk-implausible = un número que no puede ser
name-desk-not-allowed = sin permiso

### Digest

digest-asked = Hay muchas unidades fuera. El resumen llega en un momento.
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

### Findings: actions, cautions, formulas, fact names.
### The opening (signal word, or Now, Soon, Plan) and the unit are put before an action by the program.

## Water

water-over-pressure-stop = Agua a { $pressure }. No conecte. El límite es { $limit }. Primero ponga un regulador a { $regulator }. Luego lea otra vez en el remolque.
water-over-pressure-hooked = Cierre la toma ya: aquí leyó { $pressure }, y nadie dijo que hay regulador. El límite es { $limit }. Ponga un regulador a { $regulator }. Abra despacio, luego lea en el remolque.
water-over-pressure-act = Agua a { $pressure }, límite { $limit }. ¿Es antes o después del regulador? Antes: ponga uno a { $regulator }, con la toma cerrada. Después: no aguanta. Cámbielo.
water-over-pressure-site = Este sitio da { $pressure }, límite { $limit }. Cierre la toma. Ponga un regulador a { $regulator }. Abra despacio y lea la presión.
water-over-pressure-regulated = Agua a { $pressure } con el regulador puesto, límite { $limit }. No aguanta. Cierre la toma y póngalo a { $regulator }, o cámbielo. Lea otra vez.
water-over-pressure-plan = Agua a { $pressure }, un poco más de { $limit }. Ponga el regulador a { $regulator }.

water-under-pressure-ask = Agua a { $pressure }, pide { $limit }. ¿Fue con agua corriendo o con todas las llaves cerradas? Cierre todas y lea otra vez. Luego lea con una taza llenando y dos llaves abiertas.
water-under-pressure-supply = Agua a { $pressure } con llaves cerradas, pide { $limit }. La toma es débil. Abra la toma del todo. Revise a cuánto está el regulador. Si no, use manguera más ancha y corta, o trabaje con tanque y bomba.
water-under-pressure-flowing = Agua a { $pressure } con agua corriendo, pide { $limit }. Cierre todas las llaves y lea otra vez. Si sigue baja: la toma es débil. Si sube: limpie el filtro de entrada.
water-under-pressure-restriction = Agua a { $pressure } corriendo, debe ser { $expected }. Se pierde { $unexplained } en el camino. Primero limpie el filtro de entrada. Luego busque un doblez, una manguera aplastada o una válvula a medias.
water-under-pressure-hose = Agua a { $pressure } corriendo, y { $expected } es todo lo que da esta manguera. Use manguera más ancha o más corta. O trabaje con tanque y bomba.
water-under-pressure-act = Agua a { $pressure }. Con menos de { $needed } las tazas no llenan a tiempo. Trabaje con el tanque y la bomba. Luego revise toma, manguera y filtro de entrada.

water-under-pressure-later = Agua a { $pressure }. Primero haga lo dicho de la fuga o la bomba. Luego cierre las llaves y lea otra vez.
water-pressure-falling = El agua bajó { $fall }, de { $before } a { $pressure }. Limpie el filtro de entrada. Luego vea si la manguera tiene un doblez.

water-hose-undersized = La manguera puede dar { $given }. Este remolque pide { $wanted } en su hora pico. Use una más ancha o más corta que { $hose } de { $bore }. O en hora pico trabaje con tanque y bomba.

water-hose-undersized-no-pump = La manguera puede dar { $given }. Este remolque pide { $wanted } en la hora pico. Use manguera más ancha o corta que { $hose } de { $bore }.
water-fresh-endurance-act = Agua limpia al { $fresh }. Llene el tanque. Si no hay agua: apague la bomba antes de que trabaje en seco.
water-fresh-endurance-soon = Agua limpia al { $fresh }, alcanza para unos { $fresh_hours }. Llénela en el sitio. Si se vacía, apague la bomba.
water-fresh-endurance-low = Agua limpia al { $fresh }. Llénela en el sitio. Si se vacía, apague la bomba.
water-fresh-endurance-unread = Nadie ha dicho el nivel de agua limpia. Por la gente puede estar baja ya. Léalo, y llene si hace falta. Apague la bomba si se vacía.
water-fresh-endurance-plan = Agua limpia al { $fresh }. Con esta gente baja mucho hacia { $fresh_at }. Planee llenar antes.

water-backflow = Agua a { $pressure }, menos de { $needed }. El agua sucia puede volver a la red. Saque toda punta de manguera de cubetas y tanques.
water-backflow-no-device = No abra la toma. Ponga antes un rompevacío o una válvula contra retorno en la llave. Saque toda punta de manguera de cubetas y tanques. Si no hay: use el tanque limpio.

## Waste

waste-book-pump-out-now = Aguas negras como al { $level }. Llegan al { $stop_level } hacia { $p50 }, quizá { $p10 }. Llame ya al camión de vaciado. Camión en sitio antes de { $p10 }. Pide { $lead } de aviso.
waste-book-pump-out-late = Aguas negras como al { $level }. Llegan al { $stop_level } hacia { $p50 }, quizá { $p10 }. Llame ya al camión de vaciado. Pide { $lead } de aviso: en sitio hacia { $here }. Pregunte si puede venir antes de { $p10 }.
waste-book-pump-out-too-late = Aguas negras como al { $level }. Llegan al { $stop_level } hacia { $p50 }, quizá { $p10 }. Llame ya al camión de vaciado. Pide { $lead } de aviso: en sitio hacia { $here }, muy tarde. Pregunte si puede venir antes. Esté listo para cerrar baños desde { $p10 }.
waste-book-pump-out-now-called = Aguas negras como al { $level }. Llegan al { $stop_level } hacia { $p50 }, quizá { $p10 }. El camión hace falta antes de { $p10 }.
waste-book-pump-out-late-called = Aguas negras como al { $level }. Llegan al { $stop_level } hacia { $p50 }, quizá { $p10 }. El camión hace falta antes de { $p10 }.
waste-book-pump-out-too-late-called = Aguas negras como al { $level }. Llegan al { $stop_level } hacia { $p50 }, quizá { $p10 }. Esté listo para cerrar baños desde { $p10 }, hasta que llegue el camión.
waste-book-pump-out-any-time-called = Aguas negras como al { $level }. Pueden llegar al { $stop_level } en cualquier momento, quizá hacia { $p50 }. Cierre algunos baños hasta que llegue el camión.
waste-book-pump-out-over-called = Aguas negras como al { $level }, pasan del { $stop_level }. Apure al camión.
waste-book-pump-out-soon-called = Aguas negras como al { $level }. Llegan al { $stop_level } hacia { $p50 }, quizá { $p10 }. Deje libre el paso para el camión.
waste-book-pump-out-high-called = Aguas negras como al { $level }. Deje libre el paso para el camión.
waste-book-pump-out-plan-called = Aguas negras como al { $level }. Llegan al { $stop_level } hacia { $p50 }, quizá { $p10 }. El camión hace falta antes de { $p10 }.
waste-book-pump-out-here = Aguas negras como al { $level }. Mande los galones cuando el camión termine.
waste-book-pump-out-unread = Nadie ha leído el tanque de aguas negras. Por la gente llega al { $stop_level } hacia { $p50 }, o antes. Léalo. El camión de vaciado pide { $lead } de aviso: llámelo a tiempo.
waste-book-pump-out-unread-over = Nadie ha leído el tanque de aguas negras. Por la gente puede pasar del { $stop_level }. Léalo. El camión de vaciado pide { $lead } de aviso.
waste-book-pump-out-any-time = Aguas negras como al { $level }. Pueden llegar al { $stop_level } en cualquier momento, quizá hacia { $p50 }. Llame ya al camión de vaciado. Pide { $lead } de aviso: en sitio hacia { $here }. Cierre algunos baños mientras llega.
waste-book-pump-out-doubted = Según el medidor las negras van como en { $level }, justo después del vaciado. Primero mire con una luz, desde afuera. Si sí está lleno: llame al camión.
waste-book-pump-out-fell = Si nadie vació, las negras van como al { $level }, diga lo que diga el medidor. Entonces llame al camión de vaciado. Pide { $lead } de aviso.
waste-book-pump-out-over = Aguas negras como al { $level }, pasan del { $stop_level }. Llame ya al camión de vaciado, o apúrelo. Pide { $lead } de aviso: en sitio hacia { $here } si llama ahora.
waste-book-pump-out-soon = Aguas negras como al { $level }. Llegan al { $stop_level } hacia { $p50 }, quizá { $p10 }. ¿Ya pidió el camión? ¿Quién viene y a qué hora? Deje libre el paso.
waste-book-pump-out-high = Aguas negras como al { $level }. ¿Ya pidió el camión de vaciado? ¿Quién viene y a qué hora? Deje libre el paso.
waste-book-pump-out-plan = Aguas negras como al { $level }. Llegan al { $stop_level } hacia { $p50 }, quizá { $p10 }. Asegure un camión de vaciado antes de { $p10 }.
waste-book-pump-out-watch = Aguas negras como al { $level }. No deben llegar al { $stop_level } antes del final. Lea el tanque más tarde, y sepa qué camión podría venir.

waste-close-now-stalls = Aguas negras al { $level }, nivel de paro { $stop_level }. Cierre algunos baños. Lo que queda cubre olas, desnivel y un medidor que falla.
waste-close-now-unit = Aguas negras al { $level }. Cierre toda la unidad. Se va a regresar por el drenaje más bajo.
waste-close-now-likely = Las aguas negras quizá ya están al { $level }, nivel de paro { $stop_level }. Lea el tanque. Si está así de alto, cierre algunos baños y apure al camión.
waste-close-now-likely-unit = Las aguas negras quizá ya están llenas: como al { $level }. Lea el tanque. Si es así, cierre toda la unidad. Se va a regresar por el drenaje más bajo.
waste-close-now-likely-uncalled = Las aguas negras quizá ya están al { $level }, nivel de paro { $stop_level }. Lea el tanque. Si está así de alto, cierre algunos baños y llame al camión.

waste-spill = Cierre la unidad. Aleje a la gente y a los animales, del lado de donde viene el viento. Primero tape las coladeras de lluvia y el paso a ríos o arroyos. Cierre la válvula o pare la fuente. El despachador llama a la autoridad.

waste-dropped-unexplained = Las aguas negras bajaron { $fall }, de { $before } a { $level }, y no hay vaciado anotado. Si nadie vació, vea bajo el remolque si hay válvula abierta o fuga. Si está seco: el medidor miente. Vea por una taza con una luz.

waste-gauge-doubtful-reported = No confíe en el medidor de negras. Cuente los usos. Vea por una taza con una luz. Golpee el tanque. Enjuague las sondas en el próximo vaciado.
waste-gauge-doubtful-stuck = El medidor de negras marca { $level } desde hace horas de uso. Puede estar trabado con papel. No confíe en él. Vea por una taza con una luz.
waste-gauge-doubtful-coated = El medidor de negras marca { $level } justo después del vaciado. La sonda ha de estar sucia. Enjuague el tanque. No confíe en el medidor hasta que marque bajo.

## Cold and heat

cold-freeze-soon-tap-shut = Aire a { $air }. Con la toma cerrada la manguera queda quieta y se puede helar. Saque la presión por un lavabo, quítela y drénela. Use el tanque hasta que corra otra vez.
cold-freeze-soon-now-tap-shut = Aire a { $air }, viento { $wind }. Toma cerrada: la manguera queda quieta. Llega a congelación en { $hose_min } y puede taparse en { $block_min }. Saque la presión por un lavabo, quítela y drénela. Use el tanque hasta que corra otra vez.
cold-freeze-soon-now-tap-shut-wind-taken = Aire a { $air }. Toma cerrada: la manguera queda quieta. Llega a congelación en { $hose_min } y puede taparse en { $block_min } (viento supuesto { $wind }). Saque la presión por un lavabo, quítela y drénela. Use el tanque hasta que corra otra vez.
cold-freeze-soon-now-tap-shut-heater = Aire a { $air }, viento { $wind }. Toma cerrada: la manguera queda quieta. Llega a congelación en { $hose_min } y puede taparse en { $block_min }. Saque la presión por un lavabo, quítela y drénela. Use el tanque hasta que corra otra vez. Lea los amperes del calentador, no solo el interruptor.
cold-freeze-soon-now-tap-shut-heater-wind-taken = Aire a { $air }. Toma cerrada: la manguera queda quieta. Llega a congelación en { $hose_min } y puede taparse en { $block_min } (viento supuesto { $wind }). Saque la presión por un lavabo, quítela y drénela. Use el tanque hasta que corra otra vez. Lea los amperes del calentador, no solo el interruptor.
cold-freeze-soon-soon-plain = Aire a { $air }, hiela. Calor en el compartimento. Envuelva la manguera y las partes mojadas. Que el agua corra.
cold-freeze-soon-plan = Aire a { $air }. Casi hiela. ¿Tiene equipo de frío y su breaker arriba? Planee cómo drenar manguera y tanques.
cold-freeze-soon-soon = Aire a { $air }, ya hiela. Prenda calefacción del compartimento y calentador del tanque. Envuelva la manguera y toda punta mojada. Que el agua no pare.
cold-freeze-soon-now = Aire a { $air }, viento { $wind }. Una manguera quieta llega a congelación en { $hose_min } y puede taparse en { $block_min }. Caliéntela, que corra, o drénela y use el tanque.
cold-freeze-soon-now-wind-taken = Aire a { $air }. Una manguera quieta llega a congelación en { $hose_min } y puede taparse en { $block_min } (viento supuesto { $wind }). Caliéntela, que corra, o drénela y use el tanque.
cold-freeze-soon-now-heater = Aire a { $air }, viento { $wind }. Una manguera quieta llega a congelación en { $hose_min } y puede taparse en { $block_min }. Que corra, o drénela y use el tanque. Lea los amperes del calentador, no solo el interruptor.
cold-freeze-soon-now-heater-wind-taken = Aire a { $air }. Una manguera quieta llega a congelación en { $hose_min } y puede taparse en { $block_min } (viento supuesto { $wind }). Que corra, o drénela y use el tanque. Lea los amperes del calentador, no solo el interruptor.
cold-freeze-soon-no-power = Sin corriente y a { $air }: ya corre el reloj del hielo. La manguera puede taparse en { $block_min }, las válvulas poco después, el tanque de agua limpia en { $tank_hours }. Drene primero la manguera. Luego las líneas de bomba y calentador. Luego los tanques.
cold-freeze-soon-no-power-still = Sin corriente y a { $air }: ya corre el reloj del hielo. Drene primero la manguera. Luego las líneas de bomba y calentador. Luego los tanques. Recupere la corriente o traiga un generador.
cold-freeze-soon-no-power-held = Sin corriente, y { $air } en la última lectura, a las { $air_at }: ya corre el reloj del hielo. Nadie avisó de aire más tibio. Drene primero la manguera. Luego las líneas de bomba y calentador. Luego los tanques. Recupere la corriente o traiga un generador.
cold-freeze-soon-no-power-low = Sin corriente, y mínima de { $low } esta noche: ya corre el reloj del hielo. Drene primero la manguera. Luego las líneas de bomba y calentador. Luego los tanques. Recupere la corriente o traiga un generador.
cold-freeze-soon-held = { $air } en la última lectura, a las { $air_at }, y nadie avisó de aire más tibio. Cuente con que hiela. Calentadores prendidos, y lea sus amperes. Que el agua corra. Luego lea el aire.
cold-freeze-soon-danger = Sin corriente, y hiela. Nadie se acerca mientras siga el peligro. Cuando pase: primero drene la manguera, luego las líneas, luego los tanques.
cold-freeze-soon-after = Sin corriente { $off } a { $air }: manguera, válvulas y bomba pueden estar heladas. Busque hielo y partes rajadas antes de correr agua. Calentador solo con su tanque lleno. Luego mande amperes del calentador y flujo.
cold-freeze-soon-after-low = Sin corriente { $off }, y mínima de { $low }: manguera, válvulas y bomba pueden estar heladas. Busque hielo y partes rajadas antes de correr agua. Calentador solo con su tanque lleno. Luego mande amperes del calentador y flujo.
cold-freeze-soon-tonight-plan = Viene una mínima de { $low }. Casi hiela. ¿Tiene equipo de frío y su breaker arriba? Planee cómo drenar manguera y tanques.
cold-freeze-soon-tonight = Viene una mínima de { $low }. Antes de que llegue: calentadores prendidos, manguera y puntas mojadas envueltas. Sin calor: drene la manguera y use el tanque.

cold-tank-heater-on = Hiela, y nadie dijo que el calentador del tanque está prendido. Prenda el circuito { $circuit }: tanque y compartimento. Lea sus amperes. Un botón tibio no prueba nada.
cold-tank-heater-on-power-off = Los calentadores se quedan apagados hasta que autoricen la corriente. Hiela: primero drene la manguera. Luego líneas de bomba y calentador. Luego los tanques.
cold-tank-heater-on-low-volts = Hiela, y nadie dijo que el calentador del tanque está prendido. Primero apague las otras cargas grandes. Luego préndalo. Lea otra vez voltios y amperes.
cold-tank-heater-on-tonight = Se espera una mínima de { $low }, y nadie ha dicho que el calentador del tanque esté prendido. Prenda el circuito { $circuit }: tanque y compartimento. Lea sus amperes.
cold-tank-heater-on-plain = Hiela, y nadie dijo que el calentador del tanque está prendido. Prenda los de tanque y compartimento. Lea sus amperes.
cold-tank-heater-on-off = El calentador está apagado a { $air }. Préndalo y lea sus amperes. Sigue apagado: drene la manguera, luego líneas de bomba y calentador, luego los tanques.
cold-tank-heater-on-none = Hay helada, y el calentador de tanque y bahía (circuito { $circuit }) marca { $amps }: está frío. Préndalo. Revise breaker, clavija y termostato. Lea los amperes otra vez.
cold-tank-heater-on-dead = El calentador está prendido, pero el circuito { $circuit } marca { $amps }. No anda: se botó, está desconectado o lo paró el termostato. Revise breaker, clavija y termostato. Lea los amperes otra vez.
cold-tank-heater-on-weak = El calentador está prendido, pero el circuito { $circuit } marca { $amps }. El más chico de ese circuito pide { $load }. Casi siempre falla la resistencia o el termostato, o es otro circuito. Vea cuál, y lea otra vez.

cold-no-cold-package-plan = Este remolque no tiene equipo de frío. Planee drenarlo antes de que hiele.
cold-no-cold-package-soon = Sin equipo de frío, y hiela. Drene la manguera y las puntas mojadas. Prenda la calefacción del compartimento. Si baja más, drene los tanques.
cold-no-cold-package-tonight = Sin equipo de frío, y se espera una mínima de { $low }. Drene manguera y puntas mojadas antes de la noche. Prenda la calefacción del compartimento.
cold-no-cold-package-now = Sin equipo de frío con este frío. No puede seguir en servicio. Sáquela de servicio.

cold-winterize = Hace demasiado frío sin equipo de frío. Drene, prepare para el invierno o llévesela. Orden: apague el calentador de agua, deje que se enfríe, drénelo. Luego tanques y puntos bajos, sople, y pase anticongelante rosa.

cold-crew-cold-plan = Se siente como { $chill }. Guantes secos, y un par de más.
cold-crew-cold-act = Se siente como { $chill }, viento { $wind }. La piel se congela en menos de 30 min. Trabajen de dos en dos. Entren cada 15 min.
cold-crew-cold-act-wind-taken = Se siente como { $chill } (viento supuesto { $wind }). La piel se congela en menos de 30 min. Trabajen de dos en dos. Entren cada 15 min.
cold-crew-cold-stop = Se siente como { $chill }, viento { $wind }. La piel se congela en unos 10 min. Pare todo lo que no sea emergencia.
cold-crew-cold-stop-wind-taken = Se siente como { $chill } (viento supuesto { $wind }). La piel se congela en unos 10 min. Pare todo lo que no sea emergencia.
cold-crew-cold-person = Vaya ya a un lugar caliente, y avise dónde está. Póngase ropa seca. Tome algo tibio, nada de alcohol. Caliente la piel dormida poco a poco contra el cuerpo. No la frote. Si la persona se confunde, o deja de temblar: llame a emergencias.

heat-crew-heat-plan = Se siente como { $heat_index }. Tomen agua cada 15 a 20 min.
heat-crew-heat-plan-dry = Se siente como { $heat_index } en aire seco. ¿Cuál es la humedad? Tomen agua cada 15 a 20 min.
heat-crew-heat-soon = Se siente como { $heat_index }. Descansen en la sombra. Tomen agua cada 15 min. Cuídense entre todos.
heat-crew-heat-soon-dry = Se siente como { $heat_index } en aire seco. ¿Cuál es la humedad? Descansen en la sombra. Tomen agua cada 15 min. Cuídense entre todos.
heat-crew-heat-act = Se siente como { $heat_index }, más a pleno sol. Pase el trabajo pesado a la mañana. Sombra, agua, y de dos en dos.
heat-crew-heat-act-dry = Se siente como { $heat_index } en aire seco, más a pleno sol. ¿Cuál es la humedad? Pase el trabajo pesado a la mañana. Sombra, agua, y de dos en dos.
heat-crew-heat-stop = Se siente como { $heat_index }. Solo trabajo de emergencia. Lleve a todos a la sombra o a un cuarto fresco.

## Power

power-shock = Corte la corriente en la fuente, con manos secas: baje los breakers del sitio, o jale los cables allá. Nadie toque metal, escalones ni agua. Cierre la unidad y aleje a la gente. Nunca vuelva a prender para probar.

power-low-voltage-soon = { $volts }, bajo. Use un solo aire a la vez. Revise el largo del cable y las clavijas. ¿Leyó con carga?
power-low-voltage-act = { $volts }, límite { $limit }. Apague el aire y las demás cargas grandes. Use un cable más corto o más grueso. Avise al electricista del sitio.
power-low-voltage-dead = { $volts }: ese contacto está muerto. Revise el breaker, luego el cable, clavija por clavija. Avise al sitio.

power-high-voltage-plan = { $volts }, algo alto. Lea otra vez en un rato. Vigile el convertidor.
power-high-voltage-act = { $volts }, límite { $limit }. Desconecte lo electrónico. Apague lo que pueda. Avise al electricista del sitio.
power-high-voltage-open-neutral = { $volts }: el neutro puede estar abierto. Baje todos los breakers. Déjelos abajo. Llame a un electricista con licencia.
power-high-voltage-split = { $high } en uno y { $low_leg } en otro: el neutro puede estar abierto. Baje todos los breakers. Déjelos abajo. Llame a un electricista con licencia.
power-high-voltage-battery = Batería a { $volts }, muy alto. Baje el breaker del convertidor. Abra el compartimento para que salga el gas.

power-over-current-act = { $amps } en un breaker de { $breaker }. Quite carga: aire o calefacción, luego el calentador de agua. La clavija se calienta antes de que se bote el breaker.
power-over-current-soon = { $amps } desde hace horas, límite { $continuous }. Quite carga de ese cable.
power-over-current-plan = { $amps }, más de los { $continuous } que un circuito lleva por horas. Un rato no importa. Si sigue, quite carga.

power-shared-circuit-converter = Circuito { $circuit } a { $amps }: calentador de agua y convertidor juntos. Uno a la vez. Apague el calentador, que cargue primero la batería, luego el agua.
power-shared-circuit-air = Circuito { $circuit } a { $amps }: más que el aire o la calefacción solos. ¿Están los dos? Apague uno.
power-shared-circuit-two-air = Circuito { $circuit } a { $amps }: dos aires juntos. Apague uno.
power-shared-circuit-air-told = Aire y calefacción juntos toman { $together } en el circuito { $circuit }. Aguanta { $continuous } por horas. Apague uno.
power-shared-circuit-two-air-told = Dos aires juntos toman { $together } en el circuito { $circuit }. Aguanta { $continuous } por horas. Apague uno.
power-shared-circuit-converter-told = Calentador de agua y convertidor juntos toman { $together } en el circuito { $circuit }. Aguanta { $continuous } por horas. Apague el calentador, primero que cargue la batería.

power-cord-drop-plan = { $cord } de cable { $gauge } pierden { $drop } a { $amps }. Es mejor uno más grueso o más corto.
power-cord-drop-soon = { $cord } de cable { $gauge } pierden { $drop } a { $amps }: quedan unos { $volts_expected }. Use un cable más grueso o más corto. Un aire que zumba y para no está roto, le falta voltaje.
power-cord-drop-measured = El voltaje bajó { $fall } con carga, de { $before } a { $volts }. Es cable, clavija o contacto. Corte la corriente, luego toque cada clavija por si está caliente.

power-cord-overloaded = { $amps } en un cable { $gauge } hecho para { $cord_amps }. Quite carga, o use un cable más grueso. Corte la corriente y toque la clavija por si está caliente.

power-too-few-circuits = { $cords ->
        [one] Un cable
       *[other] { $cords } cables
    }, pero hacen falta { $cords_needed } circuitos. { $feed_count ->
        [one] Alimente el circuito
       *[other] Alimente los circuitos
    } { $feed }: el circuito { $converter_circuit } mantiene luces y bombas. No andarán: { $left_out }.
power-too-few-circuits-power-off = No dé corriente a ningún circuito hasta que la autoricen. Luego, primero el del convertidor.
power-too-few-circuits-cold = { $cords ->
        [one] Un cable
       *[other] { $cords } cables
    }, pero con este frío hacen falta { $cords_needed } circuitos. { $feed_count ->
        [one] Alimente el circuito
       *[other] Alimente los circuitos
    } { $feed }: primero el circuito { $converter_circuit }, luego el calentador del tanque. No andarán: { $left_out }.

power-on-battery-ask = { $cords ->
        [one] Un cable
       *[other] { $cords } cables
    } para { $circuits } circuitos. ¿Tiene corriente el circuito { $converter_circuit }? Si no, el convertidor está muerto y la batería se gasta: quedan unos { $battery_hours }.
power-on-battery-ask-plain = { $cords ->
        [one] Un cable
       *[other] { $cords } cables
    } para { $circuits } circuitos. ¿Tiene corriente el circuito { $converter_circuit }? Si no, el convertidor está muerto y la batería se gasta.
power-on-battery-power-off = Luces y bombas viven de la batería mientras no hay corriente. Déjela cortada hasta que la autoricen.
power-on-battery-circuit = El circuito { $converter_circuit } no tiene corriente, así que el convertidor está muerto. La batería se gasta: quedan unos { $battery_hours }. Pase un cable al circuito { $converter_circuit }.
power-on-battery-circuit-plain = El circuito { $converter_circuit } no tiene corriente, así que el convertidor está muerto. La batería se gasta. Pase un cable al circuito { $converter_circuit }.
power-on-battery = Sin corriente del sitio. Luces y bombas viven de la batería: unos { $battery_hours }. No hay aire, calefacción ni agua caliente.
power-on-battery-plain = Sin corriente del sitio. Luces y bombas viven de la batería. No hay aire, calefacción ni agua caliente. Lea los voltios de la batería.
power-on-battery-down = Sin corriente del sitio, y la batería está a la mitad o menos. Recupere la corriente o traiga un generador. No hay aire, calefacción ni agua caliente.
power-on-battery-fresh-first = Sin corriente del sitio. La batería dura unos { $battery_hours }, el agua limpia unos { $fresh_hours }. Primero se acaba el agua: planee llenar. No hay aire, calefacción ni agua caliente.
power-on-battery-battery-first = Sin corriente del sitio. La batería dura unos { $battery_hours }, el agua limpia unos { $fresh_hours }. Primero se acaba la batería: traiga un generador. No hay aire, calefacción ni agua caliente.

power-battery-low-plan = Batería a { $volts }, como al { $charge }. Cárguela hoy.
power-battery-low-soon = Batería a { $volts }, menos de media carga. Recupere la corriente, o apague ventiladores. ¿Leyó en reposo o con carga?
power-battery-low-soon-rest = Batería a { $volts } en reposo, menos de media carga. Recupere la corriente, o apague ventiladores.
power-battery-low-act-rest = Batería a { $volts } en reposo, casi vacía. Ventiladores y bombas apagados. Sin corriente: desconéctela, y cierre la unidad o traiga un generador. Con corriente: conéctela y luego cárguela.
power-battery-low-act = Batería a { $volts }, casi vacía. Ventiladores y bombas apagados. Sin corriente: desconéctela, y cierre la unidad o traiga un generador. Con corriente: conéctela y luego cárguela. ¿Leyó en reposo o con carga?
power-battery-low-flat = Batería a { $volts }, vacía. Las bombas paran y las válvulas se sueltan. Apague cargas y luego desconéctela: más uso la daña. Cierre la unidad o traiga un generador. Con corriente: conéctela y luego cárguela.
power-battery-low-plan-charge = Batería al { $charge }. Cárguela hoy.
power-battery-low-soon-charge = Batería al { $charge }, menos de media carga. Recupere la corriente, o apague ventiladores.
power-battery-low-act-charge = Batería al { $charge }, casi vacía. Ventiladores y bombas apagados. Sin corriente: desconéctela, y cierre la unidad o traiga un generador. Con corriente: conéctela y luego cárguela.
power-battery-low-flicker = Luces que parpadean: casi siempre batería baja, tierra floja o la base del foco. Si parpadean también las de 120 V, el neutro puede estar flojo. Baje el principal y llame a un electricista con licencia.
power-battery-low-told = Batería baja. Lea sus voltios en reposo. ¿Tiene corriente el circuito del convertidor? Apague ventiladores hasta que cargue.

power-generator-soon = El generador da { $generator_w }. Todas las cargas llevan { $running_w } y piden { $needed_w } para arrancar un aire. Arranque un aire a la vez, el calentador al final. O traiga uno más grande.
power-generator-act = El generador da { $generator_w }. Todas las cargas juntas llevan { $running_w }, y un aire arranca con { $needed_w }. Deje apagado un aire o el calentador de agua. O traiga uno más grande.
power-generator-soon-heat = El generador da { $generator_w }. Todas las cargas llevan { $running_w }. A { $altitude } y { $air } eso pide uno de { $needed_w }. Deje un calentador apagado. O traiga uno más grande.
power-generator-act-heat = El generador da { $generator_w }. Todas las cargas juntas llevan { $running_w }. A { $altitude } y { $air } eso pide uno de { $needed_w }. Deje calentadores apagados, primero el de agua. O traiga uno más grande.
power-generator-inside = Todos fuera, al aire libre. El humo mata, y nadie lo huele. Apague el generador o el calentador, si puede sin respirar el humo. Póngalo a 20 pies de puertas, ventanas y carpas. Si alguien se marea o le duele la cabeza: llame a emergencias.

## Crowd

crowd-under-served = { $stalls } baños van a estar ocupados al { $busy } en la hora pico. La fila va a crecer. Pida más baños, y tenga estos limpios y surtidos.
crowd-under-served-stall-out = { $stalls_out ->
    [one] Un baño fuera deja
   *[other] { $stalls_out } baños fuera dejan
} { $stalls }. Van a estar ocupados al { $busy } en la hora pico. Recupere baños, o pida más.
crowd-under-served-act = { $stalls } baños no alcanzan en la hora pico (ocupados al { $busy }). La fila no va a acabar. Avise al despachador: hacen falta más baños.
crowd-under-served-act-stall-out = { $stalls_out ->
    [one] Un baño fuera deja
   *[other] { $stalls_out } baños fuera dejan
} { $stalls }, y no alcanzan en la hora pico (ocupados al { $busy }). Primero recupere baños. Avise al despachador: hacen falta más baños.

## Site

site-not-level-soon = Desnivel de { $slope }, límite { $limit }. Nivele. Las puertas se mueven solas, y medidor y drenaje fallan.
site-not-level-act = Desnivel de { $slope }, límite { $limit }. Muévala o póngale bloques. Hasta entonces, cierre al público.
site-not-level-told = Desnivelada. Nivele primero de lado a lado. Las puertas se mueven solas, y medidor y drenaje fallan.
site-not-chocked = Alto. Calce los dos lados antes que nada. Un remolque sin enganchar puede rodar.
site-not-chocked-out = Sin calzas, y nadie dijo que está enganchada. Póngalas otra vez, los dos lados, hasta engancharla.
site-wind-soon = Viento { $wind }. Meta los toldos. Detenga las puertas. Amarre lo suelto.
site-wind-act = Viento { $wind }. Nadie en el techo ni en los escalones. Toldos adentro, puertas cerradas. Si se mece, cierre la unidad.
site-unsafe-no-chocks = No desenganche. Déjelo enganchado, freno de mano puesto, hasta calzar los dos lados. Si ya está suelto: gente lejos, y primero engánchelo otra vez. Una piedra o un bloque no es calza: se zafa. Pida que le traigan un par.
site-unsafe-dumped = Las negras nunca van al suelo, a una cuneta ni a un drenaje. Pare, cierre la válvula. Gente y animales lejos, tape el drenaje. No cuenta como vaciado. El despachador llama a la autoridad.
site-unsafe-wheel-loose = No la remolque. Si ya va rodando: oríllese despacio, donde sea seguro. Una rueda con tuercas flojas o faltantes se sale. Calce el otro lado y apriételas en cruz con llave de torque. Birlos doblados o rotos: a un taller. Revíselas otra vez a las pocas millas.
site-unsafe-battery-gassing = Aléjese, la cara lejos. Nada de chispas, flama ni cigarro. Corte el cargador en su breaker, si no está junto a la batería. Abra el compartimento y ventile. No toque cables ni tapones.
site-unsafe-battery-frozen = No la cargue ni le pase corriente: congelada puede reventar y echar ácido. Apague su cargador. Nadie la descongela con calor. Póngase lentes y guantes, y apártela en un lugar fresco. Hinchada o rajada: ya no sirve. Ponga otra.
site-unsafe-backfeed = Alto. No toque esas clavijas: están vivas. Primero apague la fuente, luego saque el cable de allá. La corriente al revés mata en la línea y en el metal. Quite ese cable. Un electricista con licencia revisa antes de prender otra vez.
site-unsafe-refuel-running = Deje de echar. Aléjese, bidón lejos, nada de flama. Apague el motor si llega sin peligro. Déjelo enfriar 15 min antes de llenarlo. Si prende fuego: aléjese, llame a emergencias.
site-unsafe-bypassed = Corte ya la corriente en la fuente. Quite el puente antes de prender cualquier cosa. Sin GFCI ni tierra una falla deja vivo todo el metal. Cierre lo que depende de eso. Si luego se bota, déjelo apagado.
site-unsafe-power-strip = Desconéctelo ya en la fuente. Una regleta es para cargas chicas: con esta se calienta y se quema. Lleve cada cable directo a su propio contacto. Lo café o derretido queda fuera.
site-unsafe-breaker-held = Apáguelo ya, en la fuente si no se deja. Quite la cinta o la cuña. Un breaker trabado deja quemar los cables. Ese circuito queda apagado hasta que lo vea un electricista.
site-unsafe-generator-near = Apague el motor, o muévalo a 20 ft (6 m) o más de puertas y ventanas. El escape hacia afuera. Todos fuera hasta ventilar. Dolor de cabeza, mareo o náusea: emergencias.
site-unsafe-fuel-heater = Sáquelo ya: un calefactor o asador adentro o bajo una ventana mata sin oler. Todos fuera hasta ventilar. Dolor de cabeza, mareo o náusea: emergencias.
site-unsafe-cord-in-water = Primero corte la corriente en la fuente, con manos secas. Antes no pise esa agua ni levante el cable. Luego levántelo, seque las clavijas, cuélguelas. Lo mojado o cortado queda fuera.
site-unsafe-people-inside = Que salgan todos ya, a voces: nadie entra por ellos ni toca metal. Cierre la unidad, alguien en la puerta. Cuéntelos. Si alguien no contesta: llame a emergencias.
site-unsafe-water-on-fire = Ya no eche agua: cerca de la corriente puede matarlo. Todos fuera y lejos. Corte la corriente en la fuente si llega sin peligro. Llame a emergencias. No vuelva a entrar.
site-unsafe-road-loose = Oríllese donde sea seguro, con intermitentes. Llame a emergencias: un remolque suelto mata. Diga qué carretera, en qué sentido, y la salida o el kilómetro más cercano. Que nadie pise la carretera. No corra tras él. Ya quieto y con permiso de ellos: cálcelo.
site-unsafe-exhaust-in = Todos fuera, al aire libre. Apague el motor, si puede sin respirar el humo. Luego póngalo a 20 pies (6 m) o más de puertas y ventanas, con el escape hacia afuera. Dolor de cabeza, mareo o náusea: emergencias.
site-unsafe-generator-at-door = Apague el motor, si puede sin respirar el humo. Luego póngalo a 20 pies (6 m) o más de puertas y ventanas. Todos fuera hasta que se ventile. Dolor de cabeza, mareo o náusea: emergencias.
site-unsafe-generator-behind = ¿A qué distancia está de puertas, ventanas y ventilas? A menos de 20 pies (6 m): apáguelo, muévalo, todos fuera hasta que se ventile. Que esté afuera no basta: el humo se mete. Dolor de cabeza, mareo o náusea: emergencias.
site-unsafe-engine-at-door = Motor apagado o lejos ya: a 20 pies (6 m) o más de puertas, ventanas y ventilas. Todos fuera hasta que se ventile. Dolor de cabeza, mareo o náusea: emergencias.
site-unsafe-needle = Nunca con la mano, y los guantes no paran una aguja. Que nadie entre. Pinzas, con la punta lejos de usted. A una caja dura con tapa, nunca a una bolsa ni al excusado. Sin caja: cierre el cuarto y pida una. Si pica a alguien: avise de inmediato.
site-unsafe-needle-how = Con la mano no: los guantes no paran una aguja. Pinzas, con la punta lejos de usted, a una caja dura con tapa. Nunca a una bolsa, a la basura ni al excusado.
site-unsafe-needle-stick = Lave ya con jabón y agua corriente, cinco minutos. No apriete ni chupe, nada de cloro. Cubra la herida. Vaya ya al médico o a emergencias del hospital, en pocas horas: hay medicina que solo sirve pronto. Guarde la aguja en una caja dura. El despachador sigue por usted.
site-unsafe-spill-drain = Párelo en la fuente, y tape ese drenaje ya con tierra o una tapa. Diga a su despachador dónde está el drenaje y cuánto cayó. El despachador llama ya a la autoridad. No lave nada hacia él.
site-unsafe-smoking = Ahí ninguna llama: el gas del tanque y el propano arden. Cigarros fuera, la gente a 20 pies (6 m), contra el viento. Huele a gas: todos fuera, llame a emergencias.
site-unsafe-tank-entry = Alto. Nadie se mete a un tanque, ni la cabeza ni los brazos. Su gas mata en segundos. Lo que cayó se queda ahí hasta que venga la pipa. Si ya hay alguien adentro: llame a emergencias, y quédese afuera.
site-unsafe-under-jack = Salga de abajo ya. Un gato se zafa sin avisar. Calce los dos lados, luego torres con capacidad bajo el chasis, en piso firme. Hasta entonces nadie abajo.
site-unsafe-fuse-wrong = Corte la corriente, y sáquelo ya. El cable se quema antes que ese fusible. Ponga el tamaño que está impreso ahí, o déjelo fuera. Si se quema otra vez: primero lo ve un electricista.
site-unsafe-thaw-heat = Deje eso. Apague la flama o la pistola. Derrite manguera y tubo, y puede prender paredes y gas. Abra la llave, luego toallas tibias o aire tibio, desde la llave hacia atrás. Antes busque si hay un tubo roto.
site-unsafe-relief-valve = Corte la corriente del calentador en su pastilla. Si es de gas: cierre el gas. Hágase a un lado, gente lejos: el tanque puede reventar. Nunca tape esa válvula. Deje que se enfríe. Un plomero con licencia lo ve antes de prenderlo.
site-unsafe-space-heater = Apáguelo y desconéctelo. Un calefactor así quema cables y clavijas delgadas. Nunca en extensión ni regleta, nunca cerca de papel o cortinas. Clavija o cable caliente o café: fuera de uso. Use la calefacción del remolque.
site-unsafe-power-line = Quédese a 10 m (35 ft) o más de esa línea, del remolque y de todo lo que toca. El suelo puede tener corriente. Si está en la troca: no baje y aleje a la gente. Llame a emergencias, luego a la compañía de luz. Solo ellos dicen cuándo ya no hay corriente. Si la troca arde: salte lejos, caiga con los dos pies juntos, aléjese sin levantarlos. Nunca toque troca y suelo a la vez.
site-unsafe-power-line-hurt = No se acerque a esa persona. Quédese a 10 m (35 ft) o más de la línea y de lo que toca. El suelo puede tener corriente. Llame a emergencias, luego a la compañía de luz. Solo ellos dicen cuándo ya no hay corriente. Entonces ayude.
site-unsafe-swaying = Suelte el acelerador. Volante derecho. Frene suave solo con el freno del remolque, si trae palanca. Sin frenazos ni volantazos. Luego oríllese con cuidado y pare. Revise tanques, llantas, enganche y carga antes de seguir, más despacio. El teléfono solo parado.
site-unsafe-open-neutral = El neutro puede estar abierto. Baje ya todos los breakers, y déjelos abajo. Nadie prenda nada. Llame a un electricista con licencia y a la oficina.
site-unsafe-wreck = ¿Hay alguien herido? Primero el número de emergencias. Motor apagado, intermitentes prendidas. Todos fuera por el lado sin tráfico, lejos del camino. Deje todo donde quedó. Luego llame a la oficina: dónde está, quién está herido, qué se tira.
site-unsafe-sliding = Manejando: suelte el acelerador, volante derecho, frene suave. Luego pare donde sea seguro. Estacionado: gente fuera de su camino, y déjelo ir. Cálcelo solo cuando ya no se mueva. Si hay heridos: primero el número de emergencias.
site-unsafe-wind-tips = Todos fuera ya, por el lado de donde viene el viento. Quédense más lejos que su altura. Ciérrelo, y acordone el lado hacia donde caería. Nadie en gatos, escalones ni techo. Espere en una troca o edificio hasta que baje el viento. Si hay heridos: primero el número de emergencias.
site-unsafe-shared-outlet = Corte la corriente ahí, y dé a cada cable su propio contacto, en su propio breaker. Dos en uno lo calientan hasta que se quema. Sin ye, sin adaptador. Lo tibio o café queda fuera.
site-unsafe-towed-attached = Oríllese donde sea seguro, con intermitentes, fuera del carril. Apague y cálcelo. Suba o quite lo que va colgando. Piense qué se arrancó en el sitio: allá cierren esa agua o corriente. Busque daños antes de seguir. Nunca se meta abajo.
site-unsafe-blowout = Sostenga derecho el volante. Suelte el acelerador, no frene fuerte. Que baje solo la velocidad, y oríllese bien lejos del camino. Intermitentes, y todos fuera por el lado sin tráfico. No la cambie junto al tráfico: pida ayuda.
site-unsafe-drowsy = Oríllese ya, donde sea seguro. Cálcelo, y duerma o que maneje otro. El café y la ventana abierta no ayudan. Nadie se enoja por un remolque tarde: avise al despachador.
site-unsafe-hose-whips = Todos lejos de esa manguera: la conexión rompe huesos. Cierre el agua en el hidrante o la llave, por el lado lejano. No la agarre. Ya quieta: purgue en un lavabo, luego manguera y empaque nuevos. Lea presión y regulador antes de que vuelva la gente.
site-unsafe-bowl-over = Nadie le baje. Cierre la llave de paso atrás, y cierre ese baño. Es agua negra: la gente fuera de ella, guantes, botas y careta. Si se desborda más de uno: cierre la unidad, lea el tanque de negras.
site-unsafe-drain-cleaner-in = Ahora ni bomba ni guía: salpica a los ojos. Nadie le baje, y no le eche nada más. Cierre ese baño, ventílelo. Dígaselo a quien trabaje ahí, al plomero también. En piel u ojos: agua limpia 15 min, número de emergencias.
site-unsafe-cord-taped = La cinta no arregla un cable. Baje el breaker en la fuente, luego desconecte, con manos secas. Fuera de uso y marcado. Otro cable del mismo calibre, o ese circuito queda apagado.
site-unsafe-fuel-heater-meant = No. No lo meta ni lo prenda ahí. Su gas no huele y mata en minutos, y puede incendiar el remolque. Caliente con los calentadores del remolque, o ciérrelo y entre a un lugar caliente.
site-unsafe-on-the-roof = Primero baje. Con viento, mojado, hielo o nieve nadie sube. Una tapa o un respiradero no lo aguanta. La nieve se quita desde el suelo, con rastrillo. Arriba solo con otra persona y escalera amarrada.
site-unsafe-battery-jumped = No si está congelada o hinchada. Careta puesta, sin flama. Primero más con más, y la última pinza en metal lejos de la batería. Quítelas al revés. Un cargador es mejor. Si no aguanta: falló el convertidor o la batería.
site-unsafe-held = No lo toque. Corte ya la corriente en la fuente: baje el breaker del sitio, o jale el cable allá. Si no se puede: empújelo con madera seca o plástico, parado en seco. Luego el número de emergencias. Si no respira: presione el pecho.
site-unsafe-mixed-cleaners = Todos fuera ya, de donde viene el viento, y abra puertas al salir. Ese gas quema los pulmones. Que nadie regrese, y nadie le eche nada. Tos, ardor de ojos o falta de aire: llame a emergencias.
site-unsafe-tank-gas-strong = Un olor fuerte puede ser gas del tanque, y ese mata. Todos fuera, de donde viene el viento, y abra puertas al salir. Sin flama, no fume, no toque apagadores. Que nadie regrese, ni por un drenaje o ventilador. Enfermo, mareado o con dolor de cabeza: llame a emergencias. Que ya no lo huela no quiere decir que se fue.
site-unsafe-tank-gas = Huevo podrido puede ser gas del tanque. Todos fuera, de donde viene el viento, con las puertas abiertas. Sin flama, no fume. Nadie mete la cabeza a un tanque o registro. Si deja de oler de repente, o duele la cabeza: eso es peligro. Solo si es leve y junto a un drenaje: échele un litro de agua.
stays-site-unsafe-power-line = { $unit }: la línea sigue contando como viva, haya luz o no. No la toque, no la mueva, no la cruce. Quédese a 10 m (35 pies). En la troca: no se baje. Solo la compañía de luz, o su electricista, lo termina. Luego escriba "la compañía de luz dice que la línea está libre".
stays-told = { $unit }: { $who } escribe { $quote }. Ahí sigue abierto: { $what }. Llámele.
site-unsafe-pushed = Suelte el acelerador, la velocidad más baja. Primero use la palanca del freno del remolque, si la trae. Frene fuerte y por ratos cortos. Deje enfriar los frenos entre uno y otro. Claxon e intermitentes. Busque una rampa, una subida o terreno abierto. Ya parado: cálcelo, y déjelo hasta que revisen los frenos. El teléfono hasta entonces.
site-unsafe-lost = Llame ya al número de emergencias: puede ubicar su teléfono. Quédese donde está, sin viento, sin sentarse en el suelo. Gorro y guantes, mueva manos y pies. Haga ruido y luz. Cuide la pila. Si está en la troca: no salga de ella.
site-unsafe-stranded = Llame ya al número de emergencias: sin calefacción el frío mata. Quédese en la troca: irse a pie mata más. Destape el escape antes de prender el motor. Luego préndalo 10 min por hora, con una ventana un poco abierta. Póngase todo lo que traiga, y muévase. Amarre algo vistoso afuera.
site-unsafe-stuck-in-snow = Quédese con la troca, llame a la oficina y diga dónde está. Destape el escape antes de prender el motor. Un escape tapado llena la cabina de un gas que mata. Nadie entre la troca y el remolque mientras jalan. Con frío y sin calefacción: emergencias.
site-unsafe-panel-hot = No toque ese tablero: puede hacer arco o quemarse. Corte la corriente en la fuente, con pastillas del sitio o cables, manos secas. Cierre lo que usa. Humo o flama: todos fuera, llame a emergencias. Queda apagado hasta que un electricista lo abra y lo dé por bueno.
site-unsafe-water-in-panel = No toque ese tablero ni esa agua. Corte la corriente en la fuente, con pastillas del sitio o cables, manos secas. Todos fuera, nadie toque el metal ni los escalones. Luego cierre el agua. Queda apagado hasta que lo vea un electricista, aunque ya esté seco.
site-unsafe-overdose = Llame ya a emergencias: diga que puede ser sobredosis. Si no respira: compresiones en el pecho. Si hay naloxona: désela como dice su etiqueta. Si respira: acuéstelo de lado, quédese y vigílelo. No toque polvos ni agujas.
site-unsafe-fight = Aléjese con su gente. Llame a emergencias: pida policía. No se meta, no les tape la salida. Si no puede irse, enciérrese. Quédese lejos hasta que la policía diga que es seguro. Si hay heridos: dígalo en esa llamada.
site-unsafe-emergency = Si hay alguien herido o en peligro: llame ya a emergencias. Diga dónde está, y no cuelgue. Luego mande qué pasa aquí: herido, fuego, gas, toque, frío, choque. Aléjese de lo que puede lastimarlo.
site-unsafe-shut-in = Llame a la oficina y a emergencias: diga en qué cuarto está y que no puede salir. Grite y golpee, que nadie jale cables. Empuje abajo por las bisagras, luego fuerte junto a la chapa. Deje abierta la ventila y cuídese del frío. Nada de flama ni quemador ahí.
site-unsafe-scalding = Cierre ya las llaves calientes a la gente, con un letrero en cada una. Su pastilla abajo, termostato a 49 °C (120 °F) o menos. Deje correr el agua caliente hasta que enfríe, sin tocarla. Si sigue muy caliente: apagado hasta que lo vea un plomero o electricista. Piel quemada: agua fresca corriendo, 20 min.
site-unsafe-gas-collapse = Lejos de la boca del tanque, aun para ayudar: ese aire mata. Todos fuera, del lado de donde viene el viento. Llame ya a emergencias: diga que hay una persona caída por gas del tanque. Solo va rescate con su propio aire.
site-unsafe-choking = Si puede toser o hablar: que tosa. Si no: cinco golpes fuertes entre los omóplatos, inclinado hacia adelante. Luego cinco compresiones, hacia adentro y arriba del ombligo. Alterne hasta que salga. Otra persona llama ya al número de emergencia. Bebé o embarazada: como le diga la línea de emergencia. Si se desmaya: acuéstelo y empuje fuerte en el pecho.
site-unsafe-choking-at = Si puede toser o hablar: que tosa. Si no: cinco golpes fuertes entre los omóplatos, inclinado hacia adelante. Luego cinco compresiones, hacia adentro y arriba del ombligo. Alterne hasta que salga. Otra persona llama ya al número de emergencia: diga { $address }. Bebé o embarazada: como le diga la línea de emergencia. Si se desmaya: acuéstelo y empuje fuerte en el pecho.
site-unsafe-scald-burn = Agua fresca corriente en la quemada por 20 min. Sin hielo ni crema. Quite anillos y ropa mojada, no lo que se pegó. Luego cúbrala con algo limpio. Niño, cara, manos, o más grande que una palma: llame al número de emergencia. Cierre esa llave a los invitados. Apague el calentador de agua en su breaker.
site-unsafe-scald-burn-at = Agua fresca corriente en la quemada por 20 min. Sin hielo ni crema. Quite anillos y ropa mojada, no lo que se pegó. Luego cúbrala con algo limpio. Niño, cara, manos, o más grande que una palma: llame al número de emergencia. Diga que está en { $address }. Cierre esa llave a los invitados. Apague el calentador de agua en su breaker.
site-unsafe-sewage-on-person = Enjuague ojos y boca con agua limpia ya, por 15 min. Escupa, no trague. Quite lentes de contacto y ropa mojada. Lave piel y cortadas con jabón. Luego vea a un médico, aunque se sienta bien: diga que fueron aguas negras. Dolor, vista borrosa, o tragó mucho: llame al número de emergencia. Nadie va a esa válvula sin guantes y careta.
site-unsafe-sewage-on-person-at = Enjuague ojos y boca con agua limpia ya, por 15 min. Escupa, no trague. Quite lentes de contacto y ropa mojada. Lave piel y cortadas con jabón. Luego vea a un médico, aunque se sienta bien: diga que fueron aguas negras. Dolor, vista borrosa, o tragó mucho: llame al número de emergencia. Diga que está en { $address }. Nadie va a esa válvula sin guantes y careta.
site-unsafe-self-harm = Quédese con la persona, no la deje sola. Llame al número de emergencia, o a una línea de crisis. Escuche. No discuta ni prometa guardar el secreto. Aleje lo que podría usar, si no es peligro para usted. Aleje a los invitados. ¿Es usted? Llame ya, y vaya con alguien cercano.
site-unsafe-foul-fresh = Cierre ya llaves y tazas, un letrero en cada una: no beba, no se lave. Bomba de limpia apagada, agua cerrada. No llene más. Tanque, calentador y tubería se drenan, desinfectan, enjuagan y prueban. Esa manguera ya es solo de negras. Alguien bebió o se lavó ahí: pregunte a un médico. La oficina de salud y un plomero con licencia deciden cuándo sirve.
site-unsafe-brown-water = Cierre las llaves a los invitados hasta saber por qué. Abra sola la llave del sitio: si ahí sale clara, es el remolque. Pregunte al sitio por su agua. Si pudieron entrar negras o la manguera de negras: nadie la usa. Entonces drene y desinfecte todo. Deciden el código local y un plomero con licencia.
site-unsafe-gunshots = Aléjese si el camino está libre. Si no, al suelo tras algo sólido, puerta con seguro, luces apagadas, teléfono en silencio. Llame al número de emergencia en cuanto pueda: policía. Llévese a quien esté cerca. Nadie sale a ver. Quédese hasta que llegue la policía. Entonces manos vacías y abiertas.
site-unsafe-bomb-threat = No toque nada. Todos fuera y muy lejos, donde no se vea. Sin teléfono ni radio junto a eso. Llame desde lejos al número de emergencia: policía. Apunte las palabras de la amenaza, o dónde está la cosa. Nadie vuelve hasta que la policía lo diga.
site-unsafe-assault = Llévela a donde esté segura, y quédese con ella. Llame al número de emergencia: policía. No persiga ni detenga al otro: apunte cómo es y a dónde fue. Cierre ese cuarto y no toque nada: puede ser prueba. Pregunte antes de hacer algo por ella.
site-unsafe-missing-person = Llame al número de emergencia y avise al personal del sitio ya. Diga nombre, edad, ropa, dónde se vio por última vez. No se mueve troca ni remolque hasta hallarlo. Busque en cada cuarto y compartimento, bajo los remolques, junto a agua y caminos. Alguien se queda donde se vio por última vez. Con frío cada minuto cuenta.
site-unsafe-tips = Todos fuera, por el lado alto, y lejos a más de su altura. Ciérrelo, y acordone el lado hacia donde caería. Nadie en escalones, techo o gatos, nadie debajo. No lo nivele, no lo detenga ni lo apuntale a mano. Cables y mangueras: cierre en la fuente, no en el remolque. Luego llame a la oficina: una grúa lo endereza. Alguien herido: primero el número de emergencia.
site-unsafe-gives-way = Todos fuera ya, y lejos. Ciérrelo. Nadie en ese techo, debajo de él ni en ese piso. Nieve: nadie se sube ni palea desde una escalera. Llame a la oficina. Queda cerrado hasta que lo vea alguien que sepa de estructura. Alguien debajo: número de emergencia.
site-unsafe-steps-loose = Cierre esa puerta. Acordone los escalones: nadie los pisa, usted tampoco. Mande a la gente a la otra puerta. Nivele las patas, pasadores puestos, pasamanos firme. Luego pruebe sin gente. Doblados o rajados: no se usan.
site-unsafe-roof-ice = Acordone donde cae, a 10 ft (3 m) o más. Puertas y escalones de abajo quedan cerrados. Nadie se para debajo a tumbarlo, nadie en el techo. Tumbe carámbanos desde un lado, con un palo largo, lejos de cables. Golpeó a alguien: número de emergencia.
site-unsafe-flood = Todos fuera, a lo alto. Corte la corriente en la fuente solo si llega en seco. Si no, que nadie entre a esa agua: puede tener corriente. No camine ni maneje por agua que corre. Deje remolque y troca: flotan y ruedan. Alguien aislado por el agua: número de emergencia. Antes de usarlo otra vez: un electricista, y el agua limpia desinfectada.
site-unsafe-person-under = No mueva remolque ni troca, motor apagado. Nadie toca gatos, calzas ni enganche. Llámelos con la voz para que salgan. Atorado, herido o sin respuesta: llame al número de emergencia. No lo levante ni jale: eso lo hace rescate. Nadie más se mete. Antes de moverlo: mire debajo, todo alrededor.
site-icy = Hielo donde se pisa. Ponga arena y un tapete, y cierre esa puerta hasta que sea seguro. En escalones de aluminio: arena, o derretidor apto para aluminio, nada de sal de grano. Agárrese del pasamanos. Cierre el agua que hace el hielo.

site-set-up-next-level = siguiente: nivele de lado a lado. Luego calce los dos lados, desenganche y baje los gatos. Luego corriente, luego agua.
site-set-up-next-chock = siguiente: calce los dos lados antes de desenganchar. Luego desenganche, y nivele de frente con el gato de la lanza.
site-set-up-next-unhitch = siguiente: desenganche. Luego nivele de frente con el gato de la lanza. Los estabilizadores al final.
site-set-up-next-jacks = siguiente: baje los gatos. La afirman, no la levantan. Luego corriente.
site-set-up-next-power = siguiente: corriente. Alimente primero el circuito { $converter_circuit }: da luz y bombas. Luego lea los voltios.
site-set-up-next-power-generator = siguiente: corriente del generador. Alimente primero el circuito { $converter_circuit }: da luz y bombas. Luego lea los voltios.
site-set-up-next-volts = siguiente: lea los voltios en el remolque, con carga. Mande el número.
site-set-up-next-regulator = siguiente: el regulador, a { $regulator }. Este sitio da { $static }, límite { $limit }. Luego la manguera, y abra despacio.
site-set-up-next-water = siguiente: agua. Conecte, abra despacio, saque el aire, busque fugas. Mande la presión con todas las llaves cerradas.
site-set-up-next-water-hydrant = siguiente: agua del hidrante. Conecte, abra despacio, saque el aire, busque fugas. Mande la presión con todas las llaves cerradas.
site-set-up-next-power-off = siguiente: sin corriente hasta que la autoricen. Siga solo cuando lo diga un electricista.
site-set-up-next-heater-later = siguiente: que el voltaje quede bien. Luego calentador de tanque y compartimento prendidos, y lea sus amperes.
site-set-up-next-fill = siguiente: aquí no hay agua. Llene el tanque limpio, hasta { $fresh_gal }. Luego prenda la bomba y busque fugas.
site-set-up-next-fill-no-power = siguiente: aquí no hay agua ni corriente. Llene el tanque limpio, hasta { $fresh_gal }. Lea la batería. De ella viven luces y bombas.
site-set-up-next-pressure = siguiente: lea la presión del agua con todas las llaves cerradas. De { $least } a { $limit } está bien. Mande el número.
site-set-up-next-heater = siguiente: prenda calentador de tanque y compartimento, circuito { $circuit }. Lea sus amperes.
site-set-up-next-test = siguiente: baje cada taza, pruebe cada llave y chapa. El calentador de agua, ya con su tanque lleno. Luego las fotos.
site-set-up-next-photos = siguiente: fotos de cada cuarto, las conexiones, los escalones y el piso debajo. Luego avise que está en servicio.

## Towing

tow-waste-aboard = Alto. Aguas negras al { $level }. No la remolque. Primero vacíela.
tow-waste-aboard-unknown = Alto. Nadie dijo que el tanque de negras está vacío. Léalo. Vacíelo antes de remolcar.
tow-waste-aboard-ordered = Aguas negras al { $level }. Por orden de ellos se mueve así: a paso de persona, en suelo plano, solo hasta donde digan. Vacíela antes de seguir.
tow-waste-aboard-ordered-unknown = Nadie dijo que el tanque de negras está vacío. Por orden de ellos se mueve así: a paso de persona, en suelo plano, solo hasta donde digan. Ahí léalo, y vacíelo antes de seguir.
tow-fresh-aboard = Agua limpia al { $level }. Drénela antes de remolcar.
tow-fresh-aboard-unknown = Nadie dijo que el tanque limpio está vacío. Léalo. Drénelo antes de remolcar.
tow-not-ready = Aún sin reportar: { $missing }. Hágalo, o avise que está hecho. Luego gatos arriba, calzas al final, y pruebe luces y freno de seguridad (breakaway).
tow-not-ready-left = Salió sin reportar: { $missing }. Oríllese donde sea seguro y revise. Pruebe luces y freno de seguridad (breakaway).
tow-not-ready-rolling = Falta avisar: { $missing }. Si ya está: avise. Si no, pare donde sea seguro y revise. Pruebe luces y freno de seguridad (breakaway).
tow-not-ready-roll = Antes de salir: aún sin reportar: { $missing }. No está lista para remolcar. Si ya va en camino: oríllese donde sea seguro y revise. Pruebe luces y freno de seguridad (breakaway).
tow-not-ready-held = Todavía no salga: falta lo de la lista de abajo. Si ya va en camino: oríllese donde sea seguro y revise. Pruebe luces y freno de seguridad (breakaway).
tow-not-ready-gear = No la remolque: { $gear }. Si va en camino: oríllese donde sea seguro. Arréglelo, pruébelo y avise que ya quedó.
tow-overweight-ordered = Pesa demasiado para remolcar: { $gross }, límite { $gvwr }. Se pasa por { $over }. Por orden de ellos: solo hasta donde digan. Vacíe los dos tanques antes de seguir.
tow-overweight = Pesa demasiado para remolcar: { $gross }, límite { $gvwr }. Se pasa por { $over }. Primero vacíe los dos tanques.

## Crew

crew-late-check-in = Sin reporte hace { $silent }. Mande uno: tanque, presión, corriente.
crew-late-check-in-cold = Sin reporte hace { $silent } a { $air }. Revísela: amperes del calentador, agua corriendo, tanque, presión.
crew-person-hurt = Llame a emergencias. Diga dónde está y qué pasó. Quédese con la persona. No la mueva, salvo que ahí corra peligro.
crew-person-hurt-at = Llame a emergencias. Diga que está en { $address }, y qué pasó. Quédese con la persona. No la mueva, salvo que ahí corra peligro.

## Troubles: the first steps

trouble-burnt-smell = El olor a quemado puede ser un fuego que todavía nadie ve. Todos fuera y lejos. Llame a emergencias. Corte la corriente en la fuente si puede llegar sin peligro. No vuelva a entrar.
trouble-burnt-smell-at = El olor a quemado puede ser un fuego que todavía nadie ve. Todos fuera y lejos. Llame a emergencias. Diga que está en { $address }. Corte la corriente en la fuente si puede llegar sin peligro. No vuelva a entrar.
trouble-co-alarm = Todos fuera, del lado de donde viene el viento, al aire libre. Llame a emergencias. Apague el generador si puede sin peligro. Nadie vuelva a entrar. Una alarma que se calla no es permiso para entrar.
trouble-co-alarm-at = Todos fuera, del lado de donde viene el viento, al aire libre. Llame a emergencias. Diga que está en { $address }. Apague el generador si puede sin peligro. Nadie vuelva a entrar. Una alarma que se calla no es permiso para entrar.
trouble-fire = Todos fuera y lejos. Llame a emergencias. Corte la corriente en la fuente si puede llegar sin peligro. No vuelva a entrar.
trouble-fire-at = Todos fuera y lejos. Llame a emergencias. Diga que está en { $address }. Corte la corriente en la fuente si puede llegar sin peligro. No vuelva a entrar.
trouble-fire-road = Oríllese, lejos de gente, pasto seco y casas. Todos fuera, lejos del tráfico. Llame a emergencias. Desenganche solo si puede sin peligro, y cálcela primero. No vuelva a ella.
trouble-burnt-smell-road = Oríllese, lejos de gente, pasto seco y casas. Un olor a quemado puede ser fuego que nadie ve todavía. Todos fuera, lejos del tráfico. Llame a emergencias. No vuelva a ella.
trouble-runaway = Quite a todos de su camino y de la bajada. No trate de pararlo. En la calle, cerca de gente o cables: llame a emergencias. Ya quieto: cálcelo y corte la corriente en la fuente. Nadie entra.
trouble-runaway-at = Quite a todos de su camino y de la bajada. No trate de pararlo. En la calle, cerca de gente o cables: llame a emergencias. Diga que está en { $address }. Ya quieto: cálcelo y corte la corriente en la fuente. Nadie entra.
trouble-gas-illness = Todos fuera, del lado de donde viene el viento, al aire libre. Llame a emergencias. Apague el generador si puede sin peligro. Nadie vuelva a entrar.
trouble-gas-illness-at = Todos fuera, del lado de donde viene el viento, al aire libre. Llame a emergencias. Diga que está en { $address }. Apague el generador si puede sin peligro. Nadie vuelva a entrar.
trouble-person-trapped = Háblele. Si no contesta: llame a emergencias. Pruebe la ranura de la chapa con una moneda. Luego los pernos de la bisagra.
trouble-person-trapped-at = Háblele. Si no contesta: llame a emergencias. Diga que está en { $address }. Pruebe la ranura de la chapa con una moneda. Luego los pernos de la bisagra.
trouble-hot-plug = Deje de usar esa clavija. Corte la corriente en la fuente, luego desconéctela. No la use más. Cambie clavija y contacto.
trouble-cord-damaged = Corte la corriente en la fuente. Quite ese cable y use uno bueno. Que no toque agua ni lo pisen llantas.
trouble-low-flow = Sale poca agua. Casi siempre es el filtro de entrada, un doblez o una llanta sobre la manguera. Si es una sola llave: limpie su malla.
trouble-no-water = Casi siempre está cerrada la toma o la válvula del remolque, o está mal el selector. Si no, no hay presión, o no hay 12 V para la bomba.
trouble-no-water-tank = Usa el tanque. Casi siempre está vacío, o la bomba está apagada. Luego el fusible de la bomba: uno de igual valor, una sola vez.
trouble-no-water-freezing = Hiela: la manguera puede tener hielo. Lea la presión en el remolque. Cierre la toma y abra la llave más cercana. Deshiele la manguera con aire tibio desde la punta abierta.
trouble-no-lights = Un cuarto a oscuras: el sensor, luego el fusible de 12 V de ese cuarto. Cámbielo una vez, de igual valor. Los dos a oscuras: interruptor de batería, luego el circuito del convertidor.
trouble-fuse-blown = Cámbielo una vez, de igual valor. Si se quema otra vez: déjelo fuera, hay un corto.
trouble-no-power = Casi siempre está abajo el breaker del sitio, o floja una clavija. Si se botó un GFCI, repóngalo una vez. Si otros tampoco tienen: llame al sitio.
trouble-no-power-leave-off = Deje la corriente cortada. No reponga nada. Primero la ve un electricista.
trouble-breaker-trip = Apague cargas. Repóngalo una vez: abajo del todo, luego arriba. Si se bota al momento: déjelo abajo. Si se bota después: es demasiada carga.
trouble-breaker-trip-leave-off = Deje abajo ese breaker. No lo suba. Primero lo ve un electricista.
trouble-gfci-trip-leave-off = Deje ese GFCI abajo. No lo reponga. Primero lo ve un electricista.
trouble-gfci-trip = Desconecte todo lo que lleva y repóngalo. Si aguanta: conecte de uno en uno. El último es la falla. Busque una clavija mojada, sin corriente.
trouble-pump-running = Tanque limpio vacío: apague la bomba, en seco se quema. Si no, corre una taza o una llave, o hay fuga bajo el remolque. Cierre los baños uno por uno.
trouble-pump-dead = Sin luz tampoco: interruptor de batería y circuito del convertidor. Con luz: botón de la bomba, luego su fusible, una vez, de igual valor. Vea que haya agua limpia.
trouble-no-heat = Casi siempre es el circuito sin corriente, o el selector en aire: los dos nunca van juntos. Luego termostato y filtro. Con pocos voltios calienta poco.
trouble-no-heat-freezing = Hiela. Primero decida si drena: manguera, luego líneas de bomba y calentador, luego tanques. Luego vea el circuito de ese cuarto, el selector y el termostato. Lea los amperes.
trouble-no-cooling = Ventilador parado: circuito o termostato. Si zumba y para: apague el aire, lea los voltios, revise el cable. Espere 5 min antes de prender otra vez.
trouble-no-hot-water = Casi siempre le faltó tiempo, o su circuito está apagado. Si duda que su tanque esté lleno: apague el calentador.
trouble-leak = Agua sucia: trátela como derrame. Si hay agua cerca de corriente: primero corte la corriente. Cierre la toma y la bomba. Si para: es del lado de presión. Si sigue: tanque o drenaje.
trouble-frozen = Corte la corriente de lo mojado. Cierre la toma, abra la llave más cercana. Aire tibio desde la punta abierta. Luego llene despacio y busque grietas.
trouble-toilet-clog = Todas las tazas: tanque de negras lleno o línea principal. Cierre la unidad. Si es una: cierre ese baño. Guantes y careta, destapacaños, luego guía.
trouble-sink-clog = Póngase guantes. Limpie la malla y la trampa. Luego el destapacaños. Si todos van lentos: lea el tanque de negras.
trouble-toilet-running = Baje dos veces para limpiar el sello. Si sigue: cierre su llave de paso. Una válvula trabada vacía el agua limpia en una hora y llena las negras.
trouble-odor-left-alone = El olor, déjelo por ahora: ni coladeras ni ventilador, nadie entra.
trouble-odor = Eche un cuarto de galón de agua en cada coladera. Ventilador prendido, tapa del respiradero libre. Lea el tanque de negras. Luego revise válvula y tapón.
trouble-odor-gas = Olor a gas o combustible: todos fuera, al aire libre, del lado de donde viene el viento. Nada de flama ni cigarro. No toque interruptor, clavija ni breaker. Llame a emergencias desde afuera. Cierre el tanque de gas o el motor solo si llega sin peligro. Nadie vuelva a entrar hasta que ellos digan.
trouble-odor-gas-at = Olor a gas o combustible: todos fuera, al aire libre, del lado de donde viene el viento. Nada de flama ni cigarro. No toque interruptor, clavija ni breaker. Llame a emergencias desde afuera. Diga que está en { $address }. Cierre el tanque de gas o el motor solo si llega sin peligro. Nadie vuelva a entrar hasta que ellos digan.
trouble-fan-dead = ¿Hay luz en ese cuarto? Revise el fusible del ventilador. Cámbielo una vez, de igual valor.
trouble-lock-jam = Primero hable: puede haber alguien adentro. Luego pruebe la ranura con una moneda, luego los pernos de la bisagra.
trouble-no-sound = ¿Tiene corriente y volumen? Revise clavija y fusible. Puede esperar.
trouble-out-of-supplies = Surta: papel, jabón, toallas. Si no hay en la camioneta: ¿quién trae y a qué hora?
trouble-damage = Primero hágalo seguro. Aleje a la gente, ponga cinta. Mande fotos. No la remolque hasta que alguien la revise.
trouble-tire = No la remolque así. En camino: oríllese donde sea seguro. Calce antes de subir el gato. Cámbiela, y revise las demás.

## Cautions, one for each hazard

again-fire = ¿Todos siguen fuera y lejos? Nadie vuelva a entrar. ¿Ya llamó a emergencias?
again-gas-illness = ¿Siguen fuera, al aire libre? Nadie vuelva a entrar. ¿Ya llamó a emergencias?
again-gas-smell = ¿Siguen fuera? Nadie entre hasta que esté ventilado y autorizado. Sin flama ni interruptores. Llame desde afuera.
again-shock = ¿Sigue cortada la corriente en la fuente? Nadie toque metal, escalones ni agua. Nunca vuelva a prender para probar.
again-person-hurt = ¿Ya llamó a emergencias? Quédese con la persona. No la mueva, salvo que ahí corra peligro.
again-person-trapped = Siga hablándole. Si no contesta: llame a emergencias.
again-runaway = Todos fuera de su camino. No trate de pararlo. Si hay heridos: llame a emergencias. Ya quieto: cálcelo de los dos lados y mande "calzada".
again-not-chocked = ¿Ya calzados los dos lados? Antes nadie desengancha, se para atrás ni se mete abajo.
again-unsafe = Como dije: primero haga eso seguro. Gente lejos, y que quede apagado.
again-spill = ¿Unidad cerrada, gente lejos, coladeras tapadas? Guantes, botas y careta. Nada a una coladera.
again-hot-plug = ¿Sigue cortada la corriente en la fuente? No use más esa clavija. Puede causar un incendio.
again-cord-damaged = ¿Sigue cortada la corriente en la fuente? No use ni encinte ese cable.
again-waste-aboard = No la remolque todavía. Primero vacíe el tanque de negras, y avise.
caution-burst-hose = Hágase a un lado al abrir el agua. Una manguera o pieza que revienta da latigazos.
caution-bleed-first = Cierre la toma y saque la presión por un lavabo antes de abrir cualquier pieza.
caution-keep-regulator = No quite el regulador para ganar presión. Nunca lo puentee arriba de 80 psi (5.5 bar).
caution-backflow = Deje la válvula rompevacío en la toma. Nunca deje una punta de manguera dentro de un líquido.
caution-hydrant-permission = Use un hidrante solo con permiso de la compañía de agua, con su medidor y su válvula contra retroceso.
caution-not-drinking = Use manguera para agua potable, con tapón, nunca la de negras. Rotule el agua del tanque "no potable".
caution-kill-power-at-source = Corte la corriente en la fuente, con manos secas. No se acerque a metal ni agua. Por la piel mojada pasa corriente que puede matar.
caution-electrician = El código local y un electricista con licencia deciden antes de volver a prender.
caution-plumber = En un muro o en la línea principal deciden el código local y un plomero con licencia.
caution-open-neutral = Una fase puede llegar a 200 V. No conecte ni prenda nada hasta que un electricista lo autorice.
caution-hot-plug = Una clavija caliente o quemada puede causar un incendio. Deje de usarla.
caution-no-bypass = Nunca puentee un GFCI. Nada de adaptadores sin tierra. Nunca corte la pata de tierra.
caution-same-fuse = Nunca un fusible mayor, papel metálico ni alambre. Si se quema otra vez hay un corto: déjelo fuera.
caution-compressor-low-volts = El bajo voltaje quema un compresor. Déjelo apagado hasta tener buen voltaje.
caution-carbon-monoxide = El escape del motor mata y no huele. Generador a 20 ft (6 m) o más de puertas, ventanas y respiraderos. Nunca adentro, en una carpa ni bajo el remolque. Dolor de cabeza, mareo o náusea: todos fuera, llame a emergencias.
caution-generator-handling = Cargue combustible con el motor apagado y frío. Deje su tierra como viene de fábrica. Nada de adaptadores que unan dos contactos.
caution-battery-gas = Una batería en carga suelta gas que explota. Sin chispas ni flama. Quítese anillos. Desconecte antes de usar llaves.
caution-battery-freeze = Una batería vacía se congela y se puede partir. Cárguela o métala.
caution-no-flame = Nunca deshiele con flama. Nada de pistola de calor en plástico ni cerca de gas de negras. Aire o toallas tibias, primero abra la llave.
caution-heat-tape = Cinta térmica solo si está aprobada para esa manguera, en un GFCI. No la encime, salvo que esté hecha para eso. Decide el código local.
caution-heater-dry = Apague el calentador de agua antes de drenarlo, y hasta que su tanque esté lleno. En seco se quema.
caution-antifreeze = Solo anticongelante rosa (propilenglicol). Nunca el de auto en ninguna línea ni en el tanque de negras. Es tóxico. Sople a 40 o 50 psi (3 bar) como máximo.
caution-ice-split = El hielo pudo partir un tubo. Llene despacio y vigile 10 min.
caution-ice-plug = Hielo en la salida de negras: no quite el tapón. Se suelta de golpe. Si la salida está helada y el tanque pasa de la mitad: cierre la unidad.
caution-frostbite = Piel blanca o sin sentir: entre y caliéntela despacio. No la frote. Nadie trabaje solo.
caution-heat-stroke = Si alguien se confunde o cae por el calor: llame a emergencias y enfríelo de inmediato.
caution-sewage-hygiene = Guantes, botas y careta. Nada de piel al aire. No coma ni beba. Lávese después.
caution-sewage-discharge = Las aguas negras en una coladera o arroyo se deben reportar, muchas veces de inmediato. Deciden las reglas del estado. Anote hora, galones, causa y a quién avisó.
caution-bleach = Nunca mezcle cloro con ácido ni amoniaco, y la orina tiene amoniaco. Deje entrar aire.
caution-tank-gas = El gas del tanque puede matar, y si es fuerte quita el olfato. Olor a huevo podrido o dolor de cabeza: todos fuera, del lado de donde viene el viento. No fume, sin flama.
caution-no-entry = Nunca meta la cabeza a un tanque. Nunca entre por alguien que cayó. Llame a rescate.
caution-tow-empty = Nunca remolque con líquido a bordo. Se mece, y puede pasar el límite de ejes y frenos. Moverla en el sitio con negras a bordo lo decide el despachador, o los bomberos y la policía. Entonces a paso de persona, en suelo plano, nunca en vía pública.
caution-roll-away = Puede rodar. Calce los dos lados antes de desenganchar. No se ponga en su camino.
caution-under-load = Nunca abajo de un remolque que solo un gato sostiene. Si alguien quedó abajo: no lo levante ni lo mueva. Eso es del rescate.
caution-first-aid = Si sangra mucho: apriete fuerte. Ojos salpicados: enjuague con agua limpia 15 min. Si no respira: empiece a presionar el pecho.
caution-stabilizers = Los estabilizadores la afirman. No la levantan. En suelo blando ponga placas anchas.
caution-scald = El agua caliente quema. Si la válvula de alivio escupe: corte la corriente, hágase a un lado, llame a un plomero con licencia.
caution-slip = Piso mojado o con hielo: ponga arena y un cono.
caution-no-fuel-heater = Ningún calentador de combustible adentro. Puede quemar el lugar y su gas mata.
caution-roof-fall = No suba al techo con viento o mojado. Corte la corriente antes de abrir una tapa.
caution-pump-dry = Una bomba en seco se quema. Apáguela cuando el tanque esté vacío.
caution-overhead = Vea arriba y alrededor antes de echarse en reversa: cables, ramas, tapa séptica, riego, orilla blanda. Que alguien lo guíe.
caution-emergency-call = Si hay herida, quemadura o mareo, o no contesta: llame a emergencias. No cuelgue.
caution-local-code = Deciden el código local y un electricista con licencia. Esto es un consejo.
caution-night-pressure = La presión de noche puede ser mayor que la de día.
caution-pressure-code = Arriba de 80 psi (5.5 bar) el regulador es ley, no gusto. Deciden el código local y un plomero con licencia.
caution-air-gap = Deje la punta de la manguera arriba de la entrada del tanque: dos veces su ancho. Al menos 1 in (25 mm).
caution-fire-electric = Nada de agua en un fuego cerca de corriente. Ataque uno chico solo con salida a sus espaldas.
caution-fuel-gas = Una chispa puede encender gas o vapor de combustible. El código local y un gasero con licencia deciden antes de volver a usarlo.
caution-cord-no-tape = No encinte ni repare un cable. Cámbielo. Que los cables no toquen agua ni los pisen llantas.
caution-two-resets = Repóngalo dos veces como máximo. Luego déjelo abajo.
caution-leak-near-power = Agua cerca de corriente: primero corte la corriente, luego toque.
caution-drain-cleaner = Ni ácido ni sosa: salpican, y con cloro hacen gas. Nada de agua a presión por la línea.
caution-breakaway = Pruebe frenos y freno de seguridad (breakaway) en cada enganche. Cadenas cruzadas, pernos con seguro, cada luz prendida.
caution-road-law = Frenos, freno de seguridad, cadenas y luces son ley en el camino. Las reglas federales y del estado deciden qué puede rodar.

## Formulas, in words

formula-reading-over-limit = la lectura contra el límite: lo pasa
formula-reading-under-limit = la lectura contra el límite: no llega
formula-reported = alguien en el sitio lo reportó
formula-unexplained-loss = esperada = estática menos lo que quitan manguera, piezas y subida a ese flujo; sin explicar = esperada menos la lectura
formula-fall = la lectura de antes menos la de ahora
formula-hose-flow = el flujo que deja 20 psi tras manguera y piezas; contra lo que piden tazas y llaves en 99 de 100 momentos del pico
formula-fresh-hours = galones que quedan ÷ (usos por hora × galones por uso)
formula-book-pump-out = tiempo para pedir = (nivel de paro menos nivel) ÷ subida por hora; menos el aviso del camión y una hora de reserva
formula-gauge = el medidor contra lo que entró desde entonces, según la gente
formula-freeze = cuánto tarda el agua quieta de 50 °F (10 °C) a congelación, por manguera y aire; tapada a un cuarto del camino a hielo sólido
formula-heater-hold = calor que pierde la piel del tanque con este frío y viento, con el tanque a la mitad
formula-heater-dead = se reportó prendido, pero su circuito no lleva nada
formula-no-package = sin equipo de frío; el aire contra el límite
formula-wind-chill = sensación por aire y viento; actúa en la piel, no en los tanques
formula-heat-index = índice de calor por aire y humedad
formula-shock = un toque dice que se perdió la tierra; por piel mojada a 120 V pasa corriente que mata
formula-open-neutral = con el neutro perdido dos fases se reparten 240 V según sus cargas: una sube, la otra baja
formula-continuous = una carga de tres horas o más puede llevar el 80 % del breaker
formula-shared-circuit = la lectura del circuito contra el 80 % de su breaker
formula-volts-fall = (voltios sin carga menos voltios con carga) ÷ voltios sin carga
formula-cord-drop = voltios perdidos = 2 × largo × amperes × ohms por pie; como parte de 120 V
formula-services = un circuito por cada aire y uno para el calentador de agua; uno más para el equipo de frío a 40 °F (4 °C) o menos
formula-battery-hours = horas hasta media carga con la carga que dan estos usos (Peukert)
formula-charge = carga por los voltios en reposo: 12.65 llena, 12.24 media, 11.89 vacía
formula-generator = (todos los watts en marcha + el mayor extra de arranque) ÷ lo que altura y calor dejan de su capacidad
formula-queue = parte ocupada = personas por hora en el pico × tiempo por uso ÷ baños
formula-slope = cuánto desnivel, contra el límite
formula-set-up = el orden de montaje, menos lo que ya se reportó
formula-tow-empty = más de 5 % a bordo, o nadie dijo desde el último invitado
formula-tow-gear = una falla de enganche, frenos, cadenas o luces, sin aviso de que ya quedó
formula-leaving = el orden de salida, menos lo que ya se reportó
formula-gross-weight = peso vacío + galones a bordo × 8.34 lb, contra el límite
formula-silence = horas desde el último reporte, contra el límite

## Names of the facts

fact-name = nombre
fact-near = parecidas
fact-value = número
fact-what = tanque
fact-order = orden
fact-pressure = presión
fact-limit = límite
fact-regulator = regulador a
fact-code-limit = límite del código
fact-needed = hace falta en el remolque
fact-static = presión con llaves cerradas
fact-hose = largo de manguera
fact-bore = diámetro de manguera
fact-flow = flujo
fact-expected = esperada
fact-unexplained = pérdida sin explicar
fact-before = antes
fact-fall = baja
fact-fall-limit = baja que cuenta
fact-given = flujo que da la manguera
fact-wanted = flujo que pide en hora pico
fact-fresh = agua limpia
fact-fresh-warn = agua limpia, avisar al
fact-fresh-act = agua limpia, actuar al
fact-uses = usos por hora
fact-per-use = agua por uso
fact-fresh-hours = el agua limpia dura
fact-fresh-at = agua limpia baja desde
fact-level = nivel
fact-stop-level = nivel de paro
fact-lead = aviso del camión
fact-in-hand = de reserva
fact-here = llamado ahora, el camión está en sitio
fact-rate = subida con público
fact-book-in = tiempo que queda para pedir
fact-p10 = una de diez veces antes de
fact-p50 = igual de fácil antes que después de
fact-p90 = nueve de diez veces antes de
fact-unit-level = la unidad cierra al
fact-after-pump-out = lo más que debe marcar tras un vaciado
fact-pumped-at = vaciada
fact-air = aire afuera
fact-air-at = aire leído por última vez
fact-off = sin corriente por
fact-air-from = aire tomado de la
fact-low = mínima prevista
fact-wind = viento
fact-freezing = congelación
fact-water = el agua empieza a
fact-hose-min = manguera a congelación en
fact-block-min = manguera tapada quizá en
fact-tank-hours = tanque limpio a congelación en
fact-circuit = circuito
fact-amps = corriente
fact-heater = calentador del tanque
fact-heater-needed = calor que hace falta
fact-chill = sensación de frío
fact-humidity = humedad
fact-heat-index = índice de calor
fact-volts = voltios
fact-high = fase alta
fact-low-leg = línea baja
fact-breaker = breaker
fact-continuous = por horas, como máximo
fact-since = desde
fact-until = hasta
fact-together = sus cargas juntas
fact-cord = largo del cable
fact-gauge = calibre del cable
fact-lost = voltios perdidos
fact-drop = pérdida
fact-volts-expected = voltios que quedan
fact-drop-limit = pérdida que se avisa
fact-cord-amps = capacidad del cable
fact-cords = cables
fact-cords-needed = circuitos que hacen falta
fact-feed = circuitos que alimentar
fact-left-out = no andarán
fact-circuits = circuitos
fact-converter-circuit = circuito del convertidor
fact-battery-ah = batería
fact-charge = carga
fact-load = consumo
fact-battery-hours = la batería dura
fact-generator-w = generador
fact-running-w = en marcha
fact-needed-w = capacidad que hace falta
fact-altitude = altura sobre el mar
fact-guests = invitados aquí
fact-peak = pico sobre la media
fact-use-time = tiempo por uso
fact-stalls = baños
fact-stalls-out = baños fuera
fact-busy = parte ocupada
fact-busy-limit = límite de parte ocupada
fact-wait = espera media
fact-slope = desnivel
fact-next = paso que sigue
fact-then = después
fact-least = presión mínima
fact-fresh-gal = al tanque limpio le caben
fact-missing = sin reportar
fact-gear = no apto para el camino
fact-empty = peso vacío
fact-liquid = líquido a bordo
fact-gvwr = peso máximo
fact-gross = peso como está
fact-over = se pasa por
fact-last-word = último reporte
fact-silent = sin reporte hace
fact-silence-limit = tarde desde
fact-address = dirección para emergencias

## Words that facts hold

value-level = nivelar
value-chock = calzar
value-unhitch = desenganchar
value-jacks = gatos
value-power = corriente
value-volts = voltios
value-regulator = regulador
value-water = agua
value-fill = llenar
value-pressure = presión
value-heater = calentador
value-test = prueba
value-closed = cerrada
value-water-off = agua cerrada
value-heater-off = calentador apagado
value-power-off = corriente cortada
value-stowed = todo guardado
value-jacks-up = gatos arriba
value-lights-checked = luces revisadas

### Guided checks

## Frame

walk-step = { $unit }, { $name }, paso { $count }: { $what }
walk-answer-word = Sí, no u omite.
walk-answer-number = Mande el número, u omite.
walk-answer-safe = Sí o no.
walk-mended-now = { $what }: { $words }
walk-not = Entonces no es { $what }.
walk-read-then = Leído hace { $age }: { $what }.
walk-paused = Eso lo pregunté hace { $age }. Lo pregunto otra vez antes de contarlo.
walk-left-safe = Entonces déjelo apagado y cerrado, y aleje a la gente. Alguien tiene que verlo primero.
walk-none = No hay revisión abierta. Mande la unidad y qué falla: 12 sin luces.
course-flicker = luces que parpadean
walk-lately = Hecho hace { $age }, no lo pregunto otra vez: { $what }.
walk-repaired = Hace poco en la { $unit }: { $what }.
walk-repaired-then = { $what } hace { $age }
walk-was-mended = { $name }, arreglado
walk-fixed = Bien. Con eso termina la revisión de la { $unit }: { $name }.
walk-tank-empty = El tanque de la { $unit } está vacío: de ahí no sale nada. Selector en tanque: póngalo en la red. Si en la toma tampoco hay: llene el tanque, con la bomba apagada hasta entonces.
walk-fixed-danger = Con eso termina la revisión de la { $unit }: { $name }. Pero ahí sigue este peligro: { $what }. Con eso no acaba. Nadie se acerca hasta que lo libere quien puede.
walk-reset = Reposición anotada. Si se bota otra vez, avíseme.
walk-skipped = Lo tomo como hecho hasta aquí.
walk-no-more = Esa fue la última revisión.
walk-left-off = { $unit }: déjelo abajo. Que ahora aguante no prueba nada. Primero lo ve un electricista con licencia.
walk-reset-again = { $unit }: ya no lo reponga. Bájelo, desconecte lo que cuelga de él y déjelo abajo. Primero lo ve un electricista con licencia.
walk-two-resets = Ya van dos reposiciones. Ni una más.
walk-reset-once = Con una reposición basta. Se botó otra vez, así que se queda apagado.
walk-calls-electrician = { $unit }: pare aquí. El código local y un electricista con licencia siguen desde aquí.
walk-calls-plumber = { $unit }: pare aquí. El código local y un plomero con licencia siguen desde aquí.
walk-calls-repair = { $unit }: pare aquí. Necesita reparación.
walk-emergency-at = Diga que está en { $site }.
walk-unread = No pude leer eso como respuesta.
walk-waits = Sigue pendiente en la { $unit }: { $name }, paso { $count }. "sigue" para continuar.
walk-back = De vuelta a la { $unit }: { $name }.
trouble-trips-again = Se repuso dos veces y se bota otra vez. Déjelo apagado. Desconecte lo que lleva.
walk-dropped = Revisión de la { $unit } dejada: { $name }. El reporte sigue.
walk-taken-over = La revisión de la { $unit } ya es suya: { $name }.
walk-handed-over = { $who } sigue con la revisión de la { $unit }: { $name }.
walk-why = Este paso muestra si es { $what }.
walk-tripped = Disparo anotado. Déjelo abajo hasta que el paso lo diga.
walk-not-there = Usted no está en la unidad. Pregunte a quien está ahí. Mande lo que diga, con palabras.
walk-culprit = Entonces la falla es { $what }. Déjelo apagado. No lo vuelva a conectar. { $unit }: el código local y un electricista con licencia siguen desde aquí.
walk-culprit-note = { $what } sigue apagado, bota. Primero el electricista
walk-culprit-stays-off = { $unit }: { $what } sigue apagado, bota su circuito. Sin él, drene lo que se pueda congelar.
load-ac = el clima
load-converter = el convertidor
load-heat-tape = la cinta térmica
load-heater = el calentador
load-lights = el circuito de luces
load-pump = la bomba
load-water-heater = el calentador de agua

## Cards, notes, overrides, orders

card-gate = Clave del portón: { $what }
card-contact = Pregunte por: { $what }
card-stand = Lugar: { $what }
card-septic-lid = Tapa de la fosa: { $what }
card-notes = Sitio: { $what }
card-none = { $unit }: la oficina no apuntó nada de su sitio. Pregunte al despachador.
card-address = Dirección para emergencias: { $what }
card-call = Si alguien corre peligro: primero emergencias.
card-dispatcher = Lo demás: { $who }, despachador.
card-silent = La ficha de { $site } no lo dice. Pregunte al despachador.
chocks-sure = ¿Ya están calzados los dos lados? Entonces mande "calzada".
round-then = Luego, en la { $unit }: { $what }
card-no-job = La { $unit } no tiene trabajo ahora: no hay ficha. Pregunte al despachador.
left-anyway = { $signal } { $unit }: { $who } sale con esto pendiente: { $what }. Llámele: que pare donde sea seguro.
card-not-today = El código de la puerta sale el día del trabajo. Si lo necesita ya, pídalo al despachador.
card-not-crew = El código de la puerta es para la cuadrilla de este trabajo. Pídalo al despachador.
note-stands = Nota de la { $unit } ({ $who }, { $time }): { $quote }
note-none = No hay notas de la { $unit }.
note-cleared = Notas de la { $unit } borradas.
note-how = Mande "apunta", la unidad y sus palabras: apunta 14 golpee el medidor. "apunta 14 borra" las quita.
override-cautions = Los cuidados siguen. A paso de hombre, en plano, sin vía pública.
override-stands = Permiso para la { $unit } de { $who }, { $time }: { $quote }. Los cuidados siguen.
override-ordered = Orden de bomberos o policía para la { $unit }, según { $who }, { $time }: { $quote }.
order-obey = Obedezca a bomberos y policía. Dígame qué unidad, para anotarlo.
order-obey-unit = Obedezca a bomberos y policía. Su orden para la { $unit } queda anotada. La gente primero. Si se mueve: a paso de hombre, con cadenas, y pare en el primer lugar seguro.
order-first = Primero obedezca la orden. El consejo vale en cuanto le dejen.
order-told = { $unit }: orden de bomberos o policía, la avisa { $who }: { $quote }. Obedézcala, y llame a { $who }.
order-lifted = La orden de bomberos o policía en la { $unit } ya no está: { $quote }.
order-lifted-told = { $unit }: { $who } dice que bomberos o policía levantaron su orden: { $quote }.
order-stands = Sigue una orden de bomberos o policía en la { $unit }: { $quote }. Ciérrela de nuevo, salvo que la hayan levantado. Entonces mande "levantaron la orden de la { $unit }".
order-stands-told = { $who } abrió la { $unit } contra una orden de bomberos o policía: { $quote }. Háblele.

## Setting up and leaving

set-up-answer = Conteste "listo", el número u "omite".
set-up-open-now = Todo listo en la { $unit }. Mande "{ $unit } en servicio" cuando pueda entrar la gente.
set-up-not-skipped = Este paso cuida a la gente. No se puede saltar.
round-dropped = Pasos de la { $unit } dejados. Los reportes siguen.
round-undone = También quedan dejados los pasos de la { $unit }.
leave-step = { $unit }, salida, { $count } por hacer: { $what }
leave-open = Falta en la { $unit } antes de salir: { $what }.
leave-held = No anoté la salida de la { $unit }. Si ya va en camino: mande "{ $unit } en carretera". Solo un despachador puede dejarla ir así.
leave-closed = ¿Está cerrada a la gente?
leave-waste = ¿Vació el tanque de aguas negras? Mande el nivel.
leave-fresh = ¿Vació el tanque de agua limpia? Mande el nivel.
leave-water-off = ¿Cerró el agua, con la manguera vacía y guardada?
leave-heater-off = ¿Están apagados los calentadores?
leave-power-off = ¿Cortó la luz, con los cables guardados?
leave-stowed = ¿Todo guardado: escalones, rampas, toldos, puertas con seguro?
leave-jacks-up = ¿Enganchado, cadenas cruzadas, gatos arriba?
leave-chocks = ¿Quitó las calzas, lo último en el suelo?
leave-lights-checked = ¿Prenden todas las luces de remolque?
leave-breakaway = Freno de emergencia: ¿batería buena, perno fuera, frenos agarran?
leave-breakaway-fault = Avisaron que falla el freno de seguridad. ¿Ya se arregló y se probó?
leave-brake-fault = Avisaron que fallan los frenos del remolque. ¿Ya se arreglaron y se probaron?
leave-coupler-fault = Avisaron que falla el enganche o su perno. ¿Ya quedó, cerrado y con perno?
leave-chain-fault = Avisaron que fallan las cadenas. ¿Ya están las dos, cruzadas y con seguro?
leave-tow-lights-fault = Avisaron de una luz de remolque apagada. ¿Ya prenden todas?
leave-jack-fault = Avisaron de un gato atorado. ¿Ya quedó libre y arriba?
leave-tire = Avisaron de una llanta mala. ¿Ya se cambió y se revisaron las otras?
leave-do-it = Hágalo primero. No está listo para remolcar.
leave-which-tank = ¿En cuál tanque queda? Mándelo como "{ $unit } negras 1/4" o "{ $unit } limpia 1/4". Con cualquiera no está lista para remolcar.
leave-hauled = Negras vacías en la { $unit }: lo tomo como vaciado. ¿Quién se las llevó, y cuántos galones? Mándelo como "{ $unit } vaciada 380 gal".
leave-by-word = De la { $unit } nadie avisó: { $what }. Ya está: avise. Si no, pare donde sea seguro y hágalo.
leave-truck = El camión para la { $unit } sigue pedido: tarea { $id }. ¿Lo cancela? Mande "quita { $id }" con la razón, o dígale a dónde ir.
leave-ready = La { $unit } está lista para remolcar, según lo que me dijo. Revise los birlos a las 50 millas (80 km).
leave-not-ready = La { $unit } no está lista para remolcar. Falta: { $what }.
value-waste = tanque de aguas negras
value-fresh = tanque de agua limpia
value-chocks = calzas
value-breakaway = freno de seguridad (breakaway)
confirmed-chocks = Anotado en la { $unit }: calzas quitadas.
confirmed-breakaway = Anotado en la { $unit }: freno de seguridad (breakaway) probado.
value-coupler-fault = falla del enganche o su perno
value-chain-fault = falla de cadenas de seguridad
value-brake-fault = falla de frenos del remolque
value-breakaway-fault = falla del freno de seguridad (breakaway)
value-tow-lights-fault = luz de remolque apagada
value-jack-fault = gato atorado
value-tire = llanta con problema

## Plugging in

plug-volts = Espere unos { $value } en el remolque con carga ({ $what }).
plug-volts-low = Leyó { $read } y se esperan { $value } ({ $what }). Corte la corriente y toque cada clavija por calor. Luego avise al sitio.
plug-volts-good = Leyó { $read }, con unos { $value } de esperar con carga ({ $what }).
plug-generator = Un generador para estos circuitos: { $value } o más ({ $what }).
plug-taken = { $value } supuestos
plug-water-from = La tarjeta de { $site } dice que no hay agua. ¿De dónde viene? Mande "nota { $unit }" y sus palabras.

## Steps

step-power-off-source = ¿Está cortada la corriente en su origen: breakers del sitio abajo o cables quitados allá?
step-person-hurt = ¿Hay alguien herido, quemado, mareado o que salió lanzado?
step-unit-closed = ¿Ya cerró la unidad, sin gente cerca, y lo sabe el sitio?
step-other-room = ¿Prende bien la luz del otro cuarto?
step-motion-switch = Pruebe el sensor, el apagador y el reloj. ¿Ya hay luz?
step-one-lamp = ¿Es un solo foco, negro, roto o flojo en su base?
step-mains-flicker = ¿También parpadean luces o aparatos de 120 V, o suben de golpe?
step-ground-screw = Primero apague el interruptor de batería. Apriete el tornillo de tierra y las terminales, y préndalo. ¿Ya no parpadea?
step-lamp-socket = Apague las luces. Limpie la base del foco, asiéntelo y prenda. ¿Ya no parpadea?
step-room-fuse = Cambie ese fusible de 12 V una vez, del mismo valor. ¿Ya funciona?
step-fuse-again = ¿También se fundió el fusible nuevo?
step-connector = Revise el conector y el tornillo de tierra. ¿Ya hay luz?
step-others-dark = ¿También están sin luz otros en el sitio?
step-site-breaker = ¿Está arriba el breaker del sitio?
step-cord-seated = ¿Está cada cable bien metido, clavija por clavija?
step-site-gfci = Reponga una vez el GFCI del sitio. ¿Volvió la luz?
step-outlet-volts = Mida los voltios en el contacto.
step-battery-switch = ¿Está prendido el corte de la batería?
step-battery-volts = Mida los voltios de la batería en reposo.
step-main-fuse = ¿Está sano el fusible principal de 12 V en la batería?
step-converter-circuit = ¿Tiene corriente el circuito del convertidor? Mida sus voltios si puede.
step-converter-hum = ¿Zumba el convertidor, y están sanos sus fusibles?
step-terminals = Primero desconecte. Limpie y apriete los bornes, sin chispas. ¿Ya funciona?
step-unplug-all = Desconecte todo y repóngalo una vez. ¿Aguanta?
step-wet-plug = Con la corriente cortada: ¿hay una clavija mojada o en el suelo?
step-two-cords-one-gfci = ¿Hay dos cables en un mismo GFCI?
step-plug-back = Conecte los circuitos uno por uno. ¿Alguno lo bota?
step-holds-now = Repóngalo una vez más, y no más. ¿Aguanta?
step-trips-at-once = Cargas apagadas. Repóngalo una vez: todo abajo y luego arriba. ¿Se bota al instante?
step-add-amps = Sume los amperes que lleva.
step-on-start = ¿Se bota cuando arranca un aire?
step-after-hours = ¿Se bota después de unas horas?
step-shared-breaker = ¿Se bota solo el interruptor del sitio, con otros conectados?
step-supply-open = ¿Están abiertas la llave del sitio y la válvula del remolque?
step-static-pressure = Cierre todas las llaves y mida la presión en el remolque.
step-water-selector = ¿Está bien el selector: red con manguera, tanque sin ella?
step-fresh-level = ¿Cuánta agua limpia hay en el tanque?
step-lights-work = ¿Prenden las luces de 12 V?
step-pump-fuse = ¿Bomba prendida? Cambie su fusible una vez, del mismo valor. ¿Ya funciona?
step-pump-runs-no-flow = ¿Trabaja la bomba y aun así no sale agua?
step-inlet-filter = Cierre la llave y saque la presión. Limpie el filtro de entrada. ¿Ya sale bien?
step-hose-kink = Revise la manguera: ¿doblada, aplastada, un carro encima?
step-hose-size = ¿La manguera es de menos de 3/4 in, o pasa de 100 ft (30 m)?
step-regulator-setting = ¿El regulador da de 40 a 50 psi (3 bar), con la malla limpia?
step-one-fixture = ¿Sale débil una sola llave?
step-second-pump = ¿Trabajan las dos bombas?
step-fresh-empty = ¿Está vacío el tanque de agua limpia?
step-running-fixture = Oiga cada baño y lavabo. ¿Alguno se quedó corriendo?
step-leak-under = Mire debajo y en el compartimiento. ¿Hay una fuga?
step-tank-rising = Con agua del sitio: ¿se llena solo el tanque de agua limpia?
step-pump-cycles = Todo cerrado: ¿la bomba todavía arranca sola?
step-suction-air = ¿Están apretadas las uniones antes de la bomba, sin aire?
step-heater-full = ¿Da agua sin aire la llave caliente? Si duda, corte el calentador.
step-how-long = ¿Lleva más de una hora lleno y con corriente?
step-heater-circuit = ¿Tiene corriente el circuito del calentador, con su breaker arriba?
step-heater-switch = ¿Está prendido el botón del calentador?
step-high-limit = Corte la corriente, deje enfriar, oprima una vez el botón de límite. ¿Ya calienta?
step-heater-amps = Mida los amperes del calentador.
step-bypass-valves = ¿Están las válvulas de paso en verano y no en invierno?
step-clean-water = ¿Es agua limpia y no negra?
step-leak-power = ¿Está cortada la corriente cerca del agua?
step-shut-supply = Cierre el agua y apague la bomba. ¿Se detiene la fuga?
step-washer = Empaque de la manguera y uniones apretadas a mano. ¿Ya paró?
step-frozen-last-night = ¿Heló anoche?
step-power-off-wet = ¿Está cortada la corriente en todo lo mojado?
step-outlet-clear = ¿Está sin hielo la salida de aguas negras?
step-open-tap = ¿Cerró el agua y abrió la llave más cercana?
step-warm-air = Aire tibio o toallas desde la punta abierta, de 30 a 60 min. ¿Ya se deshizo el hielo?
step-splits = Llene despacio y mire 10 min. ¿Hay una raja o un goteo?
step-flows-again = ¿Ya corre el agua otra vez?
step-circuit-live = ¿Tiene corriente el circuito de ese cuarto?
step-selector = ¿Está el selector en calor, con el aire apagado?
step-thermostat = ¿Está bien puesto el termostato, con pilas buenas?
step-heat-filter = Limpie el filtro y la rejilla. Deje enfriar y reponga una vez. ¿Ya calienta?
step-volts = Mida los voltios en el remolque.
step-doors-shut = ¿Se quedan cerradas las puertas?
step-heat-amps = Mida los amperes de ese circuito, con el calor prendido.
step-fan-runs = ¿Gira el ventilador?
step-compressor-hums = ¿Zumba el compresor y luego se para o se bota?
step-cooling-filter = Limpie el filtro. Con hielo: solo ventilador hasta que se quite. ¿Ya enfría?
step-two-ac = ¿Hay dos aires en un mismo cable?
step-air-difference = ¿Cuántos °F más frío sale el aire que como entra?
step-strong-smell = ¿Es fuerte, se fue de golpe, o a alguien le duele la cabeza?
step-trap = Eche un cuarto de galón (1 l) de agua en cada coladera. ¿Ya mejoró?
step-vent-fan = ¿Está prendido el extractor, y libre su tapa?
step-waste-level = ¿Qué tan lleno va el tanque de aguas negras?
step-flapper = ¿Retiene agua cada taza?
step-valve-cap = ¿Está seca la válvula de negras, con su tapa?
step-deodorizer = Ponga desodorante al tanque. ¿Ya mejoró?
step-one-toilet = ¿Es una sola taza?
step-plunger = Con guantes y careta. Bomba de mano, luego sonda. ¿Ya se destapó?
step-pyramid = Llénelo de agua, deje remojar y sondee suave. ¿Ya se destapó?
step-flush-twice = Jale dos veces para limpiar el sello. ¿Ya paró?
step-clean-seal = Limpie el sello de la válvula. ¿Ya paró?
step-close-stop = Cierre la llave de esa taza y el baño. ¿Ya paró?
step-anyone-inside = Hable por la puerta. ¿Hay alguien adentro?
step-they-answer = Hábleles. ¿Contestan?
step-coin-slot = Pruebe una moneda en la ranura del seguro. ¿Ya abrió?
step-hinge-pins = Saque los pernos de las bisagras. ¿Ya abrió?
step-spill-source = ¿Paró el derrame: válvula cerrada, tapa puesta?
step-spill-drain = ¿Tapó las coladeras de lluvia y el paso al agua?
step-spill-gear = ¿Trae guantes, botas y careta?
step-spill-up = ¿Lo detuvo con tierra o absorbente, y ya lo aspiraron?
step-spill-clean = Desinfecte el piso duro y lávese. Anote galones, causa y fotos. ¿Todo limpio?
step-tap-tank = Golpee la pared del tanque junto a la sonda. ¿Ya mide bien?
step-look-light = Mire por una taza con una luz. ¿Qué tan lleno va?
step-rinse-probe = En el próximo vaciado enjuague la sonda. ¿Ya mide bien?
step-slope = ¿Cuántos % está desnivelado?
step-blocks = Con calzas, ponga bloques del lado bajo. ¿Ya está a nivel?
step-move = Muévalo a un lugar más parejo y cálcelo. ¿Ya está a nivel?

## What a step rules out

cause-dead-12v = la batería ni el convertidor
cause-light-switch = el apagador
cause-dead-lamp = un solo foco
cause-loose-neutral = un neutro flojo
cause-low-battery = una batería baja
cause-loose-ground = una tierra floja
cause-bad-socket = la base del foco
cause-room-fuse = el fusible
cause-short = un corto
cause-connector = el conector
cause-wide-outage = un corte en todo el sitio
cause-dead-breaker = el breaker del sitio
cause-loose-cord = un cable flojo
cause-tripped-gfci = el GFCI del sitio
cause-dead-outlet = el contacto
cause-battery-switch = el corte de la batería
cause-flat-battery = la batería descargada
cause-main-fuse = el fusible principal
cause-unfed-converter = un convertidor sin corriente
cause-dead-converter = el convertidor
cause-terminals = los bornes
cause-bad-gfci = el mismo GFCI
cause-wet-plug = una clavija mojada
cause-two-cords = dos cables en un GFCI
cause-faulty-circuit = un circuito malo
cause-overload = exceso de carga
cause-starved-compressor = un compresor con pocos voltios
cause-long-load = una carga de muchas horas
cause-shared-breaker = un breaker compartido
cause-second-trip = un disparo de casualidad
cause-closed-supply = una llave cerrada
cause-dead-supply = falta de agua en la red
cause-weak-supply = poca presión en la red
cause-wrong-mode = el selector
cause-empty-tank = un tanque vacío
cause-pump-fuse = el fusible de la bomba
cause-air-lock = aire en la bomba
cause-blocked-inlet = el filtro de entrada
cause-kink = una manguera doblada
cause-thin-hose = una manguera delgada o larga
cause-regulator = el regulador
cause-aerator = la malla de una llave
cause-second-pump = la segunda bomba
cause-dry-run = una bomba en seco
cause-running-fixture = un mueble que corre
cause-leak = una fuga a la vista
cause-check-valve = la válvula de retención
cause-small-leak = una fuga chica
cause-suction = aire en la succión
cause-not-yet-hot = falta de tiempo
cause-dead-circuit = un circuito sin corriente
cause-heater-switch = el botón
cause-high-limit = el límite de calor
cause-element = la resistencia
cause-bypass = las válvulas de paso
cause-drain-side = el lado del tanque o del drenaje
cause-over-pressure = exceso de presión
cause-washer = un empaque ni una unión floja
cause-split = un tubo rajado
cause-ice-plug = un tapón de hielo
cause-still-frozen = todo el hielo
cause-selector = el selector
cause-thermostat = el termostato
cause-blocked-grille = el filtro ni la rejilla
cause-low-volts = falta de voltios
cause-open-doors = puertas abiertas
cause-no-amps = el mismo calefactor
cause-iced-coil = el filtro ni el hielo
cause-two-ac = dos aires en un cable
cause-refrigerant = el refrigerante
cause-dry-trap = una coladera seca
cause-vent = la ventilación
cause-full-tank = un tanque lleno
cause-flapper = el sello de una taza
cause-cap = la válvula ni la tapa
cause-dose = solo la dosis
cause-main-line = la línea principal
cause-one-toilet = un tapón sencillo
cause-pyramid = un montón bajo el inodoro
cause-debris = basura en el sello
cause-seal = el sello
cause-stop-valve = la llave de paso
cause-lock = solo el seguro
cause-door = las bisagras
cause-foul-ground = un lugar limpio todavía
cause-stuck-probe = una sonda atorada de paso
cause-high-waste = un tanque lleno
cause-coated-probe = mugre en la sonda
cause-slope = una pendiente que importe
cause-low-side = un lado bajo
cause-bad-pad = el suelo

## What was done, and the question whether it helped

did-aerator = Limpia la rejilla de esa llave
did-air-lock = Sin aire y el colador limpio
did-bad-pad = Movida y calzada otra vez
did-bad-socket = Base limpia, foco asentado
did-battery-switch = Prendido el interruptor de la batería
did-blocked-grille = Filtro y rejilla libres, repuesto una vez
did-blocked-inlet = Limpio el filtro de entrada
did-bypass = Puestas las válvulas de paso
did-cap = Válvula cerrada, tapa puesta, lavado
did-closed-supply = Suministro bien abierto
did-coated-probe = Sonda enjuagada
did-connector = Conector y tierra firmes
did-dead-breaker = Breaker del sitio arriba
did-dead-circuit = Circuito con corriente
did-dead-supply = Manguera revisada, suministro abierto
did-dead-lamp = Foco cambiado, base limpia
did-debris = Jalada dos veces
did-door = Sin pernos de bisagra
did-dose = Tanque con desodorante
did-dry-run = Bomba apagada, tanque lleno
did-dry-trap = Agua en cada coladera
did-empty-tank = Tanque lleno
did-flapper = Sello limpio, o baño cerrado
did-flat-battery = Sin cargas y cargando
did-foul-ground = Suelo lavado y desinfectado
did-full-tank = Tanque vaciado
did-heater-switch = Botón del calentador prendido
did-high-limit = Botón de límite oprimido una vez
did-high-waste = Tanque vaciado
did-ice-plug = Salida calentada despacio
did-iced-coil = Filtro limpio, serpentín sin hielo
did-kink = Manguera derecha y libre
did-light-switch = Probados sensor, apagador y temporizador
did-lock = Chapa girada por la ranura
did-long-load = Menos carga, tablero frío
did-loose-cord = Clavijas firmes, breaker arriba
did-loose-ground = Tierra y terminales apretadas
did-low-battery = Cargas apagadas, y cargando
did-low-side = Bloques bajo el lado bajo
did-low-volts = Menos carga, mejor cable
did-main-fuse = Fusible principal cambiado una vez
did-not-yet-hot = Una hora lleno y con corriente
did-one-toilet = Usados destapacaños y sonda
did-open-doors = Puertas cerradas media hora
did-over-pressure = Presión en 45 psi (3 bar)
did-overload = Quitada la carga
did-pump-fuse = Bomba prendida, fusible cambiado una vez
did-pyramid = Remojado y removido
did-regulator = Regulador ajustado, rejilla limpia
did-room-fuse = Fusible del cuarto cambiado una vez
did-running-fixture = Cerrada su válvula, o limpio su sello
did-seal = Sello de válvula limpio
did-second-pump = Revisados fusible e interruptor de presión
did-second-trip = Repuesto por última vez
did-selector = Clima apagado, calefacción puesta
did-shared-breaker = Un contacto propio
did-slope = Bloques bajo el lado bajo
did-starved-compressor = 5 min apagado, mejor cable
did-still-frozen = Descongelado y llenado despacio
did-stuck-probe = Pared del tanque golpeada
did-suction = Uniones firmes, sin aire
did-terminals = Terminales limpias y firmes
did-thermostat = Termostato puesto, pilas nuevas
did-thin-hose = Manguera más ancha y corta
did-tripped-gfci = GFCI del sitio repuesto una vez
did-two-ac = Un clima apagado
did-two-cords = Un cable en cada GFCI
did-unfed-converter = Circuito del convertidor con corriente
did-vent = Extractor prendido, tapa libre
did-washer = Empaque y uniones firmes
did-weak-supply = Llave bien abierta, regulador ajustado
did-wet-plug = Clavija seca y levantada, repuesto una vez
did-wrong-mode = Selector puesto

mended-battery-low = ¿ya prenden las luces de 12 V?
mended-breaker-trip = ¿ya aguanta el breaker?
mended-frozen = ¿ya corre el agua?
mended-fuse-blown = ¿ya funciona?
mended-gauge-stuck = ¿ya marca bien?
mended-gfci-trip = ¿ya aguanta el GFCI?
mended-leak = ¿ya paró la fuga?
mended-lock-jam = ¿ya abrió la puerta?
mended-low-flow = ¿ya sale con fuerza?
mended-no-cooling = ¿ya enfría?
mended-no-heat = ¿ya calienta?
mended-no-hot-water = ¿ya hay agua caliente?
mended-no-lights = ¿ya hay luz?
mended-no-power = ¿ya volvió la corriente?
mended-no-water = ¿ya hay agua?
mended-not-level = ¿ya está nivelada?
mended-odor = ¿ya se fue el olor?
mended-person-trapped = ¿ya abrió la puerta?
mended-pump-dead = ¿ya corre la bomba?
mended-pump-running = ¿ya paró la bomba?
mended-shock = ¿ya es seguro?
mended-spill = ¿ya está todo limpio?
mended-toilet-clog = ¿ya está destapado?
mended-toilet-running = ¿ya paró?

## What a step finds

settles-live-metal = Todo metal puede tener corriente. Corte la corriente en su origen ya, con manos secas. Nadie toca metal, escalones ni agua.
settles-people-near = Cierre la unidad y ponga una barrera. Avise al sitio. Nadie se acerca.
settles-dead-12v = Entonces no hay 12 V. Siguen la batería y el convertidor.
settles-dead-lamp = Apague las luces. Ponga un foco igual. Base verde o mojada: límpiela y séquela antes.
settles-loose-neutral = Entonces el neutro puede estar flojo, y una fase puede subir muchísimo. Baje ya todos los breakers, y déjelos abajo. Nadie prenda nada.
settles-low-battery = Muy baja para luz pareja. Apague cargas, alimente el circuito del convertidor, y que cargue.
settles-short = Hay un corto. Déjelo apagado y sin fusible.
settles-wide-outage = Es un corte del sitio. Avise y pregunte la hora. Luces y bombas viven de la batería.
settles-dead-breaker = Pida al sitio que lo suba: todo abajo y luego arriba. Una vez.
settles-loose-cord = Breaker abajo, meta bien las clavijas, breaker arriba. Una caliente o café: no la use.
settles-dead-outlet = El contacto está mal. No lo use.
settles-battery-switch = Préndalo.
settles-flat-battery = Está descargada. Primero quítele carga: bombas, luces y ventiladores. Luego dé corriente al circuito del convertidor, con el interruptor de la batería prendido, y deje cargar.
settles-main-fuse = Cámbielo una vez, del mismo valor. Si se funde otra vez, déjelo fuera: hay un corto.
settles-unfed-converter = Dele corriente a ese circuito: cámbiele un cable o suba su breaker.
settles-dead-converter = El convertidor no sirve. Una batería al revés le funde los fusibles.
settles-bad-gfci = Se bota sin nada conectado: falla el GFCI o la red. Déjelo apagado.
settles-wet-plug = Corte la corriente. Séquelo, levántelo del suelo y cúbralo de la lluvia.
settles-two-cords = Dele a cada cable su propio GFCI.
settles-faulty-circuit = Ese circuito es la falla. Déjelo apagado. Suele ser la resistencia, luego un aire.
settles-overload = Es demasiada carga. Apague algo: aire o calor primero, luego el calentador.
settles-starved-compressor = Le faltan voltios. Apague el aire y espere 5 min. Use un cable más corto o grueso.
settles-long-load = Lleva demasiado por horas. Quite carga y deje enfriar el tablero.
settles-shared-breaker = Pregunte al sitio quién más lo usa. Pida un contacto propio.
settles-closed-supply = Ábrala toda, despacio. Apártese de la manguera.
settles-dead-supply = No hay presión: agua cerrada, manguera doblada o hielo. Siga la manguera hasta la llave.
settles-weak-supply = La red da poca presión. Abra toda la llave y revise el regulador. Si no, use tanque y bomba.
settles-wrong-mode = Póngalo bien: red con manguera, tanque y bomba sin ella.
settles-empty-tank = El tanque está vacío. Apague la bomba hasta llenarlo.
settles-air-lock = Hay aire o el colador está tapado. Abra la llave más lejana, saque el aire, limpie el colador.
settles-kink = Enderécela y quite lo que la pisa.
settles-thin-hose = Use manguera de 3/4 o 1 in, lo más corta posible.
settles-regulator = Póngalo de 40 a 50 psi (3 bar) y lave su malla. Nunca lo quite arriba de 80 psi (5.5 bar).
settles-aerator = Limpie la malla de esa llave.
settles-second-pump = Revise su fusible, una vez, del mismo valor. Luego su interruptor de presión.
settles-dry-run = Apague la bomba ya: en seco se quema. Primero llene el tanque.
settles-running-fixture = Cierre la llave de ese baño. Luego jale dos veces y limpie su sello.
settles-leak = Entonces el problema es la fuga.
settles-check-valve = El agua del sitio pasa al tanque. Cierre el agua antes de que se derrame.
settles-small-leak = Hay una fuga chica en algún lado. Apague la bomba si nadie la usa.
settles-suction = Apriételas a mano y saque el aire.
settles-dry-heater = Corte el calentador ya: en seco se quema. Llénelo hasta que no salga aire.
settles-not-yet-hot = Dele tiempo: 6 gal (23 l) tardan más de media hora, 10 gal (38 l) más de una hora.
settles-dead-circuit = Dele corriente: breaker todo abajo y luego arriba, una vez. Revise su cable.
settles-heater-switch = Préndalo, con su tanque lleno.
settles-element = Muy poca corriente: falla la resistencia, el termostato o el límite, o leyó otro circuito. Déjelo apagado.
settles-bypass = Póngalas para que el agua pase por el calentador.
settles-wet-power = Primero corte la corriente ahí, en su origen. Luego toque.
settles-drain-side = Está del lado del tanque o del drenaje. Cierre lo que desagua ahí.
settles-over-pressure = Es demasiada presión. Cierre la llave y ponga el regulador a 45 psi (3 bar).
settles-split = Se rajó un tubo. Deje el agua cerrada. Ponga arena y un cono donde esté mojado.
settles-ice-plug = No quite la tapa: se suelta de golpe. Tanque a más de la mitad: cierre la unidad. Caliéntela despacio.
settles-shut-tap = Haga eso primero: cierre el agua, abra la llave cercana. El vapor y el agua necesitan salida.
settles-not-thawed = Siga, desde la punta abierta hacia atrás. Sin flama ni pistola de calor.
settles-selector = Apague el aire y luego escoja calor. Nunca van juntos.
settles-thermostat = Póngalo arriba de la temperatura del cuarto, con pilas nuevas.
settles-low-volts = Con pocos voltios calienta poco. Quite carga, use un cable más corto o grueso.
settles-open-doors = Ciérrelas y espere media hora.
settles-no-amps = Hay corriente, pero pide muy poca. Falla la resistencia o el termostato, o leyó otro circuito. Déjelo apagado.
settles-two-ac = Apague uno. Cada aire necesita su propio cable.
settles-refrigerant = Es muy poca diferencia: refrigerante o serpentín. Eso es del taller.
settles-vent = Prenda el extractor y despeje la tapa. No suba al techo con viento o lluvia.
settles-full-tank = Hay que vaciarlo.
settles-flapper = Limpie ese sello o cierre el baño.
settles-cap = Con guantes. Cierre la válvula, ponga la tapa, lave el goteo.
settles-main-line = Son todos: tanque lleno, línea principal o ventilación. Cierre la unidad.
settles-stop-valve = No cierra. Corte el agua, o use la bomba solo cuando haga falta.
settles-no-answer = Llame ya al número de emergencia. Sígales hablando.
settles-open-source = Primero pare eso. Gente y mascotas lejos, del lado de donde viene el viento.
settles-open-drain = Tápelas primero. Aguas negras en coladera o arroyo se reportan: avise a su despachador.
settles-bare-skin = Póngaselos primero. Sin piel desnuda, sin comer ni beber.
settles-left-waste = Deténgalo con tierra o absorbente. Pida el camión. Embolse los sólidos.
settles-high-waste = Va alto. Llame al camión, diga lo que diga el medidor.
settles-slope = Es demasiado. Las puertas se mueven, y fallan medidor y drenaje.

### Lo que el bot dice por su cuenta

speak-was-due = Esto era para las { $time }, hace { $age }.
speak-answer-task = Conteste "tomo { $id }", o "enterado" para callarlo para todos.
speak-call-truck = Llame al camión: tarea { $task }
speak-task = Por hacer: tarea { $task }
speak-errand = Por hacer ya: tarea { $task } Mande "hecho { $id }" cuando quede.
speak-silent-unit = { $who } escribió a las { $time }. Sin reporte de esta desde las { $since }.
speak-silent-person = { $who } no escribe nada desde las { $time }. Llámele por teléfono.
speak-unheard = { $unit }, { $site }: puertas abiertas desde las { $time }, y nadie ha escrito de ella en este trabajo.
speak-unheard-since = { $unit }, { $site }: puertas abiertas desde las { $time }, y nadie la dio por abierta. Última noticia: { $since }.
speak-unheard-ask = Llame a { $names }: ¿está abierta, y qué tan llena?
speak-unheard-who = Llame al sitio: ¿está abierta, y qué tan llena?
speak-unanswered = { $signal }: nadie ha contestado. { $what }, avisado a las { $time }. Llámeles ya.
speak-alone-unanswered = { $signal }: nadie ha contestado. { $who } trabaja a solas; alarma desde las { $time }. Llámele ya. Si no contesta: mande a alguien, llame a emergencias.
speak-alone-found-yet = { $signal }: ¿ya apareció { $who }? La alarma sigue desde las { $time }. Si ya: mande "{ $who } está bien". Si no, mande a alguien, llame a emergencias.
speak-overdue = { $who } iba a llegar a las { $time } y no escribe. Llámele por teléfono.
speak-overdue-unit = { $unit }: { $who } iba a llegar a las { $time } y no escribe. Llámele por teléfono.
speak-alone-ask = ¿Todo bien? Conteste "ok" antes de las { $time }. Si no, aviso { $names }.
speak-alone-delayed = { $who } trabaja a solas y yo estaba caído: { $words }. Le pregunto ahora. Llámele también.
speak-alone-alarm = { $signal }: { $who } trabaja a solas desde las { $time } y no contesta. Dijo { $words }. Lugar: { $site }. Llámele ya. Si no contesta: mande a alguien, llame a emergencias.
speak-alone-alarm-for = { $signal }: { $who } trabaja a solas y no contesta. El reloj lo puso { $by } a las { $time }: { $words }. Lugar: { $site }. Llámele ya. Si no contesta: mande a alguien, llame a emergencias.
alone-whom-dispatcher = al despachador
alone-whom-nobody = a nadie, pues no hay nadie más. Avise antes a alguien por teléfono
alone-whom = a { $names }
alone-for = Le pregunto a { $who } a las { $time }. Si no contesta antes de las { $last }, aviso { $names }. "{ $who } está bien" lo para.
alone-for-told = { $who } quiere saber que usted está bien. Le pregunto a las { $time }. "ok" lo para.
alone-for-how = No corre ningún reloj para { $who }. Mande por ejemplo: checa a { $who } en 15.
speak-alone-nowhere = no lo dijo
speak-alone-last-place = sin decir; su último mensaje fue hace { $age }, de { $site }
speak-read-tank = { $unit }: vea ahora el tanque de negras, por favor. De su respuesta depende cuándo llamar al camión. Mándela así: "{ $unit } tanque 3/4".
speak-patrol = { $count ->
    [one] Una estancia larga para revisar hoy:
   *[other] { $count } estancias largas para revisar hoy:
}
answer-patrol-rest = Y { $count } más. Todas vienen con la lista de la mañana.
speak-patrol-row = { $unit } { $site }: sin palabra hace { $age }, negras como al { $value }.
speak-patrol-row-full = { $unit } { $site }: sin palabra hace { $age }, negras como al { $value }, al límite quizá a las { $time }.
road-noted = Anotado: en camino, llega hacia { $time }. Lo que puede esperar espera a que escriba de ahí, o hasta { $last }.
speak-held-from = Dicho a las { $time }, retenido hasta ahora:
speak-held = { $who } va manejando. Le llega cuando esté en el sitio.
speak-alone-set = A solas en la { $unit }: le pregunto a las { $time }. Si no contesta antes de las { $last }, aviso { $names }. "ok" lo para.
speak-alone-set-until = A solas en la { $unit }: le pregunto a las { $time }. Si no contesta antes de las { $last }, aviso { $names }.
speak-alone-until = Corre hasta las { $time }. "alto" lo para antes, "ok" no.
speak-alone-every-until = Pregunta cada { $count } min hasta las { $time }. "alto" lo para antes, "ok" no.
speak-alone-every = Pregunta cada { $count } min. "para" lo termina, "ok" no.
speak-alone-set-nowhere = Le pregunto a las { $time }. Si no contesta antes de las { $last }, aviso { $names }. ¿En qué unidad está?
alone-company = Este reloj es solo suyo: no cuido a { $who }.
speak-alone-cold = Se siente como { $value }: la piel se puede congelar en { $count } min. Lo hice más corto.
speak-alone-again = Bien. Le pregunto otra vez a las { $time }. "ok" lo para.
speak-alone-again-until = Bien. Le sigo preguntando a las { $time }. "alto" lo para.
speak-alone-moved = Su reloj: le pregunto a las { $time }.
alone-works-till = trabajando solo hasta las { $time }
speak-alone-over = Bien. Ya no corre el reloj.
speak-alone-unsure = ¿Todo bien? Entonces mande "ok". Le paso sus palabras { $names }. ¿En apuros? Escriba "ayuda", o llame al número de emergencia.
speak-alone-words = { $who } trabaja a solas. Le pregunté y escribió { $quote }. No sé si eso es que está bien. Llámele ya.
speak-alone-found = { $who } contestó: { $words }. Se acabó el aviso.
speak-alone-offer = ¿Está a solas? Mande "voy debajo de la { $unit }, revísame en 15". Le pregunto, y si no contesta aviso al despachador.
speak-alone-how = Todavía no corre ningún reloj. Mande "solo en la { $unit }, revísame en 30". Le pregunto, y si no contesta aviso al despachador.
speak-alone-how-nowhere = Todavía no corre ningún reloj. Mande su unidad y "revísame en 30". Le pregunto, y si no contesta aviso al despachador.
alone-runs = { $who } trabaja a solas desde las { $time }: { $words }. Le pregunto a las { $due }.
alone-no-answer = { $who } trabaja a solas desde las { $time } y no contesta: { $words }. Llámele ya. Si no contesta: mande a alguien, llame a emergencias.
alone-nobody = No corre ningún reloj de alguien a solas. Solo sé de quienes lo pidieron.
alone-reached = Bien. Ya no corre el reloj de { $who }.
alone-reached-by = { $by } dice que ya se habló con { $who }. Ya no corre el reloj.
alone-goes = Anotado: usted va con { $who }. ¿Ya lo ve bien? Mande "{ $who } está bien". Sin señas: llame a emergencias. Pregunto otra vez en 10 min.
alone-goes-by = { $by } va en camino con { $who }.
speak-low = { $count ->
    [one] Mínima de { $value } esta noche. Una unidad en riesgo:
   *[other] Mínima de { $value } esta noche. { $count } unidades en riesgo:
}
speak-low-changed = { $count ->
    [one] Mínima de { $value } esta noche, antes { $was }. Una unidad en riesgo:
   *[other] Mínima de { $value } esta noche, antes { $was }. { $count } unidades en riesgo:
}
speak-low-again = { $count ->
    [one] Mínima de { $value } esta noche, como ya se dijo. Una unidad en riesgo:
   *[other] Mínima de { $value } esta noche, como ya se dijo. { $count } unidades en riesgo:
}
speak-air = { $count ->
    [one] Aire a { $value } ahora. Una unidad en riesgo:
   *[other] Aire a { $value } ahora. { $count } unidades en riesgo:
}
speak-air-again = { $count ->
    [one] Aire a { $value } ahora, casi como antes. Una unidad en riesgo:
   *[other] Aire a { $value } ahora, casi como antes. { $count } unidades en riesgo:
}
speak-air-mild = Aire a { $value } ahora. Eso nada dice de la noche. Mande "mínima esta noche 12F", o pegue un TAF.
speak-air-low-holds = Aire a { $read } ahora. Para esta noche vale la mínima de { $value }.
speak-air-nobody = Aire a { $value } anotado. Ninguna unidad está en un trabajo donde se congele.
speak-low-site = { $site }: { $what }
speak-low-row = { $units }: { $what }.
low-here = { $unit }: aquí viene una mínima de { $value } esta noche.
speak-low-do = Antes de la noche: calentadores prendidos y lea sus amperes, manguera caliente, corriendo o drenada. Avise por unidad cuando quede.
speak-low-do-now = Hágalo ya: calentadores prendidos y lea sus amperes, manguera caliente, corriendo o drenada. Avise por unidad cuando quede.
speak-low-was = Antes era { $was }.
speak-report-old = Ese reporte es muy viejo ({ $time }): no dice cómo está el aire ahora. No se anota nada. Pegue uno nuevo.
wind-to-come = No anotado: ese viento apenas viene. Guarde toldos y tapetes antes. Mande el viento cuando sople: "12 viento 40".
speak-forecast-over = Ese pronóstico ya no dice nada de esta noche: su mínima fue a las { $time }. No anoté nada. Pegue uno nuevo.
speak-low-other-day = { $value } es para otro día. Solo guardo la mínima de esta noche, y nada cambió. Avíseme ese día: "mínima esta noche ...".
speak-low-rise = ¿Mínima de { $value }? En la { $unit } se leyó { $was } a las { $time }. No se anota nada. Mándela otra vez con signo y medida: "mínima esta noche 12F" o "mínima esta noche -12C".
speak-low-warm = ¿Mínima de { $value }? En la { $unit } se leyó { $was } a las { $time }. No se anota nada. Mándela con su medida: "mínima esta noche 40F" o "mínima esta noche -40F".
speak-low-odd = ¿Mínima de { $value }? No se anota nada. Mándela otra vez con su medida: "mínima esta noche 12F" o "mínima esta noche -12C".
speak-low-colder-holds = Mínima de { $value } anotada. La de { $was } dicha antes también vale: guíese por esa.
speak-low-eased = La mínima de esta noche es ahora { $value }, antes { $was }. Por lo que se dijo, sus unidades quedan libres de helada. Revise de todos modos.
speak-low-mild = Mínima de { $value } anotada. Ninguna unidad en riesgo.
speak-low-nobody = Mínima de { $value } anotada. Ninguna unidad está en un trabajo donde se congele.
speak-heard-of = Anotado: hay alguien en la { $unit }. Mande tanque, presión y luz cuando pueda.
digest-unread = Nadie ha leído las negras, y quizá están llenas: { $names }. Que las lean.
digest-unheard = Puertas abiertas y ni una palabra: { $names }. Pregunte al equipo.
digest-unheard-row = no se sabe
digest-fills = Se llenan primero: { $names }.
digest-fills-maybe = quizá { $time }
digest-fills-now = ya
digest-late = Atrasadas: { $names }.
digest-late-one = { $task } ({ $age })
digest-call-late-one = { $unit } (si llama ya, llega hacia { $time } lo más pronto: prepárese para cerrar baños)
digest-silent = Sin reporte: { $names }.
ahead-none = { $word }: ningún trabajo.
ahead-none-until = { $word } a { $what }: sin trabajos.
ahead-none-of = { $word }: { $unit } sin trabajo.
ahead-none-of-until = { $word } a { $what }: { $unit } sin trabajo.
ahead-head = { $count ->
    [one] { $word }: un trabajo.
   *[other] { $word }: { $count } trabajos.
}
ahead-job = { $site }: { $units }, { $first } a { $last }, { $value } invitados.
ahead-truck = Solo por los invitados, al límite como a las: { $names }.
ahead-no-truck = Solo por los invitados no se llena ningún tanque.
ahead-stands-truck = Como está ahora, nivel de paro hacia: { $names }.
ahead-stands-no-truck = Como está ahora no se llena ningún tanque.
speak-taken-by = { $who } la tiene: { $what }. No hay que hacer nada.
speak-taken-uncalled = { $who } la tiene: { $what }. Nadie ha llamado al camión. Vea que lo llamen.
speak-untaken = { $who } se echó para atrás. Nadie la tiene ahora: { $task }
speak-low-safe = Nada dicho que se congele: { $names }. Revise de todos modos.
speak-low-untold = No hay allá a quién avisarle: { $names }. Mande a alguien, o llame al sitio.
watch-set-any = Le aviso cuando { $names } llegue a { $what }.
watch-set-any-below = Le aviso cuando { $names } baje a { $what }.
watch-no-reminder = No hay nada puesto. Le recuerdo con una hora: "recuérdame a las 18:00 revisar la 12". Una tarea tiene su hora: "mueve 41 19:30". Un camión: "camión para la 12 a las 19:00".
watch-no-condition = No lo tomé: { $quote }. No actúo con esa clase de condición. Puedo vigilar una lectura: si la 12 llega a 3/4 avísame.
holder-had-it = La tenía { $who }, y ya se le avisa.
holder-done = { $who } dice que está hecha: { $task }. Ya no le queda nada por hacer.
holder-dropped = { $who } quitó su tarea { $task }: { $quote }.
holder-not-needed = Por { $who } ya no hace falta su tarea { $task }. Ya no le queda nada por hacer.
holder-reopened = { $who } lo retiró. Su tarea está abierta otra vez: { $task }
holder-truck-off = { $who } dice que el camión no viene. Su tarea: { $task }
holder-truck = { $who } cambió lo del camión. Su tarea: { $task }
holder-moved = { $who } le cambió la hora a su tarea: { $task }
assign-moved = { $who } tiene ahora esta tarea: { $task }. Ya no es suya.
speak-report-unread = No leí ninguna temperatura en ese reporte. Mande la mínima: mínima esta noche 12F.
truck-done = ¿Cuántos galones sacó el camión de la { $unit }? Basta un número. ¿Aún no vacía? Mande "deshacer".
truck-gallons = ¿Galones, o una unidad? Mande los galones de la { $unit } con "gal": "380 gal". Aún no se anota nada.
truck-done-stays = Sin galones anotados. El vaciado de la { $unit } sigue como hecho. ¿Sigue llena? Mande "deshacer".
done-unpumped-told = { $who } dice que ya quedó: { $task }. Aún sin galones.
undo-fact = Lo dicho de un incidente queda como se dijo. Mande lo correcto con "incidente", la unidad y sus palabras.
override-cautions-short = Los cuidados siguen.
override-leaves = Esto no queda autorizado: { $names }.
answer-no-override = No hay ninguna autorización en vigor.
answer-has-read = No puedo ver si { $who } ya lo leyó. Solo una respuesta lo dice.
answer-has-no-task = { $who } no tiene tareas abiertas.
tell-what = ¿Qué le digo a { $who }? Aún no pasé nada. Mande "dile a", el nombre y sus palabras juntos.
tell-unit-nobody = No sé de nadie en la { $unit } ahora. Nada pasado. Mande "dile a", un nombre y sus palabras.
digest-call = Llame ya al camión: { $names }.
digest-call-by = Llame antes de la noche: { $names }. Yo no despierto a nadie.
digest-call-by-one = { $unit } (antes de { $time })
digest-truck-late = Camión después de que se llene, quizá: { $names }.
digest-truck-missing = Camión que no ha llegado: { $names }. Llame al del camión, o a otro.
digest-truck-missing-one = { $unit } (prometido { $time })
digest-truck-late-one = { $unit } (camión { $time }, llena quizá { $due })
answer-nobody-has-any = Nadie tiene ninguna de las tareas abiertas.
answer-all-well = No hay nada mal en ninguna unidad, por lo que se reportó.
answer-urgent-rest = Aquí no salen, y también tienen algo pendiente: { $units }. "resumen" las muestra todas.
answer-well-until = A la { $unit } aún le falta esto: { $names }. Por ahora nada está mal.
alone-for-whom = No corre ningún reloj. Diga el nombre de una persona: checa a tobin en 15.

### What is asked about a step while it waits

thing-converter = El convertidor hace 12 V de la corriente del sitio. Es una caja con ventilador que zumba, junto a la batería o el tablero. Su circuito está en la lista del tablero.
thing-tripped = Un breaker botado queda a la mitad o abajo, y se siente flojo. Reponerlo: primero todo abajo, luego arriba. Si regresa luego luego: eso es botarse.
thing-gfci = Un GFCI es un contacto o breaker con TEST y RESET. Botado: RESET está salido, o su foco apagado o rojo. Reponerlo: apriételo una vez, manos secas.
thing-breaker = Los breakers están tras la puerta del tablero, cada uno con su número. El del sitio está en el poste o tablero donde va enchufado el cable. Abra solo puertas, ninguna tapa atornillada.
thing-fuse = Los fusibles de 12 V son navajitas de color en una tira junto a la batería o el tablero. Quemado: el alambre de adentro está roto o negro. El mismo número, una vez.
thing-battery-switch = El interruptor de batería es una perilla o llave roja o negra junto a la batería. ON, o la marca en línea con el cable, es prendido.
thing-volts = Use un medidor de enchufe en un contacto del remolque, o la pantalla que trae. La corriente marca 108 a 127 V, la batería 12 a 14 V. Sin medidor: "omite". Nunca meta puntas a un tablero.
thing-amps = Los amperes están en la pantalla del tablero, o con pinza en un solo cable. Sin medidor: sume las etiquetas, u "omite". Nunca abra un tablero para eso.
thing-selector = El selector es un switch o palanca que dice cuál se usa: agua del sitio o tanque, calor o frío. Está en el compartimiento de la bomba, o en el termostato.
thing-supply = La llave de la toma es donde empieza la manguera. La válvula del remolque está en su entrada, donde se atornilla la manguera. Palanca a lo largo del tubo es abierta, atravesada es cerrada.
thing-static = Con todas las llaves cerradas lea el manómetro en la entrada del remolque, o en el regulador. Sin manómetro: "omite".
thing-filter = El filtro de entrada es una malla chica donde se atornilla la manguera. El del calentador o clima está tras su rejilla. Agua cerrada y purgada, o corriente cortada, antes de sacarlo.
thing-tank-level = Los focos o el medidor están en el panel de monitoreo: apriete el botón de ese tanque. Basta una fracción o un porciento. Sin medidor: una luz por la taza, u "omite".
thing-bypass = Las válvulas de derivación son dos o tres palancas chicas en los tubos tras el calentador. A lo largo del tubo es abierta. Verano: abiertas las dos del calentador, cerrada la de en medio.
thing-high-limit = El botón de límite es chico y rojo, bajo la tapa del calentador de agua. Corte el breaker, deje enfriar, y apriételo una vez.
thing-motion-sensor = El sensor es una cúpula u ojo blanco en el techo o junto a la puerta. Su temporizador o switch está al lado, o en el tablero.
thing-ground-screw = El conector es donde se juntan los dos cables de la lámpara. El tornillo de tierra sujeta el blanco o pelado al chasis. Primero apague el interruptor de batería.
thing-vent = El extractor está en el techo o pared de cada cuarto. Su tapa está arriba del techo: mírela desde el suelo, no suba.
thing-flapper = El empaque es el aro de hule bajo la tapa del fondo de la taza. Está bien si el agua se queda un minuto en la taza.
thing-stop-valve = La llave de paso está en el tubo chico atrás o abajo de esa taza o lavabo. A la derecha, o atravesada, se cierra.
thing-slope = Ponga un nivel en el piso. 1 pulgada (2.5 cm) en 8 ft (2.5 m) es 1 %. Una app de nivel en el teléfono también sirve. Si no sabe: mande cuánto se va la burbuja.
thing-breakaway = El perno de seguridad está en un cable delgado en la lanza. Jálelo: los frenos del remolque deben aguantar contra la troca a paso de persona. Luego métalo otra vez.
thing-coin-slot = La ranura está en la placa redonda de la chapa, por fuera: gírela con una moneda. Los pernos están arriba de cada bisagra: empújelos desde abajo.
thing-chocks = Las calzas van pegadas a las llantas, delante y detrás, en los dos lados. Se ponen antes de desenganchar. Se quitan al final, ya enganchada y con gatos arriba.
thing-coupler = El enganche es la copa de adelante, sobre la bola de la troca, con seguro y perno. Primero calzada: quite el cable de luces, el del freno y las cadenas. Fuera el perno, abra el seguro y suba el gato de la lanza hasta soltar la bola. Pies y manos fuera de abajo.
thing-chains = Las dos cadenas se cruzan bajo la lanza, de izquierda a derecha y al revés. Con holgura para dar vuelta, sin tocar el suelo. Cada gancho con su seguro. Enganche cerrado con perno, gatos hasta arriba.
thing-jacks = Los gatos van en las esquinas marcadas del chasís, sobre tablas anchas. Firmes, sin levantar: la cargan las llantas. Manos y pies fuera de abajo.
thing-regulator = El regulador es una pieza de latón, muchas veces con un reloj chico. Va en la toma, antes de la manguera, con la flecha hacia el remolque. Su tornillo pone la presión. Sin regulador no abra el agua.
thing-hose = La manguera va de la toma, con el regulador primero, a la entrada del remolque. Para vaciarla: cierre la toma, abra una llave para sacar presión, quítela. Levántela de punta a punta y tape las dos puntas.
thing-fill = El tanque limpio se llena por la boca marcada agua limpia o potable, con manguera para beber. Está lleno cuando lo marca el medidor, o sale agua por su respiradero. La punta no va dentro del tanque.
thing-test = Baje cada taza y vea que se vacíe. Abra cada llave, fría y caliente. Ponga y quite cada chapa. Vea abajo si gotea. Luego las luces y el extractor de cada cuarto.
thing-photos = Una de cada cuarto. Una de cables y manguera donde conectan. Una de los escalones y una del piso. Mándelas aquí. Sin gente en ellas.
thing-closing = Toque y vea cada baño: nadie adentro. Luego cierre las dos puertas con la llave del remolque y ponga el letrero de cerrado.
thing-dump-valve = La salida de negras está abajo, a un lado o atrás. Es un tubo ancho con tapa y válvula de jalar. Con guantes, y la válvula cerrada antes de quitar la tapa. El del camión conecta y la abre.
thing-fresh-drain = El drenaje de la limpia es una llave o tapón chico, bajo ese tanque. Primero apague bomba y calentador. Ábralo junto con una llave, donde se permita. Solo agua limpia. Está vacío cuando ya no gotea.
thing-heaters = Todos. La calefacción en los termostatos, los de compartimento y tanque en su interruptor o breaker. El de agua en el suyo. También desconecte la cinta térmica.
thing-power-off = Primero apague clima, calefacción y calentador de agua. Luego los breakers del remolque, luego los del poste. Después desconecte, con manos secas, nunca del cable. Al final enrolle los cables.
thing-stowing = Los escalones se doblan o se meten y llevan perno. Las rampas van a su lugar, los toldos se enrollan con seguro. Puertas y tapas con llave. Nada suelto adentro: botellas, botes, tapetes.
thing-tow-lights = Cuartos, freno, izquierda y derecha, intermitentes. Solo: ponga intermitentes y dé la vuelta. Para el freno, sostenga el pedal con un palo o mire el rojo en una pared. Conectores limpios y firmes.
thing-none = Es solo lo que pregunta el paso. Si no lo halla o no sabe: "omite". Quien conoce el remolque se lo enseña.
