import type { Primitive, SymbolContext } from '../../drawing/primitives.ts'
import { body, detailLine, detailOf, gearLine, outline, part, solid, stretched } from './basic.ts'
import { track } from './tracks.ts'

/** A vehicle from above: its rear at x = shiftM, its front at shiftM + lengthM. */
interface Vehicle {
  lengthM: number
  widthM: number
  shiftM: number
}

const hitch = (shiftM: number): Primitive => ({ t: 'circle', xM: shiftM, yM: 0, radiusM: 0.1, ...solid })

const crossed = (x0: number, x1: number, y: number, radiusM: number): Primitive[] => [
  { t: 'rect', xM: x0, yM: -y, widthM: x1 - x0, heightM: 2 * y, radiusM, ...part },
  { t: 'path', points: [x0, -y, x1, y], ...detailLine },
  { t: 'path', points: [x0, y, x1, -y], ...detailLine },
]

/** Farm tractor: large wheels behind, small ones in front, a bonnet, cab with crossed roof. */
export const tractorFromAbove = ({ lengthM, widthM, shiftM }: Vehicle, context: SymbolContext): Primitive[] => {
  const [kx, ky] = [lengthM / 11.6, widthM / 6.8]
  const detail = detailOf(context)
  const x = (value: number): number => value * kx + shiftM
  return [
    outline(stretched([0.6, -1.2, 9.8, -1.2, 11.6, -0.8, 11.6, 0.8, 9.8, 1.2, 0.6, 1.2], kx, ky, shiftM), body),
    ...[1, -1].flatMap((side) => [
      ...track(x(0.4), x(5), side * 3.4 * ky, side * 1.9 * ky, 0.22, 0.12, detail !== 'far'),
      ...track(x(8.3), x(10.7), side * 2.7 * ky, side * 1.75 * ky, 0.22, 0.09, detail === 'close'),
    ]),
    // Front axle and the lines of the bonnet.
    { t: 'path', points: [x(9.5), 1.75 * ky, x(9.5), 1.2 * ky], ...detailLine },
    { t: 'path', points: [x(9.5), -1.75 * ky, x(9.5), -1.2 * ky], ...detailLine },
    ...crossed(x(1.4), x(5), 1.7 * ky, 0.09),
    { t: 'path', points: [x(6), -0.55 * ky, x(9.4), -0.45 * ky], ...detailLine },
    { t: 'path', points: [x(6), 0.55 * ky, x(9.4), 0.45 * ky], ...detailLine },
    hitch(shiftM),
  ]
}

/** Skid-steer loader on tracks: lift arms along the cab, a carriage and two forks in front. */
export const skidLoaderFromAbove = ({ lengthM, widthM, shiftM }: Vehicle, context: SymbolContext): Primitive[] => {
  const [kx, ky] = [lengthM / 11.6, widthM / 6]
  const detail = detailOf(context)
  const x = (value: number): number => value * kx + shiftM
  return [
    ...[1, -1].flatMap((side) => track(x(0.8), x(8), side * 3 * ky, side * 1.9 * ky, 0.23, 0.09, detail !== 'far')),
    outline(stretched([0.4, -1.9, 6.4, -1.9, 7.6, -1.4, 7.6, 1.4, 6.4, 1.9, 0.4, 1.9], kx, ky, shiftM), body),
    ...crossed(x(3), x(5.9), 1.35 * ky, 0.06),
    ...[1, -1].flatMap((side): Primitive[] => [
      { t: 'path', points: [x(2), side * 2.2 * ky, x(8.6), side * 2.2 * ky], ...gearLine },
      { t: 'path', points: [x(9), side * 1.7 * ky, x(11.6), side * 1.7 * ky], ...gearLine },
    ]),
    { t: 'rect', xM: x(8.5), yM: -2.8 * ky, widthM: 0.5 * kx, heightM: 5.6 * ky, ...body },
    hitch(x(0.2)),
  ]
}

/** Winch on a skid: drum with its turns of rope behind, engine box in front, runners along both sides. */
export const winchFromAbove = ({ lengthM, widthM, shiftM }: Vehicle): Primitive[] => {
  const x = (share: number): number => shiftM + share * lengthM
  const half = widthM / 2
  const turns = Array.from({ length: 7 }, (_, i): Primitive => {
    const y = half * 0.55 * (i / 3 - 1)
    return { t: 'path', points: [x(0.13), y, x(0.37), y - half * 0.06], ...detailLine }
  })
  return [
    { t: 'rect', xM: x(0), yM: half * 0.8, widthM: lengthM, heightM: half * 0.2, radiusM: 0.05, ...body },
    { t: 'rect', xM: x(0), yM: -half, widthM: lengthM, heightM: half * 0.2, radiusM: 0.05, ...body },
    { t: 'path', points: [x(0.06), half * 0.8, x(0.06), -half * 0.8], ...gearLine },
    { t: 'path', points: [x(0.97), half * 0.8, x(0.97), -half * 0.8], ...gearLine },
    // Drum with flanges.
    { t: 'rect', xM: x(0.13), yM: -half * 0.62, widthM: lengthM * 0.24, heightM: half * 1.24, ...part },
    ...turns,
    { t: 'rect', xM: x(0.1), yM: half * 0.62, widthM: lengthM * 0.3, heightM: half * 0.11, ...solid },
    { t: 'rect', xM: x(0.1), yM: -half * 0.73, widthM: lengthM * 0.3, heightM: half * 0.11, ...solid },
    // Engine.
    { t: 'rect', xM: x(0.5), yM: -half * 0.6, widthM: lengthM * 0.4, heightM: half * 1.2, radiusM: 0.05, ...body },
    ...[0.6, 0.7, 0.8].map((share): Primitive => ({ t: 'path', points: [x(share), -half * 0.4, x(share), half * 0.4], ...detailLine })),
  ]
}

/** Truck with trailer: trailer behind with its axles, then tractor unit with cab and bonnet in front. */
export const truckFromAbove = ({ lengthM, widthM, shiftM }: Vehicle): Primitive[] => {
  const [kx, ky] = [lengthM / 67, widthM / 8.5]
  const rect = (x: number, y: number, w: number, h: number, pen: object, radiusM = 0): Primitive => ({ t: 'rect', xM: x * kx + shiftM, yM: y * ky, widthM: w * kx, heightM: h * ky, radiusM, ...pen })
  const wheels = [3, 7.2, 41, 45].flatMap((x) => [rect(x, -4.6, 2.6, 0.7, solid), rect(x, 3.9, 2.6, 0.7, solid)])
  return [
    rect(0, -4.25, 48, 8.5, body),
    ...[-2, 2].map((y): Primitive => ({ t: 'path', points: [shiftM, y * ky, 48 * kx + shiftM, y * ky], ...detailLine })),
    ...[12, 24, 36].map((x): Primitive => ({ t: 'path', points: [x * kx + shiftM, -4.25 * ky, x * kx + shiftM, 4.25 * ky], ...detailLine })),
    ...wheels,
    rect(47, -1.2, 12, 2.4, part),
    rect(53, -4, 5.5, 8, body, 0.12),
    outline(stretched([58.5, -3.4, 65.4, -3.4, 66.5, -2.6, 67, 0, 66.5, 2.6, 65.4, 3.4, 58.5, 3.4], kx, ky, shiftM), body),
    { t: 'path', points: [58.9 * kx + shiftM, -3.6 * ky, 58.9 * kx + shiftM, 3.6 * ky], ...detailLine },
    rect(61.5, -4.3, 2.8, 0.8, solid),
    rect(61.5, 3.5, 2.8, 0.8, solid),
  ]
}

/**
 * A vehicle in the side view, cut off with a wavy line where heights are drawn larger than lengths.
 * x from 0 (rear) to lengthM; wheels are round and to the scale of lengths.
 */
export const vehicleFromSide = (kind: 'tractor' | 'loader' | 'winch', lengthM: number, context: SymbolContext): Primitive[] => {
  const pxPerLevelM = context.pxPerLevelM ?? context.pxPerM
  const px = (m: number): number => m * context.pxPerM
  const stretch = pxPerLevelM / context.pxPerM
  const topM = (kind === 'winch' ? 1.1 : 2.5) / stretch
  const wheel = (share: number, radiusM: number): Primitive[] => [
    { t: 'mark', xM: share * lengthM, yM: 0, parts: [{ t: 'circle', xM: 0, yM: px(radiusM), radiusM: px(radiusM), fill: 'paper', stroke: 'ink', weight: 'gear' }, { t: 'circle', xM: 0, yM: px(radiusM), radiusM: px(radiusM) * 0.25, ...solid }] },
  ]
  const foot = 0.3 / stretch
  // Where heights are drawn larger a whole cab would tower over the pipe: it is cut off, and the wavy line says so.
  const isCut = stretch > 1.01 && kind !== 'winch'
  const cab: readonly [number, number] = kind === 'tractor' ? [0, 0.55] : [0.08, 0.62]
  const wave = isCut ? Array.from({ length: 9 }, (_, i) => [lengthM * (cab[1] + (cab[0] - cab[1]) * (i / 8)), topM * (1 + 0.05 * Math.sin((i / 8) * 2 * Math.PI))]).flat() : [lengthM * cab[1], topM, lengthM * cab[0], topM]
  const bonnet = topM * 0.5
  switch (kind) {
    case 'tractor':
      return [outline([0, foot, lengthM, foot, lengthM, bonnet, lengthM * cab[1], bonnet, ...wave], body), ...wheel(0.24, 0.72), ...wheel(0.84, 0.42)]
    case 'loader':
      return [
        outline([lengthM * cab[0], foot, lengthM * 0.68, foot, lengthM * 0.68, bonnet * 0.8, lengthM * cab[1], bonnet, ...wave], body),
        { t: 'path', points: [lengthM * 0.15, bonnet * 1.05, lengthM * 0.7, bonnet * 0.75, lengthM * 0.76, foot], ...gearLine },
        { t: 'path', points: [lengthM * 0.76, bonnet * 0.5, lengthM * 0.76, 0.08 / stretch, lengthM, 0.08 / stretch], ...gearLine },
        ...wheel(0.18, 0.36),
        ...wheel(0.52, 0.36),
      ]
    case 'winch':
      return [
        outline([0, 0, lengthM, 0, lengthM, foot * 0.5, 0, foot * 0.5], body),
        outline([lengthM * 0.5, foot * 0.5, lengthM * 0.92, foot * 0.5, lengthM * 0.92, topM, lengthM * 0.5, topM], body),
        ...wheel(0.25, 0.42),
      ]
  }
}
