import { settle } from './settle.ts'
import { keeperOn, put, storeOf, testTables } from './keeperBench.ts'
import { memoryTables } from '../../src/app/storage/tables.ts'
import { seededRandom } from './seededRandom.ts'

export interface KillReport {
  kills: number
  /** Seeds after which the layout did not come back as one of the states it went through, or lost more than what was not yet written. */
  broken: number[]
  editsLost: number
}

/** Kills storage at a random write of a random run of edits, undos and redos, and opens again. */
export const runKillSoak = async ({ seed, count }: { seed: number; count: number }): Promise<KillReport> => {
  const report: KillReport = { kills: 0, broken: [], editsLost: 0 }
  for (let i = 0; i < count; i++) {
    const random = seededRandom(seed + i)
    const disk = memoryTables()
    const tables = testTables(disk)
    const documents = storeOf()
    await keeperOn(tables).attach(documents, 'yard:1', null)
    const steps = 5 + Math.floor(random() * 130)
    tables.dieAt = 2 + Math.floor(random() * steps)
    const states = [JSON.stringify(documents.getState().document)]
    for (let step = 0; step < steps; step++) {
      const pick = random()
      if (pick < 0.15) documents.getState().undo()
      else if (pick < 0.25) documents.getState().redo()
      else put(documents, `n${Math.floor(random() * 20)}`, String(step), pick < 0.4 ? 'typing' : undefined)
      const now = JSON.stringify(documents.getState().document)
      if (now !== states.at(-1)) states.push(now)
      await settle()
    }
    report.kills++
    const back = await keeperOn(testTables(disk)).load('yard:1')
    const at = back === null ? -1 : states.lastIndexOf(JSON.stringify(back.document))
    // One state a write: the state after the last write that reached the disk, or a later equal one.
    if (back === null || at < Math.min(states.length, tables.writes) - 1) report.broken.push(seed + i)
    else report.editsLost += states.length - 1 - at
  }
  return report
}
