import { LAYOUT_ID, layoutOf, type YardDocument } from '../../scene/document.ts'
import { newDocument } from '../../scene/newYard.ts'
import { readFile } from '../../scene/readFile.ts'
import type { App } from '../../state/app.ts'
import type { Localized } from '../../messages/localized.ts'
import type { NewYardForm, OpenHow, OpenOutcome, Outcome } from '../../ui/services.ts'
import { fitAll, foldedFit } from '../../canvas/viewMoves.ts'
import { thePlan } from '../../derive/whatIf.ts'
import { comparisonOf } from '../../state/comparison.ts'
import type { Keeper, Loaded } from './keeper.ts'
import { reasonOf } from './reasons.ts'
import { exampleText } from './pages.ts'

const MOST_FILE_BYTES = 20_000_000

const refused = (en: string, es: string): Outcome => ({ ok: false, reason: { en, es } })

const withLayoutId = (document: YardDocument, layoutId: string): YardDocument => ({ records: { ...document.records, [LAYOUT_ID]: { ...layoutOf(document), layoutId } } })

const restoredOutcome = ({ layouts, points, gear, refused: bad }: { layouts: number; points: number; gear: number; refused: readonly Localized[] }): Outcome => {
  const en = `Put back beside what was here: ${layouts} layouts, ${points} points in time, ${gear} kinds of gear.`
  const es = `Recuperado junto a lo que había: ${layouts} planos, ${points} puntos en el tiempo, ${gear} tipos de equipo.`
  if (bad.length === 0) return { ok: true, said: { en, es } }
  return { ok: false, reason: { en: `${en} Not readable: ${bad.map((one) => one.en).join('; ')}.`, es: `${es} Sin poder leer: ${bad.map((one) => one.es).join('; ')}.` } }
}

/** Opening and starting yards. What was open stays open, and kept, until the new one stands. */
export const makeYards = (app: App, keeper: Keeper) => {
  let exampleName: string | null = null

  const show = async (loaded: Pick<Loaded, 'document'> & Partial<Loaded>): Promise<void> => {
    const { documents, view } = app
    exampleName = loaded.exampleName ?? null
    await keeper.leave()
    documents.getState().setWritable(true)
    view.setState({ shownCase: thePlan })
    comparisonOf(app).setState({ compared: null })
    documents.getState().load(loaded.document, { past: loaded.past ?? [], future: loaded.future ?? [] })
    view.setState({ screen: 'yard', selection: [], tool: null, proposal: null, openFindingKey: null, panel: null, previousViews: [], fold: null, measure: null, joint: 1, noseM: null, runThrough: false })
    const { layoutId } = layoutOf(loaded.document)
    await keeper.attach(documents, layoutId, exampleName)
    await keeper.setLastOpen(layoutId)
    // The bands have no size before the yard is on screen.
    requestAnimationFrame(() => requestAnimationFrame(() => firstView(app)))
  }

  const newLayoutId = (): string => app.env.newId('yard')

  const newYard = async (form: NewYardForm): Promise<Outcome> => {
    await show({ document: newDocument(form, app.env, form.displayUnits) })
    const setUp = Object.values(app.documents.getState().document.records).find((record) => record.kind === 'setUp')
    if (setUp !== undefined && form.stripLengthM !== null) {
      app.view.setState({ proposal: { command: 'usualSetUp', args: { setUpId: setUp.id }, label: { en: 'the usual set-up', es: 'montaje habitual' }, revision: app.documents.getState().revision } })
    }
    return { ok: true }
  }

  const openExample = async (name: string): Promise<Outcome> => {
    const text = await exampleText(name)
    const read = text === null ? null : readFile(text)
    if (read === null || !read.ok) return refused('That example could not be read.', 'No se pudo leer ese ejemplo.')
    await show({ document: withLayoutId(read.document, newLayoutId()), exampleName: name })
    return { ok: true }
  }

  const openLayout = async (layoutId: string): Promise<Outcome> => {
    let loaded: Loaded | null
    try {
      loaded = await keeper.load(layoutId)
    } catch (error) {
      return { ok: false, reason: reasonOf(error) }
    }
    if (loaded === null) return refused('That layout is not on this device any more.', 'Ese plano ya no está en este equipo.')
    await show(loaded)
    if (loaded.recovered !== null) keeper.state.setState({ recovered: loaded.recovered })
    return { ok: true }
  }

  const openFile = async (file: File, how?: OpenHow): Promise<OpenOutcome> => {
    if (file.size > MOST_FILE_BYTES) return refused(`${file.name} is larger than 20 MB; a layout file is not.`, `${file.name} pesa más de 20 MB; un archivo de plano no.`)
    const text = await file.text()
    const restored = text.slice(0, 200).includes('"stringyard-everything"') ? await keeper.restore(text) : null
    if (restored !== null) {
      app.view.setState(restored.settings)
      return restoredOutcome(restored)
    }
    const read = readFile(text)
    if (!read.ok) {
      const reason = issuesInWords(file.name, read.issues)
      if (read.salvage === undefined) return { ok: false, reason }
      if (how !== 'withoutItems') return { ok: 'ask', ask: 'withoutItems', items: read.salvage.dropped.map(({ path, why }) => ({ en: `${path}: ${why.en}`, es: `${path}: ${why.es}` })), reason }
      await show({ document: read.salvage.openAs(newLayoutId()) })
      return { ok: true }
    }
    const { layoutId, title } = layoutOf(read.document)
    const isHere = (await keeper.layouts()).some((entry) => entry.layoutId === layoutId)
    if (isHere && how === undefined) return { ok: 'ask', ask: 'copyOrReplace', title }
    if (isHere && how === 'replace') {
      const present = await keeper.load(layoutId).catch(() => null)
      if (present !== null) await keeper.keepPoint(layoutId, `before ${file.name}`, present.document)
      await show({ document: read.document })
    } else {
      await show({ document: isHere ? withLayoutId(read.document, newLayoutId()) : read.document })
    }
    return { ok: true }
  }

  /** Under an id of its own, whatever is here already. */
  const openCopy = (document: YardDocument): Promise<void> => show({ document: withLayoutId(document, newLayoutId()) })

  const resetExample = async (): Promise<Outcome> => {
    const name = exampleName
    const text = name === null ? null : await exampleText(name)
    const read = text === null ? null : readFile(text)
    if (name === null || read === null || !read.ok) return refused('This yard is not a copy of an example.', 'Este patio no es copia de un ejemplo.')
    const { document } = app.documents.getState()
    const { layoutId } = layoutOf(document)
    await keeper.keepPoint(layoutId, 'before it was put back', document)
    await show({ document: withLayoutId(read.document, layoutId), exampleName: name })
    return { ok: true, said: { en: 'The example is as it was. What you had is kept as a point in time.', es: 'El ejemplo está como estaba. Lo que tenía quedó guardado como punto en el tiempo.' } }
  }

  const openPoint = async (pointId: string): Promise<Outcome> => {
    let document: YardDocument | null
    try {
      document = await keeper.loadPoint(pointId)
    } catch (error) {
      return { ok: false, reason: reasonOf(error) }
    }
    if (document === null) return refused('That point in time is not here any more.', 'Ese punto en el tiempo ya no está.')
    const present = app.documents.getState().document
    await keeper.keepPoint(layoutOf(present).layoutId, 'before going back', present)
    await show({ document: withLayoutId(document, layoutOf(present).layoutId), exampleName })
    return { ok: true }
  }

  return { newYard, openExample, resetExample, openFile, openLayout, openPoint, openCopy, show }
}

const issuesInWords = (name: string, issues: readonly { path: string; message: Localized }[]): Localized => {
  const line = (language: 'en' | 'es'): string => issues.slice(0, 3).map(({ path, message }) => (path === '' ? message[language] : `${path}: ${message[language]}`)).join('; ')
  const more = issues.length > 3 ? { en: `; and ${issues.length - 3} more`, es: `; y ${issues.length - 3} más` } : { en: '', es: '' }
  return { en: `${name} was not opened. ${line('en')}${more.en}`, es: `${name} no se abrió. ${line('es')}${more.es}` }
}

/**
 * How a yard is first shown: whole, or, where there is room for tape and margin, with what is alike folded away. Findings
 * arrive later and may need something of it in sight: the sheet is laid out once more then, unless it was moved meanwhile.
 */
const firstView = (app: App): void => {
  const { view, results, documents } = app
  const lay = (): void => {
    const { site, profile } = app.site.getState()
    const now = view.getState()
    const isCurrent = results.getState().stamp === app.site.getState().stamp
    const findings = isCurrent ? (results.getState().run?.findings ?? []) : []
    const folded = now.form === 'desktop' || now.form === 'tabletLandscape' ? foldedFit(now, site, profile, findings) : null
    view.setState({ ...(folded ?? fitAll(now, site, profile)), previousViews: [] })
  }
  lay()
  const { pxPerM, leftRunningM, fold } = view.getState()
  const { document } = documents.getState()
  if (fold === null) return
  const stop = results.subscribe(({ status, stamp }) => {
    if (status !== 'settled' || stamp !== app.site.getState().stamp) return
    stop()
    const now = view.getState()
    if (documents.getState().document === document && now.pxPerM === pxPerM && now.leftRunningM === leftRunningM && now.selection.length === 0) lay()
  })
}
