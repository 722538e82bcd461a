// Since when a vehicle is out of the fleet, as its own history tells. Reads only.
import { presenceAfter } from '../domain/people/history-entry.ts';
import type { Day } from '../domain/shared/day.ts';
import { namesIn, pathIn, withdrawnFolder } from './fleet-folder.ts';
import { withdrawnId } from './fleet-records.ts';
import { type HistoryPlace, readHistory } from './read-change-log.ts';

const linesAtOnce = 100;
/** Of a history longer than this nothing is concluded. */
const mostPages = 50;

async function hasWithdrawnRecord(folder: string, vehicleId: string): Promise<boolean> {
  const names = await namesIn(pathIn(folder, withdrawnFolder)).catch(() => []);
  return names.some((name) => withdrawnId(name) === vehicleId);
}

/**
 * The day of the last withdrawal of a vehicle that is not in the fleet; null when its history cannot be read, or ends with the vehicle in
 * the fleet: its record is then damaged or lost, not taken out.
 */
export async function withdrawnOn(folder: string, vehicleId: string): Promise<Day | null> {
  if (!(await hasWithdrawnRecord(folder, vehicleId))) return null;
  let place: HistoryPlace | null = null;
  for (let page = 0; page < mostPages; page++) {
    const read = await readHistory(folder, vehicleId, { place, count: linesAtOnce, savedRevision: null });
    // A line that cannot be read may be the one that brought it back.
    if (!read.ok || read.value.faults.length > 0) return null;
    for (const line of read.value.lines) {
      const presence = presenceAfter(line);
      if (presence === false && line.wasSaved) return line.at.slice(0, 10);
      if (presence === true || line.revision !== null) return null;
    }
    place = read.value.older;
    if (place === null) return null;
  }
  return null;
}
