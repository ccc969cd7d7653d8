/**
 * SHA-256 of a text (UTF-8) as 64 hex digits, in plain code so that it is pure and works without the browser's crypto.
 * For naming and checking our own data, not for secrets.
 *
 * Cost: O(n), some 20 ms a megabyte. Source: NIST FIPS 180-4 (2015), sections 4.1.2, 4.2.2, 5.1.1 and 6.2.
 */
export function sha256Hex(text: string): string {
  const bytes = utf8(text)
  const bitCount = bytes.length * 8
  const padded = new Uint8Array((((bytes.length + 8) >> 6) + 1) << 6)
  padded.set(bytes)
  padded[bytes.length] = 0x80
  const view = new DataView(padded.buffer)
  view.setUint32(padded.length - 8, Math.floor(bitCount / 2 ** 32))
  view.setUint32(padded.length - 4, bitCount >>> 0)
  const H = Uint32Array.from(roots.start)
  const W = new Uint32Array(64)
  for (let at = 0; at < padded.length; at += 64) block(H, W, view, at)
  return [...H].map((word) => word.toString(16).padStart(8, '0')).join('')
}

const rotr = (x: number, n: number): number => (x >>> n) | (x << (32 - n))

function block(H: Uint32Array, W: Uint32Array, view: DataView, at: number): void {
  for (let t = 0; t < 16; t++) W[t] = view.getUint32(at + 4 * t)
  for (let t = 16; t < 64; t++) {
    const [w15, w2] = [W[t - 15] ?? 0, W[t - 2] ?? 0]
    const s0 = rotr(w15, 7) ^ rotr(w15, 18) ^ (w15 >>> 3)
    const s1 = rotr(w2, 17) ^ rotr(w2, 19) ^ (w2 >>> 10)
    W[t] = ((W[t - 16] ?? 0) + s0 + (W[t - 7] ?? 0) + s1) | 0
  }
  let [a = 0, b = 0, c = 0, d = 0, e = 0, f = 0, g = 0, h = 0] = H
  for (let t = 0; t < 64; t++) {
    const S1 = rotr(e, 6) ^ rotr(e, 11) ^ rotr(e, 25)
    const T1 = (h + S1 + ((e & f) ^ (~e & g)) + (roots.K[t] ?? 0) + (W[t] ?? 0)) | 0
    const S0 = rotr(a, 2) ^ rotr(a, 13) ^ rotr(a, 22)
    const T2 = (S0 + ((a & b) ^ (a & c) ^ (b & c))) | 0
    ;[h, g, f, e, d, c, b, a] = [g, f, e, (d + T1) | 0, c, b, a, (T1 + T2) | 0]
  }
  ;[a, b, c, d, e, f, g, h].forEach((word, i) => { H[i] = ((H[i] ?? 0) + word) | 0 })
}

/** First 32 bits of the fractional parts of the square roots of the first 8 and the cube roots of the first 64 primes. */
const roots = (() => {
  const primes: number[] = []
  for (let n = 2; primes.length < 64; n++) if (primes.every((p) => n % p !== 0)) primes.push(n)
  const fraction = (x: number): number => ((x - Math.floor(x)) * 2 ** 32) >>> 0
  return { start: primes.slice(0, 8).map((p) => fraction(Math.sqrt(p))), K: primes.map((p) => fraction(Math.cbrt(p))) }
})()

/** UTF-8 bytes; a lone surrogate is written as U+FFFD, as every encoder does. */
function utf8(text: string): Uint8Array {
  const bytes = new Uint8Array(text.length * 3)
  let n = 0
  const put = (byte: number): void => { bytes[n++] = byte }
  for (const character of text) {
    const raw = character.codePointAt(0) ?? 0
    const code = raw >= 0xd800 && raw <= 0xdfff ? 0xfffd : raw
    if (code < 0x80) put(code)
    else if (code < 0x800) { put(0xc0 | (code >> 6)); put(0x80 | (code & 63)) }
    else if (code < 0x10000) { put(0xe0 | (code >> 12)); put(0x80 | ((code >> 6) & 63)); put(0x80 | (code & 63)) }
    else { put(0xf0 | (code >> 18)); put(0x80 | ((code >> 12) & 63)); put(0x80 | ((code >> 6) & 63)); put(0x80 | (code & 63)) }
  }
  return bytes.subarray(0, n)
}
