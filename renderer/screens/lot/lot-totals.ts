// The totals of the rows in view. Pure. What is sold holds no money and can win no day back, so it is counted and not summed.
import type { LotRow } from '../../../app/contract/views.ts';
import { sumCents } from '../../../app/domain/shared/cents.ts';

export type LotTotals = {
  readonly vehicles: number;
  /** Spent on the vehicles not sold; null where money is not seen. */
  readonly tiedUpCents: number | null;
  readonly heldDays: number;
  readonly idleDays: number;
};

export function totalsOf(rows: readonly LotRow[]): LotTotals {
  const held = rows.filter((row) => row.held.now.standing !== 'sold');
  const money = held.map((row) => row.money?.spentCents ?? null).filter((cents) => cents !== null);
  return {
    vehicles: rows.length,
    tiedUpCents: rows.some((row) => row.money !== null) ? sumCents(money) : null,
    heldDays: held.reduce((sum, row) => sum + row.held.heldDays, 0),
    idleDays: held.reduce((sum, row) => sum + (row.held.byCause.idle ?? 0), 0),
  };
}
