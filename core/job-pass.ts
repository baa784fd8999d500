import { z } from 'zod';
import { technologyPassSchema } from './technology';

const positive = z
  .number()
  .positive()
  .min(1 / 1_000_000)
  .max(1_000_000);

/** A pass as a technology table has it; a job saved before there was one has the feed alone. */
export const passSchema = technologyPassSchema.extend({
  rate: positive.default(100),
  roughness: positive.nullable().default(null),
  wireSpeed: positive.default(8),
  /** Typed feed, mm/min; null: the rate over the block's height. */
  feed: positive.nullable().default(null),
});

export type JobPass = z.infer<typeof passSchema>;
