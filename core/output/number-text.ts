import type { ProgramStyle } from '../program-style';

type Numbers = ProgramStyle['numbers'];

/**
 * A number of a program, given in whole steps of its last decimal, as the style writes it. 15000 steps of 0.0001:
 * "1.5000", "1.5", or, with an implied point, "15000". Zero has no sign, and always a digit.
 */
export function numberText(steps: number, decimals: number, numbers: Numbers): string {
  if (numbers.point === 'implied') return String(steps === 0 ? 0 : steps);
  const digits = String(Math.abs(steps)).padStart(decimals + 1, '0');
  const whole = digits.slice(0, digits.length - decimals);
  const fraction = digits.slice(digits.length - decimals);
  const part = numbers.trailingZeros ? fraction : fraction.replace(/0+$/, '');
  const point = part !== '' || numbers.point === 'always' ? '.' : '';
  const lead = whole === '0' && part !== '' && !numbers.leadingZero ? '' : whole;
  return `${steps < 0 ? '-' : ''}${lead}${point}${part}`;
}
