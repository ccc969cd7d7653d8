import type { YardDocument } from './document.ts'
import { documentHash } from './writeFile.ts'

/** Hash of the plan without its release log: the log's own rows do not make it another plan. Hex, as `documentHash`. */
export const planHash = (document: YardDocument): string =>
  documentHash({ records: Object.fromEntries(Object.entries(document.records).filter(([, { kind }]) => kind !== 'release')) })
