import { useMemo, useState, type ReactNode } from 'react'
import { importWords as words } from '../../messages/ui/importWords.ts'
import { layPlan, MOST_AWAY_M, type LaidPlan } from '../../read/plan/layPlan.ts'
import { readPlan } from '../../read/plan/readPlan.ts'
import { planUnits, type ForeignPlan, type PlanUnit } from '../../read/plan/types.ts'
import { layoutOf } from '../../scene/document.ts'
import { useCommand } from '../command.ts'
import { Figure } from '../common/Figure.tsx'
import { Panel } from '../common/Panel.tsx'
import { useDocuments, useSite, useUi, useWords } from '../context.tsx'
import { ChoiceField } from '../fields/OtherFields.tsx'
import '../styles/bringIn.css'
import { FilePick } from './FilePick.tsx'
import { keyOf, kindChoices, layersOf, recordsOfPlan, suggestedKinds, type KindByLayer, type LayerGroup } from './layers.ts'
import { pickedText } from './pickedText.ts'
import { SmallPlan } from './SmallPlan.tsx'

type Where = 'map' | 'middle'

/** A DXF or GeoJSON file: what it holds, unit, place and kinds to choose, a small plan, then one step. */
export const PlanPanel = ({ onClose }: { onClose: () => void }): ReactNode => {
  const { local, figure } = useWords()
  const { app } = useUi()
  const run = useCommand()
  const layout = useDocuments((state) => layoutOf(state.document))
  const setUp = useSite((state) => state.site.setUp)
  const [picked, setPicked] = useState<{ name: string; plan: ForeignPlan } | null>(null)
  const [refusal, setRefusal] = useState<string | null>(null)
  const [unit, setUnit] = useState<PlanUnit | null>(null)
  const [where, setWhere] = useState<Where>('map')
  const [kinds, setKinds] = useState<KindByLayer>({})
  const datum = setUp?.datum ?? null
  const laid = useMemo(
    () => (picked === null || unit === null ? null : layPlan(picked.plan, { unit, where, datum: datum ?? { xM: 0, yM: 0 }, mapOrigin: layout.mapOrigin })),
    [picked, unit, where, datum, layout.mapOrigin],
  )
  const groups = useMemo(() => (picked === null ? [] : layersOf(picked.plan)), [picked])
  const pick = async (file: File): Promise<void> => {
    setPicked(null)
    setUnit(null)
    const text = await pickedText(file)
    if (!text.ok) {
      setRefusal(local(words.tooLarge, { name: text.name, size: String(text.sizeMB), most: String(text.mostMB) }))
      return
    }
    const read = readPlan(text.text)
    if (!read.ok) {
      setRefusal(local(words.notRead, { reason: local(read.reason) }))
      return
    }
    setRefusal(null)
    setPicked({ name: text.name, plan: read.plan })
    setKinds(suggestedKinds(layersOf(read.plan)))
  }
  const shown = laid?.ok === true ? laid.laid : null
  const isTooFar = shown !== null && shown.awayM > MOST_AWAY_M
  const records = shown === null || isTooFar ? [] : recordsOfPlan(shown.shapes, kinds)
  const bring = (plan: LaidPlan): void => {
    if (!run('bringIn', { records, mapOrigin: plan.mapOrigin })) return
    app.view.setState({ panel: null, notice: { text: local(words.broughtShapes, { count: records.length }), undo: true, atRevision: app.documents.getState().revision } })
  }
  const reason = refusal ?? (laid?.ok === false ? local(words.notRead, { reason: local(laid.reason) }) : null)
  return (
    <Panel
      title={local(words.planTitle)} onClose={onClose} wide
      foot={<button type="button" className="primary" disabled={records.length === 0} onClick={() => { if (shown !== null) bring(shown) }}>{local(words.bringShapes, { count: records.length })}</button>}
    >
      <p>{local(words.planAbout)}</p>
      <div className="buttons">
        <FilePick label={local(words.openPlan)} accept=".dxf,.geojson,.json,application/geo+json,application/json" onPick={(file) => void pick(file)} />
        {picked === null ? null : <span className="bring-name">{local(words.fromFile, { name: picked.name })}</span>}
      </div>
      {reason === null ? null : <p role="alert" className="bring-refused"><strong>{reason}</strong> {local(words.untouched)}</p>}
      {picked === null ? null : (
        <>
          <p className="bring-facts">
            {picked.plan.saidUnit === null ? local(words.fileSaysNoUnit) : local(words.fileSaysUnit, { unit: local(words[`plan_${picked.plan.saidUnit}`]) })}
            {picked.plan.skipped.length === 0 ? '' : ` ${local(words.skipped, { list: picked.plan.skipped.map(({ what, count }) => `${what} × ${count}`).join(', ') })}`}
          </p>
          <div className="field-grid">
            <ChoiceField label={local(words.planUnit)} value={unit} choices={planUnits.map((value) => ({ value, label: local(words[`plan_${value}`]) }))} onCommit={setUnit} />
            <ChoiceField
              label={local(words.whereTo)} value={unit === 'degrees' ? 'middle' : where} disabled={unit === 'degrees'}
              choices={(['map', 'middle'] as const).map((value) => ({ value, label: local(words[`where_${value}`]) }))} onCommit={setWhere}
            />
          </div>
          <LayerFields groups={groups} kinds={kinds} onKind={(key, kind) => setKinds({ ...kinds, [key]: kind })} />
          <div className="answer" role="status">
            {shown === null
              ? <span>{local(words.stillOpen, { what: local(words.planUnit) })}</span>
              : <span><Figure text={isTooFar ? local(words.tooFar, { far: figure({ kind: 'length', value: shown.awayM }) }) : local(words.chosenShapes, { count: records.length, all: shown.shapes.length })} /></span>}
            {shown === null ? null : <span className="quiet-text"><Figure text={local(words.extent, { width: figure({ kind: 'length', value: shown.widthM }), height: figure({ kind: 'length', value: shown.heightM }) })} /></span>}
            {shown === null || shown.mapOrigin === null ? null : <span className="quiet-text">{local(words.originKept, { east: `${shown.mapOrigin.eastM} m`, north: `${shown.mapOrigin.northM} m` })}</span>}
          </div>
          {shown === null || isTooFar ? null : <SmallPlan shapes={shown.shapes.filter((shape) => (kinds[keyOf(shape)] ?? null) !== null)} datum={datum} />}
        </>
      )}
    </Panel>
  )
}

const LayerFields = ({ groups, kinds, onKind }: { groups: readonly LayerGroup[]; kinds: KindByLayer; onKind: (key: string, kind: string | null) => void }): ReactNode => {
  const { local } = useWords()
  const labels = { area: words.areasAs, line: words.linesAs, point: words.pointsAs } as const
  return (
    <>
      <h3>{local(words.layers)}</h3>
      <div className="field-grid">
        {groups.map((group) => (
          <ChoiceField
            key={group.key} label={`${local(labels[group.as], { name: group.layer === '' ? '–' : group.layer })} (${group.count})`} value={kinds[group.key] ?? null}
            choices={[{ value: null, label: local(words.leaveLayer) }, ...kindChoices(group.as).map(({ kind, name }) => ({ value: kind, label: local(name) }))]}
            onCommit={(kind) => onKind(group.key, kind)}
          />
        ))}
      </div>
    </>
  )
}
