// Scanners that type, told from people by the moments of their keys.
import { describe, expect, it } from 'vitest';
import { noScan, readScan, scanKey } from '../../../renderer/state/scan-reader.ts';

function type(keys: readonly string[], gapMs: number, lastGapMs = gapMs): string | null {
  let state = noScan;
  let scanned: string | null = null;
  let at = 10_000;
  for (const [index, key] of keys.entries()) {
    at += index === keys.length - 1 ? lastGapMs : gapMs;
    ({ state, scanned } = scanKey(state, key, at));
  }
  return scanned;
}
const mark = 'K7M2P9';
const vin = '1M8GDM9A3KP000009';

describe('keys', () => {
  it.each([8, 20, 35])('%s ms apart and ended by Enter are a scan', (gap) => {
    expect(type([...vin, 'Enter'], gap)).toBe(vin);
  });
  it('may be ended by Tab, with the shift of capitals in between', () => {
    expect(type(['Shift', 'L', 'Shift', 'W', '-', '1', '2', 'Tab'], 10)).toBe('LW-12');
  });
  it.each([50, 80, 200])('%s ms apart are a person, however fast', (gap) => {
    expect(type([...vin, 'Enter'], gap)).toBeNull();
  });
  it('typed fast but ended slowly are a person', () => {
    expect(type(['a', 's', 'd', 'f', 'Enter'], 20, 300)).toBeNull();
  });
  it('of a short burst, or with an arrow in it, are no scan', () => {
    expect(type(['n', 'o', 'Enter'], 10)).toBeNull();
    expect(type([...'ABCD', 'ArrowDown', 'Enter'], 10)).toBeNull();
  });
  it('typed slowly before a scan are not part of it', () => {
    const slow = scanKey(noScan, 'x', 1_000).state;
    let state = slow;
    let scanned: string | null = null;
    for (const [index, key] of [...'LW-1001', 'Enter'].entries())
      ({ state, scanned } = scanKey(state, key, 2_000 + index * 10));
    expect(scanned).toBe('LW-1001');
  });
});

describe('letters', () => {
  it('are held back from the second fast one on, and the end of a scan with them', () => {
    let state = noScan;
    const heldBack: boolean[] = [];
    for (const [index, key] of ['Shift', 'N', 'Shift', 'B', '-', '1', 'Enter'].entries()) {
      const step = scanKey(state, key, 1_000 + index * 10);
      heldBack.push(step.isHeldBack);
      state = step.state;
    }
    expect(heldBack).toEqual([false, false, false, true, true, true, true]);
  });
  it('of a person are not', () => {
    const first = scanKey(noScan, 'n', 1_000);
    expect([first.isHeldBack, scanKey(first.state, 'o', 1_080).isHeldBack]).toEqual([false, false]);
    expect(scanKey(first.state, 'Enter', 1_010).isHeldBack).toBe(false);
  });
});

describe('what was scanned', () => {
  const rows = [
    { id: 'sold', isSold: true, identity: { stockNumber: 'LW-0900', vin } },
    { id: 'open', isSold: false, identity: { stockNumber: 'LW-1001', vin } },
  ];
  it.each([vin, `*${vin}*`, `I${vin}`, vin.toLowerCase(), 'lw-1001', '*LW-1001*'])('%s is the vehicle', (scanned) => {
    expect(readScan(scanned, rows)).toEqual({ kind: 'vehicle', id: 'open' });
  });
  it('is a VIN that nobody has, without its leading I', () => {
    expect(readScan('I1M8GDM9AXKP000010', rows)).toEqual({ kind: 'new-vin', vin: '1M8GDM9AXKP000010' });
  });
  it.each(['K7M2P9', '*K7M2P9*', 'k7m2p9'])('%s is a mark of a sheet', (scanned) => {
    expect(readScan(scanned, rows)).toEqual({ kind: 'mark', mark });
  });
  it('is a vehicle sooner than a mark', () => {
    const called = [{ id: 'called', isSold: false, identity: { stockNumber: mark, vin: '' } }];
    expect(readScan(mark, called)).toEqual({ kind: 'vehicle', id: 'called' });
  });
  it('or none of these', () => {
    expect(readScan('K7M2PE', rows)).toEqual({ kind: 'unknown', text: 'K7M2PE' });
    expect(readScan('5901234123457', rows)).toEqual({ kind: 'unknown', text: '5901234123457' });
  });
});
