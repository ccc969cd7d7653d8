export type SourceClass = 'published' | 'mechanics' | 'plate' | 'jobRule' | 'houseRule'
export interface Source {
  class: SourceClass
  /** Document, edition, clause for published; what is said otherwise. */
  cite: string
  /** 'from memory, confirm' is shown beside it. */
  fromMemory?: boolean
  /** A house rule the owner or the crew replaced. */
  edited?: boolean
}
