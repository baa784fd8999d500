/**
 * Punch force in N to shear a cut of `length` mm through `thickness` mm of stock of `shearStrength` MPa:
 * F = L·t·τ (Groover, Fundamentals of Modern Manufacturing, chapter 20). Sharp edges, no stripping force.
 */
export function cuttingForce(length: number, thickness: number, shearStrength: number): number {
  return length * thickness * shearStrength;
}

/** The same from the ultimate tensile strength: F = 0.7·t·L·UTS (Kalpakjian & Schmid, eq. 16.1). */
export function cuttingForceFromTensile(length: number, thickness: number, tensileStrength: number): number {
  return 0.7 * thickness * length * tensileStrength;
}
