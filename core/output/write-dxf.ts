import { DxfWriter, LWPolylineFlags, Units } from '@tarikjabiri/dxf';
import type { Chain, Contour } from '../geometry/contour';
import { materialName, type Job } from '../job';
import type { Cut, Member, PassPath, Plan } from '../plan';
import { formatLength, mmPerInch } from '../units';
import { draftMark } from './cautions';
import { dxfLayers, type DxfLayerKind } from './dxf-layers';
import { passName } from './pass-name';
import { membersOf } from '../wire/members-of';

/**
 * All members and paths as one DXF (AC1021) in the job's unit, which `$INSUNITS` states. Every member has a layer for
 * its designed contour, one for each pass, and one each for leads, tab, start holes and remainder. Arcs stay arcs
 * (bulges). Coordinates are not rounded. The same plan gives the same bytes.
 */
export function writeDxf(plan: Plan, job: Job): string {
  const scale = job.output.unit === 'inch' ? 1 / mmPerInch : 1;
  const dxf = new DxfWriter();
  dxf.setUnits(job.output.unit === 'inch' ? Units.Inches : Units.Millimeters);
  dxf.setVariable('$MEASUREMENT', { 70: job.output.unit === 'inch' ? 0 : 1 });
  dxf.setVariable('$LASTSAVEDBY', { 1: 'Diewright' });
  const sheet = new Sheet(dxf, scale);
  for (const member of membersOf(plan)) sheet.member(member);
  sheet.notes(plan, job);
  return `${dxf.stringify()}\n`;
}

class Sheet {
  private readonly dxf: DxfWriter;
  private readonly scale: number;
  private readonly layers;

  constructor(dxf: DxfWriter, scale: number) {
    this.dxf = dxf;
    this.scale = scale;
    this.layers = dxfLayers(dxf);
  }

  member(member: Member) {
    for (const loop of member.designed) this.closed(loop, this.layer(member, member.role));
    for (const { outline } of member.remainders) this.closed(outline, this.layer(member, 'remainder'));
    for (const loop of member.relief?.planes.at(-1)?.wall ?? [])
      this.closed(loop, this.layer(member, 'exit'));
    for (const cut of member.cuts) this.cut(member, cut);
  }

  /** What the file is, below the part where it covers nothing. */
  notes(plan: Plan, job: Job) {
    const { box } = plan.drawing;
    const height = Math.max(box.maxX - box.minX, box.maxY - box.minY) / 40;
    const lines = [
      ...(plan.released ? [] : [draftMark]),
      `Diewright: ${job.name}`,
      `Stock ${formatLength(job.stock.thickness, job.output.unit)} ${materialName(job)}, clearance ` +
        `${formatLength(plan.clearance.perSide, job.output.unit)} per side`,
    ];
    lines.forEach((line, index) => {
      const y = box.minY - (6 + 2 * index) * height;
      const at = { x: box.minX * this.scale, y: y * this.scale, z: 0 };
      this.dxf.addText(at, height * this.scale, plainLine(line), {
        layerName: this.layers.named('notes', 'notes'),
      });
    });
  }

  private cut(member: Member, cut: Cut) {
    for (const start of cut.starts) {
      if (!start || start.diameter === 0) continue;
      const centre = { x: start.x * this.scale, y: start.y * this.scale, z: 0 };
      const layerName = this.layer(member, 'start-hole');
      this.dxf.addCircle(centre, (start.diameter / 2) * this.scale, { layerName });
    }
    for (const pass of cut.passes) {
      this.closed(pass.loop, this.passLayer(member, pass));
      for (const { upper } of [...pass.main, ...pass.tabs]) {
        if (upper) this.open(upper.cut, this.layers.named(`${this.passLayer(member, pass)}-upper`, 'path'));
      }
      for (const { leadIn, leadOut } of pass.main) {
        this.open(leadIn, this.layer(member, 'lead'));
        this.open(leadOut, this.layer(member, 'lead'));
      }
      for (const { cut: tab } of pass.tabs) this.open(tab, this.layer(member, 'tab'));
    }
  }

  private closed(loop: Contour, layerName: string) {
    this.polyline(loop, layerName, LWPolylineFlags.Closed);
  }

  private open(chain: Chain, layerName: string) {
    this.polyline(chain, layerName, LWPolylineFlags.None);
  }

  private polyline(vertices: Chain, layerName: string, flags: LWPolylineFlags) {
    if (vertices.length < 2) return;
    const points = vertices.map(({ x, y, bulge }) => ({
      point: { x: x * this.scale, y: y * this.scale },
      bulge,
    }));
    this.dxf.addLWPolyline(points, { layerName, flags });
  }

  private layer(member: Member, kind: DxfLayerKind): string {
    const suffix = kind === 'die' || kind === 'punch' ? '' : `-${kind}`;
    return this.layers.named(`${member.id}${suffix}`, kind);
  }

  private passLayer(member: Member, pass: PassPath): string {
    return this.layers.named(`${member.id}-${passName(pass).replace(' ', '-')}`, 'path');
  }
}

/** A line break inside a text value would be read as the next group code. */
const plainLine = (text: string): string => text.replace(/[\p{C}\p{Zl}\p{Zp}]+/gu, ' ');
