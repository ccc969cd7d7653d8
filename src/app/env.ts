import type { Env } from '../scene/edit.ts'

/** Fresh ids and the time: only the edge knows them. */
export const browserEnv: Env = {
  newId: (prefix) => `${prefix}:${crypto.randomUUID().replaceAll('-', '').slice(0, 16)}`,
  now: () => new Date().toISOString(),
}
