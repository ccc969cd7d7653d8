/**
 * Which folder of src may import which (docs/architecture.md). One rule a row.
 * tests/architecture.test.ts runs it and fails if it read nothing: with a parser
 * that does not know our TypeScript this tool reports 0 modules and no violation.
 */
export const layers = {
  units: { src: [], npm: [] },
  messages: { src: ['units'], npm: [] },
  geometry: { src: ['units'], npm: ['robust-predicates', 'clipper2-ts', 'delaunator'] },
  drawing: { src: ['units', 'geometry'], npm: [] },
  engine: { src: ['units', 'geometry'], npm: [] },
  scene: { src: ['units', 'messages', 'geometry', 'drawing'], npm: ['zod', 'fflate'] },
  derive: { src: ['units', 'messages', 'geometry', 'drawing', 'engine', 'scene'], npm: [] },
  checks: { src: ['units', 'messages', 'geometry', 'engine', 'scene', 'derive'], npm: [] },
  state: { src: ['units', 'messages', 'geometry', 'scene', 'derive', 'checks'], npm: ['zustand'] },
  canvas: { src: ['units', 'messages', 'geometry', 'drawing', 'scene', 'derive', 'checks', 'state'], npm: ['react', 'konva', 'react-konva', 'zustand'] },
  read: { src: ['units', 'messages', 'geometry'], npm: ['papaparse', '@types/papaparse', 'dxf-parser'] },
  ui: { src: ['units', 'messages', 'geometry', 'drawing', 'scene', 'derive', 'checks', 'state', 'read'], npm: ['react', 'react-dom', 'zustand'] },
  sheet: { src: ['units', 'messages', 'geometry', 'drawing', 'engine', 'scene', 'derive', 'checks'], npm: ['qrcode-generator'] },
  write: { src: ['units', 'messages', 'geometry', 'drawing', 'scene', 'derive', 'checks', 'sheet'], npm: ['pdfkit', '@types/pdfkit', '@tarikjabiri/dxf', 'papaparse', '@types/papaparse', 'fflate'] },
  headless: { src: ['units', 'messages', 'geometry', 'drawing', 'engine', 'scene', 'derive', 'checks', 'sheet', 'write'], npm: [], node: true },
  app: { src: ['units', 'messages', 'geometry', 'drawing', 'engine', 'scene', 'derive', 'checks', 'state', 'canvas', 'ui', 'sheet', 'write', 'read'], npm: ['react', 'react-dom', 'konva', 'react-konva', 'zustand', 'idb', 'fflate', 'vite', '@fontsource/fira-sans-condensed'], node: true },
}

const npmName = (name) => `node_modules/${name}/`

const rules = Object.entries(layers).flatMap(([layer, { src, npm, node }]) => [
  {
    name: `${layer}-imports`,
    severity: 'error',
    from: { path: `^src/${layer}/` },
    to: { path: '^src/', pathNot: [layer, ...src].map((name) => `^src/${name}/`) },
  },
  {
    name: `${layer}-npm`,
    severity: 'error',
    from: { path: `^src/${layer}/` },
    to: { path: 'node_modules/', ...(npm.length ? { pathNot: npm.map(npmName) } : {}) },
  },
  ...(node ? [] : [{ name: `${layer}-no-node`, severity: 'error', from: { path: `^src/${layer}/` }, to: { dependencyTypes: ['core'] } }]),
])

export default {
  forbidden: [
    { name: 'no-cycles', severity: 'error', from: {}, to: { circular: true } },
    { name: 'tools-are-pure', severity: 'error', from: { path: '^src/canvas/tools/' }, to: { path: 'node_modules/(konva|react-konva|react)/' } },
    { name: 'state-is-vanilla', severity: 'error', from: { path: '^src/state/' }, to: { path: 'node_modules/react' } },
    { name: 'nothing-imports-tests', severity: 'error', from: { path: '^src/' }, to: { path: '^(tests|e2e)/' } },
    ...rules,
  ],
  options: {
    parser: 'swc',
    tsPreCompilationDeps: true,
    doNotFollow: { path: 'node_modules' },
    exclude: { path: '\\.json$' },
    enhancedResolveOptions: { extensions: ['.ts', '.tsx', '.mjs', '.js'], exportsFields: ['exports'], conditionNames: ['import', 'require', 'default'] },
  },
}
