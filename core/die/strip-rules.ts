import { fromMemory, type Sourced } from './sourced';

const paquin = (value: number) =>
  fromMemory(value, 'Paquin & Crowley, Die Design Fundamentals, scrap bridges');

/** Least bridge whatever the stock: 1/32 in. */
export const leastBridge: Sourced = paquin(25.4 / 32);

/** Bridge over stock thickness by the length of the blank, mm. */
export const bridgeFactors: readonly { readonly upTo: number; readonly factor: Sourced }[] = [
  { upTo: 2.5 * 25.4, factor: paquin(1) },
  { upTo: 8 * 25.4, factor: paquin(1.25) },
  { upTo: Infinity, factor: paquin(1.5) },
];

/** Two blanks across the strip, or stock that runs through twice, take a wider bridge. */
export const twoUpFactor: Sourced = paquin(1.25);

/** Bridge between blanks and from blank to edge, mm, by stock thickness and the blank's greatest length. */
export function bridgeWidth(thickness: number, blankLength: number, up: 1 | 2): number {
  const factor = bridgeFactors.find(({ upTo }) => blankLength <= upTo)?.factor.value ?? 1.5;
  return Math.max(leastBridge.value, factor * thickness) * (up === 2 ? twoUpFactor.value : 1);
}
