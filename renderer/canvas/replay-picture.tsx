import { useCallback, useMemo } from 'react';
import type { Context } from 'konva/lib/Context';
import { Shape } from 'react-konva';
import { currentLine } from '../replay/replay';
import { placeAt } from '../replay/timeline';
import { useAppState } from '../state/use-app';
import type { View } from './drawing-space';
import { drawLineMoves, drawWire } from './layers/draw-wire';
import { RemovedStock } from './removed-stock';

/** The cut as it is played: the block, what the wire has taken out of it, and the wire. */
export function ReplayPicture({ view }: { view: View }) {
  const replay = useAppState((state) => state.replay);
  const selected = useAppState((state) => state.selected);
  const hovered = useAppState((state) => state.hovered);
  const hidden = useAppState((state) => state.hidden);
  const removed = useMemo(() => new RemovedStock(), []);
  const draw = useCallback(
    ({ _context: context }: Context) => {
      const { program, time } = replay;
      if (!program) return;
      const { timeline } = program;
      if (!hidden.includes('block')) removed.draw(context, view, program, time);
      if (!hidden.includes('path')) {
        drawLineMoves(context, view, timeline, hovered?.kind === 'line' ? hovered.line : null, 4);
        const line = selected?.kind === 'line' ? selected.line : currentLine(replay);
        drawLineMoves(context, view, timeline, line, 2.5);
      }
      drawWire(context, view, program, placeAt(timeline, time));
    },
    [replay, view, hidden, hovered, selected, removed],
  );
  return <Shape listening={false} sceneFunc={draw} />;
}
