import { hatchTiles } from '../../drawing/hatch.ts'
import type { HatchName } from '../../drawing/primitives.ts'
import type { Theme } from '../../drawing/theme.ts'

/**
 * Hatches as repeating canvas patterns: a gravel lot or a zone over the whole sheet is then one fill instead of
 * thousands of dots, which a pan could not afford. Tiles and look are those of src/drawing/hatch.ts.
 */
interface Tile {
  canvas: HTMLCanvasElement
  /** Tile canvas px → band px, per side; carries off the rounding to whole px. */
  scaleX: number
  scaleY: number
}

const tiles = new Map<string, Tile>()

/** Repeats of a tile that come nearest to whole px, so that the rounding cannot be seen. */
const repeats = (sizePx: number, ratio: number): number => {
  let best = 1
  for (let n = 1; n <= 12; n++) {
    const error = (count: number): number => Math.abs(count * sizePx * ratio - Math.round(count * sizePx * ratio)) / count
    if (error(n) < error(best) - 1e-9) best = n
  }
  return best
}

const tileOf = (name: HatchName, theme: Theme, ratio: number): Tile | null => {
  const key = `${name}/${theme.name}/${ratio}`
  const known = tiles.get(key)
  if (known !== undefined) return known
  const hatch = hatchTiles[name]
  const [nx, ny] = [repeats(hatch.widthPx, ratio), repeats(hatch.heightPx, ratio)]
  const canvas = document.createElement('canvas')
  canvas.width = Math.max(1, Math.round(nx * hatch.widthPx * ratio))
  canvas.height = Math.max(1, Math.round(ny * hatch.heightPx * ratio))
  const context = canvas.getContext('2d')
  if (context === null) return null
  context.scale(canvas.width / (nx * hatch.widthPx), canvas.height / (ny * hatch.heightPx))
  context.strokeStyle = theme.inks[hatch.ink]
  context.fillStyle = theme.inks[hatch.ink]
  context.globalAlpha = hatch.opacityRatio
  context.lineWidth = hatch.lineWidthPx
  context.beginPath()
  // One tile more on every side: strokes may leave their tile.
  for (let i = -1; i <= nx; i++) {
    for (let j = -1; j <= ny; j++) {
      const [x, y] = [i * hatch.widthPx, j * hatch.heightPx]
      for (const line of hatch.lines) for (let k = 0; k + 1 < line.length; k += 2) {
        if (k === 0) context.moveTo(x + line[0]!, y + line[1]!)
        else context.lineTo(x + line[k]!, y + line[k + 1]!)
      }
      for (const [dx, dy, radiusPx] of hatch.dots) {
        context.moveTo(x + dx + radiusPx, y + dy)
        context.arc(x + dx, y + dy, radiusPx, 0, 2 * Math.PI)
      }
    }
  }
  if (hatch.dots.length > 0) context.fill()
  else context.stroke()
  const tile = { canvas, scaleX: (nx * hatch.widthPx) / canvas.width, scaleY: (ny * hatch.heightPx) / canvas.height }
  tiles.set(key, tile)
  return tile
}

/** Fills the current path with a hatch that moves with the sheet's origin. */
export const fillHatch = (context: CanvasRenderingContext2D, name: HatchName, theme: Theme, ratio: number, origin: { xPx: number; yPx: number }): void => {
  const tile = tileOf(name, theme, ratio)
  const pattern = tile === null ? null : context.createPattern(tile.canvas, 'repeat')
  if (tile === null || pattern === null) return
  pattern.setTransform(new DOMMatrix([tile.scaleX, 0, 0, tile.scaleY, origin.xPx, origin.yPx]))
  context.fillStyle = pattern
  context.fill()
}
