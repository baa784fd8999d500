/** Seconds of cutting as hours, minutes and seconds: 3725 is "1:02:05", 65 is "1:05". */
export function clockText(seconds: number): string {
  const whole = Math.floor(seconds);
  const [hours, minutes, rest] = [Math.floor(whole / 3600), Math.floor(whole / 60) % 60, whole % 60];
  const two = (value: number) => String(value).padStart(2, '0');
  return hours > 0 ? `${hours}:${two(minutes)}:${two(rest)}` : `${minutes}:${two(rest)}`;
}

/** The same in words, for those who hear it: "1 h 2 min 5 s". */
export function clockWords(seconds: number): string {
  const whole = Math.floor(seconds);
  const parts = [
    [Math.floor(whole / 3600), 'h'],
    [Math.floor(whole / 60) % 60, 'min'],
    [whole % 60, 's'],
  ] as const;
  const said = parts.filter(([value]) => value > 0).map(([value, unit]) => `${value} ${unit}`);
  return said.length > 0 ? said.join(' ') : '0 s';
}
