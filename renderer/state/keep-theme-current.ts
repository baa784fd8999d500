import type { AppState, ThemeChoice } from './app-state';
import type { App } from './app-store';

const darkQuery = '(prefers-color-scheme: dark)';

/** Puts the theme onto the page, follows the system's where that is the choice, and remembers the choice. */
export function keepThemeCurrent(app: App, page: Window): void {
  const system = page.matchMedia(darkQuery);
  const show = ({ theme }: AppState) => {
    const shownTheme = shownAs(theme, system.matches);
    page.document.documentElement.dataset['theme'] = shownTheme;
    if (app.store.getState().shownTheme !== shownTheme) app.store.setState({ shownTheme });
  };
  app.store.setState({ theme: rememberedTheme(page) });
  show(app.store.getState());
  system.addEventListener('change', () => show(app.store.getState()));
  app.store.subscribe((state, before) => {
    if (state.theme === before.theme) return;
    page.localStorage.setItem(themeKey, state.theme);
    show(state);
  });
}

const themeKey = 'diewright.theme';

const shownAs = (theme: ThemeChoice, systemIsDark: boolean): 'light' | 'dark' =>
  theme === 'system' ? (systemIsDark ? 'dark' : 'light') : theme;

function rememberedTheme(page: Window): ThemeChoice {
  const remembered = page.localStorage.getItem(themeKey);
  return remembered === 'light' || remembered === 'dark' ? remembered : 'system';
}
