import { describe, expect, it } from 'vitest';
import type { Chain } from '../../../core/geometry/contour';
import { newRelief } from '../../../core/die/relief-rules';
import { newJob } from '../../../core/job';
import { writeDxf } from '../../../core/output/write-dxf';
import { createPipeline } from '../../../core/pipeline';
import { jobOn } from '../../support/dxf-of';
import { readWithEzdxf } from '../../support/ezdxf';
import { ezdxf } from '../../support/outside-tool';
import { roundedRectangle } from '../../support/shapes';
import { exampleParts, planOf } from '../../support/plan-of';

// Outside source: ezdxf, a general DXF library, reads and audits what the writer wrote.
const { missing } = ezdxf();

function example(unit: 'mm' | 'inch', released = true) {
  const parts = exampleParts({ unit });
  const job = { ...parts.job, name: 'Bügel\n9\n$HEADER', passes: newJob('', '').passes };
  const plan = planOf({ ...parts, job, released });
  return { plan, job, text: writeDxf(plan, job) };
}

describe.skipIf(missing)('DXF read by ezdxf', () => {
  it.each([
    // $INSUNITS 1 inch, 4 mm (DXF reference, HEADER section).
    ['mm', 4, 1],
    ['inch', 1, 25.4],
  ] as const)(
    'in %s: states its unit, passes the audit and holds every contour and path',
    (unit, code, mm) => {
      const { plan, text } = example(unit);
      const read = readWithEzdxf(text);
      expect(read.version).toBe('AC1021');
      expect(read.unit).toBe(code);
      expect(read.errors).toEqual([]);
      expect(read.fixes).toEqual([]);

      const layer = (name: string) => read.entities.filter((entity) => entity.layer === name);
      const same = (name: string, closed: boolean, chains: readonly Chain[]) => {
        const found = layer(name);
        expect(found, name).toHaveLength(chains.length);
        chains.forEach((chain, index) => {
          expect(found[index]?.type).toBe('LWPOLYLINE');
          expect(found[index]?.closed).toBe(closed);
          expect(found[index]?.points).toHaveLength(chain.length);
          chain.forEach((vertex, i) => {
            const [x = NaN, y = NaN, bulge = NaN] = found[index]?.points[i] ?? [];
            // Arcs are bulges, and nothing is rounded: the same within a millionth of a µm.
            expect(Math.hypot(x * mm - vertex.x, y * mm - vertex.y)).toBeLessThan(1e-9);
            expect(Math.abs(bulge - vertex.bulge)).toBeLessThan(1e-12);
          });
        });
      };
      for (const member of plan.pairs.flatMap((pair) => [pair.die, pair.punch])) {
        const passes = member.cuts.flatMap((cut) => cut.passes);
        const some = (chain: Chain) => chain.length > 1;
        same(member.id, true, member.designed);
        passes.forEach((pass, index) => {
          same(`${member.id}-${index === 0 ? 'rough' : `skim-${index}`}`, true, [pass.loop]);
        });
        same(
          `${member.id}-lead`,
          false,
          passes
            .flatMap(({ main }) => main)
            .flatMap(({ leadIn, leadOut }) => [leadIn, leadOut])
            .filter(some),
        );
        same(
          `${member.id}-tab`,
          false,
          passes.flatMap(({ tabs }) => tabs.map(({ cut }) => cut)).filter(some),
        );
        const [hole] = layer(`${member.id}-start-hole`);
        const start = member.cuts[0]?.starts[0];
        expect(hole?.type).toBe('CIRCLE');
        expect((hole?.radius ?? NaN) * mm * 2).toBeCloseTo(start?.diameter ?? NaN, 9);
        expect((hole?.centre?.[1] ?? NaN) * mm).toBeCloseTo(start?.y ?? NaN, 9);
      }
    },
  );

  it('gives die and punch their colours (Okabe and Ito, 2008), and solid lines', () => {
    const { layers } = readWithEzdxf(example('mm').text);
    expect(layers['blank-1-die']).toEqual({ color: 5, rgb: [0x00, 0x72, 0xb2], lineType: 'Continuous' });
    expect(layers['blank-1-punch']).toEqual({ color: 30, rgb: [0xd5, 0x5e, 0x00], lineType: 'Continuous' });
  });

  it('writes the remainder on a layer of its own', () => {
    const { plan, job } = example('mm');
    const outline = [
      { x: 0, y: 0, bulge: 0 },
      { x: 0.15, y: 0, bulge: -Math.tan(Math.PI / 8) },
      { x: 0, y: 0.15, bulge: 0 },
    ];
    const remainders = [{ findingKey: 'k', outline, depth: 0.06, area: 0.005 }];
    const pairs = plan.pairs.map((pair) => ({ ...pair, die: { ...pair.die, remainders } }));
    const read = readWithEzdxf(writeDxf({ ...plan, pairs }, job));
    const found = read.entities.filter((entity) => entity.layer === 'blank-1-die-remainder');
    expect(found.map((entity) => entity.points)).toEqual([outline.map(({ x, y, bulge }) => [x, y, bulge])]);
    expect(read.errors).toEqual([]);
  });

  // Exact geometry: 2° over 22 mm below the land widen the opening by 22 tan 2° on each side.
  it('holds both contours of a relieved die and the way of the upper end, each on a layer of its own', () => {
    const job = jobOn([roundedRectangle(20, 10, 1)], {
      relief: { ...newRelief, kind: 'land and relief', angleDeg: 2 },
    });
    const plan = createPipeline().plan(job);
    if (!plan.ok) throw new Error(plan.problem.what);
    const read = readWithEzdxf(writeDxf(plan.value, job));
    expect(read.errors).toEqual([]);
    const boxOf = (name: string) => {
      const points = read.entities.filter(({ layer }) => layer === name).flatMap((entity) => entity.points);
      const across = points.map(([x = NaN]) => x);
      return [Math.min(...across), Math.max(...across)];
    };
    const growth = 22 * Math.tan((2 * Math.PI) / 180);
    const level = 0.15 / Math.cos((2 * Math.PI) / 180);
    const id = plan.value.pairs[0]?.die.id ?? '';
    const near = (low: number, high: number) => [expect.closeTo(low, 6), expect.closeTo(high, 6)];
    expect(boxOf(id)).toEqual(near(0, 20));
    expect(boxOf(`${id}-exit`)).toEqual(near(-growth, 20 + growth));
    expect(boxOf(`${id}-relief`)).toEqual(near(level, 20 - level));
    expect(boxOf(`${id}-relief-upper`)).toEqual(near(level - growth, 20 - level + growth));
  });

  it('says DRAFT in the drawing while it is one, and keeps any job name inside its text', () => {
    for (const released of [true, false]) {
      const read = readWithEzdxf(example('mm', released).text);
      const texts = read.entities.flatMap((entity) => entity.text ?? []);
      expect(texts.some((text) => text.startsWith('DRAFT'))).toBe(!released);
      expect(texts).toContain('Diewright: Bügel 9 $HEADER');
    }
  });
});

describe('writeDxf', () => {
  it('gives the same bytes every time, and no date', () => {
    const first = example('mm').text;
    expect(example('mm').text).toBe(first);
    example('inch');
    expect(example('mm').text).toBe(first);
    expect(first).not.toMatch(/\$TD|\b20\d\d-\d\d|GUID/);
    expect(first.endsWith('0\nEOF\n')).toBe(true);
  });

  it('writes a plan without members', () => {
    const { plan, job } = example('mm');
    expect(writeDxf({ ...plan, pairs: [] }, job)).toContain('EOF');
  });
});
