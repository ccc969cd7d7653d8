import { defineConfig } from 'vite'
import react from '@vitejs/plugin-react'
import { serviceWorker } from './src/app/tools/serviceWorkerPlugin.ts'

export default defineConfig({
  root: 'src/app',
  base: './',
  publicDir: 'public',
  plugins: [react(), serviceWorker()],
  worker: { format: 'es' },
  build: { outDir: '../../dist', emptyOutDir: true, target: 'es2022', sourcemap: false, assetsInlineLimit: 0 },
})
