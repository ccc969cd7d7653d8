import { pipeProperties } from '../../engine/pipe/pipeProperties.ts'
import { houseJointLossM, stickPlan } from '../../engine/pipe/stickPlan.ts'
import { drsOf, sizesOf } from '../../engine/pipe/tables.ts'
import { startingLimits } from '../../engine/limits.ts'
import type { PipeFacts } from '../../ui/services.ts'

/** Facts of the pipe for the panels: ui may not import the engine, so the app hands them in. */
export const pipeFacts: PipeFacts = {
  sizes: sizesOf,
  drs: drsOf,
  limits: startingLimits,
  pipe: (pipe) => {
    const outcome = pipe === null ? null : pipeProperties(pipe)
    if (outcome?.status !== 'ok') return null
    const { odM, minimumWallM, lineLoadNPerM } = outcome.value
    return { odM, minimumWallM, lineLoadNPerM }
  },
  sticks: ({ pipe, neededLengthM, stickLengthM, tailsM, jointLossM }) => {
    const properties = pipe === null ? null : pipeProperties(pipe)
    const lossM = jointLossM ?? (properties?.status === 'ok' ? houseJointLossM(properties.value.odM) : null)
    const plan = stickPlan({ neededLengthM, tailsM, stickLengthM, jointLossM: lossM })
    return plan.status === 'ok' ? plan.value : null
  },
}
