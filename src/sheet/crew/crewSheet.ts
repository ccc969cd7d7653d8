/**
 * The crew sheet: what the crew builds from. Pages of drawing lists in points, the same for PDF, SVG and PNG.
 *
 * First page: title block, stop numbers, key plan at a true scale over the long section. Then the setting-out table, the stages,
 * and in columns zones, checklist, gear and cautions. Black on white, nothing lettered under 11 pt but the digits of fractions.
 */
import { isPlan } from '../../derive/whatIf.ts'
import type { BoxPx } from '../../drawing/paint.ts'
import type { Primitive } from '../../drawing/primitives.ts'
import type { Lettering } from '../lettering.ts'
import { box, frame, rule } from '../region.ts'
import { sheetWords } from '../words.ts'
import { cautionsSection, checklistSection, codeSection, gearSection } from './notes.ts'
import { crewLettering, plainText } from './face.ts'
import { flow, type Section } from './flow.ts'
import { extentOf, keyPlanGroups } from './keyPlan.ts'
import { longSection } from './longSection.ts'
import { frameOf, type PageFrame } from './paper.ts'
import { PLAN_HEADING_PT, planHeading, scaleStrip, STRIP_PT } from './planStrip.ts'
import { crewReader, type CrewReader } from './reader.ts'
import { scaleFor, type DrawnScale } from './scale.ts'
import { settingOutSection } from './settingOut.ts'
import { stageSection } from './stageStrip.ts'
import { stopFigures, stopNumbersBlock } from './stopNumbers.ts'
import { BODY, BOLD, HEADING, LINE_PT, linesOf, setLines } from './text.ts'
import { titleBlock } from './titleBlock.ts'
import { inPoints, type CrewSheetContent, type SheetGroup, type SheetPage } from './types.ts'
import { numberedZones, zonesSection } from './zoneList.ts'

export interface CrewSheet {
  pages: readonly SheetPage[]
  scale: DrawnScale
}

const SECTION_PT = 96
const SECTION_HEADING_PT = 18
const LEAST_PLAN_PT = 96

/**
 * Lays out a sheet. Pure: depends on nothing but its argument; the same content gives the same pages.
 * Fails: RangeError where `site` is not the plan (heights as set, a what-if): only the plan leaves the app.
 */
export function crewSheet(content: CrewSheetContent): CrewSheet {
  const { site, run, rehearsal } = content
  if (!isPlan({ variant: site.case.variant ?? 'planned', whatIf: site.case.whatIf ?? {} })) throw new RangeError('crewSheet: only the plan is printed, not heights as set or a what-if')
  const reader = crewReader(site, content.language, content.system)
  const lettering = crewLettering()
  const bare = frameOf(content.paper, content.orientation)
  const cautions = reader.localLines(sheetWords.caution).flatMap((text) => linesOf(text, bare.x1 - bare.x0, BODY, lettering))
  const page = frameOf(content.paper, content.orientation, cautions.length + 1)
  const widthPt = page.x1 - page.x0
  const zones = numberedZones(site)

  const head = titleBlock(content, widthPt, reader, lettering)
  const stops = stopNumbersBlock(stopFigures(site, rehearsal), widthPt, reader, lettering)
  const draftPt = content.isSettled ? 0 : 22
  const headTop = page.marginPt + draftPt
  const stopsTop = headTop + head.heightPt + 4
  const first: Primitive[] = [
    ...(content.isSettled ? [] : draftPlate(page.x0, page.marginPt, reader, lettering)),
    ...head.draw(page.x0, headTop),
    ...lettering.line(reader.say('stopNumbers'), page.x0, stopsTop + 14, HEADING),
    ...stops.draw(page.x0, stopsTop + 20),
  ]

  const planTop = stopsTop + 20 + stops.heightPt + 2
  const extent = extentOf(site)
  const belowPt = STRIP_PT + SECTION_HEADING_PT + SECTION_PT
  // Where the head of the first page leaves too little, the drawings have a page of their own.
  const hasOwnPage = page.bottomPt - planTop - PLAN_HEADING_PT - belowPt < LEAST_PLAN_PT
  const top = hasOwnPage ? page.topPt : planTop
  const mostPt = page.bottomPt - top - PLAN_HEADING_PT - belowPt
  const scale = scaleFor(extent.lengthM, widthPt - 20, extent.widthM, mostPt - 14, reader.isMetric)
  const planPt = Math.min(mostPt, Math.max(LEAST_PLAN_PT, extent.widthM * scale.ptPerM + 40))
  const planBox: BoxPx = { x0: page.x0, y0: top + PLAN_HEADING_PT, x1: page.x1, y1: top + PLAN_HEADING_PT + planPt }
  const sectionTop = planBox.y1 + STRIP_PT
  const sectionBox: BoxPx = { x0: page.x0, y0: sectionTop + SECTION_HEADING_PT, x1: page.x1, y1: sectionTop + SECTION_HEADING_PT + SECTION_PT }
  const section = longSection(site, sectionBox, scale, extent.midAlongM, reader, lettering)
  const sectionTitle = reader.say('longSection')
  const drawings: readonly SheetGroup[] = [
    ...keyPlanGroups(site, zones, planBox, scale, extent, reader, lettering),
    ...section.groups,
    {
      name: 'frames', matrix: inPoints, clipPt: null,
      list: [
        ...planHeading(site, scale, { x0: page.x0, x1: page.x1, y0: top }, reader, lettering),
        frame(planBox, { stroke: 'ink', weight: 'boundary' }),
        frame(sectionBox, { stroke: 'ink', weight: 'boundary' }),
        ...lettering.line(sectionTitle, page.x0, sectionTop + 13, HEADING),
        ...lettering.line(lettering.clipped(reader.say('heightsTimes', { times: String(section.times) }), widthPt - lettering.widthPx(sectionTitle, HEADING) - 10, BODY), page.x0 + lettering.widthPx(sectionTitle, HEADING) + 10, sectionTop + 13, BODY),
      ],
    },
    // By itself, so that what is measured on the print can be found.
    { name: 'scaleStrip', matrix: inPoints, clipPt: null, list: scaleStrip(scale, { x0: page.x0, x1: page.x1, y0: planBox.y1 + 6 }, reader, lettering) },
  ]

  const sections: readonly Section[] = [
    settingOutSection(site, run, reader, lettering),
    stageSection(rehearsal, reader, lettering),
    zonesSection(zones, reader, lettering),
    checklistSection(reader, lettering),
    gearSection(site, reader, lettering),
    cautionsSection(run, reader, lettering),
    ...(content.code === undefined ? [] : [codeSection(content.code, reader, lettering)]),
  ]
  const drawingsPage = hasOwnPage ? 1 : 0
  const { placed, pages } = flow(sections, page, sectionBox.y1 + 6)
  const count = pages + drawingsPage
  const lists: Primitive[][] = Array.from({ length: count }, () => [])
  for (const { page: at, list } of placed) lists[at + drawingsPage]!.push(...list)
  return {
    scale,
    pages: lists.map((list, i): SheetPage => ({
      widthPt: page.widthPt, heightPt: page.heightPt,
      groups: [
        { name: 'text', matrix: inPoints, clipPt: null, list: [...(i === 0 ? first : runningHead(content, page, reader, lettering)), ...list] },
        ...(i === drawingsPage ? drawings : []),
        { name: 'foot', matrix: inPoints, clipPt: null, list: foot(content, page, cautions, { page: i + 1, pages: count }, reader, lettering) },
      ].map(asPlainText),
    })),
  }
}

/** No text reaches a back end with controls or marks that reorder it. */
const asPlainText = (group: SheetGroup): SheetGroup => ({ ...group, list: group.list.map(plainPrimitive) })
const plainPrimitive = (primitive: Primitive): Primitive =>
  primitive.t === 'text' ? { ...primitive, text: plainText(primitive.text) } : primitive.t === 'mark' ? { ...primitive, parts: primitive.parts.map(plainPrimitive) } : primitive

const draftPlate = (x0: number, y0: number, reader: CrewReader, lettering: Lettering): readonly Primitive[] => {
  const text = reader.say('draft')
  return [box(x0, y0, lettering.widthPx(text, BOLD) + 12, 18, { stroke: 'ink', weight: 'rope', dash: 'guess' }), ...lettering.line(text, x0 + 6, y0 + 13, BOLD)]
}

/** Title, revision and page at the top of every page but the first. */
const runningHead = ({ site, when, isSettled }: CrewSheetContent, page: PageFrame, reader: CrewReader, lettering: Lettering): readonly Primitive[] => {
  const { title, revision } = site.layout
  const y = page.marginPt + 10
  const right = `${reader.say('revision')} ${revision}, ${when}`
  const rightPt = lettering.widthPx(right, BOLD)
  const name = title.trim() === '' ? reader.local(sheetWords.untitled) : title
  const left = isSettled ? name : `${reader.say('draft')}. ${name}`
  return [
    ...lettering.line(lettering.clipped(plainText(left), page.x1 - page.x0 - rightPt - 16, BOLD), page.x0, y, BOLD),
    ...lettering.line(right, page.x1, y, { ...BOLD, align: 'right' }),
    rule([page.x0, y + 5, page.x1, y + 5], 'ink', 'boundary'),
  ]
}

/** Caution in full, then page number; said on every page. */
const foot = ({ site, when }: CrewSheetContent, page: PageFrame, cautions: readonly string[], numbers: { page: number; pages: number }, reader: CrewReader, lettering: Lettering): readonly Primitive[] => {
  const y = page.bottomPt + 6
  const right = `${reader.say('madeWith')}, ${when}, ${reader.say('revision')} ${site.layout.revision}, ${reader.say('page', { page: String(numbers.page), pages: String(numbers.pages) })}`
  return [
    rule([page.x0, y - 2, page.x1, y - 2], 'ink', 'context'),
    ...setLines(cautions, page.x0, y, BODY, lettering),
    ...lettering.line(lettering.clipped(right, page.x1 - page.x0, BODY), page.x1, y + (cautions.length + 0.8) * LINE_PT, { ...BODY, align: 'right' }),
  ]
}
