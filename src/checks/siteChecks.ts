import type { CheckDefinition } from './finding.ts'
import { bendHold } from './list/bendHold.ts'
import { bendRadius } from './list/bendRadius.ts'
import { breakOver } from './list/breakOver.ts'
import { clearance } from './list/clearance.ts'
import { crewInZone } from './list/crewInZone.ts'
import { endRoom } from './list/endRoom.ts'
import { gaugeDrag } from './list/gaugeDrag.ts'
import { growthGap } from './list/growthGap.ts'
import { holdBack } from './list/holdBack.ts'
import { loaderPlate } from './list/loaderPlate.ts'
import { machineHeld } from './list/machineHeld.ts'
import { negativeDrag } from './list/negativeDrag.ts'
import { noseHold } from './list/noseHold.ts'
import { overheadLine } from './list/overheadLine.ts'
import { parkingRoom } from './list/parkingRoom.ts'
import { pitLength } from './list/pitLength.ts'
import { publicWay } from './list/publicWay.ts'
import { pullerPull } from './list/pullerPull.ts'
import { rackLoad } from './list/rackLoad.ts'
import { rackStops } from './list/rackStops.ts'
import { sideHill } from './list/sideHill.ts'
import { stringSplit } from './list/stringSplit.ts'
import { surfaceScuff } from './list/surfaceScuff.ts'
import { tailSweep } from './list/tailSweep.ts'
import { trenchEdge } from './list/trenchEdge.ts'
import { verticalBend } from './list/verticalBend.ts'
import { windChock } from './list/windChock.ts'
import { zoneInputs } from './list/zoneInputs.ts'

/** Checks of the site and of the people on it, in the order of the notes; the registry takes them all. */
export const siteChecks: readonly CheckDefinition[] = [
  crewInZone, publicWay, overheadLine, trenchEdge, holdBack, negativeDrag, machineHeld, gaugeDrag,
  endRoom, stringSplit, parkingRoom, clearance, bendRadius, bendHold, tailSweep, verticalBend, breakOver, pitLength, pullerPull,
  rackStops, rackLoad, loaderPlate, noseHold,
  surfaceScuff, windChock, sideHill, growthGap, zoneInputs,
]
