import type { Point } from '../geometry/contour';
import { failed, type Result, done } from '../problem';
import { insertPlaces } from './insert-places';
import type { LayerTable } from './layer-table';
import { limits } from './limits';
import { blockKey, type ParsedDrawing, type ParsedEntity } from './parse-entities';
import { pieceShape } from './piece-shape';
import { pointOf } from './group-values';
import type { Piece } from './raw-drawing';
import { incomplete } from './shape';
import { moved, unmoved, type Transform } from './transform';
import { isCurveKind, isFillingKind } from './entity-groups';
import { reasonForKind } from './reason-for-kind';
import { UnusedCount } from './unused-count';

export interface FlatDrawing {
  readonly pieces: readonly Piece[];
  readonly unused: UnusedCount;
  readonly texts: readonly Point[];
  /** Dimensions of the drawing itself, not those in blocks. */
  readonly dimensions: readonly ParsedEntity[];
  /** How some entities were read: layer, kind, what a person should know, and how many. */
  readonly remarks: UnusedCount;
}

/**
 * Resolves blocks and sorts out what is no outline: paper space, invisible, in a broken line type, or of a kind that is
 * not read. What lies on a layer that is off or frozen is marked as hidden. What lies on layer 0 in a block takes the
 * layer of its INSERT.
 */
export function flattenDrawing(drawing: ParsedDrawing, layers: LayerTable): Result<FlatDrawing> {
  const walk = new Walk(drawing, layers);
  const host: Host = { layer: '0', lineType: '', colour: 7, hidden: null, place: unmoved, blocks: [] };
  for (const entity of drawing.entities) walk.take(entity, host);
  if (walk.taken > limits.entities || walk.placed > limits.entities) {
    return failed(
      'drawing-too-large',
      `The drawing's blocks hold more than ${limits.entities.toLocaleString('en-US')} entities once inserted`,
      '',
      'Save the part by itself, without the sheet and its arrays.',
    );
  }
  const { pieces, unused, texts, dimensions, remarks } = walk;
  return done({ pieces, unused, texts, dimensions, remarks });
}

/** What an entity inherits from the INSERT it came by. */
interface Host {
  readonly layer: string;
  readonly lineType: string;
  readonly colour: number;
  readonly hidden: Piece['hidden'];
  readonly place: Transform;
  readonly blocks: readonly string[];
}

/** One walk through a drawing and its blocks; lives for one reading. */
class Walk {
  readonly pieces: Piece[] = [];
  readonly unused = new UnusedCount();
  readonly remarks = new UnusedCount();
  readonly texts: Point[] = [];
  readonly dimensions: ParsedEntity[] = [];
  taken = 0;
  placed = 0;
  private readonly drawing: ParsedDrawing;
  private readonly layers: LayerTable;

  constructor(drawing: ParsedDrawing, layers: LayerTable) {
    this.drawing = drawing;
    this.layers = layers;
  }

  take(entity: ParsedEntity, host: Host): void {
    if (++this.taken > limits.entities) return;
    const own = entity.layer === '' ? '0' : entity.layer;
    const layer = own === '0' && host.blocks.length > 0 ? host.layer : own;
    const lineType = this.lineTypeOf(entity, layer, host);
    const reason = this.reasonToLeaveOut(entity, lineType);
    if (reason !== null) {
      this.unused.add(layer, entity.kind, reason);
      if (!entity.inPaper) this.noteAside(entity, host);
      return;
    }
    const hidden = host.hidden ?? this.hiddenBy(entity, layer);
    const colour = this.colourOf(entity, layer, host);
    if (entity.kind === 'INSERT') this.insert(entity, { ...host, layer, lineType, colour, hidden });
    else this.takeCurve(entity, host.place, { layer, kind: entity.kind, colour, hidden });
  }

  private takeCurve(
    entity: ParsedEntity,
    place: Transform,
    common: Pick<Piece, 'layer' | 'kind' | 'colour' | 'hidden'>,
  ): void {
    const { layer, kind } = common;
    const shape = entity.isSound ? pieceShape(entity, place) : { reason: incomplete };
    if ('reason' in shape) {
      this.unused.add(layer, kind, isFillingKind(kind) ? reasonForKind(kind) : shape.reason);
      return;
    }
    if (shape.remark !== null) this.remarks.add(layer, kind, shape.remark);
    const isFilling = isFillingKind(kind);
    const { colour, hidden } = common;
    for (const { closed, parts } of shape.runs)
      this.pieces.push({ layer, kind, colour, hidden, isFilling, closed, parts });
  }

  /** What is no outline may still say something about it: words and dimensions. */
  private noteAside(entity: ParsedEntity, host: Host): void {
    if (!entity.isSound) return;
    if (entity.kind === 'DIMENSION' && host.blocks.length === 0) this.dimensions.push(entity);
    if (!textKinds.has(entity.kind)) return;
    const at = pointOf(entity.groups, 10);
    if (!at) return;
    const { x, y } = moved(host.place, at);
    this.texts.push({ x, y });
  }

  private lineTypeOf(entity: ParsedEntity, layer: string, host: Host): string {
    const named = entity.lineType.toUpperCase();
    if (named === '' || named === 'BYLAYER') return this.layers.stateOf(layer).lineType;
    return named === 'BYBLOCK' ? host.lineType : entity.lineType;
  }

  private colourOf({ colour }: ParsedEntity, layer: string, host: Host): number {
    if (colour === 0) return host.colour;
    return colour >= 1 && colour <= 255 ? colour : this.layers.stateOf(layer).colour;
  }

  private hiddenBy(entity: ParsedEntity, layer: string): Piece['hidden'] {
    const state = this.layers.stateOf(layer);
    if (state.frozen) return 'layer is frozen';
    // A block on a layer that is off still shows what lies on other layers.
    return state.off && entity.kind !== 'INSERT' ? 'layer is off' : null;
  }

  private reasonToLeaveOut(entity: ParsedEntity, lineType: string): string | null {
    if (entity.inPaper) return 'paper space';
    if (isFillingKind(entity.kind)) return entity.invisible ? 'invisible' : null;
    if (!isCurveKind(entity.kind)) return reasonForKind(entity.kind);
    if (entity.invisible) return 'invisible';
    if (entity.kind === 'INSERT') return null;
    return this.layers.isBroken(lineType) ? `line type ${lineType}: not an edge` : null;
  }

  private insert(entity: ParsedEntity, host: Host): void {
    const key = blockKey(entity.name);
    const block = this.drawing.blocks.get(key);
    const refuse = (reason: string): void => this.unused.add(host.layer, 'INSERT', reason);
    if (!block) return refuse(`block "${key}" is not in the file`);
    if (host.blocks.includes(key)) return refuse(`block "${key}" contains itself`);
    if (host.blocks.length >= limits.nesting)
      return refuse(`more than ${limits.nesting} blocks in one another`);
    if ((block.flags & externalReference) !== 0)
      return refuse('external reference: its drawing is another file');
    const places = insertPlaces(entity.groups, block.base, host.place);
    if ('reason' in places) return refuse(places.reason);
    for (const place of places) {
      // Empty blocks cost no entities but time.
      if (++this.placed > limits.entities || this.taken > limits.entities) return;
      const inner: Host = { ...host, place, blocks: [...host.blocks, key] };
      for (const child of block.entities) this.take(child, inner);
    }
  }
}

/** Block flag 4 (DXF reference, BLOCK, group 70). */
const externalReference = 4;

const textKinds: ReadonlySet<string> = new Set(['TEXT', 'MTEXT', 'ATTRIB']);
