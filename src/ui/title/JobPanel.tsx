import type { ReactNode } from 'react'
import { bowWords } from '../../messages/ui/bowWords.ts'
import { stringWords } from '../../messages/ui/stringWords.ts'
import { talkWords } from '../../messages/ui/talkWords.ts'
import { zoneWords } from '../../messages/ui/zoneWords.ts'
import { jobOf, layoutOf } from '../../scene/document.ts'
import { noseHolds, pullEditions, surfaces, type Surface } from '../../scene/records/frame.ts'
import { hourS } from '../../units/factors.ts'
import { useCommand } from '../command.ts'
import { Figure } from '../common/Figure.tsx'
import { Panel } from '../common/Panel.tsx'
import { useDocuments, useSite, useUi, useWords } from '../context.tsx'
import { fieldName } from '../fields/focus.ts'
import { NumberField } from '../fields/NumberField.tsx'
import { ChoiceField, TextField } from '../fields/OtherFields.tsx'
import { basisKey } from '../fields/RecordField.tsx'
import { PipeFields } from './PipeFields.tsx'
import { stickSentences } from './pipeWords.ts'
import { WallModulus } from './WallModulus.tsx'

/** Everything the layout knows of the job and of its ground, each once. */
export const JobPanel = ({ onClose }: { onClose: () => void }): ReactNode => {
  const words = useWords()
  const { say } = words
  const { app, services } = useUi()
  const run = useCommand()
  const job = useDocuments((state) => jobOf(state.document))
  const layout = useDocuments((state) => layoutOf(state.document))
  const setUp = useSite((state) => state.site.setUp)
  const pullRun = useSite((state) => state.site.run)
  const set = (path: string) => (value: unknown, mergeKey?: string): void => { run('setJob', { path, value }, undefined, mergeKey) }
  const setLayout = (path: string) => (value: unknown, mergeKey?: string): void => { run('setLayout', { path, value }, undefined, mergeKey) }
  const name = (path: string): string => fieldName(job.id, path)
  const answer = services.facts.sticks({ pipe: job.pipe, neededLengthM: job.neededLengthM, stickLengthM: job.stickLengthM, tailsM: job.tailsM, jointLossM: job.jointLossM.value })
  const basis = (figure: { value: number | null; basis: 'typical' | 'plate' | 'measured' | 'jobRule' }): { aside?: string } => (figure.value === null ? {} : { aside: say(basisKey(figure.basis)) })
  return (
    <Panel title={say('jobTitle')} onClose={onClose} wide>
      <div className="field-grid">
        <TextField label={say('layoutTitle')} value={layout.title} name={fieldName(layout.id, 'title')} onCommit={setLayout('title')} />
        <TextField label={say('revision')} value={layout.revision} name={fieldName(layout.id, 'revision')} onCommit={(value, key) => { if (value.trim() !== '') setLayout('revision')(value.trim().slice(0, 4), key) }} />
      </div>
      <h3>{say('jobPipe')}</h3>
      <PipeFields value={job.pipe} recordId={job.id} onChange={set('pipe')} />
      <h3>{say('jobLengths')}</h3>
      <div className="field-grid">
        <NumberField label={say('neededLength')} kind="length" value={job.neededLengthM} nullable min={0.1} max={1e5} name={name('neededLengthM')} onCommit={set('neededLengthM')} />
        <NumberField label={say('stickLength')} kind="length" value={job.stickLengthM} nullable min={0.5} max={400} name={name('stickLengthM')} onCommit={set('stickLengthM')} />
        <NumberField label={say('otherStickLength')} kind="length" value={job.otherStickLengthM} nullable min={0.5} max={400} name={name('otherStickLengthM')} onCommit={set('otherStickLengthM')} />
        <NumberField label={say('tails')} kind="length" value={job.tailsM} min={0} max={1e4} name={name('tailsM')} onCommit={(value, key) => { if (value !== null) set('tailsM')(value, key) }} />
        <NumberField label={say('jointLoss')} kind="shortLength" value={job.jointLossM.value} nullable min={0} max={1} name={name('jointLossM.value')} {...basis(job.jointLossM)} onCommit={set('jointLossM.value')} />
      </div>
      {answer === null ? <p className="quiet-text">{say('sticksNeed')}</p> : <p>{stickSentences(answer, words).map((sentence) => <span key={sentence}><Figure text={sentence} /> </span>)}</p>}
      <h3>{say('jobFusing')}</h3>
      <div className="field-grid">
        <NumberField label={say('wallTemperature')} kind="temperature" value={job.wallTemperatureC.value} nullable min={-60} max={90} name={name('wallTemperatureC.value')} {...basis(job.wallTemperatureC)} onCommit={set('wallTemperatureC.value')} />
        <NumberField label={say('temperatureSwing')} kind="temperatureChange" value={job.temperatureSwingC.value} nullable min={-100} max={100} name={name('temperatureSwingC.value')} {...basis(job.temperatureSwingC)} onCommit={set('temperatureSwingC.value')} />
        <ChoiceField label={words.local(stringWords.method)} name={name('method')} value={job.method} choices={(['stationary', 'walking'] as const).map((value) => ({ value, label: words.local(stringWords[`method_${value}`]) }))} onCommit={set('method')} />
        <ChoiceField label={say('firstStick')} name={name('firstStick')} value={job.firstStick} choices={[{ value: 'setByLoader', label: say('firstStickLoader') }, { value: 'fedThrough', label: say('firstStickFed') }]} onCommit={set('firstStick')} />
        <ChoiceField label={say('noseHold')} name={name('noseHold')} value={job.noseHold} choices={[{ value: null, label: say('notSaid') }, ...noseHolds.map((value) => ({ value, label: say(`noseHold_${value}`) }))]} onCommit={set('noseHold')} />
      </div>
      <WallModulus job={job} />
      <h3>{words.local(bowWords.jobSticks)}</h3>
      <div className="field-grid">
        <NumberField label={words.local(bowWords.bow)} kind="shortLength" value={job.stickBowM.value} nullable min={0} max={2} name={name('stickBowM.value')} {...basis(job.stickBowM)} onCommit={set('stickBowM.value')} />
        <NumberField label={words.local(bowWords.turnField)} kind="angle" value={job.stickBowTurnRad} nullable min={-Math.PI} max={Math.PI} name={name('stickBowTurnRad')} placeholder={words.local(bowWords.turnNull)} hideOther onCommit={set('stickBowTurnRad')} />
        <NumberField label={words.local(bowWords.slingHeight)} kind="height" value={job.slingHeightM.value} nullable min={0} max={20} name={name('slingHeightM.value')} {...basis(job.slingHeightM)} onCommit={set('slingHeightM.value')} />
        <ChoiceField label={words.local(bowWords.pullEdition)} name={name('pullEdition')} value={job.pullEdition} choices={pullEditions.map((value) => ({ value, label: words.local(bowWords[`edition_${value}`]) }))} onCommit={set('pullEdition')} />
        <NumberField label={words.local(bowWords.pullDuration)} kind="duration" value={job.pullDurationH.value === null ? null : job.pullDurationH.value * hourS} nullable min={0} max={1000 * hourS} name={name('pullDurationH.value')} placeholder={words.local(bowWords.underAnHour)} {...basis(job.pullDurationH)} onCommit={(value, key) => set('pullDurationH.value')(value === null ? null : value / hourS, key)} />
      </div>
      <div className="buttons"><button type="button" onClick={() => app.view.setState({ panel: 'bow' })}>{words.local(bowWords.title)}</button></div>
      <h3>{words.local(zoneWords.testTitle)}</h3>
      <div className="field-grid">
        <ChoiceField label={words.local(zoneWords.test)} name={name('test')} value={job.test} choices={[{ value: null, label: say('notSaid') }, ...(['none', 'water'] as const).map((value) => ({ value, label: words.local(zoneWords[`test_${value}`]) }))]} onCommit={set('test')} />
        {job.test !== 'water' ? null : <NumberField label={words.local(zoneWords.standOff)} kind="length" value={job.testStandOffM.value} nullable min={0} max={500} name={name('testStandOffM.value')} {...basis(job.testStandOffM)} onCommit={set('testStandOffM.value')} />}
      </div>
      {setUp === null ? null : (
        <>
          <h3>{say('jobGround')}</h3>
          <div className="field-grid">
            <NumberField label={say('fallAlong')} kind="slope" value={setUp.fallRatio} nullable min={-0.5} max={0.5} name={fieldName(setUp.id, 'fallRatio')} onCommit={(value, key) => { run('setSetUp', { setUpId: setUp.id, path: 'fallRatio', value }, undefined, key) }} />
            <NumberField label={say('fallAcross')} kind="slope" value={setUp.crossFallRatio} nullable min={-0.5} max={0.5} name={fieldName(setUp.id, 'crossFallRatio')} onCommit={(value, key) => { run('setSetUp', { setUpId: setUp.id, path: 'crossFallRatio', value }, undefined, key) }} />
            <NumberField label={say('machinePitch')} kind="angle" value={setUp.pitchRad} nullable min={-0.35} max={0.35} name={fieldName(setUp.id, 'pitchRad')} aside={setUp.pitchRad === null ? say('followsGround') : ''} onCommit={(value, key) => { run('setSetUp', { setUpId: setUp.id, path: 'pitchRad', value }, undefined, key) }} />
            {pullRun === null ? null : (
              <ChoiceField<Surface | null>
                label={say('surface')} name={fieldName(pullRun.id, 'surfaces')} value={pullRun.surfaces[0] ?? null} choices={[{ value: null, label: say('notSaid') }, ...surfaces.map((value) => ({ value, label: say(`surface_${value}`) }))]}
                onCommit={(value) => { run('setRun', { runId: pullRun.id, path: 'surfaces', value: [value, ...pullRun.surfaces.slice(1)] }) }}
              />
            )}
          </div>
        </>
      )}
      <h3>{words.local(talkWords.dispatch)}</h3>
      <div className="field-grid">
        {(['address', 'muster', 'caller'] as const).map((field) => <TextField key={field} label={words.local(talkWords[field])} value={job.dispatch[field] ?? ''} name={name(`dispatch.${field}`)} onCommit={(value, key) => set(`dispatch.${field}`)(value.trim() === '' ? null : value.trim(), key)} />)}
      </div>
      <TextField long label={say('jobNote')} value={job.note ?? ''} name={name('note')} onCommit={(value, key) => set('note')(value === '' ? null : value, key)} />
    </Panel>
  )
}
