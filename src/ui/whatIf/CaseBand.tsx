import type { ReactNode } from 'react'
import { isPlan, thePlan, tidyWhatIf, type WhatIf } from '../../derive/whatIf.ts'
import { whatIfWords } from '../../messages/ui/whatIfWords.ts'
import { labelsOf } from '../../scene/resolve.ts'
import type { App } from '../../state/app.ts'
import { Figure } from '../common/Figure.tsx'
import { useShownDocument, useSite, useUi, useView, useWords } from '../context.tsx'
import { caseLine, warmerStepC, windStepMPerS } from './caseText.ts'

interface Tap {
  key: string
  label: string
  isOn: boolean
  /** Why it cannot be tapped; null: it can. */
  notNow: string | null
  /** What the tap changes of the what-if; null where nothing could be found to change. */
  change: () => WhatIf | Promise<WhatIf | null>
}

/**
 * A band across the sheet while something else than the plan is shown, or the taps of a what-if are out: it says what is
 * supposed and leads back. Changes the view alone: no document, no history.
 */
const CaseBand = (): ReactNode => {
  const reader = useWords()
  const { local } = reader
  const { app } = useUi()
  const shown = useView((view) => view.shownCase)
  const isOut = useView((view) => view.panel === 'whatIf')
  const document = useShownDocument()
  const labels = labelsOf(document)
  const nameOf = (id: string): string => {
    const label = labels.get(id) ?? ''
    return label === '' ? local(whatIfWords.item) : label
  }
  const taps = useTaps(nameOf)
  const isOfPlan = isPlan(shown)
  const showsTaps = isOut || Object.keys(tidyWhatIf(shown.whatIf)).length > 0
  const tapped = async (change: Tap['change']): Promise<void> => {
    const changed = await change()
    if (changed === null) return
    // Taken from the view now: another tap may have come first while the worker was asked.
    const { shownCase } = app.view.getState()
    app.view.setState({ shownCase: { ...shownCase, whatIf: tidyWhatIf({ ...shownCase.whatIf, ...changed }) } })
  }
  const back = (): void => app.view.setState({ shownCase: shown.stringId === undefined ? thePlan : { ...thePlan, stringId: shown.stringId }, ...(isOut ? { panel: null } : {}) })
  return (
    <section className="case-band" data-plan={isOfPlan} aria-label={local(whatIfWords.band)}>
      <p role="status">
        <strong><Figure text={caseLine(shown, reader, nameOf) ?? local(whatIfWords.none)} /></strong>
        {isOfPlan ? null : <span>{local(whatIfWords.notThePlan)}</span>}
      </p>
      {showsTaps ? (
        <div className="case-taps" role="group" aria-label={local(whatIfWords.taps)}>
          {taps.map(({ key, label, isOn, notNow, change }) => (
            <button
              type="button" key={key} className={`tap-${key}`} aria-pressed={isOn} disabled={notNow !== null} title={notNow ?? label}
              onClick={() => { void tapped(change) }}
            ><Figure text={label} /></button>
          ))}
        </div>
      ) : null}
      <button type="button" className="case-back" onClick={back}>{local(isOfPlan ? whatIfWords.close : whatIfWords.back)}</button>
    </section>
  )
}
export default CaseBand

/** One tap each, and all of them together: warmer, one support missing, wet grass, wind. */
const useTaps = (nameOf: (id: string) => string): readonly Tap[] => {
  const reader = useWords()
  const { local } = reader
  const { app } = useUi()
  const { whatIf } = useView((view) => view.shownCase)
  const selection = useView((view) => view.selection)
  const site = useSite((state) => state.site)
  const { warmerC, missing = [], wetGrass = false, windMPerS } = whatIf
  // The one taken away stays on its tap, so that a second tap brings it back.
  const chosen = missing[0] ?? selection.find((id) => site.supports.some(({ itemId }) => itemId === id)) ?? null
  const hasGrass = site.run !== null && (site.run.surfaces.length === 0 || site.run.surfaces.some((surface) => surface === null || surface === 'grass'))
  const step = warmerStepC(reader)
  const wind = windStepMPerS(reader)
  const takeAway = async (): Promise<WhatIf | null> => {
    if (missing.length > 0) return { missing: [] }
    const itemId = chosen ?? (await criticalOne(app))
    return itemId === null ? null : { missing: [itemId] }
  }
  return [
    { key: 'warmer', label: local(whatIfWords.warmer, { by: { kind: 'temperatureChange', value: warmerC ?? step } }), isOn: warmerC !== undefined, notNow: null, change: () => ({ warmerC: warmerC === undefined ? step : 0 }) },
    { key: 'missing', label: chosen === null ? local(whatIfWords.missingOne) : local(whatIfWords.missing, { items: nameOf(chosen) }), isOn: missing.length > 0, notNow: site.supports.length === 0 && missing.length === 0 ? local(whatIfWords.noStand) : null, change: takeAway },
    { key: 'wetGrass', label: local(whatIfWords.wetGrass), isOn: wetGrass, notNow: hasGrass || wetGrass ? null : local(whatIfWords.noGrass), change: () => ({ wetGrass: !wetGrass }) },
    { key: 'wind', label: local(whatIfWords.wind, { speed: { kind: 'speed', value: windMPerS ?? wind } }), isOn: windMPerS !== undefined, notNow: null, change: () => ({ windMPerS: windMPerS === undefined ? wind : 0 }) },
  ]
}

/** The stand or roller whose loss does most to the joint; where none can be ranked, the exit stand nearest the jaws, else any support. */
const criticalOne = async (app: App): Promise<string | null> => {
  const { sinkM } = app.critical.store.getState()
  const ranking = await app.ask({ name: 'critical', args: { sinkM } })
  const { supports } = app.site.getState().site
  const isRack = (itemId: string): boolean => supports.some((view) => view.itemId === itemId && view.kind === 'rack')
  const ranked = ranking?.supports.filter(({ rank, itemId }) => rank !== null && !isRack(itemId)) ?? []
  const nearest = supports.filter(({ kind, runningM }) => kind !== 'rack' && runningM > 0).toSorted((a, b) => a.runningM - b.runningM)
  return ranked[0]?.itemId ?? nearest[0]?.itemId ?? supports[0]?.itemId ?? null
}
