export interface Rs274Move {
  readonly type: 'line' | 'rapid' | 'arc';
  readonly from: readonly [number, number, number];
  readonly to: readonly [number, number, number];
  readonly comp: string;
  readonly feed: number;
  readonly center?: readonly [number, number];
  readonly ccw?: boolean;
  readonly radius?: number;
  readonly endRadius?: number;
}
export interface Rs274Reply {
  readonly ok: boolean;
  readonly error: { readonly message: string; readonly block: string | null } | null;
  readonly units: string;
  readonly ended: boolean;
  readonly moves: readonly Rs274Move[];
  readonly events: readonly { readonly type: string; readonly afterMove?: number }[];
}
export function runRs274(file: string, options?: { readonly tools?: Record<number, number> }): Rs274Reply;
