/**
 * Pictures of sample pages, to look at: `npx tsx tests/helpers/imagePreview.ts OUT_FOLDER [scale] [name …]`.
 * Bundles the page, draws it in a headless browser (CHROMIUM_PATH or /usr/bin/chromium) and writes NAME.png.
 */
import { mkdirSync, readFileSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'
import { chromium } from '@playwright/test'
import { build } from 'vite'

const here = (path: string): string => fileURLToPath(new URL(path, import.meta.url))

const script = async (): Promise<string> => {
  const out = await build({ configFile: false, logLevel: 'error', build: { write: false, minify: false, lib: { entry: here('./imagePreviewPage.ts'), formats: ['iife'], name: 'imagePreview' } } })
  const outputs = (Array.isArray(out) ? out : [out]).flatMap((one) => ('output' in one ? one.output : []))
  const chunk = outputs.find((one) => one.type === 'chunk')
  if (chunk === undefined) throw new Error('nothing was bundled')
  return chunk.code
}

const faces = (): string =>
  [400, 500, 600].map((weight) => `@font-face{font-family:'Fira Sans Condensed';font-weight:${weight};src:url(data:font/woff2;base64,${readFileSync(here(`../../node_modules/@fontsource/fira-sans-condensed/files/fira-sans-condensed-latin-${weight}-normal.woff2`)).toString('base64')})}`).join('')

const preview = async (folder: string, scale: number, wanted: readonly string[]): Promise<void> => {
  mkdirSync(folder, { recursive: true })
  const browser = await chromium.launch({ executablePath: process.env['CHROMIUM_PATH'] ?? '/usr/bin/chromium', args: ['--no-sandbox'] })
  try {
    const page = await browser.newPage()
    await page.setContent(`<!doctype html><style>${faces()}</style><body></body>`)
    await page.addScriptTag({ content: await script() })
    const names = wanted.length > 0 ? wanted : await page.evaluate<string[]>('previewNames')
    for (const name of names) {
      const address = await page.evaluate<string>(`previewPage(${JSON.stringify(name)}, ${scale})`)
      writeFileSync(join(folder, `${name}.png`), Buffer.from(address.slice(address.indexOf(',') + 1), 'base64'))
    }
  } finally {
    await browser.close()
  }
}

const [, , folder, scale = '1', ...names] = process.argv
if (folder !== undefined) await preview(folder, Number(scale), names)
