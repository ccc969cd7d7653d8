import { useMemo, type ReactNode } from 'react'
import type { Level } from '../../checks/finding.ts'
import { levelShape } from '../../drawing/levelShapes.ts'
import { useWords } from '../context.tsx'
import { levelKey } from '../findings/words.ts'
import { Picture } from './Picture.tsx'

/** Shape of a level; with `named` it speaks its word to those who do not see it. */
export const LevelMark = ({ level, sizePx, number, named = false }: { level: Exclude<Level, 'met'>; sizePx: number; number?: number; named?: boolean }): ReactNode => {
  const { say } = useWords()
  const boxPx = Math.ceil(sizePx * 1.3)
  const list = useMemo(() => [{ t: 'mark' as const, xM: 0, yM: 0, parts: levelShape(level, sizePx, number === undefined ? null : String(number)) }], [level, sizePx, number])
  const matrix = useMemo(() => ({ a: 1, b: 0, c: 0, d: -1, e: boxPx / 2, f: boxPx / 2 }), [boxPx])
  return <Picture list={list} widthPx={boxPx} heightPx={boxPx} matrix={matrix} className="level-mark" {...(named ? { title: say(levelKey(level)) } : {})} />
}
