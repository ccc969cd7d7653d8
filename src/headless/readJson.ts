import { readFile, stat } from 'node:fs/promises'

export type JsonFile = { readonly ok: true; readonly value: unknown } | { readonly ok: false; readonly reason: string }

/** Larger files are refused unread. */
export const LARGEST_FILE_BYTES = 20 * 1024 * 1024

/** Reads a JSON file; what stands in the way is one plain sentence without the file's name. Never throws. */
export async function readJson(path: string): Promise<JsonFile> {
  let text: string
  try {
    const { size } = await stat(path)
    if (size > LARGEST_FILE_BYTES) return { ok: false, reason: `cannot be read: ${size} bytes, at most ${LARGEST_FILE_BYTES} are read` }
    text = await readFile(path, 'utf8')
  } catch (error) {
    return { ok: false, reason: `cannot be read: ${whyNot(error)}` }
  }
  try {
    const value: unknown = JSON.parse(text.startsWith('\uFEFF') ? text.slice(1) : text)
    return { ok: true, value }
  } catch {
    return { ok: false, reason: 'cannot be read: not JSON' }
  }
}

function whyNot(error: unknown): string {
  const code = error instanceof Error && 'code' in error ? error.code : undefined
  if (code === 'ENOENT' || code === 'ENOTDIR') return 'no such file'
  if (code === 'EISDIR') return 'it is a folder'
  if (code === 'EACCES' || code === 'EPERM') return 'no permission'
  return 'the system refused'
}
