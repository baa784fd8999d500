import { useEffect, useState } from 'react';
import { fileOfBrowser } from './host/choose-file';
import type { App } from './state/app-store';
import { importPoints } from './state/import-points';
import { openFile } from './state/open-file';

/** Takes files dropped anywhere in the window; true while one is held over it. */
export function useDroppedFile(app: App): boolean {
  const [isOver, setOver] = useState(false);
  useEffect(() => {
    const stop = new AbortController();
    const { signal } = stop;
    window.addEventListener(
      'dragover',
      (event) => {
        // Without this the browser would leave the page for the file.
        event.preventDefault();
        setOver(event.dataTransfer?.types.includes('Files') ?? false);
      },
      { signal },
    );
    window.addEventListener(
      'dragleave',
      (event) => {
        if (event.relatedTarget === null) setOver(false);
      },
      { signal },
    );
    window.addEventListener(
      'drop',
      (event) => {
        event.preventDefault();
        setOver(false);
        void openDropped(app, [...(event.dataTransfer?.files ?? [])]);
      },
      { signal },
    );
    return () => stop.abort();
  }, [app]);
  return isOver;
}

async function openDropped(app: App, files: readonly File[]): Promise<void> {
  const [file] = files;
  if (!file) return;
  if (files.length > 1) {
    app.store.setState({
      trouble: {
        code: 'several-files',
        what: `${files.length} files were dropped at once`,
        where: files.map(({ name }) => name).join(', '),
        whatToDo: 'Drop one drawing or job file; each is a job of its own.',
      },
    });
    return;
  }
  const { pane, inspect } = app.store.getState();
  // Where measured points are looked at, a list of points is one of them and no drawing.
  const isMeasured =
    pane === 'inspect' && inspect.section === 'points' && !/\.(dxf|svg|json)$/i.test(file.name);
  const opened = await fileOfBrowser(file);
  if (isMeasured) importPoints(app, opened);
  else openFile(app, opened);
}
