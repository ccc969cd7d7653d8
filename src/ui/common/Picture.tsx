import { memo, type ReactNode } from 'react'
import type { Primitive } from '../../drawing/primitives.ts'
import { toSvg } from '../../drawing/svg.ts'
import type { Matrix } from '../../drawing/matrix.ts'
import { cssTheme } from '../theme/cssTheme.ts'

interface PictureProps {
  list: readonly Primitive[]
  widthPx: number
  heightPx: number
  /** Frame of the list → px, y down. */
  matrix: Matrix
  /** Left out: hidden from those who do not see it (the words stand beside it). */
  title?: string
  idPrefix?: string
  className?: string
}

/** A drawing list as SVG in the page. The markup is made by our own writer, which escapes every text. */
export const Picture = memo(({ list, widthPx, heightPx, matrix, title, idPrefix, className }: PictureProps): ReactNode => (
  <span
    className={className === undefined ? 'picture' : `picture ${className}`}
    dangerouslySetInnerHTML={{ __html: toSvg(list, { widthPx, heightPx, matrix, theme: cssTheme, ...(title === undefined ? {} : { title }), ...(idPrefix === undefined ? {} : { idPrefix }) }) }}
  />
))
Picture.displayName = 'Picture'
