import { TrueColor, type DxfWriter } from '@tarikjabiri/dxf';

export type DxfLayerKind = 'die' | 'punch' | 'path' | 'remainder' | 'lead' | 'tab' | 'start-hole' | 'notes';

interface LayerLook {
  /** Colour index for readers that know no true colour; 7 is the ink of the reader's theme. */
  readonly index: number;
  readonly rgb: string | null;
  readonly lineType: string;
}

const punchLine = 'Punch';
const solid = 'Continuous';

/** Colours of the screen (Okabe and Ito, 2008) and line styles that say the same: die solid, punch dashed. */
const looks: Record<DxfLayerKind, LayerLook> = {
  die: { index: 5, rgb: '0072B2', lineType: solid },
  punch: { index: 30, rgb: 'D55E00', lineType: punchLine },
  remainder: { index: 6, rgb: 'CC79A7', lineType: solid },
  path: { index: 7, rgb: null, lineType: solid },
  lead: { index: 8, rgb: null, lineType: solid },
  tab: { index: 7, rgb: null, lineType: solid },
  'start-hole': { index: 8, rgb: null, lineType: solid },
  notes: { index: 7, rgb: null, lineType: solid },
};

/** Makes a layer the first time it is named, so that no empty layer stands in the file. `scale`: units per mm. */
export function dxfLayers(dxf: DxfWriter, scale: number) {
  const made = new Set<string>();
  dxf.addLType(punchLine, 'Dashed __ __ __', [dash * scale, -gap * scale]);
  return {
    named(name: string, kind: DxfLayerKind): string {
      const layerName = name.replace(/[^\w-]/g, '_');
      if (made.has(layerName)) return layerName;
      made.add(layerName);
      const look = looks[kind];
      const layer = dxf.addLayer(layerName, look.index, look.lineType);
      if (look.rgb !== null) layer.trueColor = TrueColor.fromHex(look.rgb);
      return layerName;
    },
  };
}

/** Length of a dash and of the space after it, mm. */
const dash = 1;
const gap = 0.5;
