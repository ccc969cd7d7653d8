import { readFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import { thePlan } from '../../src/derive/whatIf.ts'
import { readFile } from '../../src/scene/readFile.ts'
import { writeFile } from '../../src/scene/writeFile.ts'
import { appOf } from '../canvas/appHarness.ts'

const opened = () => {
  const read = readFile(readFileSync('shared/examples/maple-fork-good.yard.json', 'utf8'))
  if (!read.ok) throw new Error('the example does not open')
  return appOf(read.document)
}

describe('case shown', () => {
  it('changes site and stamp and leaves document, history and file as they are', () => {
    const app = opened()
    const [site, documents] = [app.site.getState(), app.documents.getState()]
    const text = writeFile(documents.document)
    app.view.setState({ shownCase: { variant: 'planned', whatIf: { warmerC: 11 } } })
    expect(app.site.getState().stamp).not.toBe(site.stamp)
    expect(app.site.getState().site.pipe.wallTemperatureC).toBeCloseTo(site.site.pipe.wallTemperatureC + 11, 9)
    expect(app.documents.getState()).toBe(documents)
    expect(writeFile(app.documents.getState().document)).toBe(text)
    app.view.setState({ shownCase: thePlan })
    expect(app.site.getState().stamp).toBe(site.stamp)
    expect(app.site.getState().site.supports).toEqual(site.site.supports)
  })

  it('stays over an edit, which goes into the plan', () => {
    const app = opened()
    app.view.setState({ shownCase: { variant: 'planned', whatIf: { wetGrass: true, warmerC: 11 } } })
    const before = app.site.getState()
    expect(app.command('setJob', { path: 'wallTemperatureC.value', value: 30 })).toBe(true)
    expect(app.site.getState().stamp).not.toBe(before.stamp)
    expect(app.site.getState().site.pipe.wallTemperatureC).toBe(41)
    const { records } = app.documents.getState().document
    expect(records['job:this']).toMatchObject({ wallTemperatureC: { value: 30 } })
  })
})
