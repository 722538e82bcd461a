// The open vehicle: answers that overtake each other, a vehicle read again, one that is gone.
import { describe, expect, it } from 'vitest';
import type { AppError } from '../../../app/contract/app-error.ts';
import type { VehicleView } from '../../../app/contract/views.ts';
import { arrived, asked, failed, type OpenVehicle } from '../../../renderer/state/open-vehicle.ts';

/** Only what the open vehicle is told apart by. */
function viewOf(id: string, revision: number): VehicleView {
  return { vehicle: { id }, revision } as VehicleView;
}
const gone: AppError = { code: 'not-found', detail: '', problems: [] };
const busy: AppError = { code: 'busy', detail: '', problems: [] };
const none: OpenVehicle = { state: 'none' };

function opened(id: string, revision: number, turn: number): OpenVehicle {
  return arrived(asked(none, id), viewOf(id, revision), turn);
}

describe('the open vehicle', () => {
  it('is read, then here', () => {
    expect(asked(none, 'a')).toEqual({ state: 'reading', id: 'a' });
    expect(opened('a', 3, 1)).toMatchObject({ state: 'here', id: 'a', view: { revision: 3 } });
  });

  it('stays on the page while it is read again, but not while another one is read', () => {
    const here = opened('a', 3, 1);
    expect(asked(here, 'a')).toBe(here);
    expect(asked(here, 'b')).toEqual({ state: 'reading', id: 'b' });
  });

  it('does not take the answer for a vehicle that was left meanwhile', () => {
    const reading = asked(opened('a', 3, 1), 'b');
    expect(arrived(reading, viewOf('a', 4), 2)).toBe(reading);
    expect(failed(reading, 'a', gone)).toBe(reading);
  });

  it('does not go back to an older state when an earlier question is answered late', () => {
    const saved = arrived(opened('a', 3, 1), viewOf('a', 4), 3);
    expect(arrived(saved, viewOf('a', 3), 2)).toBe(saved);
  });

  it('takes a save that is answered after a later reading of the state before it', () => {
    const read = arrived(opened('a', 3, 1), viewOf('a', 3), 3);
    expect(arrived(read, viewOf('a', 4), 2)).toMatchObject({ view: { revision: 4 } });
  });

  it('takes an older revision that was asked for later: a good copy was put back', () => {
    expect(arrived(opened('a', 9, 1), viewOf('a', 5), 2)).toMatchObject({ view: { revision: 5 } });
  });

  it('goes away when it is gone, and stays when it only could not be read just now', () => {
    const here = opened('a', 3, 1);
    expect(failed(here, 'a', gone)).toEqual({ state: 'failed', id: 'a', error: gone });
    expect(failed(here, 'a', busy)).toBe(here);
    expect(failed(asked(none, 'a'), 'a', busy)).toEqual({ state: 'failed', id: 'a', error: busy });
  });
});
