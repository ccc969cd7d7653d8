import { refused, type Reading } from '../refusal.ts'

export interface ImageLimits {
  bytes: number
  pixels: number
  sidePx: number
}

/**
 * Before an image is decoded: bytes of the file, and pixels its header promises. 50 million pixels take 200 MB decoded; a file of a few kB
 * can promise a thousand times as many.
 */
export const imageLimits: ImageLimits = { bytes: 20_000_000, pixels: 50_000_000, sidePx: 12_000 }

export interface ImageHeader {
  mime: 'image/png' | 'image/jpeg' | 'image/webp'
  widthPx: number
  heightPx: number
  /** Whether the file carries data about the camera and the place (EXIF, XMP, text); it goes when the image is drawn anew. */
  holdsMetadata: boolean
}

const text = (bytes: Uint8Array, at: number, length: number): string => String.fromCharCode(...bytes.subarray(at, at + length))
const u16 = (bytes: Uint8Array, at: number): number => ((bytes[at] ?? 0) << 8) | (bytes[at + 1] ?? 0)
const u32 = (bytes: Uint8Array, at: number): number => u16(bytes, at) * 65_536 + u16(bytes, at + 2)
const l24 = (bytes: Uint8Array, at: number): number => (bytes[at] ?? 0) | ((bytes[at + 1] ?? 0) << 8) | ((bytes[at + 2] ?? 0) << 16)

/** PNG: size in IHDR, metadata in chunks eXIf, tEXt, iTXt, zTXt (PNG specification, third edition, clause 11). */
function pngHeader(bytes: Uint8Array): ImageHeader | null {
  if (text(bytes, 12, 4) !== 'IHDR') return null
  let holdsMetadata = false
  for (let at = 8; at + 12 <= bytes.length; at += 12 + u32(bytes, at)) if (['eXIf', 'tEXt', 'iTXt', 'zTXt'].includes(text(bytes, at + 4, 4))) holdsMetadata = true
  return { mime: 'image/png', widthPx: u32(bytes, 16), heightPx: u32(bytes, 20), holdsMetadata }
}

/** JPEG: size in the first SOF segment, metadata in APP1 (EXIF, XMP), APP13 and comments (ITU-T T.81, annex B). */
function jpegHeader(bytes: Uint8Array): ImageHeader | null {
  let holdsMetadata = false
  for (let at = 2; at + 9 < bytes.length && bytes[at] === 0xff;) {
    const marker = bytes[at + 1]!
    if (marker === 0xff) {
      at += 1
      continue
    }
    if (marker === 0xe1 || marker === 0xed || marker === 0xfe) holdsMetadata = true
    const isFrame = marker >= 0xc0 && marker <= 0xcf && ![0xc4, 0xc8, 0xcc].includes(marker)
    if (isFrame) return { mime: 'image/jpeg', widthPx: u16(bytes, at + 7), heightPx: u16(bytes, at + 5), holdsMetadata }
    const length = u16(bytes, at + 2)
    if (length < 2 || marker === 0xda) return null
    at += 2 + length
  }
  return null
}

/** WebP: size in VP8X, VP8 or VP8L; metadata in chunks EXIF and XMP (RFC 9649, section 2). */
function webpHeader(bytes: Uint8Array): ImageHeader | null {
  const kind = text(bytes, 12, 4)
  const header = (widthPx: number, heightPx: number, holdsMetadata = false): ImageHeader => ({ mime: 'image/webp', widthPx, heightPx, holdsMetadata })
  if (kind === 'VP8X') return header(1 + l24(bytes, 24), 1 + l24(bytes, 27), ((bytes[20] ?? 0) & 0x0c) !== 0)
  if (kind === 'VP8 ') return header(l24(bytes, 26) & 0x3fff, (l24(bytes, 28)) & 0x3fff)
  if (kind === 'VP8L') {
    const bits = u32(new Uint8Array([bytes[24] ?? 0, bytes[23] ?? 0, bytes[22] ?? 0, bytes[21] ?? 0]), 0)
    return header((bits % 16_384) + 1, (Math.floor(bits / 16_384) % 16_384) + 1)
  }
  return null
}

/**
 * What an image file says of itself, told by its bytes and not by its name, before anything is decoded.
 *
 * Fails: refuses what is no PNG, JPEG or WebP, has no size, or is larger than the limits. Never throws.
 */
export function readImageHeader(bytes: Uint8Array, limits: ImageLimits = imageLimits): Reading<{ header: ImageHeader }> {
  if (bytes.length > limits.bytes) return refused(`the picture has ${Math.ceil(bytes.length / 1e6)} MB; more than ${limits.bytes / 1e6} MB are not read`, `la imagen tiene ${Math.ceil(bytes.length / 1e6)} MB; no se leen más de ${limits.bytes / 1e6} MB`)
  const isPng = u32(bytes, 0) === 0x89504e47
  const isJpeg = u16(bytes, 0) === 0xffd8
  const isWebp = text(bytes, 0, 4) === 'RIFF' && text(bytes, 8, 4) === 'WEBP'
  if (!isPng && !isJpeg && !isWebp) return refused('is no picture that can be read here: PNG, JPEG or WebP', 'no es una imagen que se pueda leer aquí: PNG, JPEG o WebP')
  const header = isPng ? pngHeader(bytes) : isJpeg ? jpegHeader(bytes) : webpHeader(bytes)
  if (header === null || header.widthPx < 1 || header.heightPx < 1) return refused('the picture is damaged: it does not say its size', 'la imagen está dañada: no dice su tamaño')
  const { widthPx, heightPx } = header
  if (widthPx > limits.sidePx || heightPx > limits.sidePx || widthPx * heightPx > limits.pixels) return refused(`the picture has ${widthPx} × ${heightPx} px; more than ${limits.pixels / 1e6} million are not read`, `la imagen tiene ${widthPx} × ${heightPx} px; no se leen más de ${limits.pixels / 1e6} millones`)
  return { ok: true, header }
}
