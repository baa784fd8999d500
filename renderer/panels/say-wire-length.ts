import type { DisplayUnit } from '../../core/units';

/** Wire in metres or feet, to the nearest: no estimate is better. */
export const sayWireLength = (metres: number, unit: DisplayUnit): string =>
  unit === 'inch' ? `${Math.round(metres / 0.3048)} ft` : `${Math.round(metres)} m`;
