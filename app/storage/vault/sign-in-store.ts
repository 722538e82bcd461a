// Who may sign in with which pass phrase or PIN, in a file of its own beside the fleet. It keeps colleagues apart; whoever can copy the
// folder reads the records without it. Only the vault keeps codes from such a person.
import { randomBytes, timingSafeEqual } from 'node:crypto';
import { type SignInSecretForm, signInSecretForm, signInSecretProblem } from '../../domain/people/pass-phrase.ts';
import {
  noTries,
  oneMoreTry,
  type Tries,
  waitLeft,
  waitMillisecondsAfter,
  waitSentence,
} from '../../domain/people/try-delay.ts';
import { fail, ok, type Result } from '../../domain/shared/result.ts';
import { problemFromError, type StorageProblem, storageSentence, systemCode } from '../storage-problem.ts';
import { createWriteQueue } from '../write-queue.ts';
import { type KeyFileSetting, readKeyFile, settleKeyFile, writeKeyFile } from './key-file.ts';
import { type PeopleKeys, type PersonVerifier, peopleKeysFile, peopleKeysKind } from './people-keys.ts';
import { deriveKey, phraseBytes, type ScryptCost, usualScryptCost, wipe } from './scrypt-key.ts';

const sentences = {
  'no-secret': 'This person has no pass phrase or PIN yet.',
  'has-secret':
    'This person has a pass phrase or PIN already. Change it with the present one, or let the manager take it away.',
  wrong: 'This is not it.',
  wait: 'Too many wrong tries.',
  weak: '',
  'damaged-keys': '',
  storage: '',
} as const;

export type SignInProblem = {
  readonly code: keyof typeof sentences;
  readonly sentence: string;
  readonly waitMilliseconds: number;
  readonly storage: StorageProblem | null;
};

export type SignInSetting = KeyFileSetting & {
  /** Smaller in tests only. */
  readonly cost?: ScryptCost;
};

type Outcome<Value> = Promise<Result<Value, SignInProblem>>;
type Loaded = { readonly data: PeopleKeys; readonly revision: number };

function refuse(code: SignInProblem['code'], more = '', waitMilliseconds = 0) {
  const sentence = [sentences[code], more, waitSentence(waitMilliseconds)].filter((part) => part !== '').join(' ');
  return fail<SignInProblem>({ code, sentence, waitMilliseconds, storage: null });
}

function refuseStorage(storage: StorageProblem) {
  return fail<SignInProblem>({
    code: 'storage',
    sentence: storageSentence(storage.code),
    waitMilliseconds: 0,
    storage,
  });
}

export class SignInStore {
  readonly #setting: SignInSetting;
  readonly #queue = createWriteQueue();

  constructor(setting: SignInSetting) {
    this.#setting = setting;
  }

  /** Who has something to sign in with, and of which form. */
  people(): Outcome<ReadonlyMap<string, SignInSecretForm>> {
    return this.#run(async ({ data }) => ok(new Map(data.people.map(({ personId, form }) => [personId, form]))));
  }

  /** Whether it is theirs. Counted on the disk before it is tried. */
  signIn(personId: string, secret: string): Outcome<null> {
    return this.#run(async (loaded) => {
      const tried = await this.#try(loaded, personId, secret);
      if (!tried.ok) return tried;
      const saved = await this.#save(tried.value);
      return saved.ok ? ok(null) : saved;
    });
  }

  /** The first pass phrase or PIN of a person; who may set it is decided by the caller. */
  setSecret(personId: string, secret: string): Outcome<null> {
    return this.#run(async (loaded) =>
      loaded.data.people.some((person) => person.personId === personId)
        ? refuse('has-secret')
        : this.#put(loaded, personId, secret),
    );
  }

  changeSecret(personId: string, oldSecret: string, newSecret: string): Outcome<null> {
    return this.#run(async (loaded) => {
      const weak = signInSecretProblem(newSecret);
      if (weak !== null) return refuse('weak', weak);
      const tried = await this.#try(loaded, personId, oldSecret);
      return tried.ok ? this.#put(tried.value, personId, newSecret) : tried;
    });
  }

  /** For somebody who has left or has forgotten it; the manager's business. */
  removeSecret(personId: string): Outcome<null> {
    return this.#run(async (loaded) => {
      const people = loaded.data.people.filter((person) => person.personId !== personId);
      if (people.length === loaded.data.people.length) return refuse('no-secret');
      const saved = await this.#save({ ...loaded, data: { people } });
      return saved.ok ? ok(null) : saved;
    });
  }

  /** Milliseconds until this person may try again. */
  waitFor(personId: string): Outcome<number> {
    return this.#run(async ({ data }) => {
      const person = data.people.find((candidate) => candidate.personId === personId);
      return ok(person ? waitLeft(person.tries, this.#setting.clock()).waitMilliseconds : 0);
    });
  }

  /** After the file could not be read and no copy is to be had: nobody has anything to sign in with any more. The bad file is kept. */
  async startAnew(): Outcome<null> {
    const settled = await settleKeyFile(this.#setting, peopleKeysFile);
    return settled.ok ? ok(null) : refuseStorage(settled.error);
  }

  close(): Promise<void> {
    return this.#queue.close();
  }

  async #try(loaded: Loaded, personId: string, secret: string): Outcome<Loaded> {
    const person = loaded.data.people.find((candidate) => candidate.personId === personId);
    if (!person) return refuse('no-secret');
    const withTries = (from: Loaded, tries: Tries): Loaded => ({
      ...from,
      data: { people: from.data.people.map((other) => (other.personId === personId ? { ...other, tries } : other)) },
    });
    const now = this.#setting.clock();
    const wait = waitLeft(person.tries, now);
    if (wait.waitMilliseconds > 0) {
      // The clock was set back: the wait that begins anew is kept.
      if (wait.tries !== person.tries) await this.#save(withTries(loaded, wait.tries));
      return refuse('wait', '', wait.waitMilliseconds);
    }
    const counted = oneMoreTry(wait.tries, now);
    const saved = await this.#save(withTries(loaded, counted));
    if (!saved.ok) return saved;
    const typed = phraseBytes(secret);
    const key = await deriveKey(typed, Buffer.from(person.salt, 'base64'), person.cost);
    const isRight = timingSafeEqual(key, Buffer.from(person.verifier, 'base64'));
    wipe(typed, key);
    if (!isRight) return refuse('wrong', '', waitMillisecondsAfter(counted.failures));
    return ok(withTries(saved.value, noTries));
  }

  async #put(loaded: Loaded, personId: string, secret: string): Outcome<null> {
    const weak = signInSecretProblem(secret);
    if (weak !== null) return refuse('weak', weak);
    const cost = this.#setting.cost ?? usualScryptCost;
    const salt = randomBytes(16);
    const typed = phraseBytes(secret);
    const key = await deriveKey(typed, salt, cost);
    const person: PersonVerifier = {
      personId,
      setAt: this.#setting.clock(),
      form: signInSecretForm(secret),
      cost,
      salt: salt.toString('base64'),
      verifier: key.toString('base64'),
      tries: noTries,
    };
    wipe(typed, key);
    const others = loaded.data.people.filter((other) => other.personId !== personId);
    const saved = await this.#save({ ...loaded, data: { people: [...others, person] } });
    return saved.ok ? ok(null) : saved;
  }

  async #save({ data, revision }: Loaded): Outcome<Loaded> {
    const written = await writeKeyFile(this.#setting, peopleKeysFile, peopleKeysKind, data, revision + 1);
    return written.ok ? ok({ data: written.value, revision: revision + 1 }) : refuseStorage(written.error);
  }

  #run<Value>(job: (loaded: Loaded) => Outcome<Value>): Outcome<Value> {
    const outcome = this.#queue.run(async (): Outcome<Value> => {
      try {
        const found = await readKeyFile(this.#setting, peopleKeysFile, peopleKeysKind);
        // Not taken for an empty list: or damaging the file would let anybody choose the manager's pass phrase.
        if (found.kind === 'bad') return refuse('damaged-keys', found.trouble.sentence);
        return await job(found.kind === 'good' ? found : { data: { people: [] }, revision: 0 });
      } catch (error) {
        // The words of an error that is not the system's own are not passed on: nobody has read them for secrets.
        if (systemCode(error) !== null) return refuseStorage(problemFromError(error, `Using ${peopleKeysFile}`));
        return refuseStorage({ code: 'unknown', detail: `Using ${peopleKeysFile}` });
      }
    });
    return outcome ?? Promise.resolve(refuseStorage({ code: 'read-only', detail: 'The fleet has been closed.' }));
  }
}
