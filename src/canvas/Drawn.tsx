import type { ReactNode } from 'react'
import type { Context } from 'konva/lib/Context'
import { Shape } from 'react-konva/es/ReactKonvaCore'
import type { Paint2D } from '../drawing/paint.ts'

/** A Konva shape that is drawn by a function on the bare 2D context, in px of its layer. It takes no events. */
export const Drawn = ({ draw }: { draw: (context: Paint2D) => void }): ReactNode => (
  <Shape listening={false} perfectDrawEnabled={false} sceneFunc={(context: Context) => draw(context._context)} />
)
