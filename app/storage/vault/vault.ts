// The vault of one fleet: codes at rest are sealed, and opened one at a time for who has a key. Every operation reads the file anew and
// goes through one queue. Who may ask, and that each look is recorded first, is decided by the caller; no clear value leaves but by lookAt.
import { passPhraseProblem } from '../../domain/people/pass-phrase.ts';
import { waitLeft } from '../../domain/people/try-delay.ts';
import { ok } from '../../domain/shared/result.ts';
import { problemFromError, systemCode } from '../storage-problem.ts';
import { createWriteQueue } from '../write-queue.ts';
import { readRecoveryKey } from './recovery-key.ts';
import { wipe } from './scrypt-key.ts';
import { openCode, rekey, sealCode } from './vault-codes.ts';
import { type CodeRef, codeEntryOf, type VaultData, vaultFile, withCode } from './vault-data.ts';
import { type Loaded, loadVault, type Outcome, saveVault, type VaultSetting } from './vault-file.ts';
import { makePersonKey, makeRecovery, withPersonKey } from './vault-holders.ts';
import { refuseVault, refuseVaultStorage } from './vault-problem.ts';
import { tryPerson, tryRecovery } from './vault-tries.ts';

type Open = { readonly personId: string; readonly vaultId: string; readonly keyId: string; readonly dataKey: Buffer };

export type CodeMark = {
  readonly ref: CodeRef;
  readonly state: 'held' | 'destroyed';
  readonly putAt: string;
  readonly destroyedAt: string | null;
};

/** What became of a change of the data key: codes that could not be opened are kept as they were and listed. */
export type KeyChange = { readonly unreadable: readonly CodeRef[] };
export type NewRecovery = KeyChange & { readonly recoveryKey: string };

export class Vault {
  readonly #setting: VaultSetting;
  readonly #queue = createWriteQueue();
  #open: Open | null;
  #locks = 0;

  constructor(setting: VaultSetting, open: Open | null) {
    this.#setting = setting;
    this.#open = open;
  }

  /** Who has opened it; null while it is locked. */
  get unlockedBy(): string | null {
    return this.#open?.personId ?? null;
  }

  /** Forgets the data key, at once; what is under way finishes with its own copy. */
  lock(): void {
    this.#locks += 1;
    wipe(this.#open?.dataKey ?? null);
    this.#open = null;
  }

  unlock(personId: string, passPhrase: string): Outcome<null> {
    const locks = this.#locks;
    return this.#run(async (loaded) => {
      const opened = await tryPerson(this.#setting, loaded, personId, passPhrase);
      if (!opened.ok) return opened;
      const { dataKey } = opened.value;
      const saved = await saveVault(this.#setting, opened.value.loaded);
      if (saved.ok && locks === this.#locks) {
        this.#keep(personId, saved.value.data, dataKey);
        return ok(null);
      }
      wipe(dataKey);
      return saved.ok ? refuseVault('locked') : saved;
    });
  }

  /** Milliseconds until this person may try again. */
  waitFor(personId: string): Outcome<number> {
    return this.#run(async ({ data }) => {
      const person = data.people.find((candidate) => candidate.personId === personId);
      return ok(person ? waitLeft(person.tries, this.#setting.clock()).waitMilliseconds : 0);
    });
  }

  people(): Outcome<readonly string[]> {
    return this.#run(async ({ data }) => ok(data.people.map((person) => person.personId)));
  }

  /** For which requests a code is or was kept. Needs no key. */
  marks(): Outcome<readonly CodeMark[]> {
    return this.#run(async ({ data }) =>
      ok(
        data.codes.map((entry) => ({
          ref: entry.ref,
          state: entry.state,
          putAt: entry.putAt,
          destroyedAt: entry.state === 'destroyed' ? entry.destroyedAt : null,
        })),
      ),
    );
  }

  addPerson(personId: string, passPhrase: string): Outcome<null> {
    return this.#withKey(async (loaded, open) => {
      const { data } = loaded;
      if (data.people.some((person) => person.personId === personId)) return refuseVault('already-admitted');
      const key = await makePersonKey(this.#setting, data, open.dataKey, personId, passPhrase);
      if (!key.ok) return key;
      const saved = await saveVault(this.#setting, { ...loaded, data: withPersonKey(data, key.value) });
      return saved.ok ? ok(null) : saved;
    });
  }

  /**
   * Takes the person's key away and changes the data key: what is sealed now and from now on does not open with anything that they, or
   * an earlier copy of the file, have. Copies of the file from before still open with their pass phrase.
   */
  removePerson(personId: string): Outcome<KeyChange> {
    return this.#withKey(async (loaded, open) => {
      const people = loaded.data.people.filter((person) => person.personId !== personId);
      if (people.length === loaded.data.people.length) return refuseVault('not-admitted');
      if (people.length === 0) return refuseVault('last-person');
      const changed = await this.#changeKey({ ...loaded, data: { ...loaded.data, people } }, open.dataKey);
      if (changed.ok && this.unlockedBy === personId) this.lock();
      return changed;
    });
  }

  /** Changes the data key too: whoever knew the old pass phrase may have a copy of the file. */
  changePassPhrase(personId: string, oldPassPhrase: string, newPassPhrase: string): Outcome<KeyChange> {
    return this.#run(async (loaded) => {
      const weak = passPhraseProblem(newPassPhrase);
      if (weak !== null) return refuseVault('weak-pass-phrase', weak);
      const opened = await tryPerson(this.#setting, loaded, personId, oldPassPhrase);
      if (!opened.ok) return opened;
      const { dataKey, loaded: now } = opened.value;
      try {
        const key = await makePersonKey(this.#setting, now.data, dataKey, personId, newPassPhrase);
        return key.ok ? await this.#changeKey({ ...now, data: withPersonKey(now.data, key.value) }, dataKey) : key;
      } finally {
        wipe(dataKey);
      }
    });
  }

  /**
   * Opens with the recovery key and gives the person a key with this new pass phrase, whether they had one or not. The recovery key used
   * is worth nothing afterwards; the new one is told this once.
   */
  recover(recoveryKey: string, personId: string, newPassPhrase: string): Outcome<NewRecovery> {
    return this.#run(async (loaded) => {
      const weak = passPhraseProblem(newPassPhrase);
      if (weak !== null) return refuseVault('weak-pass-phrase', weak);
      const read = readRecoveryKey(recoveryKey);
      if (!read.ok) return refuseVault('recovery-mistyped', read.error);
      const opened = await tryRecovery(this.#setting, loaded, read.value);
      wipe(read.value);
      if (!opened.ok) return opened;
      const { dataKey, loaded: now } = opened.value;
      try {
        const key = await makePersonKey(this.#setting, now.data, dataKey, personId, newPassPhrase);
        if (!key.ok) return key;
        const changed = await this.#renewRecovery(
          { ...now, data: withPersonKey(now.data, key.value) },
          dataKey,
          personId,
        );
        return changed;
      } finally {
        wipe(dataKey);
      }
    });
  }

  /** A new recovery key, told this once; the earlier one is worth nothing afterwards. */
  replaceRecoveryKey(): Outcome<NewRecovery> {
    return this.#withKey((loaded, open) => this.#renewRecovery(loaded, open.dataKey, null));
  }

  /** `replaces`: a code that is kept for this request already is given up for this one. */
  putCode(ref: CodeRef, value: string, { replaces = false } = {}): Outcome<null> {
    return this.#withKey(async (loaded, open) => {
      const line = value.trim();
      // biome-ignore lint/suspicious/noControlCharactersInRegex: refusing control characters is the point.
      if (line === '' || line.length > 200 || /[\u0000-\u001f\u007f]/.test(line)) return refuseVault('bad-value');
      if (codeEntryOf(loaded.data, ref)?.state === 'held' && !replaces) return refuseVault('code-there');
      const clear = Buffer.from(line, 'utf8');
      const put = { putAt: this.#setting.clock(), putBy: open.personId };
      const entry = sealCode(open.dataKey, loaded.data, ref, clear, put);
      wipe(clear);
      const saved = await saveVault(this.#setting, { ...loaded, data: withCode(loaded.data, entry) });
      return saved.ok ? ok(null) : saved;
    });
  }

  /** The code in clear. Record the look first. */
  lookAt(ref: CodeRef): Outcome<string> {
    return this.#withKey(async ({ data }, open) => {
      const clear = openCode(open.dataKey, data, ref);
      if (!clear.ok) return clear;
      const value = clear.value.toString('utf8');
      wipe(clear.value);
      return ok(value);
    });
  }

  /** Gives the sealed code up and keeps that there was one. Needs no key: codes must go in time even when nobody opens the vault. */
  destroy(ref: CodeRef, by: string, why: string): Outcome<null> {
    return this.#run(async (loaded) => {
      const entry = codeEntryOf(loaded.data, ref);
      if (entry === null) return refuseVault('no-code');
      if (entry.state === 'destroyed') return refuseVault('destroyed');
      const { putAt, putBy } = entry;
      const mark = {
        state: 'destroyed' as const,
        ref: entry.ref,
        putAt,
        putBy,
        destroyedAt: this.#setting.clock(),
        destroyedBy: by,
        why,
      };
      const saved = await saveVault(this.#setting, { ...loaded, data: withCode(loaded.data, mark) });
      return saved.ok ? ok(null) : saved;
    });
  }

  /** Waits for what was asked before, then locks. */
  async close(): Promise<void> {
    await this.#queue.close();
    this.lock();
  }

  #keep(personId: string, data: VaultData, dataKey: Buffer): void {
    wipe(this.#open?.dataKey ?? null);
    this.#open = { personId, vaultId: data.vaultId, keyId: data.keyId, dataKey };
  }

  /** Everything under a new data key. Whoever has the vault open keeps it open; `opensFor`: it opens for this person. */
  async #changeKey(loaded: Loaded, oldKey: Buffer, opensFor: string | null = null): Outcome<KeyChange> {
    const rekeyed = rekey(loaded.data, oldKey);
    if (!rekeyed.ok) return rekeyed;
    const { data, dataKey, unreadable } = rekeyed.value;
    const saved = await saveVault(this.#setting, { ...loaded, data });
    // Somebody whose opening is of an earlier data key has it open no more.
    const holdsIt = this.#open?.keyId === loaded.data.keyId ? this.unlockedBy : null;
    const personId = opensFor ?? holdsIt;
    if (saved.ok && personId !== null) this.#keep(personId, data, dataKey);
    else wipe(dataKey);
    return saved.ok ? ok({ unreadable }) : saved;
  }

  async #renewRecovery(loaded: Loaded, dataKey: Buffer, opensFor: string | null): Outcome<NewRecovery> {
    const { recovery, recoveryKey } = await makeRecovery(this.#setting, loaded.data, dataKey);
    const changed = await this.#changeKey({ ...loaded, data: { ...loaded.data, recovery } }, dataKey, opensFor);
    return changed.ok ? ok({ ...changed.value, recoveryKey }) : changed;
  }

  #run<Value>(job: (loaded: Loaded) => Outcome<Value>): Outcome<Value> {
    const outcome = this.#queue.run(async (): Outcome<Value> => {
      try {
        const loaded = await loadVault(this.#setting);
        return loaded.ok ? await job(loaded.value) : loaded;
      } catch (error) {
        // The words of an error that is not the system's own are not passed on: nobody has read them for secrets.
        if (systemCode(error) !== null) return refuseVaultStorage(problemFromError(error, `Using ${vaultFile}`));
        return refuseVaultStorage({ code: 'unknown', detail: `Using ${vaultFile}` });
      }
    });
    return outcome ?? Promise.resolve(refuseVault('locked'));
  }

  /** Runs with a copy of the data key of its own, so that locking meanwhile does not make it seal under zeros. */
  #withKey<Value>(job: (loaded: Loaded, open: Open) => Outcome<Value>): Outcome<Value> {
    return this.#run(async (loaded) => {
      const { data } = loaded;
      if (this.#open !== null && (this.#open.vaultId !== data.vaultId || this.#open.keyId !== data.keyId)) this.lock();
      if (this.#open === null) return refuseVault('locked');
      const open = { ...this.#open, dataKey: Buffer.from(this.#open.dataKey) };
      try {
        return await job(loaded, open);
      } finally {
        wipe(open.dataKey);
      }
    });
  }
}
