import { useEffect, type ReactNode } from 'react'
import { dropHeightM } from '../../derive/dropHeight.ts'
import { rollOffAt, type RollOff } from '../../derive/rollOff.ts'
import type { SiteModel } from '../../derive/types.ts'
import { rollOffWords as words } from '../../messages/ui/rollOffWords.ts'
import { kindOf } from '../../scene/kinds/index.ts'
import { Figure } from '../common/Figure.tsx'
import { useSite, useUi, useView, useWords, type Words } from '../context.tsx'

/** While the tool is in hand: where the dropped pipe goes, in words, for the eye and for a reader aloud. */
const RollOffBar = (): ReactNode => {
  const { app } = useUi()
  const reader = useWords()
  const at = useView((view) => view.rollOff)
  const site = useSite((state) => state.site)
  // Keys of the tool belong to the plan, wherever the tool was taken from.
  useEffect(() => {
    const frame = requestAnimationFrame(() => document.querySelector<HTMLElement>('[data-band="plan"]')?.focus())
    return () => cancelAnimationFrame(frame)
  }, [])
  const sentences = at === null ? [reader.local(words.wait)] : rollOffSentences(rollOffAt(site, at, dropHeightM(site, at)), site, reader)
  return (
    <div className="tool-hint" role="status">
      <span>{sentences.map((text) => <span key={text}><Figure text={text} /> </span>)}</span>
      <button type="button" onClick={() => app.view.setState({ tool: null, rollOff: null })}>{reader.local(words.done)}</button>
    </div>
  )
}
export default RollOffBar

/** What comes of it, what is in doubt, what is not known, and what counts as a stop. */
export function rollOffSentences(roll: RollOff, site: SiteModel, { local }: Pick<Words, 'local'>): string[] {
  const nameOf = (id: string): { en: string; es: string } => {
    const item = site.placed.get(id)
    const own = item !== undefined && 'name' in item.record ? item.record.name : ''
    return own !== '' ? { en: own, es: own } : (kindOf(item?.kind ?? '')?.name ?? { en: 'item', es: 'elemento' })
  }
  const reach = { kind: 'length' as const, value: roll.reachM }
  const first = roll.end === 'staysPut'
    ? roll.headingRad === null ? local(words.level) : local(words.stays, { fall: { kind: 'slope', value: roll.fallRatio } })
    : local(words[roll.end], { reach, ...(roll.itemId === null ? {} : { what: nameOf(roll.itemId) }) })
  return [
    first,
    ...roll.doubtIds.map((id) => local(words.doubt, { what: nameOf(id) })),
    ...(roll.missing.length === 0 ? [] : [local(words.missing, { what: listed(roll.missing.map(({ label }) => label)) })]),
    ...(roll.end === 'unstopped' || roll.end === 'rests' ? [local(words.stops)] : []),
  ]
}

const listed = (labels: readonly { en: string; es: string }[]): { en: string; es: string } => ({ en: labels.map(({ en }) => en).join(', '), es: labels.map(({ es }) => es).join(', ') })
