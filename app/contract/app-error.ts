// The closed list of what can go wrong across the bridge. The words for each code are in renderer/text/errors.ts.
import { z } from 'zod';

export const appErrorCodeSchema = z.enum([
  'bad-request',
  'not-allowed',
  'sign-in',
  'not-found',
  'refused',
  'stale-revision',
  'read-only',
  'newer-version',
  'no-space',
  'no-permission',
  'folder-gone',
  'busy',
  'nothing-to-undo',
  'printing-failed',
  'no-sheet',
  'bad-list',
  'bad-archive',
  'bad-attachment',
  'not-done',
  'unexpected',
]);
export type AppErrorCode = z.infer<typeof appErrorCodeSchema>;

export const appErrorSchema = z.strictObject({
  code: appErrorCodeSchema,
  /** For the person: what exactly; may be empty when the code's own sentence says it all. No path, no stack. */
  detail: z.string(),
  /** Fields that stand against a change, with a sentence each; for 'refused' and 'bad-request'. */
  problems: z.array(z.strictObject({ field: z.string(), sentence: z.string() })).readonly(),
});
export type AppError = z.infer<typeof appErrorSchema>;
