/** The usual factor, and the range that the formula is meant for: fine edge to least force. */
export const squareRootFactor = { usual: 0.01, from: 0.005, to: 0.035 } as const;

export const squareRootSource =
  'Oehler & Kaiser, Schnitt-, Stanz- und Ziehwerkzeuge, 7th ed. 1993, from memory';

/** Where the formula changes its form, mm. */
const thickFrom = 3;

/**
 * Clearance per side, mm, from thickness (mm), shear strength (MPa) and a factor: c·t·√(τ/10) up to 3 mm, and
 * (1.5·c·t − 0.015)·√(τ/10) above (Oehler & Kaiser, 7th ed. 1993, from memory). The two meet at 3 mm only for the
 * factor 0.01; with a small factor the second may be 0 or negative, which means that it does not apply.
 * Example: τ 310, factor 0.01: 0.05568 at 1 mm, 0.25055 at 4 mm.
 */
export function squareRootClearance(thickness: number, shearStrength: number, factor: number): number {
  const root = Math.sqrt(shearStrength / 10);
  return thickness <= thickFrom ? factor * thickness * root : (1.5 * factor * thickness - 0.015) * root;
}

/** Whether the formula jumps at 3 mm: its two ranges meet there for the usual factor only. */
export const jumpsAtThree = (thickness: number, factor: number): boolean =>
  thickness > thickFrom && factor !== squareRootFactor.usual;
