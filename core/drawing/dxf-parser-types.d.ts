/**
 * The part of dxf-parser 1.1.2 that we use. Its own declarations draw in Node's types, after which `process` and
 * `console` would compile everywhere in core (see `paths` in core/tsconfig.json).
 */
export interface ScannedGroup {
  readonly code: number;
  readonly value: string | number | boolean;
}

export interface Scanner {
  next(): ScannedGroup;
}

/** Reads one entity, from its name on up to the next group 0, which must be the last group that was read. */
export interface EntityHandler {
  readonly ForEntityName: string;
  parseEntity(scanner: Scanner, first: ScannedGroup): object;
}

export class DxfParser {
  registerEntityHandler(handler: new () => EntityHandler): void;
  parseSync(source: string): unknown;
}
