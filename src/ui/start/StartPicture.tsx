import type { ReactNode } from 'react'

const ticks = Array.from({ length: 61 }, (_, i) => i)
const TAPE_LEFT = 20
const PX_PER_FT = 10
const DATUM_FT = 14

/** The idea in one line: pipe over stands above a tape that starts at the nail. Decoration only. */
export const StartPicture = (): ReactNode => {
  const x = (ft: number): number => TAPE_LEFT + (ft + DATUM_FT) * PX_PER_FT
  return (
    <svg className="start-picture" viewBox="0 0 640 150" aria-hidden="true" focusable="false">
      <path d={`M${x(-14)} 104L${x(46)} 114`} className="pic-ground" />
      {[[-9, 44, 105], [12.5, 48, 108], [22, 52, 110], [31, 62, 111], [40, 84, 113]].map(([ft, top, ground]) => (
        <g key={ft} className="pic-gear"><path d={`M${x(ft!)} ${ground}V${top! + 8}M${x(ft!) - 9} ${ground}H${x(ft!) + 9}`} /><circle cx={x(ft!)} cy={top! + 6} r="4.5" /></g>
      ))}
      <path className="pic-gear" d={`M${x(-3.4)} 106V78H${x(3.4)}V107M${x(-3.8)} 107H${x(3.8)}`} />
      <path className="pic-pipe" d={`M${x(-14)} 36C${x(0)} 37 ${x(10)} 40 ${x(18)} 43C${x(28)} 47 ${x(32)} 66 ${x(46)} 88`} />
      <path className="pic-stripe" d={`M${x(-14)} 36C${x(0)} 37 ${x(10)} 40 ${x(18)} 43C${x(28)} 47 ${x(32)} 66 ${x(46)} 88`} />
      <path className="pic-jaws" d={`M${x(-2)} 22V58M${x(-0.5)} 22V58M${x(0.5)} 22V58M${x(2)} 22V58`} />
      <rect className="pic-tape-pale" x={x(-14)} y="120" width={DATUM_FT * PX_PER_FT} height="24" />
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
