// Listens on every screen for a scanner that types: a vehicle that is known opens, an unknown VIN is offered to be taken in. In a text
// field the scan is text like any other.
import { useEffect } from 'react';
import { deskStore } from '../state/desk-store.ts';
import { lotStore } from '../state/lot-store.ts';
import { notify } from '../state/notice-store.ts';
import { goTo } from '../state/route-store.ts';
import { noScan, readScan, scanKey } from '../state/scan-reader.ts';
import { scanText as text } from '../text/scan-reader.ts';
import { isTextPlace } from './use-commands.ts';

function act(scanned: string): void {
  const rows = lotStore.read().rows.map((row) => ({ ...row, isSold: row.held.now.standing === 'sold' }));
  const found = readScan(scanned, rows);
  if (found.kind === 'vehicle') goTo({ screen: 'vehicle', id: found.id });
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
      if (event.isComposing || event.ctrlKey || event.altKey || event.metaKey || isTextPlace(event.target)) {
        state = noScan;
        return;
      }
      const step = scanKey(state, event.key, event.timeStamp);
      // From the second fast key on it is a scanner: its letters are no commands.
      const isFast = step.state.text.length > 1;
      state = step.state;
      if (step.scanned !== null || isFast) {
        event.preventDefault();
        event.stopPropagation();
      }
      if (step.scanned !== null) act(step.scanned);
    };
    window.addEventListener('keydown', onKeyDown, true);
    return () => window.removeEventListener('keydown', onKeyDown, true);
  }, []);
}
