/** Bytes as whole or tenths of MB (10⁶ bytes): '0.4', '12', '?' where not known. */
export const megabytes = (bytes: number | null): string => {
  if (bytes === null) return '?'
  const mb = bytes / 1e6
  return mb < 10 ? String(Math.round(mb * 10) / 10) : String(Math.round(mb))
}
