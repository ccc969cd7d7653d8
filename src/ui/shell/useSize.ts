import { useLayoutEffect, useState, type RefObject } from 'react'
import type { BandSize } from '../services.ts'

/** Size of an element in whole CSS px, followed as it changes; null until it is on the page. */
export const useSize = (element: RefObject<HTMLElement | null>, isThere: boolean): BandSize | null => {
  const [size, setSize] = useState<BandSize | null>(null)
  useLayoutEffect(() => {
    const box = element.current
    if (!isThere || box === null) return
    const read = (): void => {
      const next = { widthPx: Math.floor(box.clientWidth), heightPx: Math.floor(box.clientHeight) }
      setSize((before) => (before !== null && before.widthPx === next.widthPx && before.heightPx === next.heightPx ? before : next))
    }
    read()
    const observer = new ResizeObserver(read)
    observer.observe(box)
    return () => observer.disconnect()
  }, [element, isThere])
  return isThere ? size : null
}
