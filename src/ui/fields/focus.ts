/** Attribute that names the field of a record, so that a finding can lead to it. */
export const fieldName = (recordId: string, path: string): string => `${recordId}|${path}`

const TRIES = 40

/** Puts the cursor into a field once it is on screen (a panel may still be opening); gives up quietly after some frames. */
export const focusField = (recordId: string, path: string): void => {
  const name = fieldName(recordId, path)
  const look = (triesLeft: number): void => {
    const found = [...document.querySelectorAll<HTMLElement>('[data-field]')].find((element) => element.dataset['field'] === name)
    if (found !== undefined) {
      found.focus()
      found.scrollIntoView({ block: 'center' })
    } else if (triesLeft > 0) requestAnimationFrame(() => look(triesLeft - 1))
  }
  look(TRIES)
}
