/** What `paint` asks of a canvas, written into a PDF page: vectors stay vectors, text stays text. */
import type PDFDocument from 'pdfkit'
import type { Paint2D } from '../drawing/paint.ts'
import { faceRuns, faceWidth, type FaceWeight } from '../sheet/crew/face.ts'

type Pdf = InstanceType<typeof PDFDocument>
type Step = { to: 'move' | 'line'; x: number; y: number } | { to: 'curve'; points: readonly [number, number, number, number, number, number] } | { to: 'close' }

type State = Pick<Paint2D, 'fillStyle' | 'strokeStyle' | 'lineWidth' | 'lineCap' | 'lineJoin' | 'globalAlpha' | 'font' | 'textAlign' | 'textBaseline'> & { dash: readonly number[] }

/** Name of a registered part of the face. */
export const faceName = (part: 'latin' | 'latin-ext', weight: FaceWeight): string => `${part}-${weight}`

/** Longest arc one Bézier curve stands for. */
const ARC_STEP_RAD = Math.PI / 4

export class PdfContext implements Paint2D {
  fillStyle: string | object = '#000000'
  strokeStyle: string | object = '#000000'
  lineWidth = 1
  lineCap = 'butt'
  lineJoin = 'miter'
  globalAlpha = 1
  font = '400 11px face'
  textAlign = 'left'
  textBaseline = 'alphabetic'
  private dash: readonly number[] = []
  private path: Step[] = []
  private readonly states: State[] = []
  private readonly pdf: Pdf

  constructor(pdf: Pdf) {
    this.pdf = pdf
  }

  save(): void {
    const { fillStyle, strokeStyle, lineWidth, lineCap, lineJoin, globalAlpha, font, textAlign, textBaseline, dash } = this
    this.states.push({ fillStyle, strokeStyle, lineWidth, lineCap, lineJoin, globalAlpha, font, textAlign, textBaseline, dash })
    this.pdf.save()
  }

  restore(): void {
    const state = this.states.pop()
    if (state === undefined) return
    Object.assign(this, state)
    this.pdf.restore()
  }

  beginPath(): void {
    this.path = []
  }

  moveTo(x: number, y: number): void {
    this.path.push({ to: 'move', x, y })
  }

  lineTo(x: number, y: number): void {
    this.path.push({ to: this.path.length === 0 ? 'move' : 'line', x, y })
  }

  closePath(): void {
    if (this.path.length > 0) this.path.push({ to: 'close' })
  }

  arcTo(x1: number, y1: number, x2: number, y2: number, radius: number): void {
    const last = this.path.at(-1)
    const from = last === undefined || last.to === 'close' ? { x: x1, y: y1 } : last.to === 'curve' ? { x: last.points[4], y: last.points[5] } : last
    const [ax, ay, bx, by] = [from.x - x1, from.y - y1, x2 - x1, y2 - y1]
    const [a, b] = [Math.hypot(ax, ay), Math.hypot(bx, by)]
    const angle = Math.acos(Math.min(1, Math.max(-1, (ax * bx + ay * by) / (a * b))))
    if (!(a > 0 && b > 0) || radius <= 0 || !(Math.sin(angle) > 1e-6)) return this.lineTo(x1, y1)
    const cut = radius / Math.tan(angle / 2)
    const [p, q] = [[x1 + (ax / a) * cut, y1 + (ay / a) * cut], [x1 + (bx / b) * cut, y1 + (by / b) * cut]] as const
    // Handles of the Bézier curve for an arc that turns by π − angle.
    const pull = ((4 / 3) * Math.tan((Math.PI - angle) / 4) * radius) / cut
    this.lineTo(p[0], p[1])
    this.path.push({ to: 'curve', points: [p[0] + (x1 - p[0]) * pull, p[1] + (y1 - p[1]) * pull, q[0] + (x1 - q[0]) * pull, q[1] + (y1 - q[1]) * pull, q[0], q[1]] })
  }

  ellipse(x: number, y: number, radiusX: number, radiusY: number, rotation: number, startAngle: number, endAngle: number, counterclockwise = false): void {
    const turn = endAngle - startAngle
    const whole = 2 * Math.PI
    const sweep = Math.abs(turn) >= whole - 1e-12 ? (counterclockwise ? -whole : whole) : counterclockwise ? -(((-turn % whole) + whole) % whole) : ((turn % whole) + whole) % whole
    const count = Math.max(1, Math.ceil(Math.abs(sweep) / ARC_STEP_RAD))
    const step = sweep / count
    const k = (4 / 3) * Math.tan(step / 4)
    const [cos, sin] = [Math.cos(rotation), Math.sin(rotation)]
    const place = (u: number, v: number): readonly [number, number] => [x + cos * u * radiusX - sin * v * radiusY, y + sin * u * radiusX + cos * v * radiusY]
    const start = place(Math.cos(startAngle), Math.sin(startAngle))
    this.path.push({ to: this.path.length === 0 || this.path.at(-1)?.to === 'close' ? 'move' : 'line', x: start[0], y: start[1] })
    for (let i = 0; i < count; i++) {
      const [a, b] = [startAngle + i * step, startAngle + (i + 1) * step]
      const [c0, s0, c1, s1] = [Math.cos(a), Math.sin(a), Math.cos(b), Math.sin(b)]
      this.path.push({ to: 'curve', points: [...place(c0 - k * s0, s0 + k * c0), ...place(c1 + k * s1, s1 - k * c1), ...place(c1, s1)] })
    }
  }

  fill(): void {
    if (!this.trace(this.fillStyle)) return
    this.pdf.fillOpacity(this.globalAlpha).fill(this.fillStyle as string)
  }

  stroke(): void {
    if (this.lineWidth <= 0 || !this.trace(this.strokeStyle)) return
    const { pdf } = this
    pdf.lineWidth(this.lineWidth).lineCap(this.lineCap === 'round' ? 'round' : 'butt').lineJoin(this.lineJoin === 'round' ? 'round' : 'miter')
    if (this.dash.length > 0) pdf.dash([...this.dash] as unknown as number, {})
    else pdf.undash()
    pdf.strokeOpacity(this.globalAlpha).stroke(this.strokeStyle as string)
  }

  clip(): void {
    if (this.trace('#000000')) this.pdf.clip()
  }

  setLineDash(segments: number[]): void {
    this.dash = segments.every((value) => value > 0) ? segments : []
  }

  measureText(text: string): { width: number } {
    const { weight, size } = this.lettering()
    return { width: faceWidth(text, size, weight) }
  }

  /** In the letters the face has; thin spaces are stepped over. */
  fillText(text: string, x: number, y: number): void {
    const { weight, size } = this.lettering()
    if (this.fillStyle === 'none' || text === '') return
    const { width } = this.measureText(text)
    let left = x - (this.textAlign === 'center' ? width / 2 : this.textAlign === 'right' || this.textAlign === 'end' ? width : 0)
    this.pdf.fillOpacity(this.globalAlpha).fillColor(this.fillStyle as string)
    for (const run of faceRuns(text)) {
      const runPt = faceWidth(run.text, size, weight)
      // Kerning makes words a hair shorter than they were measured; asked for features, the library would set each letter anew.
      if (run.part !== 'space') this.pdf.font(faceName(run.part, weight), size).text(run.text, left, y, { lineBreak: false, baseline: 'alphabetic' })
      left += runPt
    }
  }

  /** The edge round lettering is of the colour of the paper: on white paper it is left out, and no text is there twice. */
  strokeText(): void {
    // Nothing is drawn.
  }

  private lettering(): { weight: FaceWeight; size: number } {
    const match = /(\d+) ([\d.]+)px/.exec(this.font)
    return { weight: match?.[1] === '600' ? 600 : 400, size: Number(match?.[2] ?? 11) }
  }

  private trace(style: string | object): boolean {
    if (this.path.length === 0 || typeof style !== 'string' || style === 'none') return false
    const { pdf } = this
    for (const step of this.path) {
      if (step.to === 'move') pdf.moveTo(step.x, step.y)
      else if (step.to === 'line') pdf.lineTo(step.x, step.y)
      else if (step.to === 'curve') pdf.bezierCurveTo(...step.points)
      else pdf.closePath()
    }
    return true
  }
}
