import type { YardDocument } from '../../scene/document.ts'
import { layoutOf } from '../../scene/document.ts'
import { readFile, readLimits } from '../../scene/readFile.ts'
import type { App } from '../../state/app.ts'
import { comparisonOf } from '../../state/comparison.ts'
import type { CompareWith, Outcome } from '../../ui/services.ts'
import type { Keeper } from './keeper.ts'
import { reasonOf } from './reasons.ts'

const gone: Outcome = { ok: false, reason: { en: 'That plan is not on this device any more.', es: 'Ese plano ya no está en este equipo.' } }

/** Holds another plan against the open one: a point in time, a layout of this device, a file. None of them is opened. */
export const compareWith = async (app: App, keeper: Keeper, what: CompareWith): Promise<Outcome> => {
  const take = (name: string, document: YardDocument | null): Outcome => {
    if (document === null) return gone
    comparisonOf(app).setState({ compared: { name, document } })
    return { ok: true }
  }
  try {
    if ('pointId' in what) return take(what.name, await keeper.loadPoint(what.pointId))
    if ('layoutId' in what) return take(what.name, (await keeper.load(what.layoutId))?.document ?? null)
    const { file } = what
    if (file.size > readLimits.chars) return { ok: false, reason: { en: `${file.name} is larger than 20 MB; a layout file is not.`, es: `${file.name} pesa más de 20 MB; un archivo de plano no.` } }
    const read = readFile(await file.text())
    if (read.ok) return take(`${file.name}, ${layoutOf(read.document).revision}`, read.document)
    const [first] = read.issues
    return { ok: false, reason: { en: `${file.name}: ${first?.path ?? ''} ${first?.message.en ?? ''}`, es: `${file.name}: ${first?.path ?? ''} ${first?.message.es ?? ''}` } }
  } catch (error) {
    return { ok: false, reason: reasonOf(error) }
  }
}
