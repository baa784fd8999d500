import { CircleStop } from 'lucide-react';
import { failed } from '../../../core/problem';
import type { Command } from '../command';

/** The code of the problem that stands while a calculation is stopped. */
export const stoppedCode = 'calculation-stopped-by-hand';

export const stopCalculationCommand: Command = {
  id: 'stop',
  group: 'Edit',
  label: () => 'Stop the calculation',
  shortcuts: ['Shift+Escape'],
  icon: CircleStop,
  enabled: ({ progress }) => progress !== null,
  run: ({ store, core }) => {
    const { progress } = store.getState();
    core.stop();
    const { problem } = failed(
      stoppedCode,
      'The calculation was stopped',
      progress?.step ?? '',
      'Go on with it, change the job, or open another file.',
    );
    store.setState({ progress: null, problem, said: 'Stopped' });
  },
};
