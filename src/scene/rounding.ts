const steps = 1e9
/** Above this a double has no room for nine decimals; the number is kept as it is. */
const largest = Number.MAX_SAFE_INTEGER / steps

/** The number to 1e-9 (a billionth of a metre or a radian), so that a file is short and 21.000000000000004 is 21. −0 is 0. */
export const rounded = (value: number): number => {
  if (Math.abs(value) > largest) return value
  return Math.round(value * steps) / steps + 0
}
