/** Why a kind of entity that is not read is not part of an outline, in a few words. */
export const reasonForKind = (kind: string): string => reasons.get(kind) ?? 'kind that is not read';

const text = 'text';
const dimension = 'dimension';
const filling = 'filling, not an edge';
const endless = 'endless line';
const body = 'solid or surface: only its drawn outline could be read';
/** Whether this is the reason of a solid or region. */
export const isBodyReason = (reason: string): boolean => reason === body;

const picture = 'picture or view';

/** A map, not an object: a kind may be called `constructor`. */
const reasons: ReadonlyMap<string, string> = new Map([
  ['TEXT', text],
  ['MTEXT', text],
  ['RTEXT', text],
  ['ATTRIB', text],
  ['ATTDEF', text],
  ['ARCALIGNEDTEXT', text],
  ['DIMENSION', dimension],
  ['ARC_DIMENSION', dimension],
  ['LARGE_RADIAL_DIMENSION', dimension],
  ['LEADER', dimension],
  ['MULTILEADER', dimension],
  ['TOLERANCE', dimension],
  ['HATCH', filling],
  ['MPOLYGON', filling],
  ['SOLID', filling],
  ['TRACE', filling],
  ['WIPEOUT', filling],
  ['POINT', 'point'],
  ['XLINE', endless],
  ['RAY', endless],
  ['REGION', body],
  ['3DSOLID', body],
  ['BODY', body],
  ['SURFACE', body],
  ['3DFACE', body],
  ['MESH', body],
  ['HELIX', 'curve in space'],
  ['SHAPE', 'shape of a font file'],
  ['ACAD_TABLE', 'table'],
  ['IMAGE', picture],
  ['VIEWPORT', picture],
  ['OLEFRAME', picture],
  ['OLE2FRAME', picture],
  ['VERTEX', 'vertex without a polyline'],
]);
