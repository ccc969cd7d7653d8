import type { ReactNode } from 'react'
import { useStore } from 'zustand'
import { revisionWords } from '../../messages/ui/revisionWords.ts'
import { jobOf, layoutOf, recordsOf } from '../../scene/document.ts'
import { replacedLetter } from '../../scene/revision.ts'
import type { Level } from '../../checks/finding.ts'
import { Figure } from '../common/Figure.tsx'
import { Icon } from '../common/Icon.tsx'
import { LevelMark } from '../common/LevelMark.tsx'
import { useDocuments, useLaggingRun, useResults, useSite, useUi, useView, useWords } from '../context.tsx'
import { worstLevel } from '../findings/order.ts'
import { levelKey } from '../findings/words.ts'
import { pipeWords, stickWords } from './pipeWords.ts'
import { timeWords } from './timeWords.ts'

const shownLevels = ['STOP', 'FIX', 'CHECK', 'NOTE'] as const satisfies readonly Exclude<Level, 'met'>[]

/** The block at the foot of the sheet, as on paper. Its cells are the menu. */
export const TitleBlock = (): ReactNode => {
  const words = useWords()
  const { say } = words
  const { app, services } = useUi()
  const form = useView((view) => view.form)
  const document = useDocuments((state) => state.document)
  const layout = layoutOf(document)
  const job = jobOf(document)
  const plan = useStickPlan()
  const lineLoadNPerM = useSite((state) => state.site.pipe.properties?.lineLoadNPerM ?? null)
  const changedLimits = new Set(recordsOf(document, 'limitChange').map(({ limitId, bound }) => `${limitId}.${bound}`)).size
  const open = (panel: string): void => app.view.setState({ panel })
  const title = layout.title === '' ? say('untitled') : layout.title
  const pipe = pipeWords(job.pipe, words)
  const weight = lineLoadNPerM === null ? '' : `, ${words.figure({ kind: 'lineLoad', value: lineLoadNPerM })}`
  const sticks = stickWords(plan, job.stickLengthM, words)
  const saved = useSavedWords()
  const replaced = replacedLetter(document)
  const was = replaced === null ? '' : words.local(revisionWords.was, { before: replaced })
  if (form === 'phone') {
    return (
      <footer className="title-line">
        <button type="button" onClick={() => open('title')} aria-label={say('titleOpen', { title })}>
          <WorstMark />
          <span className="title-line-main"><strong>{title}</strong><span><Figure text={sticks} /></span></span>
          <span className="title-line-side"><span>{say('revisionShort', { revision: layout.revision })}{was === '' ? '' : `, ${was}`}</span><span>{saved}</span></span>
        </button>
      </footer>
    )
  }
  return (
    <footer className="title-block" aria-label={say('titleBlock')}>
      <Cell area="title" caption={null} label={say('jobTitle')} onOpen={() => open('job')}><strong className="title-name">{title}</strong></Cell>
      <Cell area="pipe" caption={say('jobPipe')} onOpen={() => open('job')}><Figure text={pipe === null ? say('pipeUnknown') : `${pipe}${form === 'desktop' ? weight : ''}`} /></Cell>
      <Cell area="sticks" caption={say('sticksAndLength')} onOpen={() => open('job')}><Figure text={sticks} /></Cell>
      <Cell area="units" caption={say('units')} onOpen={() => open('units')}>{say(`units_${layout.displayUnits}`)}</Cell>
      <Cell area="revision" caption={say('revision')} onOpen={() => open('compare')}>{layout.revision}{was === '' ? null : <span className="title-was"> {was}</span>}</Cell>
      <Cell area="saved" caption={say('savedHere')} onOpen={() => open('layouts')}>{saved}</Cell>
      <Cell area="limits" caption={say('limitsShort')} onOpen={() => open('limits')}>{changedLimits === 0 ? say('limitsHouse') : say('limitsChanged', { count: changedLimits })}</Cell>
      <Counts />
      <Cell area="share" caption={null} onOpen={() => open('share')}>{say('share')}</Cell>
      <Cell area="image" caption={null} onOpen={() => open('image')}>{say('image')}</Cell>
      <Cell area="more" caption={null} label={say('moreTitle')} onOpen={() => open('more')}><Icon name="more" /></Cell>
      {services.storage.getState().isExample ? <span className="visually-hidden">{say('isExample')}</span> : null}
    </footer>
  )
}

/** Sticks and made length; the same figures in a new site draw nothing anew. */
export const useStickPlan = (): { sticks: number; madeLengthM: number } | null => {
  const sticks = useSite((state) => state.site.sticks.plan?.sticks ?? null)
  const madeLengthM = useSite((state) => state.site.sticks.plan?.madeLengthM ?? null)
  return sticks === null || madeLengthM === null ? null : { sticks, madeLengthM }
}

const Cell = ({ area, caption, label, onOpen, children }: { area: string; caption: string | null; label?: string; onOpen: () => void; children: ReactNode }): ReactNode => (
  <button type="button" className={`title-cell title-${area}`} onClick={onOpen} aria-label={label} aria-haspopup="dialog">
    {caption === null ? null : <span className="title-caption">{caption}</span>}
    <span className="title-value">{children}</span>
  </button>
)

/** Time of the last save, or what is in the way of it. */
const useSavedWords = (): string => {
  const { say, language } = useWords()
  const { services } = useUi()
  const saved = useStore(services.storage, (state) => state.saved)
  const savedAt = useStore(services.storage, (state) => state.savedAt)
  switch (saved) {
    case 'saved': return savedAt === null ? say('saved') : timeWords(savedAt, language)
    case 'saving': return say('saving')
    case 'unsaved': return say('savedNot')
    case 'blocked': return say('savedBlocked')
    case 'readOnly': return say('savedReadOnly')
  }
}

const Counts = (): ReactNode => {
  const { say } = useWords()
  const { app } = useUi()
  const form = useView((view) => view.form)
  const { run, isStale } = useLaggingRun()
  const counts = run?.counts ?? null
  const status = useResults((state) => state.status)
  const spoken = counts === null ? say(status === 'failed' ? 'checksFailed' : 'working') : shownLevels.map((level) => `${say(levelKey(level))} ${counts[level]}`).join(', ')
  return (
    <button type="button" className="title-cell title-counts" data-stale={isStale} aria-label={say('countsOpen', { counts: spoken })} onClick={() => app.view.setState(app.view.getState().form === 'desktop' ? { leaf: 'notes' } : { panel: 'notes' })}>
      {counts === null
        ? <span className="title-value">{say(status === 'failed' ? 'checksFailed' : 'working')}</span>
        : shownLevels.map((level) => <span key={level} className="count"><LevelMark level={level} sizePx={form === 'desktop' ? 16 : 19} /><strong>{counts[level]}</strong></span>)}
    </button>
  )
}

const WorstMark = (): ReactNode => {
  const { run } = useLaggingRun()
  const worst = worstLevel(run?.findings ?? [])
  if (worst === null || worst === 'met' || run === null) return <span className="worst-mark" />
  return <span className="worst-mark"><LevelMark level={worst} sizePx={30} number={run.counts[worst]} named /></span>
}

