import { DxfParser, type EntityHandler, type ScannedGroup, type Scanner } from 'dxf-parser';
import { curveKinds } from './entity-groups';
import { otherKind } from './mended-text';

/** An entity as dxf-parser hands it over: the groups of its curve in their order, nothing interpreted yet. */
export interface ParsedEntity {
  kind: string;
  layer: string;
  lineType: string;
  invisible: boolean;
  inPaper: boolean;
  /** INSERT: the block's key. */
  blockKey: string;
  readonly groups: ParsedGroup[];
  /** POLYLINE: the groups of each vertex. */
  readonly vertices: ParsedGroup[][];
}

export interface ParsedGroup {
  readonly code: number;
  readonly value: number;
}

export interface ParsedBlock {
  readonly base: { readonly x: number; readonly y: number; readonly z: number };
  /** Group 70 of the block (DXF reference, BLOCK): 4 says that it is an external reference. */
  readonly flags: number;
  readonly entities: readonly ParsedEntity[];
}

export interface ParsedDrawing {
  readonly entities: readonly ParsedEntity[];
  readonly blocks: ReadonlyMap<string, ParsedBlock>;
}

/**
 * Reads a mended DXF with dxf-parser. Every kind of entity has a handler of our own: the built-in ones drop the
 * extrusion of circles and ellipses and the weights of splines, lose vertices of an LWPOLYLINE at group 91, refuse
 * groups in an unusual order and pass over kinds they do not know.
 */
export function parseEntities(text: string): ParsedDrawing {
  const parser = new DxfParser();
  for (const kind of [...curveKinds, otherKind]) parser.registerEntityHandler(handlerFor(kind));
  const parsed = parser.parseSync(text) as ParserOutput;
  const blocks = new Map<string, ParsedBlock>();
  for (const [key, block] of Object.entries(parsed.blocks ?? {})) {
    const { x = 0, y = 0, z = 0 } = block.position ?? {};
    blocks.set(key, { base: { x, y, z }, flags: block.type ?? 0, entities: block.entities ?? [] });
  }
  return { entities: parsed.entities ?? [], blocks };
}

interface ParserOutput {
  readonly entities?: readonly ParsedEntity[];
  readonly blocks?: Readonly<
    Record<
      string,
      {
        readonly position?: { readonly x?: number; readonly y?: number; readonly z?: number };
        readonly type?: number;
        readonly entities?: readonly ParsedEntity[];
      }
    >
  >;
}

function handlerFor(kind: string): new () => EntityHandler {
  return class implements EntityHandler {
    readonly ForEntityName = kind;

    parseEntity(scanner: Scanner): ParsedEntity {
      const entity: ParsedEntity = {
        kind,
        layer: '0',
        lineType: '',
        invisible: false,
        inPaper: false,
        blockKey: '',
        groups: [],
        vertices: [],
      };
      let group = readGroups(scanner, (next) => takeGroup(entity, next));
      while (kind === 'POLYLINE' && group.value === 'VERTEX') {
        const vertex: ParsedGroup[] = [];
        entity.vertices.push(vertex);
        group = readGroups(scanner, ({ code, value }) => {
          if (typeof value === 'number') vertex.push({ code, value });
        });
      }
      // The mended text ends every POLYLINE with a SEQEND.
      if (kind === 'POLYLINE') readGroups(scanner, () => undefined);
      return entity;
    }
  };
}

/** Hands on every group up to the next 0 and returns that one. */
function readGroups(scanner: Scanner, take: (group: ScannedGroup) => void): ScannedGroup {
  let group = scanner.next();
  while (group.code !== 0) {
    take(group);
    group = scanner.next();
  }
  return group;
}

function takeGroup(entity: ParsedEntity, { code, value }: ScannedGroup): void {
  if (code === 1) entity.kind = String(value);
  else if (code === 2) entity.blockKey = String(value);
  else if (code === 6) entity.lineType = String(value);
  else if (code === 8) entity.layer = String(value);
  else if (code === 60) entity.invisible = value === 1;
  else if (code === 67) entity.inPaper = value === 1;
  else if (typeof value === 'number') entity.groups.push({ code, value });
}
