import { TrueColor, type DxfWriter } from '@tarikjabiri/dxf';

export type DxfLayerKind =
  'die' | 'punch' | 'path' | 'remainder' | 'exit' | 'lead' | 'tab' | 'start-hole' | 'notes';

interface LayerLook {
  /** Colour index for readers that know no true colour; 7 is the ink of the reader's theme. */
  readonly index: number;
  readonly rgb: string | null;
}

/**
 * Every line is solid, the punch too, though the screen dashes it: readers take other line types for hidden edges and
 * centre lines and leave them out. The layer's name says what the colour says.
 */
const solid = 'Continuous';

/** Colours of the screen (Okabe and Ito, 2008). */
const looks: Record<DxfLayerKind, LayerLook> = {
  die: { index: 5, rgb: '0072B2' },
  punch: { index: 30, rgb: 'D55E00' },
  remainder: { index: 6, rgb: 'CC79A7' },
  exit: { index: 4, rgb: '56B4E9' },
  path: { index: 7, rgb: null },
  lead: { index: 8, rgb: null },
  tab: { index: 7, rgb: null },
  'start-hole': { index: 8, rgb: null },
  notes: { index: 7, rgb: null },
};

/** Makes a layer the first time it is named, so that no empty layer stands in the file. */
export function dxfLayers(dxf: DxfWriter) {
  const made = new Set<string>();
  return {
    named(name: string, kind: DxfLayerKind): string {
      const layerName = name.replace(/[^\w-]/g, '_');
      if (made.has(layerName)) return layerName;
      made.add(layerName);
      const look = looks[kind];
      const layer = dxf.addLayer(layerName, look.index, solid);
      if (look.rgb !== null) layer.trueColor = TrueColor.fromHex(look.rgb);
      return layerName;
    },
  };
}
