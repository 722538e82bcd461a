// The ways by which a step of programming can be done. Which one to offer is decided in routes.ts.
import { z } from 'zod';

export const programmingRouteSchema = z.enum(['on-vehicle', 'bench', 'pass-through', 'sent-out', 'by-hand']);
export type ProgrammingRoute = z.infer<typeof programmingRouteSchema>;
