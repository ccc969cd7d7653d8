import type { ReactNode } from 'react'
import type { ZoneClass } from '../../scene/parts.ts'

/** Hatches lie one way for RED, the other for AMBER, and level for BLUE: told apart without colour. */
const hatch: Readonly<Record<ZoneClass, string>> = { RED: 'M-2 22 22 -2M-2 10 10 -2M10 22 22 10', AMBER: 'M-2 -2 22 22M10 -2 22 10M-2 10 10 22', BLUE: 'M0 5H20M0 10H20M0 15H20' }

/** A square as the plan draws the zone. */
export const ZoneSwatch = ({ zoneClass, isUnknown }: { zoneClass: ZoneClass; isUnknown: boolean }): ReactNode => (
  <svg className={`zone-swatch zone-swatch-${zoneClass}`} width="20" height="20" viewBox="0 0 20 20" aria-hidden="true">
    <path d={hatch[zoneClass]} stroke="currentColor" fill="none" strokeWidth="1.4" />
    <rect x="1" y="1" width="18" height="18" stroke="currentColor" fill="none" strokeWidth="2" strokeDasharray={isUnknown ? '4 3' : undefined} />
  </svg>
)
