import { useRef, type ReactNode } from 'react'
import { useAsk, useTell, useUi, useWords } from '../context.tsx'
import type { OpenHow } from '../services.ts'

/** Opens a file of the device; a layout that is here already, or one with items that can't be read, is asked about first. */
export const useOpenFile = (onOpened?: () => void): ((file: File, how?: OpenHow) => Promise<void>) => {
  const { services } = useUi()
  const ask = useAsk()
  const tell = useTell()
  const words = useWords()
  const { say } = words
  const open = async (file: File, how?: OpenHow): Promise<void> => {
    const outcome = await services.openFile(file, how)
    if (outcome.ok === 'ask') {
      if (outcome.ask === 'copyOrReplace') {
        const replace = await ask({ title: say('openHereTitle', { title: outcome.title }), lines: [say('openHereWhy')], yes: say('openReplace'), no: say('openCopy'), danger: false })
        await open(file, replace ? 'replace' : 'copy')
      } else {
        const without = await ask({ title: say('openWithoutTitle', { count: outcome.items.length }), lines: [words.local(outcome.reason), ...outcome.items.map((item) => words.local(item))], yes: say('openWithout'), no: say('cancel'), danger: false })
        if (without) await open(file, 'withoutItems')
      }
      return
    }
    if (outcome.ok) {
      tell(outcome)
      onOpened?.()
    } else await ask({ title: say('openRefused'), lines: [words.local(outcome.reason), say('openRefusedKept')], yes: say('understood'), danger: false })
  }
  return open
}

export const OpenFileButton = ({ onOpened, className, label }: { onOpened?: () => void; className?: string; label?: string }): ReactNode => {
  const { say } = useWords()
  const input = useRef<HTMLInputElement>(null)
  const open = useOpenFile(onOpened)
  return (
    <>
      <button type="button" className={className} onClick={() => input.current?.click()}>{label ?? say('openFile')}</button>
      <input
        ref={input} type="file" accept=".json,.yard,application/json" className="visually-hidden" tabIndex={-1} aria-label={say('openFile')}
        onChange={(event) => {
          const file = event.currentTarget.files?.[0]
          event.currentTarget.value = ''
          if (file !== undefined) void open(file)
        }}
      />
    </>
  )
}
