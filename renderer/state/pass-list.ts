interface Pass {
  readonly stockLeft: number;
}

/** Stock that a first skim takes, mm: skims of 0.003–0.015 mm are common practice. */
const firstSkimStock = 0.005;

/**
 * One more skim at the end. It takes over the last pass's numbers; the pass before it then leaves half of what the
 * last one took. No pass at all stays none.
 */
export function withSkim<P extends Pass>(passes: readonly P[]): P[] {
  const last = passes.at(-1);
  if (!last) return [];
  const before = passes.at(-2);
  const stockLeft = before ? before.stockLeft / 2 : firstSkimStock;
  return [...passes.slice(0, -1), { ...last, stockLeft }, { ...last, stockLeft: 0 }];
}

/** Without one pass; the only one stays. Whatever is last then leaves nothing. */
export function withoutPass<P extends Pass>(passes: readonly P[], pass: number): P[] {
  if (passes.length === 1) return [...passes];
  const left = passes.filter((_, index) => index !== pass);
  return left.map((old, index) => (index === left.length - 1 ? { ...old, stockLeft: 0 } : old));
}

/** With one pass changed. */
export const withPass = <P extends Pass>(passes: readonly P[], pass: number, change: Partial<P>): P[] =>
  passes.map((old, index) => (index === pass ? { ...old, ...change } : old));
