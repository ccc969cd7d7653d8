import type { Localized } from '../messages/localized.ts'
import type { ActionName } from './actions.ts'

/**
 * The one table that binds keys and that the '?' help is made from. Keys act only while plan, tape or item list has the
 * focus, never while somebody types (WCAG 2.1.4). 'Mod' is Ctrl, on a Mac Cmd. Digits are left to distances.
 */
export type KeyGroup = 'edit' | 'move' | 'select' | 'view' | 'tools' | 'findings'

export interface KeyBinding {
  keys: readonly string[]
  action: ActionName
  group: KeyGroup
  does: Localized
}

export const keyGroups: Readonly<Record<KeyGroup, Localized>> = {
  edit: { en: 'Edit', es: 'Editar' },
  move: { en: 'Move what is chosen', es: 'Mover lo elegido' },
  select: { en: 'Choose', es: 'Elegir' },
  view: { en: 'View', es: 'Vista' },
  tools: { en: 'Tools', es: 'Herramientas' },
  findings: { en: 'Findings', es: 'Hallazgos' },
}

export const keyTable: readonly KeyBinding[] = [
  { keys: ['Mod+z'], action: 'undo', group: 'edit', does: { en: 'undo', es: 'deshacer' } },
  { keys: ['Mod+Shift+z', 'Mod+y'], action: 'redo', group: 'edit', does: { en: 'redo', es: 'rehacer' } },
  { keys: ['Delete', 'Backspace'], action: 'delete', group: 'edit', does: { en: 'delete', es: 'borrar' } },
  { keys: ['Mod+d'], action: 'duplicate', group: 'edit', does: { en: 'duplicate', es: 'duplicar' } },
  { keys: ['Mod+c'], action: 'copy', group: 'edit', does: { en: 'copy, also to another layout', es: 'copiar, también a otro plano' } },
  { keys: ['Mod+x'], action: 'cut', group: 'edit', does: { en: 'cut', es: 'cortar' } },
  { keys: ['Mod+v'], action: 'paste', group: 'edit', does: { en: 'paste', es: 'pegar' } },
  { keys: ['l'], action: 'lock', group: 'edit', does: { en: 'lock or unlock', es: 'bloquear o desbloquear' } },
  { keys: ['e'], action: 'spreadEvenly', group: 'edit', does: { en: 'spread evenly between the first and the last', es: 'repartir entre el primero y el último' } },
  { keys: ['Shift+x'], action: 'reverse', group: 'edit', does: { en: 'swap infeed and exit', es: 'intercambiar entrada y salida' } },
  { keys: ['y'], action: 'holdStill', group: 'edit', does: { en: 'hold still: freeze all edits, or release', es: 'vista fija: congelar cambios, o soltar' } },

  { keys: ['ArrowRight'], action: 'nudgeRight', group: 'move', does: { en: '1 in or 10 mm to the right', es: '1 pulg o 10 mm a la derecha' } },
  { keys: ['ArrowLeft'], action: 'nudgeLeft', group: 'move', does: { en: '1 in or 10 mm to the left', es: '1 pulg o 10 mm a la izquierda' } },
  { keys: ['ArrowUp'], action: 'nudgeUp', group: 'move', does: { en: '1 in or 10 mm up the sheet', es: '1 pulg o 10 mm hacia arriba en la hoja' } },
  { keys: ['ArrowDown'], action: 'nudgeDown', group: 'move', does: { en: '1 in or 10 mm down the sheet', es: '1 pulg o 10 mm hacia abajo en la hoja' } },
  { keys: ['Shift+ArrowRight'], action: 'nudgeRightFar', group: 'move', does: { en: '1 ft or 100 mm to the right', es: '1 pie o 100 mm a la derecha' } },
  { keys: ['Shift+ArrowLeft'], action: 'nudgeLeftFar', group: 'move', does: { en: '1 ft or 100 mm to the left', es: '1 pie o 100 mm a la izquierda' } },
  { keys: ['Shift+ArrowUp'], action: 'nudgeUpFar', group: 'move', does: { en: '1 ft or 100 mm up the sheet', es: '1 pie o 100 mm hacia arriba en la hoja' } },
  { keys: ['Shift+ArrowDown'], action: 'nudgeDownFar', group: 'move', does: { en: '1 ft or 100 mm down the sheet', es: '1 pie o 100 mm hacia abajo en la hoja' } },
  { keys: ['PageUp'], action: 'raise', group: 'move', does: { en: 'saddle ¼ in or 5 mm higher', es: 'apoyo ¼ pulg o 5 mm más alto' } },
  { keys: ['PageDown'], action: 'lower', group: 'move', does: { en: 'saddle ¼ in or 5 mm lower', es: 'apoyo ¼ pulg o 5 mm más bajo' } },
  { keys: ['r'], action: 'turnLeft', group: 'move', does: { en: 'turn 15° to the left', es: 'girar 15° a la izquierda' } },
  { keys: ['Shift+r'], action: 'turnRight', group: 'move', does: { en: 'turn 15° to the right', es: 'girar 15° a la derecha' } },

  { keys: ['.'], action: 'nextItem', group: 'select', does: { en: 'next item along the line', es: 'siguiente elemento en la línea' } },
  { keys: [','], action: 'previousItem', group: 'select', does: { en: 'item before', es: 'elemento anterior' } },
  { keys: ['Mod+a'], action: 'selectAll', group: 'select', does: { en: 'all', es: 'todo' } },
  { keys: ['k'], action: 'selectKind', group: 'select', does: { en: 'all of this kind', es: 'todos de este tipo' } },
  { keys: ['Escape'], action: 'escape', group: 'select', does: { en: 'put the tool down, then choose nothing', es: 'soltar la herramienta, luego no elegir nada' } },
  { keys: ['Enter'], action: 'openTag', group: 'select', does: { en: 'open the tag of what is chosen', es: 'abrir la etiqueta de lo elegido' } },
  { keys: ['i'], action: 'itemList', group: 'select', does: { en: 'list of all items', es: 'lista de todos los elementos' } },

  { keys: ['f'], action: 'fit', group: 'view', does: { en: 'show all', es: 'ver todo' } },
  { keys: ['o'], action: 'fold', group: 'view', does: { en: 'fold away what is alike, or open the fold', es: 'plegar lo que es igual, o abrir el pliegue' } },
  { keys: ['z'], action: 'zoomToSelection', group: 'view', does: { en: 'zoom to what is chosen', es: 'acercar a lo elegido' } },
  { keys: ['b'], action: 'previousView', group: 'view', does: { en: 'back to the view before', es: 'volver a la vista anterior' } },
  { keys: ['+', '='], action: 'zoomIn', group: 'view', does: { en: 'zoom in', es: 'acercar' } },
  { keys: ['-'], action: 'zoomOut', group: 'view', does: { en: 'zoom out', es: 'alejar' } },
  { keys: ['Alt+ArrowRight'], action: 'panRight', group: 'view', does: { en: 'move the view right', es: 'mover la vista a la derecha' } },
  { keys: ['Alt+ArrowLeft'], action: 'panLeft', group: 'view', does: { en: 'move the view left', es: 'mover la vista a la izquierda' } },
  { keys: ['Alt+ArrowUp'], action: 'panUp', group: 'view', does: { en: 'move the view up', es: 'mover la vista hacia arriba' } },
  { keys: ['Alt+ArrowDown'], action: 'panDown', group: 'view', does: { en: 'move the view down', es: 'mover la vista hacia abajo' } },
  { keys: ['t'], action: 'turnRound', group: 'view', does: { en: 'turn the sheet round', es: 'dar vuelta a la hoja' } },
  { keys: ['u'], action: 'northUp', group: 'view', does: { en: 'north up, or along the tape', es: 'norte arriba, o a lo largo de la cinta' } },
  { keys: ['h'], action: 'hideKind', group: 'view', does: { en: 'hide this kind', es: 'ocultar este tipo' } },
  { keys: ['Shift+h'], action: 'showAllKinds', group: 'view', does: { en: 'show all kinds again', es: 'mostrar todos los tipos' } },

  { keys: ['s'], action: 'snapping', group: 'tools', does: { en: 'snapping on or off (Alt suspends it)', es: 'ajuste sí o no (Alt lo suspende)' } },
  { keys: ['m'], action: 'measure', group: 'tools', does: { en: 'measure', es: 'medir' } },
  { keys: ['w'], action: 'rollOff', group: 'tools', does: { en: 'where would a pipe roll? Enter drops it, arrows carry it', es: '¿a dónde rodaría un tubo? Intro lo suelta, las flechas lo llevan' } },
  { keys: ['d'], action: 'strip', group: 'tools', does: { en: 'draw the strip', es: 'dibujar la franja' } },
  { keys: ['p'], action: 'bend', group: 'tools', does: { en: 'put a bend into the pull path', es: 'poner una curva en el recorrido' } },
  { keys: ['j'], action: 'runThrough', group: 'view', does: { en: 'run-through: the job stage by stage', es: 'ensayo: el trabajo etapa por etapa' } },
  { keys: ['?'], action: 'help', group: 'tools', does: { en: 'these keys', es: 'estas teclas' } },

  { keys: ['g'], action: 'critical', group: 'findings', does: { en: 'which stand must not move', es: 'qué soporte no debe moverse' } },
  { keys: ['a'], action: 'asSetHeights', group: 'findings', does: { en: 'heights as set', es: 'alturas como quedaron' } },
  { keys: ['n'], action: 'nextFinding', group: 'findings', does: { en: 'next finding', es: 'siguiente hallazgo' } },
  { keys: ['Shift+n'], action: 'previousFinding', group: 'findings', does: { en: 'finding before', es: 'hallazgo anterior' } },
]

export interface KeyPress {
  key: string
  ctrlKey: boolean
  metaKey: boolean
  altKey: boolean
  shiftKey: boolean
}

/** 'Mod+Shift+z': modifiers in this order; Shift counts for letters and named keys only, where the sign does not say it. */
export const chordOf = ({ key, ctrlKey, metaKey, altKey, shiftKey }: KeyPress): string => {
  const isSign = key.length === 1 && !/[a-zñ]/i.test(key)
  return [ctrlKey || metaKey ? 'Mod' : '', altKey ? 'Alt' : '', shiftKey && !isSign ? 'Shift' : '', key.length === 1 ? key.toLowerCase() : key].filter(Boolean).join('+')
}

const byChord = new Map(keyTable.flatMap(({ keys, action }) => keys.map((chord) => [chord, action] as const)))

export const actionOfKey = (press: KeyPress): ActionName | null => byChord.get(chordOf(press)) ?? null

/** Whether keys belong to somebody typing there. */
export const isTypingIn = (target: EventTarget | null): boolean =>
  typeof HTMLElement !== 'undefined' && target instanceof HTMLElement && (target.isContentEditable || ['INPUT', 'TEXTAREA', 'SELECT'].includes(target.tagName))

const signs: Readonly<Record<string, Localized>> = {
  Mod: { en: 'Ctrl', es: 'Ctrl' }, Shift: { en: 'Shift', es: 'Mayús' }, Delete: { en: 'Del', es: 'Supr' }, Backspace: { en: 'Backspace', es: 'Retroceso' },
  ArrowRight: { en: '→', es: '→' }, ArrowLeft: { en: '←', es: '←' }, ArrowUp: { en: '↑', es: '↑' }, ArrowDown: { en: '↓', es: '↓' }, Enter: { en: 'Enter', es: 'Intro' },
  PageUp: { en: 'Page up', es: 'Re Pág' }, PageDown: { en: 'Page down', es: 'Av Pág' }, Escape: { en: 'Esc', es: 'Esc' },
}

/** A chord as it is written for a person. */
export const chordText = (chord: string, language: 'en' | 'es'): string =>
  chord.split(/\+(?=.)/).map((part) => signs[part]?.[language] ?? (part.length === 1 ? part.toUpperCase() : part)).join(' + ')

/** Rows of the help page, made from the table that binds. */
export const keyRows = (language: 'en' | 'es'): { group: Localized; keys: string; does: Localized }[] =>
  keyTable.map(({ group, keys, does }) => ({ group: keyGroups[group], keys: keys.map((chord) => chordText(chord, language)).join(language === 'es' ? ' o ' : ' or '), does }))
