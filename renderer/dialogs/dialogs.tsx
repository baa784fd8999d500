import { useAppState } from '../state/use-app';
import { AboutDialog } from './about-dialog';
import { ClashDialog } from './clash-dialog';
import { DistrustDialog } from './distrust-dialog';
import { KeysDialog } from './keys-dialog';
import { LeftOverDialog } from './left-over-dialog';
import { StockDialog } from '../dieset/stock-dialog';
import { TechnologyDialog } from '../technology/technology-dialog';
import { UnitsDialog } from './units-dialog';
import { UnsavedDialog } from './unsaved-dialog';
import { VerdictDialog } from './verdict-dialog';

/** Whatever asks or tells something over the window; one at a time. */
export function Dialogs() {
  const waiting = useAppState((state) => state.waiting);
  const unitAsked = useAppState((state) => state.unitAsked);
  const survey = useAppState((state) => state.survey);
  const dialog = useAppState((state) => state.dialog);
  const clash = useAppState((state) => state.clash);
  const leftOver = useAppState((state) => state.leftOver);
  const verified = useAppState((state) => state.verified);
  const distrust = useAppState((state) => state.distrust);
  if (clash) return <ClashDialog problem={clash} />;
  if (waiting) return <UnsavedDialog file={waiting} />;
  if (verified) return <VerdictDialog name={verified.name} verdict={verified.verdict} />;
  if (distrust) return <DistrustDialog opened={distrust} />;
  if (leftOver.length > 0) return <LeftOverDialog drafts={leftOver} />;
  if (unitAsked && survey) return <UnitsDialog candidates={survey.units} />;
  if (dialog === 'about') return <AboutDialog />;
  if (dialog === 'keys') return <KeysDialog />;
  if (dialog === 'technology') return <TechnologyDialog />;
  if (dialog === 'stock') return <StockDialog />;
  return null;
}
