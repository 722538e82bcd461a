// The dialog about a kept code that is open, if one is: outside the table, and never two at a time.
import { useEffect } from 'react';
import { useStore } from '../../../state/store.ts';
import { useFollowCodes } from '../../../state/vault-store.ts';
import { useVehicle } from '../page/vehicle-context.ts';
import { AboutCodeDialog } from './code-value-about.tsx';
import { KeepCodeDialog } from './code-value-keep.tsx';
import { closeCodeDialog, codeDialogStore } from './code-value-open.ts';
import { SeeCodeDialog } from './code-value-see.tsx';

export function CodeValueDialogs() {
  const { id, view, desk } = useVehicle();
  const open = useStore(codeDialogStore);
  useFollowCodes(id, `${desk.person.id} ${view.revision}`);
  // biome-ignore lint/correctness/useExhaustiveDependencies: nothing stays open for another person or another vehicle.
  useEffect(() => closeCodeDialog, [id, desk.person.id]);
  if (open === null) return null;
  const key = `${open.kind} ${open.requestId}`;
  if (open.kind === 'about') return <AboutCodeDialog key={key} open={open} />;
  if (open.kind === 'see' || open.kind === 'hand-over') return <SeeCodeDialog key={key} open={open} />;
  return <KeepCodeDialog key={key} open={open} />;
}
