import { Tabs } from 'radix-ui';
import { CutPane } from './cut/cut-pane';
import { DieSetPane } from './dieset/die-set-pane';
import { DrawingPane } from './drawing/drawing-pane';
import { InspectPane } from './inspect/inspect-pane';
import { ReviewList } from './review/review-list';
import type { Pane } from './state/app-state';
import { openFindings } from './state/open-findings';
import { useApp, useAppState } from './state/use-app';

/** Beside the picture: what has to be settled, how the drawing is read and cut, the die set, and how punch and die fit. */
export function SidePane() {
  const { store } = useApp();
  const pane = useAppState((state) => state.pane);
  const open = useAppState((state) => openFindings(state).length);
  return (
    <Tabs.Root
      className="side"
      value={pane}
      onValueChange={(chosen) => store.setState({ pane: chosen as Pane, hovered: null })}
    >
      <Tabs.List className="side-tabs" aria-label="Beside the picture">
        <Tabs.Trigger className="side-tab" value="review">
          Review{open > 0 && <span className="side-count">{open}</span>}
        </Tabs.Trigger>
        <Tabs.Trigger className="side-tab" value="cut">
          Cut
        </Tabs.Trigger>
        <Tabs.Trigger className="side-tab" value="drawing">
          Drawing
        </Tabs.Trigger>
        <Tabs.Trigger className="side-tab" value="die-set">
          Die set
        </Tabs.Trigger>
        <Tabs.Trigger className="side-tab" value="inspect">
          Inspect
        </Tabs.Trigger>
      </Tabs.List>
      <Tabs.Content className="side-content" value="review" tabIndex={-1}>
        <ReviewList />
      </Tabs.Content>
      <Tabs.Content className="side-content" value="cut" tabIndex={-1}>
        <CutPane />
      </Tabs.Content>
      <Tabs.Content className="side-content" value="drawing" tabIndex={-1}>
        <DrawingPane />
      </Tabs.Content>
      <Tabs.Content className="side-content" value="die-set" tabIndex={-1}>
        <DieSetPane />
      </Tabs.Content>
      <Tabs.Content className="side-content" value="inspect" tabIndex={-1}>
        <InspectPane />
      </Tabs.Content>
    </Tabs.Root>
  );
}
