import { themes, type Theme } from '../../drawing/theme.ts'

/** A theme whose inks are the page's custom properties: pictures in the page follow day and night without being drawn again. */
export const cssTheme: Theme = {
  name: 'day',
  inks: Object.fromEntries(Object.keys(themes.day.inks).map((name) => [name, name === 'none' ? 'none' : `var(--${name.replace(/[A-Z]/g, (letter) => `-${letter.toLowerCase()}`)})`])) as unknown as Theme['inks'],
}
