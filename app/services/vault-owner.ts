// Owns the vault of the open fleet: opens and locks it, and knows which code is being shown. Locked whenever another person or another
// fleet comes to the desk, when the desk is locked or left alone, and at the end. Keeps no clear value.
import type { EventName, EventPayload } from '../contract/events.ts';
import { codeIdleMinutes, isIdle, type SignInRules } from '../domain/people/sign-in.ts';
import { ok } from '../domain/shared/result.ts';
import type { FleetStore } from '../storage/fleet-store.ts';
import { settleKeyFile } from '../storage/vault/key-file.ts';
import type { KeyMaking } from '../storage/vault/key-holder.ts';
import { createVault, openVault } from '../storage/vault/open-vault.ts';
import type { Vault } from '../storage/vault/vault.ts';
import { type CodeRef, vaultFile } from '../storage/vault/vault-data.ts';
import type { Outcome, VaultSetting } from '../storage/vault/vault-file.ts';
import { refuseVault, refuseVaultStorage } from '../storage/vault/vault-problem.ts';

/** A code is on the screen for so long. */
export const shownSeconds = 30;

type Shown = { readonly ref: CodeRef; readonly why: string; readonly until: string };

/** What the owner asks of the desk. */
export type VaultGround = {
  readonly clock: () => string;
  readonly store: () => FleetStore;
  readonly personId: () => string;
  readonly signInRules: () => SignInRules;
  readonly forgetCopied: () => Promise<void>;
  readonly emit: <Name extends EventName>(name: Name, payload: EventPayload<Name>) => void;
  /** Smaller in tests only. */
  readonly making?: KeyMaking | undefined;
};

export class VaultOwner {
  readonly #ground: VaultGround;
  #store: FleetStore | null = null;
  #vault: Vault | null = null;
  #shown: Shown | null = null;
  #usedAt = '';

  constructor(ground: VaultGround) {
    this.#ground = ground;
  }

  #setting(): VaultSetting {
    const { making } = this.#ground;
    return { ...this.#ground.store().keyFileSetting(), ...(making ? { making } : {}) };
  }

  /** The vault of the open fleet, locked unless whoever is at the desk has opened it. Refused where there is none. */
  async vault(): Outcome<Vault> {
    const store = this.#ground.store();
    if (this.#store !== store) await this.#leave();
    this.lockWhenIdle();
    if (this.#vault === null) {
      const opened = await openVault(this.#setting());
      if (!opened.ok) return opened;
      this.#take(opened.value, store);
    }
    const vault = this.#vault;
    if (vault === null) return refuseVault('locked');
    if (vault.unlockedBy !== null && vault.unlockedBy !== this.#ground.personId()) this.lock();
    return ok(vault);
  }

  /** The vault if whoever is at the desk has it open. */
  async openVault(): Outcome<Vault> {
    const vault = await this.vault();
    if (!vault.ok) return vault;
    if (vault.value.unlockedBy === null) return refuseVault('locked');
    this.#usedAt = this.#ground.clock();
    return vault;
  }

  async make(passPhrase: string): Outcome<{ readonly recoveryKey: string }> {
    const store = this.#ground.store();
    const made = await createVault(this.#setting(), this.#ground.personId(), passPhrase);
    if (!made.ok) return made;
    this.#take(made.value.vault, store);
    this.noteUse();
    return ok({ recoveryKey: made.value.recoveryKey });
  }

  /** Leaves what cannot be read in quarantine for good, so that a new vault may be made. */
  async startAnew(): Outcome<null> {
    const there = await openVault(this.#setting());
    if (there.ok) return refuseVault('vault-there');
    if (there.error.code !== 'damaged-vault') return there;
    await this.#leave();
    const settled = await settleKeyFile(this.#setting(), vaultFile);
    return settled.ok ? ok(null) : refuseVaultStorage(settled.error);
  }

  noteUse(): void {
    this.#usedAt = this.#ground.clock();
    this.#ground.emit('vault:changed', {});
  }

  /** At once: the data key is forgotten, the page is told to hide what it shows, the clipboard is cleared. */
  lock(): void {
    const wasOpen = this.#vault !== null && this.#vault.unlockedBy !== null;
    this.#vault?.lock();
    this.#shown = null;
    void this.#ground.forgetCopied();
    if (wasOpen) this.#ground.emit('vault:locked', {});
  }

  /** To be called now and then. */
  lockWhenIdle(): void {
    if (this.#vault === null || this.#vault.unlockedBy === null) return;
    if (isIdle(this.#usedAt, this.#ground.clock(), codeIdleMinutes(this.#ground.signInRules()))) this.lock();
  }

  /** The code that is being shown; null when none is, or its time is over. */
  shown(): Shown | null {
    if (this.#shown !== null && this.#shown.until <= this.#ground.clock()) this.#shown = null;
    return this.#shown;
  }

  noteShown(ref: CodeRef, why: string): void {
    const until = new Date(Date.parse(this.#ground.clock()) + shownSeconds * 1000).toISOString();
    this.#shown = { ref, why, until };
  }

  hide(): void {
    this.#shown = null;
  }

  /** After a restore: what is in the folder now counts, and has to be opened anew. */
  async readAgain(): Promise<void> {
    await this.#leave();
    this.#ground.emit('vault:changed', {});
  }

  async close(): Promise<void> {
    await this.#leave();
    await this.#ground.forgetCopied();
  }

  #take(vault: Vault, store: FleetStore): void {
    this.#vault?.lock();
    this.#vault = vault;
    this.#store = store;
  }

  async #leave(): Promise<void> {
    this.lock();
    const vault = this.#vault;
    this.#vault = null;
    this.#store = null;
    await vault?.close();
  }
}
