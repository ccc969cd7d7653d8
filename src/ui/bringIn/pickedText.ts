/** Most bytes of a text file that are taken from the device. */
const MOST_BYTES = 20_000_000

export type PickedText = { ok: true; name: string; text: string } | { ok: false; name: string; sizeMB: number; mostMB: number }

/** A file's text: UTF-8, or the Western code page that older spreadsheets write. Its size is looked at before it is read. */
export async function pickedText(file: File, mostBytes = MOST_BYTES): Promise<PickedText> {
  const name = file.name.slice(0, 80)
  if (file.size > mostBytes) return { ok: false, name, sizeMB: Math.ceil(file.size / 1e6), mostMB: Math.floor(mostBytes / 1e6) }
  const bytes = await file.arrayBuffer()
  try {
    return { ok: true, name, text: new TextDecoder('utf-8', { fatal: true }).decode(bytes) }
  } catch {
    return { ok: true, name, text: new TextDecoder('windows-1252').decode(bytes) }
  }
}
