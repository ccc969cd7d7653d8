/** QR code of a link, as squares to be drawn by whatever draws the page. */
import qrcode from 'qrcode-generator'

/** Longest text a code holds at the lowest correction: ISO/IEC 18004:2015, table 7, version 40-L, byte mode. */
export const MOST_QR_CHARS = 2953
/** Longest text whose code a phone still reads off paper or a tablet with ease; house rule, common practice without a source. */
export const EASY_QR_CHARS = 1000

export interface QrModules {
  /** Modules a side, without the quiet zone of 4 that has to stay light round it (ISO/IEC 18004:2015, 6.3.8). */
  size: number
  /** Row and column from 0 at the top left; false outside. */
  isDark: (row: number, column: number) => boolean
  /** False: so dense that it asks for a large picture and a steady hand. */
  isEasy: boolean
}

export const QUIET_MODULES = 4

/**
 * The code of an ASCII text, in the smallest version that holds it: correction M (15 % may be lost) while it is easy to
 * read, else L (7 %), so that it fits. Null: the text is empty, holds other characters, or no code holds it. Pure.
 */
export function qrModules(text: string): QrModules | null {
  if (text === '' || text.length > MOST_QR_CHARS || !/^[\x20-\x7e]+$/.test(text)) return null
  const isEasy = text.length <= EASY_QR_CHARS
  const code = qrcode(0, isEasy ? 'M' : 'L')
  code.addData(text, 'Byte')
  code.make()
  const size = code.getModuleCount()
  return { size, isEasy, isDark: (row, column) => row >= 0 && column >= 0 && row < size && column < size && code.isDark(row, column) }
}

/** The dark modules as the path of an SVG, one unit a module, quiet zone included: `viewBox` 0 0 n n with n = `size` + 8. */
export function qrPath({ size, isDark }: QrModules): { path: string; side: number } {
  let path = ''
  for (let row = 0; row < size; row++) {
    for (let column = 0; column < size; column++) {
      if (!isDark(row, column)) continue
      let run = 1
      while (isDark(row, column + run)) run++
      path += `M${column + QUIET_MODULES} ${row + QUIET_MODULES}h${run}v1h-${run}z`
      column += run
    }
  }
  return { path, side: size + 2 * QUIET_MODULES }
}
