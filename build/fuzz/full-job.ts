import { partTarget } from '../../core/inspect/measuring-targets';
import type { Job } from '../../core/job';
import { jobOnDrawing } from '../../core/job-file';
import { shippedStyles } from '../../core/shipped-styles';

/** A plate with a hole and a notch, 20 × 12 mm: three pairs of edges for everything that a job can say of contours. */
const plate = [
  ...[
    '0',
    'SECTION',
    '2',
    'HEADER',
    '9',
    '$INSUNITS',
    '70',
    '4',
    '0',
    'ENDSEC',
    '0',
    'SECTION',
    '2',
    'ENTITIES',
  ],
  ...['0', 'LWPOLYLINE', '8', 'CUT', '90', '6', '70', '1', '10', '0', '20', '0', '10', '20', '20', '0'],
  ...[
    '42',
    '0.41421356',
    '10',
    '20',
    '20',
    '12',
    '10',
    '12',
    '20',
    '12',
    '10',
    '12',
    '20',
    '7',
    '10',
    '0',
    '20',
    '7',
  ],
  ...['0', 'CIRCLE', '8', 'CUT', '10', '5', '20', '3.5', '40', '2', '0', 'ENDSEC', '0', 'EOF', ''],
].join('\n');

/** Jobs that between them have something in every field. */
export function fullJobs(): readonly Job[] {
  const plain = jobOnDrawing('plate.dxf', new TextEncoder().encode(plate));
  return [
    plain,
    {
      ...plain,
      drawing: {
        ...plain.drawing,
        unit: 'mm',
        choice: { layers: ['CUT'], colours: null, contours: { c2: 'take' } },
      },
      clearance: { rule: 'percent', percent: 6 },
      uses: { c2: 'pierce' },
      sizeShifts: { c1: 0.02 },
      punchPasses: plain.passes,
      passRule: 'typed',
      corners: {
        punch: { outside: { rule: 'radius', radius: 0.2 }, inside: { rule: 'as drawn' } },
        die: { outside: { rule: 'match' }, inside: { rule: 'match' } },
        path: 'sharp',
        miterLimit: 2,
        exceptions: [
          {
            contourId: 'c1',
            x: 0,
            y: 0,
            inside: { rule: 'radius', radius: 0.3 },
            outside: null,
            path: 'rolling',
          },
        ],
      },
      relief: { ...plain.relief, kind: 'land and relief' },
      cuts: { 'blank-c1-die': { tabs: 2, slug: 'kept', fromEdge: false, stretches: [] } },
      output: { unit: 'inch', program: 'compensated', style: shippedStyles.rs274 ?? plain.output.style },
      dieSet: {
        ...plain.dieSet,
        arrangement: 'compound',
        sections: { of: 'both', stock: 0.1 },
        oneBlock: true,
      },
      settled: { 'some finding': { reason: 'agreed' } },
    },
    {
      ...plain,
      clearance: { rule: 'typed', perSide: 0.03 },
      relief: { ...plain.relief, kind: 'one tapered cut', corners: 'constant radius' },
      dieSet: {
        ...plain.dieSet,
        arrangement: 'two stations',
        stripper: { ...plain.dieSet.stripper, make: true },
        retainer: { ...plain.dieSet.retainer, make: true },
        strip: { ...plain.dieSet.strip, up: 'two up' },
        knockout: 'springs',
        stripping: 'springs',
        edgeShear: { ...plain.dieSet.edgeShear, shear: 'roof' },
      },
      inspection: {
        clearanceTolerance: 0.01,
        profile: { width: 0.02, outside: 0.005 },
        measured: [
          {
            name: 'punch 1',
            fileName: 'punch.csv',
            target: 'blank-c1-punch',
            points: [
              { x: 0, y: 1, id: '1' },
              { x: 10, y: 0.01, id: '2' },
              { x: 20, y: 5, id: '3' },
              { x: 15, y: 12, id: '4' },
            ],
            fit: {
              method: 'minimum zone',
              freedom: { shiftX: true, shiftY: true, turn: true },
              outliers: 'leave out',
            },
          },
        ],
        readings: [{ kind: 'distance', from: { x: 0, y: 0 }, to: { x: 20, y: 0 } }],
      },
      sheet: {
        revision: 'A',
        date: '3 May',
        page: 'letter',
        charts: [{ target: partTarget, magnification: 10 }],
      },
    },
  ];
}
