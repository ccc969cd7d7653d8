import { useEffect, useRef, type ReactNode } from 'react'
import type { PlacedRecord } from '../../scene/kinds/index.ts'
import { inchM } from '../../units/factors.ts'
import { useCommand } from '../command.ts'
import { Icon, type IconName } from '../common/Icon.tsx'
import { useView, useWords } from '../context.tsx'

interface Step {
  key: string
  icon: IconName
  label: string
  command: string
  args: Record<string, unknown>
}

const FIRST_REPEAT_MS = 420
const REPEAT_MS = 110

/** Fine moves under the thumb: along by 1 in or 10 mm, in height by ¼ in or 5 mm; hold to repeat. One hold is one step of undo. */
export const NudgePad = ({ records, label }: { records: readonly PlacedRecord[]; label: string }): ReactNode => {
  const words = useWords()
  const { say, system } = words
  const run = useCommand()
  const turned = useView((view) => view.turned)
  const isUpright = useView((view) => view.tapeVertical)
  const ids = records.map(({ id }) => id)
  const alongM = system === 'metric' ? 0.01 : inchM
  const heightM = system === 'metric' ? 0.005 : inchM / 4
  const hasHeight = records.some((record) => 'height' in record)
  const step = { length: { kind: 'shortLength' as const, value: alongM } }
  const fine = { length: { kind: 'shortLength' as const, value: heightM } }
  const upDown: readonly Step[] = hasHeight
    ? [
        { key: 'up', icon: 'raise', label: say('nudgeUp', fine), command: 'dropBy', args: { ids, dLevelM: heightM } },
        { key: 'down', icon: 'lower', label: say('nudgeDown', fine), command: 'dropBy', args: { ids, dLevelM: -heightM } },
      ]
    : [
        { key: 'up', icon: 'up', label: say(turned ? 'nudgeRight' : 'nudgeLeft', step), command: 'slideBy', args: { ids, dRunningM: 0, dOffsetM: turned ? alongM : -alongM } },
        { key: 'down', icon: 'down', label: say(turned ? 'nudgeLeft' : 'nudgeRight', step), command: 'slideBy', args: { ids, dRunningM: 0, dOffsetM: turned ? -alongM : alongM } },
      ]
  const along: readonly Step[] = [
    { key: 'left', icon: isUpright ? 'down' : 'left', label: say(turned ? 'nudgeExit' : 'nudgeInfeed', step), command: 'slideBy', args: { ids, dRunningM: turned ? alongM : -alongM, dOffsetM: 0 } },
    { key: 'right', icon: isUpright ? 'up' : 'right', label: say(turned ? 'nudgeInfeed' : 'nudgeExit', step), command: 'slideBy', args: { ids, dRunningM: turned ? -alongM : alongM, dOffsetM: 0 } },
  ]
  const holds = useRef(0)
  const timer = useRef<ReturnType<typeof setTimeout> | undefined>(undefined)
  const stop = (): void => clearTimeout(timer.current)
  useEffect(() => stop, [])
  const press = (taken: Step): void => { run(taken.command, taken.args, undefined, `nudge#${taken.key}#${ids.join()}#${holds.current}`) }
  // The step is read anew at each repeat, so that a hold never uses a selection of before.
  const latest = useRef(press)
  useEffect(() => { latest.current = press })
  const start = (taken: Step): void => {
    holds.current += 1
    latest.current(taken)
    const again = (): void => {
      latest.current(taken)
      timer.current = setTimeout(again, REPEAT_MS)
    }
    timer.current = setTimeout(again, FIRST_REPEAT_MS)
  }
  const button = (taken: Step): ReactNode => (
    <button
      type="button" key={taken.key} className={`nudge nudge-${taken.key}`}
      onPointerDown={(event) => { if (event.button === 0) { event.currentTarget.setPointerCapture(event.pointerId); start(taken) } }}
      onPointerUp={stop} onPointerCancel={stop} onLostPointerCapture={stop} onContextMenu={(event) => event.preventDefault()}
      // A key press or a voice command has no pointer.
      onClick={(event) => { if (event.detail === 0) { holds.current += 1; latest.current(taken) } }}
    >
      <Icon name={taken.icon} /><span>{taken.label}</span>
    </button>
  )
  return (
    <div className="nudge-pad" role="group" aria-label={say('nudgePad', { label })}>
      {[...along, ...upDown].map(button)}
      <span className="nudge-middle"><strong>{label}</strong><span>{say('nudgeHold')}</span></span>
    </div>
  )
}
