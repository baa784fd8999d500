import { Tooltip } from 'radix-ui';
import { useEffect } from 'react';
import { StatusLine } from './bar/status-line';
import { TopBar } from './bar/top-bar';
import { CanvasPane } from './canvas/canvas-pane';
import { PlayBar } from './cut/play-bar';
import { Dialogs } from './dialogs/dialogs';
import { EmptyPage } from './dialogs/empty-page';
import { ProblemBanner } from './dialogs/problem-banner';
import { ClearanceStrip } from './inspect/clearance-strip';
import { JobLine } from './jobline/job-line';
import { SectionStrip } from './section/section-strip';
import { SidePane } from './side-pane';
import { isChanged, jobOf, type AppState } from './state/app-state';
import { useApp, useAppState } from './state/use-app';
import { useCommandKeys } from './use-command-keys';
import { useCopiedTable } from './use-copied-table';
import { useDroppedFile } from './use-dropped-file';

/** Lays out the window: bar, job line, picture with what plays or cuts below it beside the panes, status line. */
export function Window() {
  const app = useApp();
  useCommandKeys(app);
  useCopiedTable(app);
  const isOver = useDroppedFile(app);
  const hasJob = useAppState((state) => state.history !== null);
  const title = useAppState(windowTitle);
  useEffect(() => {
    document.title = title;
  }, [title]);
  return (
    <Tooltip.Provider delayDuration={500}>
      <div className="window" data-over={isOver}>
        <TopBar />
        <JobLine />
        <ProblemBanner />
        {hasJob ? (
          <main className="work">
            <div className="picture-side">
              <CanvasPane />
              <PlayBar />
              <SectionStrip />
              <ClearanceStrip />
            </div>
            <SidePane />
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

/** As task switchers show it: the job first, a dot before it while it is not saved. */
function windowTitle(state: AppState): string {
  const job = jobOf(state);
  return job ? `${isChanged(state) ? '• ' : ''}${job.name} – Diewright` : 'Diewright';
}
