import { useState, type ReactNode } from 'react'
import { parkedView, pitLengthM } from '../../derive/arch.ts'
import type { SiteModel } from '../../derive/types.ts'
import { archPitWords as text } from '../../messages/ui/archPitWords.ts'
import { Figure } from '../common/Figure.tsx'
import { useWords } from '../context.tsx'
import { NumberField } from '../fields/NumberField.tsx'
import { Rows } from './Rows.tsx'

interface SectionProps {
  site: SiteModel
  leastM: number | null
}

/** A pit worked out on the side: nothing here is stored. */
export const PitSection = ({ leastM }: SectionProps): ReactNode => {
  const { local, figure } = useWords()
  const [depthM, setDepthM] = useState<number | null>(null)
  const [typedM, setTypedM] = useState<number | null>(null)
  const radiusM = typedM ?? leastM
  const lengthM = pitLengthM(depthM, radiusM)
  return (
    <>
      <p className="quiet-text">{local(text.pitAbout)}</p>
      <div className="field-grid">
        <NumberField label={local(text.depth)} kind="length" value={depthM} nullable min={0} max={60} onCommit={setDepthM} />
        <NumberField label={local(text.pitRadius)} kind="length" value={radiusM} nullable min={0.5} max={1000} onCommit={setTypedM} />
      </div>
      {lengthM === null || radiusM === null ? <p role="status">{local(text.needsBoth)}</p> : (
        <>
          <TooTight radiusM={radiusM} leastM={leastM} />
          <Rows label={local(text.pitTitle)} rows={[[local(text.pitLength), figure({ kind: 'length', value: lengthM })]]} />
        </>
      )}
    </>
  )
}

/** A string parked on a curve: room and what holds it. Nothing here is stored. */
export const ParkedSection = ({ site, leastM }: SectionProps): ReactNode => {
  const { local, figure } = useWords()
  const ownM = site.sticks.stickLengthM === null ? null : site.sticks.stringLengthM(site.sticks.stickCount)
  const [typedLengthM, setLengthM] = useState<number | null>(null)
  const [typedRadiusM, setRadiusM] = useState<number | null>(null)
  const [lengthM, radiusM] = [typedLengthM ?? ownM, typedRadiusM ?? leastM]
  const view = parkedView(site, lengthM, radiusM)
  const length = (value: number): string => figure({ kind: 'length', value })
  return (
    <>
      <p className="quiet-text">{local(text.parkAbout)}</p>
      <div className="field-grid">
        <NumberField label={local(text.parkLength)} kind="length" value={lengthM} nullable min={1} max={20_000} onCommit={setLengthM} />
        <NumberField label={local(text.parkRadius)} kind="length" value={radiusM} nullable min={0.5} max={5000} onCommit={setRadiusM} />
      </div>
      {view === null || radiusM === null ? <p role="status">{local(text.needsBoth)}</p> : (
        <>
          <TooTight radiusM={radiusM} leastM={leastM} />
          <Rows
            label={local(text.parkTitle)}
            rows={[
              [local(text.turn), view.isOverHalfTurn ? local(text.halfTurn) : figure({ kind: 'angle', value: view.turnRad })],
              [local(text.box), `${length(view.chordM)} × ${length(view.depthM)}`],
              ...(view.coupleNm === null || view.guideN === null || view.guideLaterN === null ? [] : [
                [local(text.couple), figure({ kind: 'moment', value: view.coupleNm })] as const,
                [local(text.stake), figure({ kind: 'force', value: view.guideN })] as const,
                [local(text.stakeLater), figure({ kind: 'force', value: view.guideLaterN })] as const,
              ]),
            ]}
          />
        </>
      )}
    </>
  )
}

const TooTight = ({ radiusM, leastM }: { radiusM: number; leastM: number | null }): ReactNode => {
  const { local, figure } = useWords()
  if (leastM === null || radiusM >= leastM - 1e-6) return null
  return <p role="status"><strong><Figure text={local(text.parkTooTight, { radius: figure({ kind: 'length', value: radiusM }), least: figure({ kind: 'length', value: leastM }) })} /></strong></p>
}
