import { failed, type Result, done } from '../problem';
import { extrusionOf, pointOf, valueOf } from './group-values';
import type { LayerTable } from './layer-table';
import type { ParsedDrawing, ParsedEntity } from './parse-entities';
import { pieceShape } from './piece-shape';
import type { Piece } from './raw-drawing';
import { chained, planeOf, unmoved, vector, type Transform } from './transform';
import { isCurveKind } from './entity-groups';
import { reasonForKind } from './reason-for-kind';
import { UnusedCount } from './unused-count';

export interface FlatDrawing {
  readonly pieces: readonly Piece[];
  readonly unused: UnusedCount;
}

/**
 * Resolves blocks and sorts out what is no outline: paper space, invisible, on a layer that is off or frozen, in a
 * broken line type, or of a kind that is not read. What lies on layer 0 in a block takes the layer of its INSERT.
 */
export function flattenDrawing(drawing: ParsedDrawing, layers: LayerTable): Result<FlatDrawing> {
  const walk = new Walk(drawing, layers);
  const host: Host = { layer: '0', lineType: '', place: unmoved, blocks: [] };
  for (const entity of drawing.entities) walk.take(entity, host);
  if (walk.taken > mostEntities) {
    return failed(
      'drawing-too-large',
      `The drawing's blocks hold more than ${mostEntities.toLocaleString('en-US')} entities once inserted`,
      '',
      'Save the part by itself, without the sheet and its arrays.',
    );
  }
  return done({ pieces: walk.pieces, unused: walk.unused });
}

/** An array in an array multiplies: a file of a kilobyte can ask for billions. */
const mostEntities = 500_000;

/** What an entity inherits from the INSERT it came by. */
interface Host {
  readonly layer: string;
  readonly lineType: string;
  readonly place: Transform;
  readonly blocks: readonly string[];
}

/** One walk through a drawing and its blocks; lives for one reading. */
class Walk {
  readonly pieces: Piece[] = [];
  readonly unused = new UnusedCount();
  taken = 0;
  private readonly drawing: ParsedDrawing;
  private readonly layers: LayerTable;

  constructor(drawing: ParsedDrawing, layers: LayerTable) {
    this.drawing = drawing;
    this.layers = layers;
  }

  take(entity: ParsedEntity, host: Host): void {
    if (++this.taken > mostEntities) return;
    const own = entity.layer === '' ? '0' : entity.layer;
    const layer = own === '0' && host.blocks.length > 0 ? host.layer : own;
    const lineType = this.lineTypeOf(entity, layer, host);
    const reason = this.reasonToLeaveOut(entity, layer, lineType);
    if (reason !== null) this.unused.add(layer, entity.kind, reason);
    else if (entity.kind === 'INSERT') this.insert(entity, { ...host, layer, lineType });
    else {
      const shape = pieceShape(entity, host.place);
      if ('reason' in shape) this.unused.add(layer, entity.kind, shape.reason);
      else this.pieces.push({ layer, kind: entity.kind, closed: shape.closed, parts: shape.parts });
    }
  }

  private lineTypeOf(entity: ParsedEntity, layer: string, host: Host): string {
    const named = entity.lineType.toUpperCase();
    if (named === '' || named === 'BYLAYER') return this.layers.stateOf(layer).lineType;
    return named === 'BYBLOCK' ? host.lineType : entity.lineType;
  }

  private reasonToLeaveOut(entity: ParsedEntity, layer: string, lineType: string): string | null {
    const state = this.layers.stateOf(layer);
    if (entity.inPaper) return 'paper space';
    if (!isCurveKind(entity.kind)) return reasonForKind(entity.kind);
    if (entity.invisible) return 'invisible';
    if (state.frozen) return 'layer is frozen';
    // A block on a layer that is off still shows what lies on other layers.
    if (entity.kind === 'INSERT') return null;
    if (state.off) return 'layer is off';
    return this.layers.isBroken(lineType) ? `line type ${lineType}: not an edge` : null;
  }

  private insert(entity: ParsedEntity, host: Host): void {
    const { groups, blockKey } = entity;
    const block = this.drawing.blocks.get(blockKey);
    const refuse = (reason: string): void => this.unused.add(host.layer, 'INSERT', reason);
    if (!block) return refuse(`block "${blockKey.slice(1)}" is not in the file`);
    if (host.blocks.includes(blockKey)) return refuse(`block "${blockKey.slice(1)}" contains itself`);
    if ((block.flags & externalReference) !== 0)
      return refuse('external reference: its drawing is another file');
    const at = pointOf(groups, 10);
    if (!at) return refuse('incomplete: no insertion point');
    const scaleX = valueOf(groups, 41) ?? 1;
    const scaleY = valueOf(groups, 42) ?? 1;
    // Some programs write 0 for a flat block's third scale.
    const scaleZ = valueOf(groups, 43) || 1;
    if (scaleX === 0 || scaleY === 0) return refuse('scaled to nothing');
    const angle = ((valueOf(groups, 50) ?? 0) * Math.PI) / 180;
    const [cos, sin] = quarterExact(angle);
    const turned: Transform = {
      x: vector(cos, sin, 0),
      y: vector(-sin, cos, 0),
      z: vector(0, 0, 1),
      origin: at,
    };
    const { base } = block;
    const scaled: Transform = {
      x: vector(scaleX, 0, 0),
      y: vector(0, scaleY, 0),
      z: vector(0, 0, scaleZ),
      origin: vector(-base.x * scaleX, -base.y * scaleY, -base.z * scaleZ),
    };
    const plane = chained(host.place, planeOf(extrusionOf(groups)));
    const columns = Math.max(1, valueOf(groups, 70) ?? 1);
    const rows = Math.max(1, valueOf(groups, 71) ?? 1);
    for (let row = 0; row < rows; row++) {
      for (let column = 0; column < columns; column++) {
        if (this.taken++ > mostEntities) return;
        const step: Transform = {
          ...unmoved,
          origin: vector(column * (valueOf(groups, 44) ?? 0), row * (valueOf(groups, 45) ?? 0), 0),
        };
        const place = chained(plane, chained(turned, chained(step, scaled)));
        const inner: Host = { ...host, place, blocks: [...host.blocks, blockKey] };
        for (const child of block.entities) this.take(child, inner);
      }
    }
  }
}

/** Block flag 4 (DXF reference, BLOCK, group 70). */
const externalReference = 4;

/** Cosine and sine, exact at quarter turns, so that a part turned by 90° keeps its level edges. */
function quarterExact(angle: number): readonly [number, number] {
  const quarters = Math.round(angle / (Math.PI / 2));
  if (Math.abs(angle - (quarters * Math.PI) / 2) > 2 ** -45) return [Math.cos(angle), Math.sin(angle)];
  const turn = ((quarters % 4) + 4) % 4;
  return turn === 0 ? [1, 0] : turn === 1 ? [0, 1] : turn === 2 ? [-1, 0] : [0, -1];
}
