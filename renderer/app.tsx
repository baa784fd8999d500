import { Tooltip } from 'radix-ui';
import { StatusLine } from './bar/status-line';
import { TopBar } from './bar/top-bar';
import { CanvasPane } from './canvas/canvas-pane';
import { Dialogs } from './dialogs/dialogs';
import { EmptyPage } from './dialogs/empty-page';
import { ProblemBanner } from './dialogs/problem-banner';
import { JobLine } from './jobline/job-line';
import { ReviewList } from './review/review-list';
import { useApp, useAppState } from './state/use-app';
import { useCommandKeys } from './use-command-keys';
import { useDroppedFile } from './use-dropped-file';

/** Lays out the window: bar, job line, picture beside review list, status line. */
export function Window() {
  const app = useApp();
  useCommandKeys(app);
  const isOver = useDroppedFile(app);
  const hasJob = useAppState((state) => state.history !== null);
  return (
    <Tooltip.Provider delayDuration={500}>
      <div className="window" data-over={isOver}>
        <TopBar />
        <JobLine />
        <ProblemBanner />
        {hasJob ? (
          <main className="work">
            <CanvasPane />
            <ReviewList />
          </main>
        ) : (
          <EmptyPage />
        )}
        <StatusLine />
      </div>
      <Dialogs />
    </Tooltip.Provider>
  );
}
