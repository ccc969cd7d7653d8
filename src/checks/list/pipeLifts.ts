import { sourceOf } from '../limits.ts'
import { atRun, boundFor, defineCheck, finding, levelFor, machineIds, q, say } from '../make.ts'

export const pipeLifts = defineCheck({
  id: 'pipe-lifts',
  title: { en: 'Pipe lifts raise the pipe clear of the jaws', es: 'Los levantatubos libran el tubo de las mordazas' },
  cost: 'slow',
  run: (site, { limits, mechanics }) => {
    const machine = site.placed.get(site.jaws.machineId ?? '')?.record
    // An unknown travel is named by the missing inputs.
    if (machine?.kind !== 'machine' || machine.figures.liftTravelM.value === null) return []
    const limit = limits.limit('lift-clear')
    const worst = mechanics.liftClearances().toSorted((a, b) => a.clearM - b.clearM)[0]
    if (worst === undefined) return []
    const common = { source: sourceOf(limit), phases: ['pull'] as const, items: machineIds(site), where: atRun(worst.runningM, site.jaws.bopLevelM) }
    if (machine.figures.liftTravelM.value === 0) {
      return [finding('pipe-lifts', { ...common, level: 'CHECK', what: say('The machine has no pipe lifts: the pipe drags over the lower jaws.', 'La máquina no tiene levantatubos: el tubo roza las mordazas inferiores.'), move: say('Hold the string up with a sling at the machine while it is pulled.', 'Sostenga la sarta con una eslinga junto a la máquina al jalar.') })]
    }
    const level = levelFor(limit, worst.clearM)
    const values = { clear: q('shortLength', Math.abs(worst.clearM)), joint: worst.joint }
    return [finding('pipe-lifts', {
      ...common,
      level,
      measured: q('shortLength', worst.clearM),
      limit: q('shortLength', boundFor(limit, level === 'FIX' ? 'CHECK' : level)),
      bound: 'least',
      what: level === 'met'
        ? say('On its lifts the pipe clears the lower jaws.', 'Sobre los levantatubos el tubo libra las mordazas inferiores.')
        : worst.clearM < 0
          ? say('On its lifts the pipe still drags in the jaws, {clear} deep, after joint {joint}.', 'Aun sobre los levantatubos el tubo roza las mordazas, {clear}, tras la junta {joint}.', values)
          : say('On its lifts the pipe clears the lower jaws by only {clear}.', 'Sobre los levantatubos el tubo libra las mordazas por solo {clear}.', values),
      ...(level === 'met' ? {} : { move: say('Lower the stands next to the machine a little, or lift with a sling.', 'Baje un poco los soportes junto a la máquina, o levante con eslinga.') }),
    })]
  },
})
