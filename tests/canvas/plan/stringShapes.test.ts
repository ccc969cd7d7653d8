import { describe, expect, it } from 'vitest'
import { parkedShapes, sameParked } from '../../../src/canvas/plan/parkedShapes.ts'
import type { Picture } from '../../../src/canvas/plan/picture.ts'
import { walkingShapes } from '../../../src/canvas/plan/walkingShapes.ts'
import { deriveSite } from '../../../src/derive/site.ts'
import type { SiteModel } from '../../../src/derive/types.ts'
import { after, calder, inStrings } from '../../checks/streetCase.ts'
import { laneSite } from '../../checks/walkCase.ts'
import { ftM } from '../../checks/yardCase.ts'

const pictureOf = (site: SiteModel, phase = 'fuse', joint = 1): Picture => ({ site, view: { pxPerM: 10, phase, joint } }) as unknown as Picture

describe('parked strings on the plan', () => {
  it('are outlines with their name and sticks, one each beside the line', () => {
    const shapes = parkedShapes(pictureOf(deriveSite(inStrings([5, 5, 5, 4]))))
    expect(shapes.map((shape) => (shape.t === 'text' ? shape.text : shape.t))).toEqual(['path', 'B · 5', 'path', 'C · 5'])
    const [outline] = shapes
    // Row 2 left: 10 ft from the line, 2 ft wide: 9 to 11 ft.
    if (outline?.t !== 'path') throw new Error('no outline')
    const across = outline.points.filter((_, i) => i % 2 === 1).map((yM) => yM / ftM)
    expect([Math.min(...across), Math.max(...across)]).toEqual([expect.closeTo(9, 6), expect.closeTo(11, 6)])
  })

  it('are none where the job is one string', () => expect(parkedShapes(pictureOf(deriveSite(calder())))).toEqual([]))

  it('are drawn again when a row changes', () => {
    const document = inStrings([5, 5, 9])
    const second = Object.keys(document.records).filter((id) => id.startsWith('string'))[1]!
    const [before, now] = [deriveSite(document), deriveSite(after(document, 'setString', { id: second, parkingRow: 3 }))]
    expect([sameParked(before, before), sameParked(before, now)]).toEqual([true, false])
  })
})

describe('a machine that walks on the plan', () => {
  it('shows what is joined as pipe, what is strung as outlines, and the joint in hand', () => {
    const kinds = (phase: string, joint: number): string[] => walkingShapes(pictureOf(laneSite({}), phase, joint))!.map((shape) => (shape.t === 'text' ? shape.text : shape.t === 'path' && shape.closed === true ? 'strung' : shape.t))
    const count = (list: readonly string[]): number => list.filter((one) => one === 'strung').length
    // 34 sticks: nothing joined, 33 strung beside the first; at joint 5 five are joined and 29 to come.
    expect([count(kinds('setUp', 1)), count(kinds('fuse', 5)), count(kinds('rest', 33))]).toEqual([33, 29, 0])
    expect(kinds('fuse', 5)).toContain('J5')
  })

  it('draws the string from its joint to the far end', () => {
    const [pipe] = walkingShapes(pictureOf(laneSite({}), 'rest', 33))!
    if (pipe?.t !== 'pipe') throw new Error('no pipe')
    expect([pipe.points[0], pipe.points.at(-2)!].map((xM) => xM! / ftM)).toEqual([expect.closeTo(0, 6), expect.closeTo(1357.9375, 6)])
  })

  it('is not drawn where the machine stands', () => expect(walkingShapes(pictureOf(deriveSite(calder())))).toBeNull())
})
