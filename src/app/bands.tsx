/** The canvas bands, in a part of their own: the start page is there before the canvas library is. */
export { PlanBand } from '../canvas/plan/PlanBand.tsx'
export { SectionBand } from '../canvas/section/SectionBand.tsx'
export { TapeBand } from '../canvas/tape/TapeBand.tsx'
