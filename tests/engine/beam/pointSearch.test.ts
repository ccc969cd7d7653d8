import { describe, expect, it } from 'vitest'
import type { BeamModel } from '../../../src/engine/beam/model.ts'
import { buildModel } from '../../../src/engine/beam/model.ts'
import { searchPoints } from '../../../src/engine/beam/pointSearch.ts'
import { restingPair } from '../../../src/engine/beam/restingPair.ts'
import { solveContactBeam } from '../../../src/engine/beam/solveContactBeam.ts'
import type { ContactBeamInput, PointSupport } from '../../../src/engine/beam/types.ts'
import { beamCase } from '../../helpers/beamCases.ts'

const section = { bendingStiffnessNm2: 1e5, lineLoadNPerM: 180 }

function modelOf(input: ContactBeamInput): BeamModel {
  const model = buildModel(input)
  if (typeof model === 'string') throw new Error(model)
  return model
}

const pairOf = (supports: PointSupport[], lengthM = 12): number[] => {
  const model = modelOf({ lengthM, section, supports })
  return restingPair(model).map((site) => model.siteX[site]!)
}

describe('where a stiff straight pipe would rest', () => {
  it('on the two highest places that bridge its middle', () => {
    expect(pairOf([[1, 0], [4, 1], [9, 0.9], [11, 0]].map(([xM, levelM]) => ({ xM: xM!, levelM: levelM! })))).toEqual([4, 9])
    // the middle one of three in line with the others stands out
    expect(pairOf([[1, 0], [6.5, 0.5], [11, 0]].map(([xM, levelM]) => ({ xM: xM!, levelM: levelM! })))).toEqual([1, 6.5])
  })

  it('about a jaw point on to the first obstacle on the heavy side', () => {
    expect(pairOf([{ xM: 2, levelM: 1, twoWay: true }, { xM: 5, levelM: 0 }, { xM: 10, levelM: 0 }, { xM: 1, levelM: 5 }])).toEqual([2, 10])
  })

  it('nowhere, where the middle is not bridged', () => {
    expect(pairOf([{ xM: 1, levelM: 0 }, { xM: 4, levelM: 0 }])).toEqual([])
  })
})

describe('the search that cannot cycle', () => {
  it('alone finds the forces of the full solver on seeded hard cases, within a bounded count of passes', () => {
    for (let i = 0; i < 70; i++) {
      const { input, family } = beamCase(17, i)
      const model = modelOf(input)
      const found = searchPoints(model, 1e-6)
      expect(found).not.toBeNull()
      const { chain, passes, worstM } = found!
      expect(worstM).toBeLessThanOrEqual(1e-6)
      // every pass lets one contact in or out
      expect(passes).toBeLessThan(40 * (model.siteCount + 10))
      const full = solveContactBeam(input)
      const weightN = input.section.lineLoadNPerM * input.lengthM
      const largestN = Math.max(weightN, ...full.supports.map((s) => Math.abs(s.reactionN)))
      full.supports.forEach((s, k) => {
        const site = model.siteOfSupport[k]!
        let ownN = 0
        for (let j = 0; j < chain.count; j++) if (chain.kind[j] === 0 && chain.ref[j] === site) ownN = chain.reaction[j]! * model.stiffnessNm2
        const sharers = [...model.siteOfSupport].filter((other) => other === site).length
        expect(Math.abs(ownN / sharers - s.reactionN), `${family} ${i}`).toBeLessThan(2e-3 * largestN)
      })
    }
  })

  it('gives null where nothing holds the pipe', () => {
    expect(searchPoints(modelOf({ lengthM: 12, section, supports: [{ xM: 1, levelM: 0 }, { xM: 3, levelM: 0 }] }), 1e-8)).toBeNull()
  })
})
