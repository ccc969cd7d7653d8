import type { Localized } from '../../messages/localized.ts'
import { compareWords as words } from '../../messages/ui/compareWords.ts'

/** Points kept with a print or a share are called 'B printed' in storage: the word in the reader's language. Other names as they are. */
export const pointName = (name: string, local: (text: Localized) => string): string => {
  const found = /^(.{1,4}) (printed|shared)$/.exec(name)
  return found === null ? name : `${found[1]} ${local(words[found[2] as 'printed' | 'shared'])}`
}
