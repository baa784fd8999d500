import { exampleStyle } from './example-style';
import { neutralStyle, rs274Style } from './neutral-style';
import type { ProgramStyle } from './program-style';

/** The styles that come with the program, by a short name to type. */
export const shippedStyles: Readonly<Record<'neutral' | 'rs274' | 'example', ProgramStyle>> = {
  neutral: neutralStyle,
  rs274: rs274Style,
  example: exampleStyle,
};
