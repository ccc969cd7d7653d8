import { useState, type ReactNode } from 'react'
import type { LimitChangeRecord } from '../../scene/records/beside.ts'
import { recordsOf } from '../../scene/document.ts'
import { useCommand } from '../command.ts'
import { Figure } from '../common/Figure.tsx'
import { Panel } from '../common/Panel.tsx'
import { useDocuments, useUi, useWords } from '../context.tsx'
import { fieldName } from '../fields/focus.ts'
import { NumberField } from '../fields/NumberField.tsx'
import { TextField } from '../fields/OtherFields.tsx'
import { sourceWords } from '../findings/words.ts'
import type { LimitRow } from '../services.ts'

type Bound = LimitChangeRecord['bound']

/** The limits table: each bound with its source; a changed one says why and who, and can be put back. */
export const LimitsPanel = ({ onClose }: { onClose: () => void }): ReactNode => {
  const words = useWords()
  const { services } = useUi()
  const document = useDocuments((state) => state.document)
  const [editing, setEditing] = useState<{ limit: LimitRow; bound: Bound } | null>(null)
  const changes = recordsOf(document, 'limitChange')
  const changeOf = (limitId: string, bound: Bound): LimitChangeRecord | undefined => changes.findLast((change) => change.limitId === limitId && change.bound === bound)
  const run = useCommand()
  const { say } = words
  return (
    <Panel title={say('limitsTitle')} onClose={onClose} wide>
      <p className="quiet-text">{say('limitsAbout')}</p>
      <div className="table-scroll" tabIndex={0} role="group" aria-label={say('limitsTitle')}>
        <table className="limits">
          <thead><tr><th scope="col">{say('limit')}</th><th scope="col">{say('levelCheck')}</th><th scope="col">{say('levelFix')}</th><th scope="col">{say('source')}</th></tr></thead>
          <tbody>
            {services.facts.limits.map((limit) => (
              <tr key={limit.id}>
                <th scope="row">{words.local(limit.title)}{limit.note === undefined ? null : <span className="quiet-text block">{words.local(limit.note)}</span>}</th>
                {(['check', 'fix'] as const).map((bound) => {
                  const change = changeOf(limit.id, bound)
                  const value = change?.value ?? limit[bound]
                  if (value === null) return <td key={bound} className="quiet-text">–</td>
                  return (
                    <td key={bound}>
                      <button type="button" className={change === undefined ? 'limit-value' : 'limit-value limit-changed'} onClick={() => setEditing({ limit, bound })} aria-label={say('limitEdit', { limit: words.local(limit.title), level: say(bound === 'check' ? 'levelCheck' : 'levelFix') })}>
                        <Figure text={`${say(`when_${limit.when}`)} ${words.figure({ kind: limit.quantity, value })}`} />
                      </button>
                      {change === undefined ? null : (
                        <span className="quiet-text block">
                          {say('limitChangedBy', { who: change.who === '' ? say('notSaid') : change.who, reason: change.reason })}{' '}
                          <button type="button" className="link" onClick={() => { run('clearLimit', { limitId: limit.id, bound }) }}>{say('limitReset')}</button>
                        </span>
                      )}
                    </td>
                  )
                })}
                <td><em>{sourceWords({ class: limit.sourceClass, cite: limit.cite, edited: changes.some((change) => change.limitId === limit.id) }, words)}</em><span className="quiet-text block">{limit.cite}</span></td>
              </tr>
            ))}
          </tbody>
        </table>
      </div>
      {editing === null ? null : <LimitEditor key={`${editing.limit.id}.${editing.bound}`} {...editing} change={changeOf(editing.limit.id, editing.bound)} onDone={() => setEditing(null)} />}
    </Panel>
  )
}

const LimitEditor = ({ limit, bound, change, onDone }: { limit: LimitRow; bound: Bound; change: LimitChangeRecord | undefined; onDone: () => void }): ReactNode => {
  const words = useWords()
  const { say } = words
  const run = useCommand()
  const [value, setValue] = useState<number | null>(change?.value ?? limit[bound])
  const [reason, setReason] = useState(change?.reason ?? '')
  const [who, setWho] = useState(change?.who ?? '')
  const title = words.local(limit.title)
  return (
    <Panel
      title={say('limitEdit', { limit: title, level: say(bound === 'check' ? 'levelCheck' : 'levelFix') })} onClose={onDone}
      foot={<>
        <button type="button" className="primary" disabled={value === null || reason.trim() === ''} onClick={() => { if (run('setLimit', { limitId: limit.id, bound, value, reason: reason.trim(), who: who.trim() })) onDone() }}>{say('limitSet')}</button>
        <button type="button" onClick={onDone}>{say('cancel')}</button>
      </>}
    >
      <p className="quiet-text">{say('limitWas', { value: { kind: limit.quantity, value: limit[bound] } })}</p>
      <NumberField label={say('limitValue')} kind={limit.quantity} value={value} onCommit={(next) => setValue(next)} name={fieldName(limit.id, bound)} />
      <TextField label={say('limitReason')} value={reason} onCommit={setReason} />
      <TextField label={say('limitWho')} value={who} onCommit={setWho} />
    </Panel>
  )
}
