import { ZoomIn, ZoomOut } from 'lucide-react';
import type { App } from '../app-store';
import type { Command } from '../command';
import { zoomedAbout } from '../viewport';

export const zoomInCommand: Command = {
  id: 'zoom-in',
  group: 'View',
  label: () => 'Zoom in',
  shortcuts: ['Plus', '='],
  icon: ZoomIn,
  enabled: ({ made, survey }) => made !== null || survey !== null,
  run: (app) => zoomBy(app, step),
};

export const zoomOutCommand: Command = {
  id: 'zoom-out',
  group: 'View',
  label: () => 'Zoom out',
  shortcuts: ['-'],
  icon: ZoomOut,
  enabled: ({ made, survey }) => made !== null || survey !== null,
  run: (app) => zoomBy(app, 1 / step),
};

const step = 1.5;

function zoomBy({ store }: App, factor: number): void {
  const { viewport, canvasSize } = store.getState();
  const middle = { x: canvasSize.width / 2, y: canvasSize.height / 2 };
  store.setState({ viewport: zoomedAbout(viewport, canvasSize, middle, factor) });
}
