import * as portable from '../geometry/portable-math';

/** Class of a spark-eroded surface by VDI 3400 from its Ra in µm: K = 20·log10(10·Ra). Ra 1.6 → 24.08. */
export const roughnessClass = (roughness: number): number => 20 * portable.log10(10 * roughness);
