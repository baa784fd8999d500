import type { ProgramStyle } from '../program-style';

/** The word that names an entry of the control's offset table: D1, D01 or as the style has it. Entry 1: rough cut. */
export function offsetWord({ letter, first, digits }: ProgramStyle['offsets'], entry: number): string {
  return `${letter}${String(first + entry - 1).padStart(digits, '0')}`;
}
