// What follows when somebody's being signed in has ended: the page is told, and an open desk forgets what could be taken back.
import type { DeskContext } from './desk-context.ts';
import type { LockReason } from './desk-sign-in.ts';

export function afterLock(context: DeskContext, reason: LockReason): void {
  // In these the desk stays as it is, or whoever caused it tells the page.
  if (reason === 'codes-idle' || reason === 'other-person' || reason === 'other-fleet') return;
  // At an open desk anybody may go on, and must not take back unseen what was done signed in.
  if (!context.signIn.isLocked()) {
    context.undo.clear();
    context.deps.emit('lot:all-changed', {});
  }
  context.deps.emit('desk:changed', context.desk());
}
