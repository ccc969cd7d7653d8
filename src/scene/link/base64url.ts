const letters = 'ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789-_'
const valueOf = new Map([...letters].map((letter, value) => [letter, value]))

/** Bytes as base64url without padding. Source: RFC 4648 (2006), section 5. */
export function toBase64url(bytes: Uint8Array): string {
  let text = ''
  for (let i = 0; i < bytes.length; i += 3) {
    const left = bytes.length - i
    const group = ((bytes[i] as number) << 16) | ((bytes[i + 1] ?? 0) << 8) | (bytes[i + 2] ?? 0)
    const letter = (shift: number): string => letters[(group >> shift) & 63] as string
    text += letter(18) + letter(12) + (left > 1 ? letter(6) : '') + (left > 2 ? letter(0) : '')
  }
  return text
}

/** The bytes of such a text; null where it holds another letter, has a length no bytes give, or bits left over. */
export function fromBase64url(text: string): Uint8Array | null {
  if (text.length % 4 === 1) return null
  const bytes = new Uint8Array(Math.floor((text.length * 3) / 4))
  let [bits, count, at] = [0, 0, 0]
  for (const letter of text) {
    const value = valueOf.get(letter)
    if (value === undefined) return null
    bits = ((bits << 6) | value) & 0xffff
    count += 6
    if (count >= 8) {
      count -= 8
      bytes[at++] = (bits >> count) & 0xff
    }
  }
  return (bits & ((1 << count) - 1)) === 0 ? bytes : null
}
