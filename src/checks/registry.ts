import type { CheckDefinition } from './finding.ts'
import { asSet } from './list/asSet.ts'
import { balance } from './list/balance.ts'
import { beyondRun } from './list/beyondRun.ts'
import { exitStands } from './list/exitStands.ts'
import { faceGap } from './list/faceGap.ts'
import { feed } from './list/feed.ts'
import { floatingStands } from './list/floatingStands.ts'
import { groundGuessed } from './list/groundGuessed.ts'
import { jawEffort } from './list/jawEffort.ts'
import { jawsFitted } from './list/jawsFitted.ts'
import { liftsOut } from './list/liftsOut.ts'
import { linedUp } from './list/linedUp.ts'
import { machinePitch } from './list/machinePitch.ts'
import { missingInputs } from './list/missingInputs.ts'
import { noseLanding } from './list/noseLanding.ts'
import { notSettled } from './list/notSettled.ts'
import { offsetChange } from './list/offsetChange.ts'
import { ownedGear } from './list/ownedGear.ts'
import { pipeLifts } from './list/pipeLifts.ts'
import { saddleHeight } from './list/saddleHeight.ts'
import { sag } from './list/sag.ts'
import { setOutTolerance } from './list/setOutTolerance.ts'
import { sideForce } from './list/sideForce.ts'
import { smallSlope } from './list/smallSlope.ts'
import { standLoad } from './list/standLoad.ts'
import { stickBow } from './list/stickBow.ts'
import { standTips } from './list/standTips.ts'
import { sticksLength } from './list/sticksLength.ts'
import { typicalFigures } from './list/typicalFigures.ts'
import { siteChecks } from './siteChecks.ts'

/**
 * Every check, in the order of the notes within a level. A new check is one file and one line here.
 * `smallSlope` and `notSettled` look at the solves the others asked for, so they come last.
 */
export const checks: readonly CheckDefinition[] = [
  sticksLength,
  jawEffort, liftsOut, exitStands, faceGap, stickBow, offsetChange, sag, setOutTolerance, asSet,
  noseLanding, standLoad, standTips, saddleHeight, floatingStands,
  feed, balance, pipeLifts,
  linedUp, sideForce, machinePitch, jawsFitted, groundGuessed, beyondRun, missingInputs, typicalFigures, ownedGear,
  ...siteChecks,
  smallSlope,
  notSettled,
]
