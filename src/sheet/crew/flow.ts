/** Blocks one after the other over as many pages as they need: full width, or in columns of text. */
import type { Primitive } from '../../drawing/primitives.ts'
import type { PageFrame } from './paper.ts'

/** A piece that is never parted. */
export interface Block {
  heightPt: number
  /** Never the last on a page or in a column. */
  isHead?: boolean
  draw: (x0: number, y0: number) => readonly Primitive[]
}

export interface Section {
  /** `wide`: over the whole width; `columns`: side by side with the sections after it that are columns too. */
  as: 'wide' | 'columns'
  /** Said again at the top of each page it goes on to. */
  again?: (widthPt: number) => readonly Block[]
  blocks: (widthPt: number) => readonly Block[]
}

/** Narrower columns of text break too often. */
const LEAST_COLUMN_PT = 245
const GUTTER_PT = 22
/** Less than this at the foot of a page is left white before a section in columns. */
const LEAST_START_PT = 70

export const columnsOf = ({ x0, x1 }: PageFrame): { count: number; widthPt: number } => {
  const count = Math.max(1, Math.floor((x1 - x0 + GUTTER_PT) / (LEAST_COLUMN_PT + GUTTER_PT)))
  return { count, widthPt: (x1 - x0 - (count - 1) * GUTTER_PT) / count }
}

interface Placed {
  page: number
  list: readonly Primitive[]
}

/** A head with what follows it, which moves together: indices in `blocks`. */
const stackOf = (blocks: readonly Block[], from: number): { to: number; heightPt: number } => {
  let [to, heightPt] = [from, 0]
  for (;;) {
    const block = blocks[to]
    if (block === undefined) return { to, heightPt }
    heightPt += block.heightPt
    to += 1
    if (block.isHead !== true) return { to, heightPt }
  }
}

/** How many blocks from `from` on fit in columns of a height; places by column. */
const fill = (blocks: readonly Block[], from: number, heightPt: number, count: number): { places: { block: Block; column: number; yPt: number }[]; next: number } => {
  const places: { block: Block; column: number; yPt: number }[] = []
  let [at, column, yPt] = [from, 0, 0]
  while (at < blocks.length) {
    const stack = stackOf(blocks, at)
    if (yPt > 0 && yPt + stack.heightPt > heightPt) {
      column += 1
      yPt = 0
      if (column >= count) return { places, next: at }
    }
    for (; at < stack.to; at++) {
      places.push({ block: blocks[at]!, column, yPt })
      yPt += blocks[at]!.heightPt
    }
  }
  return { places, next: at }
}

/**
 * Places sections from `firstTopPt` on the first page on; later pages start at the top of the frame.
 *
 * Output: page number and list of each piece, and how many pages there are. A block taller than a page stands on one of its own
 * and runs over its foot.
 */
export const flow = (sections: readonly Section[], frame: PageFrame, firstTopPt: number): { placed: readonly Placed[]; pages: number } => {
  const placed: Placed[] = []
  let [page, y] = [0, firstTopPt]
  const turn = (): void => {
    page += 1
    y = frame.topPt
  }
  const put = (block: Block, x: number, top: number): void => {
    placed.push({ page, list: block.draw(x, top) })
  }
  const wide = (section: Section): void => {
    const widthPt = frame.x1 - frame.x0
    const blocks = section.blocks(widthPt)
    for (let at = 0; at < blocks.length;) {
      const stack = stackOf(blocks, at)
      if (y + stack.heightPt > frame.bottomPt && y > frame.topPt) {
        turn()
        if (at > 0) for (const block of section.again?.(widthPt) ?? []) {
          put(block, frame.x0, y)
          y += block.heightPt
        }
      }
      for (; at < stack.to; at++) {
        put(blocks[at]!, frame.x0, y)
        y += blocks[at]!.heightPt
      }
    }
  }
  const columns = (group: readonly Section[]): void => {
    const { count, widthPt } = columnsOf(frame)
    const blocks = group.flatMap((section) => section.blocks(widthPt))
    let from = 0
    while (from < blocks.length) {
      if (frame.bottomPt - y < LEAST_START_PT) turn()
      const roomPt = frame.bottomPt - y
      const isAll = fill(blocks, from, roomPt, count).next >= blocks.length
      let heightPt = roomPt
      // What fits on the page is spread evenly: the least height that still takes it all.
      if (isAll) {
        let low = 0
        for (let i = 0; i < 12; i++) {
          const middle = (low + heightPt) / 2
          if (fill(blocks, from, middle, count).next >= blocks.length) heightPt = middle
          else low = middle
        }
      }
      const { places, next } = fill(blocks, from, heightPt, count)
      let usedPt = 0
      for (const { block, column, yPt } of places) {
        put(block, frame.x0 + column * (widthPt + GUTTER_PT), y + yPt)
        usedPt = Math.max(usedPt, yPt + block.heightPt)
      }
      y += usedPt
      from = next
      if (from < blocks.length) turn()
    }
  }
  for (let at = 0; at < sections.length;) {
    let to = at
    while (sections[to]?.as === 'columns') to++
    if (to > at) columns(sections.slice(at, to))
    else wide(sections[at]!)
    at = Math.max(to, at + 1)
  }
  return { placed, pages: page + 1 }
}
