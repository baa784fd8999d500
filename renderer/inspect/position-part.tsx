import type { Motion } from '../../core/inspect/motion';
import { noMotion } from '../../core/inspect/motion';
import { boxAround, contourBox } from '../../core/geometry/contour-measures';
import { degrees, formatLength, formatLengthNumber } from '../../core/units';
import { AngleInput } from '../controls/angle-input';
import { LengthInput } from '../controls/length-input';
import { Part } from '../drawing/part';
import type { App } from '../state/app-store';
import { inspectedPair } from '../state/inspected-pair';
import { setInspect } from '../state/set-inspect';
import { useApp, useAppState } from '../state/use-app';

/** Where the punch stands in the die: shifted and turned by what is typed, or where the clearance is most even. */
export function PositionPart() {
  const app = useApp();
  const { motion, busy } = useAppState((state) => state.inspect);
  const isMoved = isSeen(motion);
  const move = (change: Partial<Motion>) =>
    setInspect(app, { motion: { ...aboutMiddle(app, motion), ...change } });
  return (
    <Part title="Position of the punch" aside={isMoved ? 'moved' : 'as designed'}>
      <p className="part-line">
        Shifted by x{' '}
        <LengthInput label="Shift in x" mayBeNegative value={motion.dx} onCommit={(dx) => move({ dx })} />, y{' '}
        <LengthInput label="Shift in y" mayBeNegative value={motion.dy} onCommit={(dy) => move({ dy })} />,
        turned by <AngleInput label="Turn" value={motion.turn} onCommit={(turn) => move({ turn })} />
      </p>
      <div className="inspect-buttons">
        <button
          type="button"
          className="button button-small"
          disabled={busy}
          onClick={() => void makeEven(app)}
        >
          Most even position
        </button>
        <button
          type="button"
          className="button button-small"
          disabled={!isMoved}
          onClick={() => setInspect(app, { motion: noMotion })}
        >
          As designed
        </button>
      </div>
    </Part>
  );
}

/** Whether what is shown of a motion differs from none. */
const isSeen = ({ dx, dy, turn }: Motion): boolean =>
  [dx, dy].some((mm) => formatLengthNumber(mm, 'inch') !== '0') ||
  degrees(turn).toFixed(4).replace('-', '') !== '0.0000';

/** Turns are about the middle of the punch. */
function aboutMiddle({ store }: App, motion: Motion): Motion {
  const punch = inspectedPair(store.getState())?.punch.asCut ?? [];
  const box = punch.map(contourBox).reduce(boxAround, contourBox([]));
  if (punch.length === 0) return motion;
  return { ...motion, about: { x: (box.minX + box.maxX) / 2, y: (box.minY + box.maxY) / 2 } };
}

async function makeEven(app: App): Promise<void> {
  const state = app.store.getState();
  const pair = inspectedPair(state);
  if (!state.made || !pair) return;
  setInspect(app, { busy: true });
  const motion = aboutMiddle(app, state.inspect.motion);
  const found = await app.core.evenPosition(state.made.job, { contourId: pair.contourId, motion });
  setInspect(app, { busy: false });
  if (!found.ok) {
    app.store.setState({ trouble: found.problem });
    return;
  }
  setInspect(app, { motion: found.value.motion });
  app.store.setState({
    said: `Most even position: least clearance ${formatLength(found.value.least, state.unit)}`,
  });
}
