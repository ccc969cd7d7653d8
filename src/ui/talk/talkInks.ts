import type { InkName } from '../../drawing/primitives.ts'

/**
 * Inks of the talk, mixed from those of the theme until every pair stands 7 to 1 (WCAG 2.2, 1.4.6): read from 6 ft, in
 * the sun. `share` of the first, the rest of the second. tests/ui/talkInks.test.ts works the contrasts out.
 */
export const talkInks = {
  '--talk-red': { of: 'red', with: 'ink', share: 0.65 },
  '--talk-amber': { of: 'amber', with: 'ink', share: 0.65 },
  '--talk-blue': { of: 'blue', with: 'ink', share: 0.65 },
  '--talk-safe': { of: 'safe', with: 'ink', share: 0.65 },
  '--talk-quiet': { of: 'ink2', with: 'ink', share: 0.8 },
  '--talk-next': { of: 'chosen', with: 'ink', share: 0.7 },
} as const satisfies Record<string, { of: InkName; with: InkName; share: number }>

/** The stop sign is white on a red of its own in every theme. */
export const stopSignInks = { field: '#8E1512', word: '#FFFFFF' } as const

const kebab = (name: string): string => name.replace(/[A-Z]/g, (letter) => `-${letter.toLowerCase()}`)

/** The same as custom properties. */
export const talkInkStyle: Readonly<Record<string, string>> = {
  ...Object.fromEntries(Object.entries(talkInks).map(([name, ink]) => [name, `color-mix(in srgb, var(--${kebab(ink.of)}) ${ink.share * 100}%, var(--${kebab(ink.with)}))`])),
  '--talk-stop': stopSignInks.field, '--talk-stop-word': stopSignInks.word,
}
