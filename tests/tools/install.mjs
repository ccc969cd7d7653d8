// Installs the packages of the lock file when they are missing or older than it.
import { spawnSync } from 'node:child_process'
import { existsSync, statSync } from 'node:fs'
import { fileURLToPath } from 'node:url'

export const root = fileURLToPath(new URL('../../', import.meta.url))

export const ensureInstalled = () => {
  const [major, minor] = process.versions.node.split('.').map(Number)
  if (major < 20 || (major === 20 && minor < 19)) {
    console.error(`Stringyard needs Node 20.19 or newer; this is ${process.versions.node}.`)
    process.exit(1)
  }
  const marker = `${root}node_modules/.package-lock.json`
  const lock = `${root}package-lock.json`
  if (existsSync(marker) && statSync(marker).mtimeMs >= statSync(lock).mtimeMs - 1000) return
  console.log('Installing packages …')
  const { status } = spawnSync('npm', ['ci', '--no-audit', '--no-fund'], { cwd: root, stdio: 'inherit', shell: process.platform === 'win32' })
  if (status !== 0) process.exit(status ?? 1)
}
