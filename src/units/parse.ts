/** The door for reading typed numbers: lengths, and quantities of any kind. */
export { lengthEcho, parseLength } from './parseLength.ts'
export type { LengthChoice, LengthEcho, LengthFieldUnit, LengthReading, ParseLengthOptions } from './parseLength.ts'
export { parseQuantity } from './parseQuantity.ts'
export type { ParseQuantityOptions, QuantityReading } from './parseQuantity.ts'
