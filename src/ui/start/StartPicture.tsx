import type { ReactNode } from 'react'

const ticks = Array.from({ length: 61 }, (_, i) => i)
const TAPE_LEFT = 20
const PX_PER_FT = 10
const DATUM_FT = 14

/** Bottom of the pipe over the picture's ground, px down, at a running distance: level past the jaws, then the lay-down. */
const bottomPx = (ft: number): number => (ft <= 16 ? 46 + 0.09 * (ft + DATUM_FT) : 48.7 + 40 * ease((ft - 16) / 30))
const ease = (share: number): number => share * share * (3 - 2 * share)
const groundPx = (ft: number): number => 104 + ((ft + DATUM_FT) / 60) * 8
const PIPE_PX = 12
const stands = [12.5, 21, 29, 36] as const
const beams = [-11, -4.6] as const

/** The idea in one line: pipe over stands above a tape that starts at the nail. Decoration only. */
export const StartPicture = (): ReactNode => {
  const x = (ft: number): number => TAPE_LEFT + (ft + DATUM_FT) * PX_PER_FT
  const curve = Array.from({ length: 121 }, (_, i) => -DATUM_FT + i / 2).map((ft, i) => `${i === 0 ? 'M' : 'L'}${x(ft)} ${(bottomPx(ft) - PIPE_PX / 2).toFixed(1)}`).join('')
  return (
    <svg className="start-picture" viewBox="18 14 604 134" aria-hidden="true" focusable="false">
      <path d={`M${x(-DATUM_FT)} ${groundPx(-DATUM_FT)}L${x(46)} ${groundPx(46)}`} className="pic-ground" />
      {beams.map((ft) => <path key={ft} className="pic-gear" d={`M${x(ft) - 5} ${bottomPx(ft)}h10v5h-10zM${x(ft) - 4} ${bottomPx(ft) + 5}V${groundPx(ft)}M${x(ft) + 4} ${bottomPx(ft) + 5}V${groundPx(ft)}M${x(ft) - 4} ${bottomPx(ft) + 14}L${x(ft) + 4} ${groundPx(ft)}M${x(ft) - 7} ${groundPx(ft)}h14`} />)}
      {stands.map((ft) => (
        <g key={ft} className="pic-gear"><path d={`M${x(ft)} ${groundPx(ft)}V${bottomPx(ft) + 8}M${x(ft) - 8} ${groundPx(ft)}h16`} /><circle cx={x(ft)} cy={bottomPx(ft) + 4.5} r="4.5" /></g>
      ))}
      <path className="pic-gear" d={`M${x(-2.6)} ${groundPx(0) - 12}h52v9h-52zM${x(-1.6)} ${groundPx(0) - 12}V66h32v${groundPx(0) - 78}M${x(-2)} ${groundPx(0) - 3}a4 4 0 1 0 .1 0zM${x(2)} ${groundPx(0) - 3}a4 4 0 1 0 .1 0z`} />
      <path className="pic-pipe" d={curve} />
      <path className="pic-stripe" d={curve} />
      <path className="pic-jaws" d={`M${x(-2)} 26V68M${x(-0.5)} 26V68M${x(0.5)} 26V68M${x(2)} 26V68`} />
      <rect className="pic-tape-pale" x={x(-DATUM_FT)} y="120" width={DATUM_FT * PX_PER_FT} height="24" />
      <rect className="pic-tape" x={x(0)} y="120" width={46 * PX_PER_FT} height="24" />
      {ticks.map((i) => {
        const ft = i - DATUM_FT
        return <path key={i} className="pic-tick" d={`M${x(ft)} 120v${ft % 10 === 0 ? 14 : ft % 5 === 0 ? 9 : 5}`} />
      })}
      {[10, 20, 30, 40].map((ft) => <text key={ft} className="pic-figure" x={x(ft) + 3} y="141">{ft}</text>)}
      <circle className="pic-nail" cx={x(0)} cy="132" r="6" /><circle className="pic-hole" cx={x(0)} cy="132" r="2" />
    </svg>
  )
}
