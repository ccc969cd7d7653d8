// Finds a Chromium for the browser tests: CHROMIUM_PATH, one on PATH, apt as root, else one sentence.
import { execFileSync, spawnSync } from 'node:child_process'
import { accessSync, constants, existsSync } from 'node:fs'
import { delimiter, join } from 'node:path'

const names = ['chromium', 'chromium-browser', 'google-chrome-stable', 'google-chrome']

const onPath = () => {
  for (const folder of (process.env.PATH ?? '').split(delimiter)) {
    for (const name of names) {
      const file = join(folder, name)
      try {
        accessSync(file, constants.X_OK)
        return file
      } catch {
        // not here; the next one
      }
    }
  }
  return null
}

/** Path of a Chromium, installing Debian's package as root where needed; null with a sentence on stderr. */
export const findChromium = ({ install = true } = {}) => {
  const given = process.env.CHROMIUM_PATH
  if (given !== undefined && given !== '') {
    if (existsSync(given)) return given
    console.error(`CHROMIUM_PATH names ${given}, which is not there.`)
    return null
  }
  const found = onPath()
  if (found !== null) return found
  const isRoot = process.getuid?.() === 0
  if (install && isRoot && spawnSync('which', ['apt-get']).status === 0) {
    console.log('No Chromium here: installing Debian\'s package …')
    const quiet = { stdio: 'ignore', env: { ...process.env, DEBIAN_FRONTEND: 'noninteractive' } }
    const tryInstall = () => {
      try {
        execFileSync('apt-get', ['install', '-y', '--no-install-recommends', 'chromium'], quiet)
        return true
      } catch {
        return false
      }
    }
    if (!tryInstall()) {
      spawnSync('apt-get', ['update'], quiet)
      tryInstall()
    }
    const installed = onPath()
    if (installed !== null) return installed
  }
  console.error('The browser tests need Chromium: install the package "chromium" or set CHROMIUM_PATH to its program.')
  return null
}

export const chromiumArgs = ['--no-sandbox', '--disable-gpu', '--disable-quic', '--no-first-run', '--disable-background-networking', '--disable-component-update', '--disable-sync']
