// Listens on every screen for a scanner that types: a vehicle that is known opens, the mark of a sheet leads to its vehicle, an unknown VIN
// is offered to be taken in. In a text field the scan is text like any other.
import { useEffect } from 'react';
import type { FoundSheet } from '../../app/contract/sheet-channels.ts';
import { deskStore, lockedStore } from '../state/desk-store.ts';
import { doHeldKey, dropHeldKey } from '../state/held-key.ts';
import { lookUpMark } from '../state/look-up-mark.ts';
import { lotStore } from '../state/lot-store.ts';
import { notify } from '../state/notice-store.ts';
import { goTo } from '../state/route-store.ts';
import { isBetweenKeys, noScan, readScan, scanKey } from '../state/scan-reader.ts';
import { scanText as text } from '../text/scan-reader.ts';
import { sheetJobText } from '../text/sheet-job.ts';
import { isTextPlace } from './use-commands.ts';

/** The vehicle opens, and which sheet it is, of when, and whether it still holds is said; a sheet of many vehicles is shown as it is now. */
function follow(found: FoundSheet): void {
  const { vehicleId, kind, standing } = found;
  if (standing === 'gone') {
    notify('problem', text.sheet(found));
    return;
  }
  if (vehicleId === null) {
    goTo({ screen: 'sheets', kind });
    notify('done', text.sheet(found));
    return;
  }
  goTo({ screen: 'vehicle', id: vehicleId });
  notify('done', text.sheet(found), {
    label: sheetJobText.seeIt,
    onPress: () => goTo({ screen: 'sheets', vehicleId, kind }),
  });
}

async function followMark(mark: string): Promise<void> {
  const { problem, sentence, found } = await lookUpMark(mark);
  // The desk may have been locked meanwhile.
  if (lockedStore.read() !== null) return;
  const trouble = problem === '' ? sentence : problem;
  if (trouble !== '') notify('problem', trouble);
  for (const sheet of found) follow(sheet);
}

function act(scanned: string): void {
  const rows = lotStore.read().rows.map((row) => ({ ...row, isSold: row.held.now.standing === 'sold' }));
  const found = readScan(scanned, rows);
  if (found.kind === 'vehicle') goTo({ screen: 'vehicle', id: found.id });
  else if (found.kind === 'mark') void followMark(found.mark);
  else if (found.kind === 'unknown') notify('problem', text.unknown(found.text));
  else if (deskStore.read()?.person.role !== 'manager') notify('problem', text.notHere(found.vin));
  else
    notify('done', text.notHere(found.vin), {
      label: text.takeIn,
      onPress: () => goTo({ screen: 'take-in', vin: found.vin }),
    });
}

export function useScanner(): void {
  useEffect(() => {
    let state = noScan;
    const onKeyDown = (event: KeyboardEvent) => {
      const isElsewhere = isTextPlace(event.target) || lockedStore.read() !== null;
      if (event.isComposing || event.ctrlKey || event.altKey || event.metaKey || isElsewhere) {
        state = noScan;
        return;
      }
      const step = scanKey(state, event.key, event.timeStamp);
      state = step.state;
      if (step.isHeldBack) {
        event.preventDefault();
        event.stopPropagation();
        dropHeldKey();
      } else if (!isBetweenKeys(event.key)) doHeldKey();
      if (step.scanned !== null) act(step.scanned);
    };
    window.addEventListener('keydown', onKeyDown, true);
    return () => window.removeEventListener('keydown', onKeyDown, true);
  }, []);
}
