/** A WOFF 1 font unpacked, so that the PDF library does not inflate its tables anew for every glyph. */
import { unzlibSync } from 'fflate'

const SIGNATURE = 0x774f4646
const HEADER_BYTES = 44
const ENTRY_BYTES = 20
/** Largest font taken; the face has 60 kB. */
const MOST_BYTES = 5_000_000

/**
 * The TrueType or OpenType file inside a WOFF 1 file (W3C, WOFF File Format 1.0, 2012, sections 3 to 5).
 * Fails: RangeError where the bytes are no such file, or a table is not as long as it says.
 */
export function sfntOf(woff: Uint8Array): Uint8Array {
  const from = new DataView(woff.buffer, woff.byteOffset, woff.byteLength)
  if (woff.byteLength < HEADER_BYTES || from.getUint32(0) !== SIGNATURE) throw new RangeError('sfntOf: not a WOFF 1 font')
  const count = from.getUint16(12)
  if (HEADER_BYTES + count * ENTRY_BYTES > woff.byteLength) throw new RangeError('sfntOf: the font is cut off')
  const tables = Array.from({ length: count }, (_, i) => {
    const at = HEADER_BYTES + i * ENTRY_BYTES
    const [offset, packedBytes, bytes] = [from.getUint32(at + 4), from.getUint32(at + 8), from.getUint32(at + 12)]
    if (bytes > MOST_BYTES || packedBytes > bytes || offset + packedBytes > woff.byteLength) throw new RangeError('sfntOf: a table of the font is out of bounds')
    const packed = woff.subarray(offset, offset + packedBytes)
    const data = packedBytes < bytes ? unzlibSync(packed, { out: new Uint8Array(bytes) }) : packed
    if (data.length !== bytes) throw new RangeError('sfntOf: a table of the font is not as long as it says')
    return { tag: from.getUint32(at), checksum: from.getUint32(at + 16), data }
  })
  const padded = (length: number): number => (length + 3) & ~3
  const headBytes = 12 + 16 * count
  const out = new Uint8Array(headBytes + tables.reduce((sum, { data }) => sum + padded(data.length), 0))
  const to = new DataView(out.buffer)
  // Search helpers of the table directory (OpenType 1.9, 'Organization of an OpenType font').
  const power = Math.floor(Math.log2(Math.max(1, count)))
  to.setUint32(0, from.getUint32(4))
  to.setUint16(4, count)
  to.setUint16(6, 16 * 2 ** power)
  to.setUint16(8, power)
  to.setUint16(10, 16 * (count - 2 ** power))
  let offset = headBytes
  tables.forEach(({ tag, checksum, data }, i) => {
    const at = 12 + 16 * i
    to.setUint32(at, tag)
    to.setUint32(at + 4, checksum)
    to.setUint32(at + 8, offset)
    to.setUint32(at + 12, data.length)
    out.set(data, offset)
    offset += padded(data.length)
  })
  return out
}
