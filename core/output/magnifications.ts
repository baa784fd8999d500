/** Magnifications of comparators (common practice). */
export const magnifications = [1, 5, 10, 20, 31.25, 50, 100] as const;
