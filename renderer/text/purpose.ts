// What a screen is for and what to do on it first, in a sentence or two for each role. The words are in each screen's own file.
import type { Role } from '../../app/domain/fleet/shop.ts';

/** Null: the screen is not for this role, and says so itself. */
export type Purpose = Readonly<Record<Role, string | null>>;
