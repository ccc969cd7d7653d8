/**
 * Writes docs/checks/README.md from the registry: `npx tsx tests/helpers/makeCheckIndex.ts`.
 * tests/docs/checkIndex.test.ts fails where the page is out of date, or where a finding of a layout goes beyond what it says.
 */
import { readFileSync, writeFileSync } from 'node:fs'
import { pathToFileURL } from 'node:url'
import { levelOrder, type CheckDefinition, type Level, type SourceClass } from '../../src/checks/finding.ts'
import { checks } from '../../src/checks/registry.ts'
import { limitOf } from '../../src/engine/limits.ts'

export const checkIndexPath = new URL('../../docs/checks/README.md', import.meta.url)

export interface CheckEntry {
  id: string
  title: string
  /** The worst level it can raise. */
  worst: Level
  /** Every class its findings may name. */
  sources: readonly SourceClass[]
}

const fileOf = ({ id }: CheckDefinition): URL => new URL(`../../src/checks/list/${id.replace(/-([a-z])/g, (_all, letter: string) => letter.toUpperCase())}.ts`, import.meta.url)

/** Limits a check asks for, by the ids in its calls of `limits.limit(…)`. */
const limitsIn = (code: string): string[] => [...code.matchAll(/limits\.limit\(([^)]*)\)/g)].flatMap(([, inside = '']) => [...inside.matchAll(/'([a-z-]+)'/g)].map(([, id = '']) => id))

const worstOf = (levels: readonly Level[]): Level => levels.reduce<Level>((worst, level) => (levelOrder.indexOf(level) < levelOrder.indexOf(worst) ? level : worst), 'met')

/** Levels a check gives: those it names outside a comparison, and where it reads a level off a limit, those the limit has. */
function levelsIn(code: string, limitIds: readonly string[]): Level[] {
  const given = code.replaceAll(/[!=]==\s*'(STOP|FIX|CHECK|NOTE|met)'/g, '')
  const named = levelOrder.filter((level) => given.includes(`'${level}'`))
  if (!/\blevelFor\(/.test(code)) return named
  return [...named, ...limitIds.flatMap((id): Level[] => (limitOf(id).fix !== null ? ['FIX'] : limitOf(id).check !== null ? ['CHECK'] : []))]
}

const classNames: readonly SourceClass[] = ['published', 'mechanics', 'plate', 'jobRule', 'houseRule']

function sourcesIn(code: string, limitIds: readonly string[]): SourceClass[] {
  const found = new Set<SourceClass>()
  const body = code.replaceAll(/^import .*$/gm, '')
  if (/\bhouseRule\b/.test(body)) found.add('houseRule')
  if (/\bmechanics(Source)?\('/.test(body)) found.add('mechanics')
  if (/\bplate\(/.test(body)) found.add('plate')
  for (const name of classNames) if (body.includes(`class: '${name}'`)) found.add(name)
  // Zones bring the source of their own.
  if (/\.source\.class\b/.test(body)) for (const name of ['published', 'mechanics', 'houseRule'] as const) found.add(name)
  if (/\bsourceOf\(/.test(body)) for (const id of limitIds) found.add(limitOf(id).sourceClass)
  return classNames.filter((name) => found.has(name))
}

/** What each check of the registry can say, read from its file. */
export const checkEntries = (): CheckEntry[] => checks.map((check) => {
  const code = readFileSync(fileOf(check), 'utf8')
  const limitIds = limitsIn(code)
  return { id: check.id, title: check.title.en, worst: worstOf(levelsIn(code, limitIds)), sources: sourcesIn(code, limitIds) }
})

const words: Readonly<Record<SourceClass, string>> = { published: 'published', mechanics: 'mechanics', plate: 'plate', jobRule: 'job rule', houseRule: 'house rule' }

export function checkIndexMarkdown(entries: readonly CheckEntry[] = checkEntries()): string {
  return [
    '# Checks',
    '',
    'Written by `npx tsx tests/helpers/makeCheckIndex.ts` from `src/checks/registry.ts`; a test fails where it is out of date. Each page is the *Why?* page of the app.',
    '',
    'STOP: someone can be killed, or a legal distance is broken. FIX: as drawn it will fail, damage gear or pipe, or not fit. CHECK: only the site can tell, or a house rule is passed. NOTE: worth knowing. Missing input is',
    'CHECK and counted apart. *Worst* is the worst level a check can raise, with the limits the app starts with. *Sources* are the classes its findings may name: published (document, edition, clause), mechanics, plate of the gear,',
    'house rule (common practice, no published source; editable in the limits of the layout).',
    '',
    '| check | title | worst | sources |',
    '| --- | --- | --- | --- |',
    ...entries.map(({ id, title, worst, sources }) => `| [${id}](${id}.md) | ${title} | ${worst} | ${sources.map((name) => words[name]).join(', ')} |`),
    '',
  ].join('\n')
}

if (process.argv[1] !== undefined && import.meta.url === pathToFileURL(process.argv[1]).href) {
  writeFileSync(checkIndexPath, checkIndexMarkdown())
  console.log(`${checks.length} checks`)
}
