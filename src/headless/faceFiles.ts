/** Where the files of the face lie while there is no browser: beside the packages. */
import { createRequire } from 'node:module'

export type FaceWeight = 400 | 600
export type FacePart = 'latin' | 'latin-ext'

/** WOFF 1, the form the PDF library can cut a subset from. Fails: Error of the module loader where the package is not installed. */
export const facePartFile = (weight: FaceWeight, part: FacePart): string =>
  createRequire(import.meta.url).resolve(`@fontsource/fira-sans-condensed/files/fira-sans-condensed-${part}-${weight}-normal.woff`)
