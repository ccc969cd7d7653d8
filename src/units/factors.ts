/**
 * Exact conversion factors to SI. SI value = number in the unit × factor.
 * Source: NIST SP 811 (2008) Appendix B.8; the inch, the pound and standard gravity are exact by
 * definition (international yard and pound agreement of 1959; 3rd CGPM 1901).
 */
export const inchM = 0.0254
export const footM = 0.3048
export const mileM = 1609.344
export const poundMassKg = 0.45359237
/** Standard gravity, m/s². */
export const gravityMPerS2 = 9.80665
/** 0.45359237 × 9.80665, exact. */
export const poundForceN = 4.4482216152605
export const psiPa = poundForceN / (inchM * inchM)
export const poundPerFootNPerM = poundForceN / footM
/** Weight of 1 kg on each metre, as N/m. */
export const kgPerMetreNPerM = gravityMPerS2
export const footPoundNm = poundForceN * footM
export const inchPoundNm = poundForceN * inchM
export const mphMPerS = mileM / 3600
export const kmhMPerS = 1 / 3.6
export const squareFootM2 = footM * footM
export const squareInchM2 = inchM * inchM
export const barPa = 1e5
export const degreeRad = Math.PI / 180
export const minuteS = 60
export const hourS = 3600
/** A Julian year of 365.25 days, as the long-term modulus tables mean it. */
export const yearS = 365.25 * 24 * hourS
export const gramPerCm3KgPerM3 = 1000

/** °F → °C; 32 °F is 0 °C, 5/9 a degree. */
export function fahrenheitToC(temperatureF: number): number {
  return ((temperatureF - 32) * 5) / 9
}

/** °C → °F. */
export function celsiusToF(temperatureC: number): number {
  return (temperatureC * 9) / 5 + 32
}
