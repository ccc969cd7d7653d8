/** Texts that ship with the app and are fetched from it when asked for: why pages and examples. */
const whyPages = import.meta.glob<string>('../../../docs/checks/*.md', { query: '?raw', import: 'default' })
const exampleFiles = import.meta.glob<string>('../../../shared/examples/*.yard.json', { query: '?raw', import: 'default' })

const nameOf = (path: string, ending: string): string => path.slice(path.lastIndexOf('/') + 1, -ending.length)

export const whyPage = async (checkId: string): Promise<string> => {
  const load = Object.entries(whyPages).find(([path]) => nameOf(path, '.md') === checkId)?.[1]
  return load === undefined ? `# ${checkId}\n\nNo page is written for this check.` : load()
}

export const exampleNames = (): readonly string[] => Object.keys(exampleFiles).map((path) => nameOf(path, '.yard.json')).sort()

/** Text of an example file; null where there is none of that name. */
export const exampleText = async (name: string): Promise<string | null> => {
  const load = Object.entries(exampleFiles).find(([path]) => nameOf(path, '.yard.json') === name)?.[1]
  return load === undefined ? null : load()
}
