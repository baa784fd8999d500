import { z } from 'zod';
import { done, failed, type Result } from '../../core/problem';
import type {
  ExportRequest,
  KeepDraftRequest,
  SaveJobRequest,
  SaveOwnFileRequest,
} from '../contract/host-api';

const saveJob = z.strictObject({
  token: z.string().max(64).nullable(),
  suggestedName: z.string().max(500),
  text: z.string(),
  replaceChanged: z.boolean(),
});

const saveOwnFile = z.strictObject({
  kind: z.enum(['technology', 'style', 'materials']),
  suggestedName: z.string().max(500),
  text: z.string(),
});

const keepDraft = z.strictObject({
  name: z.string().max(500),
  job: z.string().nullable(),
  drawing: z.string().nullable(),
  token: z.string().max(64).nullable(),
});

/** Sessions are made here, of hexadecimal digits only: no other name reaches the disk. */
const dropDraft = z.strictObject({ id: z.string().regex(/^[0-9a-f]{1,64}$/) });

const exportFiles = z.strictObject({
  folderName: z.string().max(500),
  files: z
    .array(z.strictObject({ name: z.string().max(500), text: z.string(), isBytes: z.boolean().optional() }))
    .min(1)
    .max(1000),
});

/** The page's request to save, checked; whatever is not exactly that is refused. */
export const saveJobRequest = (value: unknown): Result<SaveJobRequest> => checked(saveJob, value);

/** The page's request to save another file of ours, checked. */
export const saveOwnFileRequest = (value: unknown): Result<SaveOwnFileRequest> => checked(saveOwnFile, value);

/** The page's unsaved work, checked. */
export const keepDraftRequest = (value: unknown): Result<KeepDraftRequest> => checked(keepDraft, value);

/** The draft that the page no longer wants, checked. */
export const dropDraftRequest = (value: unknown): Result<{ id: string }> => checked(dropDraft, value);

/** The page's request to export, checked. */
export const exportRequest = (value: unknown): Result<ExportRequest> => checked(exportFiles, value);

function checked<T>(schema: z.ZodType<T>, value: unknown): Result<T> {
  const parsed = schema.safeParse(value);
  if (parsed.success) return done(parsed.data);
  const where = parsed.error.issues[0]?.path.map(String).join('.') ?? '';
  return failed(
    'request-form',
    'The window asked for something in a form that is not agreed',
    where,
    'Restart the program.',
  );
}
