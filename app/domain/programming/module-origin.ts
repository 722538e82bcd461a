// Where a control module of a job comes from. The order of programming depends on it; see the rule pack.
import { z } from 'zod';

/** 'kept': it stays in the vehicle. 'repaired': taken out, repaired by others and returned. 'cloned': another unit that got a copy of its data. */
export const moduleOriginSchema = z.enum(['new', 'used', 'repaired', 'cloned', 'kept']);
export type ModuleOrigin = z.infer<typeof moduleOriginSchema>;
