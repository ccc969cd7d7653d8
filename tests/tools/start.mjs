// `npm start`: installs what is missing, builds, serves the built app and opens it.
import { spawn, spawnSync } from 'node:child_process'
import { ensureInstalled, root } from './install.mjs'

ensureInstalled()
const vite = `${root}node_modules/vite/bin/vite.js`
const built = spawnSync(process.execPath, [vite, 'build', '--logLevel', 'warn'], { cwd: root, stdio: 'inherit' })
if (built.status !== 0) process.exit(built.status ?? 1)
const port = process.env.PORT ?? '4180'
const args = [vite, 'preview', '--port', port, ...(process.argv.includes('--no-open') ? [] : ['--open'])]
spawn(process.execPath, args, { cwd: root, stdio: 'inherit' }).on('exit', (code) => process.exit(code ?? 0))
