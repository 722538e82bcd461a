// Making the vault, opening and locking it, and who has a key to it. Pass phrases pass through here and are kept nowhere.
import type { ChannelInput, ChannelOutput } from '../contract/channels.ts';
import { ok } from '../domain/shared/result.ts';
import type { Vault } from '../storage/vault/vault.ts';
import type { Outcome } from '../storage/vault/vault-file.ts';
import { type Answer, type DeskContext, refuse } from './desk-context.ts';
import { refuseVaultProblem, vaultState } from './vault-answers.ts';

export async function readVaultState(context: DeskContext): Answer<ChannelOutput<'vault:state'>> {
  return ok(await vaultState(context));
}

export async function makeVault(
  context: DeskContext,
  input: ChannelInput<'vault:make'>,
): Answer<ChannelOutput<'vault:make'>> {
  const made = await context.vault.make(input.passPhrase);
  if (!made.ok) return refuseVaultProblem(made.error, 'passPhrase');
  return ok({ state: await vaultState(context), recoveryKey: made.value.recoveryKey, unreadable: 0 });
}

export async function unlockVault(
  context: DeskContext,
  input: ChannelInput<'vault:unlock'>,
): Answer<ChannelOutput<'vault:unlock'>> {
  const vault = await context.vault.vault();
  if (!vault.ok) return refuseVaultProblem(vault.error);
  const personId = context.person().id;
  const unlocked = await vault.value.unlock(personId, input.passPhrase);
  if (!unlocked.ok) return refuseVaultProblem(unlocked.error, 'passPhrase');
  context.vault.noteUse();
  return ok(await vaultState(context));
}

export async function lockVault(context: DeskContext): Answer<ChannelOutput<'vault:lock'>> {
  context.vault.lock();
  return ok(await vaultState(context));
}

/** Runs with the vault that whoever is at the desk has open; `field`: where a refusal stands on the page. */
async function withOpenVault<Value>(context: DeskContext, job: (vault: Vault) => Outcome<Value>, field = '') {
  const vault = await context.vault.openVault();
  if (!vault.ok) return refuseVaultProblem(vault.error);
  const done = await job(vault.value);
  if (!done.ok) return refuseVaultProblem(done.error, field);
  context.vault.noteUse();
  return done;
}

export async function addPersonToVault(
  context: DeskContext,
  { personId, passPhrase }: ChannelInput<'vault:add-person'>,
): Answer<ChannelOutput<'vault:add-person'>> {
  const person = context.shop().people.find(({ id, isActive }) => id === personId && isActive);
  if (!person) return refuse('not-found');
  if (person.role === 'sales')
    return refuse('refused', 'Sales sees no codes, so they get no key. Change their role in Setup first.', [
      { field: 'personId', sentence: 'Sales sees no codes, so they get no key.' },
    ]);
  const done = await withOpenVault(context, (vault) => vault.addPerson(personId, passPhrase), 'passPhrase');
  return done.ok ? ok(await vaultState(context)) : done;
}

export async function removePersonFromVault(
  context: DeskContext,
  { personId }: ChannelInput<'vault:remove-person'>,
): Answer<ChannelOutput<'vault:remove-person'>> {
  const done = await withOpenVault(context, (vault) => vault.removePerson(personId));
  return done.ok ? ok({ state: await vaultState(context), unreadable: done.value.unreadable.length }) : done;
}

export async function changeVaultPassPhrase(
  context: DeskContext,
  { oldPassPhrase, newPassPhrase }: ChannelInput<'vault:change-pass-phrase'>,
): Answer<ChannelOutput<'vault:change-pass-phrase'>> {
  const vault = await context.vault.vault();
  if (!vault.ok) return refuseVaultProblem(vault.error);
  const changed = await vault.value.changePassPhrase(context.person().id, oldPassPhrase, newPassPhrase);
  if (!changed.ok)
    return refuseVaultProblem(
      changed.error,
      changed.error.code === 'weak-pass-phrase' ? 'newPassPhrase' : 'oldPassPhrase',
    );
  context.vault.noteUse();
  return ok({ state: await vaultState(context), unreadable: changed.value.unreadable.length });
}

/** For who has lost the pass phrase: the recovery key gives whoever is at the desk a new one, and is worth nothing afterwards. */
export async function recoverVault(
  context: DeskContext,
  { recoveryKey, passPhrase }: ChannelInput<'vault:recover'>,
): Answer<ChannelOutput<'vault:recover'>> {
  const vault = await context.vault.vault();
  if (!vault.ok) return refuseVaultProblem(vault.error);
  const done = await vault.value.recover(recoveryKey, context.person().id, passPhrase);
  if (!done.ok)
    return refuseVaultProblem(done.error, done.error.code === 'weak-pass-phrase' ? 'passPhrase' : 'recoveryKey');
  context.vault.noteUse();
  const { recoveryKey: newKey, unreadable } = done.value;
  return ok({ state: await vaultState(context), recoveryKey: newKey, unreadable: unreadable.length });
}

export async function newRecoveryKey(context: DeskContext): Answer<ChannelOutput<'vault:new-recovery-key'>> {
  const done = await withOpenVault(context, (vault) => vault.replaceRecoveryKey());
  if (!done.ok) return done;
  const { recoveryKey, unreadable } = done.value;
  return ok({ state: await vaultState(context), recoveryKey, unreadable: unreadable.length });
}

export async function startVaultAnew(context: DeskContext): Answer<ChannelOutput<'vault:start-anew'>> {
  const settled = await context.vault.startAnew();
  if (!settled.ok) return refuseVaultProblem(settled.error);
  context.vault.noteUse();
  return ok(await vaultState(context));
}
