import { carriage } from './carriage.ts'
import { feedCorridor } from './feedCorridor.ts'
import { loaderSweep } from './loaderSweep.ts'
import { nose } from './nose.ts'
import { overhead } from './overhead.ts'
import { rackRollOff } from './rackRollOff.ts'
import { rope } from './rope.ts'
import { stringSide } from './stringSide.ts'
import type { ZoneDefinition } from './zone.ts'

/** Every zone that comes from the gear. A new one is one file and one line here. */
export const zoneCatalogue: readonly ZoneDefinition[] = [rackRollOff, feedCorridor, carriage, loaderSweep, rope, nose, stringSide, overhead]
