import { findCode, placeOf, textAt, textOf, type Pairs } from './pairs';
import { WordPool } from './word-pool';
import type { Damage } from './raw-drawing';

/** One entity of the file: its kind and the half-open range of its pairs after the name. */
export interface EntityRecord {
  readonly kind: string;
  /** The pair of its name. */
  readonly at: number;
  readonly from: number;
  readonly to: number;
  /** The VERTEX records of a POLYLINE. */
  readonly vertices: readonly EntityRecord[];
}

export interface BlockRecord {
  readonly at: number;
  readonly from: number;
  readonly to: number;
  readonly entities: EntityRecord[];
}

/** A DXF by sections, whole: what was not ended has been ended, and each such repair is in `damage`. */
export interface DrawingRecords {
  /** Header variables and the pair that holds their value. */
  readonly header: ReadonlyMap<string, number>;
  readonly layers: readonly EntityRecord[];
  readonly lineTypes: readonly EntityRecord[];
  readonly blockRecords: readonly EntityRecord[];
  readonly dimensionStyles: readonly EntityRecord[];
  readonly blocks: readonly BlockRecord[];
  readonly entities: readonly EntityRecord[];
  readonly damage: readonly Damage[];
  /** The names of the sections found, in order. */
  readonly sections: readonly string[];
  /** The section that the end of the file cut short, if any. */
  readonly openAtEnd: string | null;
}

/**
 * Sorts the pairs of a DXF into sections. Missing ENDSEC, ENDTAB, ENDBLK and SEQEND are put in where the next section,
 * table, block or entity begins; several ENTITIES sections are read as one. Nothing is judged here but structure.
 */
export function drawingRecords(pairs: Pairs): DrawingRecords {
  const sorter = new RecordSorter(pairs);
  const { codes, count } = pairs;
  const kinds = new WordPool(pairs);
  let at = findCode(pairs, 0, 0, count);
  while (at >= 0 && at < count) {
    let next = at + 1;
    while (next < count && codes[next] !== 0) next++;
    sorter.take(kinds.at(at), at, next);
    at = next;
  }
  return sorter.finish();
}

/** Walks through the records of a file; lives for one drawing. */
class RecordSorter {
  private readonly header = new Map<string, number>();
  private readonly layers: EntityRecord[] = [];
  private readonly lineTypes: EntityRecord[] = [];
  private readonly blockRecords: EntityRecord[] = [];
  private readonly dimensionStyles: EntityRecord[] = [];
  private readonly blocks: BlockRecord[] = [];
  private readonly entities: EntityRecord[] = [];
  private readonly damage: Damage[] = [];
  private readonly sections: string[] = [];
  private section: string | null = null;
  private table: string | null = null;
  private block: BlockRecord | null = null;
  private polyline: (EntityRecord & { readonly vertices: EntityRecord[] }) | null = null;
  private strays = 0;
  private readonly pairs: Pairs;

  constructor(pairs: Pairs) {
    this.pairs = pairs;
  }

  take(name: string, at: number, to: number): void {
    if (name === 'SECTION') this.beginSection(at, to);
    else if (name === 'ENDSEC') this.endSection(at);
    else if (this.section === 'TABLES') this.takeInTables(name, at, to);
    else if (this.section === 'BLOCKS') this.takeInBlocks(name, at, to);
    else if (this.section === 'ENTITIES') this.takeEntity(this.entities, name, at, to);
    else if (this.section === null) this.strays++;
  }

  finish(): DrawingRecords {
    const { header, layers, lineTypes, blockRecords, dimensionStyles, blocks, entities, damage, sections } =
      this;
    const openAtEnd = this.section;
    this.endBlock(null);
    this.endPolyline(null);
    if (this.strays > 0) {
      const say = `${this.strays} ${this.strays === 1 ? 'record stands' : 'records stand'} outside every section and cannot be placed.`;
      damage.push({ weight: 'decide', say });
    }
    return {
      ...{ header, layers, lineTypes, blockRecords, dimensionStyles },
      ...{ blocks, entities, damage, sections, openAtEnd },
    };
  }

  private beginSection(at: number, to: number): void {
    if (this.section !== null) {
      this.note(`ENDSEC of section ${this.section} is missing before ${this.place(at)}; put in.`);
      this.leaveSection(at);
    }
    const name = textOf(this.pairs, 2, at + 1, to);
    if (name === 'ENTITIES' && this.sections.includes(name)) {
      this.note(`The file has a second ENTITIES section (${this.place(at)}); both are read.`);
    }
    this.section = name;
    this.sections.push(name);
    if (name === 'HEADER') this.readHeader(at + 1, to);
  }

  /** A header variable is a group 9 with its name and the group after it. */
  private readHeader(from: number, to: number): void {
    for (let i = from; i + 1 < to; i++) {
      if (this.pairs.codes[i] === 9 && this.pairs.codes[i + 1] !== 9) {
        this.header.set(textAt(this.pairs, i), i + 1);
      }
    }
  }

  private endSection(at: number): void {
    if (this.section === null) this.note(`ENDSEC on ${this.place(at)} ends no section; left out.`);
    this.leaveSection(at);
    this.section = null;
  }

  private leaveSection(at: number): void {
    if (this.table !== null)
      this.note(`ENDTAB of table ${this.table} is missing before ${this.place(at)}; put in.`);
    this.table = null;
    this.endBlock(at);
    this.endPolyline(at);
  }

  private takeInTables(name: string, at: number, to: number): void {
    if (name === 'TABLE') {
      if (this.table !== null)
        this.note(`ENDTAB of table ${this.table} is missing before ${this.place(at)}; put in.`);
      this.table = textOf(this.pairs, 2, at + 1, to);
    } else if (name === 'ENDTAB') this.table = null;
    else if (name === 'LAYER') this.layers.push(record(name, at, to));
    else if (name === 'LTYPE') this.lineTypes.push(record(name, at, to));
    else if (name === 'BLOCK_RECORD') this.blockRecords.push(record(name, at, to));
    else if (name === 'DIMSTYLE') this.dimensionStyles.push(record(name, at, to));
  }

  private takeInBlocks(name: string, at: number, to: number): void {
    if (name === 'BLOCK') {
      this.endBlock(at);
      this.block = { at, from: at + 1, to, entities: [] };
      this.blocks.push(this.block);
    } else if (name === 'ENDBLK') {
      this.endPolyline(at);
      this.block = null;
    } else if (this.block) this.takeEntity(this.block.entities, name, at, to);
    else this.strays++;
  }

  private takeEntity(list: EntityRecord[], name: string, at: number, to: number): void {
    if (this.polyline) {
      if (name === 'VERTEX') {
        this.polyline.vertices.push(record(name, at, to));
        return;
      }
      if (name === 'SEQEND') {
        this.polyline = null;
        return;
      }
      this.endPolyline(at);
    }
    // The SEQEND after the attributes of an INSERT ends nothing that is read here.
    if (name === 'SEQEND') return;
    if (name !== 'POLYLINE') {
      list.push(record(name, at, to));
      return;
    }
    this.polyline = { ...record(name, at, to), vertices: [] };
    list.push(this.polyline);
  }

  private endPolyline(at: number | null): void {
    if (!this.polyline) return;
    this.note(
      `SEQEND of the POLYLINE on ${this.place(this.polyline.at)} is missing ${this.before(at)}; put in.`,
    );
    this.polyline = null;
  }

  private endBlock(at: number | null): void {
    if (!this.block) return;
    this.endPolyline(at);
    this.note(`ENDBLK of the block on ${this.place(this.block.at)} is missing ${this.before(at)}; put in.`);
    this.block = null;
  }

  private place(at: number): string {
    return placeOf(this.pairs, at);
  }

  private before(at: number | null): string {
    return at === null ? 'at the end of the file' : `before ${this.place(at)}`;
  }

  private note(say: string): void {
    this.damage.push({ weight: 'note', say });
  }
}

const record = (kind: string, at: number, to: number): EntityRecord => ({
  kind,
  at,
  from: at + 1,
  to,
  vertices: none,
});

const none: readonly EntityRecord[] = [];
