import { Play } from 'lucide-react';
import { jobOf } from '../app-state';
import type { Command } from '../command';
import { makePlan } from '../make-plan';
import { stoppedCode } from './stop-calculation';

export const goOnCommand: Command = {
  id: 'go-on',
  group: 'Edit',
  label: () => 'Go on with the calculation',
  shortcuts: [],
  icon: Play,
  enabled: ({ problem }) => problem?.code === stoppedCode,
  run: async (app) => {
    const job = jobOf(app.store.getState());
    app.store.setState({ problem: null });
    if (job) await makePlan(app, job);
  },
};
