import type { DashName, InkName, WeightName } from './primitives.ts'

/**
 * Colours of the sheet by name, one table a theme. Geometry never differs between themes, only these values.
 * Red, yellow, blue and green carry their meaning of ISO 3864 / ANSI Z535 (prohibition or stop, warning, mandatory, safe);
 * pipe stripe and tape are the two exceptions, being what the real things look like. Teal means chosen or proposed.
 */
export type ThemeName = 'day' | 'night' | 'sun'

export interface Theme {
  name: ThemeName
  inks: Readonly<Record<InkName, string>>
}

const day: Record<InkName, string> = {
  ink: '#1E1B16', ink2: '#5A5143', hair: '#C4B696', paper: '#F6EFDF', lot: '#F0E6D0', sheet: '#FFFBF0',
  tape: '#F4C430', tapePale: '#F8E5A6', tapeInk: '#17130A', pipe: '#161412', pipeEdge: '#161412', pipeSide: '#D8CFBA', stripe: '#5AA2EE',
  chosen: '#0F6E6E', chosenInk: '#F6EFDF', red: '#B3201B', amber: '#8A5A00', blue: '#1B5696', safe: '#1D6B43', white: '#FFFFFF',
  stop: '#B3201B', fix: '#F2B200', check: '#1B5696', note: '#F6EFDF', stopInk: '#FFFFFF', fixInk: '#17130A', checkInk: '#FFFFFF', levelEdge: '#F6EFDF',
  plant: '#7D8A5E', crown: '#E2E2C4', earth: '#A08A64', building: '#DDD0B4', buildingHatch: '#94866E', grain: '#D2C3A3', way: '#ECE2CB', none: 'none',
}

const night: Record<InkName, string> = {
  ink: '#EEE9DC', ink2: '#B9B7AB', hair: '#46525A', paper: '#1E262B', lot: '#232C32', sheet: '#2C373E',
  tape: '#D9AE2B', tapePale: '#9A8950', tapeInk: '#14110A', pipe: '#0A0D0F', pipeEdge: '#EEE9DC', pipeSide: '#0A0D0F', stripe: '#6FB4F5',
  chosen: '#55D0C8', chosenInk: '#1E262B', red: '#FF7B70', amber: '#F0B24A', blue: '#7DB3EC', safe: '#5CC48D', white: '#FFFFFF',
  stop: '#D6382E', fix: '#F2B92E', check: '#7DB3EC', note: '#1E262B', stopInk: '#FFFFFF', fixInk: '#14110A', checkInk: '#0F1A24', levelEdge: '#FFFFFF',
  plant: '#93A878', crown: '#2A3632', earth: '#8A8066', building: '#36424A', buildingHatch: '#86898A', grain: '#3A464D', way: '#283238', none: 'none',
}

/** For full sun: black on white, colours darkened until each stands 7 to 1 on the sheet. */
const sun: Record<InkName, string> = {
  ink: '#000000', ink2: '#2B2B2B', hair: '#7A7A7A', paper: '#FFFFFF', lot: '#FFFFFF', sheet: '#FFFFFF',
  tape: '#FFD23F', tapePale: '#FFF3C4', tapeInk: '#000000', pipe: '#000000', pipeEdge: '#000000', pipeSide: '#E4E4E4', stripe: '#6FB4F5',
  chosen: '#005150', chosenInk: '#FFFFFF', red: '#9A0F0B', amber: '#6B4400', blue: '#0B3F7A', safe: '#0C5230', white: '#FFFFFF',
  stop: '#9A0F0B', fix: '#F2B200', check: '#0B3F7A', note: '#FFFFFF', stopInk: '#FFFFFF', fixInk: '#000000', checkInk: '#FFFFFF', levelEdge: '#FFFFFF',
  plant: '#48552D', crown: '#F2F2E6', earth: '#6B5730', building: '#E4E4E4', buildingHatch: '#5E5E5E', grain: '#C9C9C9', way: '#F4F4F4', none: 'none',
}

export const themes: Readonly<Record<ThemeName, Theme>> = {
  day: { name: 'day', inks: day },
  night: { name: 'night', inks: night },
  sun: { name: 'sun', inks: sun },
}

/** px at 96 dpi; the printed sheet has weights of its own in mm. */
export const weightsPx: Readonly<Record<WeightName, number>> = {
  hair: 1, axis: 0.9, context: 1, ticks: 1.2, boundary: 1.4, gear: 1.5, rope: 2, building: 2.4, pipe: 3.2,
}

/** Dash and gap lengths, px. */
export const dashesPx: Readonly<Record<DashName, readonly number[]>> = {
  solid: [], axis: [18, 4, 2, 4], boundary: [16, 4, 3, 4], lane: [9, 5], proposal: [5, 3], rope: [5, 2], amber: [7, 3, 1.5, 3],
  blue: [14, 5], missing: [3, 5], overhead: [26, 5], tie: [1, 3], guess: [8, 6],
}

/** The face shipped with the app (Fira Sans Condensed, named 'Stringyard' in its style sheet), then faces of the same build for where it has not loaded. */
export const fontStack = "'Stringyard','Fira Sans Condensed','IBM Plex Sans Condensed','Barlow Semi Condensed','Liberation Sans Narrow',sans-serif"

export const PIPE_LEAST_PX = 3.2
/** Share of the drawn pipe that its stripe takes. */
export const STRIPE_RATIO = 0.25

/** Relative luminance of #rrggbb (WCAG 2.2, relative luminance, sRGB). */
export const luminance = (hex: string): number => {
  const [r, g, b] = [1, 3, 5].map((at) => {
    const share = parseInt(hex.slice(at, at + 2), 16) / 255
    return share <= 0.04045 ? share / 12.92 : ((share + 0.055) / 1.055) ** 2.4
  }) as [number, number, number]
  return 0.2126 * r + 0.7152 * g + 0.0722 * b
}

/** Contrast ratio of two colours, 1 to 21 (WCAG 2.2, contrast ratio). */
export const contrastRatio = (one: string, other: string): number => {
  const [dark, light] = [luminance(one), luminance(other)].sort((p, q) => p - q) as [number, number]
  return (light + 0.05) / (dark + 0.05)
}
