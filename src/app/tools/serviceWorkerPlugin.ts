import { createHash } from 'node:crypto'
import { readdirSync, readFileSync, writeFileSync } from 'node:fs'
import { join, relative, sep } from 'node:path'
import type { Plugin } from 'vite'

/**
 * Writes dist/sw.js with the list of every built file, so that the app works without signal from the second load.
 * Why not a ready-made plugin: it brings some 300 packages for what these lines do (docs/decisions/0003-dependencies.md).
 */
export const serviceWorker = (): Plugin => {
  let outDir = ''
  return {
    name: 'stringyard-service-worker',
    apply: 'build',
    configResolved: (config) => {
      outDir = join(config.root, config.build.outDir)
    },
    closeBundle: {
      order: 'post',
      sequential: true,
      handler: () => {
        const files: string[] = []
        const walk = (folder: string): void => {
          for (const entry of readdirSync(folder, { withFileTypes: true })) {
            const path = join(folder, entry.name)
            if (entry.isDirectory()) walk(path)
            else if (entry.name !== 'sw.js') files.push(path)
          }
        }
        walk(outDir)
        files.sort()
        const hash = createHash('sha256')
        for (const file of files) hash.update(relative(outDir, file)).update(readFileSync(file))
        const names = files.map((file) => `./${relative(outDir, file).split(sep).join('/')}`)
        writeFileSync(join(outDir, 'sw.js'), workerSource(`stringyard-${hash.digest('hex').slice(0, 16)}`, ['./', ...names]))
      },
    },
  }
}

const workerSource = (cache: string, files: readonly string[]): string => `
const CACHE = ${JSON.stringify(cache)}
const FILES = ${JSON.stringify(files)}
self.addEventListener('install', (event) => {
  event.waitUntil(caches.open(CACHE).then((cache) => cache.addAll(FILES.map((file) => new Request(file, { cache: 'reload' })))))
})
self.addEventListener('activate', (event) => {
  // The previous cache stays one version: a window that is still open keeps its lazy parts.
  event.waitUntil(caches.keys().then((names) => {
    const mine = names.filter((name) => name.startsWith('stringyard-') && name !== CACHE)
    return Promise.all(mine.slice(0, -1).map((name) => caches.delete(name)))
  }).then(() => self.clients.claim()))
})
self.addEventListener('message', (event) => { if (event.data === 'take over') self.skipWaiting() })
self.addEventListener('fetch', (event) => {
  const { request } = event
  if (request.method !== 'GET' || new URL(request.url).origin !== self.location.origin) return
  // ignoreVary: servers that send Vary: Origin would make a stored module script invisible.
  event.respondWith(caches.match(request, { ignoreVary: true, ignoreSearch: request.mode === 'navigate' }).then((hit) => {
    if (hit) return hit
    if (request.mode === 'navigate') return caches.match('./index.html', { ignoreVary: true }).then((page) => page || fetch(request))
    return fetch(request)
  }))
})
`
