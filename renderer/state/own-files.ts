import {
  materialsFileEnding,
  materialsFormat,
  mergedMaterials,
  readMaterialsFile,
  writeMaterialsFile,
} from '../../core/materials-file';
import { styleFileEnding, styleFormat } from '../../core/program-style';
import { failed, type Problem, type Result } from '../../core/problem';
import { readStyleFile } from '../../core/style-file';
import { technologyFileEnding, technologyFormat } from '../../core/technology';
import { readTechnologyFile, writeTechnologyFile } from '../../core/technology-file';
import { writeStyleFile } from '../../core/write-style-file';
import type { HostFile, OwnFileKind, SaveOwnFileRequest } from '../../electron/contract/host-api';
import { jobOf } from './app-state';
import type { App } from './app-store';
import { setOutput } from './edits/set-output';
import { setOwnMaterials } from './edits/set-own-materials';
import { setTechnology } from './edits/set-technology';
import { editJob } from './job-edit';

/** Whether a file is a technology table, a program style or materials, by its name: these change the open job. */
export function ownFileKind(name: string): OwnFileKind | null {
  const lower = name.toLowerCase();
  if (lower.endsWith(styleFileEnding)) return 'style';
  if (lower.endsWith(materialsFileEnding)) return 'materials';
  return lower.endsWith(technologyFileEnding) ? 'technology' : null;
}

/**
 * Takes a technology table, a program style or materials into the open job; the problem where that cannot be done. What the file
 * is, it says itself; `wanted` is what a file that says nothing was meant to be.
 */
export function takeOwnFile(app: App, file: HostFile, wanted: OwnFileKind): Problem | null {
  const job = jobOf(app.store.getState());
  if (!job) {
    return failed(
      'no-job',
      'A technology table, a program style or a file of materials belongs to a job, and none is open',
      file.name,
      'Open the drawing or the job first.',
    ).problem;
  }
  const text = textOf(file);
  if (text === null) {
    return failed('file-not-text', 'The file is not text in UTF-8', file.name, 'Open it as it was saved.')
      .problem;
  }
  switch (kindOf(text, wanted)) {
    case 'style':
      return take(readStyleFile(text), file, (style) => editJob(app, setOutput, { style }));
    case 'materials':
      return take(readMaterialsFile(text), file, (more) =>
        editJob(app, setOwnMaterials, {
          materials: mergedMaterials(job.ownMaterials, more),
          say: `Materials of ${file.name}`,
        }),
      );
    case 'technology':
      return take(readTechnologyFile(text), file, (technology) =>
        editJob(app, setTechnology, { technology, say: `Technology table ${technology.name}` }),
      );
  }
}

/** Asks for such a file and takes it in. What goes wrong is the window's trouble. */
export async function openOwnFile(app: App, wanted: OwnFileKind): Promise<void> {
  const reply = await app.host.chooseFile();
  if (reply === null) return;
  const trouble = reply.ok ? takeOwnFile(app, reply.value, wanted) : reply.problem;
  app.store.setState({ trouble });
}

export async function saveTechnology(app: App): Promise<void> {
  const technology = jobOf(app.store.getState())?.technology;
  if (!technology) return;
  await save(app, {
    kind: 'technology',
    suggestedName: `${technology.name}${technologyFileEnding}`,
    text: writeTechnologyFile(technology),
  });
}

export async function saveMaterials(app: App): Promise<void> {
  const job = jobOf(app.store.getState());
  if (!job) return;
  await save(app, {
    kind: 'materials',
    suggestedName: `materials${materialsFileEnding}`,
    text: writeMaterialsFile(job.ownMaterials),
  });
}

export async function saveStyle(app: App): Promise<void> {
  const style = jobOf(app.store.getState())?.output.style;
  if (!style) return;
  await save(app, {
    kind: 'style',
    suggestedName: `${style.name}${styleFileEnding}`,
    text: writeStyleFile(style),
  });
}

async function save({ host, store }: App, request: SaveOwnFileRequest): Promise<void> {
  const reply = await host.saveOwnFile(request);
  if (reply === null) return;
  store.setState(
    reply.ok ? { trouble: null, said: `Saved ${reply.value.name}` } : { trouble: reply.problem },
  );
}

function take<T>(read: Result<T>, file: HostFile, use: (value: T) => void): Problem | null {
  if (read.ok) {
    use(read.value);
    return null;
  }
  return { ...read.problem, where: [file.name, read.problem.where].filter(Boolean).join(', ') };
}

function kindOf(text: string, wanted: OwnFileKind): OwnFileKind {
  if (text.includes(`"${styleFormat}"`)) return 'style';
  if (text.includes(`"${materialsFormat}"`)) return 'materials';
  return text.includes(`"${technologyFormat}"`) ? 'technology' : wanted;
}

function textOf(file: HostFile): string | null {
  try {
    return new TextDecoder('utf-8', { fatal: true }).decode(file.bytes);
  } catch {
    return null;
  }
}
