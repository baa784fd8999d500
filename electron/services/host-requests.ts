import { z } from 'zod';
import { done, failed, type Result } from '../../core/problem';
import type { ExportRequest, SaveJobRequest } from '../contract/host-api';

const saveJob = z.strictObject({
  token: z.string().max(64).nullable(),
  suggestedName: z.string().max(500),
  text: z.string(),
});

const exportFiles = z.strictObject({
  folderName: z.string().max(500),
  files: z
    .array(z.strictObject({ name: z.string().max(500), text: z.string() }))
    .min(1)
    .max(1000),
});

/** The page's request to save, checked; whatever is not exactly that is refused. */
export const saveJobRequest = (value: unknown): Result<SaveJobRequest> => checked(saveJob, value);

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
