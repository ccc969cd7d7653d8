import type { ReactNode } from 'react'
import { isPlan, thePlan, tidyWhatIf, type WhatIf } from '../../derive/whatIf.ts'
import { whatIfWords } from '../../messages/ui/whatIfWords.ts'
import { labelsOf } from '../../scene/resolve.ts'
import { Figure } from '../common/Figure.tsx'
import { useShownDocument, useSite, useUi, useView, useWords } from '../context.tsx'
import { caseLine, temperatureStepText, warmerStepC, windStepMPerS } from './caseText.ts'

interface Tap {
  key: string
  label: string
  isOn: boolean
  /** Why it cannot be tapped; null: it can. */
  notNow: string | null
  /** The what-if after the tap. */
  next: WhatIf
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
  const back = (): void => app.view.setState({ shownCase: thePlan, ...(isOut ? { panel: null } : {}) })
  return (
    <section className="case-band" data-plan={isOfPlan} aria-label={local(whatIfWords.band)}>
      <p role="status">
        <strong><Figure text={caseLine(shown, reader, nameOf) ?? local(whatIfWords.none)} /></strong>
        {isOfPlan ? null : <span>{local(whatIfWords.notThePlan)}</span>}
      </p>
      {showsTaps ? (
        <div className="case-taps" role="group" aria-label={local(whatIfWords.taps)}>
          {taps.map(({ key, label, isOn, notNow, next }) => (
            <button
              type="button" key={key} className={`tap-${key}`} aria-pressed={isOn} disabled={notNow !== null} title={notNow ?? label}
              onClick={() => app.view.setState({ shownCase: { ...app.view.getState().shownCase, whatIf: next } })}
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
  const { whatIf } = useView((view) => view.shownCase)
  const selection = useView((view) => view.selection)
  const site = useSite((state) => state.site)
  const { warmerC, missing = [], wetGrass = false, windMPerS } = whatIf
  // The one taken away stays on its tap, so that a second tap brings it back.
  const chosen = missing[0] ?? selection.find((id) => site.supports.some(({ itemId }) => itemId === id)) ?? nearestTheJaws(site.supports)
  const hasGrass = site.run !== null && (site.run.surfaces.length === 0 || site.run.surfaces.some((surface) => surface === null || surface === 'grass'))
  const step = warmerStepC(reader)
  const wind = windStepMPerS(reader)
  return [
    { key: 'warmer', label: local(whatIfWords.warmer, { by: temperatureStepText(warmerC ?? step, reader) }), isOn: warmerC !== undefined, notNow: null, next: tidyWhatIf({ ...whatIf, warmerC: warmerC === undefined ? step : 0 }) },
    {
      key: 'missing', label: chosen === null ? local(whatIfWords.missingOne) : local(whatIfWords.missing, { items: nameOf(chosen) }), isOn: missing.length > 0,
      notNow: chosen === null ? local(whatIfWords.noStand) : null, next: tidyWhatIf({ ...whatIf, missing: missing.length > 0 || chosen === null ? [] : [chosen] }),
    },
    { key: 'wetGrass', label: local(whatIfWords.wetGrass), isOn: wetGrass, notNow: hasGrass ? null : local(whatIfWords.noGrass), next: tidyWhatIf({ ...whatIf, wetGrass: !wetGrass }) },
    { key: 'wind', label: local(whatIfWords.wind, { speed: { kind: 'speed', value: windMPerS ?? wind } }), isOn: windMPerS !== undefined, notNow: null, next: tidyWhatIf({ ...whatIf, windMPerS: windMPerS === undefined ? wind : 0 }) },
  ]
}

/** Nothing chosen: the stand on the exit side that stands nearest the jaws, else any support. */
function nearestTheJaws(supports: readonly { itemId: string; kind: string; runningM: number }[]): string | null {
  const nearest = (kinds: readonly string[]): string | undefined => supports.filter(({ kind, runningM }) => kinds.includes(kind) && runningM > 0).toSorted((a, b) => a.runningM - b.runningM)[0]?.itemId
  return nearest(['stand']) ?? nearest(['roller']) ?? supports[0]?.itemId ?? null
}
