import { attach, detach, lock, lockStaked } from './attach.ts'
import { changeZone, clearLimit, clearZoneChange, setAsSet, setLimit } from './beside.ts'
import { bringIn } from './bringIn.ts'
import type { Command } from './command.ts'
import { duplicate, paste } from './copy.ts'
import { useGear } from './gear.ts'
import { dropBy, setHeight } from './height.ts'
import { moveBy, rotateBy, setOnRun, slideBy } from './move.ts'
import { place, placeRow } from './place.ts'
import { remove } from './remove.ts'
import { sequenceOf } from './sequence.ts'
import { setField, setJob, setLayout, setRun, setSetUp, setStickCount } from './set.ts'
import { spaceAt, spreadEvenly } from './spacing.ts'
import { drawStrip, reverse } from './strip.ts'
import { addString, joinString, parkStrings, setString, splitString, splitStrings } from './strings.ts'
import { crewDefaults, setHoldBack, usualSetUp } from './usual.ts'
import { addVertex, moveVertex, removeVertex } from './vertices.ts'

export { CommandError, type Command } from './command.ts'
export { stakedIds } from './attach.ts'
export { copyOf } from './copy.ts'
export { deleteSays, type DeleteSays } from './remove.ts'

/**
 * The command of a name, or undefined. `run(document, args, env)` is pure and gives an edit; `label(document, args)` names
 * the step. Both throw CommandError (field, reason in both languages) where the arguments are wrong.
 */
export const commandOf = (name: string): Command | undefined => byName.get(name)

/** Every command; a new one is one file and one line here. */
export const commands: readonly Command[] = [
  place, placeRow, moveBy, slideBy, setOnRun, rotateBy, setHeight, dropBy, setField, setJob, setLayout, setSetUp, setRun, setStickCount, splitStrings, addString, splitString, joinString, setString, parkStrings,
  moveVertex, addVertex, removeVertex, remove, duplicate, paste, spreadEvenly, spaceAt, reverse, lock, lockStaked, attach, detach,
  drawStrip, usualSetUp, crewDefaults, setHoldBack, setLimit, clearLimit, setAsSet, changeZone, clearZoneChange, useGear, bringIn,
  sequenceOf(commandOf),
]

const byName = new Map(commands.map((command) => [command.name, command]))
