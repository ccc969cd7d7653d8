/** Time of an ISO text for a person: the time of day within today's date, else day and time. `now` keeps tests apart from the clock. */
export const timeWords = (iso: string, language: string, now: Date = new Date()): string => {
  const at = new Date(iso)
  if (Number.isNaN(at.getTime())) return iso
  const isToday = at.toDateString() === now.toDateString()
  return new Intl.DateTimeFormat(language, isToday ? { hour: '2-digit', minute: '2-digit', hour12: false } : { day: 'numeric', month: 'short', year: at.getFullYear() === now.getFullYear() ? undefined : 'numeric', hour: '2-digit', minute: '2-digit', hour12: false }).format(at)
}
