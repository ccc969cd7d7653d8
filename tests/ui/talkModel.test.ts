import { readFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import { limitsOf } from '../../src/checks/limits.ts'
import { deriveSite } from '../../src/derive/site.ts'
import { profileAt } from '../../src/derive/profile.ts'
import { themes } from '../../src/drawing/theme.ts'
import { assertPlaceholders, placeholdersOf, renderText } from '../../src/messages/render.ts'
import { talkWords } from '../../src/messages/ui/talkWords.ts'
import { commandOf } from '../../src/scene/commands/index.ts'
import { jobOf, JOB_ID, recordsOf, type YardDocument } from '../../src/scene/document.ts'
import { applyEdit } from '../../src/scene/edit.ts'
import { planHash } from '../../src/scene/planHash.ts'
import { phases } from '../../src/scene/parts.ts'
import { readFile } from '../../src/scene/readFile.ts'
import { createDocumentStore } from '../../src/state/documentStore.ts'
import { documentAtTalk, lastTalkOf, sinceTalk } from '../../src/ui/talk/lastTalk.ts'
import { pictureMatrix, siteAt, talkPictureSvg, type TalkPicture } from '../../src/ui/talk/planPicture.ts'
import { signOff } from '../../src/ui/talk/signOff.ts'
import { spokenLines } from '../../src/ui/talk/talkLines.ts'
import { classLine, phaseOfStageId, stageIdOf, talkSpots, talkSteps, talkStops, talkZones, type TalkLine } from '../../src/ui/talk/talkModel.ts'

const open = (name: string): YardDocument => {
  const read = readFile(readFileSync(new URL(`../../shared/examples/${name}.yard.json`, import.meta.url), 'utf8'))
  if (!read.ok) throw new Error(`${name} does not open`)
  return read.document
}
const good = open('maple-fork-good')
const env = { newId: (prefix: string) => `${prefix}:new`, now: () => '2026-03-02T07:40:00.000Z' }
const after = (document: YardDocument, name: string, args: unknown): YardDocument => applyEdit(document, commandOf(name)!.run(document, args, env))
const english = (line: TalkLine): string => renderText(line.text, line.values ?? {}, { language: 'en', system: 'feetInches' }).replaceAll('\u2009', ' ')
const spanish = (line: TalkLine): string => renderText(line.text, line.values ?? {}, { language: 'es', system: 'metric' })
const pull = { phase: 'pull', joint: 3 } as const

describe('pages of a talk', () => {
  it('tell RED zones before AMBER before BLUE, each with a page of its own', () => {
    const zones = talkZones(deriveSite(good), pull)
    expect(zones.length).toBeGreaterThan(2)
    const order = zones.map(({ zoneClass }) => ['RED', 'AMBER', 'BLUE'].indexOf(zoneClass))
    expect(order).toEqual(order.toSorted((a, b) => a - b))
    const steps = talkSteps(zones)
    expect(steps.filter(({ name }) => name === 'zone')).toHaveLength(zones.length)
    expect(steps[0]!.name).toBe('choose')
    expect(steps.at(-1)!.name).toBe('sign')
  })
  it('tell two things of one kind in one page, drawn together', () => {
    const machine = recordsOf(good, 'machine')[0]!
    const two = applyEdit(good, { put: [{ ...machine, id: 'machine:second', place: { at: 'free', xM: 40, yM: 40, headingRad: 0 } }], remove: [] })
    const ringsOf = (document: YardDocument): number | undefined => talkZones(deriveSite(document), { phase: 'fuse', joint: 1 }).find(({ id }) => id === 'Z-04')?.rings.length
    expect(talkZones(deriveSite(two), { phase: 'fuse', joint: 1 }).filter(({ id }) => id === 'Z-04')).toHaveLength(1)
    expect(ringsOf(two)).toBe(2 * ringsOf(good)!)
  })
  it('have a page where no zone lives: it says so', () => {
    expect(talkSteps([]).filter(({ name }) => name === 'zone')).toEqual([{ name: 'zone', index: 0, zone: null }])
  })
  it('say something on every page of every stage in both languages, with nothing left to fill in', () => {
    for (const name of ['maple-fork-good', 'campo-arenal-first-sketch']) {
      const document = open(name)
      const site = deriveSite(document)
      for (const phase of phases) {
        const stage = { phase, joint: 1 }
        const [zones, spots, stops] = [talkZones(site, stage), talkSpots(site, stage), talkStops(site, stage, limitsOf(document))]
        for (const step of talkSteps(zones)) {
          const lines = spokenLines({ site, stage, step, spots, stops, since: { kind: 'first' } })
          expect(lines.length).toBeGreaterThan(0)
          for (const line of lines) for (const text of [english(line), spanish(line)]) expect(text).not.toMatch(/\{|\?\?|undefined|NaN/)
        }
      }
    }
  })
  it('have English and Spanish texts with the same places to fill in', () => {
    for (const text of Object.values(talkWords)) {
      expect(text.es).not.toBe('')
      expect(() => assertPlaceholders(text, placeholdersOf(text.en)), text.en).not.toThrow()
    }
  })
})

describe('who may be in a zone', () => {
  it('is nobody in a RED zone that lets no task in, and named tasks where it does', () => {
    const [red] = talkZones(deriveSite(good), pull).filter(({ zoneClass }) => zoneClass === 'RED')
    expect(english(classLine({ ...red!, mayEnter: [] }))).toBe('RED: nobody in here')
    expect(english(classLine({ ...red!, mayEnter: ['operator', 'spotter'] }))).toBe('RED: only operator and spotter in here')
    expect(spanish(classLine({ ...red!, mayEnter: ['operator'] }))).toBe('ROJO: aquí solo operador')
  })
})

describe('where the crew stands', () => {
  const site = deriveSite(good)
  const [red] = talkZones(site, pull).filter(({ zoneClass, missing, keepsOut, mayEnter }) => zoneClass === 'RED' && missing.length === 0 && keepsOut === 'people' && !mayEnter.includes('exitHand'))
  const middle = red!.rings[0]!.reduce((sum, { xM, yM }, _i, all) => ({ xM: sum.xM + xM / all.length, yM: sum.yM + yM / all.length }), { xM: 0, yM: 0 })
  const spot = { ...recordsOf(good, 'crew')[0]!, id: 'crew:test', role: 'exitHand' as const, phases: ['pull' as const], place: { at: 'free' as const, ...middle, headingRad: 0 } }
  const inIt = applyEdit(good, { put: [spot], remove: [] })

  it('a spot in a RED zone is told with the zone and its depth, and offered a clear place that is clear', () => {
    const found = talkSpots(deriveSite(inIt), pull).find(({ item }) => item.id === 'crew:test')!
    expect(found.inside.length).toBeGreaterThan(0)
    expect(found.clear).not.toBeNull()
    const moved = after(inIt, 'setOnRun', { id: 'crew:test', ...found.clear! })
    const then = talkSpots(deriveSite(moved), pull).find(({ item }) => item.id === 'crew:test')!
    expect(then.inside).toEqual([])
    expect(then.clear).toBeNull()
  })
  it('spots of other stages are not asked about', () => {
    expect(talkSpots(deriveSite(inIt), { phase: 'offload', joint: 1 }).some(({ item }) => item.id === 'crew:test')).toBe(false)
  })
})

describe('what stops the work', () => {
  it('names wind, pull and radio with the numbers of the layout in a pull', () => {
    const lines = talkStops(deriveSite(good), pull, limitsOf(good)).map(english)
    // Wind of 5 % of the weight: V = √(2·0.05·128.18 / (1.2256·1·0.27305)) = 6.19 m/s = 13.8 mph.
    expect(lines).toContain('Wind of 13.8 mph from the side rolls the string. Chock it before.')
    // 4 sticks of 351 lb: 0.1 · 1,405 = 141 lb less 1 % fall, 14 lb: 126 lb; breakaway 1.5 · 141 − 14 = 197 lb.
    expect(lines).toContain('More pull than 197 lb. It should be some 126 lb, 197 lb to break it loose.')
    expect(lines).toContain('No answer on the radio.')
  })
  it('names the drag while fusing and not the pull', () => {
    const lines = talkStops(deriveSite(good), { phase: 'fuse', joint: 3 }, limitsOf(good)).map(english)
    expect(lines.some((line) => line.startsWith('More drag than'))).toBe(true)
    expect(lines.some((line) => line.startsWith('More pull'))).toBe(false)
  })
  it('says what is not known instead of a number', () => {
    const bare = applyEdit(good, { put: [{ ...jobOf(good), pipe: null }], remove: [] })
    expect(bare.records[JOB_ID]).not.toBe(good.records[JOB_ID])
    const lines = talkStops(deriveSite(bare), pull, limitsOf(bare)).map(english)
    expect(lines.some((line) => line.includes('not known. Give the pipe'))).toBe(true)
    expect(lines.some((line) => line.startsWith('Pull: not known'))).toBe(true)
  })
})

describe('the plan in the talk', () => {
  const site = deriveSite(good)
  const zones = talkZones(site, pull)
  const picture: TalkPicture = { site, profile: profileAt(site, pull), zones, chosen: zones[0]!, spotIds: new Set(), ringedId: null, isTurned: false, widthPx: 390, heightPx: 260, theme: themes.day }
  it('holds the whole zone it is about', () => {
    for (const zone of zones) {
      const { a, b, c, d, e, f } = pictureMatrix({ ...picture, chosen: zone })
      for (const { xM, yM } of zone.rings.flat()) {
        expect(a * xM + c * yM + e).toBeGreaterThan(0)
        expect(a * xM + c * yM + e).toBeLessThan(390)
        expect(b * xM + d * yM + f).toBeGreaterThan(0)
        expect(b * xM + d * yM + f).toBeLessThan(260)
      }
    }
  })
  it('finds the place of a tap again', () => {
    for (const isTurned of [false, true]) {
      const matrix = pictureMatrix({ ...picture, isTurned })
      const at = siteAt(matrix, 100, 50)
      expect(matrix.a * at.xM + matrix.c * at.yM + matrix.e).toBeCloseTo(100, 6)
      expect(matrix.b * at.xM + matrix.d * at.yM + matrix.f).toBeCloseTo(50, 6)
    }
  })
  it('escapes what people typed', () => {
    expect(talkPictureSvg(picture, 'zone "<b>"')).toContain('aria-label="zone &quot;&lt;b&gt;&quot;"')
  })
})

describe('the log of talks', () => {
  const said = { languages: ['es'] as const, people: ['Ana', 'Luis'], note: ' ' }
  const app = (document: YardDocument) => ({ documents: createDocumentStore(document), env })
  const points = new Map<string, YardDocument>()
  const servicesOf = (store: ReturnType<typeof app>) => ({
    keepPoint: (name: string) => { points.set(name, store.documents.getState().document); return Promise.resolve({ ok: true } as const) },
    points: () => Promise.resolve([...points.keys()].map((name) => ({ pointId: name, name, at: '' }))),
    pointDocument: (pointId: string) => Promise.resolve(points.get(pointId) ?? null),
  })
  it('keeps names, language, stage and time, is not undone, and opens again from a file', async () => {
    const store = app(good)
    const done = await signOff(store, servicesOf(store), said, pull, { en: 'pull', es: 'jalado' })
    expect(done?.signed).toMatchObject({ what: 'talk', stageId: 'pull:3', language: 'es', people: ['Ana', 'Luis'], when: env.now(), text: null })
    expect(lastTalkOf(store.documents.getState().document)).toEqual(done!.signed)
    expect(store.documents.getState().undo()).toBeNull()
    expect(phaseOfStageId(stageIdOf(pull))).toBe('pull')
  })
  it('says what changed since, and nothing while only the log grew', async () => {
    const store = app(good)
    const services = servicesOf(store)
    const { signed } = (await signOff(store, services, said, pull, { en: 'pull', es: 'jalado' }))!
    const now = store.documents.getState().document
    expect(planHash(now)).toBe(planHash(good))
    const then = await documentAtTalk(services, signed)
    expect(sinceTalk(signed, then, now)).toEqual({ kind: 'same', talk: signed })
    const stand = recordsOf(good, 'stand')[0]!
    const since = sinceTalk(signed, then, after(now, 'slideBy', { ids: [stand.id], dRunningM: -0.2032, dOffsetM: 0 }))
    expect(since.kind === 'changed' ? since.changes.map(({ text, values }) => english({ text, values })) : since.kind).toEqual([expect.stringMatching(/^pipe stand E\d moved 8 in up-string$/)])
  })
  it('says that it cannot tell where the plan of then is not on the device', async () => {
    const store = app(good)
    const { signed } = (await signOff(store, { keepPoint: () => Promise.reject(new Error('full')) }, said, pull, { en: 'pull', es: 'jalado' }))!
    expect(signed.extras).toBeUndefined()
    const moved = after(store.documents.getState().document, 'slideBy', { ids: [recordsOf(good, 'stand')[0]!.id], dRunningM: 1, dOffsetM: 0 })
    expect(sinceTalk(signed, await documentAtTalk(servicesOf(store), signed), moved)).toEqual({ kind: 'unknown', talk: signed })
  })
  it('is not written in a window that only reads', async () => {
    const store = app(good)
    store.documents.getState().setWritable(false)
    expect(await signOff(store, servicesOf(store), said, pull, { en: 'pull', es: 'jalado' })).toBeNull()
  })
})
