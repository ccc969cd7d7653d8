/** Words of the screen, English. Plain, exact, lower case where the sheet is; `{name}` stands for a value. */
export const en = {
  // levels and sources
  levelStop: 'STOP', levelFix: 'FIX', levelCheck: 'CHECK', levelNote: 'NOTE', levelMet: 'met',
  sourcePublished: 'published', sourceMechanics: 'mechanics', sourcePlate: 'plate', sourceJobRule: 'job rule', sourceHouseRule: 'house rule',
  sourceEdited: 'edited', sourceFromMemory: 'from memory, confirm', source: 'source',
  valueAtMost: '{measured}, at most {limit}', valueAtLeast: '{measured}, at least {limit}', valueLimit: '{measured}, limit {limit}', valueLimitOnly: 'limit {limit}',

  // common
  close: 'Close', cancel: 'Cancel', back: 'Back', yes: 'yes', no: 'no', open: 'Open', remove: 'Delete', rename: 'Rename', name: 'name', note: 'note',
  more: 'more', moreTitle: 'More tools and settings', less: 'less', language: 'language', untitled: 'untitled layout', working: 'working', understood: 'All right', tryAgain: 'Try again',
  notSaid: 'not said', accept: 'Accept', clear: 'Clear', letGo: 'Let go', lock: 'Lock', locked: 'Locked', duplicate: 'Duplicate', attach: 'Attach', detach: 'Detach',
  undoLoud: 'UNDO', saveCopy: 'Save a copy', commandFailed: 'That was not done: {reason}',

  // fields
  fieldUnknown: 'not known', fieldMixed: 'several values', fieldChoose: 'choose', fieldWhich: 'Which?',
  fieldEcho: 'typed {typed}, read as {read}', fieldLive: 'reads as {read}, {other}', fieldUnreadable: '{why}; for example {example}. The old value stays.',
  fieldBounds: 'must lie between {least} and {most}; the old value stays',
  basisTypical: 'typical', basisPlate: 'plate', basisMeasured: 'measured', basisJobRule: 'job rule',

  // heading
  plan: 'Plan', planAlong: 'along the tape, exit to the right', planTurned: 'along the tape, exit to the left', planNorthUp: 'north up',
  sideView: 'side view', tape: 'Tape', sheet: 'Sheet', leaves: 'Leaves', zonesAsAt: 'zones as at', atPhase: 'at {phase}', phasePlain: '{phase}',
  phase_setUp: 'set-up', phase_offload: 'offload', phase_load: 'load', phase_fuse: 'fuse', phase_pull: 'pull', phase_move: 'move', phase_rest: 'rest', phase_tieIn: 'tie-in',
  jointOf: 'joint {joint} of {count}', jointLength: 'string {length}',
  undo: 'undo', undoNone: 'undo: nothing to take back', undoStep: 'undo: {step}', redo: 'redo', redoNone: 'redo: nothing taken back', redoStep: 'redo: {step}',
  showAll: 'show all', foldSheet: 'fold', foldOpen: 'open the fold',
  turnSheet: 'turn the sheet round', northUp: 'north up', alongTape: 'along the tape', holdStill: 'hold still', whatIf: 'what if', whatIfOpen: 'what if: warmer, a stand missing, wet grass, wind', items: 'items', itemsOpen: 'list of all items',
  holdStillNotice: 'Held still: release it to edit.', readOnlyNotice: 'This window only reads: take over to edit.',

  // gear
  gearTitle: 'Gear', gearGroup_line: 'line', gearGroup_lift: 'lift, pull', gearGroup_site: 'site', gearGroup_people: 'people',
  gearLeft: '{count} left', gearTooMany: '{count} too many', gearPerson: 'a person, 6 ft', gearScale: 'all at one scale', gearAddOnTape: 'Add gear',
  tools: 'Tools', toolMeasure: 'Measure', toolStrip: 'Draw strip', toolLevel: 'Level', toolNote: 'Note', toolRow: 'A row of',
  hint_place: 'Tap where it goes.', hint_row: 'Press where the row begins and sweep along it.', hint_measure: 'Press at one end and sweep to the other.', hint_strip: 'Press at the infeed end and sweep to where the string goes.',
  gearListTitle: 'Gear we own', gearListAbout: 'Kept on this device, apart from the layouts. Figures are read off the plates; what is placed takes them over.', gearListEmpty: 'Nothing here yet. What you own would stand here with its count, sizes and ratings.',
  gearAdd: 'add gear', gearCount: 'how many', gearNotCounted: 'not counted', gearOwned: '{count} owned, {left} left', gearExport: 'Save gear list', gearImport: 'Open gear list',
  gearRemoveTitle: 'Delete {name} from the gear list?', gearRemoveLines: 'Placed items keep the figures they took over.',

  // notes
  notesTitle: 'Margin notes', notesAll: 'All notes', notesLeaf: 'notes {count}', noteOf: '{number} of {count}', notesNone: 'Nothing open. What is wrong with the layout would stand here, the worst first.',
  notesEmpty: 'Findings stand here as soon as there is something to check.', noSupports: 'Nothing carries the pipe yet.', emptyPipe: 'Say which pipe', emptyUsual: 'Show the usual set-up',
  showOnPlan: 'Show on the plan', doIt: 'Do it', why: 'Why?', whyOf: 'Why? {sentence}', whyTitle: 'Why?', whyMissing: 'This page is missing from the app.',
  toConfirm: 'to confirm: {count}', met: 'met: {count}', checksFailed: 'The checks could not be worked out.',
  countsSaid: '{stop} STOP, {fix} FIX, {check} CHECK', countsOpen: 'Findings: {counts}',
  cautionShort: 'Advice only. Local law, the owner’s rules, the maker’s manual and the qualified person on site come first.',

  // tag
  tagTitle: 'Chosen item', chosenCount: '{count} chosen', distance: 'distance', offset: 'offset', saddle: 'saddle', turnAngle: 'turned against the line', spacing: 'apart', spreadEvenly: 'Spread evenly',
  heightRule: 'height', heightRule_onAxis: 'on the jaw line', heightRule_belowAxis: 'below the jaw line', heightRule_aboveGround: 'above ground', heightRule_unknown: 'not known', heightDrop: 'below it by', heightBy: 'raise all by',
  sideLong: 'first side', sideShort: 'second side', rangeSaid: 'range {low} to {high}, now {now}', rangeOut: 'out of range {low} to {high}, now {now}', rangeOutWord: 'out of range',
  resultCarries: 'carries {load}', resultFloats: 'floats, pipe {gap} above it', resultNotReached: 'no pipe over it in this stage', resultMissing: 'loads wait for what is not known yet', resultNone: 'loads could not be worked out',
  nudgePad: 'Fine moves of {label}', nudgeHold: 'hold to repeat', nudgeUp: 'up {length}', nudgeDown: 'down {length}', nudgeLeft: 'left {length}', nudgeRight: 'right {length}', nudgeInfeed: 'infeed {length}', nudgeExit: 'exit {length}',
  removeTitle: 'Delete {names}?', removeLocked: 'Locked items are not deleted.', removed: '{names} deleted.',

  // items
  itemsTitle: 'All items', itemsFind: 'find', itemsNone: 'Nothing is placed yet. Each item would stand here with its distance and its worst finding.', itemsNotFound: 'Nothing by that name.',
  moveBy: 'Move what is chosen', moveAlong: 'along by', moveAcross: 'across by', placeNew: 'Place by distance', placeWhat: 'what', placeIt: 'Place it',
  showAndHide: 'Show and hide', showAndHideAbout: 'What is hidden still counts in every check.',

  // title block and job
  titleBlock: 'Title block', titleOpen: 'Title block: {title}', revision: 'revision', revisionShort: 'rev {revision}', savedHere: 'saved here', saved: 'saved', saving: 'saving', savedNot: 'not saved', savedBlocked: 'storage blocked', savedReadOnly: 'reads only',
  savedBlockedLong: 'This browser lets the app keep nothing. Everything works, but only a saved file keeps your work.',
  sticksAndLength: 'sticks and length', units: 'units', limitsShort: 'limits', limitsHouse: 'house', limitsChanged: 'house, {count} changed', share: 'share', image: 'image',
  pipeUnknown: 'not said yet', pipeInches: '{size} in {system} DR {dr} {material}', pipeMetric: '{size} mm SDR {dr} {material}', odBoth: '{inches} in ({millimetres} mm)',
  sticksUnknown: 'not known yet', sticksTimes: '{sticks} × {stick} = {made}', sticksOne: 'One stick, no joint: {made}, {over}.', sticksMany: '{sticks} sticks, {joints} joints: {made} made, {over}.',
  sticksFewer: 'One stick fewer, {sticks}, gives {made}, {over}.', sticksOver: '{length} over', sticksShort: '{length} short', sticksNeed: 'Pipe, length needed and stick length give sticks, joints and the made length.',
  jobTitle: 'Job', layoutTitle: 'name of the layout', jobPipe: 'pipe', jobLengths: 'Lengths', jobFusing: 'Fusing and pulling', jobGround: 'Ground', jobNote: 'note on the job',
  neededLength: 'length needed', stickLength: 'stick length', otherStickLength: 'other stick length to be had', tails: 'tails and test joint, in all', jointLoss: 'lost at each joint',
  wallTemperature: 'wall temperature of the pipe', temperatureSwing: 'warmest wall less coldest', firstStick: 'first stick', firstStickLoader: 'set on the exit by the loader', firstStickFed: 'fed through the machine',
  noseHold: 'nose while pulled', noseHold_slung: 'slung', noseHold_sled: 'on a sled', noseHold_lifted: 'lifted', noseHold_free: 'free',
  fallAlong: 'fall along the strip, to the exit', fallAcross: 'fall across, to the right', machinePitch: 'pitch of the machine', followsGround: 'follows the ground', surface: 'ground under the string',
  surface_gravel: 'gravel', surface_grass: 'grass', surface_wetGrass: 'wet grass', surface_asphalt: 'asphalt', surface_concrete: 'concrete', surface_clay: 'clay', surface_sand: 'sand', surface_mat: 'mats', surface_liner: 'liner',
  pipeSystem: 'sizing', pipeSystemIPS: 'IPS (inches)', pipeSystemDIPS: 'DIPS (inches)', pipeSystemmetric: 'metric (mm)', pipeSize: 'size', pipeSizeChoice: '{size} {unit}: {od}', inches: 'in', pipeDr: 'DR', pipeSdr: 'SDR', pipeMaterial: 'class',
  pipeOd: 'true outside diameter {od}', pipeFacts: 'true outside diameter {od}, wall at least {wall}, {weight}',

  // units and settings
  unitsTitle: 'Units', unitsAbout: 'Changes how figures are written, never the figures. Any unit can be typed at any time.', unitsAll: 'all quantities', unitsSingle: 'Single quantities', unitsAsAll: 'as all',
  units_feetInches: 'feet and inches', units_metric: 'metric',
  quantity_length: 'lengths', quantity_shortLength: 'short lengths', quantity_height: 'heights', quantity_force: 'forces and loads', quantity_mass: 'masses', quantity_moment: 'moments', quantity_stress: 'stress', quantity_pressure: 'pressure', quantity_lineLoad: 'weight of pipe', quantity_temperature: 'temperature', quantity_area: 'areas', quantity_speed: 'speeds',
  settingsTitle: 'Settings and help', theme: 'light', theme_auto: 'as the device', theme_day: 'day', theme_sun: 'full sun', theme_night: 'night', hand: 'hand', handRight: 'right', handLeft: 'left', snapping: 'snapping', startPage: 'Start page',

  // limits
  limitsTitle: 'Limits', limitsAbout: 'Starting limits are common practice unless a source says otherwise. A changed one keeps who changed it and why.', limit: 'limit',
  when_above: 'over', when_atLeast: 'from', when_below: 'under', limitEdit: '{limit}: {level}', limitWas: 'Starting value: {value}', limitValue: 'new value', limitReason: 'reason', limitWho: 'who says so', limitSet: 'Set it', limitReset: 'put back', limitChangedBy: 'changed by {who}: {reason}',

  // layouts and files
  layoutsTitle: 'Layouts and files', stored_kept: 'Every edit is kept on this device.', stored_mayGo: 'Every edit is kept on this device. The browser may clear it: save a file too.',
  saveFile: 'Save file', openFile: 'Open a file', saveEverything: 'Save everything', putBack: 'Put it back as it was', layoutsHere: 'On this device', layoutsNone: 'No layout yet. What you draw is kept here by itself.', openNow: 'open now',
  removeLayoutTitle: 'Delete “{title}”?', removeLayoutGone: 'It is taken off this device. A saved file stays where it is.',
  pointsTitle: 'Points in time', pointsNone: 'None yet. One is kept before anything is replaced.', pointOpen: 'Go back to it', pointKeep: 'Keep this moment',
  deviceTitle: 'This device', deviceUsed: '{used} MB of {allowed} MB used', clearDevice: 'Clear this device', clearTitle: 'Clear this device?', clearLayouts: '{count} layouts, their history, the gear list and the settings are taken off this device.', clearGone: 'It cannot be undone. Save everything first if any of it is needed.', clearYes: 'Clear it all',
  openHereTitle: '“{title}” is here already', openHereWhy: 'Replace keeps a point in time of the one here first.', openReplace: 'Replace it', openCopy: 'Open as a copy', openWithoutTitle: 'Open without these {count} items?', openWithout: 'Open a copy without them', openRefused: 'This file was not opened', openRefusedKept: 'What was open is unchanged.', openNamed: 'Open {title}',
  shareTitle: 'Share', shareAbout: 'Hands on the file of this layout: by the device’s share sheet, or as a download. It opens in this app on any device.', shareFile: 'Share the file',
  imageTitle: 'Image', imageAbout: 'Plan, side view, title, running dimensions, bar scale, north and open findings on one picture.', imageScale: 'PNG {scale}', printScreen: 'Print the screen', notSettled: 'The checks are still working. The image will say “not settled”.',

  // about
  aboutTitle: 'About', aboutWhat: 'Stringyard plans the yard where sticks of polyethylene pipe are butt-fused into strings, and checks the layout live.', aboutVersion: 'Version {app}, file version {file}.',
  cautionTitle: 'Caution', caution: 'Stringyard advises on layout only. Local law, the owner’s rules, the equipment maker’s manual and the qualified person on site come first.', cautionMore: 'It does not qualify a joint, a lift, a trench or an approach to a power line. Every safety distance shows its source or the words “house rule”.',
  privacyTitle: 'Privacy', privacy: 'Everything you draw stays on this device. Nothing is sent anywhere unless you share a file or an image yourself.', noticesTitle: 'Libraries and lettering',
  keysTitle: 'Keyboard map', keysAbout: 'Keys act while plan, tape or item list has the focus, never while you type.',

  // start
  startWhat: 'Lay out the yard where pipe is fused, and see at once what will not work.', startNew: 'A new yard', startNewAbout: 'Six short questions, each may be skipped.', startExample: 'Look at an example', startExampleAbout: 'A copy; it can be put back as it was.', startOpen: 'Open a file',
  startLocal: 'Works without signal. Nothing leaves this device.', examplesAbout: 'A copy is opened. It can be put back as it was at any time.', exampleCopy: 'copy of an example', isExample: 'This is a copy of an example.',
  newYardAbout: 'Skip what you do not know: it stays unknown and is listed to be confirmed.', stripLength: 'length of the strip', stripWidth: 'width of the strip', drawIt: 'Draw it',
  usualSetUp: 'Usual set-up', usualSetUpAbout: 'rack, a first stand half a stick from the jaws, a second level exit stand', proposal: 'Proposal', proposalAbout: 'shown dashed; nothing is changed yet',

  // states
  heldElsewhere: 'Open in another window: this one only reads.', takeOver: 'Take over', regionFailed: '{name}: this part of the screen failed. Your work is kept.',
  oldBrowserTitle: 'This browser is too old', oldBrowser: 'Stringyard needs a browser of the last few years. Missing here: {missing}.',
  blockedTitle: 'Storage is blocked', blocked: 'This browser lets the app keep nothing, perhaps in a private window. You can go on and save a file by hand.', goOn: 'Go on without',
} as const
