/** `yard sheet`: the crew sheet and what else leaves the app, written to files without a browser. */
import { readFile as readBytes, readFile as readText, writeFile } from 'node:fs/promises'
import { limitsOf } from '../checks/limits.ts'
import { runChecks } from '../checks/runner.ts'
import { deriveSite } from '../derive/site.ts'
import { runThroughOf } from '../derive/stages/runThrough.ts'
import { readFile } from '../scene/readFile.ts'
import { crewSheet } from '../sheet/crew/crewSheet.ts'
import { svgOfPage } from '../sheet/crew/svgPages.ts'
import type { CrewSheetContent } from '../sheet/crew/types.ts'
import { facePartFile } from './faceFiles.ts'
import type { SheetRequest } from './args.ts'

/** `out.svg` → `out-2.svg` for the second of several pages. */
const pageFile = (file: string, page: number, pages: number): string => (pages === 1 ? file : file.replace(/(\.[^./\\]*)?$/, `-${page}$1`))

/**
 * Reads one layout and writes what was asked for.
 *
 * Returns 0 where everything was written, 2 where the layout cannot be used or a file cannot be written; the reason is one line.
 * `now`: the time printed on the sheet.
 */
export async function runSheet({ file, outputs, paper, orientation, language, units }: SheetRequest, now: Date, write: (text: string) => void = (text) => process.stdout.write(text)): Promise<number> {
  let text: string
  try {
    text = await readText(file, 'utf8')
  } catch {
    write(`${file}: cannot be read: no such file, or no permission\n`)
    return 2
  }
  const read = readFile(text)
  if (!read.ok) {
    const [first] = read.issues
    write(`${file}: ${first === undefined ? 'is not a layout' : `${first.path === '' ? '' : `${first.path} `}${first.message.en}`}\n`)
    return 2
  }
  const site = deriveSite(read.document)
  const run = runChecks(site)
  const content: CrewSheetContent = {
    site, run, isSettled: true, rehearsal: runThroughOf(site, { limits: limitsOf(site.document) }),
    language, system: units ?? site.layout.displayUnits, paper, orientation,
    whenIso: now.toISOString(), when: now.toISOString().slice(0, 16).replace('T', ' '),
  }
  const title = `${site.layout.title} ${site.layout.revision}`.trim()
  const put = async (out: string, bytes: string | Uint8Array): Promise<void> => {
    await writeFile(out, bytes)
    write(`${out}\n`)
  }
  try {
    for (const { as, out } of outputs) {
      if (as === 'pdf') {
        const { pdfOf } = await import('../write/pdf.ts')
        await put(out, await pdfOf(crewSheet(content).pages, { title, language: language === 'es' ? 'es' : 'en-US', whenIso: content.whenIso, loadFace: (weight, part) => readBytes(facePartFile(weight, part)) }))
      } else if (as === 'svg') {
        const { pages } = crewSheet(content)
        for (const [i, page] of pages.entries()) await put(pageFile(out, i + 1, pages.length), svgOfPage(page, title))
      } else if (as === 'csv') await put(out, (await import('../write/csv.ts')).csvOf(content))
      else if (as === 'dxf') await put(out, (await import('../write/dxf.ts')).dxfOf(site))
      else await put(out, (await import('../write/geoJson.ts')).geoJsonOf(site))
    }
    return 0
  } catch (error) {
    write(`${file}: ${error instanceof Error ? error.message.split('\n')[0] : 'could not be written'}\n`)
    return 2
  }
}
