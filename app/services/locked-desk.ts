// What a locked desk may still know: which fleet is open and the names to sign in with. Nothing of a record, a file or the settings.
import type { Desk } from '../contract/views.ts';

export function lockedDesk(desk: Desk): Desk {
  return {
    ...desk,
    shop: null,
    sample: { isOwnCopy: false, canOpen: false, wayBack: null },
    people: desk.people.filter((person) => person.isActive),
    fundingPlans: [],
    seesMoney: false,
    troubleCount: 0,
    lastBackupAt: null,
    undo: null,
    redo: null,
  };
}
