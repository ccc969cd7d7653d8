import { useLayoutEffect, useMemo, useState, type ReactNode, type RefObject } from 'react'
import { useStore } from 'zustand'
import { belongs } from '../../checks/stageLevels.ts'
import type { Phase } from '../../scene/parts.ts'
import { planProjection } from '../../state/frames.ts'
import { LevelMark } from '../common/LevelMark.tsx'
import { planWordsOf } from '../../state/planWords.ts'
import { useLaggingRun, usePanels, useSite, useUi, useView } from '../context.tsx'
import type { Box } from '../tag/placement.ts'
import { siteOf } from './actions.ts'
import { cappedNotes } from './capped.ts'
import { routeLeaders, type LeaderNote } from './leaders.ts'
import { numberedFindings } from './order.ts'

/** Phases that belong to a joint. */
const ofJoint: ReadonlySet<Phase> = new Set(['load', 'fuse', 'pull'])

/** The stage shown while the job is stepped through; null otherwise. */
const useStagePhase = (): { phase: Phase; joint: number | null } | null => {
  const isOn = useView((view) => view.runThrough)
  const phase = useView((view) => view.phase)
  const joint = useView((view) => view.joint)
  return useMemo(() => (isOn ? { phase, joint: ofJoint.has(phase) ? joint : null } : null), [isOn, phase, joint])
}

interface LeadersProps {
  /** The element the plan band fills. */
  plan: RefObject<HTMLElement | null>
  /** The scrolling margin; null where there is none and all numbers stand on stems. */
  margin: RefObject<HTMLElement | null> | null
  blocked: readonly Box[]
}

/** Thin lines from the notes to their places, and numbers on stems where a line would cross something. Never in the way of a finger. */
export const Leaders = ({ plan, margin, blocked }: LeadersProps): ReactNode => {
  const { app } = useUi()
  const { run, isStale } = useLaggingRun()
  const openKey = useView((view) => view.openFindingKey)
  const allOf = usePanels((state) => state.allNotesOf)
  const stage = useStagePhase()
  // Only notes that are drawn have a number on the plan; in the run-through those of the stage shown.
  const numbered = useMemo(() => cappedNotes(numberedFindings(run).filter(({ finding }) => stage === null || belongs(finding, stage)), allOf, openKey).flatMap(({ shown }) => shown), [run, allOf, openKey, stage])
  const words = useStore(planWordsOf(app), (state) => state.boxes)
  const pxPerM = useView((view) => view.pxPerM)
  const leftRunningM = useView((view) => view.leftRunningM)
  const midOffsetM = useView((view) => view.midOffsetM)
  const orientation = useView((view) => view.orientation)
  const turned = useView((view) => view.turned)
  const tapeVertical = useView((view) => view.tapeVertical)
  const fold = useView((view) => view.fold)
  const bandSizePx = useView((view) => view.bandSizePx)
  const leftHanded = useView((view) => view.leftHanded)
  const setUp = useSite((state) => state.site.setUp)
  const [noteYPx, setNoteYPx] = useState<ReadonlyMap<string, number>>(new Map())

  const noteKeys = numbered.map(({ finding }) => finding.key).join(' ')

  // Heights of the marks beside the plan, read again when the margin scrolls or its notes change.
  useLayoutEffect(() => {
    const element = margin?.current ?? null
    const top = plan.current
    if (element === null || top === null) return
    const read = (): void => {
      const bounds = element.getBoundingClientRect()
      const offset = top.getBoundingClientRect().top
      const found = new Map<string, number>()
      for (const note of element.querySelectorAll<HTMLElement>('.note[data-key]')) {
        const mark = note.querySelector('.level-mark')?.getBoundingClientRect()
        const key = note.dataset['key']
        if (mark === undefined || key === undefined) continue
        const y = mark.top + mark.height / 2
        if (y > bounds.top + 4 && y < bounds.bottom - 4) found.set(key, Math.round(y - offset))
      }
      setNoteYPx((before) => (before.size === found.size && [...found].every(([key, y]) => before.get(key) === y) ? before : found))
    }
    // A watched element reports once at the start, so nothing is measured in the middle of a render.
    element.addEventListener('scroll', read, { passive: true })
    const observer = new ResizeObserver(read)
    observer.observe(element)
    observer.observe(top)
    for (const note of element.querySelectorAll('.note')) observer.observe(note)
    return () => {
      element.removeEventListener('scroll', read)
      observer.disconnect()
    }
  }, [margin, plan, noteKeys])

  const routed = useMemo(() => {
    const toPx = planProjection({ pxPerM, leftRunningM, midOffsetM, orientation, turned, tapeVertical, bandSizePx, fold }, setUp)
    const notes: LeaderNote[] = numbered.map(({ finding, number }) => {
      const at = siteOf(app, finding)
      // A line for what must be mended and for the note that is open; a line for every word of advice would cross the drawing out.
      const hasLine = margin !== null && (finding.level === 'STOP' || finding.level === 'FIX' || finding.key === openKey)
      return { key: finding.key, number, noteYPx: hasLine ? (noteYPx.get(finding.key) ?? null) : null, place: at === null ? null : toPx(at.xM, at.yM) }
    })
    return routeLeaders({ notes, band: bandSizePx.plan, marginXPx: leftHanded ? 0 : bandSizePx.plan.widthPx, blocked, words })
  }, [app, numbered, pxPerM, leftRunningM, midOffsetM, orientation, turned, tapeVertical, bandSizePx, fold, setUp, noteYPx, margin, leftHanded, blocked, words, openKey])

  if (isStale) return null
  const levelOf = new Map(numbered.map(({ finding }) => [finding.key, finding.level]))
  const { widthPx, heightPx } = bandSizePx.plan
  return (
    <div className="leaders" aria-hidden="true">
      <svg width={widthPx} height={heightPx} viewBox={`0 0 ${widthPx} ${heightPx}`}>
        {routed.leaders.map(({ key, points }) => {
          const d = points.map(({ xPx, yPx }, i) => `${i === 0 ? 'M' : 'L'}${xPx} ${yPx}`).join('')
          const end = points.at(-1)!
          return (
            <g key={key} className={key === openKey ? 'leader leader-open' : 'leader'}>
              <path className="leader-edge" d={d} />
              <path className="leader-line" d={d} />
              <circle cx={end.xPx} cy={end.yPx} r="3.2" />
            </g>
          )
        })}
        {routed.numbers.map(({ key, place, mark }) => <g key={key} className="leader"><path className="leader-edge" d={`M${mark.xPx} ${mark.yPx}L${place.xPx} ${place.yPx}`} /><path className="leader-line" d={`M${mark.xPx} ${mark.yPx}L${place.xPx} ${place.yPx}`} /></g>)}
      </svg>
      {routed.numbers.map(({ key, number, mark }) => {
        const level = levelOf.get(key)
        return level === undefined || level === 'met' ? null : <span key={key} className="leader-number" style={{ left: mark.xPx, top: mark.yPx }}><LevelMark level={level} sizePx={NUMBER_PX} number={number} /></span>
      })}
    </div>
  )
}

const NUMBER_PX = 18

