import { defineConfig } from '@playwright/test'
import { chromiumArgs, findChromium } from './tests/tools/chromium.mjs'

const executablePath = findChromium({ install: false }) ?? ''
const port = 4999

export default defineConfig({
  testDir: 'e2e',
  outputDir: 'test-results',
  workers: 1,
  retries: 0,
  timeout: 45_000,
  reporter: [['list'], ['json', { outputFile: '.cache/e2e.json' }]],
  use: {
    baseURL: `http://localhost:${port}`,
    viewport: { width: 1440, height: 900 },
    deviceScaleFactor: 1,
    reducedMotion: 'reduce',
    serviceWorkers: 'block',
    locale: 'en-US',
    timezoneId: 'America/Chicago',
    launchOptions: { executablePath, args: chromiumArgs },
  },
  webServer: { command: `node node_modules/vite/bin/vite.js preview --port ${port} --strictPort`, url: `http://localhost:${port}`, reuseExistingServer: false },
  expect: { timeout: 8_000 },
})
