import { spawnSync } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { python } from './outside-tool';

export interface EzdxfReply {
  readonly version: string;
  readonly unit: number;
  readonly layers: Readonly<
    Record<
      string,
      { readonly color: number; readonly rgb: readonly number[] | null; readonly lineType: string }
    >
  >;
  /** What ezdxf's audit could not repair, and what it repaired. */
  readonly errors: readonly string[];
  readonly fixes: readonly string[];
  readonly entities: readonly EzdxfEntity[];
}

export interface EzdxfEntity {
  readonly type: string;
  readonly layer: string;
  readonly closed: boolean | null;
  /** x, y, bulge. */
  readonly points: readonly (readonly [number, number, number])[];
  readonly centre: readonly [number, number] | null;
  readonly radius: number | null;
  readonly text: string | null;
  /** Colour index; 256 that of the layer. */
  readonly color: number;
  readonly rgb: readonly number[] | null;
}

/** Reads a DXF text with ezdxf, a general library, and audits it. */
export function readWithEzdxf(text: string): EzdxfReply {
  const folder = mkdtempSync(join(tmpdir(), 'diewright-ezdxf-'));
  try {
    const file = join(folder, 'drawing.dxf');
    writeFileSync(file, text);
    const run = spawnSync(python, ['-c', script, file], { encoding: 'utf8', timeout: 60_000 });
    if (run.status !== 0) throw new Error(run.stderr);
    return JSON.parse(run.stdout) as EzdxfReply;
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

const script = `
import json, sys, ezdxf
doc = ezdxf.readfile(sys.argv[1])
audit = doc.audit()
def entity(e):
    poly, circle = e.dxftype() == 'LWPOLYLINE', e.dxftype() == 'CIRCLE'
    return dict(type=e.dxftype(), layer=e.dxf.layer, closed=bool(e.closed) if poly else None,
        points=[list(p) for p in e.get_points('xyb')] if poly else [],
        centre=list(e.dxf.center)[:2] if circle else None, radius=e.dxf.radius if circle else None,
        text=e.dxf.text if e.dxftype() == 'TEXT' else None, color=e.dxf.color, rgb=list(e.rgb) if e.rgb else None)
print(json.dumps(dict(version=doc.dxfversion, unit=doc.header.get('$INSUNITS'),
    layers={l.dxf.name: dict(color=l.color, rgb=list(l.rgb) if l.rgb else None, lineType=l.dxf.linetype) for l in doc.layers},
    errors=[str(x.message) for x in audit.errors], fixes=[str(x.message) for x in audit.fixes],
    entities=[entity(e) for e in doc.modelspace()])))
`;
