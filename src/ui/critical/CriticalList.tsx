import { useEffect, type ReactNode } from 'react'
import { useStore } from 'zustand'
import type { CriticalEffect, CriticalSupport } from '../../derive/critical.ts'
import { criticalWords as words } from '../../messages/ui/criticalWords.ts'
import { isOldRanking } from '../../state/critical.ts'
import { Figure } from '../common/Figure.tsx'
import { Icon } from '../common/Icon.tsx'
import { useSite, useUi, useView, useWords, type Words } from '../context.tsx'
import { bringBesideList } from '../items/besideList.ts'
import { NumberField } from '../fields/NumberField.tsx'
import { showPlace } from '../findings/actions.ts'
import { levelKey } from '../findings/words.ts'
import { RankMark } from './RankMark.tsx'

/** Each support missing and let down in turn, the worst first, beside the sheet; a tap chooses it. */
const CriticalList = (): ReactNode => {
  const reader = useWords()
  const { local } = reader
  const { app, services } = useUi()
  const state = useStore(app.critical.store)
  const stamp = useSite((site) => site.stamp)
  const form = useView((view) => view.form)
  // Opening the list is what asks for it.
  useEffect(() => app.critical.turn(true), [app])
  const { ranking, sinkM, hasFailed } = state
  const isOld = isOldRanking(state, stamp)
  const isThere = ranking !== null
  useEffect(() => {
    const { ranking: first } = app.critical.store.getState()
    if (isThere && first !== null) bringBesideList(app, first.supports.flatMap(({ rank, runningM }) => (rank === null ? [] : [runningM])))
  }, [app, isThere])
  const done = (): void => {
    app.critical.turn(false)
    app.view.setState({ panel: null })
  }
  const onDrawing = (): void => {
    app.view.setState({ panel: null, leaf: 'plan' })
    services.act('showRanked')
  }
  const ranked = ranking?.supports.filter(({ rank }) => rank !== null) ?? []
  const others = ranking?.supports.filter(({ rank }) => rank === null) ?? []
  return (
    <section className="item-list critical-list" aria-label={local(words.title)} onKeyDown={(event) => { if (event.key === 'Escape') done() }}>
      <header className="panel-head"><h2>{local(words.title)}</h2><button type="button" className="quiet square" aria-label={reader.say('close')} onClick={done}><Icon name="close" /></button></header>
      <p className="quiet-text">{local(words.about)}</p>
      <NumberField layout="row" label={local(words.sinkBy)} kind="shortLength" value={sinkM} min={0.0005} max={1} name="critical/sinkM" onCommit={(value) => { if (value !== null) app.critical.sinkBy(value) }} />
      <p role="status" className="critical-state" data-shown={isOld}>{hasFailed ? local(words.failed) : isOld ? local(words.working) : ''}</p>
      {ranking === null ? null : (
        <div className="critical-body" data-stale={isOld} aria-busy={isOld}>
          {ranking.missing.length > 0 ? <p>{local(words.missing, { what: [...new Set(ranking.missing.map(({ label }) => local(label)))].join(', ') })}</p> : null}
          {ranking.base === 'met' || ranking.supports.length === 0 ? null : <p><strong>{local(words.baseBad, { level: reader.say(levelKey(ranking.base)) })}</strong></p>}
          {ranking.missing.length === 0 && ranking.supports.length === 0 ? <p>{local(words.none)}</p> : null}
          {ranking.supports.length > 0 ? <h3>{local(ranked.length > 0 ? words.ranked : words.bears)}</h3> : null}
          {ranked.length > 0 ? <ol className="critical-rows">{ranked.map((support) => <SupportRow key={support.key} support={support} sinkM={ranking.sinkM} isOld={isOld} />)}</ol> : null}
          {others.length > 0 ? (
            <details>
              <summary>{local(words.others)} ({others.length})</summary>
              <ul className="critical-rows">{others.map((support) => <SupportRow key={support.key} support={support} sinkM={ranking.sinkM} isOld={isOld} />)}</ul>
            </details>
          ) : null}
          {ranking.supports.length > 0 ? <p className="quiet-text"><Figure text={`${local(words.judged)} ${ranking.beyondCount === 0 ? local(words.reachAll) : local(words.reach, { reach: { kind: 'length', value: ranking.reachM }, count: ranking.beyondCount })}`} /></p> : null}
        </div>
      )}
      <div className="buttons">
        {form === 'desktop' ? null : <button type="button" className="primary" onClick={onDrawing}>{local(words.onDrawing)}</button>}
        <button type="button" onClick={done}>{local(words.done)}</button>
      </div>
    </section>
  )
}
export default CriticalList

const SupportRow = ({ support, sinkM, isOld }: { support: CriticalSupport; sinkM: number; isOld: boolean }): ReactNode => {
  const reader = useWords()
  const { local } = reader
  const { app } = useUi()
  const isChosen = useView((view) => view.selection.includes(support.itemId))
  const { rank, label, level, itemId, runningM, removed, sunk } = support
  const choose = (): void => {
    app.view.setState({ selection: [itemId] })
    const placed = app.site.getState().site.placed.get(itemId)
    if (placed !== undefined) showPlace(app, placed)
  }
  return (
    <li>
      <button type="button" className="critical-row" aria-pressed={isChosen} onClick={choose}>
        {rank === null ? <span className="no-mark" /> : <RankMark rank={rank} level={level} isOld={isOld} />}
        <span className="critical-words">
          <strong><Figure text={`${label}, ${reader.running(runningM)}`} /></strong>
          <EffectWords head={local(words.missingRow)} effect={removed} side={support.side} />
          <EffectWords head={local(words.sunkRow, { by: { kind: 'shortLength', value: sinkM } })} effect={sunk} side={support.side} />
        </span>
      </button>
    </li>
  )
}

const EffectWords = ({ head, effect, side }: { head: string; effect: CriticalEffect; side: CriticalSupport['side'] }): ReactNode => {
  const reader = useWords()
  return <span className="critical-effect"><span><Figure text={`${head}: ${verdictText(effect, reader)}`} /></span><span className="quiet-text"><Figure text={figuresText(effect, side, reader)} /></span></span>
}

/** 'ruins the joint, by the effort at the jaws'. */
const verdictText = ({ level, by }: CriticalEffect, { local }: Words): string => {
  const verdict = local(words[`level_${level}`])
  if (by === 'tips') return `${local(words.tips)}, ${verdict}`
  if (by === 'notSettled') return `${local(words.notSettled)}, ${verdict}`
  return level === 'met' ? verdict : `${verdict}, ${local(words[`by_${by}`])}`
}

const figuresText = (effect: CriticalEffect, side: CriticalSupport['side'], reader: Words): string => {
  const { local, figure } = reader
  const { innerN, outerN, effortRatio, effortChange, faceGapM, faceGapChangeM, offsetChangeM, joint } = effect
  if (innerN === null || outerN === null || effortRatio === null || effortChange === null || faceGapM === null || faceGapChangeM === null || offsetChangeM === null) return ''
  const change = (kind: 'ratio' | 'shortLength', to: number, by: number): { from: string; to: string } => ({ from: figure({ kind, value: Math.max(0, to - by) }), to: figure({ kind, value: to }) })
  return [
    local(words.jaws, { side: local(words[`side_${side}`]), inner: { kind: 'force', value: innerN }, outer: { kind: 'force', value: outerN }, joint }),
    local(words.effort, change('ratio', effortRatio, effortChange)),
    local(words.gap, change('shortLength', faceGapM, faceGapChangeM)),
    local(words.offset, { by: { kind: 'shortLength', value: Math.abs(offsetChangeM) } }),
  ].join(' · ')
}
