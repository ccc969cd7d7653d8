// Size of the initial script, gzip: what index.html loads at once, imports followed, lazy chunks left out.
// Fails above the ceiling, and on a drop of 15 % against the size written down in package.json (an unexplained drop is a lost part).
import { readFileSync } from 'node:fs'
import { gzipSync } from 'node:zlib'
import { root } from './install.mjs'

const { size } = JSON.parse(readFileSync(`${root}package.json`, 'utf8'))
const dist = `${root}dist/`
const html = readFileSync(`${dist}index.html`, 'utf8')
const queue = [...html.matchAll(/(?:src|href)="\.?\/?([^"]+\.js)"/g)].map((match) => match[1])
const seen = new Set()
let bytes = 0
while (queue.length > 0) {
  const name = queue.pop()
  if (seen.has(name)) continue
  seen.add(name)
  const text = readFileSync(dist + name)
  bytes += gzipSync(text, { level: 9 }).length
  const folder = name.replace(/[^/]*$/, '')
  for (const match of text.toString('utf8').matchAll(/(?:from|import)\s*["']\.\/([^"']+\.js)["']/g)) queue.push(folder + match[1])
}
const kB = bytes / 1000
console.log(`initial script ${kB.toFixed(1)} kB gzip in ${seen.size} files (ceiling ${size.ceilingKB}, written down ${size.writtenKB})`)
if (seen.size === 0) {
  console.error('index.html names no script: the check has read nothing')
  process.exit(1)
}
if (kB > size.ceilingKB) {
  console.error('above the ceiling')
  process.exit(1)
}
if (kB < size.writtenKB * 0.85) {
  console.error('more than 15 % below the size written down: say why and write the new one down in package.json')
  process.exit(1)
}
