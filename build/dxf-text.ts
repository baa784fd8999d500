/** Writes the plain parts of an ASCII DXF (R2000) for our samples: just what a drawing program needs to open them. */

export type Pair = readonly [code: number, value: string | number];

export interface SampleLayer {
  readonly name: string;
  readonly color: number;
  readonly lineType: 'CONTINUOUS' | 'CENTER';
  readonly isFrozen?: boolean;
}

export interface SampleDrawing {
  /** First line of the file, a comment (group 999). */
  readonly about: string;
  /** `$INSUNITS`: 4 mm, 1 inch, 0 none (DXF reference). */
  readonly unitCode: 0 | 1 | 4;
  readonly layers: readonly SampleLayer[];
  readonly blocks: readonly { readonly name: string; readonly entities: readonly (readonly Pair[])[] }[];
  readonly entities: readonly (readonly Pair[])[];
}

/** The whole file, lines ended by CR LF as drawing programs do. */
export function dxfText(drawing: SampleDrawing): string {
  const handles = handleCounter();
  const pairs: Pair[] = [
    [999, drawing.about],
    ...section('HEADER', [
      [9, '$ACADVER'],
      [1, 'AC1015'],
      [9, '$DWGCODEPAGE'],
      [3, 'ANSI_1252'],
      [9, '$INSUNITS'],
      [70, drawing.unitCode],
    ]),
    ...section('TABLES', [
      ...lineTypeTable(handles),
      ...layerTable(drawing.layers, handles),
      ...blockTable(drawing, handles),
    ]),
    ...section(
      'BLOCKS',
      [
        { name: '*Model_Space', entities: [] },
        { name: '*Paper_Space', entities: [] },
        ...drawing.blocks,
      ].flatMap(({ name, entities }) => block(name, entities, handles)),
    ),
    ...section(
      'ENTITIES',
      drawing.entities.flatMap((entity) => withHandle(entity, handles)),
    ),
    [0, 'EOF'],
  ];
  return pairs.map(([code, value]) => `${String(code).padStart(3)}\r\n${value}\r\n`).join('');
}

type Handles = () => string;

function handleCounter(): Handles {
  let last = 0x0f;
  return () => (++last).toString(16).toUpperCase();
}

const section = (name: string, pairs: readonly Pair[]): Pair[] => [
  [0, 'SECTION'],
  [2, name],
  ...pairs,
  [0, 'ENDSEC'],
];

function table(name: string, records: readonly (readonly Pair[])[], handles: Handles): Pair[] {
  const head: Pair[] = [
    [0, 'TABLE'],
    [2, name],
    [5, handles()],
    [100, 'AcDbSymbolTable'],
    [70, records.length],
  ];
  return [...head, ...records.flat(), [0, 'ENDTAB']];
}

function lineTypeTable(handles: Handles): Pair[] {
  const record = (name: string, say: string, dashes: readonly number[]): Pair[] => [
    [0, 'LTYPE'],
    [5, handles()],
    [100, 'AcDbSymbolTableRecord'],
    [100, 'AcDbLinetypeTableRecord'],
    [2, name],
    [70, 0],
    [3, say],
    [72, 65],
    [73, dashes.length],
    [40, dashes.reduce((sum, dash) => sum + Math.abs(dash), 0)],
    ...dashes.flatMap((dash): Pair[] => [
      [49, dash],
      [74, 0],
    ]),
  ];
  const records = [
    record('ByBlock', '', []),
    record('ByLayer', '', []),
    record('CONTINUOUS', 'Solid line', []),
    record('CENTER', 'Center ____ _ ____', [12, -3, 3, -3]),
  ];
  return table('LTYPE', records, handles);
}

const layerTable = (layers: readonly SampleLayer[], handles: Handles): Pair[] =>
  table(
    'LAYER',
    [{ name: '0', color: 7, lineType: 'CONTINUOUS' } satisfies SampleLayer, ...layers].map(
      ({ name, color, lineType, isFrozen = false }: SampleLayer): Pair[] => [
        [0, 'LAYER'],
        [5, handles()],
        [100, 'AcDbSymbolTableRecord'],
        [100, 'AcDbLayerTableRecord'],
        [2, name],
        // Bit 1: frozen (DXF reference, LAYER).
        [70, isFrozen ? 1 : 0],
        [62, color],
        [6, lineType],
      ],
    ),
    handles,
  );

const blockTable = ({ blocks }: SampleDrawing, handles: Handles): Pair[] =>
  table(
    'BLOCK_RECORD',
    ['*Model_Space', '*Paper_Space', ...blocks.map(({ name }) => name)].map((name): Pair[] => [
      [0, 'BLOCK_RECORD'],
      [5, handles()],
      [100, 'AcDbSymbolTableRecord'],
      [100, 'AcDbBlockTableRecord'],
      [2, name],
    ]),
    handles,
  );

const block = (name: string, entities: readonly (readonly Pair[])[], handles: Handles): Pair[] => [
  [0, 'BLOCK'],
  [5, handles()],
  [100, 'AcDbEntity'],
  [8, '0'],
  [100, 'AcDbBlockBegin'],
  [2, name],
  // Bit 1 marks the nameless block of a dimension (DXF reference, BLOCK, group 70).
  [70, name.startsWith('*D') ? 1 : 0],
  [10, 0],
  [20, 0],
  [30, 0],
  [3, name],
  [1, ''],
  ...entities.flatMap((entity) => withHandle(entity, handles)),
  [0, 'ENDBLK'],
  [5, handles()],
  [100, 'AcDbEntity'],
  [8, '0'],
  [100, 'AcDbBlockEnd'],
];

/** The handle belongs right behind the entity's name. */
function withHandle(entity: readonly Pair[], handles: Handles): Pair[] {
  const [name, ...rest] = entity;
  return name ? [name, [5, handles()], ...rest] : [];
}
