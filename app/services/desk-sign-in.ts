// Who has signed in at this desk, and what that opens; locks the desk after idle time. Keeps no secret: the store compares and forgets.
import type { SignInView } from '../contract/sign-in-view.ts';
import type { Person, Shop } from '../domain/fleet/shop.ts';
import type { SignInSecretForm } from '../domain/people/pass-phrase.ts';
import { type Access, accessOf, codeIdleMinutes, isIdle, type SignInRules } from '../domain/people/sign-in.ts';
import { ok, type Result } from '../domain/shared/result.ts';
import type { FleetStore } from '../storage/fleet-store.ts';
import { bringBackKeyFile } from '../storage/vault/bring-back-key-file.ts';
import { peopleKeysFile, peopleKeysKind } from '../storage/vault/people-keys.ts';
import type { ScryptCost } from '../storage/vault/scrypt-key.ts';
import { type SignInProblem, SignInStore } from '../storage/vault/sign-in-store.ts';

export type SignedIn = {
  readonly personId: string;
  /** The instant of signing in. */
  readonly at: string;
};

/** 'codes-idle': the desk stays open, but nobody has touched it for as long as codes may be left open. */
export type LockReason = 'asked' | 'idle' | 'codes-idle' | 'other-person' | 'other-fleet' | 'key-gone';

type Setting = {
  readonly clock: () => string;
  readonly shop: () => Shop;
  readonly cost?: ScryptCost | undefined;
};

type Outcome = Promise<Result<null, SignInProblem>>;

export class DeskSignIn {
  readonly #setting: Setting;
  readonly #listeners = new Set<(reason: LockReason) => void>();
  #store: SignInStore | null = null;
  #forms: ReadonlyMap<string, SignInSecretForm> = new Map();
  #trouble: string | null = null;
  #signedIn: SignedIn | null = null;
  #lastActedAt: string;
  #areCodesIdle = false;

  constructor(setting: Setting) {
    this.#setting = setting;
    this.#lastActedAt = setting.clock();
  }

  /** Takes up the keys of the fleet that was opened; nobody is signed in to it yet. */
  async open(fleet: Pick<FleetStore, 'keyFileSetting'>): Promise<void> {
    const earlier = this.#store;
    this.lock('other-fleet');
    const { cost } = this.#setting;
    this.#store = new SignInStore({ ...fleet.keyFileSetting(), ...(cost ? { cost } : {}) });
    await this.#readForms();
    await earlier?.close();
  }

  /** After a restore the keys may be back, or older ones. Nobody is signed out by it who still has a key. */
  async readAgain(): Promise<void> {
    await this.#readForms();
  }

  async close(): Promise<void> {
    this.lock('other-fleet');
    await this.#store?.close();
  }

  /** Called whenever somebody's being signed in ends, and when codes have been left open for too long. Gives the way to stop listening. */
  onLock(listener: (reason: LockReason) => void): () => void {
    this.#listeners.add(listener);
    return () => this.#listeners.delete(listener);
  }

  /** Null: nobody has signed in. Whoever was only picked from the list has not. */
  signedIn(): SignedIn | null {
    const signedIn = this.#signedIn;
    if (signedIn === null || !this.#forms.has(signedIn.personId)) return null;
    return this.#setting.shop().people.some(({ id, isActive }) => id === signedIn.personId && isActive)
      ? signedIn
      : null;
  }

  /** Why the file of keys cannot be used, with the way out; null when it can. */
  get trouble(): string | null {
    return this.#trouble;
  }

  formOf(personId: string): SignInSecretForm | null {
    return this.#forms.get(personId) ?? null;
  }

  peopleWithSecret(): readonly string[] {
    return [...this.#forms.keys()];
  }

  managerHasSecret(people: readonly Person[] = this.#setting.shop().people): boolean {
    return people.some(({ id, role, isActive }) => role === 'manager' && isActive && this.#forms.has(id));
  }

  /**
   * The shop's rules as they can hold: while no manager has anything to sign in with, signing in is asked of nobody, or nobody could ever
   * work here again. A file of keys that cannot be read is not taken for an empty one.
   */
  rules(): SignInRules {
    const { signIn } = this.#setting.shop();
    if (this.#trouble !== null || this.managerHasSecret()) return signIn;
    return { ...signIn, wantsSignIn: false, moneyNeedsSignIn: false };
  }

  isLocked(): boolean {
    return this.rules().wantsSignIn && this.signedIn() === null;
  }

  accessOf(person: Person): Access {
    const { wantsSignIn, moneyNeedsSignIn } = this.rules();
    return accessOf(person.role, {
      isSignedIn: this.signedIn()?.personId === person.id,
      shopWantsSignIn: wantsSignIn,
      moneyNeedsSignIn,
    });
  }

  /** What the page must know to offer signing in. */
  forDesk(person: Person): SignInView {
    const { wantsSignIn, moneyNeedsSignIn } = this.rules();
    return {
      isLocked: this.isLocked(),
      signedInId: this.signedIn()?.personId ?? null,
      wantsSignIn,
      moneyNeedsSignIn,
      adds: this.accessOf(person).signInAdds,
      managerHasSecret: this.managerHasSecret(),
      trouble: this.#trouble,
    };
  }

  /** Whether it is theirs; then they are signed in, and whoever was before is not any more. */
  async signIn(personId: string, secret: string): Outcome {
    const tried = await this.#with((store) => store.signIn(personId, secret));
    if (!tried.ok) return tried;
    if (this.#signedIn !== null) this.lock('other-person');
    this.act();
    this.#signedIn = { personId, at: this.#setting.clock() };
    return tried;
  }

  giveSecret(personId: string, secret: string): Outcome {
    return this.#with((store) => store.setSecret(personId, secret));
  }

  changeSecret(personId: string, oldSecret: string, newSecret: string): Outcome {
    return this.#with((store) => store.changeSecret(personId, oldSecret, newSecret));
  }

  waitFor(personId: string): Promise<Result<number, SignInProblem>> {
    return this.#store?.waitFor(personId) ?? Promise.resolve(ok(0));
  }

  /** After the file of keys could not be read. The error is a sentence. */
  async bringBackKeys(fleet: Pick<FleetStore, 'keyFileSetting'>): Promise<Result<null, string>> {
    const back = await bringBackKeyFile(fleet.keyFileSetting(), peopleKeysFile, peopleKeysKind);
    await this.#readForms();
    return back;
  }

  async takeSecret(personId: string): Outcome {
    const taken = await this.#with((store) => store.removeSecret(personId));
    if (taken.ok && this.#signedIn?.personId === personId) this.lock('key-gone');
    return taken;
  }

  /** Nobody is signed in any more. */
  lock(reason: LockReason): void {
    this.#signedIn = null;
    this.#tell(reason);
  }

  /** A person has just done something. */
  act(): void {
    this.#lastActedAt = this.#setting.clock();
    this.#areCodesIdle = false;
  }

  /** To be called now and then, and before each answer. True when the desk has just been locked. */
  lockWhenIdle(): boolean {
    const now = this.#setting.clock();
    const rules = this.rules();
    if (this.#signedIn !== null && isIdle(this.#lastActedAt, now, rules.idleMinutes)) {
      this.lock('idle');
      return true;
    }
    if (!this.#areCodesIdle && isIdle(this.#lastActedAt, now, codeIdleMinutes(rules))) {
      this.#areCodesIdle = true;
      this.#tell('codes-idle');
    }
    return false;
  }

  #tell(reason: LockReason): void {
    for (const listener of [...this.#listeners]) listener(reason);
  }

  async #with<Value>(job: (store: SignInStore) => Promise<Result<Value, SignInProblem>>) {
    if (this.#store === null) throw new Error('No fleet is open to sign in to.');
    const done = await job(this.#store);
    if (done.ok || done.error.code === 'damaged-keys') await this.#readForms();
    return done;
  }

  async #readForms(): Promise<void> {
    const read = await this.#store?.people();
    if (read === undefined) return;
    this.#forms = read.ok ? read.value : new Map();
    this.#trouble = read.ok ? null : read.error.sentence;
  }
}
