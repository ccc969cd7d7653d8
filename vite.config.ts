import { defineConfig, type Plugin } from 'vite'
import react from '@vitejs/plugin-react'
import { serviceWorker } from './src/app/tools/serviceWorkerPlugin.ts'

/** The dev server puts styles into the page, which the content policy of the built app forbids. */
const noPolicyWhileDeveloping = (): Plugin => ({
  name: 'no-policy-while-developing',
  apply: 'serve',
  transformIndexHtml: (html, { server }) => (server === undefined ? html : html.replace(/<meta http-equiv="Content-Security-Policy"[^>]*>/, '')),
})

export default defineConfig({
  root: 'src/app',
  base: './',
  publicDir: 'public',
  plugins: [react(), serviceWorker(), noPolicyWhileDeveloping()],
  // The core of the canvas library: every shape here is drawn by our own painter.
  resolve: { alias: [{ find: /^konva$/, replacement: 'konva/lib/Core.js' }, { find: /^react-konva$/, replacement: 'react-konva/es/ReactKonvaCore.js' }] },
  worker: { format: 'es' },
  build: { outDir: '../../dist', emptyOutDir: true, target: 'es2022', sourcemap: false, assetsInlineLimit: 0 },
})
