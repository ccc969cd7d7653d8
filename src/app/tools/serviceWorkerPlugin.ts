import { createHash } from 'node:crypto'
import { existsSync, readdirSync, readFileSync, writeFileSync } from 'node:fs'
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
        // A build that failed has written nothing; its own error is the one to read.
        if (!existsSync(join(outDir, 'index.html'))) return
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
  // Caches of older versions stay while windows of them may be open: those still fetch their lazy parts from there.
  // One window left is the one that asked for this version and is about to load it.
  event.waitUntil(Promise.all([caches.keys(), self.clients.matchAll({ type: 'window', includeUncontrolled: true })]).then(([names, windows]) => {
    const older = names.filter((name) => name.startsWith('stringyard-') && name !== CACHE)
    const gone = windows.length === 0 ? older : windows.length === 1 ? older.slice(0, -1) : []
    return Promise.all(gone.map((name) => caches.delete(name)))
  }).then(() => self.clients.claim()))
})
self.addEventListener('message', (event) => { if (event.data === 'take over') self.skipWaiting() })
self.addEventListener('fetch', (event) => {
  const { request } = event
  if (request.method !== 'GET' || new URL(request.url).origin !== self.location.origin) return
  // This version's own files first: the page is never an older one. Older caches only for what an older window asks for.
  // ignoreVary: servers that send Vary: Origin would make a stored module script invisible.
  const find = (what, ignoreSearch) => caches.open(CACHE).then((own) => own.match(what, { ignoreVary: true, ignoreSearch })).then((hit) => hit || caches.match(what, { ignoreVary: true, ignoreSearch }))
  const isPage = request.mode === 'navigate'
  event.respondWith(find(request, isPage).then((hit) => hit || (isPage ? find('./index.html', true) : undefined)).then((hit) => hit || fetch(request)))
})
`
