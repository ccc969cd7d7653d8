/** JSON of a file, version by version. */
export type Json = null | boolean | number | string | readonly Json[] | { readonly [key: string]: Json }

/**
 * One step up: takes the whole file (plain JSON of version `to` − 1, which it must not change) and gives it as version
 * `to`. A migration is frozen once released and never imports today's records: today's type is not yesterday's.
 */
export interface Migration {
  to: number
  up: (file: { readonly [key: string]: Json }) => { readonly [key: string]: Json }
}
