import type { SiteModel } from './types.ts'

/** The largest load a loader of the plan may lift at its reach; null while no plate is known. */
export function loaderPlateN(site: SiteModel): number | null {
  const plates = [...site.placed.values()].flatMap(({ record }) => (record.kind === 'loader' && record.figures.plateLoadN.value !== null ? [record.figures.plateLoadN.value] : []))
  return plates.length === 0 ? null : Math.max(...plates)
}
