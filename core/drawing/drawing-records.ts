import type { Pairs } from './read-pairs';
import type { Damage } from './raw-drawing';

/** One entity of the file: its kind and the half-open range of its pairs after the name. */
export interface EntityRecord {
  readonly kind: string;
  /** Line of its name. */
  readonly line: number;
  readonly from: number;
  readonly to: number;
  /** The VERTEX records of a POLYLINE. */
  readonly vertices: EntityRecord[];
}

export interface BlockRecord {
  readonly line: number;
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
  const { codes, values } = pairs;
  let at = codes.indexOf(0);
  while (at >= 0 && at < codes.length) {
    let next = at + 1;
    while (next < codes.length && codes[next] !== 0) next++;
    sorter.take((values[at] as string).trim(), at, next);
    at = next;
  }
  return sorter.finish();
}

/** Walks through the records of a file; lives for one drawing. */
class RecordSorter {
  private readonly header = new Map<string, number>();
  private readonly layers: EntityRecord[] = [];
  private readonly lineTypes: EntityRecord[] = [];
  private readonly blocks: BlockRecord[] = [];
  private readonly entities: EntityRecord[] = [];
  private readonly damage: Damage[] = [];
  private readonly sections: string[] = [];
  private section: string | null = null;
  private table: string | null = null;
  private block: BlockRecord | null = null;
  private polyline: EntityRecord | null = null;
  private strays = 0;
  private readonly pairs: Pairs;

  constructor(pairs: Pairs) {
    this.pairs = pairs;
  }

  take(name: string, at: number, to: number): void {
    const line = this.pairs.lines[at] as number;
    if (name === 'SECTION') this.beginSection(at, to, line);
    else if (name === 'ENDSEC') this.endSection(line);
    else if (this.section === 'TABLES') this.takeInTables(name, at, to, line);
    else if (this.section === 'BLOCKS') this.takeInBlocks(name, at, to, line);
    else if (this.section === 'ENTITIES') this.takeEntity(this.entities, name, at, to, line);
    else if (this.section === null) this.strays++;
  }

  finish(): DrawingRecords {
    const { header, layers, lineTypes, blocks, entities, damage, sections } = this;
    const openAtEnd = this.section;
    this.endBlock(null);
    this.endPolyline(null);
    if (this.strays > 0) {
      const say = `${this.strays} ${this.strays === 1 ? 'record stands' : 'records stand'} outside every section and cannot be placed.`;
      damage.push({ weight: 'decide', say });
    }
    return { header, layers, lineTypes, blocks, entities, damage, sections, openAtEnd };
  }

  private beginSection(at: number, to: number, line: number): void {
    if (this.section !== null) {
      this.note(`ENDSEC of section ${this.section} is missing before line ${line}; put in.`);
      this.leaveSection(line);
    }
    const named = this.pairs.codes.indexOf(2, at + 1);
    const name = named > 0 && named < to ? (this.pairs.values[named] as string).trim() : '';
    if (name === 'ENTITIES' && this.sections.includes(name)) {
      this.note(`The file has a second ENTITIES section (line ${line}); both are read.`);
    }
    this.section = name;
    this.sections.push(name);
    if (name === 'HEADER') this.readHeader(named + 1, to);
  }

  /** A header variable is a group 9 with its name and the group after it. */
  private readHeader(from: number, to: number): void {
    for (let i = from; i + 1 < to; i++) {
      if (this.pairs.codes[i] === 9 && this.pairs.codes[i + 1] !== 9) {
        this.header.set((this.pairs.values[i] as string).trim(), i + 1);
      }
    }
  }

  private endSection(line: number): void {
    if (this.section === null) this.note(`ENDSEC on line ${line} ends no section; left out.`);
    this.leaveSection(line);
    this.section = null;
  }

  private leaveSection(line: number): void {
    if (this.table !== null)
      this.note(`ENDTAB of table ${this.table} is missing before line ${line}; put in.`);
    this.table = null;
    this.endBlock(line);
    this.endPolyline(line);
  }

  private takeInTables(name: string, at: number, to: number, line: number): void {
    if (name === 'TABLE') {
      if (this.table !== null)
        this.note(`ENDTAB of table ${this.table} is missing before line ${line}; put in.`);
      const named = this.pairs.codes.indexOf(2, at + 1);
      this.table = named > 0 && named < to ? (this.pairs.values[named] as string).trim() : '';
    } else if (name === 'ENDTAB') this.table = null;
    else if (name === 'LAYER') this.layers.push(record(name, line, at, to));
    else if (name === 'LTYPE') this.lineTypes.push(record(name, line, at, to));
  }

  private takeInBlocks(name: string, at: number, to: number, line: number): void {
    if (name === 'BLOCK') {
      this.endBlock(line);
      this.block = { line, from: at + 1, to, entities: [] };
      this.blocks.push(this.block);
    } else if (name === 'ENDBLK') {
      this.endPolyline(line);
      this.block = null;
    } else if (this.block) this.takeEntity(this.block.entities, name, at, to, line);
    else this.strays++;
  }

  private takeEntity(list: EntityRecord[], name: string, at: number, to: number, line: number): void {
    if (this.polyline) {
      if (name === 'VERTEX') {
        this.polyline.vertices.push(record(name, line, at, to));
        return;
      }
      if (name === 'SEQEND') {
        this.polyline = null;
        return;
      }
      this.endPolyline(line);
    }
    // The SEQEND after the attributes of an INSERT ends nothing that is read here.
    if (name === 'SEQEND') return;
    const entity = record(name, line, at, to);
    if (name === 'POLYLINE') this.polyline = entity;
    list.push(entity);
  }

  private endPolyline(line: number | null): void {
    if (!this.polyline) return;
    const where = line === null ? 'at the end of the file' : `before line ${line}`;
    this.note(`SEQEND of the POLYLINE on line ${this.polyline.line} is missing ${where}; put in.`);
    this.polyline = null;
  }

  private endBlock(line: number | null): void {
    if (!this.block) return;
    this.endPolyline(line);
    const where = line === null ? 'at the end of the file' : `before line ${line}`;
    this.note(`ENDBLK of the block on line ${this.block.line} is missing ${where}; put in.`);
    this.block = null;
  }

  private note(say: string): void {
    this.damage.push({ weight: 'note', say });
  }
}

const record = (kind: string, line: number, at: number, to: number): EntityRecord => ({
  kind,
  line,
  from: at + 1,
  to,
  vertices: [],
});
