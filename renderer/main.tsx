import './style/tokens.css';
import './style/base.css';
import './style/bar.css';
import './style/job-line.css';
import './style/canvas.css';
import './style/review.css';
import './style/cut.css';
import './style/drawing.css';
import './style/technology.css';
import './style/die-set.css';
import './style/inspect.css';
import './style/overlays.css';
import { createRoot } from 'react-dom/client';
import { invariant } from '../core/problem';
import { Window } from './app';
import { pickHost } from './host/host';
import { keepPlaying } from './replay/keep-playing';
import { keepProgramCurrent } from './replay/keep-program-current';
import { isChanged } from './state/app-state';
import { createApp } from './state/app-store';
import { keepDraftCurrent } from './state/keep-draft-current';
import { keepInspectionCurrent } from './state/keep-inspection-current';
import { keepPlanCurrent } from './state/keep-plan-current';
import { keepThemeCurrent } from './state/keep-theme-current';
import { openFile } from './state/open-file';
import { AppContext } from './state/use-app';
import { CoreClient } from './worker/core-client';
import { startWorker } from './worker/start-worker';

const app = createApp(pickHost(window), new CoreClient(startWorker));
keepThemeCurrent(app, window);
keepPlanCurrent(app);
keepInspectionCurrent(app);
keepDraftCurrent(app);
keepProgramCurrent(app);
keepPlaying(app, window);

window.addEventListener('beforeunload', (event) => {
  if (isChanged(app.store.getState())) event.preventDefault();
});

const place = document.getElementById('window');
invariant(place, 'the page has no place for the window');
createRoot(place).render(
  <AppContext value={app}>
    <Window />
  </AppContext>,
);

app.core.warmUp();

const opened = await app.host.openedAtStart();
if (opened?.ok) openFile(app, opened.value);
else if (opened) app.store.setState({ trouble: opened.problem });

const left = await app.host.leftOver();
if (left.ok) app.store.setState({ leftOver: left.value });
