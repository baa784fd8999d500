import { stockMaterials } from '../../core/die/stock-materials';
import { magnifications } from '../../core/output/magnifications';
import { shippedStyles } from '../../core/shipped-styles';
import { drawingUnits } from '../../core/units';

/** What `diewright --help` prints. */
export function helpText(): string {
  return [
    'diewright FILE --out FOLDER [options]',
    'diewright verify JOB PROGRAM ...',
    '',
    'FILE is a drawing (.dxf; .svg; .csv or .txt with a point x, y on each line) or a job (.diewright.json). Writes the',
    'paths of punch and die, one program for each member, the findings, the sheets as PDF and the job into FOLDER, and',
    'prints the summary. Options change what the job says.',
    '',
    '  --out FOLDER          where the files go; made if it is not there',
    '  --name NAME           name of the job, and of its files',
    '  --unit UNIT           unit of the drawing, where it states none or a wrong one:',
    `                        ${Object.keys(drawingUnits).join(', ')}`,
    '  --gap-tolerance L     end points nearer than this are joined',
    '  --material ID         stock:',
    ...stockMaterials.map(({ id, name }) => `                        ${id} (${name})`),
    '  --thickness L         stock thickness',
    '  --clearance L|P%|table  clearance per side: a length, a share of the thickness, or the table value',
    '  --technology FILE     technology table (.diewright-technology.json): passes by wire and height, machine, price',
    '  --die-height L        height of the block that dies are cut from',
    '  --punch-height L      height of the block that punches are cut from',
    '  --land L              straight land of the die below its cutting edge',
    '  --relief A|none       relief of the die below its land, degrees per side',
    '  --taper A             the die tapered from its cutting edge instead, degrees per side',
    '  --tool KIND           simple (separate tools), two-stations or compound',
    '  --strip 1|2|none      blanks on the strip: one or two up',
    '  --stripper FIT|none   stripper with this running fit on the punches: a length per side, or classes such as H7/f7',
    '  --retainer FIT|none   punch retainer with this fit; a length below zero presses: --retainer=-0.005mm',
    '  --wire L              wire diameter',
    '  --program KIND        centre (path of the wire centre) or compensated (contour with G41/G42)',
    `  --style NAME|FILE     how programs are written: ${Object.keys(shippedStyles).join(', ')}, or a .diewright-style.json`,
    '                        file; samples/ has one with a comment beside every value',
    '  --output-unit UNIT    mm or inch',
    '  --revision TEXT       stated on every sheet, as is',
    '  --date TEXT           the date; the program knows no clock',
    '  --page A4|letter      page size of the sheets',
    `  --charts N,N          overlay charts of the part, so many times as large: ${magnifications.join(', ')}`,
    '',
    'L is a length: 0.25, 0.25mm, 0.010in, 1/64in; a bare number is mm.',
    '',
    'verify: whether programs on disk are still those that the job gives: unchanged since their release, and the job',
    'unchanged in all that they say. One line each; ends with 0 if all belong, 2 if one does not.',
    '',
    'Ends with 0: released. 1: something in the input is wrong, one line says what. 2: draft, findings are open.',
    '70: a mistake in the program.',
    '',
  ].join('\n');
}
