// What every sheet of many vehicles shares: the frame around the blocks, and the state of the fleet it was printed from. No content.
import type { Shop } from '../fleet/shop.ts';
import type { Identifier } from '../shared/identifier.ts';
import { plural } from '../shared/text.ts';
import type { FleetSheetKind, Sheet, SheetBlock } from './sheet.ts';
import { frameOf, type Printing } from './sheet-frame.ts';

export const fleetSubject = 'fleet';

/**
 * One number for the state of these records: another one as soon as any of them is changed, added or taken out. FNV-1a, 32 bits, over
 * identities and revisions in a fixed order, of which 31 bits are kept.
 */
export function fleetState(records: readonly { readonly id: Identifier; readonly revision: number }[]): number {
  let hash = 0x811c9dc5;
  for (const { id, revision } of [...records].sort((a, b) => (a.id < b.id ? -1 : 1)))
    for (const byte of new TextEncoder().encode(`${id}:${revision};`)) hash = Math.imul(hash ^ byte, 0x01000193) >>> 0;
  return hash >>> 1;
}

export function frameFleetSheet(
  kind: FleetSheetKind,
  title: string,
  shop: Shop,
  printed: Printing,
  content: {
    readonly subject: string;
    readonly orientation: Sheet['orientation'];
    readonly blocks: readonly SheetBlock[];
    readonly footer: string;
  },
): Sheet {
  return { ...frameOf(kind, fleetSubject, shop, printed, 'these vehicles'), title, ...content };
}

export function vehicles(count: number): string {
  return plural(count, 'vehicle', 'vehicles');
}
