/** Minutes after midnight as '07:05', by the 24 h clock in every language; a day later counts on from 00:00. */
export const timeText = (minutes: number): string => {
  const whole = ((Math.round(minutes) % 1440) + 1440) % 1440
  return `${String(Math.floor(whole / 60)).padStart(2, '0')}:${String(whole % 60).padStart(2, '0')}`
}

/** Which day of the job, from 0, a time counted on from 00:00 of `day` falls on: where nobody gave an end, work goes on past midnight. */
export const dayOf = (day: number, minutes: number): number => day + Math.floor(Math.round(minutes) / 1440)

/** '07:05' as minutes after midnight; null for an empty or broken field. */
export const minutesOf = (text: string): number | null => {
  const found = /^(\d{1,2}):(\d{2})/.exec(text.trim())
  if (found === null) return null
  const [hours, minutes] = [Number(found[1]), Number(found[2])]
  return hours > 23 || minutes > 59 ? null : hours * 60 + minutes
}
