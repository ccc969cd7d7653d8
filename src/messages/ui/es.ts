import type { en } from './en.ts'

/** Words of the screen, Spanish. Its type makes a missing key an error. To be read by a Spanish-speaking supervisor. */
export const es: Readonly<Record<keyof typeof en, string>> = {
  // levels and sources
  levelStop: 'ALTO', levelFix: 'CORREGIR', levelCheck: 'REVISAR', levelNote: 'NOTA', levelMet: 'cumple',
  sourcePublished: 'publicado', sourceMechanics: 'mecánica', sourcePlate: 'placa', sourceJobRule: 'regla de obra', sourceHouseRule: 'regla de la casa',
  sourceEdited: 'cambiada', sourceFromMemory: 'de memoria, confirmar', source: 'fuente',
  valueAtMost: '{measured}, máximo {limit}', valueAtLeast: '{measured}, mínimo {limit}', valueLimit: '{measured}, límite {limit}', valueLimitOnly: 'límite {limit}',

  // common
  close: 'Cerrar', cancel: 'Cancelar', back: 'Volver', yes: 'sí', no: 'no', open: 'Abrir', remove: 'Borrar', rename: 'Cambiar nombre', name: 'nombre', note: 'nota',
  moreTitle: 'Más herramientas y ajustes', more: 'más', less: 'menos', language: 'idioma', untitled: 'plano sin nombre', working: 'calculando', understood: 'De acuerdo', tryAgain: 'Probar otra vez',
  notSaid: 'sin decir', accept: 'Aceptar', clear: 'Quitar', letGo: 'Soltar', lock: 'Bloquear', locked: 'Bloqueado', duplicate: 'Duplicar', attach: 'Fijar', detach: 'Desfijar',
  undoLoud: 'DESHACER', saveCopy: 'Guardar una copia', commandFailed: 'No se hizo: {reason}',

  // fields
  fieldUnknown: 'sin saber', fieldMixed: 'varios valores', fieldChoose: 'elegir', fieldWhich: '¿Cuál?',
  fieldEcho: 'escrito {typed}, leído {read}', fieldLive: 'se lee {read}, {other}', fieldUnreadable: '{why}; por ejemplo {example}. Queda el valor anterior.',
  fieldBounds: 'debe estar entre {least} y {most}; queda el valor anterior', 
  basisTypical: 'típico', basisPlate: 'placa', basisMeasured: 'medido', basisJobRule: 'regla de obra',

  // heading
  plan: 'Planta', planAlong: 'a lo largo de la cinta, salida a la derecha', planTurned: 'a lo largo de la cinta, salida a la izquierda', planNorthUp: 'norte arriba',
  sideView: 'vista lateral', tape: 'Cinta', sheet: 'Hoja', leaves: 'Hojas', zonesAsAt: 'zonas en', atPhase: 'en {phase}', phasePlain: '{phase}',
  phase_setUp: 'montaje', phase_offload: 'descarga', phase_load: 'carga', phase_fuse: 'fusión', phase_pull: 'tiro', phase_move: 'traslado', phase_rest: 'reposo', phase_tieIn: 'conexión',
  jointOf: 'junta {joint} de {count}', jointLength: 'sarta {length}',
  undo: 'deshacer', undoNone: 'deshacer: nada que deshacer', undoStep: 'deshacer: {step}', redo: 'rehacer', redoNone: 'rehacer: nada que rehacer', redoStep: 'rehacer: {step}',
  showAll: 'ver todo', foldSheet: 'plegar', foldOpen: 'abrir el pliegue',
  turnSheet: 'girar la hoja', northUp: 'norte arriba', alongTape: 'a lo largo de la cinta', holdStill: 'vista fija', whatIf: 'qué pasa si', whatIfOpen: 'qué pasa si: más calor, falta un soporte, pasto mojado, viento', items: 'elementos', itemsOpen: 'lista de todos los elementos',
  holdStillNotice: 'Vista fija: suéltela para cambiar algo.', readOnlyNotice: 'Esta ventana solo lee: tome el control para cambiar algo.',

  // gear
  gearTitle: 'Equipo', gearGroup_line: 'línea', gearGroup_lift: 'izar, tirar', gearGroup_site: 'sitio', gearGroup_people: 'personas',
  gearLeft: 'quedan {count}', gearTooMany: 'sobran {count}', gearPerson: 'persona, 1.83 m', gearScale: 'todo a una escala', gearAddOnTape: 'Agregar equipo',
  tools: 'Herramientas', toolMeasure: 'Medir', toolStrip: 'Trazar franja', toolLevel: 'Nivel', toolNote: 'Nota', toolRow: 'Una fila de',
  hint_place: 'Toque donde va.', hint_row: 'Presione donde empieza la fila y deslice.', hint_measure: 'Presione en un extremo y deslice al otro.', hint_strip: 'Presione en el extremo de entrada y deslice hacia donde va la sarta.',
  gearListTitle: 'Equipo propio', gearListAbout: 'Se guarda en este dispositivo, aparte de los planos. Los datos se leen de las placas; lo que se coloca los toma.', gearListEmpty: 'Aún no hay nada. Aquí estaría lo que tienen, con cantidad, medidas y cargas.',
  gearAdd: 'agregar equipo', gearCount: 'cuántos', gearNotCounted: 'sin contar', gearOwned: '{count} propios, quedan {left}', gearExport: 'Guardar lista de equipo', gearImport: 'Abrir lista de equipo',
  gearRemoveTitle: '¿Borrar {name} de la lista de equipo?', gearRemoveLines: 'Lo ya colocado conserva los datos que tomó.',

  // notes
  notesTitle: 'Notas al margen', notesAll: 'Todas las notas', notesLeaf: 'notas {count}', noteOf: '{number} de {count}', notesNone: 'Nada pendiente. Aquí estaría lo que falla en el plano, lo peor primero.',
  notesEmpty: 'Los hallazgos aparecen aquí en cuanto hay algo que revisar.', noSupports: 'Aún nada sostiene el tubo.', emptyPipe: 'Decir qué tubo', emptyUsual: 'Mostrar el montaje habitual',
  showOnPlan: 'Ver en la planta', doIt: 'Hacerlo', why: '¿Por qué?', whyOf: '¿Por qué? {sentence}', whyTitle: '¿Por qué?', whyMissing: 'Falta esta página en la aplicación.',
  toConfirm: 'por confirmar: {count}', met: 'cumplen: {count}', checksFailed: 'No se pudieron calcular las revisiones.',
  countsSaid: '{stop} ALTO, {fix} CORREGIR, {check} REVISAR', countsOpen: 'Hallazgos: {counts}',
  cautionShort: 'Solo orienta. Primero van la ley local, las reglas del dueño, el manual del fabricante y la persona calificada en sitio.',

  // tag
  tagTitle: 'Elemento elegido', chosenCount: '{count} elegidos', distance: 'distancia', offset: 'desvío', saddle: 'apoyo', turnAngle: 'girado contra la línea', spacing: 'separación', spreadEvenly: 'Repartir',
  heightRule: 'altura', heightRule_onAxis: 'en la línea de mordazas', heightRule_belowAxis: 'bajo la línea de mordazas', heightRule_aboveGround: 'sobre el suelo', heightRule_unknown: 'sin saber', heightDrop: 'debajo por', heightBy: 'subir todos',
  sideLong: 'primer lado', sideShort: 'segundo lado', rangeSaid: 'rango {low} a {high}, ahora {now}', rangeOut: 'fuera del rango {low} a {high}, ahora {now}', rangeOutWord: 'fuera de rango',
  resultCarries: 'carga {load}', resultFloats: 'libre, el tubo queda {gap} arriba', resultNotReached: 'sin tubo encima en esta etapa', resultMissing: 'las cargas esperan datos que faltan', resultNone: 'no se pudieron calcular las cargas',
  nudgePad: 'Movimientos finos de {label}', nudgeHold: 'mantener para repetir', nudgeUp: 'arriba {length}', nudgeDown: 'abajo {length}', nudgeLeft: 'izquierda {length}', nudgeRight: 'derecha {length}', nudgeInfeed: 'entrada {length}', nudgeExit: 'salida {length}',
  removeTitle: '¿Borrar {names}?', removeLocked: 'Lo bloqueado no se borra.', removed: 'Borrado: {names}.',

  // items
  itemsTitle: 'Todos los elementos', itemsFind: 'buscar', itemsNone: 'Aún no hay nada colocado. Aquí estaría cada elemento con su distancia y su peor hallazgo.', itemsNotFound: 'Nada con ese nombre.',
  moveBy: 'Mover lo elegido', moveAlong: 'a lo largo', moveAcross: 'a lo ancho', placeNew: 'Colocar por distancia', placeWhat: 'qué', placeIt: 'Colocarlo',
  showAndHide: 'Mostrar y ocultar', showAndHideAbout: 'Lo oculto sigue contando en cada revisión.',

  // title block and job
  titleBlock: 'Cuadro de datos', titleOpen: 'Cuadro de datos: {title}', revision: 'revisión', revisionShort: 'rev {revision}', savedHere: 'guardado', saved: 'guardado', saving: 'guardando', savedNot: 'sin guardar', savedBlocked: 'sin almacén', savedReadOnly: 'solo lectura',
  savedBlockedLong: 'Este navegador no deja guardar nada. Todo funciona, pero solo un archivo guardado conserva su trabajo.',
  sticksAndLength: 'tubos y largo', units: 'unidades', limitsShort: 'límites', limitsHouse: 'de la casa', limitsChanged: 'de la casa, {count} cambiados', share: 'compartir', image: 'imagen',
  pipeUnknown: 'aún sin decir', pipeInches: '{size} pulg {system} DR {dr} {material}', pipeMetric: '{size} mm SDR {dr} {material}', odBoth: '{inches} pulg ({millimetres} mm)',
  sticksUnknown: 'aún sin saber', sticksTimes: '{sticks} × {stick} = {made}', sticksOne: 'Un tubo, sin junta: {made}, {over}.', sticksMany: '{sticks} tubos, {joints} juntas: resultan {made}, {over}.',
  sticksFewer: 'Con un tubo menos, {sticks}, resultan {made}, {over}.', sticksOver: 'sobran {length}', sticksShort: 'faltan {length}', sticksNeed: 'El tubo, el largo necesario y el largo de cada tubo dan tubos, juntas y largo total.',
  jobTitle: 'Trabajo', layoutTitle: 'nombre del plano', jobPipe: 'tubo', jobLengths: 'Largos', jobFusing: 'Fusión y tiro', jobGround: 'Suelo', jobNote: 'nota del trabajo',
  neededLength: 'largo necesario', stickLength: 'largo del tubo', otherStickLength: 'otro largo disponible', tails: 'colas y junta de prueba, en total', jointLoss: 'pérdida por junta',
  wallTemperature: 'temperatura de pared del tubo', temperatureSwing: 'pared más caliente menos más fría', firstStick: 'primer tubo', firstStickLoader: 'puesto a la salida con cargador', firstStickFed: 'pasado por la máquina',
  noseHold: 'punta durante el tiro', noseHold_slung: 'colgada', noseHold_sled: 'en trineo', noseHold_lifted: 'levantada', noseHold_free: 'libre',
  fallAlong: 'caída a lo largo, hacia la salida', fallAcross: 'caída a lo ancho, a la derecha', machinePitch: 'inclinación de la máquina', followsGround: 'sigue el suelo', surface: 'suelo bajo la sarta',
  surface_gravel: 'grava', surface_grass: 'pasto', surface_wetGrass: 'pasto mojado', surface_asphalt: 'asfalto', surface_concrete: 'concreto', surface_clay: 'arcilla', surface_sand: 'arena', surface_mat: 'tapetes', surface_liner: 'geomembrana',
  pipeSystem: 'sistema', pipeSystemIPS: 'IPS (pulgadas)', pipeSystemDIPS: 'DIPS (pulgadas)', pipeSystemmetric: 'métrico (mm)', pipeSize: 'medida', pipeSizeChoice: '{size} {unit}: {od}', inches: 'pulg', pipeDr: 'DR', pipeSdr: 'SDR', pipeMaterial: 'clase',
  pipeOd: 'diámetro exterior real {od}', pipeFacts: 'diámetro exterior real {od}, pared mínima {wall}, {weight}',

  // units and settings
  unitsTitle: 'Unidades', unitsAbout: 'Cambia cómo se escriben los datos, nunca los datos. Siempre se puede escribir cualquier unidad.', unitsAll: 'todas las cantidades', unitsSingle: 'Cantidades sueltas', unitsAsAll: 'como todas',
  units_feetInches: 'pies y pulgadas', units_metric: 'métricas',
  quantity_length: 'largos', quantity_shortLength: 'largos cortos', quantity_height: 'alturas', quantity_force: 'fuerzas y cargas', quantity_mass: 'masas', quantity_moment: 'momentos', quantity_stress: 'esfuerzo', quantity_pressure: 'presión', quantity_lineLoad: 'peso del tubo', quantity_temperature: 'temperatura', quantity_area: 'áreas', quantity_speed: 'velocidades',
  settingsTitle: 'Ajustes y ayuda', theme: 'luz', theme_auto: 'como el dispositivo', theme_day: 'día', theme_sun: 'sol pleno', theme_night: 'noche', hand: 'mano', handRight: 'derecha', handLeft: 'izquierda', snapping: 'imán', startPage: 'Página de inicio',

  // limits
  limitsTitle: 'Límites', limitsAbout: 'Los límites de partida son práctica común salvo que una fuente diga otra cosa. Un límite cambiado guarda quién y por qué.', limit: 'límite',
  when_above: 'más de', when_atLeast: 'desde', when_below: 'menos de', limitEdit: '{limit}: {level}', limitWas: 'Valor de partida: {value}', limitValue: 'valor nuevo', limitReason: 'motivo', limitWho: 'quién lo dice', limitSet: 'Fijarlo', limitReset: 'reponer', limitChangedBy: 'cambiado por {who}: {reason}',

  // layouts and files
  layoutsTitle: 'Planos y archivos', stored_kept: 'Cada cambio queda guardado en este dispositivo.', stored_mayGo: 'Cada cambio queda guardado en este dispositivo. El navegador puede borrarlo: guarde también un archivo.',
  saveFile: 'Guardar archivo', openFile: 'Abrir un archivo', saveEverything: 'Guardar todo', putBack: 'Dejarlo como estaba', layoutsHere: 'En este dispositivo', layoutsNone: 'Aún no hay planos. Lo que dibuje se guarda aquí solo.', openNow: 'abierto ahora',
  removeLayoutTitle: '¿Borrar «{title}»?', removeLayoutGone: 'Se quita de este dispositivo. Un archivo guardado queda donde está.',
  pointsTitle: 'Momentos guardados', pointsNone: 'Aún ninguno. Se guarda uno antes de reemplazar algo.', pointOpen: 'Volver a ese momento', pointKeep: 'Guardar este momento',
  deviceTitle: 'Este dispositivo', deviceUsed: '{used} MB de {allowed} MB usados', clearDevice: 'Vaciar este dispositivo', clearTitle: '¿Vaciar este dispositivo?', clearLayouts: 'Se quitan {count} planos con su historial, la lista de equipo y los ajustes.', clearGone: 'No se puede deshacer. Guarde todo antes si algo hace falta.', clearYes: 'Vaciar todo',
  openHereTitle: '«{title}» ya está aquí', openHereWhy: 'Reemplazar guarda antes un momento del que está aquí.', openReplace: 'Reemplazarlo', openCopy: 'Abrir como copia', openWithoutTitle: '¿Abrir sin estos {count} elementos?', openWithout: 'Abrir una copia sin ellos', openRefused: 'No se abrió este archivo', openRefusedKept: 'Lo que estaba abierto no cambió.', openNamed: 'Abrir {title}',
  shareTitle: 'Compartir', shareAbout: 'Entrega el archivo de este plano: con la hoja de compartir del dispositivo o como descarga. Se abre en esta aplicación en cualquier dispositivo.', shareFile: 'Compartir el archivo',
  imageTitle: 'Imagen', imageAbout: 'Planta, vista lateral, título, distancias, escala gráfica, norte y hallazgos pendientes en una imagen.', imageScale: 'PNG {scale}', printScreen: 'Imprimir la pantalla', notSettled: 'Las revisiones aún calculan. La imagen dirá «sin terminar».',

  // about
  aboutTitle: 'Acerca de', aboutWhat: 'Stringyard planea el patio donde tubos de polietileno se unen a tope en sartas, y revisa el plano en vivo.', aboutVersion: 'Versión {app}, versión de archivo {file}.',
  cautionTitle: 'Precaución', caution: 'Stringyard solo orienta sobre el plano. Primero van la ley local, las reglas del dueño, el manual del fabricante del equipo y la persona calificada en sitio.', cautionMore: 'No califica una junta, un izaje, una zanja ni el acercamiento a una línea eléctrica. Cada distancia de seguridad muestra su fuente o las palabras «regla de la casa».',
  privacyTitle: 'Privacidad', privacy: 'Todo lo que dibuja queda en este dispositivo. Nada se envía a ningún lado salvo que usted comparta un archivo o una imagen.', noticesTitle: 'Bibliotecas y letra',
  keysTitle: 'Mapa de teclas', keysAbout: 'Las teclas actúan con el foco en planta, cinta o lista, nunca mientras escribe.',

  // start
  startWhat: 'Planee el patio donde se fusiona el tubo y vea al momento qué no va a funcionar.', startNew: 'Un patio nuevo', startNewAbout: 'Seis preguntas cortas; todas se pueden saltar.', startExample: 'Ver un ejemplo', startExampleAbout: 'Una copia; se puede dejar como estaba.', startOpen: 'Abrir un archivo',
  startLocal: 'Funciona sin señal. Nada sale de este dispositivo.', examplesAbout: 'Se abre una copia. Se puede dejar como estaba en cualquier momento.', exampleCopy: 'copia de un ejemplo', isExample: 'Esto es copia de un ejemplo.',
  newYardAbout: 'Salte lo que no sepa: queda sin saber y se lista por confirmar.', stripLength: 'largo de la franja', stripWidth: 'ancho de la franja', drawIt: 'Dibujarlo',
  usualSetUp: 'Montaje habitual', usualSetUpAbout: 'cama de carga, un primer soporte a medio tubo de las mordazas, un segundo soporte nivelado a la salida', proposal: 'Propuesta', proposalAbout: 'en línea cortada; nada ha cambiado aún',

  // states
  heldElsewhere: 'Abierto en otra ventana: esta solo lee.', takeOver: 'Tomar el control', regionFailed: '{name}: falló esta parte de la pantalla. Su trabajo está guardado.',
  oldBrowserTitle: 'Este navegador es muy viejo', oldBrowser: 'Stringyard necesita un navegador de los últimos años. Aquí falta: {missing}.',
  blockedTitle: 'Almacenamiento bloqueado', blocked: 'Este navegador no deja guardar nada, quizá por una ventana privada. Puede seguir y guardar un archivo a mano.', goOn: 'Seguir sin guardar',
}
