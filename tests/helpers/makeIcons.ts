/**
 * Writes the icons of the installed app from src/app/public/icon.svg, our own drawing of pipe, jaw and tape:
 * `npx tsx tests/helpers/makeIcons.ts`. Maskable ones bleed to the edge and keep the drawing in the middle four fifths.
 */
import { readFileSync, writeFileSync } from 'node:fs'
import { chromium } from 'playwright'
import { chromiumArgs, findChromium } from '../tools/chromium.mjs'

const folder = 'src/app/public'
const drawing = readFileSync(`${folder}/icon.svg`, 'utf8')
const PAPER = '#F6EFDF'
const icons = [
  { name: 'icon-192.png', sizePx: 192, share: 1 },
  { name: 'icon-512.png', sizePx: 512, share: 1 },
  { name: 'icon-maskable-512.png', sizePx: 512, share: 0.8 },
  { name: 'icon-touch-180.png', sizePx: 180, share: 0.9 },
] as const

const browser = await chromium.launch({ executablePath: findChromium() ?? '', args: chromiumArgs })
for (const { name, sizePx, share } of icons) {
  const page = await browser.newPage({ viewport: { width: sizePx, height: sizePx } })
  const ground = share === 1 ? 'transparent' : PAPER
  await page.setContent(`<body style="margin:0;display:grid;place-content:center;height:100vh;background:${ground}"><div style="width:${sizePx * share}px;height:${sizePx * share}px">${drawing}</div></body>`)
  writeFileSync(`${folder}/${name}`, await page.screenshot({ omitBackground: true }))
  await page.close()
}
await browser.close()
