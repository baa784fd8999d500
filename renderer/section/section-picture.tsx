import type { ToolSheet } from '../../core/die/die-set';
import type { SectionPiece, ToolSection } from '../../core/die/tool-section';
import { formatLength } from '../../core/units';
import { useAppState } from '../state/use-app';

export interface SectionPictureProps {
  readonly sheet: ToolSheet;
  readonly section: ToolSection;
  /** Per side, mm. */
  readonly clearance: number;
  /** How many times larger than they are clearance and relief are drawn. */
  readonly exaggeration: number;
}

/** Heights in the picture's own units; widths are the tool's, scaled to fit. */
const tall = { punch: 46, gap: 5, stock: 7, die: 44, retainer: 14, stripper: 10 } as const;
const wide = 400;

/** Where a piece of steel stands: its upper and its lower edge, and which way it cuts. */
interface Bar {
  readonly top: number;
  readonly bottom: number;
}

/** One tool cut open: what comes down above the stock, what it comes down on below. */
export function SectionPicture({ sheet, section, clearance, exaggeration }: SectionPictureProps) {
  const unit = useAppState((state) => state.unit);
  const { whole, upper, lower, isDieUp } = section;
  const { land, height, exit } = sheet.block;
  const scale = wide / (whole.to - whole.from);
  const x = (mm: number) => (mm - whole.from) * scale;
  const above = isDieUp ? tall.die : tall.punch;
  const stockTop = above + tall.gap;
  const below = stockTop + tall.stock;
  const bottom = below + (isDieUp ? tall.punch : tall.die);
  const barOf = ({ steel }: SectionPiece, isUpper: boolean): Bar => {
    const [far, edge] = isUpper ? [0, above] : [bottom, below];
    const away = Math.sign(edge - far);
    if (steel === 'retainer') return sorted(far, far + away * tall.retainer);
    if (steel === 'stripper') return sorted(edge - away * tall.gap, edge - away * (tall.gap + tall.stripper));
    return sorted(far, edge);
  };
  const shape = (piece: SectionPiece, isUpper: boolean): string => {
    const { top, bottom: low } = barOf(piece, isUpper);
    const { steel, from, to } = piece;
    // A punch drawn narrower shows the clearance; a piece of the die stays as it is.
    const inset = steel === 'punch' ? Math.min((exaggeration - 1) * clearance, (to - from) / 2.5) : 0;
    const [left, right] = [x(from + inset), Math.max(x(to - inset), x(from + inset) + 0.5)];
    if (steel !== 'die' || exit === 0) return `M${left} ${top}H${right}V${low}H${left}Z`;
    const [edge, far] = isUpper ? [low, top] : [top, low];
    const ends = edge + (far - edge) * Math.min(1, land / height);
    const widens = Math.min(exaggeration * exit, (to - from) / 2.5) * scale;
    // The block's own sides stay upright.
    const leftFar = from > whole.from ? left + widens : left;
    const rightFar = to < whole.to ? right - widens : right;
    return `M${left} ${edge}H${right}V${ends}L${rightFar} ${far}H${leftFar}L${left} ${ends}Z`;
  };
  const drawn = [
    ...upper.map((piece) => ({ steel: piece.steel, path: shape(piece, true) })),
    ...lower.map((piece) => ({ steel: piece.steel, path: shape(piece, false) })),
  ];
  return (
    <figure className="section-picture">
      <svg
        viewBox={`-2 -2 ${wide + 4} ${bottom + 4}`}
        role="img"
        aria-label={`Section of the ${sheet.tool.name.toLowerCase()}`}
      >
        <rect className="section-stock" x={0} y={stockTop} width={wide} height={tall.stock} />
        {drawn.map(({ steel, path }, k) => (
          <path key={k} className={`section-${steel}`} d={path} />
        ))}
      </svg>
      <figcaption>
        {sheet.tool.name}: {isDieUp ? 'die above, punch below' : 'punch above, die below'}, clearance{' '}
        {formatLength(clearance, unit)} per side
      </figcaption>
    </figure>
  );
}

const sorted = (a: number, b: number): Bar => ({ top: Math.min(a, b), bottom: Math.max(a, b) });
