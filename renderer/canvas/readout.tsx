import { membersOfPair } from '../../core/wire/members-of';
import { formatLength, formatLengthNumber } from '../../core/units';
import { widthAcross } from '../picture/width-across';
import { memberWord } from '../picture/member-word';
import { drawingOf, type AppState } from '../state/app-state';
import { useAppState } from '../state/use-app';

/** Where the pointer is, and what it is on. */
export function Readout() {
  const pointer = useAppState((state) => state.pointer);
  const unit = useAppState((state) => state.unit);
  const words = useAppState(hoveredWords);
  return (
    <div className="readout" aria-hidden="true">
      {words && <span className="readout-words">{words}</span>}
      {pointer && (
        <span className="readout-place">
          x {formatLengthNumber(rounded(pointer.x), unit)} y {formatLengthNumber(rounded(pointer.y), unit)}{' '}
          {unit === 'inch' ? 'in' : 'mm'}
        </span>
      )}
    </div>
  );
}

/** µm are enough for a place under a pointer. */
const rounded = (mm: number): number => Math.round(mm * 1000) / 1000;

function hoveredWords(state: AppState): string {
  const { hovered, made, pointer, unit } = state;
  if (hovered?.kind === 'contour') {
    const aside = drawingOf(state)?.leftOut.find(({ id }) => id === hovered.id);
    return aside ? `Contour ${aside.id}, left out: ${aside.reason}` : `Contour ${hovered.id}`;
  }
  if (!hovered || !made) return '';
  if (hovered.kind === 'finding') {
    return made.plan.findings.find(({ key }) => key === hovered.key)?.title ?? '';
  }
  if (hovered.kind !== 'member') return '';
  const pair = made.plan.pairs.find((one) => membersOfPair(one).some(({ id }) => id === hovered.id));
  const member = pair && membersOfPair(pair).find(({ id }) => id === hovered.id);
  if (!pair || !member) return '';
  const width = pointer && widthAcross(member, pointer);
  const across = width === null ? '' : `, ${formatLength(rounded(width), unit)} across here`;
  return `${memberWord(pair, member)} of contour ${pair.contourId}${across}`;
}
