/** Time of an ISO text for a person: the time of day within today's date, else day and time. `now` keeps tests apart from the clock. */
export const timeWords = (iso: string, language: string, now: Date = new Date()): string => {
  const at = new Date(iso)
  if (Number.isNaN(at.getTime())) return iso
  const time = { hour: '2-digit', minute: '2-digit', hour12: false } as const
  if (at.toDateString() === now.toDateString()) return new Intl.DateTimeFormat(language, time).format(at)
  const year = at.getFullYear() === now.getFullYear() ? {} : ({ year: 'numeric' } as const)
  return new Intl.DateTimeFormat(language, { day: 'numeric', month: 'short', ...year, ...time }).format(at)
}
