import { useEffect, useRef, useState, type KeyboardEvent } from 'react';
import { goToLine } from '../replay/play';
import { currentLine } from '../replay/replay';
import type { ShownProgram } from '../replay/shown-program';
import { hoverTarget } from '../state/select-target';
import { useApp, useAppState } from '../state/use-app';

/** Pixels; the style sheet has the same. */
const rowHeight = 20;

/** Rows made above and below what is seen. */
const margin = 8;

/**
 * The program's text, only the lines that are seen and a few more made as rows. The line that the wire is on is picked
 * out and kept in sight; a click, or an arrow key, goes to a line's place.
 */
export function ProgramList({ program }: { program: ShownProgram }) {
  const app = useApp();
  const frame = useRef<HTMLDivElement>(null);
  const [seen, setSeen] = useState({ top: 0, height: 400 });
  const current = useAppState(({ selected, replay }) =>
    selected?.kind === 'line' ? selected.line : currentLine(replay),
  );
  const hovered = useAppState((state) => (state.hovered?.kind === 'line' ? state.hovered.line : null));
  useMeasuredHeight(frame, (height) => setSeen((before) => ({ ...before, height })));
  useLineInSight(frame, current);
  const { lines } = program;
  const first = Math.max(0, Math.floor(seen.top / rowHeight) - margin);
  const end = Math.min(lines.length, Math.ceil((seen.top + seen.height) / rowHeight) + margin);
  const onKeyDown = (event: KeyboardEvent) => {
    const next = lineForKey(event.key, current ?? 1, lines.length, Math.floor(seen.height / rowHeight));
    if (next === null || event.ctrlKey || event.metaKey || event.altKey) return;
    event.preventDefault();
    goToLine(app, next);
  };
  return (
    <div
      ref={frame}
      className="program"
      role="listbox"
      aria-label="Program"
      aria-activedescendant={current === null ? undefined : rowId(current)}
      tabIndex={0}
      onKeyDown={onKeyDown}
      onScroll={(event) => {
        const { scrollTop } = event.currentTarget;
        setSeen((before) => ({ ...before, top: scrollTop }));
      }}
      onPointerLeave={() => hoverTarget(app, null)}
    >
      <svg className="program-gap" width="1" height={first * rowHeight} aria-hidden="true" />
      {lines.slice(first, end).map((text, index) => (
        <Row
          key={first + index}
          line={first + index + 1}
          text={text}
          count={lines.length}
          isCurrent={current === first + index + 1}
          isHovered={hovered === first + index + 1}
        />
      ))}
      <svg className="program-gap" width="1" height={(lines.length - end) * rowHeight} aria-hidden="true" />
    </div>
  );
}

interface RowProps {
  readonly line: number;
  readonly text: string;
  readonly count: number;
  readonly isCurrent: boolean;
  readonly isHovered: boolean;
}

function Row({ line, text, count, isCurrent, isHovered }: RowProps) {
  const app = useApp();
  return (
    <div
      id={rowId(line)}
      className="program-row"
      role="option"
      aria-selected={isCurrent}
      aria-posinset={line}
      aria-setsize={count}
      data-hovered={isHovered || undefined}
      data-comment={/^\s*[(;]/.test(text) || undefined}
      onPointerEnter={() => hoverTarget(app, { kind: 'line', line })}
      onClick={() => goToLine(app, line)}
    >
      <span className="program-number" aria-hidden="true">
        {line}
      </span>
      <code>{text}</code>
    </div>
  );
}

const rowId = (line: number): string => `program-line-${line}`;

/** Where a key leads from a line; null where it leads nowhere. */
function lineForKey(key: string, line: number, count: number, page: number): number | null {
  const steps: Readonly<Record<string, number>> = {
    ArrowUp: -1,
    ArrowDown: 1,
    PageUp: -page,
    PageDown: page,
    Home: -Infinity,
    End: Infinity,
  };
  const step = steps[key];
  return step === undefined ? null : Math.min(count, Math.max(1, line + step));
}

function useMeasuredHeight(
  frame: React.RefObject<HTMLDivElement | null>,
  take: (height: number) => void,
): void {
  useEffect(() => {
    const element = frame.current;
    if (!element) return undefined;
    const watcher = new ResizeObserver(() => take(element.clientHeight));
    watcher.observe(element);
    return () => watcher.disconnect();
  }, [frame]);
}

/** Scrolls no farther than it takes to see the line with its neighbours. */
function useLineInSight(frame: React.RefObject<HTMLDivElement | null>, line: number | null): void {
  useEffect(() => {
    const element = frame.current;
    if (!element || line === null) return;
    const top = (line - 1) * rowHeight;
    const room = Math.min(3 * rowHeight, element.clientHeight / 3);
    if (top - room < element.scrollTop) element.scrollTop = top - room;
    else if (top + rowHeight + room > element.scrollTop + element.clientHeight) {
      element.scrollTop = top + rowHeight + room - element.clientHeight;
    }
  }, [frame, line]);
}
