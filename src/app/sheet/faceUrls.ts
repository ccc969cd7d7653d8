/** The face as the PDF writer reads it, fetched from the app's own files where a sheet needs it. */
import latin400 from '@fontsource/fira-sans-condensed/files/fira-sans-condensed-latin-400-normal.woff?url'
import latin600 from '@fontsource/fira-sans-condensed/files/fira-sans-condensed-latin-600-normal.woff?url'
import latinExt400 from '@fontsource/fira-sans-condensed/files/fira-sans-condensed-latin-ext-400-normal.woff?url'
import latinExt600 from '@fontsource/fira-sans-condensed/files/fira-sans-condensed-latin-ext-600-normal.woff?url'
import type { FaceLoader } from '../../write/pdf.ts'

const addresses = { latin: { 400: latin400, 600: latin600 }, 'latin-ext': { 400: latinExt400, 600: latinExt600 } } as const

/** Fails: Error where the file is not there, e.g. on a device that never finished loading the app. */
export const loadFace: FaceLoader = async (weight, part) => {
  const answer = await fetch(addresses[part][weight])
  if (!answer.ok) throw new Error(`the face could not be read: ${answer.status}`)
  return new Uint8Array(await answer.arrayBuffer())
}
