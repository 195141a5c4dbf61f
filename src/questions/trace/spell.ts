/** Lengths of time as a trace says them. */

/** `0.4 s`, `12.3 s`, `2 min 10 s`, `1 h 5 min`: tenths below a minute. */
export function spell(seconds: number): string {
  const tenths = Math.round(seconds * 10)
  if (tenths < 600) return `${tenths / 10} s`
  const whole = Math.round(seconds)
  const [hours, minutes] = [Math.floor(whole / 3600), Math.floor(whole / 60) % 60]
  const parts = hours > 0 ? [`${hours} h`, `${minutes} min`] : [`${minutes} min`, `${whole % 60} s`]
  return parts.filter((part) => !/^0 /.test(part)).join(' ')
}
