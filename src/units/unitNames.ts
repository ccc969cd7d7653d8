/** Units a person may type, by kind of quantity, with their factor to SI and what a bare number means. */
import {
  barPa, degreeRad, fahrenheitToC, footPoundNm, gravityMPerS2, hourS, inchPoundNm, kgPerMetreNPerM, kmhMPerS, minuteS, mphMPerS, poundForceN, poundMassKg, poundPerFootNPerM, psiPa, squareFootM2, squareInchM2,
} from './factors.ts'
import type { QuantityKind } from './quantity.ts'

export interface UnitName {
  /** As shown in a choice. */
  label: string
  /** Spellings, in lower case without spaces, dots and dashes; '²' as 2, 'per' as '/'. */
  names: readonly string[]
  toSi: (value: number) => number
}

export interface KindUnits {
  units: readonly UnitName[]
  /** Labels a bare number stands for, by system: one is taken, several are asked. */
  bare: { feetInches: readonly string[]; metric: readonly string[] }
  example: { feetInches: string; metric: string }
  allowNegative: boolean
}

const times = (label: string, factor: number, ...names: string[]): UnitName => ({ label, names, toSi: (value) => value * factor })

const pound = ['lb', 'lbs', 'lbf', 'pound', 'pounds', 'libra', 'libras']
const pressures = [times('psi', psiPa, 'psi'), times('bar', barPa, 'bar', 'bars'), times('kPa', 1e3, 'kpa'), times('MPa', 1e6, 'mpa'), times('ksi', 1e3 * psiPa, 'ksi'), times('GPa', 1e9, 'gpa'), times('Pa', 1, 'pa')]
const degrees = times('°', degreeRad, '°', 'deg', 'degree', 'degrees', 'grado', 'grados')

/** Every kind but the lengths, which parseLength reads. */
export const kindUnits: Record<Exclude<QuantityKind, 'length' | 'shortLength' | 'height'>, KindUnits> = {
  force: {
    units: [times('lb', poundForceN, ...pound), times('N', 1, 'n', 'newton', 'newtons'), times('kN', 1e3, 'kn'), times('kg', gravityMPerS2, 'kg', 'kgf', 'kilo', 'kilos'), times('kip', 1e3 * poundForceN, 'kip', 'kips')],
    bare: { feetInches: ['lb'], metric: ['N', 'kN', 'kg'] }, example: { feetInches: '1800 lb', metric: '8 kN' }, allowNegative: false,
  },
  mass: {
    units: [times('lb', poundMassKg, ...pound), times('kg', 1, 'kg', 'kilo', 'kilos'), times('g', 1e-3, 'g'), times('t', 1e3, 't', 'tonne', 'tonnes', 'tonelada', 'toneladas')],
    bare: { feetInches: ['lb'], metric: ['kg'] }, example: { feetInches: '494 lb', metric: '224 kg' }, allowNegative: false,
  },
  moment: {
    units: [times('ft-lb', footPoundNm, 'ftlb', 'ftlbs', 'lbft', 'ftlbf', 'lbfft', 'pielb', 'lbpie'), times('in-lb', inchPoundNm, 'inlb', 'lbin', 'inlbf'), times('N·m', 1, 'nm'), times('kN·m', 1e3, 'knm')],
    bare: { feetInches: ['ft-lb'], metric: ['N·m', 'kN·m'] }, example: { feetInches: '600 ft-lb', metric: '800 N·m' }, allowNegative: true,
  },
  stress: { units: pressures, bare: { feetInches: ['psi'], metric: ['MPa'] }, example: { feetInches: '1150 psi', metric: '7.9 MPa' }, allowNegative: false },
  pressure: { units: pressures, bare: { feetInches: ['psi'], metric: ['bar'] }, example: { feetInches: '300 psi', metric: '20 bar' }, allowNegative: false },
  lineLoad: {
    units: [times('lb/ft', poundPerFootNPerM, 'lb/ft', 'lbs/ft', 'lbf/ft', 'plf', 'lb/pie', 'lb/foot'), times('kg/m', kgPerMetreNPerM, 'kg/m'), times('N/m', 1, 'n/m'), times('kN/m', 1e3, 'kn/m')],
    bare: { feetInches: ['lb/ft'], metric: ['kg/m'] }, example: { feetInches: '12.4 lb/ft', metric: '18.4 kg/m' }, allowNegative: false,
  },
  temperature: {
    units: [{ label: '°F', names: ['°f', 'f', 'degf', 'fahrenheit'], toSi: fahrenheitToC }, { label: '°C', names: ['°c', 'c', 'degc', 'celsius'], toSi: (value) => value }],
    bare: { feetInches: ['°F'], metric: ['°C'] }, example: { feetInches: '73 °F', metric: '23 °C' }, allowNegative: true,
  },
  // A difference has no zero to shift: 60 °F of swing are 33.3 °C.
  temperatureChange: {
    units: [times('°F', 5 / 9, '°f', 'f', 'degf', 'fahrenheit'), times('°C', 1, '°c', 'c', 'degc', 'celsius')],
    bare: { feetInches: ['°F'], metric: ['°C'] }, example: { feetInches: '60 °F', metric: '33 °C' }, allowNegative: true,
  },
  ratio: { units: [times('', 1, ''), times('%', 0.01, '%')], bare: { feetInches: [''], metric: [''] }, example: { feetInches: '1/200', metric: '1/200' }, allowNegative: false },
  percent: { units: [times('%', 0.01, '%')], bare: { feetInches: ['%'], metric: ['%'] }, example: { feetInches: '25 %', metric: '25 %' }, allowNegative: false },
  angle: { units: [degrees, times('rad', 1, 'rad')], bare: { feetInches: ['°'], metric: ['°'] }, example: { feetInches: '1.5°', metric: '1.5°' }, allowNegative: true },
  slope: {
    units: [times('%', 0.01, '%'), { ...degrees, toSi: (value) => Math.tan(value * degreeRad) }, times('in/ft', 1 / 12, 'in/ft', 'pulg/pie'), times('mm/m', 1e-3, 'mm/m')],
    bare: { feetInches: ['%'], metric: ['%'] }, example: { feetInches: '1.5 %', metric: '1.5 %' }, allowNegative: true,
  },
  count: { units: [times('', 1, '')], bare: { feetInches: [''], metric: [''] }, example: { feetInches: '7', metric: '7' }, allowNegative: false },
  voltage: { units: [times('kV', 1e3, 'kv', 'kilovolt', 'kilovolts'), times('V', 1, 'v', 'volt', 'volts', 'voltios')], bare: { feetInches: ['kV', 'V'], metric: ['kV', 'V'] }, example: { feetInches: '138 kV', metric: '33 kV' }, allowNegative: false },
  area: { units: [times('ft²', squareFootM2, 'ft2', 'sqft', 'pie2', 'pies2'), times('m²', 1, 'm2', 'sqm')], bare: { feetInches: ['ft²'], metric: ['m²'] }, example: { feetInches: '200 ft²', metric: '20 m²' }, allowNegative: false },
  pistonArea: { units: [times('in²', squareInchM2, 'in2', 'sqin', 'pulg2'), times('cm²', 1e-4, 'cm2', 'sqcm'), times('mm²', 1e-6, 'mm2')], bare: { feetInches: ['in²'], metric: ['cm²'] }, example: { feetInches: '9.4 in²', metric: '60 cm²' }, allowNegative: false },
  duration: {
    units: [times('min', minuteS, 'min', 'mins', 'minute', 'minutes', 'minuto', 'minutos'), times('h', hourS, 'h', 'hr', 'hrs', 'hour', 'hours', 'hora', 'horas'), times('s', 1, 's', 'sec', 'secs', 'second', 'seconds', 'segundo', 'segundos')],
    bare: { feetInches: ['min', 'h', 's'], metric: ['min', 'h', 's'] }, example: { feetInches: '12 h', metric: '12 h' }, allowNegative: false,
  },
  speed: { units: [times('mph', mphMPerS, 'mph', 'mi/h'), times('m/s', 1, 'm/s'), times('km/h', kmhMPerS, 'km/h', 'kph', 'kmh')], bare: { feetInches: ['mph'], metric: ['m/s'] }, example: { feetInches: '15 mph', metric: '6.7 m/s' }, allowNegative: false },
}
