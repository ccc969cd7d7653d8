import { useState, type ReactNode } from 'react'
import { crewCommands } from '../../derive/crewDefaults.ts'
import { peopleWords } from '../../messages/ui/peopleWords.ts'
import { talkWords as text } from '../../messages/ui/talkWords.ts'
import { useCommand } from '../command.ts'
import { LevelMark } from '../common/LevelMark.tsx'
import { useSite, useUi, useView } from '../context.tsx'
import { Label, Line } from './Lines.tsx'
import { useTalk } from './talkContext.tsx'
import { spotLine } from './talkLines.ts'
import { roleName, type SpotInTalk } from './talkModel.ts'
import { TalkPlan } from './TalkPlan.tsx'

/** Where everybody stands, each spot against the zones of the stage; a spot is moved on the picture, on the plan, or to the nearest clear place. */
export const StandPage = (): ReactNode => {
  const { say, spots } = useTalk()
  const run = useCommand()
  const site = useSite((state) => state.site)
  const [puttingId, setPuttingId] = useState<string | null>(null)
  const putting = spots.find(({ item }) => item.id === puttingId)
  const put = putting === undefined ? undefined : (at: { xM: number; yM: number }): void => {
    run('moveBy', { ids: [putting.item.id], dxM: at.xM - putting.item.xM, dyM: at.yM - putting.item.yM }, { text: text.moveSpot })
    setPuttingId(null)
  }
  // As the button of the people does: each spot clear of the zones of this yard, not where a layout alone would put it.
  const placeCrew = (): void => {
    const commands = crewCommands(site)
    if (commands.length > 0) run('sequence', { commands, label: peopleWords.usual })
  }
  return (
    <>
      <TalkPlan chosen={null} title={say.label(text.planAll)} ringedId={puttingId} onTap={put} />
      <div className="talk-text">
        <div role="status">{putting === undefined ? <Line text={text.fingerOn} /> : <Line text={text.tapPlace} values={{ label: roleName(putting.item.record.role) }} className="talk-line talk-alert" />}</div>
        {spots.length === 0 ? (
          <>
            <Line text={text.noSpots} />
            {site.setUp === null ? null : <button type="button" className="talk-button" onClick={placeCrew}><Label text={text.placeCrew} /></button>}
          </>
        ) : <ul className="talk-spots">{spots.map((spot) => <Spot key={spot.item.id} spot={spot} isPutting={spot.item.id === puttingId} onPut={() => setPuttingId(spot.item.id === puttingId ? null : spot.item.id)} />)}</ul>}
      </div>
    </>
  )
}

const Spot = ({ spot, isPutting, onPut }: { spot: SpotInTalk; isPutting: boolean; onPut: () => void }): ReactNode => {
  const { say } = useTalk()
  const { app } = useUi()
  const run = useCommand()
  const isPhone = useView((view) => view.form === 'phone')
  const { item, inside, clear } = spot
  const name = { label: roleName(item.record.role) }
  const worst = inside[0]?.zone.zoneClass
  const toPlan = (): void => app.view.setState({
    panel: null, selection: [item.id], ...(isPhone ? { leaf: 'plan' as const } : {}),
    notice: { text: say.label(text.backToTalk, name), undo: false, atRevision: app.documents.getState().revision },
  })
  return (
    <li data-class={worst ?? 'clear'}>
      <p className="talk-spot-name"><b className="talk-letter">{item.label}</b><span><Label text={roleName(item.record.role)} /></span></p>
      <div className="talk-spot-state">{worst === undefined ? <span className="talk-tick" aria-hidden="true">✓</span> : <LevelMark level={worst === 'RED' ? 'STOP' : 'CHECK'} sizePx={24} named />}<Line {...spotLine(spot)} className="talk-spot-line" /></div>
      {worst !== undefined && clear === null ? <Line text={text.noClear} /> : null}
      <div className="talk-spot-buttons">
        {clear === null ? null : <button type="button" className="talk-button talk-main" aria-label={say.label(text.nearestClearOf, name)} onClick={() => { run('setOnRun', { id: item.id, runningM: clear.runningM, offsetM: clear.offsetM }, { text: text.moveSpot }) }}><Label text={text.nearestClear} /></button>}
        <button type="button" className="talk-button" aria-pressed={isPutting} aria-label={say.label(text.putOf, name)} onClick={onPut}><Label text={text.put} /></button>
        <button type="button" className="talk-button" aria-label={say.label(text.moveOnPlanOf, name)} onClick={toPlan}><Label text={text.moveOnPlan} /></button>
      </div>
    </li>
  )
}
