import { jobFileEnding } from '../../core/job';
import { materialsFileEnding } from '../../core/materials-file';
import { styleFileEnding } from '../../core/program-style';
import { technologyFileEnding } from '../../core/technology';
import type { OwnFileKind } from '../contract/host-api';

/** How the files of ours are called and what they end in. */
export interface OwnFileWords {
  /** As a dialog lists it: "Diewright job". */
  readonly name: string;
  /** The dialog's title. */
  readonly title: string;
  readonly ending: string;
  /** The name of a file that has none. */
  readonly stem: string;
}

export const ownFiles: Readonly<Record<OwnFileKind | 'job', OwnFileWords>> = {
  job: { name: 'Diewright job', title: 'Save the job', ending: jobFileEnding, stem: 'job' },
  technology: {
    name: 'Diewright technology table',
    title: 'Save the technology table',
    ending: technologyFileEnding,
    stem: 'technology',
  },
  style: {
    name: 'Diewright program style',
    title: 'Save the program style',
    ending: styleFileEnding,
    stem: 'style',
  },
  materials: {
    name: 'Diewright materials',
    title: 'Save the own materials',
    ending: materialsFileEnding,
    stem: 'materials',
  },
};

/** A name as typed, with the ending that it has to have. */
export function withEnding(name: string, ending: string): string {
  if (name.toLowerCase().endsWith(ending)) return name;
  const own = ending.split('.').slice(1, -1).join('.');
  return `${name.replace(new RegExp(`\\.(json|${own})$`, 'i'), '')}${ending}`;
}
