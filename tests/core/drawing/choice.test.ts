import { describe, expect, it } from 'vitest';
import type { Drawing, DrawingChoice } from '../../../core/drawing/drawing';
import { outlineOf } from '../../../core/drawing/read-drawing';
import { surveyDrawing } from '../../../core/drawing/survey-drawing';
import { contourArea } from '../../../core/geometry/contour-measures';
import { jobOnDrawing, readJobFile, writeJobFile } from '../../../core/job-file';
import { createPipeline } from '../../../core/pipeline';
import { bytes, circle, codesOf, dxf, line, problemOf, raw, square, valueOf, type Groups } from './drawn';

const layer = (name: string, flags: number, color: number): Groups => [
  ...[0, 'LAYER', 2, name, 70, flags, 62, color, 6, 'CONTINUOUS'],
];
const tables: Groups = [
  ...[0, 'TABLE', 2, 'LAYER', 70, 3, ...layer('OFF', 0, -3), ...layer('ICE', 1, 5), ...layer('CUT', 0, 1)],
  ...[0, 'ENDTAB'],
];
const text = dxf({
  tables,
  entities: [
    ...[...square(0, 0, 100, 'CUT'), ...circle(10, 10, 2, 'OFF'), ...circle(20, 20, 3, 'ICE')],
    ...[...circle(30, 30, 4, 'CUT'), 62, 6, ...circle(40, 40, 5, 'MORE')],
  ],
});
const none: DrawingChoice = { layers: null, colours: null, contours: {} };
const chosen = (choice: Partial<DrawingChoice>, from = text) =>
  outlineOf(raw(from), 'mm', 0.005, { choice: { ...none, ...choice } });
const radii = ({ contours }: Drawing): number[] =>
  contours.map(({ contour }) => Math.round(Math.sqrt(contourArea(contour) / Math.PI)));

describe('choosing by layer and colour', () => {
  it('nothing chosen: all that are shown', () => {
    expect(radii(valueOf(chosen({})))).toEqual([56, 4, 5]);
  });

  it('layers that are off or frozen are read when chosen, whatever their case; the others are counted', () => {
    const drawing = valueOf(chosen({ layers: ['off', 'Ice'] }));
    expect(radii(drawing)).toEqual([3, 2]);
    expect(drawing.unused.map(({ reason, count }) => `${count} ${reason}`)).toEqual([
      '1 layer not chosen',
      '1 layer not chosen',
      '1 layer not chosen',
    ]);
  });

  it('colours: that of the entity, else that of its layer', () => {
    expect(radii(valueOf(chosen({ colours: [6] })))).toEqual([4]);
    expect(radii(valueOf(chosen({ colours: [1] })))).toEqual([56]);
    // No layer table entry: white (7).
    expect(radii(valueOf(chosen({ colours: [7] })))).toEqual([5]);
    expect(problemOf(chosen({ colours: [99] })).whatToDo).toMatch(/layers and colours/);
  });

  it('a survey says what there is to choose from', () => {
    const { layers, colours } = surveyDrawing(raw(text), null);
    expect(layers).toEqual([
      { name: 'CUT', pieces: 2, hidden: null },
      { name: 'ICE', pieces: 1, hidden: 'layer is frozen' },
      { name: 'MORE', pieces: 1, hidden: null },
      { name: 'OFF', pieces: 1, hidden: 'layer is off' },
    ]);
    expect(colours).toEqual([1, 3, 5, 6, 7].map((colour) => ({ colour, pieces: 1 })));
  });
});

describe('choosing by contour', () => {
  it('left out by hand: the others keep their names and nest anew', () => {
    const drawing = valueOf(chosen({ contours: { c1: 'leave out' } }));
    expect(drawing.contours.map(({ id, depth }) => `${id} ${depth}`)).toEqual(['c3 0', 'c2 0']);
    expect(drawing.leftOut).toMatchObject([{ id: 'c1', reason: 'left out by hand' }]);
    expect(codesOf(drawing)).toContain('note contour-left-out');
  });

  it('all left out is a problem; a name that no contour has changes nothing', () => {
    expect(problemOf(chosen({ contours: { c1: 'leave out', c2: 'leave out', c3: 'leave out' } })).code).toBe(
      'all-contours-left-out',
    );
    expect(valueOf(chosen({ contours: { c99: 'leave out' } })).contours).toHaveLength(3);
  });
});

describe('the sheet around a part', () => {
  const words = (x: number, y: number): Groups => [0, 'TEXT', 8, 'T', 10, x, 20, y, 40, 3, 1, 'Scale 1:1'];
  const box = (x0: number, y0: number, x1: number, y1: number): Groups => [
    ...[0, 'LWPOLYLINE', 8, '0', 90, 4, 70, 1],
    ...[10, x0, 20, y0, 10, x1, 20, y0, 10, x1, 20, y1, 10, x0, 20, y1],
  ];
  const part = [...square(50, 120, 60), ...circle(80, 150, 10)];
  const sheet = [
    ...[...box(0, 0, 297, 210), ...box(200, 0, 297, 20), ...box(200, 20, 297, 40)],
    ...[...words(205, 5), ...words(205, 25)],
  ];

  it('frame and title block are left out; the part is an outer contour and named first', () => {
    const drawing = valueOf(chosen({}, dxf({ entities: [...sheet, ...part] })));
    expect(drawing.contours.map(({ id, depth }) => `${id} ${depth}`)).toEqual(['c1 0', 'c2 1']);
    expect(drawing.box).toEqual({ minX: 50, minY: 120, maxX: 110, maxY: 180 });
    expect(drawing.leftOut.map(({ id, reason }) => `${id} ${reason}`)).toEqual([
      'c3 frame of the sheet',
      'c4 cell of a title block',
      'c5 cell of a title block',
    ]);
    // The frame holds the part, so a person is asked; the cells do not.
    const told = drawing.findings.filter(({ code }) => code === 'contour-left-out');
    expect(told.map(({ weight }) => weight).sort()).toEqual(['decide', 'note']);
  });

  it('one of them taken by hand is taken', () => {
    const drawing = valueOf(chosen({ contours: { c3: 'take' } }, dxf({ entities: [...sheet, ...part] })));
    expect(drawing.contours.map(({ id, depth }) => `${id} ${depth}`)).toEqual(['c3 0', 'c1 1', 'c2 2']);
  });

  it('a plate with words on it, a hole with a word in it, parts with their names in them are parts', () => {
    const drawing = (entities: Groups): Drawing => valueOf(chosen({}, dxf({ entities })));
    expect(drawing([...part, ...words(55, 125), ...words(80, 150)]).leftOut).toEqual([]);
    const named = [
      ...box(0, 0, 40, 20),
      ...words(5, 5),
      ...box(60, 0, 100, 20),
      ...words(65, 5),
      ...circle(200, 0, 30),
    ];
    expect(drawing(named).leftOut).toEqual([]);
    expect(
      drawing([...box(0, 0, 100, 50), ...box(40, 20, 60, 30), ...words(45, 25), ...circle(200, 0, 30)])
        .leftOut,
    ).toEqual([]);
  });

  it('nothing but cells: then they are the drawing', () => {
    const drawing = valueOf(chosen({}, dxf({ entities: sheet })));
    expect(drawing.contours).toHaveLength(3);
  });

  it('layers named for construction or the sheet; open lines on them ask nobody', () => {
    const aside = [
      ...circle(300, 0, 20, 'Construction'),
      ...circle(80, 150, 50, 'DEFPOINTS'),
      ...line(0, 0, 9, 9, 'Hilfslinien'),
    ];
    const drawing = valueOf(chosen({}, dxf({ entities: [...part, ...aside] })));
    expect(drawing.contours).toHaveLength(2);
    expect(drawing.leftOut.map(({ layer: name }) => name).sort()).toEqual(['Construction', 'DEFPOINTS']);
    expect(codesOf(drawing).filter((code) => code.endsWith('contour-open'))).toEqual([]);
    // A part on a layer of that name with its holes on another is a part.
    const odd = [...circle(0, 0, 30, 'FRAME'), ...circle(0, 0, 5, 'HOLES')];
    expect(valueOf(chosen({}, dxf({ entities: odd }))).contours).toHaveLength(2);
  });
});

describe('the choice is part of the job', () => {
  it('it is saved and read again, and the plan follows it', () => {
    const job = jobOnDrawing('part.dxf', bytes(text));
    const changed = {
      ...job,
      drawing: {
        ...job.drawing,
        choice: { layers: ['CUT', 'ICE'], colours: null, contours: { c2: 'leave out' as const } },
        repairsOff: ['T-joint' as const],
      },
    };
    const again = readJobFile(writeJobFile(changed));
    expect(again).toEqual({ ok: true, value: changed });
    const plan = valueOf(createPipeline().plan(changed));
    expect(plan.drawing.contours.map(({ id }) => id)).toEqual(['c1', 'c3']);
  });

  it('a job saved before there was a choice reads as one without', () => {
    const job = jobOnDrawing('part.dxf', bytes(text));
    const { choice, repairsOff, ...before } = job.drawing;
    const old = JSON.stringify({ ...job, drawing: before });
    expect(readJobFile(old)).toEqual({ ok: true, value: job });
    expect([choice, repairsOff]).toEqual([none, []]);
  });
});
