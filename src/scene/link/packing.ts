/** Text ↔ the part of a link that carries it: deflate with a dictionary, a sum over the text, base64url. */
import { deflateSync, Inflate, strFromU8, strToU8 } from 'fflate'
import dictionaryJson from '../../../shared/formats/link1/dictionary.json' with { type: 'json' }
import { fromBase64url, toBase64url } from './base64url.ts'

/** Longest text that is unpacked, bytes: 20 times the largest layout looked at in the benches. */
export const MOST_TEXT_BYTES = 2_000_000
/** Bytes handed to the inflater at a time: deflate gives at most 1,032 times as much (RFC 1951), so a bomb is met early. */
const PIECE_BYTES = 1024
const SUM_BYTES = 4

/** Names and usual values of a file, so that short layouts need not carry them. Part of the format: a link of version 1 opens with this text only. */
const dictionary = strToU8(dictionaryJson.text)

/** FNV-1a over the bytes: tells a link that was cut or changed on its way, not one made on purpose. */
function sumOf(bytes: Uint8Array): number {
  let sum = 0x811c9dc5
  for (const byte of bytes) sum = Math.imul(sum ^ byte, 0x01000193) >>> 0
  return sum
}

export function packed(text: string): string {
  const bytes = strToU8(text)
  const body = deflateSync(bytes, { level: 9, mem: 9, dictionary })
  const whole = new Uint8Array(SUM_BYTES + body.length)
  new DataView(whole.buffer).setUint32(0, sumOf(bytes))
  whole.set(body, SUM_BYTES)
  return toBase64url(whole)
}

export type Unpacked = { ok: true; text: string } | { ok: false; why: 'letters' | 'cut' | 'large' | 'changed' }

/** The text again. Never throws and never holds more than `mostBytes` and one piece's worth of it. */
export function unpacked(part: string, mostBytes = MOST_TEXT_BYTES): Unpacked {
  if (!/^[\w-]*$/.test(part)) return { ok: false, why: 'letters' }
  const whole = fromBase64url(part)
  if (whole === null || whole.length <= SUM_BYTES) return { ok: false, why: 'cut' }
  const pieces: Uint8Array[] = []
  let [length, isEnded] = [0, false]
  const inflate = new Inflate({ dictionary }, (piece, isLast) => {
    pieces.push(piece)
    length += piece.length
    isEnded ||= isLast
  })
  try {
    for (let at = SUM_BYTES; at < whole.length && length <= mostBytes; at += PIECE_BYTES) inflate.push(whole.subarray(at, at + PIECE_BYTES), at + PIECE_BYTES >= whole.length)
  } catch {
    return { ok: false, why: 'cut' }
  }
  if (length > mostBytes) return { ok: false, why: 'large' }
  if (!isEnded) return { ok: false, why: 'cut' }
  const bytes = new Uint8Array(length)
  let at = 0
  for (const piece of pieces) {
    bytes.set(piece, at)
    at += piece.length
  }
  return sumOf(bytes) === new DataView(whole.buffer).getUint32(0) ? { ok: true, text: strFromU8(bytes) } : { ok: false, why: 'changed' }
}
