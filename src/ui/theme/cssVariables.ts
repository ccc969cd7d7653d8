import { fontStack, weightsPx, type Theme } from '../../drawing/theme.ts'

/** Custom properties of a theme: `tapePale` becomes `--tape-pale`. The drawing's table is the only source of colours. */
export const cssVariables = (theme: Theme): Readonly<Record<string, string>> => ({
  ...Object.fromEntries(Object.entries(theme.inks).map(([name, value]) => [`--${kebab(name)}`, value === 'none' ? 'transparent' : value])),
  ...Object.fromEntries(Object.entries(weightsPx).map(([name, px]) => [`--weight-${kebab(name)}`, `${px}px`])),
  '--lettering': `'Stringyard',${fontStack}`,
})

const kebab = (name: string): string => name.replace(/[A-Z]/g, (letter) => `-${letter.toLowerCase()}`)
