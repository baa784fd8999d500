import type { LeadSettings, SetupSettings } from '../cut-settings';

/** What is wanted of every cut of a member. mm. */
export interface CutWishes extends LeadSettings {
  /** Height of the block. */
  readonly height: number;
  readonly wireDiameter: number;
  readonly sequence: SetupSettings['sequence'];
  /** Of the coordinates in the programs. */
  readonly lastDecimal: number;
}
